import "./markers.ts";
import "./picture.ts";
import { printPicture } from "./print.ts";
import { store } from "../../app/state.ts";
import type { Room } from "../../elements/room.ts";

// Its markup is in index.html: the canvas's frame loads before any script.
export const picture: Room = {
  name: "picture",
  element: "sy-picture-head",
  title: "picture.title",
  short: "picture.short",
  answer: () => ({ text: store.build?.name ?? "" }),
  opening: true,
  prints: [{ at: 20, body: printPicture }],
};
