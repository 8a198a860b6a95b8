// A bar that shows how much of a limit is used. What is over it sticks out, in
// another ink and hatched.

import { html, nothing, svg, type TemplateResult } from "lit";
import { t } from "../text/index.ts";
import type { LimitVerdict } from "../model/types.ts";

const wide = 120;
const high = 9;
const end = 100; // px at the limit; what is beyond has the rest

export interface Fill {
  used: number; // of the limit
  plus: number; // likewise
  verdict: LimitVerdict;
}

export function fillBar(f: Fill): TemplateResult {
  const px = (v: number) => Math.min(Math.max(v, 0) * end, wide - 1);
  const to = px(f.used);
  const low = px(f.used - f.plus);
  const top = px(f.used + f.plus);
  return html`<svg class="fill ${f.verdict}" viewBox="0 0 ${wide} ${high}" width=${wide} height=${high} aria-hidden="true" focusable="false">
    <path class="rail" d="M.5 ${high - 0.5}H${end}" />
    <rect class="in" x="0" y="2" width=${Math.min(to, end).toFixed(1)} height=${high - 4} />
    ${to > end ? svg`<rect class="beyond" x=${end} y="2" width=${(to - end).toFixed(1)} height=${high - 4}/>` : nothing}
    ${f.plus > 0.005 ? svg`<path class="range" d="M${low.toFixed(1)} ${high / 2}H${top.toFixed(1)}"/>` : nothing}
    <path class="limit" d="M${end} 0v${high}" />
  </svg>`;
}

export const verdictSigns: Record<LimitVerdict, string> = { ok: "", near: "≈", over: "▲" };

export function verdictWord(v: LimitVerdict): string {
  return t(`ratings.verdict.${v}`);
}
