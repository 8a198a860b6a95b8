// What the page shows of the demo until its program is there: the build has worked
// it out (internal/site/static/first.go), one file a language. early.ts asks for
// it before the page's own script has come.

import type { Doc, Kind, Report, Station } from "../model/types.ts";

export interface First {
  document: Doc;
  report: Report;
  kinds: Kind[];
  stations: Station[];
  pictures: { width: number; height: number; svg: string }[]; // narrow, wide
}

const asked = globalThis as { steelyardFirst?: Partial<Record<string, Promise<First | null>>> };

// first gives it, or null where it cannot be had: the program then comes first.
export function first(code: string): Promise<First | null> {
  asked.steelyardFirst ??= {};
  asked.steelyardFirst[code] ??= get(code).catch(() => null);
  return asked.steelyardFirst[code];
}

async function get(code: string): Promise<First | null> {
  // In the one file it is an element of the page.
  const within = document.getElementById(`first-${code}`);
  if (within) return JSON.parse(within.textContent ?? "") as First;
  const link = document.querySelector<HTMLLinkElement>(`link[rel="steelyard-first"][hreflang="${code}"]`);
  if (!link) return null;
  const answer = await fetch(link.href);
  return answer.ok ? ((await answer.json()) as First) : null;
}
