import { gist } from "./packing.ts";
import type { Told } from "../../elements/room.ts";

export const packing: Told = {
  gist,
};
