import assert from "node:assert/strict";
import { test } from "node:test";
import { readAddress, writeAddress } from "./address.ts";

const link = "sy1.eNqrVkrLz1eyUkpKLFKqBQAhHQRK";

test("an address names a chapter, a document, or a document with the chapter to open it at", () => {
  for (const [hash, document, chapter] of [
    ["", "", ""],
    ["#", "", ""],
    ["#gears", "", "gears"],
    [`#${link}`, link, ""],
    [`#${link}&gears`, link, "gears"],
    [`#${link}&gears&from=mail`, link, "gears"], // what others append
    [`#${link}=`, `${link}=`, ""], // padding, which the core forgives
  ] as const) {
    assert.deepEqual(readAddress(hash), { document, chapter }, hash);
  }
});

test("what is written is read again, and a document alone is the link as the core gives it", () => {
  for (const a of [
    { document: "", chapter: "" },
    { document: "", chapter: "parts" },
    { document: link, chapter: "" },
    { document: link, chapter: "parts" },
  ]) {
    assert.deepEqual(readAddress(`#${writeAddress(a)}`), a);
  }
  assert.equal(writeAddress({ document: link, chapter: "" }), link);
});
