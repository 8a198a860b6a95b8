import { answer } from "./answer.ts";
import "./parts.ts";
import { printParts } from "./print.ts";
import type { Told } from "../../elements/room.ts";

export const parts: Told = {
  answer,
  prints: [{ at: 80, body: printParts }],
};
