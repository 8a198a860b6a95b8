import type { Room } from "../../elements/room.ts";

export const climbing: Room = {
  name: "climbing",
  element: "sy-climbing",
  title: "climbing.title",
  short: "climbing.short",
  folds: true,
};
