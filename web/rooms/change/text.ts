// The words of changing a set of parts.

import { say } from "../../text/index.ts";

const en = {
  "do.change": "change {build}: {set}",
  "do.change.new": "new build {name}",

  "change.title": "Change {build}",
  "change.area": "What is changed",
  "change.choose": "Change to",
  "change.hint": "Choose a set to see what would go, come and stay. Nothing changes until you say so.",
  "change.on": "on it now",
  "change.unfit.one": "One more, for another bike",
  "change.unfit.many": "{n} more, for other bikes",
  "change.goes": "Goes",
  "change.comes": "Comes",
  "change.stays": "Stays",
  "change.remarks": "Look at this",
  "change.aside.one": "One of them is kept aside for later: more is known of it than the catalogue says.",
  "change.aside.many": "{n} of them are kept aside for later: more is known of them than the catalogue says.",
  "change.from.aside": "was kept aside",
  "change.from.build": "from {build}",
  "change.nothing": "All of this set is on the build already.",
  "change.total": "{before} now, {after} after:",
  "change.caution": "What goes with what is common practice. The makers’ instructions, local rules and a qualified mechanic decide.",
  "change.newname": "Name, if it becomes a new build",
  "change.name": "{build}: {set}",
  "change.this": "Change this build",
  "change.new": "Make a new build of it",
  "change.done": "{build} now has: {set}.",
  "change.made": "Made the build “{name}”; it is build B.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
