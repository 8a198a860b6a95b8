// The words of the printed report.

import { say } from "../../text/index.ts";

const en = {
  "report.how": "How the figures were obtained",
  "report.sources": "Sources",
  "report.page": "Report of {date}",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
