// The parts list of the build looked at, by group, every line editable where it
// stands. Long lists show the first lines of each group until asked for more.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { repeat } from "lit/directives/repeat.js";
import { core, CoreError } from "../../core/core.ts";
import { chooseFile, openers, savePartsCSV } from "../../app/files.ts";
import { named } from "../../app/places.ts";
import { sharedIn, sharing } from "../../app/sharing.ts";
import { store } from "../../app/state.ts";
import { count, language, t } from "../../text/index.ts";
import type { Build, Part, SharedThing } from "../../model/types.ts";
import { alone, figureScale, massField, partScale, plain } from "../../model/units.ts";
import "./addpart.ts";
import { Answer } from "../../elements/answer.ts";
import { DeferredElement } from "../../elements/element.ts";
import { copyMenu } from "../../elements/copytable.ts";
import { badge } from "../../elements/figure.ts";
import { aside } from "./aside.ts";
import { markbar } from "./markbar.ts";
import { marking, marks } from "./marks.ts";
import { missing } from "./missing.ts";
import { partRows } from "./partrow.ts";

const many = 300; // lines from which on a list is a long one
const page = 20; // lines of a group shown at first in a long list: each is some forty elements
const further = 100; // lines that come when asked for

// What builds share is told after the figures: nobody waits for it.
const after = 120; // ms
const shares = new Answer(() => sharing());

class Parts extends DeferredElement {
  private filter = "";
  private found: { of: Build; typed: string; language: unknown; ids: Set<string> | null } | null = null;
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
            <button type="button" class="plain weighing" title=${t("scale.open.name")} ?disabled=${!build?.parts.length} @click=${() => build && openers.scale(build.id)}>
              ${t("scale.open")}
            </button>
            <button type="button" class="plain" title=${t("parts.csvin.name")} ?disabled=${!doc} @click=${() => chooseFile(".csv,.tsv,.txt,text/csv")}>
              ${t("parts.csvin")}
            </button>
            <button type="button" class="plain" title=${t("parts.csv.name")} ?disabled=${!doc} @click=${savePartsCSV}>${t("parts.csv")}</button>
            ${build ? copyMenu(t("parts.caption", { build: build.name }), { parts: build.id }) : nothing}
          </div>
        </div>
      </div>
      ${doc && build ? this.list(build) : nothing}`;
  }

  private list(build: Build): TemplateResult {
    const known = shares.seen(after).value;
    const lacks = known?.builds.find((b) => b.id === build.id)?.missing ?? [];
    return html`${this.bar(build)}${missing(build, lacks)}${this.table(build.parts, this.meant(build), sharedIn(known, "parts", build.id))}${markbar()}${aside()}`;
  }

  private bar(build: Build): TemplateResult {
    const none = this.meant(build)?.size === 0;
    return html`<div class="partsbar">
      <sy-add></sy-add>
      <button type="button" class="changing" @click=${() => openers.change(build.id)}>${t("change.open")}</button>
      ${
        build.parts.length
          ? html`<button
            type="button"
            id="marks-on"
            class="toggle"
            aria-pressed=${marks.on}
            @click=${() => marking(!marks.on)}
          >
            ${t("marks.on")}
          </button>`
          : nothing
      }
      ${
        build.parts.length > 12
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
          : nothing
      }
    </div>
      <p class="nofind" role="status">${none ? t("parts.filter.none", { name: this.filter.trim() }) : nothing}</p>`;
  }

  // meant gives the ids of the parts that the core finds, null for all.
  private meant(build: Build): Set<string> | null {
    const f = this.found;
    if (f && f.of === build && f.typed === this.filter && f.language === language()) return f.ids;
    let ids: Set<string> | null = null;
    if (this.filter.trim()) {
      try {
        ids = new Set(core.findParts(store.text, build.id, this.filter));
      } catch (e) {
        if (!(e instanceof CoreError)) throw e; // the list then stays whole
      }
    }
    this.found = { of: build, typed: this.filter, language: language(), ids };
    return ids;
  }

  private grouped(parts: Part[], found: Set<string> | null): Map<string, Part[]> {
    const group = new Map(store.kinds.map((k) => [k.id, k.group]));
    const out = new Map<string, Part[]>();
    for (const g of new Set(store.kinds.map((k) => k.group))) out.set(g, []);
    for (const p of parts) {
      if (found && !found.has(p.id) && p.id !== store.selected) continue;
      const g = group.get(p.kind) ?? "other";
      const list = out.get(g);
      if (list) list.push(p);
      else out.set(g, [p]);
    }
    return out;
  }

  private table(parts: Part[], found: Set<string> | null, shared: Map<string, SharedThing>): TemplateResult {
    if (!parts.length) return html`<p class="quiet">${t("parts.empty")}</p>`;
    const show = store.doc!.show;
    const long = parts.length > many;
    const groups = [...this.grouped(parts, found)].filter(([, list]) => list.length);
    if (!groups.length) return html``;
    const mass = massField(show);
    const length = figureScale("mm", show).unit;
    return html`<table class="parts ${marks.on ? "marking" : ""}" role="table">
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
        ([g, list]) => this.group(g, list, long, shared),
      )}
    </table>`;
  }

  private group(g: string, list: Part[], long: boolean, shared: Map<string, SharedThing>): TemplateResult {
    const show = store.doc!.show;
    const s = partScale(show);
    const most = long ? (this.reach.get(g) ?? page) : list.length;
    // The report's groups have what the load adds to them as well.
    const sum = store.figures(store.activeID)?.own.find((o) => o.key === g);
    const seen = list.slice(0, most);
    const chosen = list.findIndex((p) => p.id === store.selected);
    if (chosen >= most) seen.push(list[chosen]!);
    return html`<tbody role="rowgroup">
      <tr class="group" role="row">
        <th role="rowheader" scope="rowgroup" colspan="10">
          ${named("group", g)} <span class="n">${list.length}</span>
        </th>
        <td role="cell" class="t right">${sum && !this.filter ? plain(alone(sum.mass_g, sum.plus_g, s)) : nothing}</td>
        <td role="cell" class="a"></td>
      </tr>
      ${repeat(
        seen,
        (p) => p.id,
        (p) => partRows(p, long, shared.get(p.id)),
      )}
      ${
        list.length > seen.length
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
          : nothing
      }
    </tbody>`;
  }
}

customElements.define("sy-parts", Parts);
