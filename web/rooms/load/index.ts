import type { Room } from "../../elements/room.ts";

export const load: Room = {
  name: "load",
  element: "sy-load",
  title: "load.title",
  short: "load.short",
  folds: true,
};
