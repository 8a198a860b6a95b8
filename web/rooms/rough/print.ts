// A rough road on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, figuresOf } from "./answer.ts";
import { comparison } from "../../elements/comparison.ts";
import { isUnfolded } from "../../elements/section.ts";
import { t } from "../../text/index.ts";

export function printRough(): TemplateResult | typeof nothing {
  if (!isUnfolded("rough")) return nothing;
  const { value } = answer.now();
  if (!value) return nothing;
  return html`<section>
    <h2>${t("rough.title")}</h2>
    <p class="caution">${value.caution}</p>
    <p>${value.road.label}</p>
    ${value.words ? html`<p>${value.words}</p>` : nothing} ${value.sides.map((s) => html`<p><strong>${s.name}.</strong> ${s.words ?? s.why}</p>`)}
    ${comparison(t("rough.figures"), figuresOf(value), value.difference)}
    <p class="fine">${value.left_out}</p>
  </section>`;
}
