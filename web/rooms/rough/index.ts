import type { Room } from "../../elements/room.ts";

export const rough: Room = {
  name: "rough",
  element: "sy-rough",
  title: "rough.title",
  short: "rough.short",
  folds: true,
};
