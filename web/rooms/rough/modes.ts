// The ways in which a bike swings by itself: how fast, how much damped, and what
// moves, in words and drawn.

import { html, nothing, svg, type TemplateResult } from "lit";
import { sided, type Ridden } from "./answer.ts";
import { subhead } from "../../elements/copytable.ts";
import { badge, number } from "../../elements/figure.ts";
import { t } from "../../text/index.ts";
import type { RoadAnswer, RoadMode, RoadSketch } from "../../model/types.ts";
import { plainScale, write } from "../../model/units.ts";
import { roomScale } from "../../elements/comparison.ts";

const wide = 120; // of a sketch
const reach = 15; // of the longest arrow

function arrow(x: number, y: number, up: number): TemplateResult | typeof nothing {
  const long = up * reach;
  if (Math.abs(long) < 1.5) return nothing;
  const tip = y - long;
  const back = Math.sign(long) * Math.min(4, Math.abs(long));
  return svg`<path class="way" d=${`M${x.toFixed(1)} ${y.toFixed(1)}V${tip.toFixed(1)}m-3 ${back.toFixed(1)}l3 ${(-back).toFixed(1)}l3 ${back.toFixed(1)}`}/>`;
}

// sketch draws the bike in its pose, with arrows where it goes up or down at the
// moment when most of it does: the axles, the frame over each of them, and a rider
// who stands.
function sketch({ shape: s, key }: RoadMode, bike: RoadSketch): TemplateResult {
  const [rear, front] = bike.wheels_mm as [[number, number, number], [number, number, number]];
  const left = rear[0] - rear[2];
  const k = wide / (front[0] + front[2] - left);
  const points = bike.lines.flatMap((l) => l.points_mm);
  const high = Math.max(...points.map((p) => p[1]!), rear[1] + rear[2]) * k + reach / 2;
  const at = (x: number, z: number): [number, number] => [(x - left) * k, high - z * k];
  const line = (through: readonly number[][]) =>
    `M${through
      .map((p) =>
        at(p[0]!, p[1]!)
          .map((v) => v.toFixed(1))
          .join(" "),
      )
      .join("L")}`;
  const wheel = (w: readonly number[]) => {
    const [x, y] = at(w[0]!, w[1]!);
    return svg`<circle cx=${x.toFixed(1)} cy=${y.toFixed(1)} r=${(w[2]! * k).toFixed(1)} />`;
  };
  // The frame is one piece: over the axles it is where a rod through it would be.
  const rod = Math.max(...bike.lines.filter((l) => l.of === "frame").flatMap((l) => l.points_mm.map((p) => p[1]!)));
  const goes = (x: number, z: number, up: number) => arrow(...at(x, z), up);
  return html`<svg class="modesketch" viewBox="0 0 ${wide} ${(high + 2).toFixed(0)}" aria-hidden="true">
    ${wheel(rear)} ${wheel(front)}
    ${bike.lines.map((l) => svg`<path class=${l.of} d=${line(l.points_mm)} />`)}
    <path class="rod" d=${line([
      [rear[0], rod],
      [front[0], rod],
    ])} />
    ${goes(rear[0], rear[1], s.axle_rear[0]!)} ${goes(front[0], front[1], s.axle_front[0]!)} ${goes(rear[0], rod, s.frame_rear[0]!)}
    ${goes(front[0], rod, s.frame_front[0]!)} ${key === "body" && bike.rider_mm ? goes(bike.rider_mm[0]!, bike.rider_mm[1]!, s.rider[0]!) : nothing}
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
              <td class="what">${side.sketch ? sketch(m, side.sketch) : nothing}</td>
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
