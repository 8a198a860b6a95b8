// How the script of a language hands its texts to the page: by name, on the
// window, since in the one file it is no module that could be imported.

import type { Key } from "./index.ts";

export interface Language {
  texts: Record<Key, string>; // the page's own
  words: Record<string, string>; // those that the core has as well
  whole?: true; // those besides the first screen's are here
}

const offered = globalThis as { steelyardLanguages?: Partial<Record<string, Language>> };

// offer adds to a language: each room has words of its own.
export function offer(code: string, texts: Partial<Record<Key, string>>, words: Record<string, string> = {}): void {
  const language = offering(code);
  Object.assign(language.texts, texts);
  Object.assign(language.words, words);
}

// whole says that all of a language has been offered.
export function whole(code: string): void {
  offering(code).whole = true;
}

function offering(code: string): Language {
  offered.steelyardLanguages ??= {};
  offered.steelyardLanguages[code] ??= { texts: {} as Language["texts"], words: {} };
  return offered.steelyardLanguages[code];
}

export function onOffer(code: string): Language | undefined {
  return offered.steelyardLanguages?.[code];
}
