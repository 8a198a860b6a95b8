// Changing a whole set of parts of a build: drivetrain, wheels, brakes. The core says
// what goes, comes and stays; here it is looked through, unticked, and taken.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { compare, findBuild } from "../../app/edit.ts";
import { openers } from "../../app/files.ts";
import { sameLoad } from "../../app/loadEdit.ts";
import { store } from "../../app/state.ts";
import { core, CoreError } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";
import { hasClosed, closeDialog, showDialog, StoreElement } from "../../elements/element.ts";
import { verdictText } from "../../elements/verdict.ts";
import type { Changed, Changing, Coming, Going, SetLine } from "../../model/types.ts";
import { figureScale, massText, partScale, plain, rough, write } from "../../model/units.ts";
import { count, t, word } from "../../text/index.ts";

class Change extends StoreElement {
  private build = ""; // empty while the dialog is closed
  private area = "drivetrain";
  private set = "";
  private readonly keep = new Set<string>();
  private readonly skip = new Set<number>();
  private readonly drop = new Set<string>();
  private name: string | null = null; // of a new build; null is what is proposed
  private why = "";
  private was: Element | null = null;

  private readonly offered = new Answer<SetLine[]>(
    (text, build) => core.sets(text, build),
    () => this.build,
  );
  private readonly planned = new Answer<Changed>(
    (text, what) => core.change(text, JSON.parse(what) as Changing),
    () => JSON.stringify(this.changing()),
  );

  constructor() {
    super();
    openers.change = (build) => this.open(build);
  }

  private changing(): Changing {
    return { build: this.build, set: this.set, keep: [...this.keep], skip: [...this.skip], drop: [...this.drop] };
  }

  private open(build: string): void {
    if (!store.doc || core.state !== "ready") return;
    this.was = document.activeElement;
    this.build = build;
    this.choose("");
    showDialog(this);
  }

  private areas(): string[] {
    return [...new Set(this.offered.now().value?.map((s) => s.area))];
  }

  // go shows another area.
  private go(area: string): void {
    this.area = area;
    this.choose("");
  }

  private close(): void {
    if (!this.build) return;
    this.build = "";
    closeDialog(this, this.was);
  }

  private choose(set: string): void {
    this.set = set;
    this.keep.clear();
    this.skip.clear();
    this.drop.clear();
    this.name = null;
    this.why = "";
    this.requestUpdate();
  }

  private proposed(): string {
    const build = findBuild(store.doc!, this.build)?.name ?? "";
    const set = this.offered.now().value?.find((s) => s.id === this.set)?.name ?? "";
    return t("change.name", { build, set });
  }

  // take makes the change, on the build itself or on a copy of it, as one step.
  private take(copy: boolean): void {
    const of = this.build;
    const build = findBuild(store.doc!, of)?.name ?? "";
    const set = this.offered.now().value?.find((s) => s.id === this.set)?.name ?? "";
    const name = (this.name ?? "").trim() || this.proposed();
    let made: Changed;
    try {
      made = core.change(store.text, copy ? { ...this.changing(), copy_as: name } : this.changing());
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.why = e.message;
      this.requestUpdate();
      return;
    }
    store.seal();
    if (copy) store.edit(t("do.change.new", { name }), () => compare(sameLoad(made.document), of, made.build));
    else store.edit(t("do.change", { build, set }), () => made.document);
    this.close();
    // What was changed is what is looked at.
    store.activate(store.ids.B === made.build ? "B" : "A");
    if (!store.part(store.selected)) store.select("");
    store.tell(copy ? t("change.made", { name }) : t("change.done", { build, set }), { label: t("undo"), run: () => store.undo() });
  }

  protected override render(): TemplateResult | typeof nothing {
    const build = store.doc && this.build ? findBuild(store.doc, this.build) : undefined;
    if (!build) return nothing;
    const { value: sets, why } = this.offered.now();
    return html`<dialog class="change" aria-labelledby="change-title" @close=${(e: Event) => this.build && hasClosed(e) && this.close()}>
      <h2 id="change-title">${t("change.title", { build: build.name })}</h2>
      ${why ? html`<p class="why wrong" role="alert">${why}</p>` : nothing}
      <div class="areas" role="group" aria-label=${t("change.area")}>
        ${this.areas().map(
          (a) =>
            html`<button
              type="button"
              class="toggle"
              aria-pressed=${a === this.area}
              @click=${() => this.go(a)}
            >
              ${word("area", a)}
            </button>`,
        )}
      </div>
      <div class="sides">
        <div>${this.choice(sets?.filter((s) => s.area === this.area) ?? [])} ${this.naming()}</div>
        <div class="plan">${this.set ? this.plan() : html`<p class="quiet">${t("change.hint")}</p>`}</div>
      </div>
      ${this.end()}
    </dialog>`;
  }

  private choice(sets: SetLine[]): TemplateResult {
    const fit = sets.filter((s) => s.fits || s.on);
    const rest = sets.filter((s) => !s.fits && !s.on);
    return html`<fieldset
      class="sets"
      @keydown=${(e: KeyboardEvent) => {
        if (e.key === "Enter" && !this.idle && e.target instanceof HTMLInputElement) this.take(false);
      }}
    >
      <legend>${t("change.choose")}</legend>
      ${fit.map((s) => this.line(s))}
      ${
        rest.length
          ? html`<details ?open=${!fit.length || rest.some((s) => s.id === this.set)}>
            <summary>${count(rest.length, "change.unfit.one", "change.unfit.many")}</summary>
            ${rest.map((s) => this.line(s))}
          </details>`
          : nothing
      }
    </fieldset>`;
  }

  private line(s: SetLine): TemplateResult {
    return html`<label class="tick ${s.id === this.set ? "chosen" : ""}">
      <input type="radio" name="set" value=${s.id} .checked=${live(s.id === this.set)} @change=${() => this.choose(s.id)} />
      <span class="name">${s.name}${s.on ? html` <em>${t("change.on")}</em>` : nothing}</span>
      <span class="mass">${massText(s.mass_g, store.doc!.show)}</span>
    </label>`;
  }

  private plan(): TemplateResult {
    const { value: p, why } = this.planned.now();
    if (!p) return html`<p class="why wrong" role="alert">${why}</p>`;
    if (!p.goes.length && !p.comes.length) return html`<p>${t("change.nothing")}</p>`;
    const kept = p.goes.filter((g) => g.aside && !this.keep.has(g.id)).length;
    return html`${
      p.goes.length
        ? html`<h3>${t("change.goes")}</h3>
          ${kept ? html`<p class="fine">${count(kept, "change.aside.one", "change.aside.many")}</p>` : nothing}
          <ul>
            ${p.goes.map((g) => html`<li>${this.goes(g)}</li>`)}
          </ul>`
        : nothing
    }
    ${
      p.comes.length
        ? html`<h3>${t("change.comes")}</h3>
          <ul>
            ${p.comes.map((c, i) => html`<li>${this.comes(c, i)}</li>`)}
          </ul>`
        : nothing
    }
    ${
      p.stays.length
        ? html`<h3>${t("change.stays")}</h3>
          <ul>
            ${p.stays.map((g) => html`<li>${this.stays(g)}</li>`)}
          </ul>`
        : nothing
    }
    ${
      p.remarks.length
        ? html`<h3>${t("change.remarks")}</h3>
          <ul class="remarks">
            ${p.remarks.map((r) => html`<li>${r}</li>`)}
          </ul>`
        : nothing
    }
    <p class="caution"><strong>${t("page.caution")}.</strong> ${t("change.caution")}</p>`;
  }

  private goes(g: Going): TemplateResult {
    return this.tick(!this.keep.has(g.id), g.name, t(`basis.${g.basis}.short`), g.mass_g, (on) => {
      if (on) this.keep.delete(g.id);
      else this.keep.add(g.id);
    });
  }

  private stays(g: Going): TemplateResult {
    return this.tick(!this.drop.has(g.id), g.name, t(`basis.${g.basis}.short`), g.mass_g, (on) => {
      if (on) this.drop.delete(g.id);
      else this.drop.add(g.id);
    });
  }

  private comes(c: Coming, i: number): TemplateResult {
    const from = c.origin === "build" ? t("change.from.build", { build: c.build ?? "" }) : c.origin === "aside" ? t("change.from.aside") : "";
    const told = [t(`basis.${c.basis}.short`), from].filter(Boolean).join(", ");
    return this.tick(!this.skip.has(i), c.name, told, c.mass_g, (on) => {
      if (on) this.skip.delete(i);
      else this.skip.add(i);
    });
  }

  private tick(on: boolean, name: string, note: string, mass: number, set: (on: boolean) => void): TemplateResult {
    return html`<label class="tick">
      <input
        type="checkbox"
        .checked=${live(on)}
        @change=${(e: Event) => {
          set((e.target as HTMLInputElement).checked);
          this.requestUpdate();
        }}
      />
      <span class="name">${name}${note ? html` <small>${note}</small>` : nothing}</span>
      <span class="mass">${plain(rough(mass, partScale(store.doc!.show)))}</span>
    </label>`;
  }

  // idle says that nothing would change.
  private get idle(): boolean {
    const plan = this.set ? this.planned.now().value : null;
    return !plan || plan.goes.length + plan.comes.length === 0;
  }

  private naming(): TemplateResult | typeof nothing {
    if (this.idle) return nothing;
    return html`<label class="stacked"
        >${t("change.newname")}
        <input
          type="text"
          id="change-name"
          autocomplete="off"
          .value=${live(this.name ?? this.proposed())}
          @input=${(e: Event) => {
            this.name = (e.target as HTMLInputElement).value;
          }}
          @keydown=${(e: KeyboardEvent) => {
            if (e.key === "Enter") this.take(true);
          }}
        />
      </label>`;
  }

  private end(): TemplateResult {
    const { idle } = this;
    const plan = idle ? null : this.planned.now().value;
    return html`<div class="end">
      <p class="sum" role="status">${plan ? this.total(plan) : nothing}</p>
      ${this.why ? html`<p class="why wrong" role="alert">${this.why}</p>` : nothing}
      ${this.acts(idle)}
    </div>`;
  }

  private acts(idle: boolean): TemplateResult {
    return html`<div class="acts">
        <button type="button" class="go" ?disabled=${idle} @click=${() => this.take(false)}>${t("change.this")}</button>
        <button type="button" class="go" ?disabled=${idle} @click=${() => this.take(true)}>${t("change.new")}</button>
        <button type="button" @click=${() => this.close()}>${t("cancel")}</button>
      </div>`;
  }

  private total(p: Changed): TemplateResult | typeof nothing {
    const c = p.total;
    if (!c) return nothing;
    const show = store.doc!.show;
    const delta = plain(write(c.delta, c.plus, figureScale("g", show), true));
    return html`${t("change.total", { before: massText(c.a, show), after: massText(c.b, show) })} <strong>${delta}</strong>, ${verdictText(c)}`;
  }
}

customElements.define("sy-change", Change);
