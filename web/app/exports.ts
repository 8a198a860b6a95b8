// Tables that leave the page, as text: Markdown for an article, CSV for a
// spreadsheet. The larger ones are written by the core; a table that is on the
// page is read off it, so that what is copied is what is seen.

import { core } from "../core/core.ts";
import { readPreference, writePreference } from "../io/storage.ts";
import { store } from "./state.ts";
import { csv, markdown, nothing, type Cell, type Format } from "./tableText.ts";
import { t } from "../text/index.ts";

export type { Format };

const kept = "csv";

// today is the date as people of the page's language write it.
export function today(): string {
  const lang = document.documentElement.lang || "en";
  const own = navigator.languages.find((l) => l === lang || l.startsWith(`${lang}-`)) ?? (lang === "en" ? "en-GB" : lang);
  return new Intl.DateTimeFormat(own, { dateStyle: "long" }).format(new Date());
}

// csvFormat is the kind of CSV that was chosen last; where nobody has chosen,
// a page with a decimal comma has users whose spreadsheets have it too.
export function csvFormat(): "csv" | "semicolon" {
  const k = readPreference(kept);
  if (k === "csv" || k === "semicolon") return k;
  return t("number.decimal") === "," ? "semicolon" : "csv";
}

export function keepFormat(f: Format): void {
  if (f !== "markdown") writePreference(kept, f);
}

export const ending = (f: Format): string => (f === "markdown" ? ".md" : ".csv");
export const type = (f: Format): string => (f === "markdown" ? "text/markdown;charset=utf-8" : "text/csv;charset=utf-8");

export type Whole = "figures" | "difference" | "states" | "builds";

// Listed is what a list is of: the parts of a build, the bags and goods of a load.
export type Listed = { parts: string } | { luggage: string };

// whole is a table of the core's.
export function whole(what: Whole | Listed, f: Format): string {
  const doc = store.text;
  const style = f === "semicolon" ? f : "";
  const as = f === "markdown" ? "Markdown" : "CSV";
  if (typeof what === "object") {
    return "parts" in what ? core.parts(as, doc, what.parts, style, today()) : core.luggage(as, doc, what.luggage, style, today());
  }
  return core.table(`${what}${as}`, doc, style, today());
}

// clean makes one line of a text, with plain spaces.
const clean = (s: string): string => s.replace(/[\s\u00a0]+/g, " ").trim();

const numeric = /^[+\u2212-]?\d[\d\u202f]*([.,]\d+)?$/;

// seen is what is to be read in an element: not what is for the eye only, and of
// a field what is in it.
function seen(e: Node): string {
  if (e instanceof Text) return e.data;
  if (!(e instanceof Element)) return "";
  if (e.getAttribute("aria-hidden") === "true" || e.localName === "svg" || e.localName === "sy-menu") return "";
  if (e instanceof HTMLInputElement || e instanceof HTMLTextAreaElement) return e.value;
  if (e instanceof HTMLSelectElement) return e.selectedOptions[0]?.textContent ?? "";
  return [...e.childNodes].map(seen).join("");
}

function read(td: Element): Cell {
  const n = td.querySelectorAll(".num");
  if (n.length === 1 && clean(seen(td)) === clean(seen(n[0]!))) {
    const of = (part: string) => clean(n[0]!.querySelector(part)?.textContent ?? "");
    return { text: of(".whole") + of(".rest"), plus: of(".plus").replace("±", ""), number: true };
  }
  const text = clean(seen(td));
  return { text, plus: "", number: numeric.test(text) };
}

// rowsOf reads a table's rows; a cell over several columns leaves the others
// empty. Of a list of advice each line is a row.
function rowsOf(table: HTMLElement): Cell[][] {
  const out: Cell[][] = [];
  if (!(table instanceof HTMLTableElement)) {
    const text = (s: string): Cell => ({ ...nothing, text: s });
    for (const li of table.children) out.push([...li.children].map((c) => text(clean(seen(c)))));
    return [[text(t("diff.part")), text("±")], ...out];
  }
  for (const tr of table.rows) {
    if (tr.classList.contains("help") || tr.classList.contains("further")) continue;
    const row: Cell[] = [];
    for (const td of tr.cells) {
      row.push(read(td));
      for (let i = 1; i < td.colSpan; i++) row.push(nothing);
    }
    if (row.some((c) => c.text)) out.push(row);
  }
  return out;
}

// offPage is a table of the page as text, with what there is to say about its
// figures.
export function offPage(table: HTMLElement, f: Format): string {
  const rows = rowsOf(table);
  // Columns that only the eye is given something in, such as bars, stay behind.
  const wide = Math.max(...rows.map((r) => r.length));
  const full = [...Array(wide).keys()].filter((i) => rows.some((r) => r[i]?.text));
  const kept = rows.map((r) => full.map((i) => r[i] ?? nothing));
  const notes = core.notes(store.text, today());
  const caption = table instanceof HTMLTableElement ? table.caption : table.previousElementSibling;
  return f === "markdown" ? markdown(clean(caption?.textContent ?? ""), kept, notes) : csv(kept, notes, f);
}
