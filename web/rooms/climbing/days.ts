// The days of a document: which one is shown, and its stretches, typed, from lines,
// or from the track of a file.

import { html, nothing, type TemplateResult } from "lit";
import { mostBytes, nameOf, readTrack, textOf } from "./gpx.ts";
import { choice, field, numberInput } from "../../elements/field.ts";
import { DeferredElement } from "../../elements/element.ts";
import { store } from "../../app/state.ts";
import { core, CoreError } from "../../core/core.ts";
import { t } from "../../text/index.ts";
import type { ClimbAnswer, Day, Doc, Stretch, Track, TrackStretches } from "../../model/types.ts";
import { trim } from "../../model/units.ts";
import { foldMoved, foldOpen } from "../../elements/section.ts";

const together = 40; // lines of the table at a time

const daysOf = (doc: Doc): readonly Day[] => doc.days ?? [];

// dayShown is the day that the document shows.
export function dayShown(doc: Doc): Day | undefined {
  const { day } = doc.show;
  return day ? daysOf(doc).find((d) => d.id === day) : daysOf(doc)[0];
}

function editDay(doc: Doc, id: string, change: (d: Day) => Day): Doc {
  return { ...doc, days: daysOf(doc).map((d) => (d.id === id ? change(d) : d)) };
}

function addDay(doc: Doc, name: string, stretches: Stretch[]): Doc {
  const id = core.newID(doc, "day");
  return { ...doc, days: [...daysOf(doc), { id, name, stretches }], show: { ...doc.show, day: id } };
}

// removeDay shows the day that takes its place.
function removeDay(doc: Doc, id: string): Doc {
  const at = daysOf(doc).findIndex((d) => d.id === id);
  const left = daysOf(doc).filter((d) => d.id !== id);
  const { days: _, ...rest } = doc;
  const { day: __, ...show } = doc.show;
  const next = left[Math.min(at, left.length - 1)];
  return next ? { ...rest, days: left, show: { ...show, day: next.id } } : { ...rest, show };
}

const undoable = {
  get label() {
    return t("undo");
  },
  run: () => store.undo(),
};

class DayEditor extends DeferredElement {
  static override properties = { value: { attribute: false } };
  declare value: ClimbAnswer;

  private from = 0; // the first line of the table that is shown
  private lines = "";
  private why = "";

  protected override render(): TemplateResult | typeof nothing {
    const doc = store.doc;
    if (!doc || !this.value) return nothing;
    const day = dayShown(doc);
    const full = this.value.days_left < 1;
    return html`<div class="loadbar">
        ${
          daysOf(doc).length > 1 || (daysOf(doc).length && !day)
            ? choice({
                key: "show/day",
                label: t("climbing.day.which"),
                hidden: true,
                value: day?.id ?? "",
                options: daysOf(doc).map((d) => ({ value: d.id, label: d.name || d.id })),
                set: (id) => {
                  this.from = 0;
                  store.edit(t("climbing.day.which"), (d) => ({ ...d, show: { ...d.show, day: id } }));
                },
              })
            : nothing
        }
        <span class="acts">
          <button type="button" ?disabled=${full} @click=${() => this.add(t("climbing.day.new", { n: daysOf(doc).length + 1 }), [])}>${t("climbing.day.add")}</button>
          <button type="button" ?disabled=${full} @click=${() => this.renderRoot.querySelector<HTMLInputElement>("input[type=file]")?.click()}>${t("climbing.gpx")}</button>
          <input type="file" hidden accept=".gpx,application/gpx+xml" aria-label=${t("climbing.gpx")} @change=${(e: Event) => void this.opened(e.currentTarget as HTMLInputElement)} />
          ${
            day
              ? html`<button type="button" ?disabled=${full || day.stretches.length > this.value.stretches_left} @click=${() => this.add(t("climbing.day.copied", { name: day.name }), day.stretches)}>
                    ${t("climbing.day.copy")}
                  </button>
                  <button type="button" class="danger" @click=${() => this.discard(day)}>${t("climbing.day.delete")}</button>`
              : nothing
          }
        </span>
      </div>
      ${this.why ? html`<p class="why wrong" role="alert">${this.why}</p>` : nothing} ${day ? this.day(day) : nothing}`;
  }

  private day(day: Day): TemplateResult {
    const n = day.stretches.length;
    return html`<div class="specs narrowspecs">
        ${field({
          key: `${day.id}/name`,
          label: t("climbing.day.name"),
          text: day.name,
          problem: this.problem(day, "name"),
          accept: (name) => store.edit(t("climbing.day.name"), (d) => editDay(d, day.id, (y) => ({ ...y, name })), `${day.id}/name`),
        })}
      </div>
      <details class="aside-fold" ?open=${foldOpen(`climbing/${day.id}`)} @toggle=${foldMoved(`climbing/${day.id}`)}>
        <summary><h3>${t("climbing.stretches", { n })}</h3></summary>
        ${n ? this.table(day) : nothing}
        <div class="acts">
          <button type="button" ?disabled=${this.left(day) < 1} @click=${() => this.lengthen(day)}>${t("climbing.stretch.add")}</button>
          ${n > 1 ? this.surfaces(day) : nothing}
        </div>
        ${this.written(day)}
      </details>`;
  }

  private table(day: Day): TemplateResult {
    const n = day.stretches.length;
    const from = Math.min(this.from, Math.floor((n - 1) / together) * together);
    const shown = day.stretches.slice(from, from + together);
    const go = (to: number) => () => {
      this.from = to;
      this.requestUpdate();
    };
    return html`<table class="lines stretches">
        <caption class="unseen">
          ${t("climbing.stretches", { n })}
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${t("climbing.stretch")}</span></th>
            <th scope="col" class="right">km</th>
            <th scope="col" class="right">${t("unit.percent")}</th>
            <th scope="col">${t("climbing.surface")}</th>
            <th scope="col"><span class="unseen">${t("climbing.stretch.delete")}</span></th>
          </tr>
        </thead>
        <tbody>
          ${shown.map((s, i) => this.stretch(day, s, from + i))}
        </tbody>
      </table>
      ${
        n > together
          ? html`<div class="acts">
              <button type="button" ?disabled=${from === 0} @click=${go(from - together)}>${t("climbing.stretches.before")}</button>
              <span>${t("climbing.stretches.shown", { from: from + 1, to: from + shown.length, n })}</span>
              <button type="button" ?disabled=${from + together >= n} @click=${go(from + together)}>${t("climbing.stretches.next")}</button>
            </div>`
          : nothing
      }`;
  }

  private stretch(day: Day, s: Stretch, i: number): TemplateResult {
    const key = `${day.id}/stretches/${i}`;
    const set = (change: Partial<Stretch>, within: string) =>
      store.edit(
        t("climbing.stretch"),
        (d) => editDay(d, day.id, (y) => ({ ...y, stretches: y.stretches.with(i, { ...y.stretches[i]!, ...change }) })),
        `${key}/${within}`,
      );
    const of = (what: string) => t("climbing.stretch.of", { what, n: i + 1 });
    return html`<tr>
      <th scope="row">${i + 1}</th>
      <td>
        ${numberInput({
          key: `${key}/length`,
          label: of("km"),
          hidden: true,
          value: s.length_m / 1000,
          decimals: 4,
          problem: this.problem(day, `stretches.${i}.length_m`),
          set: (km) => set({ length_m: Math.round(km * 1e7) / 1e4 }, "length"),
        })}
      </td>
      <td>
        ${numberInput({
          key: `${key}/slope`,
          label: of(t("unit.percent")),
          hidden: true,
          value: s.slope_percent,
          problem: this.problem(day, `stretches.${i}.slope_percent`),
          set: (slope_percent) => set({ slope_percent }, "slope"),
        })}
      </td>
      <td>
        ${choice({
          key: `${key}/surface`,
          label: of(t("climbing.surface")),
          hidden: true,
          value: s.surface ?? this.value.surfaces[0]?.value ?? "",
          options: [...this.value.surfaces],
          problem: this.problem(day, `stretches.${i}.surface`),
          set: (surface) => set({ surface: surface as NonNullable<Stretch["surface"]> }, "surface"),
        })}
      </td>
      <td>
        <button
          type="button"
          class="plain"
          aria-label=${t("climbing.stretch.delete.n", { n: i + 1 })}
          @click=${() => store.edit(t("climbing.stretch.delete"), (d) => editDay(d, day.id, (y) => ({ ...y, stretches: y.stretches.toSpliced(i, 1) })))}
        >
          ×
        </button>
      </td>
    </tr>`;
  }

  private surfaces(day: Day): TemplateResult {
    const same = day.stretches.every((s) => s.surface === day.stretches[0]!.surface) ? (day.stretches[0]!.surface ?? "") : "";
    return choice({
      key: `${day.id}/surface`,
      label: t("climbing.surface.all"),
      value: same,
      options: [...(same ? [] : [{ value: "", label: t("climbing.surface.various") }]), ...this.value.surfaces],
      set: (v) => {
        if (v)
          store.edit(t("climbing.surface.all"), (d) =>
            editDay(d, day.id, (y) => ({ ...y, stretches: y.stretches.map((s) => ({ ...s, surface: v as NonNullable<Stretch["surface"]> })) })),
          );
      },
    });
  }

  // Many stretches as lines.
  private written(day: Day): TemplateResult {
    return html`<label class="stacked" for="day-lines">${t("climbing.lines")}</label>
      <textarea
        id="day-lines"
        rows="4"
        .value=${this.lines}
        @input=${(e: Event) => {
          this.lines = (e.currentTarget as HTMLTextAreaElement).value;
        }}
      ></textarea>
      <div class="acts">
        <button type="button" @click=${() => this.take(day, false)}>${t("climbing.lines.add")}</button>
        <button type="button" @click=${() => this.take(day, true)}>${t("climbing.lines.replace")}</button>
      </div>`;
  }

  private problem(day: Day, at: string) {
    return store.problems.find((p) => p.day === day.id && p.field === at);
  }

  // left is how many stretches more a day may have, as far as is known.
  private left(day: Day): number {
    const told = this.value.day;
    return told?.id === day.id ? told.stretches_left : this.value.stretches_left;
  }

  private say(why: string): void {
    this.why = why;
    this.requestUpdate();
  }

  private add(name: string, stretches: Stretch[]): void {
    this.from = 0;
    this.say("");
    store.edit(t("climbing.day.add"), (d) => addDay(d, name, stretches));
  }

  private discard(day: Day): void {
    this.from = 0;
    this.say("");
    store.edit(t("climbing.day.delete"), (d) => removeDay(d, day.id));
    store.tell(t("climbing.day.deleted", { name: day.name }), undoable);
  }

  private lengthen(day: Day): void {
    const last = day.stretches.at(-1) ?? { length_m: 1000, slope_percent: 0, surface: this.surface() };
    store.edit(t("climbing.stretch.add"), (d) => editDay(d, day.id, (y) => ({ ...y, stretches: [...y.stretches, { ...last }] })));
    this.from = Math.floor(day.stretches.length / together) * together;
  }

  // surface is the one that the climb is on.
  private surface(): NonNullable<Stretch["surface"]> {
    const on = this.value.sides.find((s) => s.ok)?.inputs.find((i) => i.key === "surface")?.text ?? this.value.surfaces[0]?.value;
    return on as NonNullable<Stretch["surface"]>;
  }

  // read has the core make stretches of a track; nothing where there are none, and
  // then it is said why.
  private read(track: Track): TrackStretches | null {
    try {
      const got = core.stretches({ ...track, surface: this.surface() });
      this.say("");
      return got;
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.say(e.message);
      return null;
    }
  }

  private take(day: Day, instead: boolean): void {
    const got = this.read({ lines: this.lines || " " });
    if (!got) return;
    if (got.stretches.length > this.left(day) + (instead ? day.stretches.length : 0)) {
      this.say(t("climbing.day.full"));
      return;
    }
    this.lines = "";
    store.edit(t("climbing.lines.add"), (d) => editDay(d, day.id, (y) => ({ ...y, stretches: instead ? got.stretches : [...y.stretches, ...got.stretches] })));
    store.tell(t("climbing.lines.taken", { n: got.stretches.length }), undoable);
  }

  private async opened(input: HTMLInputElement): Promise<void> {
    const file = input.files?.[0];
    if (!file) return;
    if (file.size > mostBytes) this.say(t("climbing.gpx.large", { most: mostBytes / 2 ** 20 }));
    else {
      let bytes: Uint8Array | null = null;
      try {
        bytes = new Uint8Array(await file.arrayBuffer());
      } catch {
        this.say(t("climbing.gpx.unread"));
      }
      if (bytes) this.tracked(nameOf(file.name), textOf(bytes));
    }
    input.value = ""; // so that the same file can be taken again
  }

  private tracked(name: string, text: string): void {
    const track = readTrack(text);
    if ("why" in track) {
      this.say(t(track.why));
      return;
    }
    const got = this.read({ places: track.places });
    if (!got) return;
    if (got.stretches.length > this.value.stretches_left || this.value.days_left < 1) {
      this.say(t("climbing.day.full"));
      return;
    }
    this.add(name || t("climbing.day.new", { n: daysOf(store.doc!).length + 1 }), got.stretches);
    store.tell(t("climbing.gpx.taken", { name, n: got.stretches.length, km: trim(got.length_m / 1000, 1), up: trim(got.ascent_m, 0) }), undoable);
  }
}

customElements.define("sy-day", DayEditor);
