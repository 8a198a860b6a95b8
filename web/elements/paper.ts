// What the printed parts of the rooms share.

import { findBuild } from "../app/edit.ts";
import type { Letter } from "../app/sides.ts";
import { store } from "../app/state.ts";

export const lettersPrinted = (): Letter[] => (store.ids.B ? ["A", "B"] : ["A"]);

export const nameOf = (letter: Letter): string => {
  const s = store.shown(letter);
  return s?.name || (store.doc && findBuild(store.doc, store.ids[letter])?.name) || letter;
};
