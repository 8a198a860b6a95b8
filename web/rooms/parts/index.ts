import { answer } from "./answer.ts";
import "./parts.ts";
import { printParts } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const parts: Room = {
  name: "parts",
  element: "sy-parts",
  title: "parts.title",
  short: "parts.short",
  answer,
  prints: [{ at: 80, body: printParts }],
};
