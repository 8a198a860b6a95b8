import { gist } from "./limits.ts";
import { printRatings } from "./print.ts";
import type { Told } from "../../elements/room.ts";

export const limits: Told = {
  gist,
  prints: [{ at: 60, body: printRatings }],
};
