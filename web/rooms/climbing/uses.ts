// How long each gear is used over a day, and how one gets along.

import { html, nothing, type TemplateResult } from "lit";
import { duration } from "./answer.ts";
import { subhead } from "../../elements/copytable.ts";
import { badge } from "../../elements/figure.ts";
import { letters } from "../../app/sides.ts";
import { t } from "../../text/index.ts";
import type { DaySide } from "../../model/types.ts";
import { trim } from "../../model/units.ts";

const shareBar = (share: number) =>
  html`<svg class="bar" viewBox="0 0 60 8" width="60" height="8" aria-hidden="true" focusable="false"><rect y="1" height="6" width=${(60 * share).toFixed(1)} /></svg>`;

// uses is how long each gear is used over the day, and how one gets along.
export function uses(sides: readonly DaySide[], copied = true): TemplateResult {
  const two = sides.length > 1;
  const told = sides.filter((s) => s.ok);
  const gears = [...new Set(told.flatMap((s) => s.gears.map((g) => g.gear)))].sort((a, b) => a - b);
  const modes = [...new Map(told.flatMap((s) => s.modes.map((m) => [m.key, m.label] as const)))];
  const most = Math.max(...told.flatMap((s) => s.gears.map((g) => g.share)), 0.01);
  const heads = sides.map((_, i) => html`<th scope="col" class="right">${two ? badge(letters[i]!) : nothing}<span class="unseen">${letters[i]}</span></th>`);
  const head = copied ? subhead(t("climbing.uses"), t("climbing.uses")) : html`<h3>${t("climbing.uses")}</h3>`;
  return html`${head}
    <table class="lines compared uses">
      <caption class="unseen">
        ${t("climbing.uses")}
      </caption>
      <thead>
        <tr>
          <th scope="col">${t("climbing.gear")}</th>
          ${heads}
        </tr>
      </thead>
      <tbody>
        ${gears.map(
          (n) =>
            html`<tr>
              <th scope="row">${n}</th>
              ${sides.map((s) => {
                const g = s.gears.find((g) => g.gear === n);
                return html`<td class="right">${g ? html`${shareBar(g.share / most)} ${trim(100 * g.share, 1)} ${t("unit.percent")}` : ""}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>
    <table class="lines compared">
      <caption class="unseen">
        ${t("climbing.modes")}
      </caption>
      <thead>
        <tr>
          <th scope="col">${t("climbing.modes")}</th>
          ${heads}
        </tr>
      </thead>
      <tbody>
        ${modes.map(
          ([key, label]) =>
            html`<tr>
              <th scope="row">${label}</th>
              ${sides.map((s) => {
                const m = s.modes.find((m) => m.key === key);
                return html`<td class="right">${m ? duration(m.time_s) : "–"}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>`;
}
