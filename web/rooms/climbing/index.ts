import { gist } from "./climbing.ts";
import { printClimbing } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const climbing: Room = {
  name: "climbing",
  element: "sy-climbing",
  title: "climbing.title",
  gist,
  prints: [{ at: 56, body: printClimbing }],
};
