import type { Room } from "../../elements/room.ts";

export const weighin: Room = {
  name: "weighin",
  element: "sy-weighin",
  title: "weighin.title",
  short: "weighin.short",
  folds: true,
};
