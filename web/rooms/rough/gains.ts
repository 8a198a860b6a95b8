// What one side would need to do as well as the other.

import { html, nothing, type TemplateResult } from "lit";
import { t } from "../../text/index.ts";
import type { RoadCurves } from "../../model/types.ts";

// gains are told of two sides only; without any, empty says why.
export function gains(value: RoadCurves, empty = true): TemplateResult | typeof nothing {
  if (value.sides.filter((s) => s.ok).length < 2 || (!empty && !value.gains.length)) return nothing;
  return html`<h3>${t("rough.gains")}</h3>
    ${
      value.gains.length
        ? html`<ul class="advice">
            ${value.gains.map((g) => html`<li>${g.words}</li>`)}
          </ul>`
        : html`<p class="quiet">${t("rough.gains.none")}</p>`
    }`;
}
