// Weighing at a kitchen scale, made for a phone in one hand: one part after the other,
// large digits, and the buttons where the thumb is. The core says what comes next and
// what a reading says of a part; each reading is one step that can be undone.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { findBuild } from "../../app/edit.ts";
import { openers } from "../../app/files.ts";
import { editKnown, sharedIn, sharing, spread } from "../../app/sharing.ts";
import { store } from "../../app/state.ts";
import { core, CoreError } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";
import "../../elements/combo.ts";
import type { Offer } from "../../elements/combo.ts";
import { hasClosed, closeDialog, showDialog, StoreElement } from "../../elements/element.ts";
import type { Build, Doc, Part, Share, WeighPlan, WeighTaken } from "../../model/types.ts";
import { decimal, figureScale, massField, partScale, plain, rough, write } from "../../model/units.ts";
import { brief, count, t, word } from "../../text/index.ts";
import { keep, readKept } from "./kept.ts";

const offered = 8; // parts that a search shows
const address = "#scale";

// Act is what Undo takes back; after is the document that a reading made.
interface Act {
  part: string;
  typed: string;
  one: boolean;
  beside: string[]; // parts that lay on the scale with it
  after: Doc | null; // null where the part was skipped
}

// taking gives a part what a reading says of it. What it was weighed in before,
// together with others, is no longer so.
function taking(s: Share, { basis }: WeighTaken): (p: Part) => Part {
  return ({ joint: _, ...p }) => ({ ...p, mass_g: s.mass_g, half_width_g: s.half_width_g, basis, ...(s.joint && { joint: s.joint }) });
}

class Scale extends StoreElement {
  private build = ""; // empty while the dialog is closed
  private at = ""; // part id; empty when nothing is left
  private typed = "";
  private one = false; // a single piece is on the scale, of several
  private beside: string[] = []; // parts that lie on the scale with it
  private why = "";
  private told = ""; // what came of the last press
  private acts: Act[] = [];
  private kept = readKept();
  private readonly setting: { step_g: string | null; tare_g: string | null } = { step_g: null, tare_g: null }; // what is typed there and makes no sense yet
  private was: Element | null = null;

  private readonly planned = new Answer<WeighPlan>(
    (text, of) => {
      const [build, step] = JSON.parse(of) as [string, number];
      return core.weighNext(text, build, step);
    },
    () => JSON.stringify([this.build, this.kept.step]),
  );

  // fit keeps the dialog in what the keyboard of a phone leaves of the window.
  private readonly fit = () => {
    const d = this.querySelector("dialog");
    const v = window.visualViewport;
    if (!d || !v) return;
    d.style.setProperty("--seen", `${v.height}px`);
    d.style.setProperty("--from", `${v.offsetTop}px`);
  };

  constructor() {
    super();
    openers.scale = (build, part) => this.open(build, part);
  }

  private get of(): Build | undefined {
    return store.doc && this.build ? findBuild(store.doc, this.build) : undefined;
  }

  private get asked(): Part | undefined {
    return this.of?.parts.find((p) => p.id === this.at);
  }

  private get state(): { at: string; skipped: string[] } {
    this.kept.builds[this.build] ??= { at: "", skipped: [] };
    return this.kept.builds[this.build]!;
  }

  private open(build: string, part = ""): void {
    if (this.build || !store.doc || core.state !== "ready" || !findBuild(store.doc, build)?.parts.length) return;
    this.was = document.activeElement;
    this.build = build;
    this.kept = readKept();
    this.acts = [];
    this.told = "";
    const left = this.planned.now().value?.first ?? [];
    const { at } = this.state;
    this.go(part || (left.includes(at) ? at : this.next()));
    history.replaceState(history.state, "", address);
    window.visualViewport?.addEventListener("resize", this.fit);
    window.visualViewport?.addEventListener("scroll", this.fit);
    showDialog(this);
    void this.updateComplete.then(() => {
      this.fit();
      this.focusDigits();
    });
  }

  private close(): void {
    if (!this.build) return;
    window.visualViewport?.removeEventListener("resize", this.fit);
    window.visualViewport?.removeEventListener("scroll", this.fit);
    this.build = "";
    if (location.hash === address) history.replaceState(history.state, "", location.pathname + location.search);
    closeDialog(this, this.was);
  }

  private keep(): void {
    keep(this.kept, store.doc?.builds.map((b) => b.id) ?? []);
  }

  // left are the parts to weigh, without the skipped, in the order that is wanted.
  private left(): string[] {
    const plan = this.planned.now().value;
    if (!plan) return [];
    const { skipped } = this.state;
    const ids = this.kept.order === "list" ? plan.left.map((l) => l.id) : plan.first;
    return ids.filter((id) => !skipped.includes(id));
  }

  // next is the part that comes after one: the best there is, or by the list the next
  // below it and then from its top.
  private next(after = ""): string {
    const left = this.left().filter((id) => id !== after);
    if (this.kept.order === "first" || !after) return left[0] ?? "";
    const place = new Map(this.of?.parts.map((p, i) => [p.id, i]));
    const from = place.get(after) ?? -1;
    return left.find((id) => place.get(id)! > from) ?? left[0] ?? "";
  }

  private go(part: string, typed = "", one = false, beside: string[] = []): void {
    this.at = part;
    this.typed = typed;
    this.one = one;
    this.beside = beside;
    this.why = "";
    const { state } = this;
    state.at = part;
    state.skipped = state.skipped.filter((id) => id !== part);
    this.keep();
    this.requestUpdate();
  }

  private focusDigits(mark = false): void {
    void this.updateComplete.then(() => {
      const e = this.querySelector<HTMLInputElement>("#scale-digits") ?? this.querySelector<HTMLElement>(".ended button, .shut");
      e?.focus({ preventScroll: true });
      if (mark && e instanceof HTMLInputElement) e.select();
    });
  }

  private name(id: string): string {
    return brief(this.of?.parts.find((p) => p.id === id)?.name ?? id);
  }

  // tell says what was done, and at the end that it is the end.
  private tell(done: string): void {
    this.told = this.at ? done : `${done} ${this.ending()}`;
    this.focusDigits();
  }

  private take(): void {
    const p = this.asked;
    if (!p) return;
    if (!this.typed.trim()) {
      this.wrong(t("scale.empty"));
      return;
    }
    const { kept, build, typed, one, beside } = this;
    let taken: WeighTaken;
    try {
      taken = core.weighTaken(store.text, build, {
        part: p.id,
        with: beside,
        typed,
        unit: massField(store.doc!.show).parse,
        step_g: kept.step,
        tare_g: kept.tare,
        one,
      });
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.wrong(e.message);
      return;
    }
    const n = 1 + (sharedIn(sharing(), "parts", build).get(p.id)?.also?.length ?? 0);
    store.seal();
    if (beside.length) {
      const things = taken.shares.map((s) => ({ owner: build, id: s.part, to: taking(s, taken) }));
      store.edit(t("scale.do.together", { n: things.length }), (d) => spread(d, "parts", things));
    } else editKnown("parts", build, p, t("scale.field"), taking(taken.shares[0]!, taken));
    this.acts.push({ part: p.id, typed, one, beside, after: store.doc });
    this.go(this.next(p.id));
    this.tell(beside.length ? this.sayingTogether(taken) : this.saying(p, taken, n));
  }

  private saying(p: Part, taken: WeighTaken, n: number): string {
    const s = partScale(store.doc!.show);
    const mass = plain(write(taken.net_g, taken.plus_g, s));
    const said: string[] = [n > 1 ? t("scale.took.builds", { part: brief(p.name), mass, n }) : t("scale.took", { part: brief(p.name), mass })];
    if (taken.unusual) said.push(t(`scale.${taken.unusual}`, { usual: plain(rough(taken.usual_g ?? 0, s)) }));
    else if (taken.outside) said.push(t("scale.outside", { was: plain(write(taken.was_g, taken.was_plus_g, s)) }));
    return said.join(" ");
  }

  private sayingTogether(taken: WeighTaken): string {
    const s = partScale(store.doc!.show);
    const said = [t("scale.took.together", { n: taken.shares.length, mass: plain(write(taken.net_g, taken.plus_g, s)) })];
    if (taken.outside) said.push(t("scale.outside", { was: plain(write(taken.was_g, taken.was_plus_g, s)) }));
    return said.join(" ");
  }

  private wrong(why: string): void {
    this.why = why;
    this.requestUpdate();
    this.focusDigits(true);
  }

  private skip(): void {
    const { at, typed, one, beside } = this;
    if (!at) return;
    this.acts.push({ part: at, typed, one, beside, after: null });
    this.state.skipped.push(at);
    const said = t("scale.skipped", { part: this.name(at) });
    this.go(this.next(at));
    this.tell(said);
  }

  private undo(): void {
    const act = this.acts.pop();
    if (!act) return;
    if (act.after) {
      if (store.doc !== act.after) {
        this.acts = []; // the document went on by other ways
        this.requestUpdate();
        return;
      }
      store.undo();
    }
    this.go(act.part, act.typed, act.one, act.beside);
    this.told = t("scale.undone", { part: this.name(act.part) });
    this.focusDigits(true);
  }

  private resume(): void {
    this.state.skipped = [];
    this.go(this.next());
    this.told = "";
    this.focusDigits();
  }

  private ending(): string {
    const n = this.state.skipped.length;
    return n ? count(n, "scale.end.skipped.one", "scale.end.skipped.many") : t("scale.end");
  }

  private readonly offer = (typed: string): Offer => {
    const { of } = this;
    if (!of) return { options: [], first: 0 };
    let ids: string[] = [];
    try {
      ids = core.findParts(store.text, of.id, typed);
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
    }
    const s = partScale(store.doc!.show);
    const options = ids.slice(0, offered).flatMap((id) => {
      const p = of.parts.find((q) => q.id === id);
      if (!p) return [];
      const take = () => {
        this.go(id);
        this.told = t("scale.next", { part: brief(p.name) });
        this.focusDigits();
      };
      return [{ name: p.name, facts: t(`basis.${p.basis}.short`), mass: plain(rough(p.mass_g * p.quantity, s)), take }];
    });
    return { options, first: 0 };
  };

  private key(e: KeyboardEvent): void {
    if (e.key === "Enter") {
      e.preventDefault();
      this.take();
    } else if (e.key === "ArrowDown") {
      e.preventDefault();
      this.skip();
    } else if (e.key.toLowerCase() === "z" && (e.ctrlKey || e.metaKey) && !this.typed) {
      e.preventDefault();
      this.undo();
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const build = this.of;
    if (!build) return nothing;
    const { value: plan, why } = this.planned.now();
    return html`<dialog class="scale" aria-labelledby="scale-title" @close=${(e: Event) => this.build && hasClosed(e) && this.close()}>
      <div class="top">
        <h2 id="scale-title">${t("scale.title", { build: build.name })}</h2>
        <button type="button" class="shut" @click=${() => this.close()}>${t("scale.close")}</button>
        ${plan ? this.progress(plan) : html`<p class="why wrong" role="alert">${why}</p>`}
      </div>
      <div class="asked">${this.asked && plan ? this.about(this.asked, plan) : this.end()} ${this.ways()}</div>
      <div class="foot">${this.reading()}</div>
    </dialog>`;
  }

  private progress(plan: WeighPlan): TemplateResult {
    const s = figureScale("g", store.doc!.show);
    const done = plan.parts - plan.left.length;
    const least = plan.left.length ? ` – ${t("scale.least", { plus: plain(rough(plan.least_g, partScale(store.doc!.show))) })}` : "";
    return html`<p class="sum"><span class="quiet">${t("scale.total")}</span> <strong>${plain(write(plan.total_g, plan.plus_g, s))}</strong></p>
      <p class="fine">${t("scale.done", { share: decimal(100 * plan.weighed_share, 0), n: done, of: plan.parts })}${least}</p>
      <progress aria-label=${t("scale.bar")} max="1" .value=${plan.weighed_share}></progress>`;
  }

  private about(p: Part, plan: WeighPlan): TemplateResult {
    const show = store.doc!.show;
    const s = partScale(show);
    const left = plan.left.find((l) => l.id === p.id);
    const also = sharedIn(sharing(), "parts", this.build).get(p.id)?.also?.length ?? 0;
    const facts = [
      `${t(`basis.${p.basis}.short`)} ${p.quantity > 1 ? `${p.quantity} × ` : ""}${plain(write(p.mass_g, p.half_width_g, s))}`,
      p.station ? word("station", p.station) : "",
      also ? t("scale.also", { n: also + 1 }) : "",
    ].filter(Boolean);
    return html`<h3 id="scale-part">${p.name}</h3>
      <p class="about" id="scale-about">
        ${facts.join(" – ")}<br />${left ? t("scale.gain", { plus: plain(rough(plan.plus_g, s)), less: plain(rough(left.then_g, s)) }) : t("scale.again")}
      </p>
      <div class="pieces ${p.quantity < 2 || this.beside.length ? "none" : ""}" role="group" aria-label=${t("scale.pieces")}>
        ${[false, true].map(
          (one) =>
            html`<button
              type="button"
              class="toggle"
              aria-pressed=${this.one === one}
              @pointerdown=${(e: Event) => e.preventDefault()}
              @click=${() => {
                this.one = one;
                this.requestUpdate();
                this.focusDigits();
              }}
            >
              ${one ? t("scale.one") : t("scale.all", { n: p.quantity })}
            </button>`,
        )}
      </div>
      ${this.together(p, plan)}`;
  }

  // together lets several parts lie on the scale at once: small ones, whose share a
  // scale could not tell apart from its step.
  private together(p: Part, plan: WeighPlan): TemplateResult {
    const { beside } = this;
    const s = partScale(store.doc!.show);
    const others = plan.left.filter((l) => l.id !== p.id);
    return html`<details class="together" ?hidden=${!others.length}>
      <summary>${beside.length ? count(beside.length, "scale.together.one", "scale.together.many") : t("scale.together")}</summary>
      <p class="fine">${t("scale.together.help")}</p>
      <ul>
        ${others.map(
          (l) => html`<li>
            <label
              ><input
                type="checkbox"
                .checked=${live(beside.includes(l.id))}
                @change=${(e: Event) => {
                  const on = (e.target as HTMLInputElement).checked;
                  this.beside = on ? [...this.beside, l.id] : this.beside.filter((id) => id !== l.id);
                  this.one = false;
                  this.requestUpdate();
                }}
              /><span>${this.name(l.id)}</span> <span class="quiet">${plain(rough(l.mass_g, s))}</span></label
            >
          </li>`,
        )}
      </ul>
    </details>`;
  }

  private end(): TemplateResult {
    const n = this.state.skipped.length;
    return html`<div class="ended">
      <p>${this.ending()}</p>
      ${n ? html`<button type="button" class="go" @click=${() => this.resume()}>${count(n, "scale.resume.one", "scale.resume.many")}</button>` : nothing}
    </div>`;
  }

  // ways are how the next part is chosen, and what the scale is like: set once.
  private ways(): TemplateResult {
    const { kept } = this;
    return html`<div
      class="ways"
      @keydown=${{
        capture: true,
        // In the search Escape clears what is typed; only then it closes.
        handleEvent: (e: KeyboardEvent) => {
          if (e.key === "Escape" && e.target instanceof HTMLInputElement && e.target.id === "scale-find" && e.target.value) e.preventDefault();
        },
      }}
    >
      <sy-combo name="scale-find" .label=${t("scale.find")} .placeholder=${t("scale.find.placeholder")} .offer=${this.offer}></sy-combo>
      <label class="stacked"
        >${t("scale.order")}
        <select
          id="scale-order"
          @change=${(e: Event) => {
            kept.order = (e.target as HTMLSelectElement).value === "list" ? "list" : "first";
            this.go(this.next(), this.typed);
            this.focusDigits();
          }}
        >
          ${(["first", "list"] as const).map((o) => html`<option value=${o} .selected=${live(kept.order === o)}>${t(`scale.order.${o}`)}</option>`)}
        </select>
      </label>
      ${this.set(
        "step_g",
        t("scale.step"),
        kept.step,
        (v) => v > 0,
        (v) => (kept.step = v),
      )}
      ${this.set(
        "tare_g",
        t("scale.tare"),
        kept.tare,
        (v) => v >= 0,
        (v) => (kept.tare = v),
        t("scale.tare.help"),
      )}
    </div>`;
  }

  // set is a field of what the scale is like; what makes no sense stays in it, marked.
  private set(key: "step_g" | "tare_g", label: string, now: number, right: (v: number) => boolean, to: (v: number) => void, help = ""): TemplateResult {
    const unit = massField(store.doc!.show);
    const typed = this.setting[key];
    return html`<label class="stacked" title=${help || nothing}
      >${label}, ${unit.unit}
      <input
        id="scale-${key}"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-invalid=${typed === null ? nothing : "true"}
        aria-description=${help || nothing}
        .value=${live(typed ?? unit.text(now))}
        @focus=${(e: Event) => (e.target as HTMLInputElement).select()}
        @change=${(e: Event) => {
          const text = (e.target as HTMLInputElement).value;
          let v = NaN;
          try {
            v = text.trim() === "" && key === "tare_g" ? 0 : core.parseMass(text, unit.parse);
          } catch (x) {
            if (!(x instanceof CoreError)) throw x;
          }
          const ok = right(v);
          this.setting[key] = ok ? null : text;
          if (ok) {
            to(v);
            this.keep();
          }
          this.requestUpdate();
        }}
        @keydown=${(e: KeyboardEvent) => {
          if (e.key !== "Enter") return;
          e.preventDefault();
          this.focusDigits(); // and what is typed is taken as the field is left
        }}
      />
    </label>`;
  }

  private reading(): TemplateResult {
    const p = this.asked;
    const unit = massField(store.doc!.show);
    const still = (e: Event) => e.preventDefault(); // the digits keep the focus, and a phone its keyboard
    return html`<p class="told" role="status">
        ${this.told}<span class="unseen">${p && this.told ? ` ${t("scale.next", { part: brief(p.name) })}` : nothing}</span>
      </p>
      <p class="why wrong" id="scale-why" role="alert">${this.why}</p>
      ${
        p
          ? html`<div class="digits">
              <label for="scale-digits"><span aria-hidden="true">${t("scale.shows")}</span><span class="unseen">${t("scale.shows.of", { part: brief(p.name) })}, ${t("scale.unit", { unit: unit.unit })}</span></label>
              <input
                id="scale-digits"
                type="text"
                inputmode="decimal"
                enterkeyhint="next"
                autocomplete="off"
                aria-describedby="scale-about"
                aria-errormessage="scale-why"
                aria-invalid=${this.why ? "true" : nothing}
                .value=${live(this.typed)}
                @input=${(e: Event) => {
                  this.typed = (e.target as HTMLInputElement).value;
                  this.why = "";
                  this.requestUpdate();
                }}
                @keydown=${(e: KeyboardEvent) => this.key(e)}
              />
              <span class="unit" aria-hidden="true">${unit.unit}</span>
            </div>`
          : nothing
      }
      <div class="presses">
        <button type="button" class="back" ?disabled=${!this.acts.length} @pointerdown=${still} @click=${() => this.undo()}>${t("scale.undo")}</button>
        <button type="button" class="pass" ?disabled=${!p} @pointerdown=${still} @click=${() => this.skip()}>${t("scale.skip")}</button>
        <button type="button" class="go take" ?disabled=${!p} @pointerdown=${still} @click=${() => this.take()}>${t("scale.take")}</button>
      </div>`;
  }
}

customElements.define("sy-scale", Scale);
