// Against OpenType 1.9: what must hold of any font file, and of the outlines that
// the text needs.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { glyphsOf } from "./fontSubset.ts";

const whole = new Uint8Array(readFileSync("go-regular.ttf"));

interface Table {
  sum: number;
  data: DataView;
}

function tables(font: Uint8Array): Map<string, Table> {
  const v = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const out = new Map<string, Table>();
  for (let i = 0; i < v.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const tag = String.fromCharCode(...font.subarray(at, at + 4));
    out.set(tag, { sum: v.getUint32(at + 4), data: new DataView(font.buffer, font.byteOffset + v.getUint32(at + 8), v.getUint32(at + 12)) });
  }
  return out;
}

function outline(t: Map<string, Table>, g: number): number {
  const loca = t.get("loca")!.data;
  const long = t.get("head")!.data.getInt16(50) === 1;
  const at = (k: number) => (long ? loca.getUint32(4 * k) : 2 * loca.getUint16(2 * k));
  return at(g + 1) - at(g);
}

// glyph reads cmap, format 4, as the chapter has it.
function glyph(t: Map<string, Table>, c: number): number {
  const v = t.get("cmap")!.data;
  for (let i = 0; i < v.getUint16(2); i++) {
    const at = v.getUint32(8 + 8 * i);
    if (v.getUint16(at) !== 4) continue;
    const n = v.getUint16(at + 6) / 2;
    for (let s = 0; s < n; s++) {
      const end = v.getUint16(at + 14 + 2 * s);
      const start = v.getUint16(at + 16 + 2 * n + 2 * s);
      if (c < start || c > end) continue;
      const delta = v.getUint16(at + 16 + 4 * n + 2 * s);
      const where = at + 16 + 6 * n + 2 * s;
      const range = v.getUint16(where);
      return range === 0 ? (c + delta) & 0xffff : v.getUint16(where + range + 2 * (c - start));
    }
  }
  return 0;
}

const text = "Äß 123 kg·m²";
const cut = glyphsOf(whole.buffer.slice(whole.byteOffset, whole.byteOffset + whole.byteLength) as ArrayBuffer, text);
const before = tables(whole);
const after = tables(cut);

test("it is a fraction of the font", () => {
  assert.ok(cut.length < whole.length / 5, `${cut.length} of ${whole.length} bytes`);
});

test("the sums of the tables and of the file are right", () => {
  const total = (bytes: DataView, skip = -4) => {
    let s = 0;
    for (let i = 0; i < bytes.byteLength; i++) if (i < skip || i >= skip + 4) s = (s + bytes.getUint8(i) * 2 ** (24 - 8 * (i % 4))) % 2 ** 32;
    return s;
  };
  for (const [tag, t] of after) assert.equal(total(t.data, tag === "head" ? 8 : -4), t.sum, tag);
  assert.equal(total(new DataView(cut.buffer, cut.byteOffset, cut.byteLength)), 0xb1b0afba);
});

test("every character of the text has its outline, under the same number", () => {
  for (const c of text) {
    const g = glyph(before, c.codePointAt(0)!);
    assert.ok(g > 0, c);
    assert.equal(glyph(after, c.codePointAt(0)!), g);
    assert.equal(outline(after, g) > 0, outline(before, g) > 0, c);
  }
});

test("outlines that nothing needs are gone, those that an outline is made of are not", () => {
  assert.equal(outline(after, glyph(after, "Q".codePointAt(0)!)), 0);
  const g = glyph(after, "Ä".codePointAt(0)!);
  const loca = after.get("loca")!.data;
  const glyf = after.get("glyf")!.data;
  let at = loca.getUint32(4 * g);
  if (glyf.getInt16(at) >= 0) return; // drawn in one
  at += 10;
  for (let flags = 0x20; flags & 0x20; ) {
    flags = glyf.getUint16(at);
    assert.ok(outline(after, glyf.getUint16(at + 2)) > 0);
    assert.equal(flags & 0x100, 0);
    at += 4 + (flags & 1 ? 4 : 2) + (flags & 8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0);
  }
});
