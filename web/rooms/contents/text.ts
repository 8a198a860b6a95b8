// The words of the contents.

import { say } from "../../text/index.ts";

const en = {
  "contents.title": "Contents",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
