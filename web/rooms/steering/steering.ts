// How the bike steers and balances, and what it is in the hand.

import { html, nothing, type TemplateResult } from "lit";
import { answer, compared, sidesOf, type Told } from "./answer.ts";
import { placements } from "./placements.ts";
import { headed } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { curves, type Curve } from "../../elements/curves.ts";
import { badge, number } from "../../elements/figure.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { Section } from "../../elements/section.ts";
import { store } from "../../app/state.ts";
import { editBuild, findBuild } from "../../app/edit.ts";
import { numberInput, problemAt } from "../../elements/field.ts";
import { t } from "../../text/index.ts";
import type { Steering as Said, TouringSpeed } from "../../model/types.ts";
import { plain, plainScale, write } from "../../model/units.ts";

const kmh = 3.6;

// gist is what the room comes to, once it was asked.
export function gist(): Gist {
  return { text: t("steering.gist") };
}

class Steering extends Section {
  protected readonly fold = "steering";

  protected body(): TemplateResult {
    const { value, why, stale } = answer.seen();
    if (!value) return html`<p class="quiet">${why || t("rooms.working")}</p>`;
    const list = sidesOf(value);
    const states = [...new Set(list.map(({ side }) => t(`state.${side.state}`)))].join("; ");
    return html`<div class=${stale ? "stale" : ""} aria-busy=${stale}>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${value.caution}</p>
      <p class="quiet">${t("steering.of", { states })}</p>
      ${value.words ? html`<p class="verdictwords">${value.words}</p>` : nothing}
      ${list.map(({ letter, side }) => (side.words ? html`<p class="sidewords">${list.length > 1 ? badge(letter) : nothing} <strong>${side.name}.</strong> ${side.words}</p>` : nothing))}
      <div class="roomsheet">
        <div>${this.plain(value, list)}</div>
        <div>${this.balance(list)}</div>
        <div>${this.hand(value, list)}</div>
        <div>${placements()}</div>
      </div>
    </div>`;
  }

  private plain(value: Said, list: readonly Told[]): TemplateResult {
    return html`${headed(
      t("steering.plain"),
      compared(list, (s) => s.plain),
      value.difference,
    )}
      <p class="fine">${t("steering.plain.help")}</p>`;
  }

  private balance(list: readonly Told[]): TemplateResult {
    const two = list.length > 1;
    const rate = plainScale("1/s", 2);
    const time = plainScale("s", 1);
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
      return html`${number(write(s.growth_1_s, s.growth_plus, rate, true))}<span class="below">${told}</span>`;
    };
    const range = (side: Told["side"]) => {
      const v = (speed: number | undefined, plus: number | undefined) =>
        speed === undefined ? t("steering.none") : plain(write(speed * kmh, (plus ?? 0) * kmh, plainScale("km/h", 0)));
      return html`<td class="right">${v(side.weave_m_s, side.weave_plus)}</td>
        <td class="right">${v(side.capsize_m_s, side.capsize_plus)}</td>`;
    };
    return html`${subhead(t("steering.balance"), t("steering.balance"))}
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
        wide: narrow.matches ? 350 : 460,
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
                <th scope="row">${s.label} <span class="unit">${plain(write(s.v_m_s * kmh, 0, plainScale("km/h", 0)))}</span></th>
                ${list.map(({ side }) => html`<td>${cell(side.touring[i])}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
      <p class="fine">${t("steering.balance.help")}</p>`;
  }

  private hand(value: Said, list: readonly Told[]): TemplateResult {
    const stands = list.filter(({ side }) => side.stand);
    return html`${headed(
      t("steering.hand"),
      compared(list, (s) => [...s.hand, ...(s.stand?.figures ?? [])]),
      value.difference,
    )}
      ${stands.map(({ letter, side }) => (side.stand!.over ? html`<p class="alarm">${t("steering.over", { letter })}</p>` : nothing))}
      ${stands.some(({ side }) => side.stand!.typical) ? html`<p class="fine">${t("steering.stand.typical")}</p>` : nothing}
      ${this.stands(list)}
      <p class="fine">${t("steering.hand.help")}</p>`;
  }

  // Where the foot of the stand is, for whoever measures it.
  private stands(list: readonly Told[]): TemplateResult {
    const d = store.doc!;
    return html`<div class="specs narrowspecs">
      ${list.map(({ letter, side }) => {
        const b = findBuild(d, side.build);
        if (!b || !side.stand) return nothing;
        const { forward_mm, out_mm, lean_deg } = side.stand;
        const here = { forward_mm, out_mm, lean_deg };
        const field = (key: keyof typeof here) =>
          numberInput({
            key: `${b.id}/stand/${key}`,
            label: `${list.length > 1 ? `${letter}: ` : ""}${t(`steering.stand.${key}`)}`,
            value: here[key],
            step: 1,
            problem: problemAt(`stand.${key}`, b.id),
            set: (v) => store.edit(t("do.stand"), (doc) => editBuild(doc, b.id, (b) => ({ ...b, stand: { ...here, [key]: v } })), `${b.id}/stand/${key}`),
          });
        return html`${field("out_mm")} ${field("lean_deg")} ${field("forward_mm")}`;
      })}
    </div>`;
  }
}

customElements.define("sy-steering", Steering);
