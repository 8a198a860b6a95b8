// Edits of what a document carries beside its builds: each takes a document and
// gives a new one that shares whatever did not change. None of them knows the
// page.

import { core } from "../core/core.ts";
import { compare, compared, editBuild } from "./edit.ts";
import type { Bag, Build, Doc, Good, Load, Rated, Rating, Reading, Rider, Scale, State, WeighIn } from "../model/types.ts";

type Letter = "A" | "B";

export const loadsOf = (doc: Doc): Load[] => doc.loads ?? [];
export const ridersOf = (doc: Doc): Rider[] => doc.riders ?? [];
export const weighInsOf = (doc: Doc): WeighIn[] => doc.weigh_ins ?? [];

// change replaces one of a list; a list without it stays the same one.
function change<T extends { id: string }>(list: T[], id: string, to: (x: T) => T): T[] {
  const i = list.findIndex((x) => x.id === id);
  const old = list[i];
  if (!old) return list;
  const next = to(old);
  return next === old ? list : list.with(i, next);
}

export function findLoad(doc: Doc, id: string): Load | undefined {
  return loadsOf(doc).find((l) => l.id === id);
}

export function findRider(doc: Doc, id: string): Rider | undefined {
  return ridersOf(doc).find((r) => r.id === id);
}

export function editLoad(doc: Doc, id: string, to: (l: Load) => Load): Doc {
  const loads = change(loadsOf(doc), id, to);
  return loads === doc.loads ? doc : { ...doc, loads };
}

export function editBag(doc: Doc, load: string, bag: string, to: (b: Bag) => Bag): Doc {
  return editLoad(doc, load, (l) => {
    const bags = change(l.bags, bag, to);
    return bags === l.bags ? l : { ...l, bags };
  });
}

export function editGood(doc: Doc, load: string, good: string, to: (g: Good) => Good): Doc {
  return editLoad(doc, load, (l) => {
    const goods = change(l.goods, good, to);
    return goods === l.goods ? l : { ...l, goods };
  });
}

export function editRider(doc: Doc, id: string, to: (r: Rider) => Rider): Doc {
  const riders = change(ridersOf(doc), id, to);
  return riders === doc.riders ? doc : { ...doc, riders };
}

export function editWeighIn(doc: Doc, id: string, to: (w: WeighIn) => WeighIn): Doc {
  const weigh_ins = change(weighInsOf(doc), id, to);
  return weigh_ins === doc.weigh_ins ? doc : { ...doc, weigh_ins };
}

// carried gives the loads of the two sides; empty is none.
export function carried(doc: Doc): [string, string] {
  const known = (id: string | undefined) => (id && findLoad(doc, id) ? id : "");
  const [a, b] = doc.show.loads ?? [];
  return [known(a), known(b)];
}

function withLoads(doc: Doc, a: string, b: string): Doc {
  return { ...doc, show: { ...doc.show, loads: [a, b] } };
}

// carry gives one side a load. One build twice needs two loads: the load of the
// other side then changes places with this one. A bike that is given its first
// load is shown with it.
export function carry(doc: Doc, letter: Letter, load: string): Doc {
  const [a, b] = compared(doc);
  const [la, lb] = carried(doc);
  let [na, nb] = letter === "A" ? [load, lb] : [la, load];
  if (a === b && na === nb) [na, nb] = [lb, la];
  const out = withLoads(doc, na, nb);
  const state = doc.show.state ?? "ready";
  if (!load || la || lb || state === "loaded" || state === "ridden") return out;
  return { ...out, show: { ...out.show, state: findLoad(doc, load)?.rider ? "ridden" : "loaded" } };
}

// placeBuild sets a build on one side. When it is on the other side already, it
// is compared with itself under another load, or changes places with the other
// when there is none.
export function placeBuild(doc: Doc, letter: Letter, id: string): Doc {
  const [a, b] = compared(doc);
  const [la, lb] = carried(doc);
  const [na, nb] = letter === "A" ? [id, b] : [a, id];
  if (na !== nb || la !== lb) return compare(doc, na, nb);
  const other = [...loadsOf(doc).map((l) => l.id), ""].find((l) => l !== la);
  if (other === undefined || !id) return letter === "A" ? compare(doc, id, a) : compare(doc, b || a, id);
  return compare(letter === "A" ? withLoads(doc, other, lb) : withLoads(doc, la, other), na, nb);
}

export function swapSides(doc: Doc): Doc {
  const [a, b] = compared(doc);
  const [la, lb] = carried(doc);
  return compare(la || lb ? withLoads(doc, lb, la) : doc, b, a);
}

// sameLoad lets both sides carry what A carries.
export function sameLoad(doc: Doc): Doc {
  const [la, lb] = carried(doc);
  return la === lb ? doc : withLoads(doc, la, la);
}

export function blankLoad(name: string): Omit<Load, "id"> {
  return { name, bags: [], goods: [] };
}

export function addLoad(doc: Doc, load: Omit<Load, "id">): { doc: Doc; id: string } {
  const id = core.newID(doc, "load");
  return { doc: { ...doc, loads: [...loadsOf(doc), { ...load, id }] }, id };
}

// removeLoad takes a load off the sides that carry it as well.
export function removeLoad(doc: Doc, id: string): Doc {
  const [a, b] = compared(doc);
  const [la, lb] = carried(doc);
  const loads = loadsOf(doc).filter((l) => l.id !== id);
  const out = la === id || lb === id ? withLoads({ ...doc, loads }, la === id ? "" : la, lb === id ? "" : lb) : { ...doc, loads };
  return compare(out, a, b);
}

export function addBag(doc: Doc, load: string, bag: Omit<Bag, "id">): { doc: Doc; id: string } {
  const id = core.newID(doc, "bag");
  return { doc: editLoad(doc, load, (l) => ({ ...l, bags: [...l.bags, { ...bag, id }] })), id };
}

// removeBag unpacks what is in the bag.
export function removeBag(doc: Doc, load: string, bag: string): Doc {
  return editLoad(doc, load, (l) => ({
    ...l,
    bags: l.bags.filter((b) => b.id !== bag),
    goods: l.goods.map((g) => (g.in === bag ? { ...g, in: "" } : g)),
  }));
}

export function addGood(doc: Doc, load: string, good: Omit<Good, "id">): { doc: Doc; id: string } {
  const id = core.newID(doc, "good");
  return { doc: editLoad(doc, load, (l) => ({ ...l, goods: [...l.goods, { ...good, id }] })), id };
}

export function removeGood(doc: Doc, load: string, good: string): Doc {
  return editLoad(doc, load, (l) => ({ ...l, goods: l.goods.filter((g) => g.id !== good) }));
}

// bagApart and goodApart make a thing one of its own, known apart from those of
// other loads. What is packed in a bag stays in it.
export function bagApart(doc: Doc, load: string, bag: string): { doc: Doc; id: string } {
  const id = core.newID(doc, "bag");
  const out = editLoad(doc, load, (l) => ({
    ...l,
    bags: l.bags.map((b) => (b.id === bag ? { ...b, id } : b)),
    goods: l.goods.map((g) => (g.in === bag ? { ...g, in: id } : g)),
  }));
  return { doc: out, id };
}

export function goodApart(doc: Doc, load: string, good: string): { doc: Doc; id: string } {
  const id = core.newID(doc, "good");
  return { doc: editGood(doc, load, good, (g) => ({ ...g, id })), id };
}

// seat gives a load a rider; empty is nobody. A bike that is shown loaded is then
// shown with the rider.
export function seat(doc: Doc, load: string, rider: string): Doc {
  const out = editLoad(doc, load, (l) => {
    const { rider: was = "", ...rest } = l;
    if (was === rider) return l;
    return rider ? { ...rest, rider } : rest;
  });
  if (out === doc || !rider || doc.show.state !== "loaded" || !carried(doc).includes(load)) return out;
  return { ...out, show: { ...out.show, state: "ridden" } };
}

export function addRider(doc: Doc, rider: Omit<Rider, "id">): { doc: Doc; id: string } {
  const id = core.newID(doc, "rider");
  return { doc: { ...doc, riders: [...ridersOf(doc), { ...rider, id }] }, id };
}

export function removeRider(doc: Doc, id: string): Doc {
  const out = loadsOf(doc).reduce((d, l) => (l.rider === id ? seat(d, l.id, "") : d), doc);
  return { ...out, riders: ridersOf(doc).filter((r) => r.id !== id) };
}

// rate enters a maker's limit, 0 takes it away.
export function rate(doc: Doc, build: string, what: Rated, limit: number): Doc {
  return editBuild(doc, build, (b: Build) => {
    const old: Rating[] = b.ratings ?? [];
    const i = old.findIndex((r) => r.what === what);
    if (limit === (old[i]?.limit_g ?? 0)) return b;
    if (limit === 0) return { ...b, ratings: old.toSpliced(i, 1) };
    return { ...b, ratings: i < 0 ? [...old, { what, limit_g: limit }] : old.with(i, { ...old[i]!, limit_g: limit }) };
  });
}

// usualScale is a bathroom scale as they are sold.
const usualScale: Scale = { id: "s1", step_g: 100 };

// usualReadings are what tells the centre of mass: both wheels on the level, and
// the rear one again with the front raised; not that with a rider.
export function usualReadings(state: State): Pick<WeighIn, "scales" | "readings"> {
  const level: Reading = { wheel: "front", height_mm: 0, height_within_mm: 0, scale: usualScale.id, mass_g: 0 };
  const flat: Reading[] = [level, { ...level, wheel: "rear" }];
  if (state === "ridden") return { scales: [usualScale], readings: flat };
  return { scales: [usualScale], readings: [...flat, { ...level, wheel: "rear", raised: "front", height_mm: 400, height_within_mm: 5 }] };
}

// addScale adds a scale. The first takes over the readings of the nameless scale
// that the first of them was read on.
export function addScale(w: WeighIn, id: string): WeighIn {
  const scales = w.scales ?? [];
  const of = scales.length ? undefined : w.readings[0]?.resolution_g;
  const one: Scale = { ...usualScale, id, step_g: of ?? usualScale.step_g };
  const readings = w.readings.map((r) => (of !== undefined && !r.scale && r.resolution_g === of ? readOn(r, one) : r));
  return { ...w, scales: [...scales, one], readings };
}

// removeScale takes a scale away; its readings keep its step.
export function removeScale(w: WeighIn, id: string): WeighIn {
  const old = w.scales?.find((s) => s.id === id);
  if (!old) return w;
  return { ...w, scales: w.scales!.filter((s) => s !== old), readings: w.readings.map((r) => (r.scale === id ? readOff(r, old) : r)) };
}

// readOn says that a reading was taken on a scale, readOff that it was taken on
// one without a name that has the same step.
export function readOn(r: Reading, s: Scale): Reading {
  const { resolution_g: _, ...rest } = r;
  return { ...rest, scale: s.id };
}

export function readOff(r: Reading, s: Scale | undefined): Reading {
  const { scale: _, ...rest } = r;
  return { ...rest, resolution_g: s?.step_g ?? usualScale.step_g };
}

export function addWeighIn(doc: Doc, w: Omit<WeighIn, "id">): { doc: Doc; id: string } {
  const id = core.newID(doc, "weigh_in");
  return { doc: { ...doc, weigh_ins: [...weighInsOf(doc), { ...w, id }] }, id };
}

export function removeWeighIn(doc: Doc, id: string): Doc {
  return { ...doc, weigh_ins: weighInsOf(doc).filter((w) => w.id !== id) };
}

export function needsLoad(state: State): boolean {
  return state === "loaded" || state === "ridden";
}
