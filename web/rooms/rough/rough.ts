// What a rough road does: how the wheels follow it, what the rider feels, and what
// makes two bikes differ.

import { html, nothing, type TemplateResult } from "lit";
import { answer, figuresOf } from "./answer.ts";
import { headed, unitText } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { curves, type Curve } from "../../elements/curves.ts";
import { choice, numberInput, problemAt } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { Section } from "../../elements/section.ts";
import { letters } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { RoadAnswer, RoughRoad as Asked } from "../../model/types.ts";
import { plainScale, write } from "../../model/units.ts";

const classes = ["A", "B", "C", "D", "E"] as const;

export function gist(): Gist {
  return { text: t("rough.gist") };
}

function ask(change: Partial<Asked>): void {
  store.edit(t("do.rough"), (d) => ({ ...d, show: { ...d.show, rough: { ...d.show.rough, ...change } } }), "show/rough");
}

class Rough extends Section {
  protected readonly fold = "rough";

  protected body(): TemplateResult {
    const { value, why, stale } = answer.seen();
    if (!value) return html`<p class="quiet">${why || t("rooms.working")}</p>`;
    const two = value.sides.length > 1;
    return html`<div class=${stale ? "stale" : ""} aria-busy=${stale}>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${value.caution}</p>
      ${this.road(value)} ${value.words ? html`<p class="verdictwords">${value.words}</p>` : nothing}
      ${value.sides.map((s, i) => html`<p class="sidewords">${two ? badge(letters[i]!) : nothing} <strong>${s.name}.</strong> ${s.words ?? s.why}</p>`)}
      ${value.sides.flatMap((s, i) => s.marks.map((m) => html`<p class="quiet">${two ? `${letters[i]}: ` : ""}${m.words}</p>`))}
      ${value.sides.flatMap((s, i) => s.problems.map((p) => html`<p class="alarm">${two ? `${letters[i]}: ` : ""}${p.message}</p>`))}
      <div class="roomsheet">
        <div>
          ${headed(t("rough.figures"), figuresOf(value), value.difference)} ${this.causes(value)}
          <p class="fine">${value.left_out}</p>
        </div>
        <div>${this.chart(value)} ${this.modes(value)}</div>
      </div>
      <details class="aside-fold">
        <summary><h3>${t("rough.settings")}</h3></summary>
        ${value.sides.map(
          (s, i) => html`<table class="lines">
            <caption>
              ${two ? badge(letters[i]!) : nothing} ${s.name}
            </caption>
            <tbody>
              ${s.settings.map(
                (x) =>
                  html`<tr>
                    <th scope="row">${x.label}</th>
                    <td>${number(write(x.value, x.plus, plainScale(unitText(x.unit), 3)), true)}</td>
                    <td class="what">${x.typical ? t("climbing.typical") : ""}</td>
                  </tr>`,
              )}
            </tbody>
          </table>`,
        )}
      </details>
    </div>`;
  }

  private road(value: RoadAnswer): TemplateResult {
    const { road } = value;
    return html`<div class="specs narrowspecs">
        ${choice({
          key: "show/rough/class",
          label: t("rough.road"),
          value: road.class,
          options: classes.map((c) => ({ value: c, label: t(`rough.class.${c}`) })),
          set: (v) => ask({ class: v as (typeof classes)[number] }),
        })}
        ${numberInput({
          key: "show/rough/speed",
          label: t("rough.speed"),
          value: Math.round(road.speed_m_s * 36) / 10,
          step: 1,
          problem: problemAt("show.rough.speed_km_h", ""),
          set: (v) => ask({ speed_km_h: v }),
        })}
        ${choice({
          key: "show/rough/rider",
          label: t("rough.rider"),
          value: store.doc!.show.rough?.rider ?? "",
          options: (["", "seated", "standing"] as const).map((r) => ({ value: r, label: t(`rough.rider.${r || "posture"}`) })),
          set: (v) => ask({ rider: v as Asked["rider"] & string }),
        })}
      </div>
      <p class="quiet">${road.label}</p>`;
  }

  private causes(value: RoadAnswer): TemplateResult | typeof nothing {
    const c = value.difference.find((d) => d.key === "tyre_load_rms_rear" && d.causes?.length);
    if (!c?.causes) return nothing;
    const s = plainScale(unitText(c.unit), 2);
    return html`<h3>${t("rough.causes", { name: c.label })}</h3>
      <table class="lines">
        <tbody>
          ${c.causes.slice(0, 6).map(
            (x) =>
              html`<tr>
                <th scope="row">${x.label}</th>
                <td>${number(write(x.delta, 0, s, true), true)}</td>
              </tr>`,
          )}
        </tbody>
      </table>`;
  }

  private chart(value: RoadAnswer): TemplateResult {
    const key = "tyre_load_rms_rear";
    const drawn = value.sides.flatMap((s, i): Curve[] => {
      const f = s.curves.figures.find((f) => f.key === key);
      return f
        ? [
            {
              name: letters[i] ?? "",
              tone: "rear",
              dashed: i === 1,
              points: s.curves.speeds_m_s.map((v, k) => ({ x: v * 3.6, y: f.values[k] ?? 0, plus: f.plus[k] ?? 0 })),
            },
          ]
        : [];
    });
    const f = value.sides[0]?.curves.figures.find((f) => f.key === key);
    return html`<h3>${f?.label ?? ""}</h3>
      ${curves({ label: t("rough.chart"), wide: narrow.matches ? 350 : 460, high: 220, x: "km/h", y: unitText(f?.unit ?? ""), curves: drawn })}`;
  }

  private modes(value: RoadAnswer): TemplateResult {
    const two = value.sides.length > 1;
    const hz = plainScale("Hz", 1);
    return html`${subhead(t("rough.modes"), t("rough.modes"))}
      <table class="lines compared">
        <caption class="unseen">
          ${t("rough.modes")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("rough.mode")}</th>
            <th scope="col" class="right doubt">Hz</th>
            <th scope="col" class="right doubt">${t("rough.damping")}</th>
          </tr>
        </thead>
        <tbody>
          ${value.sides.flatMap((s, i) =>
            s.modes.map(
              (m) =>
                html`<tr>
                  <th scope="row">${two ? badge(letters[i]!) : nothing} ${m.label}<span class="below">${m.words}</span></th>
                  <td>${number(write(m.frequency_hz, m.frequency_hz_plus, hz))}</td>
                  <td>${number(write(m.damping, m.damping_plus, plainScale("", 2)))}</td>
                </tr>`,
            ),
          )}
        </tbody>
      </table>`;
  }
}

customElements.define("sy-rough", Rough);
