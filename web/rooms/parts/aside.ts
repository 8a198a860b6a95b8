// Parts that are on no build now and are kept, since more is known of them than of
// those that took their place.

import { html, nothing, type TemplateResult } from "lit";
import { findBuild, fitAside, forgetAside } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { count, t } from "../../text/index.ts";
import { massField } from "../../model/units.ts";
import type { Aside } from "../../model/types.ts";
import { focusSoon } from "../../elements/element.ts";
import { reveal } from "../../elements/lines.ts";
import { foldMoved, foldOpen } from "../../elements/section.ts";

const id = "kept-aside";

export function aside(): TemplateResult | typeof nothing {
  const list = store.doc?.aside ?? [];
  if (!list.length) return nothing;
  return html`<details class="aside" ?open=${foldOpen("parts/aside")} @toggle=${foldMoved("parts/aside")}>
    <summary id=${id}>${count(list.length, "aside.title.one", "aside.title.many")}</summary>
    <p class="fine">${t("aside.lead")}</p>
    <ul>
      ${list.map((a, i) => line(a, i))}
    </ul>
  </details>`;
}

function line(a: Aside, at: number): TemplateResult {
  const unit = massField(store.doc!.show);
  const { part } = a;
  const from = findBuild(store.doc!, a.build)?.name;
  const undoing = { label: t("undo"), run: () => store.undo() };
  return html`<li>
    <span class="name">${part.quantity > 1 ? `${part.quantity} × ` : nothing}${part.name}</span>
    <span class="quiet">${unit.text(part.mass_g)} ±${unit.text(part.half_width_g)} ${unit.unit}, ${t(`basis.${part.basis}.short`)}${from ? `, ${t("aside.from", { build: from })}` : nothing}</span>
    <span class="acts">
      <button
        type="button"
        aria-label=${t("aside.fit.name", { part: part.name, letter: store.letter })}
        @click=${() => {
          let made = "";
          store.edit(t("do.aside.fit", { part: part.name }), (d) => {
            const r = fitAside(d, at, store.activeID);
            made = r.id;
            return r.doc;
          });
          reveal(made);
          store.tell(t("add.done", { part: part.name }), undoing);
        }}
      >
        ${t("aside.fit")}
      </button>
      <button
        type="button"
        class="danger"
        aria-label=${t("aside.forget.name", { part: part.name })}
        @click=${() => {
          store.edit(t("do.aside.forget", { part: part.name }), (d) => forgetAside(d, at));
          focusSoon((store.doc?.aside ?? []).length ? id : "add");
          store.tell(t("aside.forgotten", { part: part.name }), undoing);
        }}
      >
        ${t("aside.forget")}
      </button>
    </span>
  </li>`;
}
