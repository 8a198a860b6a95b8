import { attach, until } from "../testing/browser.ts";
import assert from "node:assert/strict";
import { test } from "node:test";
import { store } from "../app/state.ts";
import { CoreError } from "../core/core.ts";
import type { Doc } from "../model/types.ts";
import { Answer } from "./answer.ts";

attach({ evaluate: () => JSON.stringify({ problem: { severity: "error", message: "not here" } }) });
const doc = (title: string) => ({ title, builds: [], show: {} }) as unknown as Doc;
store.start(doc("first"));

test("an answer that nobody looks at is never asked for", async () => {
  let asked = 0;
  new Answer(() => ++asked);
  store.edit("title", (d) => ({ ...d, title: "second" }));
  await new Promise((done) => setTimeout(done, 20));
  assert.equal(asked, 0);
});

test("it is asked for when it is looked at, once, and again after an edit", async () => {
  let asked = 0;
  const a = new Answer((text) => `${++asked} ${(JSON.parse(text) as Doc).title}`);
  assert.deepEqual(a.seen(), { value: null, why: "", stale: true });
  a.seen();
  await until(() => a.seen().value !== null);
  assert.deepEqual(a.seen(), { value: "1 second", why: "", stale: false });
  store.edit("title", (d) => ({ ...d, title: "third" }));
  assert.deepEqual(a.seen(), { value: "1 second", why: "", stale: true });
  await until(() => !a.seen().stale);
  assert.equal(a.seen().value, "2 third");
});

test("what comes tells the page, which then renders it", async () => {
  let told = 0;
  store.addEventListener("change", () => told++);
  const a = new Answer(() => 1);
  a.seen();
  await until(() => told > 0);
  assert.deepEqual(a.seen(), { value: 1, why: "", stale: false });
});

test("of another subject the last answer is none", () => {
  let of = "a";
  const a = new Answer(
    (_text, subject) => subject,
    () => of,
  );
  assert.equal(a.now().value, "a");
  of = "b";
  assert.equal(a.seen().value, null);
  assert.equal(a.now().value, "b");
});

test("a core that has none says why, and is asked again after an edit", () => {
  let fails = true;
  const a = new Answer(() => {
    if (fails) throw new CoreError({ severity: "error", message: "too light" });
    return 5;
  });
  assert.deepEqual(a.now(), { value: null, why: "too light", stale: false });
  fails = false;
  assert.equal(a.now().value, null);
  store.edit("title", (d) => ({ ...d, title: "fourth" }));
  assert.deepEqual(a.now(), { value: 5, why: "", stale: false });
});
