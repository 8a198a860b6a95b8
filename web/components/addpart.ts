// Adding a part: search the catalogue, or type a name and a mass of one's own.

import { html, type TemplateResult } from "lit";
import { core, Trouble } from "../core.ts";
import { addParts, freshIDs, fromEntry, fromWords, usualHalfWidth } from "../edit.ts";
import { store } from "../state.ts";
import { language, t, word } from "../text/index.ts";
import type { Entry, Part } from "../model/types.ts";
import { massField, massText, partScale, plain, write } from "../units.ts";
import { search, searchable, type Offer, type Searchable } from "./combo.ts";
import { Piece } from "./element.ts";
import { reveal } from "./picture.ts";

const most = 40;

let entries: { of: Entry[]; in: unknown; list: Searchable<Entry>[] } = { of: [], in: null, list: [] };

function catalogue(): Searchable<Entry>[] {
  if (entries.of !== store.catalogue || entries.in !== language()) {
    const group = new Map(store.kinds.map((k) => [k.id, k.group]));
    entries = {
      of: store.catalogue,
      in: language(),
      list: store.catalogue.map((e) => searchable(e, e.name, [word("kind", e.kind), word("group", group.get(e.kind) ?? ""), ...(e.search ?? [])])),
    };
  }
  return entries.list;
}

export interface Typed {
  name: string;
  mass: number | null;
}

// split takes a mass off the end of what was typed: "bell 42 g".
export function split(typed: string): Typed {
  const m = /^(.*?\S)\s+(\d[\d.,]*\s*(?:g|kg|lb|lbs|oz)?(?:\s*\d[\d.,]*\s*oz)?)$/i.exec(typed.trim());
  if (m) {
    try {
      return { name: m[1]!, mass: core.parseMass(m[2]!, massField(store.doc!.show).parse) };
    } catch (e) {
      if (!(e instanceof Trouble)) throw e;
    }
  }
  return { name: typed.trim(), mass: null };
}

export interface Found {
  name: string;
  mass_g: number;
  half_width_g: number;
}

// offer gives what was found for what was typed, and a thing of one's own.
// Without a choice made, a mass typed means the latter.
export function offer<T extends Found>(typed: string, list: Searchable<T>[], facts: (f: T) => string, take: (f: T, mass: number | null) => void, takeOwn: (own: Typed) => void, ownKey: "add.own" | "bag.own" | "good.own"): Offer {
  const own = split(typed);
  const show = store.doc!.show;
  const hits = search(list, own.mass === null ? typed : own.name, most);
  const s = partScale(show);
  return {
    options: [
      ...hits.map((h) => ({
        name: h.name,
        facts: facts(h),
        mass: own.mass === null ? plain(write(h.mass_g, h.half_width_g, s)) : plain(write(own.mass, 0, s)),
        take: () => take(h, own.mass),
      })),
      ...(own.name
        ? [
            {
              name: own.mass === null ? t(ownKey, { name: own.name }) : t("add.own.mass", { name: own.name, mass: massText(own.mass, show) }),
              own: true,
              take: () => takeOwn(own),
            },
          ]
        : []),
    ],
    first: own.mass !== null || !hits.length ? hits.length : 0,
  };
}

class AddPart extends Piece {
  private readonly offer = (typed: string): Offer =>
    offer(
      typed,
      catalogue(),
      (e) => word("station", e.station),
      (e, mass) => this.take(e, mass),
      (own) => this.takeOwn(own),
      "add.own",
    );

  protected override render(): TemplateResult {
    return html`<sy-combo name="add" .label=${t("add.label", { letter: store.letter })} .placeholder=${t("add.placeholder")} .offer=${this.offer}></sy-combo>`;
  }

  private take(entry: Entry, mass: number | null): void {
    this.put((id) => {
      const p = fromEntry(entry, id);
      return mass === null ? p : { ...p, mass_g: mass, half_width_g: usualHalfWidth("stated", mass), basis: "stated" };
    }, entry.name);
  }

  private takeOwn(own: Typed): void {
    const mass = own.mass ?? 0;
    const like = core.partFromWords(own.name, mass);
    const id = this.put((id) => {
      if (!like) return fromWords(own.name, mass, id);
      return { ...like, id, basis: "guessed", half_width_g: usualHalfWidth("guessed", mass) };
    }, own.name);
    // Without a mass the next thing to say is how much it weighs.
    if (own.mass === null) reveal(id, "mass_g");
  }

  private put(make: (id: string) => Part, name: string): string {
    let id = "";
    store.edit(t("do.add", { part: name }), (d) => {
      const part = make(freshIDs(d)());
      id = part.id;
      return addParts(d, store.activeID, [part]);
    });
    store.select(id);
    store.tell(t("add.done", { part: name }), { label: t("undo"), run: () => store.undo() });
    return id;
  }
}

customElements.define("sy-add", AddPart);
