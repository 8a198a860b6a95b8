import { gist } from "./load.ts";
import { printLoads } from "./print.ts";
import type { Told } from "../../elements/room.ts";

export const load: Told = {
  gist,
  prints: [{ at: 70, body: printLoads }],
};
