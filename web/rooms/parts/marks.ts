// Parts that are marked, to do something with all of them at once.

import { store } from "../../app/state.ts";

export const marks = {
  on: false,
  ids: new Set<string>(),
  last: "", // the part that was marked or unmarked last: a range begins there
};

export function marking(on: boolean): void {
  marks.on = on;
  marks.ids.clear();
  marks.last = "";
  store.touch();
}

// mark marks a part, or no longer; with a range all between the last one and this,
// as they are listed.
export function mark(id: string, on: boolean, range: boolean): void {
  const list = listed();
  const from = list.indexOf(marks.last);
  const to = list.indexOf(id);
  const ids = range && from >= 0 && to >= 0 ? list.slice(Math.min(from, to), Math.max(from, to) + 1) : [id];
  for (const i of ids) {
    if (on) marks.ids.add(i);
    else marks.ids.delete(i);
  }
  marks.last = id;
  store.touch();
}

function rows(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>("#parts tr[data-part]")];
}

const partOf = (row: HTMLElement): string => row.getAttribute("data-part") ?? "";

// listed gives the parts that can be seen in the list, in its order.
export function listed(): string[] {
  return rows().map((r) => partOf(r));
}

// step goes to the mark of the next line, or the one before; with extend it
// becomes as the one that is left.
export function step(id: string, by: 1 | -1, extend: boolean): void {
  const all = rows();
  const next = all[all.findIndex((r) => partOf(r) === id) + by];
  if (!next) return;
  if (extend) mark(partOf(next), marks.ids.has(id), false);
  next.querySelector<HTMLElement>(".marker input")?.focus();
}
