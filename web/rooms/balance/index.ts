import { answer } from "./answer.ts";
import "./balance.ts";
import { printFigures, printTotals } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const balance: Room = {
  name: "balance",
  element: "sy-balance",
  title: "builds.title",
  short: "balance.short",
  answer,
  opening: true,
  prints: [
    { at: 10, body: printTotals },
    { at: 30, body: printFigures },
  ],
};
