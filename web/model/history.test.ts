import assert from "node:assert/strict";
import { test } from "node:test";
import { History } from "./history.ts";

test("undo goes back step by step, redo forward again", () => {
  const h = new History("a");
  h.push("b", "to b");
  h.push("c", "to c");
  assert.equal(h.undoable, "to c");
  assert.equal(h.undo(), "to c");
  assert.equal(h.value, "b");
  assert.equal(h.redoable, "to c");
  assert.equal(h.redo(), "to c");
  assert.equal(h.value, "c");
  assert.equal(h.redo(), null);
  h.undo();
  h.undo();
  assert.equal(h.undo(), null);
  assert.equal(h.value, "a");
});

test("what comes after an undo takes the place of what was undone", () => {
  const h = new History(0);
  h.push(1, "one");
  h.undo();
  h.push(2, "two");
  assert.equal(h.redoable, null);
  h.undo();
  assert.equal(h.value, 0);
});

test("edits of one gesture are one step, while they follow closely", () => {
  const h = new History(0);
  h.push(1, "mass", "part/mass", 1000);
  h.push(2, "mass", "part/mass", 2000);
  h.push(3, "mass", "part/mass", 3400);
  h.undo();
  assert.equal(h.value, 0);

  const slow = new History(0);
  slow.push(1, "mass", "part/mass", 1000);
  slow.push(2, "mass", "part/mass", 2500);
  slow.undo();
  assert.equal(slow.value, 1);
});

test("another key, no key, a seal and an undo end a gesture", () => {
  for (const between of [
    (h: History<number>) => h.push(9, "other", "other", 1001),
    (h: History<number>) => h.push(9, "keyless", "", 1001),
    (h: History<number>) => h.seal(),
    (h: History<number>) => {
      h.undo();
      h.redo();
    },
  ]) {
    const h = new History(0);
    h.push(1, "mass", "mass", 1000);
    between(h);
    const there = h.value;
    h.push(2, "mass", "mass", 1002);
    h.undo();
    assert.equal(h.value, there);
  }
});

test("an edit that changes nothing is no step", () => {
  const doc = { a: 1 };
  const h = new History(doc);
  h.push(doc, "nothing");
  assert.equal(h.undoable, null);
});

test("the oldest steps are given up, not the newest", () => {
  const h = new History(0);
  for (let i = 1; i <= 400; i++) h.push(i, String(i));
  let back = 0;
  while (h.undo() !== null) back++;
  assert.equal(back, 300);
  assert.equal(h.value, 100);
});

test("reset forgets all steps", () => {
  const h = new History(0);
  h.push(1, "one");
  h.undo();
  h.reset(7);
  assert.deepEqual([h.value, h.undoable, h.redoable], [7, null, null]);
});
