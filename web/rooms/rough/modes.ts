// The ways in which a bike swings by itself: how fast, how much damped, and what
// moves, in words and drawn.

import { html, nothing, svg, type TemplateResult } from "lit";
import { sided, type Ridden } from "./answer.ts";
import { subhead } from "../../elements/copytable.ts";
import { badge, number } from "../../elements/figure.ts";
import { t } from "../../text/index.ts";
import type { RoadAnswer, RoadMode } from "../../model/types.ts";
import { plainScale, write } from "../../model/units.ts";
import { roomScale } from "../../elements/comparison.ts";

const reach = 15; // of the longest arrow

function arrow(x: number, y: number, up: number): TemplateResult | typeof nothing {
  const long = up * reach;
  if (Math.abs(long) < 1.5) return nothing;
  const tip = y - long;
  const back = Math.sign(long) * Math.min(4, Math.abs(long));
  return svg`<path class="way" d=${`M${x} ${y}V${tip.toFixed(1)}m-3 ${back.toFixed(1)}l3 ${(-back).toFixed(1)}l3 ${back.toFixed(1)}`}/>`;
}

// sketch draws wheels and frame, with arrows where they go up or down at the moment
// when most of them do.
function sketch(m: RoadMode): TemplateResult {
  const s = m.shape;
  return html`<svg class="modesketch" viewBox="0 0 108 66" aria-hidden="true">
    <circle cx="22" cy="47" r="14" />
    <circle cx="86" cy="47" r="14" />
    <path d="M10 33H98M22 47L44 33M86 47L82 33" />
    ${arrow(22, 47, s.axle_rear[0]!)} ${arrow(86, 47, s.axle_front[0]!)} ${arrow(34, 33, s.frame_rear[0]!)} ${arrow(74, 33, s.frame_front[0]!)}
    ${m.key === "body" ? svg`<circle cx="54" cy="22" r="5"/>${arrow(54, 22, s.rider[0]!)}` : nothing}
  </svg>`;
}

function table(sides: readonly { letter: "A" | "B"; side: Ridden }[]): TemplateResult {
  const hz = plainScale("Hz", 1);
  const damping = roomScale("share");
  return html`<table class="lines compared modes">
    <caption class="unseen">
      ${t("rough.modes")}
    </caption>
    <thead>
      <tr>
        <th scope="col">${t("rough.mode")}</th>
        <th scope="col" class="right doubt">Hz</th>
        <th scope="col" class="right doubt">${t("rough.damping")}, ${damping.unit}</th>
        <th scope="col"><span class="unseen">${t("rough.moves")}</span></th>
      </tr>
    </thead>
    <tbody>
      ${sides.flatMap(({ letter, side }) =>
        side.modes.map(
          (m) =>
            html`<tr>
              <th scope="row">${sides.length > 1 ? badge(letter) : nothing} ${m.label}<span class="below">${m.words}</span></th>
              <td>${number(write(m.frequency_hz, m.frequency_hz_plus, hz))}</td>
              <td>${number(write(m.damping, m.damping_plus, damping))}</td>
              <td class="what">${sketch(m)}</td>
            </tr>`,
        ),
      )}
    </tbody>
  </table>`;
}

export function modes(value: RoadAnswer, copied = true): TemplateResult {
  const head = copied ? subhead(t("rough.modes"), t("rough.modes")) : html`<h3>${t("rough.modes")}</h3>`;
  return html`${head} ${table(sided(value.sides))}`;
}
