import { gist } from "./rough.ts";
import { printRough } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const rough: Room = {
  name: "rough",
  element: "sy-rough",
  title: "rough.title",
  gist,
  prints: [{ at: 57, body: printRough }],
};
