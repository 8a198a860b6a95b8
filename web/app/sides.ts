// The sides of the comparison, and what they are weighed with.

import { addLoad, blankLoad } from "./loadEdit.ts";
import { store } from "./state.ts";
import { t } from "../text/index.ts";
import type { State, Supplies } from "../model/types.ts";

export type Letter = "A" | "B";

export const letters = ["A", "B"] as const;

// sidesShown are the sides that there are.
export function sidesShown(): Letter[] {
  const { A, B } = store.ids;
  return [...(A ? (["A"] as const) : []), ...(B ? (["B"] as const) : [])];
}

// weighAs changes the state that both sides are weighed in.
export function weighAs(change: { state?: State; supplies?: Supplies }): void {
  store.edit(t("do.state"), (d) => {
    const next = { ...d.show, ...change };
    return next.state === d.show.state && next.supplies === d.show.supplies ? d : { ...d, show: next };
  });
}

// firstLoad makes a load and puts it on both sides.
export function firstLoad(): void {
  store.edit(t("do.newload"), (d) => {
    const n = addLoad(d, blankLoad(t("load.new.name")));
    return { ...n.doc, show: { ...n.doc.show, loads: [n.id, n.id], state: "loaded" } };
  });
}
