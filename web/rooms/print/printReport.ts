// The printed report. What is on the sheet is made for editing, and what the
// canvas shows does not reach a printer: for paper the page is set anew, as plain
// text, tables and a drawing, when the browser is about to print. What each
// room prints stands in its folder.

import { html, nothing, render, type TemplateResult } from "lit";
import { core, CoreError } from "../../core/core.ts";
import { today } from "../../app/exports.ts";
import { store } from "../../app/state.ts";
import { when } from "../../elements/early.ts";
import { printed } from "../../elements/room.ts";
import { t, word } from "../../text/index.ts";

export function watchPrinting(): void {
  const box = document.createElement("div");
  box.id = "printed";
  document.body.append(box);
  addEventListener("beforeprint", () => {
    if (store.doc && (core.state === "ready" || store.early)) render(report(), box);
    else if (core.state === "loading") render(html`<p>${t("report.nothing")}</p>`, box);
  });
  addEventListener("afterprint", () => render(nothing, box));
}

// told is a piece of the report, or why there is none: the rest is printed all the
// same.
function told<T>(piece: () => T): T | TemplateResult {
  try {
    return piece();
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    return html`<p class="remark">${e.message}</p>`;
  }
}

function report(): TemplateResult {
  const doc = store.doc!;
  const { early } = store;
  return html`<header>
      <p class="of"><span class="cap">${t("page.name")}</span> <span>${t("report.page", { date: today() })}</span></p>
      <h1>${doc.title || t("file.untitled")}</h1>
      ${early ? html`<p class="remark"><strong>${early.of === "demo" ? t("report.demo") : t("report.kept", { when: when(early.at) })}</strong></p>` : nothing}
      ${doc.notes ? html`<p class="remark">${doc.notes}</p>` : nothing}
    </header>
    ${printed().map((p) => told(() => p.body()))}
    <section class="small">
      <h2>${t("report.how")}</h2>
      ${told(() => html`${core.provenance(store.text, today()).map((n) => html`<p>${n}</p>`)}`)}
      <h2>${t("likely.explain.title")}</h2>
      <p>${t("likely.explain")}</p>
      <p>${t("likely.explain.diff")}</p>
      <h2>${t("report.sources")}</h2>
      <ul>
        ${(["parts", "plus", "axes", "body"] as const).map((s) => html`<li>${t(`about.sources.${s}`)}</li>`)}
      </ul>
      <h2>${t("page.caution")}</h2>
      <p>${word("help", "caution")} ${word("help", "load")}</p>
    </section>`;
}
