// Gears on paper.

import { html, nothing, type TemplateResult } from "lit";
import { answer, comparedIn } from "./answer.ts";
import { comparison } from "../../elements/comparison.ts";
import { isUnfolded } from "../../elements/section.ts";
import { t } from "../../text/index.ts";

export function printGears(): TemplateResult | typeof nothing {
  if (!isUnfolded("gears")) return nothing;
  const { value } = answer.now();
  if (!value) return nothing;
  return html`<section>
    <h2>${t("gears.title")}</h2>
    <p class="caution">${value.caution}</p>
    ${value.words ? html`<p>${value.words}</p>` : nothing}
    ${value.builds.map((b) => (b.words ? html`<p><strong>${b.name}.</strong> ${b.words}</p>` : nothing))}
    ${comparison(
      t("gears.figures"),
      comparedIn(value).map(({ letter, build }) => ({ letter, figures: build.figures })),
      value.difference,
    )}
  </section>`;
}
