// The words of climbing.

import { say } from "../../text/index.ts";

const en = {
  "climbing.title": "Climbing",
  "climbing.gist": "Speed, gear and time on a climb and over a day, and what weight and losses cost.",
  "climbing.climb": "The climb",
  "climbing.time": "Time",
  "climbing.speed": "Speed",
  "climbing.gear": "Gear",
  "climbing.ingear": "{gear}, {rpm} a minute",
  "climbing.walks": "on foot",
  "climbing.steepest": "Steepest slope in the lowest gear",
  "climbing.lift": "Front wheel lifts from",
  "climbing.slip": "Rear tyre slips from",
  "climbing.kilogram": "One kilogram more costs",
  "climbing.point": "One point of efficiency less costs",
  "climbing.difference": "Difference",
  "climbing.split": "The difference, split",
  "climbing.weight": "For the weight",
  "climbing.losses": "For losses and gears",
  "climbing.together": "Together",
  "climbing.day": "A day",
  "climbing.noday": "There is no day in the document.",
  "climbing.dayis": "{length}, {ascent} up.",
  "climbing.profile": "Height over distance",
  "climbing.energy": "Energy at the pedals",
  "climbing.lost": "Of it lost in the drive",
  "climbing.walked": "Walked",
  "climbing.inputs": "All that this is reckoned with",

  "do.road": "road",
  "do.effort": "what the rider holds",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
