// The words of the balance.

import { say } from "../../text/index.ts";

const en = {
  "balance.short": "Balance",
  "do.swap": "swap the builds",
  "do.copy": "copy {build}",
  "do.newbuild": "new build",
  "do.rename": "name of a build",
  "do.deletebuild": "delete {build}",

  "builds.title": "The balance",
  "builds.none": "none",
  "builds.choose": "Choose build {letter}",
  "builds.menu.name": "More to do with build {letter}",
  "builds.rename": "Rename",
  "builds.name": "Name of the build",
  "builds.copy": "Copy",
  "builds.copysuffix": ", copy",
  "builds.delete": "Delete",
  "builds.new": "New empty build",
  "builds.newname": "New build",
  "builds.swap": "Swap A and B",
  "builds.deleted": "Deleted the build “{name}”.",
  "builds.copied": "Copied “{name}”; the copy is build B.",
  "builds.first": "Add the first part",
  "builds.nob": "Nothing to compare with yet.",
  "builds.nob.copy": "Copy build A and change the copy",
  "builds.stale": "from before the problem",

  "delta.label": "B minus A",

  "beam.label": "Scale of the difference: {value}, {likely}",
  "beam.lighter": "B lighter",
  "beam.heavier": "B heavier",

  "table.fold": "All figures, and what ± means",
  "table.caption": "Figures of both builds and their difference",
  "table.verdict": "Verdict",
  "table.more": "More figures: mass that spins, resistance to turning",
  "table.less": "Fewer figures",

  "rows.place": "Centre of mass",
  "rows.axles": "Axle loads",
  "rows.springs": "Sprung and unsprung",
  "rows.spin": "Mass that spins",
  "rows.turn": "Resistance to turning",

  "carry.with": "with",
  "carry.choose": "Load of {letter}",
  "carry.none": "nothing",
  "carry.state": "Weighed",
  "carry.add": "Add rider and load",
  "carry.none.why": "Choose a load for A or B first.",
  "carry.norider.why": "Neither load has a rider yet.",
  "carry.misfit.why": "The rider does not fit on the bike: Load and rider says why.",
  "carry.fallen": "weighed {state}",

  "state.bare.help": "Without bags, what is carried, and locks",
  "state.ready.help": "All parts of the build, nothing of the load",
  "state.loaded.help": "With the load’s bags and what is packed in them",
  "state.ridden.help": "With the rider in the saddle as well",

  "report.figures": "Figures",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
