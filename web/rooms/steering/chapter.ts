import { answer } from "./answer.ts";
import { inWords } from "../../elements/answer.ts";
import { gist } from "./steering.ts";
import { printSteering } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("steering", {
  gist,
  answer: () => inWords(answer, (v) => v.words || v.sides[0]?.words, "steering.gist"),
  prints: [{ at: 58, body: printSteering }],
});
