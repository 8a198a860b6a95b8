// The words of rough road.

import { say } from "../../text/index.ts";

const en = {
  "rough.gist": "How the wheels follow a rough road, what the rider feels, and which part makes the difference.",
  "rough.of": "Reckoned is the bike {states}; where the load has a rider, with the rider.",
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
  "rough.causes": "What makes the difference: {figure}",
  "rough.note": "note",
  "rough.class.own": "a roughness of one's own",
  "rough.roughness": "Roughness at 0.1 cycle/m, cm³",
  "rough.contact": "The tyre's contact with the road",
  "rough.contact.length": "has a length: small bumps even out",
  "rough.contact.point": "is a point, and the tyre undamped: for checks",
  "rough.gains": "What would gain the same",
  "rough.gains.none": "No figure of the tyres and the saddle differs beyond doubt, or nothing within the model's range makes up for it.",
  "rough.curves": "Over speed and frequency",
  "rough.pick": "Figure that is drawn",
  "rough.chart.speed": "{figure}, over speed",
  "rough.chart.response": "{figure}: what the bike makes of a road that rises and falls at each frequency",
  "rough.chart.spectra": "{figure}: from which frequencies it comes on this road",
  "rough.tables": "The curves as tables",
  "rough.over": "Over a single obstacle",
  "rough.obstacle": "Obstacle",
  "rough.height": "Height",
  "rough.depth": "Depth",
  "rough.length": "Length along the road",
  "rough.trace": "Load of the rear tyre on the way over it",
  "rough.moves": "What goes up and down",
  "rough.follows": "follows from the others",
  "rough.setin": "The springs were set in the state: {state}.",
  "rough.springs": "With another load the springs are",
  "rough.springs.kept": "kept as they were set",
  "rough.springs.anew": "set anew to the same sag",
  "rough.ratings": "What the makers permit",
  "rough.pressure.caution":
    "A pressure counts only as far as the makers of tyre and rim permit it, whichever permits less; too little lets the tyre slip off the rim or the rim strike the road. Where in doubt, ask a qualified mechanic.",
  "rough.modes": "What swings, and how fast",
  "rough.mode": "Motion",
  "rough.damping": "damping",
  "rough.settings": "Tyres, springs and dampers that this is reckoned with",

  "do.rough": "rough road",
  "do.setup": "tyres, springs and dampers",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
