// Weigh-in: what a bathroom scale showed under the wheels, held against the
// figures on paper, and what would explain a difference.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core, CoreError } from "../../core/core.ts";
import { setPath } from "../../app/edit.ts";
import {
  addScale,
  addWeighIn,
  carried,
  editWeighIn,
  loadsOf,
  needsLoad,
  readOff,
  readOn,
  removeScale,
  removeWeighIn,
  usualReadings,
  weighInsOf,
} from "../../app/loadEdit.ts";
import { adopt } from "../../app/sharing.ts";
import { stateValues, type Drawing, type Reading, type Scale, type State, type Weighed, type WeighIn } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { svgElement } from "../../io/svg.ts";
import { brief, count, has, t, word } from "../../text/index.ts";
import { figureScale, heavyField, lengthField, partScale, plain, readNumber, signed, trim, write } from "../../model/units.ts";
import { copyTable, subhead } from "../../elements/copytable.ts";
import { domID, focusSoon } from "../../elements/element.ts";
import { choice, field, problemOf } from "../../elements/field.ts";
import { number } from "../../elements/figure.ts";
import { Answer } from "../../elements/answer.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { foldMoved, foldOpen, isUnfolded, Section } from "../../elements/section.ts";

const few = 10;

const middling = matchMedia("(max-width: 68rem)");

let chosen = ""; // weigh-in

function now(): WeighIn | undefined {
  const list = store.doc ? weighInsOf(store.doc) : [];
  return list.find((w) => w.id === chosen) ?? list[0];
}

const weighing = new Answer(
  (text, id) => core.weighIn(text, id),
  () => now()?.id ?? "",
);

// outcome is what the weigh-in that is looked at comes to.
function outcome(): { weighed: Weighed | null; why: string } {
  const { value, why } = weighing.now();
  return { weighed: value, why };
}

// gist is what the room comes to. Folded up, that need not be there at every
// keystroke.
export function gist(): Gist {
  const w = now();
  if (!w) return { text: t("weighin.gist") };
  const known = isUnfolded("weighin") ? weighing.now() : weighing.seen(700);
  const a = known.value?.agreement;
  if (!a) return { text: t("weighin.gist.open", { name: w.name }) };
  return { text: t(a.agrees ? "weighin.gist.agrees" : "weighin.gist.not", { name: w.name }), alarm: !a.agrees };
}

class WeighInSection extends Section {
  protected readonly fold = "weighin";
  private readonly left = new Set<string>(); // adjusted weights that are not to be taken
  private all = false;
  private drawing: { of: string; svg: Element | null } = { of: "", svg: null };

  protected override readonly widths = [narrow, middling];

  protected body(): TemplateResult {
    const w = now();
    return html`${this.bar(w)}
      <div class="weighsheet">
        ${
          w
            ? html`<div class="enter">${this.what(w)} ${this.caution(w)} ${this.scales(w)} ${this.readings(w)}</div>
              <div class="come">${this.outcomes()}</div>`
            : html`<p>${t("weighin.start")}</p>`
        }
      </div>
      ${this.how(w)}`;
  }

  private bar(now: WeighIn | undefined): TemplateResult {
    const list = weighInsOf(store.doc!);
    return html`<div class="loadbar">
      ${
        list.length
          ? html`<div class="set" role="group" aria-label=${t("weighin.choose")}>
            ${list.map(
              (w) =>
                html`<button
                  type="button"
                  class="toggle named"
                  aria-pressed=${w.id === now?.id}
                  @click=${() => {
                    chosen = w.id;
                    this.requestUpdate();
                  }}
                >
                  <span class="build-name">${w.name || w.id}</span>
                </button>`,
            )}
          </div>`
          : nothing
      }
      <div class="acts">
        <button type="button" class=${list.length ? "plain" : "go"} @click=${() => this.fresh()}>${t("weighin.new")}</button>
        ${now ? html`<button type="button" class="plain" @click=${() => this.discard(now)}>${t("weighin.delete")}</button>` : nothing}
      </div>
    </div>`;
  }

  private fresh(): void {
    const doc = store.doc!;
    const name = t("weighin.new.name", { n: weighInsOf(doc).length + 1 });
    store.edit(t("do.weighin", { name }), (d) => {
      const state: State = d.show.state ?? "ready";
      const load = carried(d)[store.letter === "B" ? 1 : 0];
      const what = needsLoad(state) && load ? { state, load } : { state: needsLoad(state) ? ("ready" as State) : state };
      const n = addWeighIn(d, { name, build: store.activeID, ...what, ...usualReadings(what.state) });
      chosen = n.id;
      return n.doc;
    });
    focusSoon(domID("f", `weigh/${chosen}/readings.0.mass_g`));
  }

  private discard(w: WeighIn): void {
    store.edit(t("do.delete", { part: w.name }), (d) => removeWeighIn(d, w.id));
    store.tell(t("weighin.deleted", { name: w.name }), { label: t("undo"), run: () => store.undo() });
  }

  private edit(w: WeighIn, path: string, typing = false): (v: unknown) => void {
    return (v) => store.edit(t("do.weighin", { name: w.name }), (d) => editWeighIn(d, w.id, (x) => setPath(x, path, v)), typing ? `weigh/${w.id}/${path}` : "");
  }

  private what(w: WeighIn): TemplateResult {
    const doc = store.doc!;
    const key = (f: string) => `weigh/${w.id}/${f}`;
    const at = (f: string) => problemOf({ weigh_in: w.id }, f);
    return html`<div class="specs">
      ${field({ key: key("name"), label: t("weighin.name"), text: w.name, problem: at("name"), accept: this.edit(w, "name", true) })}
      ${choice({
        key: key("build"),
        label: t("weighin.build"),
        value: w.build,
        problem: at("build"),
        options: doc.builds.map((b) => ({ value: b.id, label: brief(b.name || b.id) })),
        set: this.edit(w, "build"),
      })}
      ${choice({
        key: key("state"),
        label: t("weighin.state"),
        value: w.state,
        problem: at("state"),
        options: stateValues.map((s) => ({ value: s, label: t(`state.${s}`) })),
        set: this.edit(w, "state"),
      })}
      ${
        needsLoad(w.state)
          ? choice({
              key: key("load"),
              label: t("weighin.load"),
              value: w.load ?? "",
              problem: at("load"),
              options: [{ value: "", label: t("weighin.load.none") }, ...loadsOf(doc).map((l) => ({ value: l.id, label: brief(l.name || l.id) }))],
              set: (v) => this.edit(w, "load")(v || undefined),
            })
          : nothing
      }
      ${this.sag(w, "front_sag_mm", "fork")} ${this.sag(w, "rear_sag_mm", "rear")}
      ${this.within(w, "wheelbase_within_mm")} ${this.within(w, "radius_within_mm")}
      </div>
      <p class="fine">${t("weighin.stand.help")}</p>
      ${w.state !== "ridden" && doc.builds.some((b) => b.id === w.build && (b.fork.travel_mm || b.rear.travel_mm)) ? html`<p class="fine">${t("weighin.sag.help")}</p>` : nothing}`;
  }

  // caution says what to beware of on the scale.
  private caution(w: WeighIn): TemplateResult {
    return html`<p class="caution">
      <strong>${t("page.caution")}.</strong> ${t(w.state === "ridden" ? "weighin.caution.ridden" : "weighin.caution.raised")} ${t("weighin.caution.scale")}
    </p>`;
  }

  // within asks what wheelbase or radii may be off by. Left empty it is what the
  // core takes for granted, which stands there in grey.
  private within(w: WeighIn, f: "wheelbase_within_mm" | "radius_within_mm"): TemplateResult {
    const unit = lengthField(store.doc!.show);
    const value = w[f];
    const usual = outcome().weighed?.stand[f];
    return field({
      key: `weigh/${w.id}/${f}`,
      label: t(`weighin.${f}`),
      unit: unit.unit,
      kind: "number",
      step: unit.parse === "in" ? 0.1 : 1,
      placeholder: usual === undefined ? "" : unit.text(usual),
      text: value === undefined ? "" : unit.text(value),
      problem: problemOf({ weigh_in: w.id }, f),
      accept: (typed) => this.edit(w, f, true)(typed.trim() === "" ? undefined : core.parseLength(typed, unit.parse)),
    });
  }

  private change(w: WeighIn, to: (w: WeighIn) => WeighIn): void {
    store.edit(t("do.weighin", { name: w.name }), (d) => editWeighIn(d, w.id, to));
  }

  private scales(w: WeighIn): TemplateResult {
    const mass = heavyField(store.doc!.show);
    const list = w.scales ?? [];
    const known = outcome().weighed?.scales ?? [];
    // What readings that name no scale are taken to be of.
    const nameless = known.filter((s) => !s.id && s.readings.length);
    return html`<h3>${t("weighin.scales")}</h3>
      ${
        list.length
          ? html`<table class="lines scales">
            <caption class="unseen">
              ${t("weighin.scales.caption")}
            </caption>
            <thead>
              <tr>
                <th scope="col">${t("weighin.name")}</th>
                <th scope="col" class="right s">${t("weighin.resolution")} <span class="unit">${mass.unit}</span></th>
                <th scope="col" class="right s">${t("weighin.calibration")} <span class="unit">± ${t("unit.percent")}</span></th>
                <th scope="col" class="a"><span class="unseen">${t("weighin.delete")}</span></th>
              </tr>
            </thead>
            <tbody>
              ${list.map((s, i) => this.scale(w, s, i, known.find((k) => k.id === s.id)?.calibration_share))}
            </tbody>
          </table>`
          : nothing
      }
      ${nameless.map(
        (s) =>
          html`<p class="fine">
            ${t("weighin.scale.nameless", { step: `${mass.text(s.step_g)}\u00a0${mass.unit}`, share: `${trim(s.calibration_share * 100, 2)}\u00a0${t("unit.percent")}` })}
          </p>`,
      )}
      <p class="fine">${t("weighin.scales.help")}</p>
      <p class="after">
        <button
          type="button"
          @click=${() => {
            const id = core.newID(store.doc!, "scale");
            this.change(w, (x) => addScale(x, id));
            focusSoon(domID("f", `weigh/${w.id}/scales.${list.length}.name`));
          }}
        >
          ${t("weighin.scale.add")}
        </button>
      </p>`;
  }

  private scale(w: WeighIn, s: Scale, i: number, usual: number | undefined): TemplateResult {
    const mass = heavyField(store.doc!.show);
    const path = (f: string) => `scales.${i}.${f}`;
    const key = (f: string) => `weigh/${w.id}/${path(f)}`;
    const at = (f: string) => problemOf({ weigh_in: w.id }, path(f));
    const named = (label: string) => `${label}, ${t("weighin.scale").toLowerCase()} ${i + 1}`;
    const share = s.calibration_share;
    return html`<tr>
      <td>
        ${field({
          key: key("name"),
          label: named(t("weighin.name")),
          hidden: true,
          placeholder: scaleName(s, i),
          text: s.name ?? "",
          problem: at("name") ?? at("id"),
          accept: (typed) => this.edit(w, path("name"), true)(typed || undefined),
        })}
      </td>
      <td class="s">
        ${field({
          key: key("step_g"),
          label: named(t("weighin.resolution")),
          unit: mass.unit,
          hidden: true,
          kind: "number",
          step: mass.parse === "g" ? 10 : 0.01,
          text: mass.text(s.step_g),
          problem: at("step_g"),
          accept: (typed) => this.edit(w, path("step_g"), true)(core.parseMass(typed, mass.parse)),
        })}
      </td>
      <td class="s">
        ${field({
          key: key("calibration_share"),
          label: named(t("weighin.calibration.long")),
          unit: t("unit.percent"),
          hidden: true,
          kind: "number",
          step: 0.1,
          placeholder: usual === undefined ? "" : trim(usual * 100, 2),
          text: share === undefined ? "" : trim(share * 100, 2),
          problem: at("calibration_share"),
          accept: (typed) => {
            const v = readNumber(typed);
            if (typed.trim() !== "" && !Number.isFinite(v)) throw new RangeError(t("field.number"));
            this.edit(w, path("calibration_share"), true)(typed.trim() === "" ? undefined : v / 100);
          },
        })}
      </td>
      <td class="a">
        <button type="button" class="plain" aria-label=${t("weighin.scale.remove", { name: scaleName(s, i) })} @click=${() => this.change(w, (x) => removeScale(x, s.id))}>
          <span aria-hidden="true">×</span>
        </button>
      </td>
    </tr>`;
  }

  // sag asks how far a sprung end had sunk on the scale. Left empty it is as far
  // as the build says, which stands there in grey.
  private sag(w: WeighIn, f: "front_sag_mm" | "rear_sag_mm", end: "fork" | "rear"): TemplateResult | typeof nothing {
    const doc = store.doc!;
    const build = doc.builds.find((b) => b.id === w.build);
    const value = w[f];
    if (!build || (!build[end].travel_mm && value === undefined)) return nothing;
    const unit = lengthField(doc.show);
    return field({
      key: `weigh/${w.id}/${f}`,
      label: t(`weighin.sag.${end}`),
      unit: unit.unit,
      kind: "number",
      step: unit.parse === "in" ? 0.1 : 1,
      placeholder: unit.text(build[end].sag_mm),
      text: value === undefined ? "" : unit.text(value),
      problem: problemOf({ weigh_in: w.id }, f) ?? outcome().weighed?.problems.find((p) => p.field === f),
      accept: (typed) => this.edit(w, f, true)(typed.trim() === "" ? undefined : core.parseLength(typed, unit.parse)),
    });
  }

  private readings(w: WeighIn): TemplateResult {
    const show = store.doc!.show;
    const mass = heavyField(show);
    const length = lengthField(show);
    const { weighed } = outcome();
    const off = weighed?.measured?.readings ?? [];
    const should = weighed?.expected ?? [];
    const head = (label: string, unit = "", cls = "") =>
      html`<th role="columnheader" scope="col" class=${cls}>${label}${unit ? html` <span class="unit">${unit}</span>` : nothing}</th>`;
    return html`<h3>${t("weighin.readings")}</h3>
      <table class="lines readings" role="table">
        <caption class="unseen">
          ${t("weighin.readings.caption")}
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            ${head(t("weighin.wheel"))} ${head(t("weighin.raised"))} ${head(t("weighin.height"), length.unit, "right")} ${head("±", length.unit, "right")}
            ${head(t("weighin.mass"), mass.unit, "right")} ${w.scales?.length ? head(t("weighin.scale")) : head(t("weighin.resolution"), mass.unit, "right")}
            ${off.length ? html`<th role="columnheader" scope="col" class="right"><abbr title=${t("weighin.off.help")}>${t("weighin.off")}</abbr></th>` : nothing}
            <th role="columnheader" scope="col"><span class="unseen">${t("weighin.delete")}</span></th>
          </tr>
        </thead>
        <tbody role="rowgroup">
          ${w.readings.map((r, i) =>
            this.reading(
              w,
              r,
              i,
              off.find((o) => o.line === i),
              off.length > 0,
              should.find((e) => e.line === i),
            ),
          )}
        </tbody>
      </table>
      ${should.length ? html`<p class="fine">${t("weighin.should.help")}</p>` : nothing}
      <p class="after"><button type="button" @click=${() => this.add(w)}>${t("weighin.add")}</button></p>`;
  }

  private add(w: WeighIn): void {
    const last = w.readings.at(-1);
    const first = w.scales?.[0];
    const level: Reading = { wheel: "front", height_mm: 0, height_within_mm: 0, mass_g: 0 };
    const next: Reading = last ? { ...last, mass_g: 0 } : first ? readOn(level, first) : readOff(level, undefined);
    store.edit(t("do.weighin", { name: w.name }), (d) => editWeighIn(d, w.id, (x) => ({ ...x, readings: [...x.readings, next] })));
    focusSoon(domID("f", `weigh/${w.id}/readings.${w.readings.length}.wheel`));
  }

  private reading(
    w: WeighIn,
    r: Reading,
    i: number,
    off: { by_g: number; score: number } | undefined,
    judged: boolean,
    should: { mass_g: number; plus_g: number } | undefined,
  ): TemplateResult {
    const show = store.doc!.show;
    const mass = heavyField(show);
    const length = lengthField(show);
    const path = (f: string) => `readings.${i}.${f}`;
    const key = (f: string) => `weigh/${w.id}/${path(f)}`;
    const at = (f: string) => problemOf({ weigh_in: w.id }, path(f));
    const named = (label: string) => `${label}, ${t("weighin.reading").toLowerCase()} ${i + 1}`;
    // What has not been read yet is shown empty rather than as nought.
    const figure = (f: "height_mm" | "height_within_mm" | "mass_g" | "resolution_g", label: string, step: number) => {
      const isMass = f.endsWith("_g");
      const unit = isMass ? mass : length;
      return field({
        key: key(f),
        label: named(label),
        unit: unit.unit,
        hidden: true,
        kind: "number",
        step,
        placeholder: "–",
        text: !r[f] && f !== "height_within_mm" ? "" : unit.text(r[f] ?? 0),
        problem: f === "mass_g" && r[f] === 0 ? undefined : at(f),
        accept: (typed) => {
          const v = typed.trim() === "" ? 0 : isMass ? core.parseMass(typed, mass.parse) : core.parseLength(typed, length.parse);
          this.edit(w, path(f), true)(v);
        },
      });
    };
    const wheels = (["front", "rear"] as const).map((v) => ({ value: v as string, label: t(`weighin.${v}`) }));
    const s = partScale(show);
    const heavy = mass.parse !== "g";
    return html`<tr role="row">
      <td role="cell" class="w">${choice({ key: key("wheel"), label: named(t("weighin.wheel")), hidden: true, value: r.wheel, problem: at("wheel"), options: wheels, set: this.edit(w, path("wheel")) })}</td>
      <td role="cell" class="r">
        ${choice({
          key: key("raised"),
          label: named(t("weighin.raised")),
          hidden: true,
          value: r.raised ?? "",
          problem: at("raised"),
          options: [{ value: "", label: t("weighin.level") }, ...wheels],
          set: (v) => this.edit(w, path("raised"))(v || undefined),
        })}
      </td>
      <td role="cell" class="h" data-label=${t("weighin.height")}>${figure("height_mm", t(r.raised ? "weighin.height.long" : "weighin.height.scale"), 10)}</td>
      <td role="cell" class="p" data-label="±">${figure("height_within_mm", t("weighin.within"), 1)}</td>
      <td role="cell" class="m" data-label=${t("weighin.mass")}>${figure("mass_g", t("weighin.mass"), heavy ? 0.1 : 100)}${should ? html`<span class="should">${t("weighin.should", { mass: plain(write(should.mass_g, should.plus_g, figureScale("g", show))) })}</span>` : nothing}</td>
      ${
        w.scales?.length
          ? html`<td role="cell" class="n" data-label=${t("weighin.scale")}>${this.scaleOf(w, r, i)} ${r.scale ? nothing : figure("resolution_g", t("weighin.resolution"), heavy ? 0.01 : 10)}</td>`
          : html`<td role="cell" class="s" data-label=${t("weighin.resolution")}>${figure("resolution_g", t("weighin.resolution"), heavy ? 0.01 : 10)}</td>`
      }
      ${judged ? html`<td role="cell" class="o right ${off && Math.abs(off.score) > 2 ? "far" : ""}" data-label=${t("weighin.off")}>${off ? `${signed(off.by_g / s.per, 0)}\u00a0${s.unit}` : "–"}</td>` : nothing}
      <td role="cell" class="a">
        <button
          type="button"
          class="plain"
          aria-label=${t("weighin.remove", { n: i + 1 })}
          @click=${() => store.edit(t("do.weighin", { name: w.name }), (d) => editWeighIn(d, w.id, (x) => ({ ...x, readings: x.readings.toSpliced(i, 1) })))}
        >
          <span aria-hidden="true">×</span>
        </button>
      </td>
    </tr>`;
  }

  // scaleOf asks which scale a reading is of.
  private scaleOf(w: WeighIn, r: Reading, i: number): TemplateResult {
    const list = w.scales ?? [];
    const path = `readings.${i}.scale`;
    return choice({
      key: `weigh/${w.id}/${path}`,
      label: `${t("weighin.scale")}, ${t("weighin.reading").toLowerCase()} ${i + 1}`,
      hidden: true,
      value: r.scale ?? "",
      problem: problemOf({ weigh_in: w.id }, path),
      options: [...list.map((s, n) => ({ value: s.id, label: brief(scaleName(s, n)) })), { value: "", label: t("weighin.scale.none") }],
      set: (v) => {
        const to = list.find((s) => s.id === v);
        const from = list.find((s) => s.id === r.scale);
        this.change(w, (x) => ({ ...x, readings: x.readings.with(i, to ? readOn(r, to) : readOff(r, from)) }));
      },
    });
  }

  private outcomes(): TemplateResult {
    const { weighed, why } = outcome();
    if (!weighed) return html`<h3>${t("weighin.result")}</h3><p class="why wrong">${why}</p>`;
    if (!weighed.measured) {
      // What is wrong at a field is told there.
      const more = weighed.problems.filter((p) => !p.field);
      return html`<h3>${t("weighin.result")}</h3>
        <p class="quiet">${t("weighin.none")}</p>
        ${more.map((p) => html`<p class=${p.severity === "error" ? "why wrong" : "why"}>${p.message}</p>`)}`;
    }
    return html`${this.compare(weighed)} ${this.explain(weighed)} ${this.adjusted(weighed)}`;
  }

  private compare(x: Weighed): TemplateResult {
    const show = store.doc!.show;
    const measured = x.measured!;
    const { agreement } = x;
    const cell = (f: { value: number; plus: number; unit: string; key: string } | undefined) =>
      f ? number(write(f.value, f.plus, figureScale(f.unit, show, f.key))) : "–";
    return html`${subhead(t("weighin.result"), t("weighin.result.caption"))}
      <p>${measured.text}</p>
      ${agreement ? html`<p class="verdict ${agreement.agrees ? "agree" : "apart"}">${agreement.text}</p>` : nothing}
      <table class="lines weighed">
        <caption class="unseen">
          ${t("weighin.result.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${t("weighin.figure")}</span></th>
            <th scope="col" class="right doubt">${t("weighin.measured")}</th>
            <th scope="col" class="right doubt">${t("weighin.paper")}</th>
            <th scope="col" class="right doubt">${t("weighin.delta")}</th>
            <th scope="col">${t("weighin.verdict")}</th>
          </tr>
        </thead>
        <tbody>
          ${measured.figures.map((f) => {
            const c = agreement?.figures.find((y) => y.key === f.key);
            const s = figureScale(f.unit, show, f.key);
            return html`<tr class=${c && c.verdict !== "agree" ? "apart" : ""}>
              <th scope="row">${t(`figure.${f.key}` as "figure.total")} <span class="unit">${s.unit}</span></th>
              <td>${cell(f)}</td>
              <td>${cell(x.paper?.figures.find((y) => y.key === f.key))}</td>
              <td>${c ? number(write(c.delta, c.plus, s, true)) : "–"}</td>
              <td class="v">${c ? verdict(c.key, c.unit, c.verdict) : nothing}</td>
            </tr>`;
          })}
        </tbody>
      </table>
      ${x.paper ? nothing : html`<p class="fine">${t("weighin.paper.none")}</p>`} ${this.limits(x)}`;
  }

  // limits says which doubt makes most of each ±, and what to measure better.
  private limits(x: Weighed): TemplateResult | typeof nothing {
    const { limits } = x.measured!;
    if (!limits?.length) return nothing;
    const show = store.doc!.show;
    const doubts = [...new Set(limits.map((l) => l.doubt))];
    return html`<h3>${t("weighin.limits")}</h3>
      <ul class="limiting">
        ${limits.map((l) => {
          const s = figureScale(l.unit, show, l.key);
          const plus = (v: number) => write(0, v, s).plus || "0";
          return html`<li>
            ${t("weighin.limit", {
              figure: t(`figure.${l.key}` as "figure.total"),
              doubt: t(`weighin.doubt.${l.doubt}` as "weighin.doubt.steps"),
              plus: `${plus(l.plus)}\u00a0${s.unit}`,
              left: `${plus(l.else)}\u00a0${s.unit}`,
            })}
          </li>`;
        })}
      </ul>
      ${doubts.map((d) => html`<p class="fine">${t(`weighin.better.${d}` as "weighin.better.steps")}</p>`)}`;
  }

  private explain(x: Weighed): TemplateResult | typeof nothing {
    if (!x.explained || x.agreement?.agrees) return nothing;
    const s = partScale(store.doc!.show);
    const sorts = [...new Set(x.explanations.map((e) => e.what))];
    return html`<h3>${t("weighin.why")}</h3>
      <p>${x.explained}</p>
      ${sorts.map(
        (what) =>
          html`<p class="copyline">${copyTable(t(`weighin.why.${what}`))}</p>
            <table class="lines reasons">
            <caption class="unseen">
              ${t(`weighin.why.${what}`)}
            </caption>
            <thead>
              <tr>
                <th scope="col">${t(`weighin.why.${what}`)}</th>
                <th scope="col" class="right doubt">${t("weighin.why.by")}, ${s.unit}</th>
              </tr>
            </thead>
            <tbody>
              ${x.explanations
                .filter((e) => e.what === what)
                .slice(0, 5)
                .map(
                  (e) =>
                    html`<tr>
                      <th scope="row">${e.name}${e.limit ? html` <span class="unit">${t("weighin.why.limit")}</span>` : nothing}</th>
                      <td>${number(write(e.by_g, e.plus_g, s, true))}</td>
                    </tr>`,
                )}
            </tbody>
          </table>`,
      )}`;
  }

  private adjusted(x: Weighed): TemplateResult | typeof nothing {
    if (!x.adjusted.length) return nothing;
    const s = partScale(store.doc!.show);
    const id = (a: Weighed["adjusted"][number]) => `${a.list}/${a.owner}/${a.id}`;
    const taken = x.adjusted.filter((a) => !this.left.has(id(a)));
    // When something else explains it better, other weights are an aside.
    const best = !x.agreement || ["weights", "either"].includes(x.agreement.verdict);
    return html`<details class="aside-fold" ?open=${foldOpen("weighin/adjusted", best)} @toggle=${foldMoved("weighin/adjusted", best)}>
      <summary><h3>${t("weighin.adjusted")}</h3></summary>
      <p class="fine">${t(best ? "weighin.adjusted.lead" : "weighin.adjusted.lead.else")}</p>
      <table class="lines adjusted">
        <caption class="unseen">
          ${t("weighin.adjusted.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("weighin.adjusted.what")}</th>
            <th scope="col" class="right doubt">${t("weighin.adjusted.was")}, ${s.unit}</th>
            <th scope="col" class="right doubt">${t("weighin.adjusted.now")}, ${s.unit}</th>
          </tr>
        </thead>
        <tbody>
          ${(this.all ? x.adjusted : x.adjusted.slice(0, few)).map((a) => {
            const on = !this.left.has(id(a));
            return html`<tr>
              <th scope="row">
                <label class="pin"
                  ><input
                    type="checkbox"
                    aria-label=${t("weighin.adjusted.take", { name: a.name })}
                    .checked=${live(on)}
                    @change=${() => {
                      if (on) this.left.add(id(a));
                      else this.left.delete(id(a));
                      this.requestUpdate();
                    }}
                  />${a.name}</label
                >
              </th>
              <td>${number(write(a.was_g, a.was_half_width_g, s))}</td>
              <td>${number(write(a.mass_g, a.half_width_g, s))}</td>
            </tr>`;
          })}
        </tbody>
      </table>
      ${
        x.adjusted.length > few
          ? html`<p class="after">
            <button
              type="button"
              class="plain strong"
              aria-expanded=${this.all}
              @click=${() => {
                this.all = !this.all;
                this.requestUpdate();
              }}
            >
              ${this.all ? t("diff.fewer") : t("diff.all", { n: x.adjusted.length })}
            </button>
          </p>`
          : nothing
      }
      <p class="acts">
        <button
          type="button"
          class="go"
          ?disabled=${!taken.length}
          @click=${() => {
            store.edit(t("do.adopt"), (d) => adopt(d, taken));
            this.left.clear();
            store.tell(t("weighin.adopted"), { label: t("undo"), run: () => store.undo() });
          }}
        >
          ${count(taken.length, "weighin.adopt.one", "weighin.adopt.many")}
        </button>
      </p>
    </details>`;
  }

  // how tells how to weigh: open until there is something to show for it.
  private how(w: WeighIn | undefined): TemplateResult {
    const drawn = this.draw(w);
    const done = w !== undefined && outcome().weighed?.measured !== undefined;
    return html`<details class="aside-fold how" ?open=${foldOpen("weighin/how", !done)} @toggle=${foldMoved("weighin/how", !done)}>
      <summary><h3>${t("weighin.how")}</h3></summary>
      ${
        drawn
          ? html`<div class="drawing" role="img" aria-label=${`${t("weighin.how.label")}. ${drawn.querySelector("desc")?.textContent ?? ""}`}>${drawn}</div>`
          : html`<ol class="steps">
            ${(["1", "2", "3", "4"] as const).map((n) => html`<li>${t(`weighin.how.${n}`)}</li>`)}
          </ol>`
      }
    </details>`;
  }

  // draw shows how to weigh, as the core draws it: with this bike, in a size at
  // which its letters are those of the page. Null when no bike can be drawn.
  private draw(w: WeighIn | undefined): Element | null {
    const { show } = store.doc!;
    const dark = document.documentElement.dataset.theme === "dark";
    const size = narrow.matches ? { width: 363, height: 720 } : middling.matches ? { width: 800, height: 560 } : { width: 1180, height: 560 };
    const view: Drawing = { ...size, dark, units: { mass: show.mass, length: show.length } };
    const key = JSON.stringify([w?.id, w?.build, w?.readings, view, core.state, store.figures(w?.build ?? store.activeID)?.geometry]);
    if (this.drawing.of !== key) {
      let text = "";
      try {
        text = core.weighInDrawing(store.text, w?.id ?? "", view);
      } catch (e) {
        if (!(e instanceof CoreError)) throw e;
      }
      this.drawing = { of: key, svg: svgElement(text) };
    }
    return this.drawing.svg;
  }
}

customElements.define("sy-weighin", WeighInSection);

function scaleName(s: Scale, i: number): string {
  return s.name || t("weighin.scale.number", { n: i + 1 });
}

function verdict(key: string, unit: string, v: string): string {
  if (v === "agree") return t("weighin.verdict.agree");
  for (const k of [`verdict.${key}.${v}`, `verdict.${unit}.${v}`, `weighin.verdict.${v}`]) if (has(k)) return t(k);
  return word("verdict", v);
}
