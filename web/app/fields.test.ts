import "../testing/browser.ts";
import assert from "node:assert/strict";
import { test } from "node:test";
import { problemIn, setAt, valueAt } from "./fields.ts";
import type { Doc, Problem } from "../model/types.ts";

const doc = () =>
  ({
    builds: [
      {
        id: "a",
        losses: {
          stages: [
            { of: "x", value: 1 },
            { of: "y", value: 2 },
          ],
        },
      },
      { id: "b" },
    ],
    riders: [{ id: "r", effort: { power_w: { value: 90 } } }],
    show: { mass: "kg" },
  }) as unknown as Doc;

test("a value stands where it is put, and what is beside it is the same thing as before", () => {
  const before = doc();
  const after = setAt(before, { field: "show.road.wind_m_s" }, { value: 3 });
  assert.deepEqual(valueAt(after, { field: "show.road.wind_m_s" }), { value: 3 });
  assert.equal(after.show.mass, "kg");
  assert.equal(after.builds, before.builds);
  assert.equal(valueAt(before, { field: "show.road" }), undefined);
  assert.equal(valueAt(setAt(before, { build: "b", field: "roll_out_mm" }, { value: 2200 }), { build: "b", field: "roll_out_mm.value" }), 2200);
});

test("what is taken out leaves nothing empty behind", () => {
  const start = doc();
  const one = setAt(start, { field: "show.road.wind_m_s" }, { value: 3 });
  assert.deepEqual(setAt(one, { field: "show.road.wind_m_s" }, undefined), start);
  const none = setAt(setAt(start, { build: "a", field: "losses.stages.1" }, undefined), { build: "a", field: "losses.stages.0" }, undefined);
  assert.deepEqual(none.builds[0], { id: "a" });
  assert.deepEqual(setAt(start, { rider: "r", field: "effort.power_w" }, undefined).riders, [{ id: "r" }]);
  assert.equal(setAt(start, { rider: "r", field: "effort.cadence_rpm" }, undefined).riders, start.riders);
});

test("the next of a list goes to its end, and one beyond it too", () => {
  const put = (i: number) => setAt(doc(), { build: "a", field: `losses.stages.${i}` }, { of: "z" }).builds[0]!.losses!.stages!.map((s) => s.of as string);
  assert.deepEqual(put(2), ["x", "y", "z"]);
  assert.deepEqual(put(7), ["x", "y", "z"]);
  assert.deepEqual(put(0), ["z", "y"]);
});

test("a problem is found at its field and within, of the same owner only", () => {
  const p = (field: string, rest = {}) => ({ severity: "warning", message: field, field, ...rest }) as Problem;
  const list = [
    p("losses.stages.10.value", { build: "a" }),
    p("losses.stages.1.value", { build: "a" }),
    p("effort.power_w.value", { rider: "r", load: "l" }),
    p("show.road.slope_percent.value"),
  ];
  assert.equal(problemIn(list, { build: "a", field: "losses.stages.1" })?.message, "losses.stages.1.value");
  assert.equal(problemIn(list, { build: "b", field: "losses.stages.1" }), undefined);
  assert.equal(problemIn(list, { rider: "r", field: "effort.power_w" })?.message, "effort.power_w.value");
  assert.equal(problemIn(list, { rider: "s", field: "effort.power_w" }), undefined);
  assert.equal(problemIn(list, { field: "show.road.slope_percent" })?.severity, "warning");
  assert.equal(problemIn(list, { field: "show.road.wind_m_s" }), undefined);
});
