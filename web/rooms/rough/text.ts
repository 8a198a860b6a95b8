// The words of rough road.

import { say } from "../../text/index.ts";

const en = {
  "rough.title": "Rough road",
  "rough.gist": "How the wheels follow a rough road, what the rider feels, and which part makes the difference.",
  "rough.road": "Road",
  "rough.class.A": "A, smooth asphalt",
  "rough.class.B": "B, worn asphalt",
  "rough.class.C": "C, broken asphalt or good gravel",
  "rough.class.D": "D, rough gravel",
  "rough.class.E": "E, a bad track",
  "rough.speed": "Speed, km/h",
  "rough.rider": "Rider",
  "rough.rider.posture": "as the posture says",
  "rough.rider.seated": "seated",
  "rough.rider.standing": "standing",
  "rough.figures": "On this road",
  "rough.causes": "What makes the difference: {name}",
  "rough.chart": "Dynamic load of the rear tyre over speed, both builds with their doubt",
  "rough.modes": "What swings, and how fast",
  "rough.mode": "Motion",
  "rough.damping": "damping",
  "rough.settings": "Tyres, springs and dampers that this is reckoned with",

  "do.rough": "rough road",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
