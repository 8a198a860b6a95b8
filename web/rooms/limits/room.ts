// How much room there is: under the cranks, at the rear tyre, at the knees.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { letters } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { Answer } from "../../elements/answer.ts";
import { subhead } from "../../elements/copytable.ts";
import { badge, number } from "../../elements/figure.ts";
import { t } from "../../text/index.ts";
import { figureScale, write } from "../../model/units.ts";
import type { Gap } from "../../model/types.ts";

const answer = new Answer((document) => core.clearances(document));

export function room(): TemplateResult {
  const { value } = answer.seen();
  if (!value) return html`${nothing}`;
  const s = figureScale("mm", store.doc!.show);
  const two = value.sides.length > 1;
  const verdict = (g: Gap) => g.text ?? t(g.verdict === "more" ? "clearance.room" : "clearance.open");
  return html`${subhead(t("clearance.title"), t("clearance.title"))}
    <table class="lines compared">
      <caption class="unseen">
        ${t("clearance.title")}
      </caption>
      <thead>
        <tr>
          <th scope="col">${t("clearance.between")}</th>
          <th scope="col" class="right doubt">${t("clearance.pose")}, ${s.unit}</th>
          <th scope="col" class="right doubt">${t("clearance.least")}, ${s.unit}</th>
          <th scope="col"><span class="unseen">${t("rooms.verdict")}</span></th>
        </tr>
      </thead>
      <tbody>
        ${value.sides.flatMap((side, i) =>
          side.gaps.map(
            (g) =>
              html`<tr>
                <th scope="row">${two && letters[i] ? badge(letters[i]) : nothing} ${g.label}</th>
                <td>${number(write(g.pose_mm, g.pose_plus, s))}</td>
                <td>${number(write(g.least_mm, g.least_plus, s))}</td>
                <td class="what ${g.verdict === "less" ? "alarm" : ""}">${verdict(g)}</td>
              </tr>`,
          ),
        )}
      </tbody>
    </table>
    <p class="fine">${value.caution}</p>`;
}
