// All builds side by side: every figure of every build that is ticked, set
// against one of them.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { setBase, tabulate } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { copyMenu } from "../../elements/copytable.ts";
import { badge, number } from "../../elements/figure.ts";
import { roomScale } from "../../elements/comparison.ts";
import { narrow } from "../../elements/narrow.ts";
import { Section } from "../../elements/section.ts";
import { signs, verdictText } from "../../elements/verdict.ts";
import { brief, t } from "../../text/index.ts";
import type { Cell, Chapter, Row, SideBySide } from "../../model/types.ts";
import { write, type Scale } from "../../model/units.ts";
import { alike, loadedAs, massChart, nameOf, told } from "./told.ts";

type Direction = "ascending" | "descending";

class AllBuilds extends Section {
  protected readonly fold = "builds";
  private by = ""; // the key of the figure that the columns are sorted by
  private direction: Direction = "ascending";

  protected body(): TemplateResult {
    const { value, why, stale } = told.seen();
    if (why) return html`<p class="why wrong" role="alert">${why}</p>`;
    if (!value) return html`<p class="quiet">${t("page.loading")}</p>`;
    const order = this.order(value);
    const as = alike(value);
    return html`<p class="quiet lead"><span>${t("all.lead")}${as ? ` ${t("all.state", { state: as })}` : ""}</span> ${copyMenu(t("all.caption"), "builds")}</p>
      ${this.ticks(value)}
      <h3>${t("all.chart")}</h3>
      ${massChart(value, order, narrow.matches ? 350 : 1100, "hatch")}
      <p class="fine">${t("all.chart.note")}</p>
      <h3>${t("all.figures")}</h3>
      <div class="scroll allscroll" tabindex="0" role="region" aria-label=${t("all.caption")}>${this.table(value, order, as === "", stale)}</div>
      <p class="fine">${t("all.note")} ${t("all.best.note")}</p>`;
  }

  // order is which column stands where.
  private order(v: SideBySide): number[] {
    const list = v.builds.map((_, i) => i);
    const row = v.chapters.flatMap((c) => c.rows).find((r) => r.key === this.by);
    if (!row) return list;
    const way = this.direction === "ascending" ? 1 : -1;
    const missing = way * Infinity; // comes last
    const at = (i: number) => row.cells[i]?.value ?? missing;
    return list.sort((a, b) => (at(a) === at(b) ? a - b : way * (at(a) - at(b))));
  }

  private sort(key: string): void {
    if (this.by !== key) [this.by, this.direction] = [key, "ascending"];
    else if (this.direction === "ascending") this.direction = "descending";
    else this.by = "";
    this.requestUpdate();
  }

  private ticks(v: SideBySide): TemplateResult {
    const ticked = v.builds.map((b) => b.id);
    return html`<fieldset class="ticks">
      <legend>${t("all.ticks")}</legend>
      ${store.doc!.builds.map((b) => {
        const on = ticked.includes(b.id);
        return html`<label class="check"
          ><input
            type="checkbox"
            name="all-${b.id}"
            .checked=${live(on)}
            ?disabled=${on && ticked.length === 1}
            @change=${() => store.edit(t("do.table"), (d) => tabulate(d, b.id, !on))}
          />${brief(b.name || b.id)}</label
        >`;
      })}
    </fieldset>`;
  }

  private table(v: SideBySide, order: number[], each: boolean, stale: boolean): TemplateResult {
    return html`<table class="all ${stale ? "stale" : ""}">
      <caption class="unseen">
        ${t("all.caption")}
      </caption>
      <thead>
        <tr>
          <th scope="col"><span class="unseen">${t("table.figure")}</span></th>
          ${order.map((i) => this.head(v, i, each))}
        </tr>
      </thead>
      ${v.chapters.map((c) => this.chapter(c, v, order))}
    </table>`;
  }

  private head(v: SideBySide, i: number, each: boolean): TemplateResult {
    const b = v.builds[i]!;
    const { A, B } = store.ids;
    const base = b.id === v.base;
    const name = nameOf(b);
    return html`<th scope="col" class=${base ? "base" : ""}>
      <span class="of">${b.id === A ? badge("A") : nothing}${b.id === B && B !== A ? badge("B") : nothing} ${name}</span>
      ${each ? html`<span class="as">${loadedAs(b)}</span>` : nothing}
      <label class="asbase"
        ><input
          type="radio"
          name="all-base"
          aria-label=${t("all.base.name", { name })}
          .checked=${live(base)}
          @change=${() => store.edit(t("do.base"), (d) => setBase(d, b.id))}
        />${t("all.base")}</label
      >
    </th>`;
  }

  private chapter(c: Chapter, v: SideBySide, order: number[]): TemplateResult {
    return html`<tbody>
      <tr class="band">
        <th scope="rowgroup" colspan=${order.length + 1}><span>${c.label}</span></th>
      </tr>
      ${c.rows.map((r) => this.row(r, v, order))}
    </tbody>`;
  }

  private row(r: Row, v: SideBySide, order: number[]): TemplateResult {
    const s = roomScale(r.unit, r.key);
    const sorted = this.by === r.key;
    return html`<tr>
      <th scope="row" aria-sort=${sorted ? this.direction : nothing}>
        <button type="button" class="plain label" title=${t("all.sort")} aria-pressed=${sorted} @click=${() => this.sort(r.key)}>
          ${r.label}<span class="way" aria-hidden="true">${sorted ? (this.direction === "ascending" ? " →" : " ←") : ""}</span
          ><span class="unseen">: ${t("all.sort")}</span></button
        >${s.unit ? html` <span class="unit">${s.unit}</span>` : nothing}
      </th>
      ${order.map((i) => {
        const b = v.builds[i]!;
        return cell(r, r.cells[i] ?? null, s, b.id === v.base, b.id === r.best);
      })}
    </tr>`;
  }
}

customElements.define("sy-builds", AllBuilds);

function cell(r: Row, c: Cell | null, s: Scale, base: boolean, best: boolean): TemplateResult {
  if (!c) return html`<td class=${base ? "base none" : "none"}>–</td>`;
  return html`<td class="${base ? "base" : c.verdict} ${best ? "best" : ""}">
    <span class="value">${best ? html`<b class="tag">${t("all.best")}</b>` : nothing}${number(write(c.value, c.plus, s))}</span>
    ${
      base
        ? nothing
        : html`<span class="against"
            ><span class="said"><span class="sign" aria-hidden="true">${signs[c.verdict]}</span> ${verdictText({ key: r.key, unit: r.unit, verdict: c.verdict })}</span>
            ${number(write(c.delta, c.delta_plus, s, true))}</span
          >`
    }
  </td>`;
}
