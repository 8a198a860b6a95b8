// A field to search in and to take from: a combobox after the ARIA pattern. The
// focus stays in the field, the arrow keys walk the list, Enter takes.

import { html, LitElement, nothing, type TemplateResult } from "lit";
import { store, unmade } from "../state.ts";
import { count, t } from "../text/index.ts";

export interface Option {
  name: string;
  facts?: string;
  mass?: string;
  own?: boolean; // not found, but made of what was typed
  take: () => void;
}

// Offer is what can be taken for what was typed. Enter without a choice made
// takes the one at first.
export interface Offer {
  options: Option[];
  first: number;
}

export class Combo extends LitElement {
  static override properties = { name: {}, label: {}, placeholder: {}, offer: { attribute: false } };
  declare name: string; // id of the field
  declare label: string;
  declare placeholder: string;
  declare offer: (typed: string) => Offer;
  private typed = "";
  private begun = false;
  private at = -1;
  private shown = false;
  private readonly follow = () => this.requestUpdate();

  constructor() {
    super();
    this.name = "combo";
    this.label = "";
    this.placeholder = "";
    this.offer = () => ({ options: [], first: 0 });
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    store.addEventListener("change", this.follow);
  }

  override disconnectedCallback(): void {
    store.removeEventListener("change", this.follow);
    super.disconnectedCallback();
  }

  protected override willUpdate(): void {
    if (this.begun || !store.doc) return;
    this.begun = true;
    this.typed ||= store.drafts.get(unmade + this.name)?.text ?? ""; // from before the page died
  }

  private type(text: string): void {
    this.typed = text;
    store.draft(unmade + this.name, text.trim() ? { text, why: "", base: "" } : null);
  }

  protected override render(): TemplateResult {
    const id = this.name;
    const list = this.shown && this.typed.trim() !== "";
    const offer = list ? this.offer(this.typed) : { options: [], first: 0 };
    const { options } = offer;
    const found = options.filter((o) => !o.own).length;
    return html`<div class="add">
      <label for=${id}>${this.label}</label>
      <div class="combo">
        <input
          id=${id}
          type="text"
          role="combobox"
          autocomplete="off"
          spellcheck="false"
          aria-autocomplete="list"
          aria-expanded=${list}
          aria-controls="${id}-list"
          aria-activedescendant=${list && this.at >= 0 ? `${id}-${this.at}` : nothing}
          placeholder=${this.placeholder}
          .value=${this.typed}
          @input=${(e: Event) => {
            this.type((e.target as HTMLInputElement).value);
            this.shown = true;
            this.at = -1;
            this.requestUpdate();
          }}
          @focus=${() => this.show(true)}
          @blur=${() => this.show(false)}
          @keydown=${(e: KeyboardEvent) => this.key(e)}
        />
        <ul id="${id}-list" class="options" role="listbox" aria-label=${this.label} ?hidden=${!list} @pointerdown=${(e: Event) => e.preventDefault()}>
          ${options.map(
            (o, i) =>
              html`<li id="${id}-${i}" class=${o.own ? "own" : ""} role="option" aria-selected=${i === this.at} @click=${() => this.take(o)}>
                <span class="name">${o.name}</span>
                ${o.own ? nothing : html`<span class="facts">${o.facts}</span><span class="mass">${o.mass}</span>`}
              </li>`,
          )}
        </ul>
        <p class="unseen" role="status">${list ? (found ? count(found, "add.results.one", "add.results.many") : t("add.none")) : nothing}</p>
      </div>
    </div>`;
  }

  private show(on: boolean): void {
    this.shown = on;
    if (!on) this.at = -1;
    this.requestUpdate();
  }

  private take(o: Option): void {
    o.take();
    this.type("");
    this.show(true);
  }

  private key(e: KeyboardEvent): void {
    if (e.key === "ArrowDown" || e.key === "ArrowUp") {
      e.preventDefault();
      this.shown = true;
      const n = this.offer(this.typed).options.length;
      if (n) this.at = e.key === "ArrowDown" ? (this.at + 1) % n : (Math.max(this.at, 0) + n - 1) % n;
      this.requestUpdate();
      void this.updateComplete.then(() => document.getElementById(`${this.name}-${this.at}`)?.scrollIntoView({ block: "nearest" }));
    } else if (e.key === "Enter" && this.typed.trim()) {
      e.preventDefault();
      const { options, first } = this.offer(this.typed);
      const o = options[this.at >= 0 ? this.at : first];
      if (o) this.take(o);
    } else if (e.key === "Escape") {
      e.stopPropagation();
      if (this.shown && this.typed) this.show(false);
      else {
        this.type("");
        this.requestUpdate();
      }
    }
  }
}

customElements.define("sy-combo", Combo);

export function fold(s: string): string {
  return s.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

// Searchable is a thing with all that it can be found by.
export interface Searchable<T> {
  thing: T;
  name: string; // folded, as the text
  text: string;
}

export function searchable<T>(thing: T, name: string, words: string[]): Searchable<T> {
  return { thing, name: fold(name), text: fold([name, ...words].join(" ")) };
}

// search gives the things that hold every word typed, best first.
export function search<T>(list: Searchable<T>[], typed: string, most: number): T[] {
  const words = fold(typed).split(/\s+/).filter(Boolean);
  if (!words.length) return [];
  const whole = words.join(" ");
  // Words in the name count before words elsewhere, early ones before late ones.
  const rank = (f: Searchable<T>) => {
    if (f.name.startsWith(whole)) return 0;
    if (!words.every((w) => f.name.includes(w))) return 1000 + (f.name.includes(words[0]!) ? 0 : 1);
    return 1 + Math.min(...words.map((w) => f.name.indexOf(w)));
  };
  return list
    .filter((f) => words.every((w) => f.text.includes(w)))
    .map((f) => ({ f, r: rank(f) }))
    .sort((a, b) => a.r - b.r)
    .slice(0, most)
    .map(({ f }) => f.thing);
}
