// Totals and figures on paper.

import { html, nothing, type TemplateResult } from "lit";
import { deltaLikely, signs, verdictText } from "../../elements/verdict.ts";
import { number } from "../../elements/figure.ts";
import { lettersPrinted, nameOf } from "../../elements/paper.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { Figure } from "../../model/types.ts";
import { alone, between, figureScale, plain, write } from "../../model/units.ts";

export function printTotals(): TemplateResult {
  const s = figureScale("g", store.doc!.show);
  const d = store.difference?.figures.find((f) => f.key === "total");
  return html`<section class="totals">
    ${lettersPrinted().map((letter) => {
      const total = store.shown(letter)?.figures.find((f) => f.key === "total");
      return html`<div>
        <p class="who"><span class="badge ${letter}">${letter}</span> ${nameOf(letter)}</p>
        <p class="total">${total ? plain(alone(total.value, total.plus, s)) : "–"}</p>
        <p class="likely">${total ? (total.plus > 0 ? t("likely", between(total.value, total.plus, s)) : t("likely.exact")) : t("builds.unweighed")}</p>
      </div>`;
    })}
    ${
      d
        ? html`<div>
          <p class="who">${t("table.diff")}</p>
          <p class="total">${plain(alone(d.delta, d.plus, s, true))}</p>
          <p class="likely">${signs[d.verdict]} ${verdictText(d)}, ${deltaLikely(d, s)}</p>
        </div>`
        : nothing
    }
  </section>`;
}

export function printFigures(): TemplateResult {
  const d = store.difference;
  const show = store.doc!.show;
  const of = lettersPrinted().map((l) => store.shown(l)?.figures ?? []);
  const all = new Map<string, Figure>(of.flat().map((f) => [f.key, f]));
  const rows = [
    ...(of[0]!.length ? of[0]! : [...all.values()]).map((f) => f.key),
    ...[...all.keys()].filter((k) => of[0]!.length && !of[0]!.some((f) => f.key === k)),
  ];
  return html`<section>
    <h2>${t("report.figures")}</h2>
    <table class="lines">
      <thead>
        <tr>
          <th scope="col">${t("table.figure")}</th>
          ${lettersPrinted().map((l) => html`<th scope="col" class="right">${l}</th>`)}
          ${
            d
              ? html`<th scope="col" class="right">${t("table.diff")}</th>
                <th scope="col">${t("table.verdict")}</th>`
              : nothing
          }
        </tr>
      </thead>
      <tbody>
        ${rows.map((key) => {
          const s = figureScale(all.get(key)!.unit, show, key);
          const c = d?.figures.find((f) => f.key === key);
          return html`<tr>
            <th scope="row">${word("figure", key)}${s.unit ? html`, <span class="unit">${s.unit}</span>` : nothing}</th>
            ${of.map((list) => {
              const f = list.find((o) => o.key === key);
              return html`<td class="right">${f ? number(write(f.value, f.plus, s)) : "–"}</td>`;
            })}
            ${d ? html`<td class="right">${c ? number(write(c.delta, c.plus, s, true)) : "–"}</td><td>${c ? `${signs[c.verdict]} ${verdictText(c)}` : ""}</td>` : nothing}
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
}
