// A chart of differences from what is now, a row each, in groups: a spot with a
// line as far as it may be either side. Nought is now. A table beside it says the
// same.

import { html, nothing, svg, type TemplateResult } from "lit";
import { decimal, signed } from "../model/units.ts";
import { charted } from "./chartFile.ts";
import { step } from "./deltaScale.ts";

export interface Spot {
  name: string;
  delta: number;
  plus: number;
}

export interface SpotSpec {
  label: string; // what somebody is told who does not see it
  wide: number;
  x: string; // the unit
  groups: readonly { name: string; spots: readonly Spot[] }[];
}

const left = 118;
const right = 14;
const row = 17;
const head = 20;

export function spots(s: SpotSpec): TemplateResult | typeof nothing {
  const all = s.groups.flatMap((g) => g.spots);
  if (!all.length) return nothing;
  const least = Math.min(0, ...all.map((p) => p.delta - p.plus));
  const most = Math.max(0, ...all.map((p) => p.delta + p.plus));
  const by = step(Math.max(most - least, 1e-9), 5);
  const from = Math.floor(least / by) * by;
  const to = Math.max(Math.ceil(most / by), Math.round(from / by) + 1) * by;
  const px = (v: number) => left + ((v - from) / (to - from)) * (s.wide - left - right);
  const decimals = Math.max(0, -Math.floor(Math.log10(by) + 1e-9));
  const high = s.groups.reduce((sum, g) => sum + head + g.spots.length * row, 0) + 30;
  const marks = Array.from({ length: Math.round((to - from) / by) + 1 }, (_, i) => from + i * by);
  const zero = (v: number) => Math.abs(v) < by / 1e6;
  let y = 0;
  return charted(
    s.label,
    html`<svg class="chart spots" viewBox="0 0 ${s.wide} ${high}" role="img" aria-label=${s.label}>
    ${marks.map(
      (v) => svg`<path class=${zero(v) ? "axis" : "grid"} d=${`M${px(v).toFixed(1)} 4V${high - 26}`}/>
      <text class="at" x=${px(v).toFixed(1)} y=${high - 14} text-anchor="middle">${zero(v) ? decimal(0, 0) : signed(v, decimals)}</text>`,
    )}
    <text class="at" x=${s.wide - right} y=${high - 2} text-anchor="end">${s.x}</text>
    ${s.groups.map((g) => {
      const top = y;
      y += head + g.spots.length * row;
      return svg`<g class="series rear">
        <text class="name" x="0" y=${top + 14}>${g.name}</text>
        ${g.spots.map((p, i) => {
          const at = top + head + i * row + 8;
          return svg`<text class="at" x=${left - 8} y=${at + 4} text-anchor="end">${p.name}</text>
            <path class="line" d=${`M${px(p.delta - p.plus).toFixed(1)} ${at}H${px(p.delta + p.plus).toFixed(1)}`}/>
            <circle class="marker" cx=${px(p.delta).toFixed(1)} cy=${at} r="3.2"/>`;
        })}
      </g>`;
    })}
  </svg>`,
  );
}
