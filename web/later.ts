// What the page takes besides its first screen. It comes when the first figures are
// painted, and before the program.

import "every:rooms/*/text.ts";
import "every:rooms/*/chapter.ts";
import "./rooms/change/change.ts";
import "./rooms/dialogs/dialogs.ts";
import "./rooms/newbike/newbike.ts";
import "./rooms/photograph/photograph.ts";
import "./rooms/publish/publish.ts";
import "./rooms/scale/scale.ts";
import { watchPrinting } from "./rooms/print/printReport.ts";

watchPrinting();
