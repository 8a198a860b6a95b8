// A table as text: CSV for a spreadsheet, Markdown for an article.

import { t } from "../text/index.ts";

export type Format = "csv" | "semicolon" | "markdown";

// Cell is a cell of a table.
export interface Cell {
  text: string; // of a number its value, without its doubt
  plus: string;
  number: boolean;
}

export const nothing: Cell = { text: "", plus: "", number: false };

// plainNumber writes a number of the page for programs.
function plainNumber(s: string, comma: string): string {
  return s
    .replace(/[\s\u202f]/g, "")
    .replace(/\u2212/g, "-")
    .replace(/^\+/, "")
    .replace(t("number.decimal"), ".")
    .replace(".", comma);
}

// safe keeps a spreadsheet from taking a text for a formula, as the core does.
// A spreadsheet of another country may end a cell where ours goes on.
const safe = (s: string): string => s.replace(/^(?=['"]*[=+\-@\t\r\n＝＋－＠])|(?<=[,;\t\r\n])(?=['"]*[=+\-@＝＋－＠])/g, "'");

// csv writes rows, the first of them the heads, with the doubt of each figure in a
// column of its own; notes come after an empty row.
export function csv(rows: Cell[][], notes: string[], f: Format): string {
  const [separator, comma] = f === "semicolon" ? [";", ","] : [",", "."];
  const wide = Math.max(...rows.map((r) => r.length));
  const columns = [...Array(wide).keys()];
  const doubted = columns.map((i) => rows.some((r) => r[i]?.plus));
  const quote = (s: string) => (/[",;\r\n]/.test(s) ? `"${s.replace(/"/g, '""')}"` : s);
  const lines = rows.map((r, at) =>
    columns.flatMap((i) => {
      const c = r[i] ?? nothing;
      const value = c.number ? plainNumber(c.text, comma) : safe(c.text);
      if (!doubted[i]) return [value];
      return [value, at === 0 && !c.number ? safe(`${c.text} ±`.trim()) : plainNumber(c.plus, comma)];
    }),
  );
  const width = lines[0]!.length;
  const alone = (s: string) => [safe(s), ...Array<string>(width - 1).fill("")];
  return `\ufeff${[...lines, alone(""), ...notes.map(alone)].map((l) => `${l.map(quote).join(separator)}\r\n`).join("")}`;
}

// Addresses would become links by themselves.
const escaped = (s: string): string => s.replace(/[\\`*_{}[\]<>#|~!&@]|:(?=\/\/)|(?<=\bwww)\./gi, "\\$&");

export function markdown(caption: string, rows: Cell[][], notes: string[]): string {
  const wide = Math.max(...rows.map((r) => r.length));
  const columns = [...Array(wide).keys()];
  const figures = columns.map((i) => rows.slice(1).some((r) => r[i]?.number));
  const line = (r: Cell[]) => `| ${columns.map((i) => escaped(r[i]?.text ?? "") + (r[i]?.plus ? ` ± ${r[i]!.plus}` : "")).join(" | ")} |\n`;
  const head = `${line(rows[0]!)}| ${figures.map((f) => (f ? "---:" : "---")).join(" | ")} |\n`;
  return (caption ? `${escaped(caption)}\n\n` : "") + head + rows.slice(1).map(line).join("") + notes.map((n) => `\n${escaped(n)}\n`).join("");
}
