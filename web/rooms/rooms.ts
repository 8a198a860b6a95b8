// The rooms of the page, in its order. A new one is a folder here, and a line below.

import { balance } from "./balance/index.ts";
import { builds } from "./builds/index.ts";
import { climbing } from "./climbing/index.ts";
import { difference } from "./difference/index.ts";
import { frame } from "./frame/index.ts";
import { gears } from "./gears/index.ts";
import { limits } from "./limits/index.ts";
import { load } from "./load/index.ts";
import { packing } from "./packing/index.ts";
import { parts } from "./parts/index.ts";
import { picture } from "./picture/index.ts";
import { rough } from "./rough/index.ts";
import { steering } from "./steering/index.ts";
import { weighin } from "./weighin/index.ts";
import { register } from "../elements/room.ts";

export const rooms = register([picture, balance, difference, builds, gears, climbing, rough, steering, load, limits, packing, weighin, parts, frame]);
