import assert from "node:assert/strict";
import { test } from "node:test";
import { calledIn, carriesDocument } from "./link.ts";
import { wanted } from "./wanted.ts";

test("an address says whether it carries a document, and what that is called", () => {
  for (const [hash, carries, called] of [
    ["", false, ""],
    ["#parts", false, ""],
    ["#sy1.eJyr", true, ""],
    ["#Travel_bike,_Hub=sy1.eJyr", true, "Travel bike, Hub"],
    ["#Rad_f%C3%BCr_zwei=sy1.eJyr&gears", true, "Rad für zwei"],
    ["#%E2%80=sy1.eJyr", true, ""],
    ["#a%3Dsy1%2Eb=sy2.eJyr", true, "a=sy1.b"],
    ["#gears&Travel=sy1.eJyr", false, ""],
  ] as const) {
    assert.deepEqual([carriesDocument(hash), calledIn(hash)], [carries, called], hash);
  }
});

test("the reader's choice of a language goes before the browser's", () => {
  assert.equal(wanted("de", ["en"]), "de");
  assert.equal(wanted("auto", ["fr-CH", "de-CH", "en"]), "de");
  assert.equal(wanted("", ["fr"]), "en");
  assert.equal(wanted("xx", []), "en");
});
