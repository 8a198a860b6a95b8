// A photograph of the reader's own bike behind the drawing: choosing it, marking it,
// and the figures of the frame that the core reads off it, to be taken or not.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { arrival } from "../../app/arrival.ts";
import { editBuild, setPath } from "../../app/edit.ts";
import { because, chooseFile, openers, savePhotographs } from "../../app/files.ts";
import { photographs, type Kept } from "../../app/photographs.ts";
import { store } from "../../app/state.ts";
import { core, CoreError } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";
import { hasClosed, closeDialog, showDialog, StoreElement } from "../../elements/element.ts";
import { lengthInput, numberInput } from "../../elements/field.ts";
import { History } from "../../model/history.ts";
import {
  markedValues,
  type Build,
  type Marked,
  type Photograph,
  type PhotographFigure,
  type PhotographMark,
  type PhotographReading,
} from "../../model/types.ts";
import { decimal, figureScale, plain, rough, write } from "../../model/units.ts";
import { count, t, type Key } from "../../text/index.ts";
import "./marker.ts";
import type { Marker } from "./marker.ts";

const sorts = "image/jpeg,image/png,image/webp";

class PhotographDialog extends StoreElement {
  private shown = false;
  private busy = "";
  private why = "";
  private chosen: Marked = "rear_axle";
  private readonly ticked = new Map<string, boolean>(); // against what is proposed
  private was: Element | null = null;
  // What was done to the marks while the dialog is open: its own steps, since marks are
  // in no document.
  private readonly history = new History<readonly PhotographMark[]>([]);
  private of = ""; // the photograph whose steps these are
  private said = ""; // what was taken back, for who does not see it
  private pressed = 0; // ms, when the pointer went down: all until it is up is one step

  private readonly read = new Answer<PhotographReading>(
    (text, of) => {
      const [build, photograph] = JSON.parse(of) as [string, string];
      return core.photograph(text, build, photograph);
    },
    () => JSON.stringify([store.activeID, JSON.stringify(photographs.of(store.build)?.of ?? null)]),
  );

  constructor() {
    super();
    openers.photograph = (file) => void this.open(file);
  }

  private async open(file?: File): Promise<void> {
    if (file) await arrival.of(file.name);
    if (!store.doc || core.state !== "ready") return;
    if (!this.shown) {
      this.was = document.activeElement;
      this.shown = true;
      this.why = "";
      this.ticked.clear();
      this.of = this.said = "";
      const set = new Set(photographs.of(store.build)?.of.marks.map((m) => m.of));
      this.chosen = markedValues.find((m) => !set.has(m)) ?? markedValues[0];
      document.addEventListener("keydown", this.key);
      showDialog(this);
    }
    if (file) await this.take(file);
  }

  private close(): void {
    if (!this.shown) return;
    this.shown = false;
    document.removeEventListener("keydown", this.key);
    closeDialog(this, this.was);
  }

  private async take(file: File): Promise<void> {
    const build = store.activeID;
    this.busy = file.name;
    this.why = "";
    this.requestUpdate();
    try {
      await photographs.take(file, build);
      this.chosen = markedValues[0];
      this.ticked.clear();
      void this.updateComplete.then(() => this.querySelector<HTMLElement>(".marking")?.focus());
    } catch (e) {
      if (!(e instanceof CoreError || e instanceof RangeError)) throw e;
      this.why = t("file.unreadable", { name: file.name, why: because(e) });
    } finally {
      this.busy = "";
      this.requestUpdate();
    }
  }

  private readonly choose = () => chooseFile(sorts, (file) => this.take(file));

  private change(kept: Kept, change: (p: Photograph) => Photograph): void {
    photographs.change(kept.of.id, change);
    this.requestUpdate();
  }

  private set(kept: Kept, of: Marked, at: { x: number; y: number } | null): void {
    const { marks } = kept.of;
    if (!at && !marks.some((m) => m.of === of)) return;
    const next = [...marks.filter((m) => m.of !== of), ...(at ? [{ of, ...at }] : [])];
    // Steps of the arrow keys are one, to take a mark away is one of its own.
    if (!at) this.history.seal();
    this.history.push(next, of, of, this.pressed || Date.now());
    this.change(kept, (p) => ({ ...p, marks: next }));
    if (!at) this.stay();
  }

  private pick(of: Marked): void {
    this.history.seal();
    this.chosen = of;
    this.requestUpdate();
  }

  // stay keeps the focus in the dialog when the button that had it can do no more.
  private stay(): void {
    void this.updateComplete.then(() => {
      const at = document.activeElement;
      if (!at || at === document.body || at.matches(":disabled")) this.querySelector<HTMLElement>(".marking")?.focus({ preventScroll: true });
    });
  }

  // hold begins a step with the pointer, or ends it.
  private hold(at: number): void {
    this.history.seal();
    this.pressed = at;
  }

  // turn takes the last change of a mark back, or makes it again, and shows which.
  private turn(way: "undo" | "redo"): void {
    const kept = photographs.of(store.build);
    if (!kept || this.pressed) return;
    const of = this.history[way]() as Marked | null;
    if (!of) return;
    this.chosen = of;
    this.said = `${t(`photo.mark.${of}`)}: ${this.place(this.history.value.find((m) => m.of === of))}`;
    this.change(kept, (p) => ({ ...p, marks: [...this.history.value] }));
    this.stay();
  }

  // Wherever the focus is: pressing beside all buttons leaves it nowhere.
  private readonly key = (e: KeyboardEvent): void => {
    if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
    // Where something is typed, the browser takes letters back.
    if ((e.target as Element).matches("input:not([type=radio], [type=checkbox])")) return;
    const key = e.key.toLowerCase();
    if (key !== "z" && key !== "y") return;
    e.preventDefault();
    this.turn(key === "y" || e.shiftKey ? "redo" : "undo");
  };

  private isTicked(f: PhotographFigure): boolean {
    return f.taken && (this.ticked.get(f.key) ?? f.differs);
  }

  // enter takes what is ticked into the build, as one step.
  private enter(build: Build, list: readonly PhotographFigure[]): void {
    store.seal();
    store.edit(t("do.photo.figures"), (d) => editBuild(d, build.id, (b) => list.reduce((c, f) => setPath(c, f.key, f.value), b)));
    this.ticked.clear();
    store.tell(count(list.length, "photo.taken.one", "photo.taken.many"), { label: t("undo"), run: () => store.undo() });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { build } = store;
    if (!this.shown || !build) return nothing;
    const kept = photographs.of(build);
    if (kept && kept.of.id !== this.of) {
      this.of = kept.of.id;
      this.history.reset(kept.of.marks);
    }
    return html`<dialog
      class="photograph"
      aria-labelledby="photo-title"
      @close=${(e: Event) => this.shown && hasClosed(e) && this.close()}>
      <h2 id="photo-title">${t("photo.title", { build: build.name })}</h2>
      ${this.busy ? html`<p role="status">${t("photo.busy", { name: this.busy })}</p>` : nothing}
      ${this.why ? html`<p class="why wrong" role="alert">${this.why}</p>` : nothing}
      ${photographs.unkept ? html`<p class="why wrong" role="alert">${t("photo.unkept")}</p>` : nothing}
      ${kept ? this.marking(build, kept) : this.begin(build, kept)}
    </dialog>`;
  }

  private begin(build: Build, kept: null | undefined): TemplateResult {
    return html`${build.photograph && kept === null ? html`<p>${t("photo.elsewhere")}</p>` : nothing}
      <p>${t("photo.lead")}</p>
      <p class="quiet">${t("photo.how")}</p>
      <p class="quiet">${t("photo.private")}</p>
      <div class="acts">
        <button type="button" class="go" ?disabled=${this.busy !== ""} @click=${this.choose}>${t("photo.choose")}</button>
        <button type="button" @click=${() => this.close()}>${t("photo.close")}</button>
      </div>`;
  }

  private marking(build: Build, kept: Kept): TemplateResult {
    return html`<div class="sides">
        <div class="sheet">
          <sy-marker
            .kept=${kept}
            .chosen=${this.chosen}
            .onset=${(of: Marked, at: { x: number; y: number } | null) => this.set(kept, of, at)}
            .onchoose=${(of: Marked) => this.pick(of)}
            @pointerdown=${{ handleEvent: () => this.hold(Date.now()), capture: true }}
            @pointerup=${() => this.hold(0)}
            @pointercancel=${() => this.hold(0)}
          ></sy-marker>
          <div class="below">
            <p class="where"><strong>${t(`photo.mark.${this.chosen}`)}.</strong> ${t(`photo.where.${this.chosen}`)}</p>
            ${this.steps(kept)}
          </div>
          <p class="unseen" role="status">${this.said}</p>
          <p class="unseen" id="photo-keys">${t("photo.keys")}</p>
        </div>
        <div class="given">${this.marks(kept)} ${this.scale(kept)}</div>
      </div>
      ${this.figures(build)}
      <div class="acts last">
        <button type="button" @click=${() => this.close()}>${t("photo.close")}</button>
        <span class="set">
          <button type="button" class="plain" ?disabled=${this.busy !== ""} @click=${this.choose}>${t("photo.another")}</button>
          <button type="button" class="plain" @click=${() => void savePhotographs()}>
            ${t("photo.save", { mb: decimal((kept.bytes.length * 4) / 3e6, 1) })}
          </button>
          <button type="button" class="plain" @click=${() => this.takeAway(build)}>${t("photo.remove")}</button>
        </span>
      </div>
      <p class="fine">${t("photo.private")}</p>`;
  }

  private takeAway(build: Build): void {
    photographs.remove(build);
    store.tell(t("photo.removed"), { label: t("undo"), run: () => store.undo() });
  }

  private steps(kept: Kept): TemplateResult {
    const marker = () => this.querySelector<Marker>("sy-marker");
    const step = (label: string, sign: string, x: number, y: number) =>
      html`<button type="button" class="toggle" aria-label=${label} title=${label} @click=${() => marker()?.nudge(x, y)}>${sign}</button>`;
    const unset = !kept.of.marks.some((m) => m.of === this.chosen);
    return html`<div class="tools">
      <div class="set" role="group" aria-label=${t("photo.nudge")}>
        ${step(t("photo.left"), "←", -1, 0)}${step(t("photo.right"), "→", 1, 0)}${step(t("photo.up"), "↑", 0, -1)}${step(t("photo.down"), "↓", 0, 1)}
      </div>
      <div class="set">
        <button type="button" class="plain" ?disabled=${this.history.undoable === null} @click=${() => this.turn("undo")}>${t("undo")}</button>
        <button type="button" class="plain" ?disabled=${this.history.redoable === null} @click=${() => this.turn("redo")}>${t("photo.redo")}</button>
      </div>
      <button type="button" class="plain" ?disabled=${unset} @click=${() => this.set(kept, this.chosen, null)}>${t("photo.unset")}</button>
    </div>`;
  }

  private place(m: PhotographMark | undefined): string {
    return m ? t("photo.at", { x: decimal(m.x, 0), y: decimal(m.y, 0) }) : t("photo.open");
  }

  private marks(kept: Kept): TemplateResult {
    const set = new Map(kept.of.marks.map((m) => [m.of, m]));
    return html`<fieldset class="marks">
      <legend>${t("photo.marks")}</legend>
      ${markedValues.map((of, i) => {
        const m = set.get(of);
        return html`<label class="tick ${of === this.chosen ? "chosen" : ""}">
          <input type="radio" name="photo-mark" .checked=${live(of === this.chosen)} @change=${() => this.pick(of)} />
          <span>${i + 1} ${t(`photo.mark.${of}`)}</span>
          <span class="state">${m ? html`<span aria-hidden="true">✓</span><span class="unseen">${this.place(m)}</span>` : this.place(m)}</span>
        </label>`;
      })}
    </fieldset>`;
  }

  private scale(kept: Kept): TemplateResult {
    const p = kept.of;
    const key = (name: string) => `photograph/${p.id}/${name}`;
    return html`<fieldset class="specs scale">
      <legend>${t("photo.scale")}</legend>
      <label class="field">
        <span>${t("photo.by")}</span>
        <select @change=${(e: Event) => this.change(kept, (q) => ({ ...q, scale: (e.target as HTMLSelectElement).value === "wheel" ? "wheel" : "wheelbase" }))}>
          ${(["wheelbase", "wheel"] as const).map((s) => html`<option value=${s} .selected=${live(p.scale === s)}>${t(`photo.by.${s}`)}</option>`)}
        </select>
      </label>
      ${lengthInput({ key: key("wheelbase"), label: t("photo.wheelbase"), value: p.wheelbase_mm, open: true, set: (v) => this.change(kept, (q) => ({ ...q, wheelbase_mm: v })) })}
      ${numberInput({ key: key("distance"), label: t("photo.distance"), value: p.distance_m, unit: "m", step: 0.5, set: (v) => this.change(kept, (q) => ({ ...q, distance_m: v })) })}
      ${lengthInput({ key: key("within"), label: t("photo.within"), value: p.within_mm, set: (v) => this.change(kept, (q) => ({ ...q, within_mm: v })) })}
    </fieldset>`;
  }

  private figures(build: Build): TemplateResult {
    const { value: r, why } = this.read.now();
    const mm = (v: number) =>
      plain({
        whole: decimal(v / figureScale("mm", store.doc!.show).per, figureScale("mm", store.doc!.show).decimals),
        rest: "",
        plus: "",
        unit: figureScale("mm", store.doc!.show).unit,
      });
    if (!r) return html`<p class="quiet" role="status">${why}</p>`;
    const list = r.figures.filter((f) => this.isTicked(f));
    const some = r.figures.length > 0;
    return html`<section class="read" aria-labelledby="photo-figures">
      <h3 id="photo-figures">${t("photo.figures")}</h3>
      <div class="sides">
        <div>${some ? this.table(r.figures) : html`<p>${t("photo.more")}</p>`}</div>
        <div>
          <p>${t(`photo.scaled.${r.scaled}`, { wheelbase: mm(r.wheelbase_mm) })}</p>
          ${
            r.check
              ? html`<p class=${r.check.agrees ? "" : "wrong"}>
                  ${t(r.check.agrees ? "photo.check.agrees" : "photo.check.differs", { excess: decimal(Math.abs(r.check.excess_percent), 1), plus: decimal(r.check.plus, 1) })}
                </p>`
              : nothing
          }
          ${
            some
              ? html`<p class="fine">${t("photo.stands")}</p>
                  <button type="button" class="go" ?disabled=${!list.length} @click=${() => this.enter(build, list)}>
                    ${list.length ? count(list.length, "photo.take.one", "photo.take.many") : t("photo.take.none")}
                  </button>`
              : nothing
          }
        </div>
      </div>
    </section>`;
  }

  private table(figures: readonly PhotographFigure[]): TemplateResult {
    const show = store.doc!.show;
    return html`<table class="lines">
      <thead>
        <tr>
          <th scope="col">${t("table.figure")}</th>
          <th scope="col" class="right">${t("photo.read")}</th>
          <th scope="col" class="right">${t("photo.now")}</th>
        </tr>
      </thead>
      <tbody>
        ${figures.map((f) => {
          const s = figureScale(f.unit, show);
          const name = t(`photo.f.${f.key}` as Key);
          const ticked = this.isTicked(f);
          return html`<tr class=${f.differs ? "differs" : ""}>
            <th scope="row">
              ${
                f.taken
                  ? html`<label class="taking"
                      ><input
                        type="checkbox"
                        .checked=${live(ticked)}
                        @change=${(e: Event) => {
                          this.ticked.set(f.key, (e.target as HTMLInputElement).checked);
                          this.requestUpdate();
                        }}
                      />
                      ${name}</label
                    >`
                  : html`<span class="taking untaken">${name}</span>`
              }
            </th>
            <td class="right">${plain(write(f.value, f.plus, s))}</td>
            <td class="right">${plain(rough(f.now, s))}${f.differs ? nothing : html`<span class="unseen">, ${t("photo.same")}</span>`}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }
}

customElements.define("sy-photograph", PhotographDialog);
