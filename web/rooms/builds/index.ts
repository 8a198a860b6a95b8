import type { Room } from "../../elements/room.ts";

export const builds: Room = {
  name: "builds",
  element: "sy-builds",
  title: "all.title",
  short: "builds.short",
  folds: true,
};
