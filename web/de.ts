// German, a script of its own that the page fetches when somebody wants it: the
// words of the first screen, as main.ts has them in English. The others come when
// that is painted.

import labels from "labels:de";
import { offer } from "./text/offer.ts";
import "./text/de.ts";
import "./rooms/balance/text.de.ts";
import "./rooms/contents/text.de.ts";
import "./rooms/difference/text.de.ts";
import "./rooms/early/text.de.ts";
import "./rooms/masthead/text.de.ts";
import "./rooms/notices/text.de.ts";
import "./rooms/picture/text.de.ts";
import "./rooms/welcome/text.de.ts";

offer("de", {}, labels);
