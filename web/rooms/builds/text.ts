// The words of all builds side by side.

import { say } from "../../text/index.ts";

const en = {
  "do.table": "builds chosen for the table",
  "do.base": "base chosen",

  "all.gist": "{n} builds side by side.",
  "all.gist.one": "One build so far. Copy it and change the copy to see the two side by side.",
  "all.gist.open": "Lightest of {n}: undecided.",
  "all.gist.best": "Lightest of {n}: {name}, {mass}.",
  "all.lead": "Every figure of every build, and below it how it differs from the base.",
  "all.state": "All weighed alike: {state}.",
  "all.caption": "Figures of all builds, set against the base",
  "all.ticks": "Builds in the table",
  "all.chart": "What the mass is made of",
  "all.chart.label": "Stacked bars: the mass of each of {n} builds by group, with the ± of the total. The table below says the same.",
  "all.chart.note": "The line through the end of a bar is where the total likely lies.",
  "all.figures": "Figures",
  "all.base": "base",
  "all.base.name": "base: set all against {name}",
  "all.sort": "sort the builds by this",
  "all.best": "best",
  "all.note": "Press a figure’s name to sort the builds by it.",
  "all.best.note": "Best is only named where it is decided against every other build.",
  "all.parts": "Parts of all builds",
  "all.parts.same": "all alike:",
  "all.parts.moved": "differs",
  "all.parts.note": "What every build has, so many and as heavy, stands once. ± is what all pieces together may be off by.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
