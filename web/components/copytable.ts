// Tables that leave the page by the clipboard: as Markdown for an article, as
// CSV for a spreadsheet. No cell is ever a formula there.

import { html, type TemplateResult } from "lit";
import { copyText } from "../files.ts";
import { t } from "../text/index.ts";
import "./menu.ts";

export type Rows = string[][]; // the first is the head

export function markdown(rows: Rows): string {
  const cell = (s: string) => s.replace(/\\/g, "\\\\").replace(/\|/g, "\\|").replace(/</g, "&lt;").replace(/\s+/g, " ").trim();
  const line = (r: string[]) => `| ${r.map(cell).join(" | ")} |`;
  const [head = [], ...body] = rows;
  const rule = `|${head.map((_, i) => (i === 0 ? " --- " : " ---: ")).join("|")}|`;
  return [line(head), rule, ...body.map(line)].join("\n") + "\n";
}

export function csv(rows: Rows): string {
  const cell = (s: string) => {
    // The typographer's minus makes a number text in a spreadsheet.
    const plainMinus = s.replace(/\u2212/g, "-").replace(/[\u202f\u00a0]/g, " ");
    const numeric = /^[+-]?[\d. ]+$/.test(plainMinus);
    const safe = !numeric && /^[=+\-@\t\r]/.test(plainMinus) ? "'" + plainMinus : numeric ? plainMinus.replace(/ /g, "") : plainMinus;
    return /[",\n\r]/.test(safe) ? `"${safe.replace(/"/g, '""')}"` : safe;
  };
  return rows.map((r) => r.map(cell).join(",")).join("\r\n") + "\r\n";
}

export function copyMenu(name: string, rows: () => Rows): TemplateResult {
  return html`<sy-menu
    class="copy"
    .label=${t("table.copy.short")}
    .name=${`${t("table.copy")}: ${name}`}
    .items=${[
      { label: t("table.copy.md"), run: () => void copyText(markdown(rows()), t("table.copied")) },
      { label: t("table.copy.csv"), run: () => void copyText(csv(rows()), t("table.copied")) },
    ]}
  ></sy-menu>`;
}
