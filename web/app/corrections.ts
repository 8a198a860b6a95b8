// What the program finds otherwise than it was shown before it was there.

import type { Report } from "../model/types.ts";

// Corrections has the figures of before, by where they stand.
export type Corrections = ReadonlyMap<string, { value: number; plus: number }>;

// spot names a figure of a build with its load, of a build alone, or of the
// difference.
export const spot = (of: { build: string; load?: string } | "difference", key: string): string =>
  of === "difference" ? `difference/${key}` : `${of.build}/${of.load ?? ""}/${key}`;

type Figures = Map<string, { value: number; plus: number }>;

function figures(r: Report): Figures {
  const all: Figures = new Map();
  for (const b of r.builds) for (const f of b.figures) all.set(spot({ build: b.id }, f.key), f);
  for (const s of r.sides) for (const f of s.figures) all.set(spot(s, f.key), f);
  for (const c of r.difference?.figures ?? []) all.set(spot("difference", c.key), { value: c.delta, plus: c.plus });
  return all;
}

// corrections are the figures of the one report that the other tells otherwise.
// One that the other does not have is none: there is nothing to mark.
export function corrections(before: Report, now: Report): Corrections {
  const was = figures(before);
  const out: Figures = new Map();
  for (const [at, f] of figures(now)) {
    const old = was.get(at);
    if (old && (old.value !== f.value || old.plus !== f.plus)) out.set(at, { value: old.value, plus: old.plus });
  }
  return out;
}
