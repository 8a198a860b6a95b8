import { answer } from "./answer.ts";
import { inWords } from "../../elements/answer.ts";
import { gist } from "./rough.ts";
import { printRough } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("rough", {
  gist,
  answer: () => inWords(answer, (v) => v.words || v.sides[0]?.words, "rough.gist"),
  prints: [{ at: 57, body: printRough }],
});
