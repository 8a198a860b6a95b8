import type { Room } from "../../elements/room.ts";

export const steering: Room = {
  name: "steering",
  element: "sy-steering",
  title: "steering.title",
  short: "steering.short",
  folds: true,
};
