// The way to a chapter: from the contents, from the address, back and forward.

import { readAddress } from "../app/address.ts";
import { findRoom } from "./room.ts";
import { isUnfolded, setUnfolded } from "./section.ts";

const long = 2500; // ms in which a page that has just been opened still moves

// Entries of the history that the page has seen have this state: the browser knows
// where they were scrolled to.
const seen = { seen: true };

let at = ""; // the chapter that was gone to last

// chapter is where the reader went last, by whichever way.
export function chapter(): string {
  return at;
}

const moved = new EventTarget();

// followWay calls back whenever somebody goes to a chapter.
export function followWay(heard: () => void): () => void {
  moved.addEventListener("moved", heard);
  return () => moved.removeEventListener("moved", heard);
}

// visit goes to a chapter, or to one of its elements, and notes it in the address.
export function visit(name: string, id = ""): void {
  if (location.hash !== `#${name}`) history.pushState(seen, "", `#${name}`);
  arrive(name, id);
}

function note(name: string): void {
  at = name;
  moved.dispatchEvent(new Event("moved"));
}

// arrive opens a chapter and brings its head to the top of the window, with the
// focus on it, or on one of its elements.
export function arrive(name: string, id = ""): void {
  const room = findRoom(name);
  if (!room) return;
  if (room.folds) setUnfolded(name, true);
  note(name);
  // Once what is opened has been rendered.
  setTimeout(() => {
    document.getElementById(name)?.scrollIntoView({ block: "start" });
    focus(name, id);
  }, 80);
}

function focus(name: string, id = ""): void {
  const section = document.getElementById(name);
  (document.getElementById(id) ?? section?.querySelector<HTMLElement>("summary:has(> h2)") ?? section)?.focus({ preventScroll: true });
}

// settle arrives at a chapter of a page that is still being filled, and stays with
// it until that is done or the reader does something.
function settle(name: string): void {
  arrive(name);
  const head = document.getElementById(name);
  const sheet = document.getElementById("sheet");
  if (!head || !sheet) return;
  const hold = new ResizeObserver(() => head.scrollIntoView({ block: "start" }));
  const acts = ["pointerdown", "wheel", "keydown", "touchstart"];
  const leave = () => {
    clearTimeout(timer);
    hold.disconnect();
    for (const act of acts) removeEventListener(act, leave, true);
  };
  const timer = setTimeout(leave, long);
  for (const act of acts) addEventListener(act, leave, { capture: true, passive: true });
  hold.observe(sheet);
}

// begin goes to the chapter that the page was opened at.
export function begin(): void {
  const { document: link, chapter: name } = readAddress(location.hash);
  if (!link && findRoom(name)) settle(name);
}

// watchHistory follows back and forward, and addresses that are typed.
export function watchHistory(): void {
  history.replaceState(history.state ?? seen, "");
  addEventListener("popstate", (e) => {
    const known = (e.state as Partial<typeof seen> | null)?.seen === true;
    if (!known) history.replaceState(seen, "");
    const { document: link, chapter: name } = readAddress(location.hash);
    const room = link ? undefined : findRoom(name);
    if (!room) note("");
    else if (!known || (room.folds && !isUnfolded(name))) arrive(name);
    else {
      // The browser puts the window where it was, and then takes the focus away.
      note(name);
      setTimeout(() => focus(name), 80);
    }
  });
}
