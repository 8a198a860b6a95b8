// Adding a part: search the catalogue, or type a name and a mass of one's own.
// A combobox after the ARIA pattern: the focus stays in the field, the arrow
// keys walk the list, Enter takes.

import { html, nothing, type TemplateResult } from "lit";
import { core, Trouble } from "../core.ts";
import { addParts, freshIDs, fromEntry, fromWords, usualHalfWidth } from "../edit.ts";
import { store } from "../state.ts";
import { count, t, word } from "../text/index.ts";
import type { Entry, Part } from "../types.ts";
import { massField, massText, partScale, plain, write } from "../units.ts";
import { Piece } from "./element.ts";
import { reveal } from "./picture.ts";

const most = 40;

function fold(s: string): string {
  return s.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

interface Found {
  entry: Entry;
  kind: string;
  text: string; // all that it can be found by
  name: string;
}

let folded: { of: Entry[]; list: Found[] } = { of: [], list: [] };

function entries(): Found[] {
  if (folded.of !== store.catalogue) {
    const group = new Map(store.kinds.map((k) => [k.id, k.group]));
    folded = {
      of: store.catalogue,
      list: store.catalogue.map((entry) => ({
        entry,
        kind: fold(word("kind", entry.kind)),
        name: fold(entry.name),
        text: fold([entry.name, word("kind", entry.kind), word("group", group.get(entry.kind) ?? ""), ...(entry.search ?? [])].join(" ")),
      })),
    };
  }
  return folded.list;
}

// search gives the entries that hold every word typed, best first.
export function search(typed: string): Entry[] {
  const words = fold(typed).split(/\s+/).filter(Boolean);
  if (!words.length) return [];
  const whole = words.join(" ");
  // Words in the name count before words elsewhere, early ones before late ones.
  const rank = (f: Found) => {
    if (f.kind === whole) return -1;
    if (f.name.startsWith(whole)) return 0;
    if (!words.every((w) => f.name.includes(w))) return 1000 + (f.name.includes(words[0]!) ? 0 : 1);
    return 1 + Math.min(...words.map((w) => f.name.indexOf(w)));
  };
  return entries()
    .filter((f) => words.every((w) => f.text.includes(w)))
    .map((f) => ({ f, r: rank(f) }))
    .sort((a, b) => a.r - b.r)
    .slice(0, most)
    .map(({ f }) => f.entry);
}

// split takes a mass off the end of what was typed: "bell 42 g".
export function split(typed: string): { name: string; mass: number | null } {
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

class AddPart extends Piece {
  private typed = "";
  private at = -1;
  private shown = false;

  protected override render(): TemplateResult {
    const letter = store.activeID === store.ids.B ? "B" : "A";
    const own = split(this.typed);
    const hits = search(own.mass === null ? this.typed : own.name);
    const list = this.shown && this.typed.trim() !== "";
    const n = hits.length + (own.name ? 1 : 0);
    const s = partScale(store.doc!.show);
    return html`<div class="add">
      <label for="add">${t("add.label", { letter })}</label>
      <div class="combo">
        <input
          id="add"
          type="text"
          role="combobox"
          autocomplete="off"
          spellcheck="false"
          aria-autocomplete="list"
          aria-expanded=${list}
          aria-controls="add-list"
          aria-activedescendant=${list && this.at >= 0 ? `add-${this.at}` : nothing}
          placeholder=${t("add.placeholder")}
          .value=${this.typed}
          @input=${(e: Event) => {
            this.typed = (e.target as HTMLInputElement).value;
            this.shown = true;
            this.at = -1;
            this.requestUpdate();
          }}
          @focus=${() => this.show(true)}
          @blur=${() => this.show(false)}
          @keydown=${(e: KeyboardEvent) => this.key(e, hits, own, n)}
        />
        <ul id="add-list" role="listbox" aria-label=${t("add.label", { letter })} ?hidden=${!list} @pointerdown=${(e: Event) => e.preventDefault()}>
          ${list
            ? html`${hits.map(
                  (h, i) =>
                    html`<li id="add-${i}" role="option" aria-selected=${i === this.at} @click=${() => this.take(h, own.mass)}>
                      <span class="name">${h.name}</span>
                      <span class="facts">${word("station", h.station)}</span>
                      <span class="mass">${own.mass === null ? plain(write(h.mass_g, h.half_width_g, s)) : plain(write(own.mass, 0, s))}</span>
                    </li>`,
                )}
                ${own.name
                  ? html`<li id="add-${hits.length}" class="own" role="option" aria-selected=${hits.length === this.at} @click=${() => this.takeOwn(own)}>
                      <span class="name"
                        >${own.mass === null ? t("add.own", { name: own.name }) : t("add.own.mass", { name: own.name, mass: massText(own.mass, store.doc!.show) })}</span
                      >
                    </li>`
                  : nothing}`
            : nothing}
        </ul>
        <p class="unseen" role="status">${list ? (hits.length ? count(hits.length, "add.results.one", "add.results.many") : t("add.none")) : nothing}</p>
      </div>
    </div>`;
  }

  private show(on: boolean): void {
    this.shown = on;
    if (!on) this.at = -1;
    this.requestUpdate();
  }

  private key(e: KeyboardEvent, hits: Entry[], own: { name: string; mass: number | null }, n: number): void {
    if (e.key === "ArrowDown" || e.key === "ArrowUp") {
      e.preventDefault();
      this.shown = true;
      if (n) this.at = e.key === "ArrowDown" ? (this.at + 1) % n : (Math.max(this.at, 0) + n - 1) % n;
      this.requestUpdate();
      void this.updateComplete.then(() => document.getElementById(`add-${this.at}`)?.scrollIntoView({ block: "nearest" }));
    } else if (e.key === "Enter" && this.typed.trim()) {
      e.preventDefault();
      // Without a choice made, a mass typed means a part of one's own.
      const i = this.at >= 0 ? this.at : own.mass !== null || !hits.length ? hits.length : 0;
      const h = hits[i];
      if (h) this.take(h, own.mass);
      else this.takeOwn(own);
    } else if (e.key === "Escape") {
      e.stopPropagation();
      if (this.shown && this.typed) this.show(false);
      else {
        this.typed = "";
        this.requestUpdate();
      }
    }
  }

  private take(entry: Entry, mass: number | null): void {
    this.put((id) => {
      const p = fromEntry(entry, id);
      return mass === null ? p : { ...p, mass_g: mass, half_width_g: usualHalfWidth("stated", mass), basis: "stated" };
    }, entry.name);
  }

  private takeOwn(own: { name: string; mass: number | null }): void {
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
    this.typed = "";
    this.show(true);
    return id;
  }
}

customElements.define("sy-add", AddPart);
