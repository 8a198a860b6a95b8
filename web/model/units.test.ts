import assert from "node:assert/strict";
import { test } from "node:test";
import { between, decimal, figureScale, heavyField, lengthField, massField, minus, placeText, plain, readNumber, signed, trim, write } from "./units.ts";
import type { Show } from "./types.ts";

const show = (mass: Show["mass"], length: Show["length"]): Show => ({ mass, length }) as Show;
const g = figureScale("g", show("g", "mm"));

test("thousands are set apart from five digits on", () => {
  assert.equal(decimal(1234, 0), "1234");
  assert.equal(decimal(12345, 0), "12\u202f345");
  assert.equal(decimal(-1234567.891, 2), `${minus}1\u202f234\u202f567.89`);
  assert.equal(decimal(1234, -1), "1230");
});

test("what rounds to nought has no sign, what is no number a dash", () => {
  assert.equal(decimal(-0.004, 2), "0.00");
  assert.equal(signed(0.004, 2), "0.00");
  assert.equal(signed(0.006, 2), "+0.01");
  assert.equal(decimal(Number.NaN, 1), "–");
});

// Two digits of the doubt, as JCGM 100:2008, 7.2.6, has it.
test("a figure is written as finely as its doubt", () => {
  assert.equal(plain(write(1234.4, 12.3, g)), "1234 ±12\u00a0g");
  assert.equal(plain(write(1234.44, 1.23, g)), "1234.4 ±1.2\u00a0g");
  assert.equal(plain(write(12344, 123, g)), "12\u202f340 ±120\u00a0g");
  assert.equal(plain(write(12.5, 0, g)), "12.5\u00a0g");
  assert.equal(plain(write(5, 12, g, true)), "+5 ±12\u00a0g");
});

// The international pound is 0.45359237 kg, the inch 25.4 mm, by the agreement of
// 1959; an ounce is a sixteenth of a pound.
test("pounds, ounces and inches", () => {
  const us = show("lb_oz", "in");
  assert.equal(plain(write(453.59237, 0, figureScale("g", us))), "1\u00a0lb");
  assert.equal(heavyField(us).text(4535.9237), "10");
  assert.equal(massField(us).text(28.349523125), "1");
  assert.equal(lengthField(us).text(254), "10");
  assert.deepEqual(placeText([25.4, -12.7, 0], us), ["1.0", `${minus}0.5`, "0.0"]);
});

test("shares are told in per cent", () => {
  assert.equal(plain(write(0.4321, 0.0012, figureScale("ratio", show("kg", "mm"), "front_share"))), "43.21 ±0.12\u00a0%");
});

test("both ends of a figure are as fine as the figure", () => {
  assert.deepEqual(between(1000, 1.5, g), { low: "998.5", high: "1001.5", unit: "g" });
});

test("numbers are read as people type them", () => {
  assert.equal(readNumber(" 3,5 "), 3.5);
  assert.equal(readNumber(`${minus}.5`), -0.5);
  assert.equal(readNumber("+7."), 7);
  for (const odd of ["", "1e3", "0x1", "1 2", "1,2,3", ".", "12 g"]) assert.ok(Number.isNaN(readNumber(odd)), odd);
});

test("trim leaves no noughts behind, and no minus before nought", () => {
  assert.equal(trim(1.5, 3), "1.5");
  assert.equal(trim(-0.0001, 2), "0");
});
