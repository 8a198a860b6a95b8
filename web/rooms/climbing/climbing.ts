// What a climb and a day cost: speed, gear, time, and the difference split into
// weight and losses.

import { html, nothing, type TemplateResult } from "lit";
import { answer, duration } from "./answer.ts";
import { comparison, measureFirst, unitText } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { curves } from "../../elements/curves.ts";
import { numberInput, problemAt } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { Section } from "../../elements/section.ts";
import { signs } from "../../elements/verdict.ts";
import { editRider, findLoad } from "../../app/loadEdit.ts";
import { letters } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { t, word } from "../../text/index.ts";
import type { ClimbAnswer as Climb, ClimbDifference, ClimbSide, Known, Road } from "../../model/types.ts";
import { plain, plainScale, trim, write } from "../../model/units.ts";

export function gist(): Gist {
  return { text: t("climbing.gist") };
}

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
      ${sides.map((s) => html`<td>${s.ok ? cell(s) : "–"}</td>`)}
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
              ${this.row(t("climbing.point"), sides, (s) => (s.worth ? `${trim(s.worth.point_s, 1)} s` : "–"))}`
              : nothing
          }
        </tbody>
      </table>
      ${value.difference ? this.difference(value.difference) : nothing}
      ${
        value.difference
          ? comparison(
              t("climbing.difference"),
              sides.map((_, i) => ({ letter: letters[i]!, figures: value.difference!.figures.map((c) => ({ ...c, value: i ? c.b : c.a, plus: 0 })) })),
              value.difference.figures,
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

  private day(value: Climb): TemplateResult | typeof nothing {
    const { day, sides } = value;
    if (!day) return html`<h3>${t("climbing.day")}</h3><p class="quiet">${t("climbing.noday")}</p>`;
    const two = sides.length > 1;
    const km = plainScale("km", 1);
    return html`${subhead(html`${t("climbing.day")}: ${day.name}`, t("climbing.day"))}
      <p class="quiet">${t("climbing.dayis", { length: plain(write(day.length_m / 1000, 0, km)), ascent: `${trim(day.ascent_m, 0)} m` })}</p>
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

  // The few things that one says of oneself and of the road; what is not said is
  // typical, with the figure that the core reckons with.
  private inputs(value: Climb): TemplateResult {
    const d = store.doc!;
    const used = value.sides.find((s) => s.ok)?.inputs ?? [];
    const load = value.sides.find((s) => s.load)?.load;
    const rider = load ? findLoad(d, load)?.rider : undefined;
    const input = (key: string) => used.find((i) => i.key === key);
    const known = (old: Known | undefined, v: number, half: number): Known => ({ half_width: half, basis: "guessed", ...old, value: v });
    const road = (key: keyof Road & ("slope_percent" | "wind_m_s"), from: string) => {
      const i = input(from);
      return i
        ? numberInput({
            key: `show/road/${key}`,
            label: `${i.label}, ${unitText(i.unit)}, ±${trim(i.half_width, 2)}, ${i.typical ? t("climbing.typical") : word("basis", i.basis)}`,
            value: i.value,
            step: 1,
            problem: problemAt(`show.road.${key}`, ""),
            set: (v) =>
              store.edit(
                t("do.road"),
                (doc) => ({ ...doc, show: { ...doc.show, road: { ...doc.show.road, [key]: known(doc.show.road?.[key], v, i.half_width) } } }),
                `show/road/${key}`,
              ),
          })
        : nothing;
    };
    const effort = (key: "power_w" | "cadence_rpm", from: string) => {
      const i = input(from);
      return i && rider
        ? numberInput({
            key: `${rider}/effort/${key}`,
            label: `${i.label}, ${unitText(i.unit)}, ±${trim(i.half_width, 2)}, ${i.typical ? t("climbing.typical") : word("basis", i.basis)}`,
            value: i.value,
            step: 1,
            problem: problemAt(`effort.${key}`, rider),
            set: (v) =>
              store.edit(
                t("do.effort"),
                (doc) => editRider(doc, rider, (r) => ({ ...r, effort: { ...r.effort, [key]: known(r.effort?.[key], v, i.half_width) } })),
                `${rider}/effort/${key}`,
              ),
          })
        : nothing;
    };
    return html`<div class="specs narrowspecs">${effort("power_w", "power")} ${effort("cadence_rpm", "cadence")} ${road("slope_percent", "slope")} ${road("wind_m_s", "wind")}</div>
      <details class="aside-fold">
        <summary><h3>${t("climbing.inputs")}</h3></summary>
        <table class="lines">
          <tbody>
            ${used.map(
              (i) =>
                html`<tr>
                  <th scope="row">${i.label}</th>
                  <td>${number(write(i.value, i.half_width, plainScale(unitText(i.unit), 3)), true)}</td>
                  <td class="what">${i.typical ? t("climbing.typical") : word("basis", i.basis)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </details>`;
  }
}

customElements.define("sy-climbing", Climbing);
