import { gist } from "./gears.ts";
import { printGears } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const gears: Room = {
  name: "gears",
  element: "sy-gears",
  title: "gears.title",
  gist,
  prints: [{ at: 54, body: printGears }],
};
