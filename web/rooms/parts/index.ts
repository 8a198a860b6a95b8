import type { Room } from "../../elements/room.ts";

export const parts: Room = {
  name: "parts",
  element: "sy-parts",
  title: "parts.title",
  short: "parts.short",
};
