// Steering on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, compared, sidesOf } from "./answer.ts";
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
    ${value.words ? html`<p>${value.words}</p>` : nothing}
    ${list.map(({ side }) => html`<p><strong>${side.name}.</strong> ${side.words}</p>`)}
    ${comparison(
      t("steering.plain"),
      compared(list, (s) => [...s.plain, ...s.hand, ...(s.stand?.figures ?? [])]),
      value.difference,
    )}
  </section>`;
}
