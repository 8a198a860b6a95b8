// How a bike balances by itself, over its speed and at those of touring.

import { html, nothing, type TemplateResult } from "lit";
import type { Told } from "./answer.ts";
import { roomScale } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { curves, type Curve } from "../../elements/curves.ts";
import { badge, number } from "../../elements/figure.ts";
import { narrow } from "../../elements/narrow.ts";
import { t } from "../../text/index.ts";
import type { TouringSpeed } from "../../model/types.ts";
import { plain, plainScale, trim, write } from "../../model/units.ts";

const kmh = 3.6;

export function balance(list: readonly Told[], copied = true): TemplateResult {
  const two = list.length > 1;
  const rate = plainScale("1/s", 2);
  const time = plainScale("s", 1);
  const share = roomScale("share");
  // Of each side the real part of what grows fastest, and the weave's.
  const drawn = list.flatMap(({ letter, side }): Curve[] => [
    {
      name: two ? letter : "",
      tone: "rear",
      dashed: letter === "B",
      points: side.speeds.map((s) => ({ x: s.v_m_s * kmh, y: s.growth_1_s })),
    },
  ]);
  const speeds = list[0]?.side.touring ?? [];
  const cell = (s: TouringSpeed | undefined) => {
    if (!s) return "–";
    const told =
      s.verdict === "undecided" || s.verdict === "same" ? t("verdict.undecided") : t(`steering.${s.verdict}`, { time: plain(write(s.time_s, 0, time)) });
    const { period_s, period_plus = 0, damping, damping_plus = 0 } = s;
    const weave =
      period_s === undefined || damping === undefined
        ? nothing
        : html`<span class="below">${t("steering.weaves", { period: plain(write(period_s, period_plus, time)), damping: plain(write(damping, damping_plus, share)) })}</span>`;
    return html`${number(write(s.growth_1_s, s.growth_plus, rate, true))}<span class="below">${told}</span>${weave}`;
  };
  const range = (side: Told["side"]) => {
    const v = (speed: number | undefined, plus: number | undefined) =>
      speed === undefined ? t("steering.none") : plain(write(speed * kmh, (plus ?? 0) * kmh, plainScale("km/h", 0)));
    return html`<td class="right">${v(side.weave_m_s, side.weave_plus)}</td>
      <td class="right">${v(side.capsize_m_s, side.capsize_plus)}</td>`;
  };
  return html`${copied ? subhead(t("steering.balance"), t("steering.balance")) : html`<h3>${t("steering.balance")}</h3>`}
    <table class="lines">
      <caption class="unseen">
        ${t("steering.balance")}
      </caption>
      <thead>
        <tr>
          <th scope="col"><span class="unseen">${t("rooms.side")}</span></th>
          <th scope="col" class="right">${t("steering.weave")}</th>
          <th scope="col" class="right">${t("steering.capsize")}</th>
        </tr>
      </thead>
      <tbody>
        ${list.map(
          ({ letter, side }) =>
            html`<tr>
              <th scope="row">${two ? badge(letter) : nothing} ${side.name}</th>
              ${side.ok ? range(side) : html`<td colspan="2">${side.why}</td>`}
            </tr>`,
        )}
      </tbody>
    </table>
    ${curves({
      label: t("steering.chart"),
      wide: copied && narrow.matches ? 350 : 460,
      high: 230,
      x: "km/h",
      y: "1/s",
      curves: drawn,
      least: -4,
      most: 6,
    })}
    <table class="lines touring compared">
      <caption>
        ${t("steering.touring")}
      </caption>
      <thead>
        <tr>
          <th scope="col"><span class="unseen">${t("steering.speed")}</span></th>
          ${list.map(({ letter }) => html`<th scope="col" class="right">${two ? badge(letter) : nothing}<span class="unseen">${letter}</span></th>`)}
        </tr>
      </thead>
      <tbody>
        ${speeds.map(
          (s, i) =>
            html`<tr>
              <th scope="row">${s.label} <span class="unit">${`${trim(s.v_m_s * kmh, 1)}\u00a0km/h`}</span></th>
              ${list.map(({ side }) => html`<td>${cell(side.touring[i])}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="fine">${t("steering.balance.help")}</p>`;
}
