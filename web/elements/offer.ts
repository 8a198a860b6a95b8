// What a search field offers for what was typed: what the core finds, and a thing of
// one's own.

import { core, CoreError } from "../core/core.ts";
import { store } from "../app/state.ts";
import { t } from "../text/index.ts";
import type { Found, Wanted } from "../model/types.ts";
import { massField, massText, partScale, plain, write } from "../model/units.ts";
import type { Offer, Option } from "./combo.ts";

const most = 40;

export interface Typed {
  name: string;
  mass: number | null;
}

interface Entered {
  id: string;
  name: string;
  mass_g: number;
  half_width_g: number;
}

// byID keeps where the things of a list are, for as long as it is the same list.
const places = new WeakMap<object, Map<string, unknown>>();

function byID<T extends { id: string }>(list: T[]): Map<string, T> {
  let map = places.get(list) as Map<string, T> | undefined;
  if (!map) {
    map = new Map(list.map((x) => [x.id, x]));
    places.set(list, map);
  }
  return map;
}

// lists reports whether a text that is pasted into a search for parts is a list of
// several.
export function lists(text: string): boolean {
  return Boolean(find(text, "parts").list);
}

function find(typed: string, of: Wanted["of"], on?: Wanted["on"]): Found {
  try {
    return core.find(typed, { of, unit: massField(store.doc!.show).parse, limit: most, ...(on && { on }) });
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    return { name: typed.trim(), found: [] };
  }
}

// offer gives what the core finds for what was typed, and a thing of one's own.
// A mass typed means the latter.
export function offer<T extends Entered>(
  typed: string,
  among: { of: Wanted["of"]; list: T[]; on?: Wanted["on"] },
  facts: (f: T) => string,
  take: (f: T, mass: number | null) => void,
  takeOwn: (own: Typed) => void,
  ownKey: "add.own" | "bag.own" | "good.own",
  takeList?: (typed: string) => void,
): Offer {
  const f = find(typed, among.of, among.on);
  const show = store.doc!.show;
  const s = partScale(show);
  const list = byID(among.list);
  const mass = f.mass_g ?? null;
  const others = new Map(f.other?.map((o) => [o.id, o]));
  const hits: Option[] = f.found
    .map((id) => list.get(id))
    .filter((h) => h !== undefined)
    .map((h) => {
      const as = others.get(h.id) ?? h;
      return {
        name: as.name,
        facts: facts(h),
        mass: plain(write(as.mass_g, as.half_width_g, s)),
        take: () => take(h, as === h ? null : mass),
      };
    });
  if (!f.name) return { options: hits, first: 0 };
  const own: Option = {
    name: mass === null ? t(ownKey, { name: f.name }) : t("add.own.mass", { name: f.name, mass: massText(mass, show) }),
    own: true,
    take: () => takeOwn({ name: f.name, mass }),
  };
  const options = mass === null ? [...hits, own] : [own, ...hits];
  if (f.list && takeList) {
    options.unshift({ name: t("add.list", { n: f.list }), own: true, take: () => takeList(typed) });
  }
  return { options, first: 0 };
}
