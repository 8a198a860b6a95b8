// Steering on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, compared, sidesOf, states } from "./answer.ts";
import { balance } from "./balance.ts";
import { printPlacements } from "./placements.ts";
import { comparison } from "../../elements/comparison.ts";
import { isUnfolded } from "../../elements/section.ts";
import { t } from "../../text/index.ts";

export function printSteering(): TemplateResult | typeof nothing {
  if (!isUnfolded("steering")) return nothing;
  const { value } = answer.now();
  if (!value) return nothing;
  const list = sidesOf(value);
  return html`<section>
    <h2>${t("steering.title")}</h2>
    <p class="caution">${value.caution}</p>
    <p>${states(list)}</p>
    ${value.words ? html`<p>${value.words}</p>` : nothing}
    ${list.map(({ side }) => html`<p><strong>${side.name}.</strong> ${side.words}</p>`)}
    ${comparison(
      t("steering.plain"),
      compared(list, (s) => [...s.plain, ...s.hand, ...(s.stand?.figures ?? [])]),
      value.difference,
    )}
    ${list.some(({ side }) => side.stand?.typical) ? html`<p class="fine">${t("steering.stand.typical")}</p>` : nothing}
    ${balance(list, false)} ${printPlacements()}
  </section>`;
}
