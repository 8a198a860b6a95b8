// Tables that leave the page by the clipboard: as Markdown for an article, as
// CSV for a spreadsheet. The core writes them.

import { html, type TemplateResult } from "lit";
import { core } from "../core.ts";
import { copyText } from "../files.ts";
import { store } from "../state.ts";
import { t } from "../text/index.ts";
import "./menu.ts";

export function copyMenu(name: string, what: "figures" | "difference" | "states"): TemplateResult {
  const copy = (as: "CSV" | "Markdown") => () => void copyText(core.table(`${what}${as}`, JSON.stringify(store.doc)), t("table.copied"));
  return html`<sy-menu
    class="copy"
    .label=${t("table.copy.short")}
    .name=${`${t("table.copy")}: ${name}`}
    .items=${[
      { label: t("table.copy.md"), run: copy("Markdown") },
      { label: t("table.copy.csv"), run: copy("CSV") },
    ]}
  ></sy-menu>`;
}
