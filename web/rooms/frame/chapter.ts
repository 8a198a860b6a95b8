import { answer } from "./answer.ts";
import "./frame.ts";
import type { Told } from "../../elements/room.ts";

export const frame: Told = {
  answer,
};
