import { answer } from "./answer.ts";
import { store } from "../../app/state.ts";
import { inWords } from "../../elements/answer.ts";
import { gist } from "./gears.ts";
import { printGears } from "./print.ts";
import { furnish } from "../../elements/room.ts";

furnish("gears", {
  gist,
  answer: () => inWords(answer, (v) => v.words || v.builds.find((b) => b.build === store.ids.A)?.words, "gears.gist"),
  prints: [{ at: 54, body: printGears }],
});
