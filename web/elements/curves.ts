// A line chart of figures over anything that grows from left to right, such as a
// speed, drawn as in a printed handbook. It is for the eye; a table beside it
// says the same.

import { html, nothing, svg, type TemplateResult } from "lit";
import { decimal } from "../model/units.ts";
import { charted } from "./chartFile.ts";
import { step } from "./deltaScale.ts";

export interface Curve {
  name: string; // at the end of its line
  tone: "" | "front" | "rear"; // front is the thin line, rear the thick one
  dashed: boolean;
  points: readonly { x: number; y: number; plus?: number }[];
}

export interface CurveSpec {
  label: string; // what somebody is told who does not see it
  wide: number;
  high: number;
  x: string; // what grows to the right, with its unit
  y: string; // the unit of what is drawn
  curves: readonly Curve[];
  least?: number; // of y, where more would hide what matters
  most?: number;
  octaves?: boolean; // x grows by factors, as a frequency does
}

const left = 44;
const right = 58;
const top = 22;
const bottom = 34;

function marks(from: number, to: number, many: number): { at: number[]; decimals: number } {
  const by = step(Math.max(to - from, 1e-9), many);
  const at = [];
  for (let i = Math.ceil(from / by - 1e-9); i * by <= to + by * 1e-6; i++) at.push(i * by);
  return { at, decimals: Math.max(0, -Math.floor(Math.log10(by) + 1e-9)) };
}

// octaves are the marks of what grows by factors: 1, 2 and 5 of every power of ten.
function octaves(from: number, to: number): { at: number[]; decimals: number } {
  const at = [];
  for (let power = 10 ** Math.floor(Math.log10(from)); power <= to; power *= 10)
    at.push(...[1, 2, 5].map((m) => m * power).filter((x) => x >= from && x <= to));
  return { at, decimals: 0 };
}

export function curves(s: CurveSpec): TemplateResult | typeof nothing {
  const drawn = s.curves.filter((c) => c.points.length > 1);
  const all = drawn.flatMap((c) => c.points);
  if (all.length < 2) return nothing;
  const x0 = Math.min(...all.map((p) => p.x));
  const x1 = Math.max(...all.map((p) => p.x));
  const bound = (v: number) => Math.min(Math.max(v, s.least ?? -Infinity), s.most ?? Infinity);
  const low = Math.min(0, ...all.map((p) => bound(p.y - (p.plus ?? 0))));
  const high = Math.max(0, ...all.map((p) => bound(p.y + (p.plus ?? 0))));
  const rows = marks(low, high > low ? high : low + 1, 5);
  const by = rows.at.length > 1 ? rows.at[1]! - rows.at[0]! : 1;
  const y0 = Math.floor(low / by + 1e-9) * by;
  const y1 = Math.max(Math.ceil(high / by - 1e-9) * by, y0 + by);
  const along = s.octaves ? Math.log : (x: number) => x;
  const px = (x: number) => left + ((along(x) - along(x0)) / (along(x1) - along(x0) || 1)) * (s.wide - left - right);
  const py = (y: number) => s.high - bottom - ((bound(y) - y0) / (y1 - y0)) * (s.high - top - bottom);
  const at = (x: number, y: number) => `${px(x).toFixed(1)} ${py(y).toFixed(1)}`;
  const ends: number[] = [];
  const order = drawn.map((c, i) => ({ i, y: py(c.points.at(-1)!.y) })).sort((a, b) => a.y - b.y);
  for (let k = 0; k < order.length; k++) {
    const o = order[k]!;
    if (k > 0) o.y = Math.max(o.y, order[k - 1]!.y + 12);
    ends[o.i] = o.y;
  }
  const line = (c: Curve, i: number) => {
    const known = c.points.some((p) => p.plus);
    const band = known
      ? `M${c.points.map((p) => at(p.x, p.y + (p.plus ?? 0))).join("L")}L${c.points
          .toReversed()
          .map((p) => at(p.x, p.y - (p.plus ?? 0)))
          .join("L")}z`
      : "";
    return svg`<g class=${`series ${c.tone} ${c.dashed ? "dashed" : ""}`}>
      ${known ? svg`<path class="band" d=${band}/>` : nothing}
      <path class="line" d=${`M${c.points.map((p) => at(p.x, p.y)).join("L")}`}/>
      <text class="name" x=${s.wide - right + 6} y=${(ends[i]! + 4).toFixed(1)}>${c.name}</text>
    </g>`;
  };
  const columns = s.octaves ? octaves(x0, x1) : marks(x0, x1, 6);
  return charted(
    s.label,
    html`<svg class="chart" viewBox="0 0 ${s.wide} ${s.high}" role="img" aria-label=${s.label}>
    ${rows.at.map(
      (y) => svg`<path class=${Math.abs(y) < by / 1e6 ? "axis" : "grid"} d="M${left} ${py(y).toFixed(1)}H${s.wide - right}"/>
      <text class="at" x=${left - 6} y=${(py(y) + 3.5).toFixed(1)} text-anchor="end">${decimal(y, rows.decimals)}</text>`,
    )}
    ${columns.at.map(
      (x) => svg`<path class="tick" d=${`M${px(x).toFixed(1)} ${s.high - bottom}v4`} />
      <text class="at" x=${px(x).toFixed(1)} y=${s.high - bottom + 16} text-anchor="middle">${decimal(x, s.octaves && x < 1 ? 1 : columns.decimals)}</text>`,
    )}
    <text class="unit" x=${left - 6} y="9" text-anchor="end">${s.y}</text>
    <text class="at" x=${s.wide - right} y=${s.high - 3} text-anchor="end">${s.x}</text>
    ${drawn.map(line)}
  </svg>`,
  );
}
