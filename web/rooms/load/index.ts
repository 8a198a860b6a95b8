import { gist } from "./load.ts";
import { printLoads } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const load: Room = {
  name: "load",
  element: "sy-load",
  title: "load.title",
  short: "load.short",
  gist,
  prints: [{ at: 70, body: printLoads }],
};
