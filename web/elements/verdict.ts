// Verdicts on a difference, in signs and words.

import type { Change, Verdict } from "../model/types.ts";
import { has, t } from "../text/index.ts";
import { between, minus, type Scale } from "../model/units.ts";

export const signs: Record<Verdict, string> = { more: "▲", less: "▼", undecided: "≈", same: "=" };

export function verdictText(c: { key: string; unit: string; verdict: Verdict }): string {
  for (const k of [`verdict.${c.key}.${c.verdict}`, `verdict.${c.unit}.${c.verdict}`]) if (has(k)) return t(k);
  return t(`verdict.${c.verdict}`);
}

// deltaLikely says where a difference in mass likely lies, without signs.
export function deltaLikely(d: Change, s: Scale): string {
  if (d.plus <= 0) return t("likely.exact");
  const low = d.delta - d.plus;
  const high = d.delta + d.plus;
  if (low < 0 && high > 0) {
    const ends = between(d.delta, d.plus, s);
    return t("likely.either", { less: ends.low.replace(minus, ""), more: ends.high, unit: s.unit });
  }
  return t("likely.by", between(Math.abs(d.delta), d.plus, s));
}
