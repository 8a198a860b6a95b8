// A bike to begin with: a frame of some sort and size, and the sets on it. The core
// says what goes together and what it comes to; here it is chosen and taken.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { arrival } from "../../app/arrival.ts";
import { openers, take } from "../../app/files.ts";
import { store } from "../../app/state.ts";
import { core, CoreError } from "../../core/core.ts";
import { hasClosed, closeDialog, showDialog, StoreElement } from "../../elements/element.ts";
import { visit } from "../../elements/way.ts";
import { svgElement } from "../../io/svg.ts";
import type { NewBike, NewBikeArea, NewBikeChoice, NewBikeOption } from "../../model/types.ts";
import { decimal, figureScale, plain, write } from "../../model/units.ts";
import { t, word, type Key } from "../../text/index.ts";

const told = ["wheelbase", "trail", "head_angle"];

class NewBikeDialog extends StoreElement {
  private shown = false;
  private choice: NewBikeChoice = {};
  private bike: NewBike | null = null;
  private picture = "";
  private why = "";
  private was: Element | null = null;

  constructor() {
    super();
    openers.bike = () => void this.open();
  }

  private async open(): Promise<void> {
    this.was = document.activeElement;
    await arrival.of(t("do.new"));
    this.choice = {};
    this.shown = true;
    this.make();
    showDialog(this);
  }

  private make(): void {
    this.why = "";
    try {
      this.bike = core.newBike(this.choice);
      this.picture = core.svg(JSON.stringify(this.bike.document), {
        build: this.bike.document.builds[0]!.id,
        ghost: "",
        side: "side",
        selected: "",
        dimensions: false,
        labels: false,
        key: false,
        dark: document.documentElement.dataset.theme === "dark",
        units: { mass: "kg", length: "mm" },
        width: 560,
        height: 330,
      });
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.bike = null;
      this.why = e.message;
    }
    this.requestUpdate();
  }

  private choose(change: NewBikeChoice): void {
    this.choice = { ...this.choice, ...change };
    this.make();
  }

  private close(): void {
    if (!this.shown) return;
    this.shown = false;
    closeDialog(this, this.was);
  }

  private take(): void {
    if (!this.bike) return;
    const { document: doc, parts } = this.bike;
    this.close();
    take(doc, t("do.new"));
    store.tell(t("newbike.made", { n: parts }), { label: t("undo"), run: () => store.undo() });
    visit("balance");
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.shown) return nothing;
    const { bike } = this;
    return html`<dialog class="newbike" aria-labelledby="newbike-title" @close=${(e: Event) => this.shown && hasClosed(e) && this.close()}>
      <h2 id="newbike-title">${t("newbike.title")}</h2>
      ${this.why ? html`<p class="why wrong" role="alert">${this.why}</p>` : nothing}
      ${
        bike
          ? html`<div class="sides">
            <div class="asked">
              ${this.options("frame", bike.frames, bike.frame)} ${this.options("size", bike.sizes, bike.size)} ${this.wheels(bike)}
              <fieldset class="fitted">
                <legend>${t("newbike.sets")}</legend>
                ${bike.areas.map((a) => this.area(a))}
              </fieldset>
            </div>
            ${this.outcome(bike)}
          </div>`
          : nothing
      }
      <div class="end">
        <p class="sum" role="status">${bike ? this.sum(bike) : nothing}</p>
        <div class="acts">
          <button type="button" class="go" ?disabled=${!bike} @click=${() => this.take()}>${t("newbike.make")}</button>
          <button type="button" @click=${() => this.close()}>${t("cancel")}</button>
        </div>
      </div>
    </dialog>`;
  }

  private options(
    what: "frame" | "size" | "wheel",
    list: NewBikeOption[],
    chosen: string,
    choose = (id: string) => this.choose({ [what]: id }),
  ): TemplateResult {
    return html`<fieldset class="among ${what}">
      <legend>${t(`newbike.${what}`)}</legend>
      ${list.map(
        (o) => html`<label class="tick ${o.id === chosen ? "chosen" : ""}">
          <input type="radio" name="newbike-${what}" value=${o.id} .checked=${live(o.id === chosen)} @change=${() => choose(o.id)} />
          <span>${o.name} <small>${o.text}</small></span>
        </label>`,
      )}
    </fieldset>`;
  }

  private wheels(bike: NewBike): TemplateResult {
    const list = bike.wheels.map((mm) => ({ id: String(mm), name: `${mm} ${t("unit.mm")}`, text: t(`newbike.wheel.${mm}` as Key) }));
    return this.options("wheel", list, String(bike.wheel), (mm) => this.choose({ wheel: Number(mm) }));
  }

  private area(a: NewBikeArea): TemplateResult {
    return html`<label class="stacked"
      >${word("area", a.area)}
      <select @change=${(e: Event) => this.choose({ sets: { ...this.choice.sets, [a.area]: (e.target as HTMLSelectElement).value } })}>
        ${a.optional ? html`<option value="" .selected=${live(a.chosen === "")}>${t("newbike.none")}</option>` : nothing}
        ${a.sets.map((s) => html`<option value=${s.id} .selected=${live(s.id === a.chosen)}>${s.name}</option>`)}
      </select></label
    >`;
  }

  private outcome(bike: NewBike): TemplateResult {
    return html`<div class="outcome">
      <div class="drawn" aria-hidden="true">${svgElement(this.picture) ?? nothing}</div>
      <p class="fine">${t("newbike.ours")}</p>
      ${
        bike.remarks.length
          ? html`<ul class="remarks">
            ${bike.remarks.map((r) => html`<li>${r}</li>`)}
          </ul>`
          : nothing
      }
    </div>`;
  }

  private sum(bike: NewBike): TemplateResult {
    const { show } = bike.document;
    const { frame } = bike.document.builds[0]!;
    const scale = figureScale("mm", show);
    const lengths = bike.geometry.filter((g) => told.includes(g.key)).sort((a, b) => told.indexOf(a.key) - told.indexOf(b.key));
    const figures = [
      `${t("newbike.stack")} ${decimal(frame.stack_mm / scale.per, scale.decimals)} ${scale.unit}`,
      `${t("newbike.reach")} ${decimal(frame.reach_mm / scale.per, scale.decimals)} ${scale.unit}`,
      ...lengths.map((g) => {
        const s = figureScale(g.unit, show);
        return `${word("geometry", g.key)} ${decimal(g.value / s.per, s.decimals)} ${s.unit}`;
      }),
    ];
    return html`<strong>${plain(write(bike.total.value, bike.total.plus, figureScale("g", show)))}</strong>, ${t("newbike.parts", { n: bike.parts })}<br /><span
        class="fine"
        >${figures.join(", ")}</span
      >`;
  }
}

customElements.define("sy-newbike", NewBikeDialog);
