import type { Room } from "../../elements/room.ts";

export const packing: Room = {
  name: "packing",
  element: "sy-packing",
  title: "packing.title",
  short: "packing.short",
  folds: true,
};
