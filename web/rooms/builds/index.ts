import "./builds.ts";
import { gist } from "./told.ts";
import { printAllParts, printBuilds } from "./print.ts";
import type { Room } from "../../elements/room.ts";

export const builds: Room = {
  name: "builds",
  element: "sy-builds",
  title: "all.title",
  short: "builds.short",
  gist,
  prints: [
    { at: 55, body: printBuilds },
    { at: 81, body: printAllParts },
  ],
};
