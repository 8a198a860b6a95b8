// The parts list of the build looked at, by group, every line editable where it
// stands. Long lists show the first lines of each group until asked for more.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { repeat } from "lit/directives/repeat.js";
import { chooseFile, savePartsCSV } from "../files.ts";
import { named } from "../places.ts";
import { store } from "../state.ts";
import { count, t, word } from "../text/index.ts";
import type { Part } from "../model/types.ts";
import { figureScale, massField, partScale, plain, write } from "../units.ts";
import "./addpart.ts";
import { Later } from "./element.ts";
import { copyMenu } from "./copytable.ts";
import { badge } from "./figure.ts";
import { partRows } from "./partrow.ts";

const many = 300; // lines from which on a list is a long one
const page = 20; // lines of a group shown at first in a long list: each is some forty elements
const further = 100; // lines that come when asked for

// found is what a part is found by, worked out once for as long as it stays the
// same and the page speaks the same language.
let texts = new WeakMap<Part, string>();
let language = "";

function found(p: Part, group: string): string {
  if (language !== t("parts.filter")) {
    language = t("parts.filter");
    texts = new WeakMap();
  }
  let text = texts.get(p);
  if (text === undefined) {
    text = `${p.name} ${word("kind", p.kind)} ${word("group", group)} ${word("station", p.station ?? "")} ${p.note ?? ""}`.toLowerCase();
    texts.set(p, text);
  }
  return text;
}

class Parts extends Later {
  private filter = "";
  private readonly reach = new Map<string, number>();

  protected override render(): TemplateResult {
    const { build, doc } = store;
    const { letter } = store;
    return html`<div class="head">
        <h2 id="parts-title">${t("parts.title", { letter })}</h2>
        <div class="tools">
          <div class="set" role="group" aria-label=${t("parts.show")}>
            ${(["A", "B"] as const).map((l) => {
              const id = store.ids[l];
              const name = doc?.builds.find((b) => b.id === id)?.name ?? "";
              return id
                ? html`<button type="button" class="toggle named" aria-pressed=${letter === l} @click=${() => store.activate(l)}>
                    ${badge(l)}<span class="unseen">${l}: </span><span class="build-name">${name}</span>
                  </button>`
                : nothing;
            })}
          </div>
          <div class="set">
            <button type="button" class="plain" title=${t("parts.csvin.name")} ?disabled=${!doc} @click=${() => chooseFile(".csv,.tsv,.txt,text/csv")}>
              ${t("parts.csvin")}
            </button>
            <button type="button" class="plain" title=${t("parts.csv.name")} ?disabled=${!doc} @click=${savePartsCSV}>${t("parts.csv")}</button>
            ${build ? copyMenu(t("parts.caption", { build: build.name }), { parts: build.id }) : nothing}
          </div>
        </div>
      </div>
      ${doc && build ? html`${this.bar(build.parts)}${this.table(build.parts)}` : nothing}`;
  }

  private bar(parts: Part[]): TemplateResult {
    return html`<div class="partsbar">
      <sy-add></sy-add>
      ${parts.length > 12
        ? html`<label class="find"
            ><span>${t("parts.filter")}</span>
            <input
              type="search"
              autocomplete="off"
              .value=${live(this.filter)}
              @input=${(e: Event) => {
                this.filter = (e.target as HTMLInputElement).value;
                this.requestUpdate();
              }}
          /></label>`
        : nothing}
    </div>`;
  }

  private grouped(parts: Part[]): Map<string, Part[]> {
    const group = new Map(store.kinds.map((k) => [k.id, k.group]));
    const out = new Map<string, Part[]>();
    for (const g of new Set(store.kinds.map((k) => k.group))) out.set(g, []);
    const words = this.filter.toLowerCase().split(/\s+/).filter(Boolean);
    for (const p of parts) {
      const g = group.get(p.kind) ?? "other";
      if (words.length) {
        const text = found(p, g);
        if (!words.every((w) => text.includes(w)) && p.id !== store.selected) continue;
      }
      const list = out.get(g);
      if (list) list.push(p);
      else out.set(g, [p]);
    }
    return out;
  }

  private table(parts: Part[]): TemplateResult {
    if (!parts.length) return html`<p class="quiet">${t("parts.empty")}</p>`;
    const show = store.doc!.show;
    const long = parts.length > many;
    const groups = [...this.grouped(parts)].filter(([, list]) => list.length);
    if (!groups.length) return html`<p class="quiet">${t("parts.filter.none")}</p>`;
    const mass = massField(show);
    const length = figureScale("mm", show).unit;
    return html`<table class="parts" role="table">
      <caption class="unseen">
        ${t("parts.caption", { build: store.build!.name })}
      </caption>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col" class="q"><abbr title=${t("parts.quantity")}>${t("parts.quantity.short")}</abbr></th>
          <th role="columnheader" scope="col" class="n">${t("parts.name")}</th>
          <th role="columnheader" scope="col" class="m right">${t("parts.mass.short")}, ${mass.unit}</th>
          <th role="columnheader" scope="col" class="h right"><abbr title=${t("parts.half")}>±, ${mass.unit}</abbr></th>
          <th role="columnheader" scope="col" class="b">${t("parts.basis")}</th>
          <th role="columnheader" scope="col" class="s">${t("parts.station")}</th>
          <th role="columnheader" scope="col" class="c">${t("parts.carrier")}</th>
          <th role="columnheader" scope="col" class="p right">${t("parts.place.x")} ${length}</th>
          <th role="columnheader" scope="col" class="p right">${t("parts.place.y")} ${length}</th>
          <th role="columnheader" scope="col" class="p right">${t("parts.place.z")} ${length}</th>
          <th role="columnheader" scope="col" class="t right">${t("parts.total")}</th>
          <th role="columnheader" scope="col" class="a"><span class="unseen">${t("parts.details.short")}</span></th>
        </tr>
      </thead>
      ${repeat(
        groups,
        ([g]) => g,
        ([g, list]) => this.group(g, list, long),
      )}
    </table>`;
  }

  private group(g: string, list: Part[], long: boolean): TemplateResult {
    const show = store.doc!.show;
    const s = partScale(show);
    const most = long ? (this.reach.get(g) ?? page) : list.length;
    // The report's group has what the load adds to it as well.
    const sum = list.reduce((m, p) => m + (store.weighed(p.id)?.mass_g ?? NaN), 0);
    const seen = list.slice(0, most);
    const chosen = list.findIndex((p) => p.id === store.selected);
    if (chosen >= most) seen.push(list[chosen]!);
    return html`<tbody role="rowgroup">
      <tr class="group" role="row">
        <th role="rowheader" scope="rowgroup" colspan="10">
          ${named("group", g)} <span class="n">${list.length}</span>
        </th>
        <td role="cell" class="t right">${Number.isFinite(sum) && !this.filter ? plain(write(sum, 0, s)) : nothing}</td>
        <td role="cell" class="a"></td>
      </tr>
      ${repeat(
        seen,
        (p) => p.id,
        (p) => partRows(p, long),
      )}
      ${list.length > seen.length
        ? html`<tr role="row" class="morerow">
            <td role="cell" colspan="12">
              <button
                type="button"
                class="plain strong"
                @click=${() => {
                  this.reach.set(g, most + further);
                  this.requestUpdate();
                }}
              >
                ${t("parts.more", { n: Math.min(list.length - seen.length, further) })}
              </button>
              <span class="quiet">${count(list.length, "parts.lines.one", "parts.lines.many")}</span>
            </td>
          </tr>`
        : nothing}
    </tbody>`;
  }
}

customElements.define("sy-parts", Parts);
