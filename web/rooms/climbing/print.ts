// A climb and a day on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, duration } from "./answer.ts";
import { same } from "./same.ts";
import { uses } from "./uses.ts";
import { saidInput } from "../../elements/inputs.ts";
import { isUnfolded } from "../../elements/section.ts";
import { t } from "../../text/index.ts";
import type { ClimbAnswer } from "../../model/types.ts";

// inputs are all that it is reckoned with: of the first side, and what is otherwise
// of the second.
function inputs({ sides }: ClimbAnswer): TemplateResult | typeof nothing {
  const [first, second] = sides.filter((s) => s.ok);
  if (!first) return nothing;
  const own = (second?.inputs ?? []).filter((i) => !first.inputs.some((x) => same(i, x) && x.value === i.value && x.half_width === i.half_width));
  const list = (of: typeof own) => of.map(saidInput).join("; ");
  return html`<h3>${t("climbing.inputs")}</h3>
    <p class="fine">${list(first.inputs)}.</p>
    ${own.length ? html`<p class="fine"><strong>${second!.name}.</strong> ${list(own)}.</p>` : nothing}`;
}

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
    ${value.day?.sides.some((s) => s.ok) ? uses(value.day.sides, false) : nothing} ${inputs(value)}
  </section>`;
}
