// The page's dialogs: a parts list from CSV, a document that came with a link,
// the link to share, the keys. One is open at a time.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core, Trouble } from "../core.ts";
import { editBuild, findBuild, freshIDs } from "../edit.ts";
import { accept, copyText, dropLink, openers, published, reach, saveFile } from "../files.ts";
import { store } from "../state.ts";
import { readPreference, writePreference } from "../storage.ts";
import { brief, count, has, t, word } from "../text/index.ts";
import { listMassUnitValues, type CSVOptions, type Doc, type ListMassUnit, type Opened, type Table } from "../model/types.ts";
import { massText, partScale, plain, write } from "../units.ts";
import { hasClosed, Piece, showDialog } from "./element.ts";

type Open =
  | { kind: "csv"; name: string; text: string; options: CSVOptions; table: Table | null; why: string; replace: boolean }
  | { kind: "incoming"; doc: Doc; opened: Opened }
  | { kind: "share"; fragment: string; host: string }
  | { kind: "keys" }
  | null;

const previewed = 8;
const badShown = 50;
const longLink = 8000; // characters; mail and chat programs begin to cut
const longestLink = 1_000_000; // browsers open none that is much longer
const host = "host"; // preference: the address of a page that others can open
const listed = 6; // builds, loads, riders of a document

// The fields that a column can hold, the needed ones first.
const columns = ["name", "mass", "quantity", "half_width", "basis", "kind", "station", "carrier", "note"];

class Dialogs extends Piece {
  private now: Open = null;

  constructor() {
    super();
    openers.csv = (name, text) => {
      const open: Open = { kind: "csv", name, text, options: { mass_unit: "g" }, table: null, why: "", replace: false };
      this.read(open);
      this.open(open);
    };
    openers.incoming = (doc, opened) => this.open({ kind: "incoming", doc, opened });
    openers.share = (fragment) => this.open({ kind: "share", fragment, host: readPreference(host) });
  }

  open(what: Open): void {
    this.now = what;
    showDialog(this);
  }

  private close(): void {
    const was = this.now;
    this.querySelector("dialog")?.close();
    this.now = null;
    if (was?.kind === "incoming") dropLink();
    this.requestUpdate();
  }

  protected override render(): TemplateResult | typeof nothing {
    const now = this.now;
    if (!now) return nothing;
    const body =
      now.kind === "csv" ? this.csv(now) : now.kind === "incoming" ? this.incoming(now) : now.kind === "share" ? this.share(now) : this.keys();
    const title = { csv: t("csv.title"), incoming: t("link.in.title"), share: t("link.title"), keys: t("keys.title") }[now.kind];
    return html`<dialog class=${now.kind} aria-labelledby="dialog-title" @close=${(e: Event) => this.now && hasClosed(e) && this.close()}>
      <h2 id="dialog-title">${title}</h2>
      ${body}
    </dialog>`;
  }

  private share(now: Extract<Open, { kind: "share" }>): TemplateResult {
    const here = reach();
    const elsewhere = here === "everywhere" ? null : published(now.host);
    const base = elsewhere ?? (here === "nowhere" ? null : new URL(location.href));
    if (base) base.hash = now.fragment;
    const url = base?.href ?? "";
    const n = (base ? url : now.fragment).length;
    const wrong = now.host.trim() !== "" && here !== "everywhere" && !elsewhere;
    return html`<p>${t("link.lead")}</p>
      ${here === "everywhere"
        ? nothing
        : html`<p class="why">${t(here === "nowhere" ? "link.file" : "link.loopback")}</p>
            <label class="stacked"
              >${t("link.host")}
              <input
                type="text"
                inputmode="url"
                class="host"
                autocomplete="url"
                spellcheck="false"
                placeholder="https://"
                .value=${live(now.host)}
                aria-invalid=${wrong ? "true" : nothing}
                aria-describedby=${wrong ? "host-why" : nothing}
                @input=${(e: Event) => {
                  now.host = (e.target as HTMLInputElement).value;
                  if (!now.host.trim() || published(now.host)) writePreference(host, now.host.trim());
                  this.requestUpdate();
                }}
              />
            </label>
            ${wrong ? html`<p id="host-why" class="why wrong">${t("link.host.wrong")}</p>` : nothing}`}
      ${base
        ? html`<label class="stacked"
            >${t("link.label")}
            <input type="text" class="link" readonly .value=${url} @focus=${(e: Event) => (e.target as HTMLInputElement).select()} />
          </label>`
        : nothing}
      <p class=${n > longLink ? "why" : "fine"}>${t(n > longestLink ? "link.huge" : n > longLink ? "link.long" : "link.length", { n })}</p>
      <div class="acts">
        ${base && n <= longestLink
          ? html`<button type="button" class="go" @click=${() => void copyText(url, t("link.copied")).then(() => this.close())}>${t("link.copy")}</button>`
          : nothing}
        <button type="button" @click=${() => saveFile()}>${t("file.save.name")}</button>
        <button type="button" @click=${() => this.close()}>${t("close")}</button>
      </div>`;
  }

  private incoming(now: Extract<Open, { kind: "incoming" }>): TemplateResult {
    const title = now.doc.title || t("file.untitled");
    const mine = store.doc;
    const problems = now.opened.problems;
    return html`<div class="sides">
        <section aria-labelledby="comes">
          <h3 id="comes">${t("link.in.comes")}</h3>
          ${this.contents(now.doc)}
        </section>
        ${mine
          ? html`<section aria-labelledby="goes">
              <h3 id="goes">${t("link.in.goes")}</h3>
              ${this.contents(mine)}
            </section>`
          : nothing}
      </div>
      ${problems.length
        ? html`<ul class="why">
            ${problems.slice(0, 5).map((p) => html`<li>${p.message}</li>`)}
            ${problems.length > 5 ? html`<li>${t("problems.more", { n: problems.length - 5 })}</li>` : nothing}
          </ul>`
        : nothing}
      <p>${t("link.in.replaces", { title: mine?.title || t("file.untitled") })}</p>
      <div class="acts">
        <button
          type="button"
          class="go"
          @click=${() => {
            accept(now.opened, title);
            this.close();
          }}
        >
          ${t("link.in.open")}
        </button>
        <button type="button" autofocus @click=${() => this.close()}>${t("link.in.keep")}</button>
        <button type="button" @click=${() => saveFile()}>${t("link.in.save")}</button>
      </div>`;
  }

  // contents tells what a document holds.
  private contents(d: Doc): TemplateResult {
    const lines: [string, string[]][] = [
      [t("link.in.builds"), d.builds.map((b) => count(b.parts.length, "link.in.build.one", "link.in.build.many", { name: b.name || b.id }))],
      [t("link.in.loads"), (d.loads ?? []).map((l) => brief(l.name || l.id))],
      [t("link.in.riders"), (d.riders ?? []).map((r) => brief(r.name || r.id))],
      [t("link.in.weighins"), (d.weigh_ins ?? []).map((w) => brief(w.name || w.id))],
    ];
    return html`<p class="doc-title">${brief(d.title || t("file.untitled"))}</p>
      <dl>
        ${lines
          .filter(([, names]) => names.length)
          .map(
            ([what, names]) =>
              html`<div>
                <dt>${what}</dt>
                ${names.slice(0, listed).map((n) => html`<dd>${n}</dd>`)}
                ${names.length > listed ? html`<dd>${t("problems.more", { n: names.length - listed })}</dd>` : nothing}
              </div>`,
          )}
      </dl>`;
  }

  private read(now: Extract<Open, { kind: "csv" }>): void {
    try {
      now.table = core.readPartsCSV(now.text, now.options);
      now.why = now.table.problems.map((p) => p.message).join(" ");
    } catch (e) {
      if (!(e instanceof Trouble)) throw e;
      now.why = e.message;
    }
  }

  private again(now: Extract<Open, { kind: "csv" }>, change: CSVOptions): void {
    now.options = { ...now.options, ...change };
    this.read(now);
    this.requestUpdate();
  }

  private csv(now: Extract<Open, { kind: "csv" }>): TemplateResult {
    const table = now.table;
    const build = store.build;
    const show = store.doc?.show;
    if (!table || !build || !show) {
      return html`<p class="why wrong">${now.why}</p>
        <div class="acts"><button type="button" @click=${() => this.close()}>${t("close")}</button></div>`;
    }
    const chosen = now.options.columns ?? table.guess;
    const n = table.parts.length;
    const s = partScale(show);
    return html`<p class="fine">${now.name}</p>
      ${now.why ? html`<p class="why">${now.why}</p>` : nothing}
      <fieldset class="specs columns">
        <legend>${t("csv.columns")}</legend>
        ${[...new Set([...columns, ...Object.keys(table.guess)])].map((f) => {
          const labelKey = `csv.c.${f}`;
          const label = has(labelKey) ? t(labelKey) : f;
          return html`<label class="stacked"
            >${label}
            <select
              @change=${(e: Event) => {
                const at = Number((e.target as HTMLSelectElement).value);
                const next = { ...chosen };
                if (at < 0) delete next[f];
                else next[f] = at;
                this.again(now, { columns: next });
              }}
            >
              <option value="-1" .selected=${live(chosen[f] === undefined)}>${t("csv.column.none")}</option>
              ${table.columns.map((c, i) => html`<option value=${i} .selected=${live(chosen[f] === i)}>${c || `${i + 1}`}</option>`)}
            </select></label
          >`;
        })}
        <label class="stacked"
          >${t("csv.unit")}
          <select
            @change=${(e: Event) => this.again(now, { mass_unit: (e.target as HTMLSelectElement).value as ListMassUnit })}
          >
            ${listMassUnitValues.map((u) => html`<option value=${u} .selected=${live(u === (now.options.mass_unit ?? "g"))}>${u}</option>`)}
          </select></label
        >
      </fieldset>
      ${n
        ? html`<h3>${t("csv.preview")}</h3>
            <div class="scroll" tabindex="0" role="region" aria-label=${t("csv.preview")}>
              <table class="lines">
                <thead>
                  <tr>
                    <th scope="col" class="right">${t("parts.quantity.short")}</th>
                    <th scope="col">${t("parts.name")}</th>
                    <th scope="col" class="right">${t("parts.mass.short")}</th>
                    <th scope="col">${t("parts.basis")}</th>
                    <th scope="col">${t("parts.station")}</th>
                    <th scope="col">${t("parts.carrier")}</th>
                  </tr>
                </thead>
                <tbody>
                  ${table.parts.slice(0, previewed).map(
                    (p) =>
                      html`<tr>
                        <td class="right">${p.quantity}</td>
                        <th scope="row">${brief(p.name)}</th>
                        <td class="right">${plain(write(p.mass_g, p.half_width_g, s))}</td>
                        <td>${word("basis", p.basis)}</td>
                        <td>${word("station", p.station ?? "")}</td>
                        <td>${word("carrier", p.carrier)}</td>
                      </tr>`,
                  )}
                </tbody>
              </table>
            </div>
            ${n > previewed ? html`<p class="fine">${t("csv.first", { n: previewed, all: n })}</p>` : nothing}`
        : html`<p class="why wrong">${t("csv.none")}</p>`}
      ${table.bad.length
        ? html`<div class="bad">
            <p>${count(table.bad.length, "csv.bad.one", "csv.bad.many")}</p>
            <ul>
              ${table.bad.slice(0, badShown).map((b) => html`<li><strong>${t("csv.line", { line: b.line })}</strong>: ${b.why} <q>${b.text}</q></li>`)}
              ${table.bad.length > badShown ? html`<li>${t("problems.more", { n: table.bad.length - badShown })}</li>` : nothing}
            </ul>
          </div>`
        : nothing}
      <label class="check"
        ><input
          type="checkbox"
          .checked=${live(now.replace)}
          @change=${(e: Event) => {
            now.replace = (e.target as HTMLInputElement).checked;
            this.requestUpdate();
          }}
        />
        ${t("csv.replace")}</label
      >
      ${n
        ? html`<p>
            ${now.replace
              ? count(n, "csv.good.replace.one", "csv.good.replace.many", { build: build.name, old: build.parts.length })
              : count(n, "csv.good.one", "csv.good.many", { build: build.name })}
            ${massText(
              table.parts.reduce((m, p) => m + p.mass_g * p.quantity, 0),
              show,
            )}.
          </p>`
        : nothing}
      <div class="acts">
        <button type="button" class="go" ?disabled=${!n} @click=${() => this.take(now)}>${t("csv.add")}</button>
        <button type="button" @click=${() => this.close()}>${t("cancel")}</button>
      </div>`;
  }

  private take(now: Extract<Open, { kind: "csv" }>): void {
    const table = now.table;
    if (!table) return;
    const id = store.activeID;
    store.edit(t("do.import"), (d) => {
      const fresh = freshIDs(d);
      const parts = table.parts.map((p) => ({ ...p, id: fresh() }));
      return editBuild(d, id, (b) => ({ ...b, parts: now.replace ? parts : [...b.parts, ...parts] }));
    });
    const name = findBuild(store.doc!, id)?.name ?? "";
    store.tell(count(table.parts.length, "csv.done.one", "csv.done.many", { file: now.name, build: name }), { label: t("undo"), run: () => store.undo() });
    this.close();
  }

  private keys(): TemplateResult {
    const keys: [string, string][] = [
      ["Ctrl Z · Ctrl Shift Z", t("keys.undo")],
      ["Ctrl S", t("keys.save")],
      ["Ctrl O", t("keys.open")],
      ["/", t("keys.find")],
      ["Delete", t("keys.delete")],
      ["← → ↑ ↓", t("keys.nudge")],
      ["Page Up · Page Down", t("keys.next")],
      ["+ · − · 0", t("keys.zoom")],
      ["↑ ↓", t("keys.step")],
      ["Esc", t("keys.escape")],
      ["?", t("keys.help")],
    ];
    return html`<dl class="keylist">
        ${keys.map(
          ([k, what]) =>
            html`<div>
              <dt><kbd>${k}</kbd></dt>
              <dd>${what}</dd>
            </div>`,
        )}
      </dl>
      <div class="acts"><button type="button" class="go" @click=${() => this.close()}>${t("close")}</button></div>`;
  }
}

customElements.define("sy-dialogs", Dialogs);

export function showKeys(): void {
  (document.querySelector("sy-dialogs") as Dialogs | null)?.open({ kind: "keys" });
}

class Foot extends Piece {
  protected override render(): TemplateResult {
    const version = store.report?.program ?? "";
    return html`<p>${t("page.made", { version })}</p>
      <p>${t("add.typical")}</p>`;
  }
}

customElements.define("sy-foot", Foot);
