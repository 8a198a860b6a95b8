// A file that comes before the program is there lies in the browser's storage until
// it is: the page may die before.

import { core } from "../core/core.ts";
import { readPreference, writePreference } from "../io/storage.ts";
import { arrival } from "./arrival.ts";
import { store } from "./state.ts";

const prefix = "waiting"; // begins the keys
const mark = "waiting"; // preference, since it can be asked at once: something may lie there
const most = 30_000_000; // bytes of a file

interface Lying {
  name: string;
  type: string;
  bytes: ArrayBuffer;
}

function isLying(v: unknown): v is Lying {
  const l = v as Partial<Lying> | null | undefined;
  return typeof l === "object" && l !== null && typeof l.name === "string" && typeof l.type === "string" && l.bytes instanceof ArrayBuffer;
}

// alone runs unless a page that is alive has that file in hand.
async function alone(key: string, run: () => Promise<void>): Promise<void> {
  if (!("locks" in navigator)) await run();
  else await navigator.locks.request(`steelyard ${key}`, { ifAvailable: true }, (lock) => (lock ? run() : undefined));
}

// handOver has a file opened when the program is there, and forgets it then; a
// program that does not come leaves it for the next start.
async function handOver(key: string, file: File, open: (file: File) => Promise<void>): Promise<void> {
  await arrival.of(file.name);
  await open(file);
  if (core.state === "ready") await store.storage.drop(key);
}

// openThere opens a file once the program is there.
export async function openThere(file: File, open: (file: File) => Promise<void>): Promise<void> {
  if (core.state !== "loading" || file.size > most) {
    await arrival.of(file.name);
    await open(file);
    return;
  }
  const key = `${prefix} ${new Date().toISOString()} ${Math.random()}`;
  await alone(key, async () => {
    writePreference(mark, "yes");
    const bytes = await file.arrayBuffer().catch(() => null); // why it cannot be read is told when it is opened
    if (bytes) void store.storage.put(key, { name: file.name, type: file.type, bytes } satisfies Lying).catch(() => {}); // it waits all the same
    await handOver(key, file, open);
  });
}

// takeUpLeft has what a page left lying that died wait anew.
export async function takeUpLeft(open: (file: File) => Promise<void>): Promise<void> {
  if (!readPreference(mark)) return;
  const keys = await store.storage.names(prefix);
  if (!keys.length) writePreference(mark, "");
  for (const key of keys) {
    await new Promise<void>((waits) => {
      const again = async () => {
        const lying = await store.storage.get(key);
        if (!isLying(lying)) return;
        const done = handOver(key, new File([lying.bytes], lying.name, { type: lying.type }), open);
        waits();
        await done;
      };
      void alone(key, again)
        .catch(() => {}) // it lies there still
        .finally(waits);
    });
  }
}
