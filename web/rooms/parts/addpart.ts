// Adding a part: search the catalogue, or type a name and a mass of one's own.

import { html, type TemplateResult } from "lit";
import { core, CoreError } from "../../core/core.ts";
import { addParts } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { Build, Entry, Found, Part, Wanted } from "../../model/types.ts";
import { massField, massText, partScale, plain, write } from "../../model/units.ts";
import "../../elements/combo.ts";
import type { Offer } from "../../elements/combo.ts";
import { StoreElement } from "../../elements/element.ts";
import { reveal } from "../picture/picture.ts";

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
): Offer {
  const f = find(typed, among.of, among.on);
  const show = store.doc!.show;
  const s = partScale(show);
  const list = byID(among.list);
  const mass = f.mass_g ?? null;
  const hits = f.found
    .map((id) => list.get(id))
    .filter((h) => h !== undefined)
    .map((h) => ({
      name: h.name,
      facts: facts(h),
      mass: mass === null ? plain(write(h.mass_g, h.half_width_g, s)) : plain(write(mass, 0, s)),
      take: () => take(h, mass),
    }));
  if (!f.name) return { options: hits, first: 0 };
  const own = {
    name: mass === null ? t(ownKey, { name: f.name }) : t("add.own.mass", { name: f.name, mass: massText(mass, show) }),
    own: true,
    take: () => takeOwn({ name: f.name, mass }),
  };
  return { options: mass === null ? [...hits, own] : [own, ...hits], first: 0 };
}

// fitting is what the core asks of a build that a part is to fit: its figures,
// and what kinds of parts it has.
function fitting(b: Build | undefined): Wanted["on"] {
  if (!b) return undefined;
  return { fork: b.fork, rear: b.rear, wheels: b.wheels, kinds: [...new Set(b.parts.map((p) => p.kind))] };
}

class AddPart extends StoreElement {
  private readonly offer = (typed: string): Offer =>
    offer(
      typed,
      { of: "parts", list: store.catalogue, on: fitting(store.build) },
      (e) => word("station", e.station),
      (e, mass) => this.take(e, mass),
      (own) => this.takeOwn(own),
      "add.own",
    );

  protected override render(): TemplateResult {
    return html`<sy-combo name="add" .label=${t("add.label", { letter: store.letter })} .placeholder=${t("add.placeholder")} .offer=${this.offer}></sy-combo>`;
  }

  private take(entry: Entry, mass: number | null): void {
    this.put(core.partFromEntry(entry.id, mass));
  }

  private takeOwn(own: Typed): void {
    const id = this.put(core.partFromWords(own.name, own.mass ?? 0));
    // Without a mass the next thing to say is how much it weighs.
    if (own.mass === null) reveal(id, "mass_g");
  }

  private put(part: Part): string {
    let id = "";
    store.edit(t("do.add", { part: part.name }), (d) => {
      id = core.newID(d, "part");
      return addParts(d, store.activeID, [{ ...part, id }]);
    });
    store.select(id);
    store.tell(t("add.done", { part: part.name }), { label: t("undo"), run: () => store.undo() });
    return id;
  }
}

customElements.define("sy-add", AddPart);
