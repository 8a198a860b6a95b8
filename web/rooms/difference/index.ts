import "./difference.ts";
import { printAdvice, printDifference } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const difference: Room = {
  name: "difference",
  element: "sy-difference",
  title: "diff.title",
  prints: [
    { at: 40, body: printDifference },
    { at: 50, body: printAdvice },
  ],
};
