// What the page takes besides its first screen. It comes when the first figures are
// painted, and before the program.

import "every:rooms/*/text.ts";
import "./rooms/change/change.ts";
import "./rooms/dialogs/dialogs.ts";
import "./rooms/newbike/newbike.ts";
import "./rooms/photograph/photograph.ts";
import "./rooms/publish/publish.ts";
import "./rooms/scale/scale.ts";
import { builds } from "./rooms/builds/chapter.ts";
import { climbing } from "./rooms/climbing/chapter.ts";
import { frame } from "./rooms/frame/chapter.ts";
import { gears } from "./rooms/gears/chapter.ts";
import { limits } from "./rooms/limits/chapter.ts";
import { load } from "./rooms/load/chapter.ts";
import { packing } from "./rooms/packing/chapter.ts";
import { parts } from "./rooms/parts/chapter.ts";
import { rough } from "./rooms/rough/chapter.ts";
import { steering } from "./rooms/steering/chapter.ts";
import { weighin } from "./rooms/weighin/chapter.ts";
import { furnish } from "./elements/room.ts";
import { watchPrinting } from "./rooms/print/printReport.ts";

furnish({ builds, gears, climbing, rough, steering, load, limits, packing, weighin, parts, frame });
watchPrinting();
