import { attach } from "../testing/browser.ts";
import assert from "node:assert/strict";
import { test } from "node:test";
import {
  addBuild,
  apart,
  compare,
  compared,
  copyBuild,
  copyParts,
  duplicatePart,
  editPart,
  fitAside,
  forgetAside,
  getPath,
  goWithout,
  handOver,
  removeBuild,
  setBase,
  setPath,
  tabulate,
} from "./edit.ts";
import type { Doc } from "../model/types.ts";

let given = 0;
attach({ newIDs: (_document, sort, n) => JSON.stringify(Array.from({ length: Number(n) }, () => `${sort}-new${++given}`)) });

const part = (id: string) => ({ id, name: id, mass_g: 100, offset_mm: [0, 0, 0] });
const doc = (show: object = {}): Doc =>
  ({
    builds: [
      { id: "one", name: "One", parts: [part("saddle"), part("stem")] },
      { id: "two", name: "Two", parts: [part("saddle")] },
      { id: "three", name: "Three", parts: [] },
    ],
    loads: [{ id: "l1" }, { id: "l2" }],
    show: { compare: ["one", "two"], ...show },
  }) as unknown as Doc;

test("an edit shares all that it does not change", () => {
  const before = doc();
  const after = editPart(before, "one", "stem", (p) => ({ ...p, mass_g: 120 }));
  assert.equal(after.builds[0]!.parts[1]!.mass_g, 120);
  assert.equal(before.builds[0]!.parts[1]!.mass_g, 100);
  assert.equal(after.builds[0]!.parts[0], before.builds[0]!.parts[0]);
  assert.equal(after.builds[1], before.builds[1]);
});

test("all builds in the table are named by none, some in the order of the document", () => {
  const two = tabulate(doc(), "two", false);
  assert.deepEqual(two.show.table, ["one", "three"]);
  const one = tabulate(two, "one", false);
  assert.deepEqual(one.show.table, ["three"]);
  assert.equal(tabulate(one, "three", false), one);
  assert.deepEqual(tabulate(one, "one", true).show.table, ["one", "three"]);
  assert.equal("table" in tabulate(two, "two", true).show, false);
});

test("the base is changed once", () => {
  const based = setBase(doc(), "two");
  assert.equal(based.show.base, "two");
  assert.equal(setBase(based, "two"), based);
});

test("an edit of what is not there changes nothing", () => {
  const before = doc();
  assert.equal(
    editPart(before, "one", "bell", (p) => ({ ...p, mass_g: 1 })),
    before,
  );
  assert.equal(
    editPart(before, "nine", "stem", (p) => ({ ...p, mass_g: 1 })),
    before,
  );
});

test("a copy of a part stands after it under an id of its own", () => {
  const { doc: after, id } = duplicatePart(doc(), "one", "saddle");
  assert.deepEqual(
    after.builds[0]!.parts.map((p) => p.id),
    ["saddle", id, "stem"],
  );
  assert.match(id, /^part-new/);
});

test("a part that is handed over keeps its id where that is free", () => {
  const free = handOver(doc(), "one", "two", "stem");
  assert.equal(free.id, "stem");
  assert.equal(free.doc.builds[0]!.parts.length, 1);
  const taken = handOver(doc(), "one", "two", "saddle");
  assert.match(taken.id, /^part-new/);
  assert.equal(new Set(taken.doc.builds[1]!.parts.map((p) => p.id)).size, 2);
});

test("builds that are gone are not compared, and none with itself but under two loads", () => {
  assert.deepEqual(compared(doc()), ["one", "two"]);
  assert.deepEqual(compared(doc({ compare: ["gone", "two"] })), ["two", ""]);
  assert.deepEqual(compared(doc({ compare: [] })), ["one", ""]);
  assert.deepEqual(compared(doc({ compare: ["one", "one"] })), ["one", ""]);
  assert.deepEqual(compared(doc({ compare: ["one", "one"], loads: ["l1", "l2"] })), ["one", "one"]);
  assert.deepEqual(compared(doc({ compare: ["one", "one"], loads: ["l1", "gone"] })), ["one", "one"]);
  assert.deepEqual(compared(doc({ compare: ["one", "one"], loads: ["gone", "lost"] })), ["one", ""]);
  assert.deepEqual(compare(doc(), "two", "two").show.compare, ["two"]);
});

test("a build that is removed leaves its place to the next", () => {
  assert.deepEqual(compared(removeBuild(doc(), "one")), ["two", "three"]);
  assert.deepEqual(compared(removeBuild(doc(), "two")), ["one", "three"]);
  assert.deepEqual(compared(removeBuild(doc(), "three")), ["one", "two"]);
  const last = { ...doc(), builds: doc().builds.slice(0, 1) };
  assert.equal(removeBuild(last, "one"), last);
});

test("a copy of a build comes after it, a new one last", () => {
  const c = copyBuild(doc(), "one", "One, copy");
  assert.deepEqual(
    c.doc.builds.map((b) => b.id),
    ["one", c.id, "two", "three"],
  );
  const n = addBuild(doc(), doc().builds[0]!);
  assert.equal(n.doc.builds.at(-1)!.id, n.id);
});

test("fields are read and written by their keys", () => {
  const b = { frame: { reach_mm: 400 }, offset_mm: [1, 2, 3] };
  assert.equal(getPath(b, "frame.reach_mm"), 400);
  assert.equal(getPath(b, "offset_mm.1"), 2);
  assert.equal(getPath(b, "wheels.rear.tyre_mm"), undefined);
  assert.deepEqual(setPath(b, "offset_mm.1", 9), { ...b, offset_mm: [1, 9, 3] });
  assert.deepEqual(setPath(b, "wheels.rear.tyre_mm", 50), { ...b, wheels: { rear: { tyre_mm: 50 } } });
  assert.deepEqual(setPath(b, "frame.reach_mm", undefined), { ...b, frame: {} });
  assert.equal(setPath(b, "frame.reach_mm", 400), b);
  assert.deepEqual(b, { frame: { reach_mm: 400 }, offset_mm: [1, 2, 3] });
});

test("parts that are copied keep their ids, and none is there twice", () => {
  const { doc: after, made } = copyParts(doc(), "one", new Set(["saddle", "stem"]), ["two", "three"]);
  assert.equal(made, 3);
  assert.deepEqual(
    after.builds.map((b) => b.parts.map((p) => p.id)),
    [
      ["saddle", "stem"],
      ["saddle", "stem"],
      ["saddle", "stem"],
    ],
  );
});

test("a part of its own has another id, the others keep theirs", () => {
  const { doc: after, id } = apart(doc(), "two", "saddle");
  assert.equal(after.builds[1]!.parts[0]!.id, id);
  assert.equal(after.builds[0]!.parts[0]!.id, "saddle");
});

test("what was kept aside is fitted once, under an id that is free", () => {
  const before = { ...doc(), aside: [{ build: "one", part: part("saddle") }] } as unknown as Doc;
  const taken = fitAside(before, 0, "one");
  assert.match(taken.id, /^part-new/);
  assert.equal(taken.doc.aside, undefined);
  assert.equal(fitAside(before, 0, "three").id, "saddle");
  assert.equal(fitAside(before, 1, "three").doc, before);
  assert.equal(forgetAside(before, 0).aside, undefined);
});

test("a build goes without something until it no longer does", () => {
  const without = goWithout(doc(), "one", ["front-brake"], true);
  assert.deepEqual(without.builds[0]!.without, ["front-brake"]);
  assert.deepEqual(goWithout(without, "one", ["front-brake"], true).builds[0]!.without, ["front-brake"]);
  assert.equal("without" in goWithout(without, "one", ["front-brake"], false).builds[0]!, false);
});
