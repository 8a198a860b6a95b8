// How much room there is: under the cranks, at the tyres, at the knees, and for what
// is in the main triangle or hangs from the bar; and the largest frame bag, to cut out.

import { html, nothing, type TemplateResult } from "lit";
import { core, CoreError } from "../../core/core.ts";
import { download, fileName } from "../../app/files.ts";
import { letters } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { Answer } from "../../elements/answer.ts";
import { subhead } from "../../elements/copytable.ts";
import { badge, number } from "../../elements/figure.ts";
import { t } from "../../text/index.ts";
import { figureScale, plain, write } from "../../model/units.ts";
import type { Gap } from "../../model/types.ts";

const answer = new Answer((document) => core.clearances(document));

export function room(): TemplateResult {
  const { value } = answer.seen();
  if (!value) return html`${nothing}`;
  const s = figureScale("mm", store.doc!.show);
  const two = value.sides.length > 1;
  const verdict = (g: Gap) => t(g.text ? "clearance.none" : g.verdict === "more" ? "clearance.room" : "clearance.open");
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
                <th scope="row">${two && letters[i] ? badge(letters[i]) : nothing} ${g.label}${g.text ? html` <span class="touches">${g.text}</span>` : nothing}</th>
                <td>${number(write(g.pose_mm, g.pose_plus, s))}</td>
                <td>${number(write(g.least_mm, g.least_plus, s))}</td>
                <td class="what ${g.verdict === "less" ? "alarm" : ""}">${verdict(g)}</td>
              </tr>`,
          ),
        )}
      </tbody>
    </table>
    <p class="fine">${value.caution}</p>
    ${value.sides.map(
      (side, i) =>
        side.bag &&
        html`<p class="framebag">
          ${two && letters[i] ? badge(letters[i]) : nothing} ${t("framebag.largest")}
          <strong>${plain(write(side.bag.long_mm, side.bag.plus, s))}</strong> ${t("framebag.by")}
          <strong>${plain(write(side.bag.high_mm, side.bag.plus, s))}</strong>. <span class="fine">${side.bag.text}</span>
          <button type="button" @click=${() => saveOutline(side.build, side.name)}>${t("framebag.save")}${two ? html`<span class="unseen"> (${side.name})</span>` : nothing}</button>
        </p>`,
    )}`;
}

function saveOutline(build: string, called: string): void {
  try {
    const name = fileName(t("framebag.file", { build: called }), ".svg");
    download(name, core.frameBag(store.text, build), "image/svg+xml");
    store.tell(t("file.saved", { name }));
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    store.tell(e.message, undefined, "error");
  }
}
