// A maker's table of frame figures, pasted: what the core recognised in it, line by
// line, before it is taken.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { findBuild } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { core, CoreError } from "../../core/core.ts";
import { hasClosed, closeDialog, showDialog, StoreElement } from "../../elements/element.ts";
import type { FrameFigure, FrameTable } from "../../model/types.ts";
import { figureScale, trim } from "../../model/units.ts";
import { count, t } from "../../text/index.ts";

export class FrameTableDialog extends StoreElement {
  private build = ""; // empty while the dialog is closed
  private text = "";
  private size: number | null = null;
  private skip = new Set<string>();
  private table: FrameTable | null = null;
  private why = "";
  private was: Element | null = null;

  open(build: string): void {
    if (!store.doc || core.state !== "ready") return;
    this.was = document.activeElement;
    this.build = build;
    this.write("");
    showDialog(this);
    void this.updateComplete.then(() => this.querySelector("textarea")?.focus());
  }

  private close(): void {
    if (!this.build) return;
    this.build = "";
    closeDialog(this, this.was);
  }

  // write reads another text, of which nothing is decided yet.
  private write(text: string): void {
    this.text = text;
    this.size = null;
    this.skip.clear();
    this.read();
  }

  private read(): void {
    this.table = null;
    this.why = "";
    if (this.text.trim()) {
      try {
        const size = this.size === null ? {} : { size: this.size };
        this.table = core.readFrameTable(store.text, { build: this.build, text: this.text, skip: [...this.skip], ...size });
      } catch (e) {
        if (!(e instanceof CoreError)) throw e;
        this.why = e.message;
      }
    }
    this.requestUpdate();
  }

  private get taken(): number {
    return this.table?.figures.filter((f) => f.taken).length ?? 0;
  }

  private take(): void {
    const doc = this.table?.document;
    if (!doc) return;
    const n = this.taken;
    const build = findBuild(doc, this.build)?.name ?? "";
    store.seal();
    store.edit(t("do.frametable", { build }), () => doc);
    store.seal();
    this.close();
    store.tell(count(n, "frametable.done.one", "frametable.done.many", { build }), { label: t("undo"), run: () => store.undo() });
  }

  protected override render(): TemplateResult | typeof nothing {
    const build = store.doc && this.build ? findBuild(store.doc, this.build) : undefined;
    if (!build) return nothing;
    const { table } = this;
    const ready = table?.document && this.taken > 0;
    return html`<dialog class="frametable" aria-labelledby="frametable-title" @close=${(e: Event) => this.build && hasClosed(e) && this.close()}>
      <h2 id="frametable-title">${t("frametable.title", { build: build.name })}</h2>
      <label class="stacked"
        >${t("frametable.text")}
        <textarea rows="6" spellcheck="false" .value=${live(this.text)} @input=${(e: Event) => this.write((e.target as HTMLTextAreaElement).value)}></textarea>
      </label>
      ${this.why ? html`<p class="why wrong" role="alert">${this.why}</p>` : nothing}
      ${table ? this.found(table) : html`<p class="fine">${t("frametable.hint")}</p>`}
      <div class="end">
        <p class="sum" role="status">${table ? this.sum(table) : nothing}</p>
        <div class="acts">
          <button type="button" class="go" ?disabled=${!ready} @click=${() => this.take()}>${t("frametable.take")}</button>
          <button type="button" @click=${() => this.close()}>${t("cancel")}</button>
        </div>
      </div>
    </dialog>`;
  }

  private sum(table: FrameTable): string {
    if (!table.figures.length) return t("frametable.none");
    if (table.size < 0) return t("frametable.choose");
    return count(this.taken, "frametable.sum.one", "frametable.sum.many");
  }

  private found(table: FrameTable): TemplateResult {
    const off = table.checks.filter((c) => !c.agrees);
    return html`${table.sizes.length > 1 && table.figures.length ? this.sizes(table) : nothing}
      ${off.length || table.problems.length ? html`<div class="off" role="alert">${[...off.map((c) => c.text), ...table.problems.map((p) => p.message)].map((text) => html`<p class="why">${text}</p>`)}</div>` : nothing}
      ${
        table.figures.length
          ? html`<h3>${t("frametable.figures")}</h3>
            <ul class="figures">
              ${table.figures.map((f) => html`<li>${this.figure(f, table.size < 0)}</li>`)}
            </ul>`
          : nothing
      }
      ${table.checks.filter((c) => c.agrees).map((c) => html`<p class="fine">${c.text}</p>`)}
      ${
        table.left.length
          ? html`<h3>${t("frametable.left")}</h3>
            <ul class="left">
              ${table.left.map((l) => html`<li>${l.text} <small>${l.why}</small></li>`)}
            </ul>`
          : nothing
      }`;
  }

  private sizes(table: FrameTable): TemplateResult {
    return html`<fieldset class="sizes">
      <legend>${t("frametable.size")}</legend>
      ${table.sizes.map(
        (name, i) => html`<label
          ><input
            type="radio"
            name="frametable-size"
            .checked=${live(table.size === i)}
            @change=${() => {
              this.size = i;
              this.read();
            }}
          />
          ${name || t("frametable.column", { n: i + 1 })}</label
        >`,
      )}
    </fieldset>`;
  }

  private figure(f: FrameFigure, open: boolean): TemplateResult {
    const s = f.unit === "deg" ? { per: 1, unit: t("unit.deg"), decimals: 2 } : figureScale("mm", store.doc!.show);
    const text = (v: number) => trim(v / s.per, Math.max(1, s.decimals));
    return html`<label class="tick">
      <input
        type="checkbox"
        ?disabled=${!f.given}
        .checked=${live(f.taken || open)}
        @change=${(e: Event) => {
          if ((e.target as HTMLInputElement).checked) this.skip.delete(f.field);
          else this.skip.add(f.field);
          this.read();
        }}
      />
      <span class="name">${f.label} <small>${[f.printed, f.remark].filter(Boolean).join(" · ")}</small></span>
      <span class="becomes"
        >${
          open
            ? html`<span class="before">${text(f.before)}</span>`
            : html`<span class="before">${text(f.before)}</span><span aria-hidden="true"> → </span><span class="unseen">${t("frametable.becomes")}</span
                ><strong>${text(f.taken ? f.value : f.before)}</strong>`
        }
        ${s.unit}</span
      >
    </label>`;
  }
}

customElements.define("sy-frametable", FrameTableDialog);
