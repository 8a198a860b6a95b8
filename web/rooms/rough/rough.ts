// What a rough road does: how the wheels follow it, what the rider feels, and what
// makes two bikes differ.

import { html, nothing, type TemplateResult } from "lit";
import { answer, further, ridden, sided } from "./answer.ts";
import { frequencies, overFrequency, overSpeed, pickable, speeds } from "./charts.ts";
import { ask } from "./edit.ts";
import { gains } from "./gains.ts";
import { notes } from "./marks.ts";
import { modes } from "./modes.ts";
import { over } from "./over.ts";
import { picked } from "./picked.ts";
import { settings } from "./settings.ts";
import type { Answered } from "../../elements/answer.ts";
import { headed, roomScale } from "../../elements/comparison.ts";
import { choice, numberInput, problemAt } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { foldMoved, foldOpen, Section } from "../../elements/section.ts";
import { letters } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import { roadClassValues, roughRoadDefaults, tyreContactValues, type RoadAnswer, type RoadCurves, type RoughRoad as Asked } from "../../model/types.ts";
import { write } from "../../model/units.ts";

export function gist(): Gist {
  return { text: t("rough.gist") };
}

type Part = "settings" | "curves" | "tables" | "over";

const usual = (part: Part): boolean => part === "curves";
const isOpen = (part: Part): boolean => foldOpen(`rough/${part}`, usual(part));

class Rough extends Section {
  protected readonly fold = "rough";

  protected body(): TemplateResult {
    const { value, why, stale } = answer.seen();
    if (!value) return html`<p class="quiet">${why || t("rooms.working")}</p>`;
    const two = value.sides.length > 1;
    const told = notes(sided(value.sides).map(({ letter, side }) => ({ letter, figures: side.figures, marks: side.marks })));
    // What takes longer is asked once somebody looks.
    const more = two || isOpen("curves") || isOpen("over") ? further.seen() : null;
    return html`<div class=${stale ? "stale" : ""} aria-busy=${stale}>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${value.caution}</p>
      ${this.road(value)} ${value.words ? html`<p class="verdictwords">${value.words}</p>` : nothing}
      ${value.sides.map((s, i) => html`<p class="sidewords">${two ? badge(letters[i]!) : nothing} <strong>${s.name}.</strong> ${s.words ?? s.why}</p>`)}
      ${value.sides.flatMap((s, i) => s.problems.map((p) => html`<p class="alarm">${two ? `${letters[i]}: ` : ""}${p.message}</p>`))}
      ${this.piece("settings", t("rough.settings"), () => settings(value))}
      <div class="roomsheet">
        <div>${headed(t("rough.figures"), told.sides, value.difference)} ${told.list}</div>
        <div>${this.causes(value)} ${more?.value ? gains(more.value) : nothing} ${modes(value)}</div>
      </div>
      ${this.piece("curves", t("rough.curves"), () => this.pending(more, (m) => this.curves(m)))}
      ${this.piece("over", t("rough.over"), () => this.pending(more, over))}
      <p class="fine">${value.left_out}</p>
    </div>`;
  }

  // piece is a part of the room that is made only while it is open.
  private piece(name: Part, heading: string, body: () => TemplateResult | typeof nothing): TemplateResult {
    const on = isOpen(name);
    return html`<details class="aside-fold rough-${name}" ?open=${on} @toggle=${foldMoved(`rough/${name}`, usual(name), () => this.requestUpdate())}>
      <summary><h3>${heading}</h3></summary>
      ${on ? body() : nothing}
    </details>`;
  }

  private pending(more: Answered<RoadCurves> | null, body: (m: RoadCurves) => TemplateResult): TemplateResult {
    if (!more?.value) return html`<p class="quiet">${more?.why || t("rooms.working")}</p>`;
    return html`<div class=${more.stale ? "stale" : ""} aria-busy=${more.stale}>${body(more.value)}</div>`;
  }

  private road(value: RoadAnswer): TemplateResult {
    const { road } = value;
    const now = store.doc!.show.rough;
    const own = typeof now?.roughness_cm3 === "number";
    const roughness = problemAt("show.rough.roughness_cm3", "");
    return html`<div class="specs narrowspecs">
        ${choice({
          key: "show/rough/class",
          label: t("rough.road"),
          value: own ? "own" : road.class,
          options: [...roadClassValues, "own" as const].map((c) => ({ value: c, label: t(`rough.class.${c}`) })),
          problem: problemAt("show.rough.class", ""),
          set: (v) => ask(v === "own" ? { roughness_cm3: road.roughness_cm3 } : { class: v as (typeof roadClassValues)[number], roughness_cm3: undefined }),
        })}
        ${
          own
            ? numberInput({
                key: "show/rough/roughness",
                label: t("rough.roughness"),
                value: now.roughness_cm3!,
                step: 10,
                problem: roughness,
                set: (v) => ask({ roughness_cm3: v }),
              })
            : nothing
        }
        ${numberInput({
          key: "show/rough/speed",
          label: t("rough.speed"),
          value: now?.speed_km_h ?? Math.round(road.speed_m_s * 36) / 10,
          step: 1,
          problem: problemAt("show.rough.speed_km_h", ""),
          set: (v) => ask({ speed_km_h: v }),
        })}
        ${choice({
          key: "show/rough/rider",
          label: t("rough.rider"),
          value: now?.rider ?? "",
          options: (["", "seated", "standing"] as const).map((r) => ({ value: r, label: t(`rough.rider.${r || "posture"}`) })),
          problem: problemAt("show.rough.rider", ""),
          set: (v) => ask({ rider: (v || undefined) as Asked["rider"] }),
        })}
        ${choice({
          key: "show/rough/contact",
          label: t("rough.contact"),
          value: now?.contact ?? roughRoadDefaults.contact,
          options: tyreContactValues.map((c) => ({ value: c, label: t(`rough.contact.${c}`) })),
          problem: problemAt("show.rough.contact", ""),
          set: (v) => ask({ contact: v as Asked["contact"] }),
        })}
      </div>
      <p class="quiet">${road.label}. ${ridden(value)}</p>`;
  }

  private causes(value: RoadAnswer): TemplateResult | typeof nothing {
    const c = value.difference.find((d) => d.key === "tyre_load_rms_rear" && d.causes?.length);
    if (!c?.causes) return nothing;
    const s = { ...roomScale(c.unit), decimals: 2 };
    return html`<h3>${t("rough.causes", { figure: c.label })}</h3>
      <table class="lines">
        <tbody>
          ${c.causes.map(
            (x) =>
              html`<tr>
                <th scope="row">${x.label}</th>
                <td>${number(write(x.delta, 0, s, true))} ${s.unit}</td>
              </tr>`,
          )}
        </tbody>
      </table>`;
  }

  private curves(value: RoadCurves): TemplateResult {
    const list = pickable(value);
    const { key } = list.find((f) => f.key === picked.key) ?? list[0] ?? picked;
    const wide = narrow.matches ? 350 : 460;
    if (!list.length) return html`${value.sides.map((s) => html`<p class="alarm">${s.why}</p>`)}`;
    return html`<div class="specs narrowspecs">
        ${choice({
          key: "rough/picked",
          label: t("rough.pick"),
          value: key,
          options: list.map((f) => ({ value: f.key, label: f.label })),
          set: (v) => {
            picked.key = v;
            store.touch();
          },
        })}
      </div>
      ${overSpeed(value, key, wide)}
      <div class="roomsheet">
        <div>${overFrequency("response", value, key, wide)}</div>
        <div>${overFrequency("spectra", value, key, wide)}</div>
      </div>
      ${this.piece("tables", t("rough.tables"), () => html`${speeds(value, key)} ${frequencies("response", value, key)} ${frequencies("spectra", value, key)}`)}`;
  }
}

customElements.define("sy-rough", Rough);
