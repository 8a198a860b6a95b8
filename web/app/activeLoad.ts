// Which load is worked on in the list of bags and goods, whether or not one of
// the builds carries it.

import { carried, findLoad, loadsOf } from "./loadEdit.ts";
import type { Load, Side } from "../model/types.ts";
import { store } from "./state.ts";

// active is the load that is worked on; empty is the one of the side looked at.
let active = "";

export function workOn(load: string): void {
  active = load;
  store.touch();
}

// activeLoad is the load that is worked on.
export function activeLoad(): Load | undefined {
  const doc = store.doc;
  if (!doc) return undefined;
  const [a, b] = carried(doc);
  return findLoad(doc, active) ?? findLoad(doc, store.letter === "B" ? b || a : a || b) ?? loadsOf(doc)[0];
}

// sideWith is a side that carries a load, the one looked at before the other.
export function sideWith(load: string): Side | undefined {
  const letters: ("A" | "B")[] = store.letter === "A" ? ["A", "B"] : ["B", "A"];
  return letters.map((l) => store.side(l)).find((s) => s?.load === load);
}
