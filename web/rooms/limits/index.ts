import { gist } from "./limits.ts";
import { printRatings } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const limits: Room = {
  name: "limits",
  element: "sy-limits",
  title: "limits.title",
  short: "limits.short",
  gist,
  prints: [{ at: 60, body: printRatings }],
};
