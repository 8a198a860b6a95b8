import assert from "node:assert/strict";
import { test } from "node:test";
import { csv, markdown, type Cell } from "./tableText.ts";

const text = (s: string): Cell => ({ text: s, plus: "", number: false });
const figure = (s: string, plus = ""): Cell => ({ text: s, plus, number: true });
const rows = [
  [text("Part"), text("Mass, g")],
  [text("Saddle, sprung"), figure("12\u202f340.5", "1.2")],
  [text("Stem"), figure("\u2212150")],
];

// RFC 4180: a cell that holds a separator or a quote is quoted, lines end with CRLF.
test("CSV gives a doubt a column of its own", () => {
  assert.equal(csv(rows, ["By hand"], "csv"), '\ufeffPart,"Mass, g","Mass, g ±"\r\n"Saddle, sprung",12340.5,1.2\r\nStem,-150,\r\n,,\r\nBy hand,,\r\n');
});

test("with semicolons the decimal sign is a comma", () => {
  assert.equal(csv(rows, [], "semicolon").split("\r\n")[1], '"Saddle, sprung";"12340,5";"1,2"');
});

test("a spreadsheet takes no text for a formula", () => {
  for (const bad of ["=1+1", "+1", "@SUM(A1)", "-2", "＝1", "'=1", "\t=1"]) {
    const line = csv([[text("a")], [text(bad)]], [], "csv").split("\r\n")[1]!;
    assert.match(line, /^"?'/, bad);
  }
  assert.ok(csv([[text("a")], [text("x;=1")]], [], "csv").includes("x;'=1"));
});

test("Markdown shows every character as itself", () => {
  const out = markdown(
    "A | B",
    [
      [text("<b>*x*</b>"), text("n")],
      [text("www.example.org"), figure("1", "0.1")],
    ],
    ["http://example.org"],
  );
  assert.equal(out, "A \\| B\n\n| \\<b\\>\\*x\\*\\</b\\> | n |\n| --- | ---: |\n| www\\.example.org | 1 ± 0.1 |\n\nhttp\\://example.org\n");
});
