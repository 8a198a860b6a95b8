// All builds on paper: the figures of each against the base, and their parts in
// one list, in which what is the same stands once.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";
import { roomScale } from "../../elements/comparison.ts";
import { number } from "../../elements/figure.ts";
import { signs, verdictText } from "../../elements/verdict.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { Cell, PartsCell, PartsLine, PartsSideBySide, Row, SideBySide } from "../../model/types.ts";
import { decimal, partScale, write, type Scale } from "../../model/units.ts";
import { alike, loadedAs, massChart, nameOf, told } from "./told.ts";

const list = new Answer((text) => core.buildsParts(text));

const across = 5; // builds that a sheet of paper has room for side by side

// several says whether there is anything to be set side by side.
const several = (): boolean => (store.doc?.builds.length ?? 0) > 1;

// strips cuts the columns into as many as there is room for.
function strips(n: number): number[][] {
  const all = [...Array(n).keys()];
  return Array.from({ length: Math.ceil(n / across) }, (_, k) => all.slice(k * across, (k + 1) * across));
}

export function printBuilds(): TemplateResult | typeof nothing {
  if (!several()) return nothing;
  const { value } = told.now();
  if (!value) return nothing;
  const as = alike(value);
  return html`<section>
    <h2>${t("all.title")}</h2>
    <p>${t("all.lead")}${as ? ` ${t("all.state", { state: as })}` : ""}</p>
    <div class="whole">
      <h3>${t("all.chart")}</h3>
      ${massChart(
        value,
        value.builds.map((_, i) => i),
        720,
        "hatch-printed",
      )}
    </div>
    <h3>${t("all.figures")}</h3>
    ${strips(value.builds.length).map((order) => figures(value, order, as === ""))}
    <p>${t("all.best.note")}</p>
  </section>`;
}

function figures(v: SideBySide, order: number[], each: boolean): TemplateResult {
  return html`<table class="lines allprinted">
    <thead>
      <tr>
        <th scope="col">${t("table.figure")}</th>
        ${order.map((i) => {
          const b = v.builds[i]!;
          return html`<th scope="col" class="right">
            ${nameOf(b)}${b.id === v.base ? html`<br /><small>${t("all.base")}</small>` : nothing}${each ? html`<br /><small>${loadedAs(b)}</small>` : nothing}
          </th>`;
        })}
      </tr>
    </thead>
    ${v.chapters.map(
      (c) =>
        html`<tbody>
          <tr class="group">
            <th scope="rowgroup" colspan=${order.length + 1}>${c.label}</th>
          </tr>
          ${c.rows.map((r) => {
            const s = roomScale(r.unit, r.key);
            return html`<tr>
              <th scope="row">${r.label}${s.unit ? html`, <span class="unit">${s.unit}</span>` : nothing}</th>
              ${order.map((i) => figure(r, r.cells[i] ?? null, s, v.builds[i]!.id === v.base, v.builds[i]!.id === r.best))}
            </tr>`;
          })}
        </tbody>`,
    )}
  </table>`;
}

function figure(r: Row, c: Cell | null, s: Scale, base: boolean, best: boolean): TemplateResult {
  if (!c) return html`<td class="right">–</td>`;
  const value = number(write(c.value, c.plus, s));
  return html`<td class="right">
    ${best ? html`<b>${t("all.best")} ${value}</b>` : value}${
      base
        ? nothing
        : html`<br /><small>${signs[c.verdict]} ${verdictText({ key: r.key, unit: r.unit, verdict: c.verdict })} ${number(write(c.delta, c.delta_plus, s, true))}</small>`
    }
  </td>`;
}

export function printAllParts(): (TemplateResult | typeof nothing)[] {
  if (!several()) return [];
  const { value } = list.now();
  if (!value) return [];
  const notes = value.builds.flatMap((b) => {
    const n = store.doc!.builds.find((d) => d.id === b.id)?.notes;
    return n ? [html`<p>${nameOf(b)}: ${n}</p>`] : [];
  });
  return [
    html`<section>
      <h2>${t("all.parts")}</h2>
      ${notes} ${strips(value.builds.length).map((order) => partsTable(value, order))}
      <p>${t("all.parts.note")}</p>
    </section>`,
  ];
}

function partsTable(v: PartsSideBySide, order: number[]): TemplateResult {
  const s = partScale(store.doc!.show);
  const mass = (g: number | null | undefined) => (g === null || g === undefined ? "–" : decimal(g / s.per, s.decimals));
  return html`<table class="lines partslist allprinted">
    <thead>
      <tr>
        <th scope="col" rowspan="2">${t("parts.name")}</th>
        <th scope="col" rowspan="2">${t("parts.basis")}</th>
        <th scope="col" rowspan="2">${t("parts.station")}</th>
        <th scope="colgroup" colspan=${order.length} class="right">${t("report.together")}, ${s.unit}</th>
      </tr>
      <tr>
        ${order.map((i) => html`<th scope="col" class="right">${nameOf(v.builds[i]!)}</th>`)}
      </tr>
    </thead>
    ${v.groups.map((g) => {
      const lines = g.lines.filter((l) => order.some((i) => l.cells[i]));
      return lines.length
        ? html`<tbody>
            <tr class="group">
              <th scope="rowgroup" colspan="3">${g.label}</th>
              ${order.map((i) => html`<td class="right">${mass(g.masses_g[i])}</td>`)}
            </tr>
            ${lines.map((l) => part(l, order, s))}
          </tbody>`
        : nothing;
    })}
  </table>`;
}

// weight is what a part weighs, all of its pieces; how many there are is told
// where the builds do not agree.
const weight = (c: PartsCell, s: Scale, counted: boolean): TemplateResult =>
  html`${number(write(c.mass_g, c.plus_g, s))}${counted ? html` <small>(${c.quantity})</small>` : nothing}`;

function part(l: PartsLine, order: number[], s: Scale): TemplateResult {
  const there = order.flatMap((i) => l.cells[i] ?? []);
  const name = l.name || [...new Set(there.map((c) => c.name))].join(" / ");
  const pieces = new Set(there.map((c) => c.quantity));
  const counted = pieces.size > 1;
  const each = there[0]!.quantity;
  return html`<tr>
    <th scope="row">${!counted && each > 1 ? `${each} × ` : ""}${name}${l.note ? html`<br /><small>${l.note}</small>` : nothing}</th>
    <td>${[...new Set(there.map((c) => t(`basis.${c.basis}.short`)))].join(" / ")}</td>
    <td>${l.moved ? t("all.parts.moved") : l.where}</td>
    ${
      l.same && order.length > 1
        ? html`<td class="right same" colspan=${order.length}>${t("all.parts.same")} ${weight(there[0]!, s, false)}</td>`
        : order.map((i) => html`<td class="right">${l.cells[i] ? weight(l.cells[i], s, counted) : "–"}</td>`)
    }
  </tr>`;
}
