// The masthead: the name, the title of the document, what can be done with it,
// and how it is shown.

import { html, nothing, svg, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { chooseFile, openDemo, openers, saveFile, shareLink, startBlank } from "../../app/files.ts";
import { languages, speaker, type Choice } from "../../app/language.ts";
import { store, type Theme } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import { asLengthUnit, asMassUnit } from "../../model/units.ts";
import { showAbout } from "./about.ts";
import { StoreElement } from "../../elements/element.ts";
import "../../elements/menu.ts";
import "./offlineStatus.ts";

// A steelyard: the beam on its pivot, the load on the short arm, the poise on
// the long one.
const mark = svg`<svg class="mark" viewBox="0 0 64 34" aria-hidden="true" focusable="false">
  <path d="M2 11.5 62 8.5" stroke-width="2.2"/>
  <path d="M20 10.6V2.4m-3.2 0h6.4" stroke-width="1.6"/>
  <path d="M6 11.3v5.2M6 16.5a5.6 5.6 0 1 0 .01 0" stroke-width="1.6"/>
  <path d="M27 10.3v3m6-3.3v3m6-3.3v3m12-3.6v3m6-3.3v3" stroke-width="1"/>
  <path class="poise" d="M45 9.4v6.4l-4 7.2h8l-4-7.2z"/>
</svg>`;

class Masthead extends StoreElement {
  private shown = false; // on a narrow sheet, where the commands lie folded into one

  private readonly outside = (e: Event) => {
    if (!e.composedPath().includes(this)) this.show(false);
  };

  override disconnectedCallback(): void {
    this.show(false);
    super.disconnectedCallback();
  }

  private show(on: boolean): void {
    if (this.shown === on) return;
    this.shown = on;
    const act = on ? "addEventListener" : "removeEventListener";
    document[act]("pointerdown", this.outside);
    document[act]("focusin", this.outside);
    this.requestUpdate();
  }

  // A command that was given folds them up again; undo and how the sheet looks do
  // not, since one looks at what they do.
  private readonly given = {
    handleEvent: (e: Event) => this.give(e),
    capture: true, // before a dialog opens, which gives the focus back to where it was then
  };

  private give(e: Event): void {
    const pressed = e.target instanceof Element ? e.target.closest(".acts:not(.history) button") : null;
    if (!this.shown || !pressed || pressed.hasAttribute("aria-expanded")) return;
    this.show(false);
    this.opener?.focus();
  }

  private get opener(): HTMLElement | null {
    return this.querySelector(".nameplate .opens");
  }

  private key(e: KeyboardEvent): void {
    if (!this.shown || e.key !== "Escape") return;
    e.stopPropagation();
    this.show(false);
    this.opener?.focus();
  }

  protected override render(): TemplateResult {
    const doc = store.doc;
    const off = !doc;
    const { state } = store.storage;
    return html`
      <div class="nameplate">
        <h1>${mark}<span>${t("page.name")}</span></h1>
        <label class="title"
          ><span class="unseen">${t("file.title")}</span>
          <input
            id="title"
            type="text"
            autocomplete="off"
            placeholder=${t("file.untitled")}
            ?disabled=${off}
            .value=${live(doc?.title ?? "")}
            @input=${(e: Event) => {
              const title = (e.target as HTMLInputElement).value;
              store.edit(t("do.title"), (d) => ({ ...d, title }), "title");
            }}
            @blur=${() => store.seal()}
        /></label>
        <button
          type="button"
          class="plain opens"
          aria-expanded=${this.shown}
          aria-controls="commands"
          @click=${() => this.show(!this.shown)}
          @keydown=${(e: KeyboardEvent) => this.key(e)}
        >
          ${t("file.commands")}
        </button>
        <div class="state">
          <p class="keeping ${state}">${doc ? t(`keep.${state}`) : nothing}</p>
          <sy-standing></sy-standing>
        </div>
      </div>
      <div
        id="commands"
        class="dateline ${this.shown ? "shown" : ""}"
        @click=${this.given}
        @keydown=${(e: KeyboardEvent) => this.key(e)}
      >
        <div class="acts" role="group" aria-label=${t("file.group")}>
          <sy-menu
            .label=${t("file.new")}
            .items=${[
              { label: t("file.bike"), run: () => openers.bike() },
              { label: t("file.list"), run: () => openers.list() },
              { label: t("file.blank"), run: startBlank },
              { label: t("file.demo"), run: openDemo },
            ]}
          ></sy-menu>
          <button type="button" class="plain" title=${t("file.open.name")} @click=${chooseFile}>${t("file.open")}</button>
          <button type="button" class="plain" title=${t("file.save.name")} ?disabled=${off} @click=${() => saveFile()}>${t("file.save")}</button>
          <button type="button" class="plain" ?disabled=${off} @click=${shareLink}>${t("file.share")}</button>
          <button type="button" class="plain" ?disabled=${off} @click=${() => openers.publish()}>${t("publish.open")}</button>
          <button type="button" class="plain" ?disabled=${off} @click=${() => window.print()}>${t("file.print")}</button>
        </div>
        <div class="acts history">
          <button
            type="button"
            class="plain"
            title=${store.undoable ? t("file.undo.name", { what: store.undoable }) : nothing}
            ?disabled=${store.undoable === null}
            @click=${() => store.undo()}
          >
            ${t("file.undo")}
          </button>
          <button
            type="button"
            class="plain"
            title=${store.redoable ? t("file.redo.name", { what: store.redoable }) : nothing}
            ?disabled=${store.redoable === null}
            @click=${() => store.redo()}
          >
            ${t("file.redo")}
          </button>
        </div>
        <div class="acts display" role="group" aria-label=${t("show.group")}>
          ${this.pick(t("show.mass"), doc?.show.mass ?? "kg", { g: t("show.mass.g"), kg: t("show.mass.kg"), lb_oz: t("show.mass.lb_oz") }, off, (v) =>
            store.edit(t("do.units"), (d) => ({ ...d, show: { ...d.show, mass: asMassUnit(v) } })),
          )}
          ${this.pick(t("show.length"), doc?.show.length ?? "mm", { mm: t("show.length.mm"), in: t("show.length.in") }, off, (v) =>
            store.edit(t("do.units"), (d) => ({ ...d, show: { ...d.show, length: asLengthUnit(v) } })),
          )}
          ${this.pick(t("show.theme"), store.look.theme, { auto: t("show.theme.auto"), light: t("show.theme.light"), dark: t("show.theme.dark") }, false, (v) =>
            store.setLook({ theme: v as Theme }),
          )}
          ${this.pick(t("language"), speaker.choice, { auto: t("language.auto"), ...languages }, false, (v) => speaker.choose(v as Choice))}
          <button type="button" class="plain keys" aria-keyshortcuts="?" @click=${() => openers.keys()}>${t("file.keys")}</button>
          <button type="button" class="plain about" @click=${showAbout}>${t("about.open")}</button>
        </div>
      </div>
    `;
  }

  private pick(label: string, value: string, options: Record<string, string>, off: boolean, set: (v: string) => void): TemplateResult {
    return html`<label class="pick"
      ><span>${label}</span>
      <select ?disabled=${off} @change=${(e: Event) => set((e.target as HTMLSelectElement).value)}>
        ${Object.entries(options).map(([v, text]) => html`<option value=${v} .selected=${live(v === value)}>${text}</option>`)}
      </select></label
    >`;
  }
}

customElements.define("sy-masthead", Masthead);

class Skip extends StoreElement {
  protected override render(): TemplateResult {
    return html`<a class="skip" href="#balance">${t("page.skip")}</a>`;
  }
}

customElements.define("sy-skip", Skip);
