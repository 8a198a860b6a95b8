// A rough road on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, further, ridden, sided } from "./answer.ts";
import { overSpeed } from "./charts.ts";
import { gains } from "./gains.ts";
import { notes } from "./marks.ts";
import { modes } from "./modes.ts";
import { printOver } from "./over.ts";
import { picked } from "./picked.ts";
import { said } from "./settings.ts";
import { comparison } from "../../elements/comparison.ts";
import { saidInput } from "../../elements/inputs.ts";
import { isUnfolded } from "../../elements/section.ts";
import { t } from "../../text/index.ts";

export function printRough(): TemplateResult | typeof nothing {
  if (!isUnfolded("rough")) return nothing;
  const { value } = answer.now();
  if (!value) return nothing;
  const told = notes(sided(value.sides).map(({ letter, side }) => ({ letter, figures: side.figures, marks: side.marks })));
  const curves = further.now().value;
  return html`<section>
    <h2>${t("rough.title")}</h2>
    <p class="caution">${value.caution}</p>
    <p>${value.road.label}, ${Math.round(value.road.speed_m_s * 36) / 10} km/h. ${ridden(value)}</p>
    ${value.words ? html`<p>${value.words}</p>` : nothing} ${value.sides.map((s) => html`<p><strong>${s.name}.</strong> ${s.words ?? s.why}</p>`)}
    ${comparison(t("rough.figures"), told.sides, value.difference)} ${told.list} ${modes(value, false)}
    ${curves ? html`${gains(curves, false)} ${overSpeed(curves, picked.key, 460)} ${printOver(curves)}` : nothing}
    ${value.sides.map((s) => html`<p class="fine"><strong>${s.name}.</strong> ${[...s.settings.map((x) => `${x.label}: ${said(x)}`), ...s.inputs.map(saidInput)].join("; ")}</p>`)}
    <p class="fine">${value.left_out}</p>
  </section>`;
}
