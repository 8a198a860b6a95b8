import { answer } from "./answer.ts";
import { inWords } from "../../elements/answer.ts";
import { gist } from "./rough.ts";
import { printRough } from "./print.ts";
import type { Told } from "../../elements/room.ts";

export const rough: Told = {
  gist,
  answer: () => inWords(answer, (v) => v.words || v.sides[0]?.words, "rough.gist"),
  prints: [{ at: 57, body: printRough }],
};
