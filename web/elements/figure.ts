// A number set so that numbers under each other line up on their decimal sign,
// with its doubt behind it in smaller type.

import { html, nothing, type TemplateResult } from "lit";
import type { Written } from "../model/units.ts";

export function number(w: Written, unit = false): TemplateResult {
  return html`<span class="num"
    ><span class="whole">${w.whole}</span><span class="rest">${w.rest}</span>${w.plus ? html`<span class="plus">±${w.plus}</span>` : nothing}${
      unit && w.unit ? html`<span class="unit">&nbsp;${w.unit}</span>` : nothing
    }</span
  >`;
}

export function badge(letter: "A" | "B"): TemplateResult {
  return html`<span class="badge ${letter}" aria-hidden="true">${letter}</span>`;
}
