// What a climb and a day cost: speed, gear, time, and the difference split into
// weight and losses.

import { html, nothing, type TemplateResult } from "lit";
import "./days.ts";
import { answer, duration } from "./answer.ts";
import { ownInputs, same } from "./same.ts";
import { uses } from "./uses.ts";
import { comparison, measureFirst } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { curves } from "../../elements/curves.ts";
import { numberInput } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import { inputLine } from "../../elements/inputs.ts";
import { reckoned, type Reckoned } from "../../elements/known.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { foldMoved, foldOpen, Section } from "../../elements/section.ts";
import { signs } from "../../elements/verdict.ts";
import { letters } from "../../app/sides.ts";
import { t, word } from "../../text/index.ts";
import type { ClimbAnswer as Climb, ClimbDay, ClimbDifference, ClimbSide, RideInput } from "../../model/types.ts";
import { plain, plainScale, trim, write } from "../../model/units.ts";

export function gist(): Gist {
  return { text: t("climbing.gist") };
}

// few are the inputs that most people want to say.
const few = new Set(["power", "cadence", "slope", "climb", "wind"]);

class Climbing extends Section {
  protected readonly fold = "climbing";

  protected body(): TemplateResult {
    const { value, why, stale } = answer.seen();
    if (!value) return html`<p class="quiet">${why || t("rooms.working")}</p>`;
    return html`<div class=${stale ? "stale" : ""} aria-busy=${stale}>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${value.caution}</p>
      ${value.words ? html`<p class="verdictwords">${value.words}</p>` : nothing}
      ${value.sides.map((s, i) =>
        s.words || s.why
          ? html`<p class="sidewords">${value.sides.length > 1 ? badge(letters[i]!) : nothing} <strong>${s.name}.</strong> ${s.words ?? s.why}</p>`
          : nothing,
      )}
      ${this.inputs(value)}
      <div class="roomsheet">
        <div>${this.climb(value)}</div>
        <div>${this.day(value)}</div>
      </div>
    </div>`;
  }

  private row(label: string, sides: readonly ClimbSide[], cell: (s: ClimbSide) => TemplateResult | string): TemplateResult {
    return html`<tr>
      <th scope="row">${label}</th>
      ${sides.map((s) => html`<td class="right">${s.ok ? cell(s) : "–"}</td>`)}
    </tr>`;
  }

  private climb(value: Climb): TemplateResult {
    const { sides } = value;
    const two = sides.length > 1;
    const kmh = plainScale("km/h", 1);
    const percent = plainScale(t("unit.percent"), 1);
    const time = (s: ClimbSide) => html`${duration(s.time_s)} <span class="plus">±${duration(s.time_plus_s)}</span>`;
    const some = (v: number | undefined, plus: number | undefined) => (v === undefined ? "–" : plain(write(v, plus ?? 0, percent)));
    return html`${subhead(t("climbing.climb"), t("climbing.climb"))}
      <table class="lines compared">
        <caption class="unseen">
          ${t("climbing.climb")}
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${t("rooms.figure")}</span></th>
            ${sides.map((_, i) => html`<th scope="col" class="right">${two ? badge(letters[i]!) : nothing}<span class="unseen">${letters[i]}</span></th>`)}
          </tr>
        </thead>
        <tbody>
          ${this.row(t("climbing.time"), sides, time)}
          ${this.row(t("climbing.speed"), sides, (s) => html`${number(write(s.speed_m_s * 3.6, s.speed_plus * 3.6, kmh), true)}`)}
          ${this.row(t("climbing.gear"), sides, (s) => (s.gear ? t("climbing.ingear", { gear: s.gear, rpm: trim(s.cadence_rpm, 0) }) : t("climbing.walks")))}
          ${this.row(t("climbing.steepest"), sides, (s) => some(s.steepest_percent, s.steepest_plus))}
          ${this.row(t("climbing.lift"), sides, (s) => some(s.lift_percent, s.lift_plus))} ${this.row(t("climbing.slip"), sides, (s) => some(s.slip_percent, s.slip_plus))}
          ${
            sides.some((s) => s.worth)
              ? html`${this.row(t("climbing.kilogram"), sides, (s) => (s.worth ? `${trim(s.worth.kilogram_s, 1)} s` : "–"))}
              ${this.row(t("climbing.point"), sides, (s) => (s.worth ? `${trim(s.worth.point_s, 1)} s` : "–"))}
              ${this.row(t("climbing.minute.kg"), sides, (s) => (s.worth ? `${trim(s.worth.kilograms_per_minute, 2)} kg` : "–"))}
              ${this.row(t("climbing.minute.points"), sides, (s) => (s.worth ? t("climbing.points", { n: trim(s.worth.points_per_minute, 2) }) : "–"))}`
              : nothing
          }
        </tbody>
      </table>
      ${value.difference ? this.difference(value.difference) : nothing}
      ${
        value.difference
          ? comparison(
              t("climbing.difference"),
              sides.map((side, i) => ({ letter: letters[i]!, figures: side.figures })),
              value.difference.figures,
              (key) => key !== "time",
            )
          : nothing
      }`;
  }

  private difference(d: ClimbDifference): TemplateResult {
    const line = (label: string, s: number, plus: number) =>
      html`<tr>
        <th scope="row">${label}</th>
        <td class="right">${duration(s, true)} <span class="plus">±${duration(plus)}</span></td>
      </tr>`;
    return html`<p class="verdictwords"><span aria-hidden="true">${signs[d.verdict]}</span> ${d.words}</p>
      <table class="lines compared">
        <caption class="unseen">
          ${t("climbing.split")}
        </caption>
        <tbody>
          ${line(t("climbing.weight"), d.mass_s, d.mass_plus_s)} ${line(t("climbing.losses"), d.loss_s, d.loss_plus_s)} ${line(t("climbing.together"), d.time_s, d.time_plus_s)}
        </tbody>
      </table>
      ${measureFirst(d.first)}`;
  }

  // day keeps the editor where it is, whatever there is to tell, so that what is open
  // in it stays so.
  private day(value: Climb): TemplateResult {
    const { day } = value;
    const rides = day && day.length_m > 0 ? day : null;
    return html`${rides ? this.ridden(value, rides) : html`<h3>${t("climbing.day")}</h3><p class="quiet">${t(day ? "climbing.nostretch" : "climbing.noday")}</p>`}
      <sy-day .value=${value}></sy-day>
      ${rides ? uses(rides.sides) : nothing}`;
  }

  private ridden({ sides }: Climb, day: ClimbDay): TemplateResult {
    const two = sides.length > 1;
    return html`${subhead(html`<span>${t("climbing.day")}: ${day.name}</span>`, t("climbing.day"))}
      <p class="quiet">${t("climbing.dayis", { length: `${trim(day.length_m / 1000, 1)} km`, ascent: `${trim(day.ascent_m, 0)} m` })}</p>
      ${curves({
        label: t("climbing.profile"),
        wide: narrow.matches ? 350 : 460,
        high: 150,
        x: "km",
        y: "m",
        curves: [{ name: "", tone: "", dashed: false, points: [{ x: 0, y: 0 }, ...day.profile.map(([x, y]) => ({ x: x! / 1000, y: y! }))] }],
      })}
      <table class="lines compared">
        <caption class="unseen">
          ${t("climbing.day")}
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${t("rooms.figure")}</span></th>
            ${day.sides.map((_, i) => html`<th scope="col" class="right">${two ? badge(letters[i]!) : nothing}<span class="unseen">${letters[i]}</span></th>`)}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">${t("climbing.time")}</th>
            ${day.sides.map((s) => html`<td class="right">${s.ok ? html`${duration(s.time_s)} <span class="plus">±${duration(s.time_plus_s)}</span>` : "–"}</td>`)}
          </tr>
          <tr>
            <th scope="row">${t("climbing.energy")}</th>
            ${day.sides.map((s) => html`<td class="right">${s.ok ? `${trim(s.energy.pedals_kj, 0)} kJ` : "–"}</td>`)}
          </tr>
          <tr>
            <th scope="row">${t("climbing.lost")}</th>
            ${day.sides.map((s) => html`<td class="right">${s.ok ? `${trim(s.energy.drive_kj, 0)} kJ` : "–"}</td>`)}
          </tr>
          <tr>
            <th scope="row">${t("climbing.walked")}</th>
            ${day.sides.map((s) => html`<td class="right">${s.ok ? `${trim(s.walked_m, 0)} m` : "–"}</td>`)}
          </tr>
        </tbody>
      </table>
      ${day.difference ? this.difference(day.difference) : nothing}
      ${day.sides.map((s, i) => (s.words ? html`<p class="fine">${two ? badge(letters[i]!) : nothing} ${s.words}</p>` : nothing))}`;
  }

  // The few things that one says of oneself and of the road, and below them all
  // others; what is not said is typical, with the figure that the core reckons with.
  private inputs(value: Climb): TemplateResult {
    const sides = value.sides.filter((s) => s.ok);
    const [first, second] = sides;
    if (!first) return html``;
    const problems = sides.flatMap((s) => s.problems);
    const line = (i: RideInput): Reckoned => {
      const out = inputLine(i, "ride", problems);
      const other = second?.inputs.find((x) => same(i, x));
      // What one says for both may be typical for each in its own way, as on its tyre.
      const apart = out.typical && other && (other.value !== i.value || other.half_width !== i.half_width);
      return apart ? { ...out, note: t("climbing.inputs.other", { value: trim(other.value, 4), plus: trim(other.half_width, 4) }) } : out;
    };
    const lines = first.inputs.map(line);
    const others = second ? ownInputs(first, second) : [];
    const quick = first.inputs.flatMap((i, at) => {
      const r = lines[at]!;
      return few.has(i.key) && r.set ? [this.quick(r)] : [];
    });
    return html`<div class="specs narrowspecs">${quick}</div>
      ${first.inputs.some((i) => i.key === "power" && !i.field) ? html`<p class="quiet">${t("climbing.norider")}</p>` : nothing}
      <details class="aside-fold" ?open=${foldOpen("climbing/inputs")} @toggle=${foldMoved("climbing/inputs")}>
        <summary><h3>${t("climbing.inputs")}</h3></summary>
        ${reckoned(t("climbing.inputs"), lines)}
        ${
          others.length
            ? html`<h3><span>${badge(letters[value.sides.indexOf(second!)]!)} ${second!.name}</span></h3>
              ${reckoned(
                `${t("climbing.inputs")}: ${second!.name}`,
                others.map((i) => inputLine(i, "ride", problems)),
              )}`
            : nothing
        }
      </details>`;
  }

  private quick(r: Reckoned): TemplateResult {
    const from = r.typical ? (r.from ?? t("known.typical")) : r.basis ? word("basis", r.basis).toLowerCase() : "";
    return numberInput({
      key: `quick/${r.key}`,
      label: [r.label, r.bare || r.half === 0 ? "" : `±${trim(r.half, 2)}`, from].filter(Boolean).join(", "),
      unit: r.unit,
      value: r.value,
      step: r.bare ? 100 : 1,
      problem: r.problem,
      set: (value) => r.set?.({ value }),
    });
  }
}

customElements.define("sy-climbing", Climbing);
