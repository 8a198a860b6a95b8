import "./builds.ts";
import { gist } from "./told.ts";
import { printAllParts, printBuilds } from "./print.ts";
import type { Told } from "../../elements/room.ts";

export const builds: Told = {
  gist,
  prints: [
    { at: 55, body: printBuilds },
    { at: 81, body: printAllParts },
  ],
};
