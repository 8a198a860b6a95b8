// How the script of a language hands its texts to the page: by name, on the
// window, since in the one file it is no module that could be imported.

import type { Key } from "./index.ts";

export type { Key };

export interface Language {
  texts: Record<Key, string>; // the page's own
  words: Record<string, string>; // those that the core has as well
}

const offered = globalThis as { steelyardLanguages?: Partial<Record<string, Language>> };

export function offer(code: string, language: Language): void {
  offered.steelyardLanguages ??= {};
  offered.steelyardLanguages[code] = language;
}

export function onOffer(code: string): Language | undefined {
  return offered.steelyardLanguages?.[code];
}
