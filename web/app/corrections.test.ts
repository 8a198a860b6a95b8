import assert from "node:assert/strict";
import { test } from "node:test";
import { corrections, spot } from "./corrections.ts";
import type { Report } from "../model/types.ts";

const report = (total: number, plus: number, delta: number, more: { key: string; value: number; plus: number }[] = []) =>
  ({
    builds: [{ id: "a", figures: [{ key: "total", value: total, plus }] }],
    sides: [{ build: "a", load: "tour", figures: [{ key: "total", value: total + 5, plus }, ...more] }],
    difference: { a: "a", b: "b", figures: [{ key: "total", delta, plus }] },
  }) as unknown as Report;

test("figures that are told otherwise are corrected, with what they were", () => {
  assert.equal(corrections(report(10, 1, 2), report(10, 1, 2)).size, 0);
  assert.deepEqual(
    [...corrections(report(10, 1, 2), report(11, 1, 2))],
    [
      ["a//total", { value: 10, plus: 1 }],
      ["a/tour/total", { value: 15, plus: 1 }],
    ],
  );
  assert.deepEqual([...corrections(report(10, 1, 2), report(10, 1, 3)).keys()], [spot("difference", "total")]);
  assert.equal(corrections(report(10, 1, 2), report(10, 2, 2)).size, 3, "a ± is part of what was read");
});

test("what was not shown before is no correction", () => {
  const more = [{ key: "sprung", value: 1, plus: 0 }];
  assert.equal(corrections(report(10, 1, 2), report(10, 1, 2, more)).size, 0);
  assert.equal(corrections(report(10, 1, 2, more), report(10, 1, 2)).size, 0);
  assert.equal(corrections(report(10, 1, 2), { builds: [], sides: [], difference: null } as unknown as Report).size, 0);
});
