// Tables that leave the page by the clipboard: as Markdown for an article, as
// CSV for a spreadsheet, in either of its two dialects.

import { html, type TemplateResult } from "lit";
import { csvFormat, keepFormat, offPage, whole, type Format, type Listed, type Whole } from "../app/exports.ts";
import { copyText } from "../app/files.ts";
import { t } from "../text/index.ts";
import "./menu.ts";

function menu(name: string, text: (f: Format) => string | Promise<string>): TemplateResult {
  const copy = (f: Format) => async () => {
    keepFormat(f);
    await copyText(await text(f), t("table.copied"));
  };
  const csv = [
    { label: t("table.copy.csv"), run: copy("csv") },
    { label: t("table.copy.semicolon"), run: copy("semicolon") },
  ];
  if (csvFormat() === "semicolon") csv.reverse();
  return html`<sy-menu
    class="copy"
    .label=${t("table.copy.short")}
    .name=${`${t("table.copy")}: ${name}`}
    .items=${[{ label: t("table.copy.md"), run: copy("markdown") }, ...csv]}
  ></sy-menu>`;
}

// copyMenu copies one of the tables that the core writes.
export function copyMenu(name: string, what: Whole | Listed): TemplateResult {
  return menu(name, (f) => whole(what, f));
}

// The menu that was pressed last, noted before the menu hears of it. It is not
// kept by each rendering: a closed menu holds on to what it was given first.
let at: Element | null = null;
const find = { handleEvent: (e: Event) => (at = e.currentTarget as Element), capture: true };

// copyTable copies the table of the page that comes after the menu, or the list
// of advice. Where that shows only its first lines, all sees to it that all are
// there, and gives back what puts it as it was.
export function copyTable(name: string, all: () => Promise<() => void> = async () => () => {}): TemplateResult {
  return html`<span class="copies" @click=${find}
    >${menu(name, async (f) => {
      const pressed = at; // before any other is
      const back = await all();
      const table = [...document.querySelectorAll<HTMLElement>("table:has(tr), .advice")].find(
        (e) => pressed && pressed.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_FOLLOWING,
      );
      const text = table ? offPage(table, f) : "";
      back();
      return text;
    })}</span
  >`;
}

// subhead is a heading over a table that can be copied.
export function subhead(heading: TemplateResult | string, name: string, all?: () => Promise<() => void>): TemplateResult {
  return html`<div class="subhead"><h3>${heading}</h3>${copyTable(name, all)}</div>`;
}
