// What is found in a parts list from a spreadsheet, before it is taken in. The
// core reads the list anew after every choice; nothing is decided here.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core, CoreError } from "../../core/core.ts";
import { compared, editBuild, findBuild } from "../../app/edit.ts";
import { take } from "../../app/files.ts";
import { store } from "../../app/state.ts";
import { brief, count, has, t, word } from "../../text/index.ts";
import {
  listMassUnitValues,
  type Build,
  type CSVOptions,
  type Doc,
  type End,
  type EndRow,
  type ListMassUnit,
  type SumRow,
  type Table,
} from "../../model/types.ts";
import { massText, partScale, plain, write } from "../../model/units.ts";
import { StoreElement } from "../../elements/element.ts";
import { narrow } from "../../elements/narrow.ts";
import { visit } from "../../elements/way.ts";

const previewed = 8; // parts shown until asked for all
const most = 500; // and then
const badShown = 50;

// The fields that a column can hold, the needed ones first.
const columns = ["name", "mass", "quantity", "half_width", "basis", "kind", "station", "carrier", "note"];

class ListIn extends StoreElement {
  static override properties = { name: { attribute: false }, bytes: { attribute: false }, fresh: { attribute: false }, done: { attribute: false } };
  declare name: string;
  declare bytes: Uint8Array;
  declare fresh: boolean; // a document of its own is made of the list
  declare done: () => void;

  private text: string | null = null; // that was pasted or written here in place of the file
  private options: CSVOptions = {};
  private table: Table | null = null;
  private why = "";
  private replace = false;
  private all = false;

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has("bytes")) return;
    this.options = {};
    this.replace = this.all = false;
    this.text = this.bytes.length ? null : "";
    this.read();
  }

  // choose reads a file in place of what was pasted.
  private choose(): void {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = ".csv,.tsv,.txt,text/csv";
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      void file?.arrayBuffer().then((b) => {
        this.name = file.name;
        this.bytes = new Uint8Array(b);
      });
    });
    input.click();
  }

  constructor() {
    super();
    this.addEventListener("paste", (e) => {
      const text = e.clipboardData?.getData("text/plain") ?? "";
      if (e.target instanceof HTMLTextAreaElement || !text.trim()) return;
      e.preventDefault();
      this.write(text);
    });
  }

  // write reads another text, of which nothing is decided yet.
  private write(text: string): void {
    this.text = text;
    this.options = {};
    this.read();
    this.requestUpdate();
  }

  private read(): void {
    this.table = null;
    this.why = "";
    if (this.text !== null && !this.text.trim()) return; // nothing yet
    try {
      this.table = core.readPartsCSV(this.text ?? this.bytes, this.options);
      this.why = this.table.problems.map((p) => p.message).join(" ");
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.why = e.message;
    }
  }

  private again(change: CSVOptions): void {
    this.options = { ...this.options, ...change };
    this.read();
    this.requestUpdate();
  }

  protected override render(): TemplateResult {
    const { table } = this;
    const { build, doc } = store;
    const written = this.text !== null || table?.note === true;
    // What is written into stays the same element whatever comes of it.
    return html`${this.source(table)} ${this.why ? html`<p class="why ${table ? "" : "wrong"}">${this.why}</p>` : nothing}
      ${written ? this.note() : nothing}
      ${
        table && build && doc
          ? this.found(table, build)
          : html`<div class="acts"><button type="button" @click=${this.done}>${t(this.fresh ? "cancel" : "close")}</button></div>`
      }`;
  }

  private found(table: Table, build: Build): TemplateResult {
    const n = table.parts.length;
    return html`${table.note ? nothing : this.fields(table)}
      ${n ? this.preview(table) : html`<p class="why wrong">${t("csv.none")}</p>`} ${table.ends.length ? this.ends(table.ends) : nothing}
      ${table.sums.length ? this.sums(table.sums) : nothing} ${table.bad.length ? this.bad(table) : nothing}
      ${
        this.fresh
          ? nothing
          : html`<label class="check"
            ><input
              type="checkbox"
              .checked=${live(this.replace)}
              @change=${(e: Event) => {
                this.replace = (e.target as HTMLInputElement).checked;
                this.requestUpdate();
              }}
            />
            ${t("csv.replace")}</label
          >`
      }
      ${n ? html`<p>${this.comes(n, build)}</p>` : nothing}
      <div class="acts">
        <button type="button" class="go" ?disabled=${!n} @click=${() => this.take()}>${t(this.fresh ? "csv.make" : "csv.add")}</button>
        <button type="button" @click=${this.done}>${t("cancel")}</button>
      </div>`;
  }

  // source says where the list is from, or could be.
  private source(table: Table | null): TemplateResult {
    if (!this.fresh) return html`<p class="fine">${this.name}${table?.parts.length ? html` · ${table.encoding}` : nothing}</p>`;
    return html`<p>${t("csv.fresh")}</p>
      <p><button type="button" @click=${() => this.choose()}>${t("csv.file")}</button> <span class="fine">${this.name}</span></p>`;
  }

  private comes(n: number, build: Build): string {
    if (this.fresh) return count(n, "csv.make.one", "csv.make.many");
    if (this.replace) return count(n, "csv.good.replace.one", "csv.good.replace.many", { build: build.name, old: build.parts.length });
    return count(n, "csv.good.one", "csv.good.many", { build: build.name });
  }

  // row names a row by its line, or the item of a note, several of which may share a line.
  private row(n: number): string {
    return this.table?.note ? t("csv.item", { n }) : t("csv.line", { line: n });
  }

  // note shows a list without columns as it was written, to be put right.
  private note(): TemplateResult {
    return html`<label class="stacked written"
      >${t("csv.text")}
      <textarea
        rows="5"
        spellcheck="false"
        .value=${live(this.text ?? new TextDecoder().decode(this.bytes))}
        @input=${(e: Event) => this.write((e.target as HTMLTextAreaElement).value)}
      ></textarea>
    </label>`;
  }

  private fields(table: Table): TemplateResult {
    const chosen = this.options.columns ?? table.guess;
    const shown = [...new Set([...columns, ...Object.keys(table.guess)])];
    const open = table.unit_by !== "header" && table.unit_by !== "cells";
    return html`<fieldset class="specs columns">
        <legend>${t("csv.columns")}</legend>
        ${shown.map((f) => {
          const label = `csv.c.${f}`;
          return html`<label class="stacked"
            >${has(label) ? t(label) : f}
            <select
              @change=${(e: Event) => {
                const at = Number((e.target as HTMLSelectElement).value);
                const next = { ...chosen };
                if (at < 0) delete next[f];
                else next[f] = at;
                this.again({ columns: next });
              }}
            >
              <option value="-1" .selected=${live(chosen[f] === undefined)}>${t("csv.column.none")}</option>
              ${table.columns.map((c, i) => html`<option value=${i} .selected=${live(chosen[f] === i)}>${c || `${i + 1}`}</option>`)}
            </select></label
          >`;
        })}
        ${
          open
            ? html`<label class="stacked"
              >${t("csv.unit")}
              <select class="unit" @change=${(e: Event) => this.again({ mass_unit: (e.target as HTMLSelectElement).value as ListMassUnit })}>
                ${listMassUnitValues.map((u) => html`<option value=${u} .selected=${live(u === table.mass_unit)}>${u}</option>`)}
              </select></label
            >`
            : nothing
        }
      </fieldset>
      ${table.unit_by === "parts" ? html`<p class="why unit">${t("csv.unit.parts", { unit: table.mass_unit })}</p>` : nothing}`;
  }

  private preview(table: Table): TemplateResult {
    const show = store.doc!.show;
    const s = partScale(show);
    const n = table.parts.length;
    const lost = table.unplaced.length;
    const without = new Set(table.unplaced);
    const rows = table.parts.slice(0, this.all ? most : previewed);
    return html`<h3>${t("csv.preview")}</h3>
      <p class="sum">
        ${count(n, "csv.sum.one", "csv.sum.many", { mass: massText(table.total_g, show) })}
        ${lost ? t("csv.sum.known", { mass: massText(table.placed_g, show) }) : t("csv.sum.all")}
      </p>
      ${lost ? html`<p class="why lost">${count(lost, "csv.lost.one", "csv.lost.many", { all: n })}</p>` : nothing}
      <div class="scroll" tabindex="0" role="region" aria-label=${t("csv.preview")}>
        <table class="lines">
          <thead>
            <tr>
              <th scope="col" class="right">${t("parts.quantity.short")}</th>
              <th scope="col">${t("parts.name")}</th>
              <th scope="col" class="right">${t("parts.mass.short")}</th>
              <th scope="col">${t("csv.c.kind")}</th>
              <th scope="col">${t("parts.station")}</th>
              <th scope="col">${t("parts.carrier")}</th>
              <th scope="col">${t("parts.basis")}</th>
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              (p, i) =>
                html`<tr>
                  <td class="right">${p.quantity}</td>
                  <th scope="row">${brief(p.name)}</th>
                  <td class="right">${plain(write(p.mass_g, p.half_width_g, s))}</td>
                  ${
                    without.has(i)
                      ? html`<td colspan="3"><em>${t("csv.lost.mark")}</em></td>`
                      : html`<td>${word("kind", p.kind)}</td>
                        <td>${word("station", p.station ?? "")}</td>
                        <td>${word("carrier", p.carrier)}</td>`
                  }
                  <td>${word("basis", p.basis)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${
        n > rows.length
          ? html`<p class="fine more">
            ${t("csv.first", { n: rows.length, all: n })}
            ${
              this.all
                ? nothing
                : html`<button
                  type="button"
                  class="plain"
                  @click=${() => {
                    this.all = true;
                    this.requestUpdate();
                  }}
                >
                  ${t("csv.show.all")}
                </button>`
            }
          </p>`
          : nothing
      }`;
  }

  private ends(rows: EndRow[]): TemplateResult {
    const choices = (r: EndRow): End[] => (r.each ? ["each", "front", "rear"] : ["front", "rear"]);
    const label = (r: EndRow, c: End): string => {
      if (c !== "each") return t(r.pieces > 2 ? `csv.end.all.${c}` : r.pieces > 1 ? `csv.end.two.${c}` : `csv.end.${c}`, { n: r.pieces });
      return r.choice === "each" ? t("csv.end.each", { front: r.front, rear: r.rear }) : t("csv.end.both");
    };
    return html`<h3>${t("csv.ends")}</h3>
      <p class="fine">${t("csv.ends.lead")}</p>
      <ul class="ends">
        ${rows.map(
          (r) =>
            html`<li>
              <label class="stacked"
                ><span>${this.row(r.line)}: <strong>${brief(r.name)}</strong></span>
                <select
                  @change=${(e: Event) => this.again({ ends: { ...this.options.ends, [r.line]: (e.target as HTMLSelectElement).value as End } })}
                >
                  ${choices(r).map((c) => html`<option value=${c} .selected=${live(c === r.choice)}>${label(r, c)}</option>`)}
                </select></label
              >
            </li>`,
        )}
      </ul>`;
  }

  private sums(rows: SumRow[]): TemplateResult {
    const left = rows.filter((r) => !r.taken).length;
    return html`<h3>${t("csv.sums")}</h3>
      <p class="fine">${left ? count(left, "csv.sums.one", "csv.sums.many") : t("csv.sums.none")}</p>
      <ul class="sums">
        ${rows.map(
          (r) =>
            html`<li>
              <span
                >${this.row(r.line)}: <strong>${brief(r.name)}</strong> ${r.mass_g ? massText(r.mass_g, store.doc!.show) : nothing}
                <span class="fine"
                  >${r.of.length === 2 ? t("csv.sum.of", { from: r.of[0]!, to: r.of[1]! }) : t("csv.sum.called")}</span
                ></span
              >
              ${
                r.can
                  ? html`<button
                    type="button"
                    aria-pressed=${r.taken}
                    class="toggle"
                    aria-label=${t("csv.sum.take.name", { row: this.row(r.line), name: r.name })}
                    @click=${() => {
                      const others = (this.options.sums ?? []).filter((line) => line !== r.line);
                      this.again({ sums: r.taken ? others : [...others, r.line] });
                    }}
                  >
                    ${t("csv.sum.take")}
                  </button>`
                  : nothing
              }
            </li>`,
        )}
      </ul>`;
  }

  private bad(table: Table): TemplateResult {
    const n = table.bad.length;
    return html`<div class="bad">
      <p>${count(n, "csv.bad.one", "csv.bad.many")}</p>
      <ul>
        ${table.bad.slice(0, badShown).map((b) => html`<li><strong>${this.row(b.line)}</strong>: ${b.why} <q>${b.text}</q></li>`)}
        ${n > badShown ? html`<li>${t("problems.more", { n: n - badShown })}</li>` : nothing}
      </ul>
    </div>`;
  }

  private take(): void {
    const { table } = this;
    if (!table) return;
    const undo = { label: t("undo"), run: () => store.undo() };
    const into = (d: Doc, id: string): Doc => {
      const ids = core.newIDs(d, "part", table.parts.length);
      const parts = table.parts.map((p, i) => ({ ...p, id: ids[i]! }));
      return editBuild(d, id, (b) => ({ ...b, parts: this.replace ? parts : [...b.parts, ...parts] }));
    };
    if (this.fresh) {
      const blank = core.blank();
      take(into(blank, compared(blank)[0]), t("do.import"));
      store.tell(count(table.parts.length, "csv.made.one", "csv.made.many"), undo);
      this.done();
      visit("parts", narrow.matches ? "" : "add");
      return;
    }
    const id = store.activeID;
    store.edit(t("do.import"), (d) => into(d, id));
    const build = findBuild(store.doc!, id)?.name ?? "";
    store.tell(count(table.parts.length, "csv.done.one", "csv.done.many", { file: this.name, build }), undo);
    this.done();
  }
}

customElements.define("sy-listin", ListIn);
