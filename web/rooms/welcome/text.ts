// The words of the first visit.

import { say } from "../../text/index.ts";

const en = {
  "welcome.title": "How to begin",
  "welcome.what":
    "Steelyard weighs a bike on paper: what its parts weigh together and how sure that is, where the mass sits, and what another build would change.",
  "welcome.demo": "See the demo",
  "welcome.bike": "Begin a bike",
  "welcome.list": "Bring a list",
  "welcome.demoed": "This is a travel bike in three builds. Change what you like: Undo takes it back.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
