// What the browser keeps of weighing, so that it goes on where it was left, also
// tomorrow: the scale, the order, and of each build what is skipped and where it was.

import { readPreference, writePreference } from "../../io/storage.ts";

export interface Kept {
  step: number; // g, of the scale
  tare: number; // g
  order: "first" | "list";
  builds: Record<string, { at: string; skipped: string[] }>; // by build id; at and skipped are part ids
}

const name = "scale";
const texts = (v: unknown): string[] => (Array.isArray(v) ? v.filter((x) => typeof x === "string") : []);

// readKept gives what is kept, as far as it makes sense.
export function readKept(): Kept {
  const kept: Kept = { step: 1, tare: 0, order: "first", builds: {} };
  try {
    const k = JSON.parse(readPreference(name) || "{}") as Partial<Kept>;
    if (typeof k.step === "number" && k.step > 0) kept.step = k.step;
    if (typeof k.tare === "number" && k.tare >= 0) kept.tare = k.tare;
    if (k.order === "list") kept.order = "list";
    for (const [id, b] of Object.entries(k.builds ?? {})) {
      kept.builds[id] = { at: typeof b?.at === "string" ? b.at : "", skipped: texts(b?.skipped) };
    }
  } catch {
    // A preference that cannot be read is none.
  }
  return kept;
}

// keep writes it, without builds that there are no more.
export function keep(kept: Kept, builds: readonly string[]): void {
  const there = Object.fromEntries(Object.entries(kept.builds).filter(([id]) => builds.includes(id)));
  writePreference(name, JSON.stringify({ ...kept, builds: there }));
}
