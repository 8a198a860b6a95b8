// What each side carries, on paper.

import { html, nothing, type TemplateResult } from "lit";
import { number } from "../../elements/figure.ts";
import { lettersPrinted } from "../../elements/paper.ts";
import { findLoad } from "../../app/loadEdit.ts";
import type { Letter } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import { figureScale, partScale, plain, write } from "../../model/units.ts";

export function printLoads(): (TemplateResult | typeof nothing)[] {
  return lettersPrinted().map(load);
}

// load lists what a side carries, once when both carry the same.
function load(letter: Letter): TemplateResult | typeof nothing {
  const side = store.side(letter);
  const l = side?.load ? findLoad(store.doc!, side.load) : undefined;
  const same = store.side("A")?.load === store.side("B")?.load;
  if (!side || !l || (letter === "B" && same)) return nothing;
  const s = partScale(store.doc!.show);
  const told = new Map(side.bags.map((b) => [b.id, b]));
  return html`<section>
    <h2>${t("report.load", { letter: same ? "A, B" : letter, load: l.name })}</h2>
    ${side.body ? html`<p>${store.doc!.riders?.find((r) => r.id === side.body!.rider)?.name}: ${plain(write(side.body.mass_g, side.body.plus_g, figureScale("g", store.doc!.show)))}</p>` : nothing}
    <table class="lines">
      <thead>
        <tr>
          <th scope="col">${t("report.bag")}</th>
          <th scope="col">${t("report.goods")}</th>
          <th scope="col" class="right">${t("report.together")}, ${s.unit}</th>
        </tr>
      </thead>
      <tbody>
        ${l.bags.map((b) => {
          const r = told.get(b.id);
          const goods = l.goods.filter((g) => g.in === b.id).map((g) => (g.quantity > 1 ? `${g.quantity} × ${g.name}` : g.name));
          return html`<tr>
            <th scope="row">${b.name}</th>
            <td>${goods.join(", ")}</td>
            <td class="right">${r?.ok ? number(write(r.whole_g, r.whole_plus_g, s)) : "–"}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
}
