// Adding a part: search the catalogue, or type a name and a mass of one's own. What
// was typed the core understands, and says what is to be asked about it.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { addParts, replaceParts } from "../../app/edit.ts";
import { openers } from "../../app/files.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { Build, Entered, Part, Wanted } from "../../model/types.ts";
import { massField, partScale, plain, write } from "../../model/units.ts";
import "../../elements/combo.ts";
import type { Offer } from "../../elements/combo.ts";
import { focusSoon, StoreElement } from "../../elements/element.ts";
import { reveal } from "../../elements/lines.ts";
import { lists, offer } from "../../elements/offer.ts";

// fitting is what the core asks of a build that a part is to fit: its figures,
// and what parts it has.
function fitting(b: Build | undefined): Wanted["on"] {
  if (!b) return undefined;
  const parts = new Map(b.parts.map((p) => [`${p.kind} ${p.carrier}`, { kind: p.kind, carrier: p.carrier }]));
  return { fork: b.fork, rear: b.rear, wheels: b.wheels, parts: [...parts.values()] };
}

function massOf(p: Part): string {
  const mass = plain(write(p.mass_g, p.half_width_g, partScale(store.doc!.show)));
  return p.quantity > 1 ? `${p.quantity} × ${mass}` : mass;
}

const names = (parts: Part[]): string => parts.map((p) => `${p.name}, ${massOf(p)}`).join("; ");

class AddPart extends StoreElement {
  private asked: { entered: Entered; build: string } | null = null; // what was entered and waits for an answer

  private readonly offer = (typed: string): Offer =>
    offer(
      typed,
      { of: "parts", list: store.catalogue, on: fitting(store.build) },
      (e) => word("station", e.station),
      (e) => this.take(e.id, typed),
      () => this.take("", typed),
      "add.own",
      (list) => this.list(list),
    );

  protected override render(): TemplateResult {
    return html`<sy-combo
        name="add"
        .label=${t("add.label", { letter: store.letter })}
        .placeholder=${t("add.placeholder")}
        .offer=${this.offer}
        .asking=${this.asked !== null && this.asked.build === store.activeID}
        .pasted=${(text: string) => lists(text) && this.list(text)}
      ></sy-combo>
      ${this.question()}`;
  }

  // question asks in place whether a part replaces what the bike has one of.
  private question(): TemplateResult | typeof nothing {
    if (!this.asked || this.asked.build !== store.activeID) return nothing;
    const { part, displaces = [], in_place } = this.asked.entered;
    return html`<div
      class="asking"
      role="group"
      aria-labelledby="add-asking"
      @keydown=${(e: KeyboardEvent) => {
        if (e.key !== "Escape") return;
        e.stopPropagation();
        this.answer(null);
      }}
    >
      <p id="add-asking">${t("add.asked", { old: names(displaces), part: part.name })}</p>
      <button type="button" class="go" id="add-replace" @click=${() => this.answer(in_place ?? part, displaces)}>${t("add.replace")}</button>
      <button type="button" id="add-beside" @click=${() => this.answer(part)}>${t("add.beside")}</button>
      <button type="button" class="plain" @click=${() => this.answer(null)}>${t("cancel")}</button>
    </div>`;
  }

  private answer(part: Part | null, old: Part[] = []): void {
    const { asked } = this;
    this.asked = null;
    this.requestUpdate();
    focusSoon("add");
    if (asked && part) this.put(asked.entered, part, old);
  }

  private list(text: string): boolean {
    openers.csv(t("add.pasted"), new TextEncoder().encode(text));
    return true;
  }

  private take(entry: string, typed: string): void {
    const entered = core.enter(store.text, store.activeID, { entry, typed, unit: massField(store.doc!.show).parse });
    this.asked = entered.displaces ? { entered, build: store.activeID } : null;
    this.requestUpdate();
    if (this.asked) focusSoon("add-replace");
    else this.put(entered, entered.part, []);
  }

  private put(entered: Entered, part: Part, old: Part[]): void {
    let id = "";
    const was = old.map((p) => p.name).join(", ");
    store.edit(old.length ? t("do.instead", { part: part.name, old: was }) : t("do.add", { part: part.name }), (d) => {
      id = core.newID(d, "part");
      const made = { ...part, id };
      return old.length
        ? replaceParts(
            d,
            store.activeID,
            old.map((p) => p.id),
            made,
          )
        : addParts(d, store.activeID, [made]);
    });
    store.select(id);
    const own = !part.catalogue && !entered.given;
    const facts = { part: part.name, old: was, mass: massOf(part), basis: word("basis", part.basis) };
    let told = own ? t("add.done", facts) : t(old.length ? "add.told.instead" : "add.told", facts);
    if (entered.unusual) {
      const s = partScale(store.doc!.show);
      const figures = { mass: plain(write(part.mass_g, 0, s)), usual: plain(write(entered.usual_g ?? 0, 0, s)) };
      told += ` ${t(entered.unusual === "light" ? "add.light" : "add.heavy", figures)}`;
    }
    store.tell(told, { label: t("undo"), run: () => store.undo() });
    // Without a mass the next thing to say is how much it weighs.
    if (own) reveal(id, "mass_g");
  }
}

customElements.define("sy-add", AddPart);
