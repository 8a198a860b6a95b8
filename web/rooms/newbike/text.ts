// The words of a bike to begin with.

import { say } from "../../text/index.ts";

const en = {
  "newbike.title": "A new bike",
  "newbike.frame": "Frame",
  "newbike.size": "Size",
  "newbike.wheel": "Wheels, across the bead seat",
  "newbike.wheel.622": "28 or 29 inches",
  "newbike.wheel.584": "27½ inches",
  "newbike.wheel.559": "26 inches",
  "newbike.sets": "What goes on it",
  "newbike.none": "None",
  "newbike.ours":
    "The frame’s figures and all weights are typical ones of our own. Type those of your frame over them in the chapter Frame, or paste its maker’s table there.",
  "newbike.parts": "{n} parts",
  "newbike.stack": "Stack",
  "newbike.reach": "Reach",
  "newbike.make": "Make this bike",
  "newbike.made": "Made a bike of {n} parts. Its figures are typical ones: the chapter Frame takes those of yours.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
