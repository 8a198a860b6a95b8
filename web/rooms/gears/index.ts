import type { Room } from "../../elements/room.ts";

export const gears: Room = {
  name: "gears",
  element: "sy-gears",
  title: "gears.title",
  short: "gears.short",
  folds: true,
};
