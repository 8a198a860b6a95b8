// Loads held against ratings, on paper.

import { html, nothing, type TemplateResult } from "lit";
import { number } from "../../elements/figure.ts";
import { lettersPrinted } from "../../elements/paper.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { Headroom } from "../../model/types.ts";
import { figureScale, plain, plainScale, write } from "../../model/units.ts";

// rated sets loads against the limits that makers state.
export function printRatings(): TemplateResult | typeof nothing {
  const of = lettersPrinted().flatMap((letter) => {
    const s = store.side(letter);
    return (s?.ratings?.list ?? []).map((h) => ({ letter, h }));
  });
  if (!of.length) return nothing;
  const scale = (h: Headroom) => (h.unit === "l" ? plainScale(t("unit.l"), 1) : figureScale("g", store.doc!.show));
  return html`<section>
    <h2>${t("ratings.title")}</h2>
    <table class="lines">
      <thead>
        <tr>
          <th scope="col"></th>
          <th scope="col">${t("ratings.what")}</th>
          <th scope="col" class="right">${t("ratings.load")}</th>
          <th scope="col" class="right">${t("ratings.limit")}</th>
          <th scope="col"></th>
        </tr>
      </thead>
      <tbody>
        ${of.map(
          ({ letter, h }) =>
            html`<tr>
              <th scope="row">${letter}</th>
              <td>${word("rating", h.what)}</td>
              <td class="right">${number(write(h.load, h.plus, scale(h)))}</td>
              <td class="right">${plain(write(h.limit, 0, scale(h)))}</td>
              <td>${h.text}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="caution">${t("limits.caution")}</p>
  </section>`;
}
