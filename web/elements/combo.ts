// A field to search in and to take from: a combobox after the ARIA pattern. The
// focus stays in the field, the arrow keys walk the list, Enter takes what is
// marked, from the first letter on.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../core/core.ts";
import { store, draftPrefix } from "../app/state.ts";
import { brief, count, t } from "../text/index.ts";
import { StoreElement } from "./element.ts";

const apart = "\u001e"; // between what waits: no line break, which a list has itself

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
  static override properties = {
    name: {},
    label: {},
    placeholder: {},
    offer: { attribute: false },
    pasted: { attribute: false },
    asking: { attribute: false },
  };
  declare name: string; // id of the field
  declare label: string;
  declare placeholder: string;
  declare offer: (typed: string) => Offer;
  declare pasted: (text: string) => boolean; // whether somebody else takes what was pasted
  declare asking: boolean; // something is to be answered before more is taken
  private typed = "";
  private waits: string[] = []; // what was entered before the program was there
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
    this.asking = false;
  }

  protected override willUpdate(): void {
    if (!store.doc) return;
    if (!this.begun) {
      this.begun = true;
      // From before the page died.
      this.typed ||= store.drafts.get(draftPrefix + this.name)?.text ?? "";
      this.waits = store.drafts.get(this.waiting)?.text.split(apart) ?? [];
    }
    // What can be searched for comes last.
    if (this.waits.length && !this.asking && core.state === "ready" && store.catalogue.length) setTimeout(() => this.handOver());
  }

  private get waiting(): string {
    return `${draftPrefix}${this.name}/waits`;
  }

  // hold keeps what is entered until the program is there.
  private hold(entered: string[]): void {
    this.waits = entered;
    store.draft(this.waiting, entered.length ? { text: entered.join(apart), why: "", base: "" } : null);
  }

  // handOver enters what was held: several are looked at together, if they are a
  // list, else one after the other.
  private handOver(): void {
    const [text, ...rest] = this.waits;
    if (text === undefined || this.asking) return;
    if (this.pasted(this.waits.join("\n"))) {
      this.hold([]);
      return;
    }
    this.hold(rest);
    const { options, first } = this.offer(text);
    if (options[first]) options[first].take();
    else this.type(text);
    this.requestUpdate();
  }

  private type(text: string): void {
    this.typed = text;
    store.draft(draftPrefix + this.name, text.trim() ? { text, why: "", base: "" } : null);
  }

  protected override render(): TemplateResult {
    const id = this.name;
    const early = core.state === "loading";
    const list = this.shown && this.typed.trim() !== "";
    const offer = list && !early ? this.offer(this.typed) : { options: [], first: 0 };
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
            const text = e.clipboardData?.getData("text/plain") ?? "";
            if (core.state === "loading") {
              // A field would drop the ends of the lines.
              if (!/\S\s*[\r\n]+\s*\S/.test(text)) return;
              this.hold([...this.waits, text]);
              e.preventDefault();
            } else if (this.pasted(text)) e.preventDefault();
          }}
          @focus=${() => this.show(true)}
          @blur=${() => this.show(false)}
          @keydown=${(e: KeyboardEvent) => this.key(e)}
        />
        <div class="options" ?hidden=${!list} @pointerdown=${(e: Event) => e.preventDefault()}>
          ${found ? nothing : html`<p class="none" aria-hidden="true">${t(early ? "add.early" : "add.none")}</p>`}
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
        <p class="unseen" role="status">${list ? (found ? count(found, "add.results.one", "add.results.many") : t(early ? "add.early" : "add.none")) : nothing}</p>
        ${this.waits.length ? html`<p class="why" role="status">${t("add.waits", { list: this.waits.map((w) => brief(w.replace(/\s+/g, " "))).join("; ") })}</p>` : nothing}
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
      if (core.state === "loading") return;
      this.shown = true;
      const offer = this.offer(this.typed);
      const n = offer.options.length;
      if (n) this.at = (this.marked(offer) + (e.key === "ArrowDown" ? 1 : n - 1)) % n;
      this.requestUpdate();
      void this.updateComplete.then(() => document.getElementById(`${this.name}-${this.at}`)?.scrollIntoView({ block: "nearest" }));
    } else if (e.key === "Enter" && this.typed.trim()) {
      e.preventDefault();
      if (core.state === "loading") {
        this.hold([...this.waits, this.typed]);
        this.type("");
        this.requestUpdate();
        return;
      }
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
