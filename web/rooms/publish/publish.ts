// Publishing: the picture as SVG or PNG with what it is to show, tables as CSV
// or Markdown, and the printed report. The preview is the file.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core } from "../../core/core.ts";
import { csvFormat, ending, keepFormat, today, type, whole, type Format, type Whole } from "../../app/exports.ts";
import { because, copyText, download, fileName, openers } from "../../app/files.ts";
import { drawPNG, drawSVG } from "../../io/picturefile.ts";
import { store } from "../../app/state.ts";
import { readPreference, writePreference } from "../../io/storage.ts";
import { brief, t, word, type Key } from "../../text/index.ts";
import { figureKeyValues, type FigureKey, type View } from "../../model/types.ts";
import { readNumber } from "../../model/units.ts";
import { hasClosed, StoreElement, showDialog } from "../../elements/element.ts";

type Letters = "large" | "medium" | "small";

interface Choice {
  side: "side" | "rear";
  dark: boolean;
  letters: Letters;
  labels: boolean;
  dimensions: boolean;
  steering: boolean;
  key: boolean;
  ghost: boolean;
  figures: boolean;
  sources: boolean;
  dated: boolean;
  width: number; // px
  format: Format;
  row: boolean; // builds in a row in place of one
  pick: FigureKey[]; // figures below the picture; none are the core's choice
}

const kept = "publish";
const widths = [640, 1200, 2000, 3200];
const inRow = 4; // builds, at most
const usualPick: readonly FigureKey[] = ["total", "unsprung_rear", "centre_x", "centre_y", "centre_z", "rear_load", "front_load"];
const least = 240;
const most = 8000;

// A picture is laid out this wide, px, so that its letters come out as large as
// wanted whatever width it is shown at.
const laid: Record<Letters, number> = { large: 560, medium: 800, small: 1120 };
const tall = { side: 0.62, rear: 0.8 }; // height of the picture to its width

const switches = ["labels", "dimensions", "steering", "key", "ghost", "figures", "sources", "dated", "dark"] as const;

function readChoice(): Choice {
  const { look } = store;
  const c: Choice = {
    side: look.side,
    dark: false,
    letters: "medium",
    labels: look.labels,
    dimensions: look.dimensions,
    steering: look.steering,
    key: look.key,
    ghost: look.ghost,
    figures: true,
    sources: true,
    dated: true,
    width: 1200,
    format: csvFormat(),
    row: false,
    pick: [...usualPick],
  };
  try {
    const k = JSON.parse(readPreference(kept) || "{}") as Partial<Choice>;
    for (const s of switches) if (typeof k[s] === "boolean") c[s] = k[s];
    if (k.letters && k.letters in laid) c.letters = k.letters;
    if (k.width && fits(k.width)) c.width = k.width;
    if (k.format === "markdown") c.format = k.format;
    if (Array.isArray(k.pick)) c.pick = figureKeyValues.filter((f) => k.pick?.includes(f));
  } catch {
    // A preference that cannot be read is none.
  }
  return c;
}

const fits = (n: number): boolean => Number.isInteger(n) && n >= least && n <= most;

class Publish extends StoreElement {
  private shown = false;
  private choice = readChoice();
  private rowed: string[] = []; // the builds that are drawn in a row
  private headline: string | null = null; // null is the document's title
  private typed = ""; // the width, as it is being typed
  private svg = ""; // what is shown and will be saved
  private address = "";
  private size = { width: 0, height: 0 };
  private why = "";
  private asked = ""; // what the picture in hand was asked for
  private turn = 0;
  private was: Element | null = null;

  constructor() {
    super();
    openers.publish = () => this.open();
  }

  private open(): void {
    if (!store.doc || core.state !== "ready") return;
    this.was = document.activeElement;
    this.choice = { ...readChoice(), side: store.look.side };
    this.headline = null;
    this.rowed = this.firstInRow();
    this.typed = String(this.choice.width);
    this.shown = true;
    showDialog(this);
  }

  private close(): void {
    if (!this.shown) return;
    this.querySelector("dialog")?.close();
    this.shown = false;
    this.asked = this.svg = "";
    URL.revokeObjectURL(this.address);
    this.address = "";
    this.requestUpdate();
    if (this.was instanceof HTMLElement) this.was.focus();
  }

  private set(change: Partial<Choice>): void {
    this.choice = { ...this.choice, ...change };
    writePreference(kept, JSON.stringify(this.choice));
    this.requestUpdate();
  }

  // firstInRow are the builds that a row begins with: those compared, then others.
  private firstInRow(): string[] {
    const all = store.doc!.builds.map((b) => b.id);
    const { A, B } = store.ids;
    const first = [...new Set([A, B, ...all])].filter((id) => all.includes(id)).slice(0, inRow - 1);
    return all.filter((id) => first.includes(id));
  }

  private view(): View {
    const c = this.choice;
    const doc = store.doc!;
    const B = store.ids.B !== "";
    const row = c.row ? store.doc!.builds.map((b) => b.id).filter((id) => this.rowed.includes(id)) : [];
    const panels = Math.max(row.length, 1);
    const wide = laid[c.letters] * (panels > 1 ? 0.5 + panels / 4 : 1);
    const { letter } = store;
    return {
      build: store.activeID,
      ghost: c.ghost ? store.otherID : "",
      at: letter === "B" ? "b" : "a",
      ...(c.ghost && B ? { ghost_at: letter === "B" ? ("a" as const) : ("b" as const) } : {}),
      side: c.side,
      dark: c.dark,
      selected: "",
      dimensions: c.dimensions,
      steering: c.steering,
      labels: c.labels,
      key: c.key,
      units: { mass: doc.show.mass, length: doc.show.length },
      width: wide,
      height: Math.round((wide / panels) * (panels > 1 ? tall[c.side] + 0.12 : tall[c.side])),
      ...(row.length ? { row } : {}),
      caption: {
        title: this.headline ?? doc.title,
        date: c.dated ? today() : "",
        figures: c.figures && c.pick.length > 0,
        pick: c.pick,
        sources: c.sources,
        on: today(),
      },
      pixels: c.width,
    };
  }

  // Every change draws the picture anew; only the last one asked for counts.
  protected override updated(): void {
    if (!this.shown || core.state !== "ready" || !store.doc) return;
    const doc = store.text;
    const view = this.view();
    const asked = JSON.stringify(view) + document.documentElement.lang + doc;
    if (asked === this.asked) return;
    this.asked = asked;
    const turn = ++this.turn;
    drawSVG(doc, view)
      .then((svg) => {
        if (turn !== this.turn || !this.shown) return;
        this.svg = svg;
        this.why = "";
        const drawn = /<svg[^>]* width="([\d.]+)" height="([\d.]+)"/.exec(svg);
        this.size = { width: Math.round(Number(drawn?.[1])), height: Math.round(Number(drawn?.[2])) };
        URL.revokeObjectURL(this.address);
        this.address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
        this.requestUpdate();
      })
      .catch((e: unknown) => {
        if (turn !== this.turn) return;
        this.svg = "";
        this.why = because(e);
        this.requestUpdate();
      });
  }

  // name is what the file is called: the document and the build.
  private name(end: string): string {
    const title = this.headline ?? store.doc?.title ?? "";
    const build = this.choice.row ? t("publish.file.row") : (store.build?.name ?? "");
    const parts = [title || t("file.untitled"), build, ...(this.choice.side === "rear" ? [t("publish.rear")] : [])];
    return fileName(parts.map(brief).filter(Boolean).join(", "), end);
  }

  private async png(): Promise<Blob | null> {
    const { width } = this.choice;
    const png = await drawPNG(this.svg, width);
    if (!png) store.tell(t("publish.png.toolarge", { width }), undefined, "error");
    return png;
  }

  private async savePNG(): Promise<void> {
    const png = await this.png();
    if (!png) return;
    const name = this.name(".png");
    download(name, png, "image/png");
    store.tell(t("file.saved", { name }));
  }

  private async copyPNG(): Promise<void> {
    try {
      const png = await this.png();
      if (!png) return;
      await navigator.clipboard.write([new ClipboardItem({ "image/png": png })]);
      store.tell(t("publish.png.copied"));
    } catch (e) {
      store.tell(t("publish.copy.failed", { why: because(e) }), undefined, "error");
    }
  }

  private saveSVG(): void {
    const name = this.name(".svg");
    download(name, this.svg, "image/svg+xml;charset=utf-8");
    store.tell(t("file.saved", { name }));
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.shown) return nothing;
    return html`<dialog class="publish" aria-labelledby="publish-title" @close=${(e: Event) => hasClosed(e) && this.close()}>
      <h2 id="publish-title" tabindex="-1" autofocus>${t("publish.title")}</h2>
      <div class="sheets">
        <div class="proof">${this.proof()}</div>
        <div class="choices">${this.choices()}</div>
      </div>
      ${this.tables()} ${this.paper()}
      <div class="acts end"><button type="button" @click=${() => this.close()}>${t("close")}</button></div>
    </dialog>`;
  }

  private proof(): TemplateResult {
    const ready = this.svg !== "" && !this.why && !this.wrong();
    const kB = Math.ceil(new Blob([this.svg]).size / 1000);
    const canCopy = "ClipboardItem" in window && !!navigator.clipboard?.write;
    const act = (key: Key, run: () => void, go = false) =>
      html`<button type="button" class=${go ? "go" : ""} ?disabled=${!ready} @click=${run}>${t(key)}</button>`;
    return html`<h3>${t("publish.picture")}</h3>
      <figure>
        ${
          this.address && !this.why
            ? html`<img src=${this.address} alt=${t("publish.preview.alt", { build: store.build?.name ?? "" })} />`
            : html`<p class=${this.why ? "why wrong" : "quiet"} role="status">${this.why ? t("publish.failed", { why: this.why }) : t("publish.drawing")}</p>`
        }
        <figcaption class="fine">${t("publish.preview")}${this.svg ? html`. ${t("publish.size", { ...this.size, size: kB })}.` : nothing}</figcaption>
      </figure>
      <div class="acts">
        ${act("publish.png.save", () => void this.savePNG(), true)} ${act("publish.svg.save", () => this.saveSVG(), true)}
        ${canCopy ? act("publish.png.copy", () => void this.copyPNG()) : nothing}
        ${act("publish.svg.copy", () => void copyText(this.svg, t("publish.svg.copied")))}
      </div>`;
  }

  // wrong says what is wrong with the width that is typed.
  private wrong(): string {
    return fits(readNumber(this.typed)) ? "" : t("publish.width.bad", { least, most });
  }

  private one<T extends string>(legend: Key, name: string, value: T, of: Record<T, Key>, set: (v: T) => void): TemplateResult {
    return html`<fieldset class="either">
      <legend>${t(legend)}</legend>
      ${(Object.entries(of) as [T, Key][]).map(
        ([v, key]) =>
          html`<label><input type="radio" name="publish-${name}" value=${v} .checked=${live(v === value)} @change=${() => set(v)} /><span>${t(key)}</span></label>`,
      )}
    </fieldset>`;
  }

  private check(of: (typeof switches)[number], label: Key, off = false): TemplateResult {
    return html`<label class="check"
      ><input
        type="checkbox"
        name="publish-${of}"
        .checked=${live(this.choice[of] && !off)}
        ?disabled=${off}
        @change=${(e: Event) => this.set({ [of]: (e.target as HTMLInputElement).checked })}
      />${t(label)}</label
    >`;
  }

  private choices(): TemplateResult {
    const c = this.choice;
    const B = store.ids.B !== "";
    const wrong = this.wrong();
    return html`${store.doc!.builds.length > 1 ? this.rows() : nothing}${this.one("publish.seen", "seen", c.side, { side: "publish.side", rear: "publish.rear" }, (side) => this.set({ side }))}
      ${this.one("publish.paper", "paper", c.dark ? "dark" : "light", { light: "publish.light", dark: "publish.dark" }, (v) => this.set({ dark: v === "dark" }))}
      <label class="stacked"
        >${t("publish.letters")}
        <select @change=${(e: Event) => this.set({ letters: (e.target as HTMLSelectElement).value as Letters })}>
          ${(["large", "medium", "small"] as const).map((l) => html`<option value=${l} .selected=${live(l === c.letters)}>${t(`publish.letters.${l}`)}</option>`)}
        </select></label
      >
      <div class="width">
        <label class="stacked"
          >${t("publish.width")}
          <input
            id="publish-width"
            type="text"
            inputmode="numeric"
            autocomplete="off"
            aria-invalid=${wrong ? "true" : "false"}
            aria-describedby=${wrong ? "publish-width-why" : nothing}
            .value=${live(this.typed)}
            @input=${(e: Event) => this.widen((e.target as HTMLInputElement).value)}
        /></label>
        <div class="set" role="group" aria-label=${t("publish.width.usual")}>
          ${widths.map(
            (n) =>
              html`<button type="button" class="toggle" aria-label=${t("publish.width.set", { n })} aria-pressed=${!wrong && n === c.width} @click=${() => this.widen(String(n))}>
                ${n}
              </button>`,
          )}
        </div>
        ${wrong ? html`<p class="why wrong" id="publish-width-why" role="alert">${wrong}</p>` : nothing}
      </div>
      <fieldset>
        <legend>${t("publish.shows")}</legend>
        ${this.check("labels", "publish.labels")} ${this.check("dimensions", "publish.dimensions")} ${this.check("steering", "publish.steering")} ${this.check("key", "publish.key")}
        ${this.check("ghost", "publish.ghost", !B || c.row)}
      </fieldset>
      <fieldset>
        <legend>${t("publish.below")}</legend>
        <label class="stacked"
          >${t("publish.headline")}
          <input
            type="text"
            autocomplete="off"
            .value=${live(this.headline ?? store.doc?.title ?? "")}
            @input=${(e: Event) => {
              this.headline = (e.target as HTMLInputElement).value;
              this.requestUpdate();
            }}
        /></label>
        ${this.check("dated", "publish.dated")} ${this.check("figures", B ? "publish.figures" : "publish.figures.alone")} ${this.check("sources", "publish.sources")}
        <details class="picks">
          <summary>${t("publish.pick")}</summary>
          ${figureKeyValues.map(
            (f) =>
              html`<label class="check"
                ><input
                  type="checkbox"
                  name="publish-pick-${f}"
                  .checked=${live(c.pick.includes(f))}
                  ?disabled=${!c.figures}
                  @change=${() => this.set({ pick: figureKeyValues.filter((k) => (k === f ? !c.pick.includes(f) : c.pick.includes(k))) })}
                />${word("figure", f)}</label
              >`,
          )}
        </details>
      </fieldset>`;
  }

  // rows chooses between one build and several in a row, and which.
  private rows(): TemplateResult {
    const c = this.choice;
    const chosen = this.rowed;
    return html`${this.one("publish.drawn", "drawn", c.row ? "row" : "one", { one: "publish.drawn.one", row: "publish.drawn.row" }, (v) => this.set({ row: v === "row" }))}
    ${
      c.row
        ? html`<fieldset>
            <legend>${t("publish.row", { n: inRow })}</legend>
            ${store.doc!.builds.map((b) => {
              const on = chosen.includes(b.id);
              return html`<label class="check"
                ><input
                  type="checkbox"
                  name="publish-row-${b.id}"
                  .checked=${live(on)}
                  ?disabled=${on ? chosen.length <= 2 : chosen.length >= inRow}
                  @change=${() => {
                    this.rowed = on ? chosen.filter((id) => id !== b.id) : [...chosen, b.id];
                    this.requestUpdate();
                  }}
                />${brief(b.name || b.id)}</label
              >`;
            })}
          </fieldset>`
        : nothing
    }`;
  }

  private widen(text: string): void {
    this.typed = text;
    const width = readNumber(text);
    if (fits(width)) this.set({ width });
    else this.requestUpdate();
  }

  private tables(): TemplateResult {
    const { A, B } = store.ids;
    const doc = store.doc!;
    const { format } = this.choice;
    const title = brief(doc.title || t("file.untitled"));
    const rows: { what: Whole | { parts: string }; label: string; file: string }[] = [
      { what: "figures", label: t("publish.t.figures"), file: t("publish.file.figures", { title }) },
    ];
    if (store.difference) rows.push({ what: "difference", label: t("publish.t.difference"), file: t("publish.file.difference", { title }) });
    if (doc.builds.length > 1) rows.push({ what: "builds", label: t("publish.t.builds"), file: t("publish.file.builds", { title }) });
    if ((store.side("A")?.states.length ?? 0) > 1 || (store.side("B")?.states.length ?? 0) > 1)
      rows.push({ what: "states", label: t("publish.t.states"), file: t("publish.file.states", { title }) });
    for (const id of new Set([A, B])) {
      const build = doc.builds.find((b) => b.id === id)?.name;
      if (build !== undefined) rows.push({ what: { parts: id }, label: t("publish.t.parts", { build }), file: t("publish.file.parts", { title, build }) });
    }
    return html`<section aria-labelledby="publish-tables">
      <h3 id="publish-tables">${t("publish.tables")}</h3>
      <p class="fine">${t("publish.tables.lead")}</p>
      <label class="pick"
        ><span>${t("publish.format")}</span>
        <select
          id="publish-format"
          @change=${(e: Event) => {
            const f = (e.target as HTMLSelectElement).value as Format;
            keepFormat(f);
            this.set({ format: f });
          }}
        >
          ${(["csv", "semicolon", "markdown"] as const).map((f) => html`<option value=${f} .selected=${live(f === format)}>${t(`publish.format.${f}`)}</option>`)}
        </select></label
      >
      <ul class="exports">
        ${rows.map(
          (r) =>
            html`<li>
              <span>${r.label}</span>
              <span class="acts">
                <button type="button" @click=${() => void copyText(whole(r.what, format), t("table.copied"))}>
                  <span aria-hidden="true">${t("publish.copy")}</span><span class="unseen">${t("publish.copy.name", { what: r.label })}</span>
                </button>
                <button
                  type="button"
                  @click=${() => {
                    const name = fileName(r.file, ending(format));
                    download(name, whole(r.what, format), type(format));
                    store.tell(t("file.saved", { name }));
                  }}
                >
                  <span aria-hidden="true">${t("publish.save")}</span><span class="unseen">${t("publish.save.name", { what: r.label })}</span>
                </button>
              </span>
            </li>`,
        )}
      </ul>
    </section>`;
  }

  private paper(): TemplateResult {
    return html`<section aria-labelledby="publish-report">
      <h3 id="publish-report">${t("publish.report")}</h3>
      <p class="fine">${t("publish.report.lead")}</p>
      <div class="acts"><button type="button" @click=${() => window.print()}>${t("publish.report.print")}</button></div>
    </section>`;
  }
}

customElements.define("sy-publish", Publish);
