// A small line chart of figures against the slope of the road, drawn as in a
// printed handbook: hairline axes, lines named at their ends, the doubt as a
// band. It is for the eye; a table beside it says the same.

import { html, nothing, svg, type TemplateResult } from "lit";
import { decimal, signed } from "../model/units.ts";
import { charted } from "./chartFile.ts";
import { step } from "./deltaScale.ts";

export interface Series {
  name: string; // at the end of its line
  tone: string; // class of its colour
  dashed: boolean;
  points: { x: number; y: number; plus: number }[];
}

export interface ChartSpec {
  label: string;
  wide: number;
  high: number;
  unit: string; // of y
  down: string;
  up: string;
  series: Series[];
}

const left = 40;
const right = 56;
const top = 22;
const bottom = 34;

// spread moves names at the ends of lines apart, so that none lies on another.
function spread(at: number[], gap: number, low: number, high: number): number[] {
  const order = at.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y);
  for (let k = 1; k < order.length; k++) order[k]!.y = Math.max(order[k]!.y, order[k - 1]!.y + gap);
  const over = (order.at(-1)?.y ?? 0) - high;
  if (over > 0) {
    order.at(-1)!.y -= over;
    for (let k = order.length - 2; k >= 0; k--) order[k]!.y = Math.min(order[k]!.y, order[k + 1]!.y - gap);
  }
  const out = at.slice();
  for (const o of order) out[o.i] = Math.max(o.y, low);
  return out;
}

// marker tells a line apart by its shape: a ring in front, a square at the rear.
function marker(tone: string, x: number, y: number): TemplateResult {
  const r = 2.8;
  return tone === "front"
    ? svg`<circle class="marker" cx=${x.toFixed(1)} cy=${y.toFixed(1)} r=${r} />`
    : svg`<rect class="marker" x=${(x - r).toFixed(1)} y=${(y - r).toFixed(1)} width=${2 * r} height=${2 * r} />`;
}

export function chart(s: ChartSpec): TemplateResult | typeof nothing {
  const all = s.series.flatMap((l) => l.points);
  if (all.length < 2) return nothing;
  const x0 = Math.min(...all.map((p) => p.x));
  const x1 = Math.max(...all.map((p) => p.x));
  const need = Math.max(...all.map((p) => p.y + p.plus), 1e-9);
  const least = Math.min(...all.map((p) => p.y - p.plus), 0);
  const mark = step(need - least, 5);
  const y0 = Math.floor(least / mark) * mark;
  const y1 = Math.ceil(need / mark) * mark;
  const px = (x: number) => left + ((x - x0) / (x1 - x0)) * (s.wide - left - right);
  const py = (y: number) => s.high - bottom - ((y - y0) / (y1 - y0)) * (s.high - top - bottom);
  const at = (x: number, y: number) => `${px(x).toFixed(1)} ${py(y).toFixed(1)}`;
  const decimals = Math.max(0, -Math.floor(Math.log10(mark) + 1e-9));
  const rows = [];
  for (let i = 0; y0 + i * mark <= y1 + mark / 1e6; i++) {
    const y = y0 + i * mark;
    rows.push(svg`<path class=${Math.abs(y) < mark / 1e6 ? "axis" : "grid"} d="M${left} ${py(y).toFixed(1)}H${s.wide - right}"/>
      <text class="at" x=${left - 6} y=${(py(y) + 3.5).toFixed(1)} text-anchor="end">${decimal(y, decimals)}</text>`);
  }
  const columns = [];
  for (let i = Math.ceil(x0 / 0.1 - 1e-9); i <= x1 / 0.1 + 1e-9; i++) {
    const x = i * 0.1;
    columns.push(svg`<path class=${i === 0 ? "level" : "tick"} d=${i === 0 ? `M${px(x).toFixed(1)} ${top}V${s.high - bottom}` : `M${px(x).toFixed(1)} ${s.high - bottom}v4`} />
      <text class="at" x=${px(x).toFixed(1)} y=${s.high - bottom + 16} text-anchor="middle">${i === 0 ? "0" : signed(i * 10, 0)}</text>`);
  }
  const ends = spread(
    s.series.map((l) => py(l.points.at(-1)?.y ?? 0)),
    12,
    top,
    s.high - bottom,
  );
  const line = (l: Series, i: number) => {
    const there = l.points;
    if (there.length < 2) return nothing;
    const band = `M${there.map((p) => at(p.x, p.y + p.plus)).join("L")}L${there
      .toReversed()
      .map((p) => at(p.x, p.y - p.plus))
      .join("L")}z`;
    return svg`<g class=${`series ${l.tone} ${l.dashed ? "dashed" : ""}`}>
      <path class="band" d=${band}/>
      <path class="line" d=${`M${there.map((p) => at(p.x, p.y)).join("L")}`}/>
      ${l.tone === "front" || l.tone === "rear" ? there.filter((_, i) => i % 2 === 0).map((p) => marker(l.tone, px(p.x), py(p.y))) : nothing}
      <text class="name" x=${s.wide - right + 6} y=${(ends[i]! + 4).toFixed(1)}>${l.name}</text>
    </g>`;
  };
  return charted(
    s.label,
    html`<svg class="chart" viewBox="0 0 ${s.wide} ${s.high}" role="img" aria-label=${s.label}>
    ${rows} ${columns}
    <text class="unit" x=${left - 6} y="9" text-anchor="end">${s.unit}</text>
    <text class="at" x=${left} y=${s.high - 4} text-anchor="start">◄ ${s.down}</text>
    <text class="at" x=${s.wide - right} y=${s.high - 4} text-anchor="end">${s.up} ►</text>
    ${s.series.map(line)}
  </svg>`,
  );
}
