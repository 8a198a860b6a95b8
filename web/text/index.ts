// Text of the page by key, in the language that is spoken. Labels of figures,
// groups, kinds and stations come from the words that the core uses as well; what
// several rooms say stands in en.ts, and what one room says in its text.ts. English
// is here from the start; language.ts gets others. Of the core's words the bundle has
// the kinds in kinds.json: the rest are its own sentences.

import words from "labels:en";
import { en as common } from "./en.ts";
import type { Language } from "./offer.ts";

type Common = typeof common;

// Texts are all texts of the page by key: each room adds its own to these.
export interface Texts extends Common {}

export type Key = keyof Texts;

const en: Record<string, string> = { ...common };

// say adds the words of a room, in English.
export function say(texts: Record<string, string>): void {
  Object.assign(en, texts);
}

const english: Language = { texts: en, words };
let spoken = english;

// speak takes another language; null is English.
export function speak(language: Language | null): void {
  spoken = language ?? english;
}

// language is unlike itself when another is spoken.
export function language(): unknown {
  return spoken;
}

// What turns writing round would turn the rest of a sentence too.
const turning = /[\u202a-\u202e\u2066-\u2069]/g;

// brief cuts a name to what a sentence or a label can bear.
export function brief(name: string): string {
  const s = name.replace(turning, "");
  return s.length > 50 ? `${s.slice(0, 48).trimEnd()}…` : s;
}

// What users have named; it may be of any length.
const named = new Set(["build", "file", "load", "name", "part", "title", "what"]);

// t gives a text, with {name} replaced by the argument of that name.
export function t(key: Key, args: Record<string, string | number> = {}): string {
  return spoken.texts[key].replace(/\{(\w+)\}/g, (all, name: string) => {
    if (!(name in args)) return all;
    const v = String(args[name]);
    return named.has(name) ? brief(v) : v;
  });
}

// count chooses between a text for one and a text for several.
export function count(n: number, one: Key, many: Key, args: Record<string, string | number> = {}): string {
  return t(n === 1 ? one : many, { n, ...args });
}

// word gives the label of a key of the core, the key itself for one unheard of.
export function word(kind: string, key: string): string {
  return spoken.words[`${kind}.${key}`] ?? (kind === "help" ? "" : key.replace(/[-_]/g, " "));
}

// phrase gives a text of the core by its whole key.
export function phrase(key: string): string {
  return spoken.words[key] ?? "";
}

// short gives the page's own shorter label where there is one.
export function short(kind: string, key: string): string {
  const k = `${kind}.${key}`;
  return has(k) ? spoken.texts[k] : word(kind, key);
}

// has says whether the page has a text of its own under a composed key.
export function has(key: string): key is Key {
  return key in en;
}
