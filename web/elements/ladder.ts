// Gears as marks on a line, a line for each build, over their development on a
// scale of equal steps: even steps stand evenly. A table beside it says the same.

import { html, nothing, svg, type TemplateResult } from "lit";
import { decimal } from "../model/units.ts";
import { charted } from "./chartFile.ts";

export interface Rung {
  at: number; // m
  weak: boolean; // is left out by the rule
}

export interface LadderSpec {
  label: string;
  wide: number;
  x: string;
  lines: readonly { name: string; beside: string; rungs: readonly Rung[] }[];
}

const left = 8;
const right = 12;
const row = 46;

export function ladder(s: LadderSpec): TemplateResult | typeof nothing {
  const all = s.lines.flatMap((l) => l.rungs.map((r) => r.at)).filter((v) => v > 0);
  if (!all.length) return nothing;
  const low = Math.min(...all) / 1.08;
  const high = Math.max(...all) * 1.08;
  const px = (v: number) => left + (Math.log(v / low) / Math.log(high / low)) * (s.wide - left - right);
  const high0 = s.lines.length * row + 34;
  const marks = [0.5, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 12, 15].filter((v) => v > low && v < high);
  return charted(
    s.label,
    html`<svg class="chart ladder" viewBox="0 0 ${s.wide} ${high0}" role="img" aria-label=${s.label}>
    ${marks.map(
      (v) => svg`<path class="grid" d="M${px(v).toFixed(1)} 4V${high0 - 26}"/>
      <text class="at" x=${px(v).toFixed(1)} y=${high0 - 14} text-anchor="middle">${decimal(v, v % 1 ? 1 : 0)}</text>`,
    )}
    <text class="at" x=${s.wide - right} y=${high0 - 2} text-anchor="end">${s.x}</text>
    ${s.lines.map((l, i) => {
      const y = i * row + 32;
      const there = l.rungs.filter((r) => r.at > 0);
      const ends = there.map((r) => px(r.at));
      return svg`<g class="series">
        <text class="name" x=${left} y=${y - 16}>${l.name}<tspan class="at" dx="8">${l.beside}</tspan></text>
        ${ends.length ? svg`<path class="axis" d="M${Math.min(...ends).toFixed(1)} ${y}H${Math.max(...ends).toFixed(1)}"/>` : nothing}
        ${there.map((r) => svg`<path class=${r.weak ? "tick" : "line"} d=${`M${px(r.at).toFixed(1)} ${y - (r.weak ? 4 : 9)}V${y + (r.weak ? 4 : 9)}`}/>`)}
      </g>`;
    })}
  </svg>`,
  );
}
