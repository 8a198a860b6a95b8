import type { Room } from "../../elements/room.ts";

export const limits: Room = {
  name: "limits",
  element: "sy-limits",
  title: "limits.title",
  short: "limits.short",
  folds: true,
};
