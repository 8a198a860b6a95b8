// What the page has to say above the sheet: a calculator that stopped, trouble
// with keeping, things to put right with a way to each field, and short notes.
// And, for those who listen, the totals after an edit.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { accept, because, opened, saveFile, saveText } from "../../app/files.ts";
import { store } from "../../app/state.ts";
import { count, t, word } from "../../text/index.ts";
import type { Opened, Problem } from "../../model/types.ts";
import { alone, between, figureScale, plain, write } from "../../model/units.ts";
import { StoreElement } from "../../elements/element.ts";
import { go } from "../../elements/lines.ts";

const shown = 6;

class Notices extends StoreElement {
  protected override render(): TemplateResult {
    const errors = store.problems.filter((p) => p.severity === "error");
    const warnings = store.problems.filter((p) => p.severity !== "error");
    return html`
      ${core.state === "dead" ? this.dead() : nothing} ${this.keeping()}
      ${errors.length ? this.list(errors, count(errors.length, "problems.title.one", "problems.title.many")) : nothing}
      ${
        warnings.length
          ? html`<details class="notice remarks">
            <summary>${count(warnings.length, "problems.warn.one", "problems.warn.many")}</summary>
            ${this.items(warnings, 40)}
          </details>`
          : nothing
      }
    `;
  }

  private dead(): TemplateResult {
    return html`<div class="notice error" role="alert">
      <p>${t("core.dead", { why: core.why.split("\n")[0] ?? "" })}</p>
      <p>
        <button type="button" @click=${() => core.restart()}>${t("core.restart")}</button>
        <button type="button" @click=${() => saveFile()}>${t("core.save")}</button>
      </p>
    </div>`;
  }

  private keeping(): TemplateResult | typeof nothing {
    const { storage } = store;
    if (storage.state === "failed") {
      return html`<div class="notice error" role="alert">
        <p>${t("keep.failed.long", { why: storage.why })} <button type="button" @click=${() => saveFile()}>${t("file.save.name")}</button></p>
      </div>`;
    }
    if (storage.state === "conflict") {
      return html`<div class="notice error" role="alert">
        <p>${t("keep.conflict.long")}</p>
        <p>
          <button type="button" @click=${() => void this.theirs()}>${t("keep.theirs")}</button>
          <button type="button" @click=${() => void this.mine()}>${t("keep.mine")}</button>
          <button type="button" @click=${() => saveFile()}>${t("core.save")}</button>
        </p>
      </div>`;
    }
    return nothing;
  }

  private async theirs(): Promise<void> {
    try {
      const kept = await store.storage.theirs();
      const o: Opened = kept ? opened(kept.text) : { document: null, problems: [] };
      if (kept && o.document) store.storage.follow(kept);
      accept(o, t("keep.other"));
    } catch (e) {
      store.tell(t("file.unreadable", { name: t("keep.other"), why: because(e) }), undefined, "error");
    }
  }

  private async mine(): Promise<void> {
    const other = await store.storage.keepMine();
    if (other === null || store.storage.state !== "kept") return;
    store.tell(t("keep.replaced"), { label: t("keep.replaced.save"), run: () => saveText("steelyard-other.steelyard.json", other) });
  }

  private list(problems: Problem[], title: string): TemplateResult {
    const whole = problems.some((p) => !p.part);
    return html`<div class="notice error" role="region" aria-label=${title}>
      <p class="lead"><strong>${title}.</strong> ${whole ? t("problems.stay") : word("help", "left_out")}</p>
      ${this.items(problems, shown)}
    </div>`;
  }

  private items(problems: Problem[], most: number): TemplateResult {
    return html`<ul>
      ${problems.slice(0, most).map(
        (p) =>
          html`<li>
            ${p.message}
            ${p.field || p.part || p.build || p.load || p.rider ? html`<button type="button" class="plain strong" @click=${() => go(p)}>${t("problems.go")}</button>` : nothing}
          </li>`,
      )}
      ${problems.length > most ? html`<li>${t("problems.more", { n: problems.length - most })}</li>` : nothing}
    </ul>`;
  }
}

customElements.define("sy-notices", Notices);

// Notes are the short messages over the foot of the window. An open dialog takes
// all else on the page out of reach, so they live in it while it is open.
class Notes extends StoreElement {
  private readonly settle = () => this.move();

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener("close", this.settle, true);
  }

  override disconnectedCallback(): void {
    document.removeEventListener("close", this.settle, true);
    super.disconnectedCallback();
    queueMicrotask(() => this.move()); // its dialog may have gone from the page
  }

  private move(): void {
    // Looking for ":modal" alone would look at every element of a long list.
    const home = [...document.getElementsByTagName("dialog")].filter((d) => d.open && d.matches(":modal")).at(-1) ?? document.body;
    if (this.parentElement !== home || !this.isConnected) home.append(this);
  }

  protected override willUpdate(): void {
    // Looking for dialogs walks all of the page.
    if (store.notices.length > 0) this.move();
  }

  protected override render(): TemplateResult {
    return html`<div class="notes" role="status" aria-live="polite">
      ${store.notices.map(
        (n) =>
          html`<p class="note ${n.kind}">
            <span>${n.text}</span>
            ${
              n.action
                ? html`<button
                  type="button"
                  class="plain strong"
                  @click=${() => {
                    n.action?.run();
                    store.dismiss(n.id);
                  }}
                >
                  ${n.action.label}
                </button>`
                : nothing
            }
            <button type="button" class="plain" @click=${() => store.dismiss(n.id)}>${t("dismiss")}</button>
          </p>`,
      )}
    </div>`;
  }
}

customElements.define("sy-notes", Notes);

// LiveRegion says the totals, a moment after the last edit, to those who listen.
class LiveRegion extends StoreElement {
  private timer = 0;
  private words = "";
  private last = "";
  private readonly figures = () => {
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => this.say(this.totals()), 900);
  };
  private readonly told = (e: Event) => this.say((e as CustomEvent<string>).detail);

  override connectedCallback(): void {
    super.connectedCallback();
    store.addEventListener("figures", this.figures);
    store.addEventListener("say", this.told);
  }

  override disconnectedCallback(): void {
    store.removeEventListener("figures", this.figures);
    store.removeEventListener("say", this.told);
    super.disconnectedCallback();
  }

  private say(words: string): void {
    if (words === this.last) return;
    this.last = words;
    this.words = words;
    this.requestUpdate();
  }

  private totals(): string {
    const doc = store.doc;
    const total = store.shown(store.letter)?.figures.find((f) => f.key === "total");
    if (!doc || !total) return "";
    const s = figureScale("g", doc.show);
    const out = [
      t("say.total", {
        name: store.build?.name ?? "",
        value: plain(alone(total.value, total.plus, s)),
        likely: t("likely", between(total.value, total.plus, s)),
      }),
    ];
    const d = store.difference?.figures.find((f) => f.key === "total");
    if (d) {
      const verdict = { more: t("delta.heavier"), less: t("delta.lighter"), same: t("delta.same"), undecided: t("delta.undecided") }[d.verdict];
      out.push(t("say.delta", { value: plain(write(d.delta, d.plus, s, true)), verdict }));
    }
    return out.join(" ");
  }

  protected override render(): TemplateResult {
    return html`<p class="unseen" role="status" aria-live="polite">${this.words}</p>`;
  }
}

customElements.define("sy-teller", LiveRegion);
