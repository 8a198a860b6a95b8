// An answer of one function of the core, reckoned only while somebody looks at it.

import { core, CoreError } from "../core/core.ts";
import { store } from "../app/state.ts";
import { language, t, type Key } from "../text/index.ts";
import type { Gist } from "./room.ts";

const slow = 16; // ms; an answer that takes longer lets typing breathe
const longest = 400; // ms of breath

export interface Answered<T> {
  value: T | null; // the last that there is of this subject
  why: string; // the core has none, for this reason
  stale: boolean; // of the document before: a newer one is on its way
}

// Answer asks when it is looked at, and again after an edit; who never looks, as a
// chapter that is closed, costs nothing. The subject is what in the document the
// answer is of, where there are several.
export class Answer<T> {
  private known: Answered<T> = { value: null, why: "", stale: true };
  private of: readonly unknown[] = [];
  private about = "";
  private took = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly ask: (document: string, subject: string) => T,
    private readonly subject: () => string = () => "",
  ) {}

  private get key(): readonly unknown[] {
    return [store.doc, language(), this.subject()];
  }

  private fresh(): boolean {
    const { key } = this;
    if (this.about !== this.subject()) {
      this.about = this.subject();
      this.known = { value: null, why: "", stale: true };
    }
    return this.of.length > 0 && key.every((k, i) => k === this.of[i]);
  }

  // seen is for what is on the screen: it gives what is known, and has the page
  // rendered again when there is more. It asks after a pause, ms, in which nothing
  // is edited.
  seen(pause = 0): Answered<T> {
    if (this.fresh()) return this.known;
    // The page is rendered again when the program is there.
    if (core.state === "loading") return { ...this.known, stale: true };
    clearTimeout(this.timer);
    const breath = this.took > slow ? Math.min(2 * this.took, longest) : 0;
    this.timer = setTimeout(
      () => {
        this.now();
        store.touch();
      },
      Math.max(pause, breath),
    );
    return { ...this.known, stale: true };
  }

  // now is for what cannot wait, such as paper.
  now(): Answered<T> {
    if (this.fresh() || !store.doc || core.state !== "ready") return this.known;
    clearTimeout(this.timer);
    const from = performance.now();
    this.of = this.key;
    try {
      this.known = { value: this.ask(store.text, this.about), why: "", stale: false };
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.known = { value: null, why: e.message, stale: false };
    }
    this.took = performance.now() - from;
    return this.known;
  }
}

const unhurried = 150; // ms; who opens the contents to go on is not held up by them

// inWords is what an answer comes to, for the contents; undefined until it is there.
// Otherwise is told of a document that leaves nothing to say.
export function inWords<T>(answer: Answer<T>, words: (value: T) => string | undefined, otherwise: Key): Gist | undefined {
  const { value, why, stale } = answer.seen(unhurried);
  if (stale) return undefined;
  return { text: (value && words(value)) || why || t(otherwise) };
}
