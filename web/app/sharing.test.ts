import { attach } from "../testing/browser.ts";
import assert from "node:assert/strict";
import { test } from "node:test";
import { core } from "../core/core.ts";
import { adopt, editKnown } from "./sharing.ts";
import { store } from "./state.ts";
import type { Adjusted, Doc, Part } from "../model/types.ts";

let asked = 0;

// shared stands in for the core: parts of one id and mass are the same.
const shared = (text: string) => {
  asked++;
  const doc = JSON.parse(text) as Doc;
  return JSON.stringify({
    builds: doc.builds.map((b) => ({
      id: b.id,
      missing: [],
      parts: b.parts.map((p) => ({
        id: p.id,
        also: doc.builds.filter((o) => o !== b && o.parts.some((q) => q.id === p.id && q.mass_g === p.mass_g)).map((o) => o.id),
      })),
    })),
    loads: [],
  });
};
attach({ shared, evaluate: () => JSON.stringify({ builds: [], sides: [], problems: [], difference: null }) });

const part = (id: string, mass_g: number) => ({ id, name: id, mass_g, half_width_g: 10, basis: "typical" }) as Part;
const start = (...masses: number[]) =>
  store.start({ builds: masses.map((m, i) => ({ id: `b${i}`, name: `B${i}`, parts: [part("chain", m)] })), show: {} } as unknown as Doc);
const masses = () => store.doc!.builds.map((b) => b.parts[0]!.mass_g);
const type = (mass_g: number, key = "mass") => editKnown("parts", "b0", store.doc!.builds[0]!.parts[0]!, "mass", (p) => ({ ...p, mass_g }), key);

test("what is known of a part is known of it wherever it is the same, as one step", () => {
  start(300, 300, 290);
  type(268);
  assert.deepEqual(masses(), [268, 268, 290]);
  store.undo();
  assert.deepEqual(masses(), [300, 300, 290]);
});

test("typing asks once, and does not take along whom it passes by", () => {
  start(300, 300, 26);
  asked = 0;
  for (const m of [2, 26, 268]) type(m);
  assert.deepEqual(masses(), [268, 268, 26]);
  assert.equal(asked, 1);
  store.undo();
  assert.deepEqual(masses(), [300, 300, 26]);
});

test("after another edit it is asked anew", () => {
  start(300, 300, 290);
  type(268);
  store.edit("other", (d) => ({ ...d, title: "x" }));
  asked = 0;
  type(267);
  assert.equal(asked, 1);
  assert.deepEqual(masses(), [267, 267, 290]);
});

test("weights from the scale are taken over everywhere", () => {
  start(300, 300, 290);
  const a = { list: "parts", owner: "b1", id: "chain", mass_g: 271, half_width_g: 3, basis: "weighed" } as Adjusted;
  store.edit("adopt", (d) => adopt(d, [a]));
  assert.deepEqual(masses(), [271, 271, 290]);
});

test("a core that does not answer shares nothing", () => {
  start(300, 300);
  core.fail("gone");
  type(268, "again");
  assert.deepEqual(masses(), [268, 300]);
});
