// The words of where the difference comes from.

import { say } from "../../text/index.ts";

const en = {
  "difference.short": "Difference",
  "diff.title": "Where the difference comes from",
  "diff.none": "Choose a build B to see what changes.",
  "diff.groups": "By group of parts",
  "diff.groups.caption": "Difference by group of parts, B minus A",
  "diff.group": "Group",
  "diff.mass": "B − A",
  "diff.parts": "Part by part",
  "diff.parts.caption": "Parts that are not the same in both builds",
  "diff.added": "only in B",
  "diff.removed": "only in A",
  "diff.changed": "weight",
  "diff.moved": "place",
  "diff.moved.by": "moved {by}",
  "diff.moved.frame": "moved {by} with the frame",
  "diff.carrier": "fixed to another part",
  "diff.within": "place known to {b}, in A to {a}",
  "diff.same": "Every part is the same in both builds.",
  "diff.centre": "What moved the centre of mass",
  "diff.centre.caption": "How far each change alone moves the centre of mass",
  "diff.centre.none": "Nothing moved it.",
  "diff.left": "Left",
  "diff.weigh": "Weigh these first",
  "diff.weigh.lead": "To narrow the difference in total mass, now known to ±{now}:",
  "diff.weigh.step": "then ±{plus}",
  "diff.weigh.settles": "decides it",
  "diff.weigh.none": "Nothing is gained by weighing: every part that counts is known well.",
  "diff.weigh.build": "To narrow the total of build {letter}, now known to ±{now}:",
  "diff.groups.same": "The same in both: {groups}.",
  "diff.bars": "Bars to the right: B is heavier. The thin line is the range it likely lies in.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
