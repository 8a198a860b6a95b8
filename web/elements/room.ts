// What a room of the page says of itself. A room is a folder in rooms/; its
// index.ts makes one of these, and rooms/rooms.ts names them all in the order of
// the page. What a chapter tells comes after the first screen: its chapter.ts
// furnishes the room with it.

import type { nothing, TemplateResult } from "lit";
import { narrow } from "./narrow.ts";
import type { Key } from "../text/index.ts";

// Gist is what a room comes to, in a line.
export interface Gist {
  text: string;
  alarm?: boolean; // something is wrong or over a limit
}

export interface Printed {
  at: number; // its place on paper: 10, 20, ...
  body: () => TemplateResult | typeof nothing | (TemplateResult | typeof nothing)[];
}

export interface Room extends Told {
  name: string; // of the folder; the id of the section, and its address
  element: string; // what shows it
  title: Key; // its heading
  short: Key; // its name in the contents
  opening?: true; // stands beside the picture, above the chapters
  folds?: true; // can be closed, and then shows its gist; otherwise it is always open
}

// Told is what a room comes to.
export interface Told {
  gist?: () => Gist; // its answer, shown while it is closed
  answer?: () => Gist | undefined; // its answer in the contents, where that is not the gist; undefined while it is being worked out
  prints?: readonly Printed[];
}

const known = new Map<string, Room>();

export function register(rooms: readonly Room[]): readonly Room[] {
  for (const r of rooms) known.set(r.name, r);
  return rooms;
}

// furnish has a room tell what it comes to.
export function furnish(name: string, told: Told): void {
  Object.assign(roomOf(name), told);
}

// allRooms gives them in the order of the page.
export const allRooms = (): Room[] => [...known.values()];

export function findRoom(name: string): Room | undefined {
  return known.get(name);
}

export function roomOf(name: string): Room {
  const r = findRoom(name);
  if (!r) throw new Error(`${name} is not in rooms/rooms.ts`);
  return r;
}

// printed is what all rooms print, in the order of the paper.
export function printed(): Printed[] {
  return [...known.values()].flatMap((r) => r.prints ?? []).sort((a, b) => a.at - b.at);
}

// layOut gives every room its section, in the order of the list. One that has
// markup of its own in index.html stays as it is.
export function layOut(rooms: readonly Room[], opening: Element, sheet: Element): void {
  for (const r of rooms) {
    const there = document.getElementById(r.name);
    const section = there ?? document.createElement("section");
    // What has no line to open it by can be gone to itself.
    if (!r.folds) section.tabIndex = -1;
    if (there) continue;
    section.id = r.name;
    section.setAttribute("aria-labelledby", `${r.name}-title`);
    if (r.folds) section.className = "chapter";
    section.append(document.createElement(r.element));
    (r.opening ? opening : sheet).append(section);
  }
  const arrange = () => turn(opening);
  narrow.addEventListener("change", arrange);
  arrange();
}

// turn puts the totals before the picture on a narrow sheet, and beside it on any
// other. The picture stays where it is: a frame that is moved loads anew.
function turn(opening: Element): void {
  const picture = document.getElementById("picture");
  for (const section of [...opening.children]) {
    if (section === picture) continue;
    if (narrow.matches) opening.prepend(section);
    else opening.append(section);
  }
}
