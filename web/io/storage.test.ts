import { until } from "../testing/browser.ts";
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { IDBFactory } from "fake-indexeddb";
import { hasSeen, Memory, Storage, type Drafts, type Sight } from "./storage.ts";

const journal = "steelyard.journal";

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  localStorage.removeItem(journal);
  localStorage.removeItem("steelyard.seen");
});

// Window is a window of the page that holds a document.
function open(text = "", made = "") {
  const held: { text: string; drafts: Drafts } = { text, drafts: [] };
  const storage = new Storage(() => held, made);
  return {
    held,
    storage,
    async edit(text: string) {
      held.text = text;
      storage.save();
      await until(() => storage.state !== "pending");
    },
  };
}

// put writes a record past the page.
function put(value: unknown, key = "current"): Promise<void> {
  return new Promise((yes, no) => {
    const r = indexedDB.open("steelyard");
    r.onerror = () => no(r.error);
    r.onsuccess = () => {
      const tx = r.result.transaction("documents", "readwrite");
      tx.objectStore("documents").put(value, key);
      tx.oncomplete = () => {
        r.result.close();
        yes();
      };
    };
  });
}

test("what one window keeps the next one finds, with what is half typed", async () => {
  const a = open();
  assert.equal((await a.storage.load()).text, null);
  a.storage.begin();
  a.held.drafts = [["part/mass", { text: "12x", why: "no number", base: "12" }]];
  await a.edit("{}");
  assert.equal(a.storage.state, "kept");
  const found = await open().storage.load();
  assert.equal(found.text, "{}");
  assert.deepEqual(found.drafts, a.held.drafts);
  assert.equal(localStorage.getItem(journal), null);
});

test("a window that is behind asks, and overwrites nothing until it is answered", async () => {
  const a = open();
  const b = open();
  for (const w of [a, b]) {
    await w.storage.load();
    w.storage.begin();
  }
  await a.edit('{"title":"A"}');
  await b.edit('{"title":"B"}');
  assert.equal(b.storage.state, "conflict");
  assert.equal((await b.storage.theirs())?.text, '{"title":"A"}');
  const third = await open().storage.load();
  assert.equal(third.text, '{"title":"A"}');
  assert.equal(third.beside, '{"title":"B"}');
  assert.equal(await b.storage.keepMine(), '{"title":"A"}');
  assert.equal(b.storage.state, "kept");
  const after = await open().storage.load();
  assert.deepEqual([after.text, after.beside], ['{"title":"B"}', null]);
});

test("a window that follows the other is behind no more", async () => {
  const a = open();
  const b = open();
  await a.storage.load();
  await b.storage.load();
  await a.edit('{"title":"A"}');
  await b.edit('{"title":"B"}');
  b.storage.follow((await b.storage.theirs())!);
  await b.edit('{"title":"A, and on"}');
  assert.equal(b.storage.state, "kept");
  assert.equal((await open().storage.load()).text, '{"title":"A, and on"}');
});

test("the same document in other words is no conflict", async () => {
  const a = open();
  const b = open();
  await a.storage.load();
  await b.storage.load();
  await a.edit('{"title":"A","builds":[]}');
  await b.edit('{"builds":[],"title":"A"}');
  assert.equal(b.storage.state, "kept");
});

test("what is no record of ours is handed on as it is, and set aside once", async () => {
  const a = open();
  await a.edit("{}");
  await put({ text: 7 });
  const b = open();
  const found = await b.storage.load();
  assert.equal(found.text, null);
  assert.deepEqual(found.odd, { text: 7 });
  await b.storage.setAside(found.odd);
  await b.storage.setAside(found.odd);
  const keys = await new Promise<IDBValidKey[]>((yes) => {
    const r = indexedDB.open("steelyard");
    r.onsuccess = () => {
      const k = r.result.transaction("documents").objectStore("documents").getAllKeys();
      k.onsuccess = () => yes(k.result);
    };
  });
  assert.equal(keys.filter((k) => String(k).startsWith("unreadable")).length, 1);
});

test("what was not written when the page went stands in the journal, and is kept at the next start", async () => {
  const a = open("{}");
  await a.storage.load();
  await a.edit("{}");
  a.held.text = '{"title":"unsaved"}';
  a.storage.save();
  dispatchEvent(new Event("pagehide"));
  assert.ok(localStorage.getItem(journal)?.includes("unsaved"));
  const written = localStorage.getItem(journal)!;
  await until(() => a.storage.state === "kept");
  globalThis.indexedDB = new IDBFactory(); // the write did not come through
  localStorage.setItem(journal, written);
  const b = open();
  const found = await b.storage.load();
  assert.equal(found.text, '{"title":"unsaved"}');
  b.held.text = found.text!;
  b.storage.begin();
  await until(() => b.storage.state === "kept" && localStorage.getItem(journal) === null);
  assert.equal((await open().storage.load()).text, '{"title":"unsaved"}');
});

test("a page that comes to no timer notes what is typed", async () => {
  const a = open();
  await a.storage.load();
  a.storage.begin();
  // Nothing is awaited here, so that no timer and no answer comes in between.
  for (const end = performance.now() + 1300; performance.now() < end; ) {
    a.held.text += "x";
    a.storage.save();
  }
  const noted = JSON.parse(localStorage.getItem(journal)!).text as string;
  assert.ok(noted.length > 0 && a.held.text.startsWith(noted));
  await until(() => a.storage.state === "kept" && localStorage.getItem(journal) === null);
  assert.equal((await open().storage.load()).text, a.held.text);
});

test("where nothing can be kept the page is told why, and the journal holds the document", async () => {
  globalThis.indexedDB = {
    open: () => {
      throw new Error("no room");
    },
  } as unknown as IDBFactory;
  const a = open();
  await a.storage.load();
  assert.equal(a.storage.state, "failed");
  a.held.text = '{"title":"dear"}';
  a.storage.save();
  await until(() => localStorage.getItem(journal)?.includes("dear") ?? false);
  assert.deepEqual([a.storage.state, a.storage.why], ["failed", "no room"]);
  globalThis.indexedDB = new IDBFactory();
  a.storage.save();
  await until(() => a.storage.state === "kept");
  assert.equal((await open().storage.load()).text, '{"title":"dear"}');
});

const sight = (total: number): Sight => ({ report: { total }, kinds: [], stations: [], picture: "<svg/>", language: "en" });
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

test("what is shown of what is kept is there at the next start of a page with the same contract", async () => {
  const a = open("{}", "one");
  await a.storage.load();
  assert.equal(await a.storage.remember(() => sight(1)), false, "nothing is kept that it could be of");
  assert.equal(hasSeen(), false);
  await a.edit('{"title":"A"}');
  assert.equal(await a.storage.remember(() => sight(7)), true);
  assert.equal(hasSeen(), true);
  let found = await open("", "one").storage.load();
  assert.deepEqual([found.seen?.report, found.current, found.plain], [{ total: 7 }, true, true]);

  // What was edited since it is not of, and says so.
  await a.edit('{"title":"A, and on"}');
  found = await open("", "one").storage.load();
  assert.deepEqual([found.seen?.report, found.current, found.plain], [{ total: 7 }, false, true]);

  // A page with another contract can show neither.
  found = await open("", "two").storage.load();
  assert.deepEqual([found.text, found.seen, found.plain], ['{"title":"A, and on"}', null, false]);
});

test("what an older page kept is shown once a newer one has seen it to be the same", async () => {
  await open("", "").edit('{"title":"A","builds":[]}');
  const a = open('{"builds":[],"title":"A"}', "one");
  assert.equal((await a.storage.load()).plain, false);
  assert.equal(await a.storage.remember(() => sight(7)), true);
  const found = await open("", "one").storage.load();
  assert.deepEqual([found.current, found.plain], [true, true]);
  const b = open('{"builds":["changed when it was opened"]}', "one");
  await b.storage.load();
  assert.equal(await b.storage.remember(() => sight(8)), false);
});

test("nothing is remembered of a document that is not what is kept", async () => {
  const a = open("", "one");
  await a.storage.load();
  await a.edit('{"title":"A"}');
  const b = open("", "one");
  await b.storage.load();
  await b.edit('{"title":"B"}');
  assert.equal(await a.storage.remember(() => sight(1)), false, "another window has kept something else");
  b.held.text = '{"title":"B, unsaved"}';
  b.storage.save();
  assert.equal(await b.storage.remember(() => sight(2)), false, "an edit is not kept yet");
  await until(() => b.storage.state === "kept");
});

test("a record of what was shown that is none is left alone", async () => {
  const a = open("", "one");
  await a.storage.load();
  await a.edit("{}");
  await put({ made: "one", rev: "7", report: null }, "seen");
  assert.deepEqual([(await open("", "one").storage.load()).seen, (await open("", "one").storage.load()).text], [null, "{}"]);
});

test("what is shown is remembered when the page is quiet, and seldom", async () => {
  const kept: unknown[] = [];
  const storage = {
    remember: async (s: () => Sight) => {
      kept.push((s().report as { total: number }).total);
      return true;
    },
  } as unknown as Storage;
  let now: { of: number; size: number } | null = { of: 1, size: 10 };
  let asked = 0;
  const memory = new Memory(
    storage,
    () => {
      asked++;
      const shown = now;
      return shown && { ...shown, sight: () => sight(shown.of) };
    },
    { quiet: 60, seldom: 300 },
  );
  for (let i = 0; i < 8; i++) {
    memory.changed();
    await pause(15);
  }
  assert.equal(asked, 0, "while something changes nothing is looked at");
  await until(() => kept.length === 1);
  const first = performance.now();
  now = { of: 2, size: 10 };
  memory.changed();
  await until(() => kept.length === 2);
  assert.ok(performance.now() - first > 200, "the next comes a good while later");
  assert.deepEqual(kept, [1, 2]);

  // The same figures, none, and too many are not worth it.
  for (const other of [now, null, { of: 3, size: 1e9 }]) {
    now = other;
    memory.changed();
    Object.assign(document, { visibilityState: "hidden" });
    document.dispatchEvent(new Event("visibilitychange"));
    await pause(20);
  }
  assert.deepEqual(kept, [1, 2]);
  // A page that is put away does not wait.
  now = { of: 4, size: 10 };
  memory.changed();
  document.dispatchEvent(new Event("visibilitychange"));
  await until(() => kept.length === 3);
  Object.assign(document, { visibilityState: "visible" });
});
