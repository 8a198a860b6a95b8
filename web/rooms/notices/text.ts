// The words of notices.

import { say } from "../../text/index.ts";

const en = {
  "keep.failed.long": "This browser does not keep the document ({why}). Save it as a file before you close the page.",
  "keep.conflict.long": "The document kept in this browser was changed in another window. Nothing was overwritten.",
  "keep.replaced.save": "Save the other as a file",

  "core.dead": "The calculator stopped ({why}). Your document is kept; the figures shown are the last ones.",
  "core.restart": "Start it again",
  "core.save": "Save a copy",

  "problems.title.one": "One thing to put right",
  "problems.title.many": "{n} things to put right",
  "problems.warn.one": "One remark",
  "problems.warn.many": "{n} remarks",
  "problems.stay": "The figures shown are the last that held.",

  dismiss: "Dismiss",

  "say.total": "{name}: {value}, {likely}.",
  "say.delta": "B minus A: {value}, {verdict}.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
