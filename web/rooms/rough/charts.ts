// Charts of a rough road: one figure over speed, its response and its spectrum over
// frequency, for the eye and as tables.

import { html, nothing, type TemplateResult } from "lit";
import { sided, type Drawn } from "./answer.ts";
import { roomScale, unitText } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { curves, type Curve } from "../../elements/curves.ts";
import { badge, number } from "../../elements/figure.ts";
import { t } from "../../text/index.ts";
import type { RoadCurves, RoadFigure } from "../../model/types.ts";
import { trim, write } from "../../model/units.ts";

const tone = (key: string): Curve["tone"] => (key.includes("front") ? "front" : key.includes("rear") ? "rear" : "");
const kmh = (v: number) => Math.round(v * 36) / 10;

// pickable are the figures that can be drawn.
export function pickable(value: RoadCurves): { key: string; label: string }[] {
  const all = value.sides.flatMap((s) => s.curves.figures.map((f) => [f.key, { key: f.key, label: f.label }] as const));
  return [...new Map(all).values()];
}

interface Column {
  curve: Curve;
  letter: ReturnType<typeof sided>[number]["letter"];
}

const drawnAs = (letter: Column["letter"], key: string, points: Curve["points"]): Column => ({
  letter,
  curve: { name: letter, tone: tone(key), dashed: letter === "B", points },
});

// overSpeed is a figure of both sides over speed, with their bands.
export function overSpeed(value: RoadCurves, key: string, wide: number): TemplateResult | typeof nothing {
  const of = (s: Drawn) => s.curves.figures.find((f) => f.key === key);
  const f = value.sides.map(of).find(Boolean);
  if (!f) return nothing;
  const scale = roomScale(f.unit);
  const list = sided(value.sides).flatMap(({ letter, side }) => {
    const f = of(side);
    return f
      ? [
          drawnAs(
            letter,
            key,
            side.curves.speeds_m_s.map((v, k) => ({ x: kmh(v), y: (f.values[k] ?? 0) / scale.per, plus: (f.plus[k] ?? 0) / scale.per })),
          ),
        ]
      : [];
  });
  return curves({
    label: t("rough.chart.speed", { figure: f.label }),
    wide,
    high: 220,
    x: "km/h",
    y: scale.unit,
    curves: list.map((c) => c.curve),
  });
}

// speeds tells the same as a table, with the difference.
export function speeds(value: RoadCurves, key: string): TemplateResult | typeof nothing {
  const of = (s: Drawn): RoadFigure | undefined => s.curves.figures.find((f) => f.key === key);
  const sides = sided(value.sides).filter(({ side }) => of(side));
  const f = sides[0] && of(sides[0].side);
  if (!f || !sides[0]) return nothing;
  const scale = roomScale(f.unit);
  const change = value.difference.find((d) => d.key === key);
  const name = t("rough.chart.speed", { figure: f.label });
  return html`${subhead(name, name)}
    <table class="lines compared">
      <caption class="unseen">
        ${name}
      </caption>
      <thead>
        <tr>
          <th scope="col">km/h</th>
          ${sides.map(({ letter }) => html`<th scope="col" class="right doubt">${badge(letter)}<span class="unseen">${letter}</span> ${scale.unit}</th>`)}
          ${change ? html`<th scope="col" class="right doubt">${t("rooms.difference")}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${sides[0].side.curves.speeds_m_s.map(
          (v, k) =>
            html`<tr>
              <th scope="row">${trim(kmh(v), 1)}</th>
              ${sides.map(({ side }) => html`<td>${number(write(of(side)!.values[k] ?? 0, of(side)!.plus[k] ?? 0, scale))}</td>`)}
              ${change ? html`<td>${number(write(change.values[k] ?? 0, change.plus[k] ?? 0, scale, true))}</td>` : nothing}
            </tr>`,
        )}
      </tbody>
    </table>`;
}

// Over frequency: what the bike makes of each metre of the road, and where in the
// spectrum its figure comes from.
type Spectral = "response" | "spectra";

function spectralUnit(which: Spectral, unit: string): string {
  const one = unit === "share" ? "" : unitText(unit);
  return which === "response" ? (one ? `${one} / m` : "1 / m") : one ? `(${one})² / Hz` : "1 / Hz";
}

const spectral = (which: Spectral, value: RoadCurves, key: string) =>
  sided(value.sides).flatMap(({ letter, side }) => {
    const f = side[which].figures.find((f) => f.key === key);
    return f ? [{ letter, f, hertz: side[which].frequencies_hz }] : [];
  });

export function overFrequency(which: Spectral, value: RoadCurves, key: string, wide: number): TemplateResult | typeof nothing {
  const list = spectral(which, value, key);
  if (!list[0]) return nothing;
  const { f } = list[0];
  const name = t(`rough.chart.${which}`, { figure: f.label });
  return html`<h4>${name}</h4>
    ${curves({
      label: name,
      wide,
      high: 180,
      x: "Hz",
      y: spectralUnit(which, f.unit),
      octaves: true,
      curves: list.map(
        ({ letter, f, hertz }) =>
          drawnAs(
            letter,
            key,
            hertz.map((x, k) => ({ x, y: f.values[k] ?? 0 })),
          ).curve,
      ),
    })}`;
}

export function frequencies(which: Spectral, value: RoadCurves, key: string): TemplateResult | typeof nothing {
  const list = spectral(which, value, key);
  if (!list[0]) return nothing;
  const name = t(`rough.chart.${which}`, { figure: list[0].f.label });
  return html`${subhead(name, name)}
    <table class="lines compared">
      <caption class="unseen">
        ${name}
      </caption>
      <thead>
        <tr>
          <th scope="col">Hz</th>
          ${list.map(({ letter, f }) => html`<th scope="col" class="right">${badge(letter)}<span class="unseen">${letter}</span> ${spectralUnit(which, f.unit)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${list[0].hertz.map(
          (x, k) =>
            html`<tr>
              <th scope="row">${trim(x, 2)}</th>
              ${list.map(({ f }) => html`<td class="right">${precise(f.values[k] ?? 0)}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>`;
}

// precise writes three digits of a figure that spans powers of ten.
function precise(v: number): string {
  const digits = v === 0 ? 0 : 2 - Math.floor(Math.log10(Math.abs(v)));
  return trim(v, Math.min(Math.max(digits, 0), 8));
}
