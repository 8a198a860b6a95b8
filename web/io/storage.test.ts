import { until } from "../testing/browser.ts";
import assert from "node:assert/strict";
import { beforeEach, test } from "node:test";
import { IDBFactory } from "fake-indexeddb";
import { Storage, type Drafts } from "./storage.ts";

const journal = "steelyard.journal";

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  localStorage.removeItem(journal);
});

// Window is a window of the page that holds a document.
function open(text = "") {
  const held: { text: string; drafts: Drafts } = { text, drafts: [] };
  const storage = new Storage(() => held);
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
function put(value: unknown): Promise<void> {
  return new Promise((yes, no) => {
    const r = indexedDB.open("steelyard");
    r.onerror = () => no(r.error);
    r.onsuccess = () => {
      const tx = r.result.transaction("documents", "readwrite");
      tx.objectStore("documents").put(value, "current");
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
