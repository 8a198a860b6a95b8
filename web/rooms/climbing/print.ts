// A climb and a day on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, duration } from "./answer.ts";
import { isUnfolded } from "../../elements/section.ts";
import { t } from "../../text/index.ts";

export function printClimbing(): TemplateResult | typeof nothing {
  if (!isUnfolded("climbing")) return nothing;
  const { value } = answer.now();
  if (!value) return nothing;
  return html`<section>
    <h2>${t("climbing.title")}</h2>
    <p class="caution">${value.caution}</p>
    ${value.words ? html`<p>${value.words}</p>` : nothing}
    ${value.sides.map((s) => html`<p><strong>${s.name}.</strong> ${s.words ?? s.why} ${s.ok ? `${t("climbing.time")}: ${duration(s.time_s)} ±${duration(s.time_plus_s)}` : nothing}</p>`)}
    ${value.difference ? html`<p>${value.difference.words}</p>` : nothing} ${value.day?.difference ? html`<p>${value.day.name}: ${value.day.difference.words}</p>` : nothing}
  </section>`;
}
