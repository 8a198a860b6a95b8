import { answer } from "./answer.ts";
import "./frame.ts";
import type { Room } from "../../elements/room.ts";

export const frame: Room = {
  name: "frame",
  element: "sy-frame",
  title: "frame.title",
  short: "frame.short",
  answer,
};
