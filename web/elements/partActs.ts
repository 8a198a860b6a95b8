// What can be done with a whole part, wherever it is asked for.

import { domID, focusSoon } from "./element.ts";
import { duplicatePart, findBuild, handOver, removePart } from "../app/edit.ts";
import { needsLoad } from "../app/loadEdit.ts";
import { lineID } from "../app/loadlines.ts";
import { store } from "../app/state.ts";
import { t } from "../text/index.ts";

export function deletePart(id: string): void {
  const p = store.part(id);
  const list = store.build?.parts ?? [];
  if (!p) return;
  const i = list.indexOf(p);
  store.edit(t("do.delete", { part: p.name }), (d) => removePart(d, store.activeID, id));
  store.open.delete(id);
  const next = (list[i + 1] ?? list[i - 1])?.id ?? "";
  if (store.selected === id) store.select(next);
  // Who worked in the line goes on in the next one.
  if (document.activeElement?.closest("#parts")) focusSoon(next ? domID("f", `${store.activeID}/${next}/name`) : "add");
  store.tell(t("parts.deleted", { part: p.name }), { label: t("undo"), run: () => store.undo() });
}

export function duplicate(id: string): void {
  const p = store.part(id);
  if (!p) return;
  let made = "";
  store.edit(t("do.duplicate", { part: p.name }), (d) => {
    const r = duplicatePart(d, store.activeID, id);
    made = r.id;
    return r.doc;
  });
  store.select(made);
}

export function moveToOther(id: string): void {
  const p = store.part(id);
  const other = store.doc ? findBuild(store.doc, store.otherID) : undefined;
  if (!p || !other) return;
  store.edit(t("do.handover", { part: p.name, build: other.name }), (d) => handOver(d, store.activeID, other.id, id).doc);
  store.open.delete(id);
  store.select("");
  store.tell(t("part.handedover", { part: p.name, build: other.name }), { label: t("undo"), run: () => store.undo() });
}

// chooseNeighbour chooses the part before or after the chosen one, as listed;
// after the parts come the bags that are on the bike.
export function chooseNeighbour(by: 1 | -1): void {
  const side = store.side(store.letter);
  const bags = side && needsLoad(side.state) ? side.bags : [];
  const ids = [...(store.build?.parts ?? []).map((p) => p.id), ...bags.map((b) => lineID("bag", b.id))];
  if (!ids.length) return;
  const i = ids.indexOf(store.selected);
  const next = i < 0 ? (by > 0 ? 0 : ids.length - 1) : (i + by + ids.length) % ids.length;
  store.select(ids[next]!);
}
