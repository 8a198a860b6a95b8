// The words of the page before its program is there.

import { say } from "../../text/index.ts";

const en = {
  "early.title": "Before the program is there",
  "early.demo": "Demo, worked out when the page was made.",
  "early.kept": "Last figures, from this browser, {when}.",
  "early.edited": "What was edited after that is not in them yet.",
  "early.anew": "The program is on its way: what you open, paste or type is counted when it is there.",
  "early.coming": "The program that works out the figures is on its way.",
  "early.waits": "Waits for the program: {list}.",
  "early.link": "The address holds a document that somebody shares. You are asked about it as soon as the program can read it.",
  "early.link.called": "The address holds a document that somebody shares, called “{name}”. You are asked about it as soon as the program can read it.",
  "early.same": "The program has reckoned anew, and found the same.",
  "early.corrected.one": "The program has reckoned anew: one figure is corrected and marked.",
  "early.corrected.many": "The program has reckoned anew: {n} figures are corrected and marked.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
