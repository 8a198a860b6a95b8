// Adding a part: search the catalogue, or type a name and a mass of one's own.

import { html, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { addParts } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { Build, Entry, Part, Wanted } from "../../model/types.ts";
import "../../elements/combo.ts";
import type { Offer } from "../../elements/combo.ts";
import { StoreElement } from "../../elements/element.ts";
import { reveal } from "../../elements/lines.ts";
import { offer, type Typed } from "../../elements/offer.ts";

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
