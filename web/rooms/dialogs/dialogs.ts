// The page's dialogs: a parts list from CSV (see listin.ts), a document that came with a link,
// the link to share, the keys. One is open at a time.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { writeAddress } from "../../app/address.ts";
import { accept, copyText, dropLink, openers, published, reach, saveFile } from "../../app/files.ts";
import { store } from "../../app/state.ts";
import { readPreference, writePreference } from "../../io/storage.ts";
import { brief, count, t } from "../../text/index.ts";
import type { Doc, Opened } from "../../model/types.ts";
import { hasClosed, StoreElement, showDialog } from "../../elements/element.ts";
import { allRooms, findRoom } from "../../elements/room.ts";
import { arrive, chapter } from "../../elements/way.ts";
import "./listin.ts";

type Open =
  | { kind: "csv"; name: string; bytes: Uint8Array; fresh?: true }
  | { kind: "incoming"; doc: Doc; opened: Opened; chapter: string }
  | { kind: "share"; fragment: string; host: string; chapter: string }
  | { kind: "keys" }
  | null;

const longLink = 8000; // characters; mail and chat programs begin to cut
const longestLink = 1_000_000; // browsers open none that is much longer
const host = "host"; // preference: the address of a page that others can open
const listed = 6; // builds, loads, riders of a document

class Dialogs extends StoreElement {
  private now: Open = null;

  constructor() {
    super();
    openers.csv = (name, bytes) => this.open({ kind: "csv", name, bytes });
    openers.keys = () => this.open({ kind: "keys" });
    openers.list = () => this.open({ kind: "csv", name: t("csv.typed"), bytes: new Uint8Array(), fresh: true });
    openers.incoming = (doc, opened, chapter) => this.open({ kind: "incoming", doc, opened, chapter: findRoom(chapter) ? chapter : "" });
    openers.share = (fragment) => this.open({ kind: "share", fragment, host: readPreference(host), chapter: chapter() });
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
      now.kind === "csv"
        ? html`<sy-listin .name=${now.name} .bytes=${now.bytes} .fresh=${now.fresh ?? false} .done=${() => this.close()}></sy-listin>`
        : now.kind === "incoming"
          ? this.incoming(now)
          : now.kind === "share"
            ? this.share(now)
            : this.keys();
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
    if (base) base.hash = writeAddress({ document: now.fragment, chapter: now.chapter });
    const url = base?.href ?? "";
    const n = (base ? url : now.fragment).length;
    const wrong = now.host.trim() !== "" && here !== "everywhere" && !elsewhere;
    return html`<p>${t("link.lead")}</p>
      ${
        here === "everywhere"
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
            ${wrong ? html`<p id="host-why" class="why wrong">${t("link.host.wrong")}</p>` : nothing}`
      }
      <label class="stacked"
        >${t("link.at")}
        <select
          class="at"
          @change=${(e: Event) => {
            now.chapter = (e.target as HTMLSelectElement).value;
            this.requestUpdate();
          }}
        >
          <option value="" .selected=${live(now.chapter === "")}>${t("link.at.top")}</option>
          ${allRooms().map((r) => html`<option value=${r.name} .selected=${live(now.chapter === r.name)}>${t(r.short)}</option>`)}
        </select></label
      >
      ${
        base
          ? html`<label class="stacked"
            >${t("link.label")}
            <input type="text" class="link" readonly .value=${url} @focus=${(e: Event) => (e.target as HTMLInputElement).select()} />
          </label>`
          : nothing
      }
      <p class=${n > longLink ? "why" : "fine"}>${t(n > longestLink ? "link.huge" : n > longLink ? "link.long" : "link.length", { n })}</p>
      <div class="acts">
        ${
          base && n <= longestLink
            ? html`<button type="button" class="go" @click=${() => void copyText(url, t("link.copied")).then(() => this.close())}>${t("link.copy")}</button>`
            : nothing
        }
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
        ${
          mine
            ? html`<section aria-labelledby="goes">
              <h3 id="goes">${t("link.in.goes")}</h3>
              ${this.contents(mine)}
            </section>`
            : nothing
        }
      </div>
      ${
        problems.length
          ? html`<ul class="why">
            ${problems.slice(0, 5).map((p) => html`<li>${p.message}</li>`)}
            ${problems.length > 5 ? html`<li>${t("problems.more", { n: problems.length - 5 })}</li>` : nothing}
          </ul>`
          : nothing
      }
      <p>${t("link.in.replaces", { title: mine?.title || t("file.untitled") })}</p>
      <div class="acts">
        <button
          type="button"
          class="go"
          @click=${() => {
            accept(now.opened, title);
            this.close();
            if (!now.chapter) return;
            dropLink(now.chapter);
            arrive(now.chapter);
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

class Foot extends StoreElement {
  protected override render(): TemplateResult {
    const version = store.report?.program ?? "";
    return html`<p>${t("page.made", { version })}</p>
      <p>${t("add.typical")}</p>`;
  }
}

customElements.define("sy-foot", Foot);
