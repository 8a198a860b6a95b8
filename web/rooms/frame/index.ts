import type { Room } from "../../elements/room.ts";

export const frame: Room = {
  name: "frame",
  element: "sy-frame",
  title: "frame.title",
  short: "frame.short",
};
