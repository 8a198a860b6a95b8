// What is told of a thing that several builds or loads share.

import { html, nothing, type TemplateResult } from "lit";
import type { BetterKnown, SharedThing } from "../model/types.ts";
import { massField } from "../model/units.ts";
import type { Sort } from "../app/sharing.ts";
import { store } from "../app/state.ts";
import { brief, t } from "../text/index.ts";

function names(sort: Sort, ids: readonly string[]): string {
  const list = (sort === "parts" ? store.doc?.builds : store.doc?.loads) ?? [];
  return ids.map((id) => brief(list.find((x) => x.id === id)?.name || id)).join(", ");
}

// alsoIn says in how many builds or loads a thing is.
export function alsoIn(sort: Sort, s: SharedThing | undefined): TemplateResult | typeof nothing {
  if (!s?.also) return nothing;
  return html`<span class="also" title=${names(sort, s.also)}>${t(sort === "parts" ? "shared.builds" : "shared.loads", { n: s.also.length + 1 })}</span>`;
}

// betterKnown offers what another knows better.
export function betterKnown(
  s: SharedThing | undefined,
  name: string,
  take: (known: Pick<BetterKnown, "mass_g" | "half_width_g" | "basis">) => void,
): TemplateResult | typeof nothing {
  const b = s?.better;
  if (!b) return nothing;
  const unit = massField(store.doc!.show);
  const mass = `${unit.text(b.mass_g)} ±${unit.text(b.half_width_g)}\u00a0${unit.unit}`;
  const of = [...(store.doc?.builds ?? []), ...(store.doc?.loads ?? [])].find((x) => x.id === b.in)?.name ?? b.in;
  return html`<p class="better">
    <span>${t("shared.better", { name: of, mass, basis: t(`basis.${b.basis}.short`) })}</span>
    <button
      type="button"
      class="plain strong"
      aria-label=${t("shared.take.name", { name, mass })}
      @click=${() => take({ mass_g: b.mass_g, half_width_g: b.half_width_g, basis: b.basis })}
    >
      ${t("shared.take")}
    </button>
  </p>`;
}

// sharedNote says in the details what that means, and lets the thing be one of its own.
export function sharedNote(sort: Sort, s: SharedThing | undefined, own: () => void): TemplateResult | typeof nothing {
  if (!s?.also) return nothing;
  return html`<div class="shares">
    <p class="fine">${t(sort === "parts" ? "shared.note.builds" : "shared.note.loads", { names: names(sort, s.also) })}</p>
    <button type="button" @click=${own}>${t("shared.apart")}</button>
  </div>`;
}
