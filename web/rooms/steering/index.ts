import { gist } from "./steering.ts";
import { printSteering } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const steering: Room = {
  name: "steering",
  element: "sy-steering",
  title: "steering.title",
  gist,
  prints: [{ at: 58, body: printSteering }],
};
