// A field to search in and to take from: a combobox after the ARIA pattern. The
// focus stays in the field, the arrow keys walk the list, Enter takes what is
// marked, from the first letter on.

import { html, nothing, type TemplateResult } from "lit";
import { store, draftPrefix } from "../app/state.ts";
import { count, t } from "../text/index.ts";
import { StoreElement } from "./element.ts";

export interface Option {
  name: string;
  facts?: string;
  mass?: string;
  own?: boolean; // not found, but made of what was typed
  take: () => void;
}

// Offer is what can be taken for what was typed. The one at first is marked
// until another is chosen.
export interface Offer {
  options: Option[];
  first: number;
}

export class Combo extends StoreElement {
  static override properties = { name: {}, label: {}, placeholder: {}, offer: { attribute: false }, pasted: { attribute: false } };
  declare name: string; // id of the field
  declare label: string;
  declare placeholder: string;
  declare offer: (typed: string) => Offer;
  declare pasted: (text: string) => boolean; // whether somebody else takes what was pasted
  private typed = "";
  private begun = false;
  private at = -1;
  private shown = false;

  constructor() {
    super();
    this.name = "combo";
    this.label = "";
    this.placeholder = "";
    this.offer = () => ({ options: [], first: 0 });
    this.pasted = () => false;
  }

  protected override willUpdate(): void {
    if (this.begun || !store.doc) return;
    this.begun = true;
    this.typed ||= store.drafts.get(draftPrefix + this.name)?.text ?? ""; // from before the page died
  }

  private type(text: string): void {
    this.typed = text;
    store.draft(draftPrefix + this.name, text.trim() ? { text, why: "", base: "" } : null);
  }

  protected override render(): TemplateResult {
    const id = this.name;
    const list = this.shown && this.typed.trim() !== "";
    const offer = list ? this.offer(this.typed) : { options: [], first: 0 };
    const { options } = offer;
    const found = options.filter((o) => !o.own).length;
    const at = this.marked(offer);
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
          aria-activedescendant=${list && options[at] ? `${id}-${at}` : nothing}
          placeholder=${this.placeholder}
          .value=${this.typed}
          @input=${(e: Event) => {
            this.type((e.target as HTMLInputElement).value);
            this.shown = true;
            this.at = -1;
            this.requestUpdate();
          }}
          @paste=${(e: ClipboardEvent) => {
            if (this.pasted(e.clipboardData?.getData("text/plain") ?? "")) e.preventDefault();
          }}
          @focus=${() => this.show(true)}
          @blur=${() => this.show(false)}
          @keydown=${(e: KeyboardEvent) => this.key(e)}
        />
        <div class="options" ?hidden=${!list} @pointerdown=${(e: Event) => e.preventDefault()}>
          ${found ? nothing : html`<p class="none" aria-hidden="true">${t("add.none")}</p>`}
          <ul id="${id}-list" role="listbox" aria-label=${this.label}>
            ${options.map(
              (o, i) =>
                html`<li id="${id}-${i}" class=${o.own ? "own" : ""} role="option" aria-selected=${i === at} @click=${() => this.take(o)}>
                  <span class="name">${o.name}</span>
                  ${o.own ? nothing : html`<span class="facts">${o.facts}</span><span class="mass">${o.mass}</span>`}
                </li>`,
            )}
          </ul>
        </div>
        <p class="unseen" role="status">${list ? (found ? count(found, "add.results.one", "add.results.many") : t("add.none")) : nothing}</p>
      </div>
    </div>`;
  }

  private marked(offer: Offer): number {
    return this.at >= 0 && this.at < offer.options.length ? this.at : offer.first;
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
      const offer = this.offer(this.typed);
      const n = offer.options.length;
      if (n) this.at = (this.marked(offer) + (e.key === "ArrowDown" ? 1 : n - 1)) % n;
      this.requestUpdate();
      void this.updateComplete.then(() => document.getElementById(`${this.name}-${this.at}`)?.scrollIntoView({ block: "nearest" }));
    } else if (e.key === "Enter" && this.typed.trim()) {
      e.preventDefault();
      const offer = this.offer(this.typed);
      const o = offer.options[this.marked(offer)];
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
