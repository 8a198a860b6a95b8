// Lines that are no parts: the bags, goods and rider of a side. The picture and
// the report name them "bag:b1", "good:g1", "rider:r1".

import { editBag, findLoad, findRider } from "./loadEdit.ts";
import { store } from "./state.ts";
import { t } from "../text/index.ts";
import type { Vec3 } from "../model/types.ts";

export type LineKind = "bag" | "good" | "rider";

export interface Line {
  kind: LineKind;
  id: string; // without the kind
  load: string;
  name: string;
  mass_g: number;
  plus_g: number;
  place_mm: Vec3 | null;
}

export function lineID(kind: LineKind, id: string): string {
  return `${kind}:${id}`;
}

export function splitLine(id: string): { kind: LineKind; id: string } | null {
  const m = /^(bag|good|rider):(.*)$/s.exec(id);
  return m ? { kind: m[1] as LineKind, id: m[2]! } : null;
}

// loadLine finds a line on the side that is looked at.
export function loadLine(line: string): Line | undefined {
  const what = splitLine(line);
  const side = store.side(store.letter);
  if (!what || !side || !store.doc) return undefined;
  const load = findLoad(store.doc, side.load);
  const { kind, id } = what;
  if (kind === "rider") {
    const r = findRider(store.doc, id);
    const b = side.body;
    return r && { kind, id, load: side.load, name: r.name, mass_g: b?.mass_g ?? r.mass_g, plus_g: b?.plus_g ?? 0, place_mm: b?.centre_mm ?? null };
  }
  const thing = (kind === "bag" ? load?.bags : load?.goods)?.find((x) => x.id === id);
  if (!thing) return undefined;
  if (kind === "bag") {
    const b = side.bags.find((x) => x.id === id);
    return { kind, id, load: side.load, name: thing.name, mass_g: b?.whole_g ?? thing.mass_g, plus_g: b?.whole_plus_g ?? 0, place_mm: b?.place_mm ?? null };
  }
  const g = side.goods.find((x) => x.id === id);
  return {
    kind,
    id,
    load: side.load,
    name: thing.name,
    mass_g: g?.mass_g ?? thing.mass_g,
    plus_g: g?.plus_g ?? 0,
    place_mm: g?.ok && g.bag ? g.place_mm : null,
  };
}

const tenth = (v: number) => Math.round(v * 10) / 10;

// nudgeBag moves a bag from where it hangs. What is packed goes with it.
export function nudgeBag(line: string, by: Vec3): void {
  const what = splitLine(line);
  const load = store.side(store.letter)?.load ?? "";
  const bag = what?.kind === "bag" && store.doc ? findLoad(store.doc, load)?.bags.find((b) => b.id === what.id) : undefined;
  if (!bag || !by.some((v) => v !== 0)) return;
  const offset_mm = bag.offset_mm.map((v, i) => tenth(v + by[i]!)) as Vec3;
  store.edit(t("do.nudge", { part: bag.name }), (d) => editBag(d, load, bag.id, (b) => ({ ...b, offset_mm })), `nudge/${line}`);
}
