import { gist } from "./weighin.ts";
import type { Told } from "../../elements/room.ts";

export const weighin: Told = {
  gist,
};
