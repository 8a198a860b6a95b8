import "./difference.ts";
import { printAdvice, printDifference } from "./print.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { Room } from "../../elements/room.ts";

export const difference: Room = {
  name: "difference",
  element: "sy-difference",
  title: "diff.title",
  short: "difference.short",
  answer: () => ({ text: store.difference?.summary ?? t("diff.none") }),
  prints: [
    { at: 40, body: printDifference },
    { at: 50, body: printAdvice },
  ],
};
