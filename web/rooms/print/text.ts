// The words of the printed report.

import { say } from "../../text/index.ts";

const en = {
  "report.nothing": "Nothing can be printed yet: the program that works out the figures is still on its way.",
  "report.demo": "Printed before the program was there: the figures of the demo, as worked out when the page was made.",
  "report.kept": "Printed before the program was there: the last figures kept in this browser, of {when}, not reckoned anew.",
  "report.how": "How the figures were obtained",
  "report.sources": "Sources",
  "report.page": "Report of {date}",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
