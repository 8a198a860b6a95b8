import { answer } from "./answer.ts";
import { inWords } from "../../elements/answer.ts";
import { gist } from "./steering.ts";
import { printSteering } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const steering: Room = {
  name: "steering",
  element: "sy-steering",
  title: "steering.title",
  short: "steering.short",
  gist,
  answer: () => inWords(answer, (v) => v.words || v.sides[0]?.words, "steering.gist"),
  prints: [{ at: 58, body: printSteering }],
};
