// The scale of a difference: a steelyard's scale with nought in the middle. The poise stands at
// the difference, the band around it is where the difference likely lies. A
// band clear of nought is a verdict; one across it is none.

import { html, nothing, svg, type TemplateResult } from "lit";
import { signed } from "../model/units.ts";

export interface DeltaScaleSpec {
  wide: number; // px
  delta: number; // in the unit shown
  plus: number;
  decided: boolean;
  label: string;
  less: string;
  more: string;
}

const high = 58;
const base = 30;

// step finds a round distance between numbered ticks for a scale of so much to
// either side.
export function step(reach: number, most = 3): number {
  const raw = reach / most;
  const power = 10 ** Math.floor(Math.log10(raw));
  for (const m of [1, 2, 5, 10]) if (raw <= m * power) return m * power;
  return 10 * power;
}

export function deltaScale(s: DeltaScaleSpec): TemplateResult {
  const { wide } = s;
  const need = Math.max(Math.abs(s.delta) + s.plus, 1e-3) * 1.12;
  const mark = step(need);
  const reach = Math.max(need, mark * 1.5);
  const middle = wide / 2;
  const px = (v: number) => middle + (v / reach) * (middle - 26);
  const decimals = Math.max(0, -Math.floor(Math.log10(mark) + 1e-9));
  const ticks = [];
  for (let i = -Math.floor((reach / mark) * 5); i <= (reach / mark) * 5; i++) {
    const v = (i * mark) / 5;
    const numbered = i % 5 === 0;
    ticks.push(svg`<path class="tick" d="M${px(v).toFixed(1)} ${base}v${numbered ? 7 : 4}"/>`);
    if (numbered) ticks.push(svg`<text class="at" x=${px(v).toFixed(1)} y=${base + 20} text-anchor="middle">${i === 0 ? "0" : signed(v, decimals)}</text>`);
  }
  const x0 = px(s.delta - s.plus);
  const x1 = px(s.delta + s.plus);
  const x = px(s.delta);
  return html`<svg class="beam ${s.decided ? "decided" : "open"}" viewBox="0 0 ${wide} ${high}" role="img" aria-label=${s.label}>
    <path class="arm" d="M14 ${base}H${wide - 14}" />
    ${ticks}
    <path class="pivot" d="M${middle} ${base}l-5 -9h10z" />
    <rect class="band" x=${x0.toFixed(1)} y=${base - 6} width=${Math.max(x1 - x0, 1).toFixed(1)} height="6" />
    <path class="poise" d="M${x.toFixed(1)} ${base - 1}l-7 -12v-7h14v7z" />
    ${x > 110 ? svg`<text class="end" x="14" y="12" text-anchor="start">${"◄ "}${s.less}</text>` : nothing}
    ${x < wide - 110 ? svg`<text class="end" x=${wide - 14} y="12" text-anchor="end">${s.more}${" ►"}</text>` : nothing}
  </svg>`;
}
