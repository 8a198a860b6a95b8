import { answer } from "./answer.ts";
import { inWords } from "../../elements/answer.ts";
import { gist } from "./climbing.ts";
import { printClimbing } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("climbing", {
  gist,
  answer: () => inWords(answer, (v) => v.words || v.sides[0]?.words, "climbing.gist"),
  prints: [{ at: 56, body: printClimbing }],
});
