// What the page's code finds in a browser, for tests in Node: import this before
// any code of the page. The program is stood in for by what a test gives attach.

import "fake-indexeddb/auto";
import { core } from "../core/core.ts";

const kept = new Map<string, string>();
const page = new EventTarget();

Object.assign(globalThis, {
  window: globalThis,
  addEventListener: page.addEventListener.bind(page),
  dispatchEvent: page.dispatchEvent.bind(page),
  document: Object.assign(new EventTarget(), { visibilityState: "visible", documentElement: { lang: "en", dataset: {} } }),
  localStorage: {
    getItem: (k: string) => kept.get(k) ?? null,
    setItem: (k: string, v: string) => void kept.set(k, v),
    removeItem: (k: string) => void kept.delete(k),
  },
});

// attach makes the core ready, with functions of a test's own.
export function attach(steelyard: Record<string, (...args: string[]) => string>): void {
  const status = { state: "painted", still: false, loaded: 0, total: 0, problem: "" };
  core.attach({ contentWindow: { steelyard, steelyardFrame: status } } as unknown as HTMLIFrameElement);
}

// until waits for something to hold.
export async function until(holds: () => boolean): Promise<void> {
  for (let i = 0; i < 400; i++) {
    if (holds()) return;
    await new Promise((done) => setTimeout(done, 5));
  }
  throw new Error(`waited in vain until ${holds}`);
}
