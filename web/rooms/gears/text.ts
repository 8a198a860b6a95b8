// The words of the gears.

import { say } from "../../text/index.ts";

const en = {
  "gears.gist": "How far the gears reach, how even they are, and what the drive loses.",
  "gears.chart": "Gears of all builds by development, on a scale of equal steps",
  "gears.inches": "inches",
  "gears.metres": "m a turn",
  "gears.as.development": "Development",
  "gears.as.inches": "Inches",
  "gears.figures": "Range and steps",
  "gears.help": "Development is the way of one turn of the cranks on the loaded wheel. Gears that differ by less than 2 % count once.",
  "gears.table": "Gears in the order of shifting",
  "gears.gear": "Gear",
  "gears.step": "step, %",
  "gears.speeds": "{low} to {high} km/h at {rpm} turns a minute",
  "gears.speed": "km/h at {rpm}",
  "gears.efficiency": "efficiency, %",
  "gears.double": "more than one lever moves",
  "gears.unread": "The drive cannot be read off the parts.",
  "gears.typical": "Teeth or ratios of some parts are those of the catalogue’s typical entry.",
  "gears.losses": "What the drive loses",
  "gears.lost": "lost, %",
  "gears.losses.help": "In per cent of {watts} W at {rpm} turns per minute.",

  "gears.add.other-share": "Add a share that is lost",
  "gears.add.other-power": "Add a power that is lost",
  "gears.whole": "Measured, and permitted",
  "gears.whole.help":
    "An efficiency that somebody measured takes the place of all losses above; a measured roll-out that of the tyre’s figures. A limit is only watched when it is entered.",
  "gears.crossed": "Cogs that outer rings leave out",
  "gears.crossed.help": "So many of the largest cogs are not ridden on the largest ring, nor so many of the smallest on the smallest; 0 rides all.",

  "do.gearunit": "gears shown",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
