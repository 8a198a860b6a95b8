// A table of what a room of the core says of one side or two: a row a figure, and
// with two sides their difference and the verdict on it.

import { html, nothing, type TemplateResult } from "lit";
import { store } from "../app/state.ts";
import { t } from "../text/index.ts";
import type { MeasureFirst, RoomChange, RoomFigure } from "../model/types.ts";
import { figureScale, plainScale, write, type Scale } from "../model/units.ts";
import { subhead } from "./copytable.ts";
import { badge, number } from "./figure.ts";
import { signs } from "./verdict.ts";
import type { Letter } from "../app/sides.ts";

const units: Record<string, string> = {
  w: "W",
  m_s: "m/s",
  m_s2: "m/s²",
  m2: "m²",
  c: "°C",
  rpm: "/min",
  s: "s",
  kg_m3: "kg/m³",
  n: "N",
  nm: "N m",
  n_m: "N m",
  hz: "Hz",
  deg: "°",
};

// unitText is the sign of a unit of the core.
export const unitText = (unit: string): string => (unit === "percent" ? t("unit.percent") : unit === "ratio" ? "" : (units[unit] ?? unit.replace("_", " ")));

// roomScale is how a room's figure is shown.
export function roomScale(unit: string, key = ""): Scale {
  const show = store.doc!.show;
  switch (unit) {
    case "g":
    case "mm":
    case "deg":
    case "kg_m2":
    case "ratio":
      return { ...figureScale(unit, show, key), decimals: unit === "mm" ? 0 : 2 };
    case "share":
      return { unit: t("unit.percent"), per: 0.01, decimals: 1, most: 3 };
    case "percent":
      return plainScale(t("unit.percent"), 1);
    default:
      return plainScale(unitText(unit), 2);
  }
}

export interface Compared {
  letter: Letter;
  figures: readonly RoomFigure[];
  note?: (key: string) => TemplateResult | typeof nothing; // beside a figure
}

// comparison sets figures of the sides beside each other, those with a difference
// with it. Only the keys that pick takes are shown.
export function comparison(
  caption: string,
  sides: readonly Compared[],
  changes: readonly RoomChange[],
  pick: (key: string) => boolean = () => true,
): TemplateResult | typeof nothing {
  const keys = [...new Map(sides.flatMap((s) => s.figures.filter((f) => pick(f.key)).map((f) => [f.key, f] as const))).values()];
  if (!keys.length) return nothing;
  const two = sides.length > 1;
  return html`<table class="lines compared">
    <caption class="unseen">
      ${caption}
    </caption>
    <thead>
      <tr>
        <th scope="col"><span class="unseen">${t("rooms.figure")}</span></th>
        ${sides.map(({ letter }) => html`<th scope="col" class="right doubt">${two ? badge(letter) : nothing}<span class="unseen">${letter}</span></th>`)}
        ${two ? html`<th scope="col" class="right doubt">${t("rooms.difference")}</th><th scope="col"><span class="unseen">${t("rooms.verdict")}</span></th>` : nothing}
      </tr>
    </thead>
    <tbody>
      ${keys.map((k) => {
        const s = roomScale(k.unit);
        const c = changes.find((c) => c.key === k.key);
        return html`<tr>
          <th scope="row">${k.label}${s.unit ? html` <span class="unit">${s.unit}</span>` : nothing}</th>
          ${sides.map(({ figures, note }) => {
            const f = figures.find((f) => f.key === k.key);
            return html`<td>${f ? html`${number(write(f.value, f.plus, s))}${note?.(k.key) ?? nothing}` : "–"}</td>`;
          })}
          ${
            two
              ? c
                ? html`<td>${number(write(c.delta, c.plus, s, true))}</td>
                    <td class="what"><span aria-hidden="true">${signs[c.verdict]}</span> <span class="word">${t(`verdict.${c.verdict}`)}</span></td>`
                : html`<td>–</td>
                    <td></td>`
              : nothing
          }
        </tr>`;
      })}
    </tbody>
  </table>`;
}

// headed is a comparison under its heading, which can be copied; nothing without
// figures.
export function headed(heading: string, sides: readonly Compared[], changes: readonly RoomChange[]): TemplateResult | typeof nothing {
  const table = comparison(heading, sides, changes);
  return table === nothing ? nothing : html`${subhead(heading, heading)} ${table}`;
}

// measureFirst names what is worth measuring first.
export const measureFirst = (list: readonly MeasureFirst[]): TemplateResult | typeof nothing =>
  list.length
    ? html`<p class="fine">${t("rooms.first", {
        list: list
          .slice(0, 3)
          .map((f) => f.label)
          .join("; "),
      })}</p>`
    : nothing;
