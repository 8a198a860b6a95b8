// What the masses permit: braking, climbing, axle loads on slopes, and loads
// held against the ratings that makers state.

import { html, nothing, type TemplateResult } from "lit";
import { findBuild } from "../../app/edit.ts";
import { rate } from "../../app/loadEdit.ts";
import {
  ratedValues,
  showDefaults,
  type Braking,
  type Handling,
  type Headroom,
  type LimitVerdict,
  type Rated,
  type Side,
  type Value,
} from "../../model/types.ts";
import { core } from "../../core/core.ts";
import { store } from "../../app/state.ts";
import { brief, short, t, word } from "../../text/index.ts";
import { alone, figureScale, heavyField, plain, plainScale, signed, write, type Scale } from "../../model/units.ts";
import { chart, type Series } from "../../elements/chart.ts";
import { copyTable, subhead } from "../../elements/copytable.ts";
import { field, numberInput, problemAt } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import { fillBar, verdictSigns, verdictWord } from "../../elements/fill.ts";
import type { Gist } from "../../elements/room.ts";
import { narrow } from "../../elements/narrow.ts";
import { caution, foldMoved, foldOpen, Section } from "../../elements/section.ts";
import { room } from "./room.ts";
import { sidesShown, type Letter } from "../../app/sides.ts";

interface Of {
  letter: Letter;
  side: Side;
}

function sides(): Of[] {
  return sidesShown().flatMap((letter) => {
    const side = store.side(letter);
    return side ? [{ letter, side }] : [];
  });
}

const deceleration = (): Scale => plainScale(t("unit.g0"), 2);
const percent = (): Scale => figureScale("ratio", store.doc!.show, "share");

const level = (h: Handling) => h.braking.find((b) => b.gradient === 0);

// held is every load of a side that has a limit: what is rated, then what is in
// each bag.
function held(s: Side): Headroom[] {
  return [...(s.ratings?.list ?? []), ...s.bags.flatMap((b) => [b.headroom, b.room].filter((h) => h !== undefined))];
}

const judged = (s: Side, v: LimitVerdict) => held(s).filter((h) => h.verdict === v);

// What comes first, in words.
const brakesUntil = (b: Braking): string => t(!b.decided ? "limits.first.undecided" : b.slips ? "limits.first.brake.slip" : "limits.first.brake.lift");
const climbsUntil = (c: NonNullable<Handling["climb"]>): string =>
  t(!c.decided ? "limits.first.undecided" : c.slips ? "limits.first.slip" : "limits.first.lift");

// gist is what the room comes to.
export function gist(): Gist {
  const list = sides();
  const named = (v: LimitVerdict) => [...new Set(list.flatMap(({ side }) => judged(side, v).map((h) => h.name)))];
  const over = named("over");
  const near = named("near").filter((name) => !over.includes(name));
  const told = list.flatMap(({ letter, side }) => {
    const h = side.handling;
    const b = h && level(h);
    if (!h?.climb || !b) return [];
    return [
      t("limits.gist.side", {
        letter,
        brake: plain(alone(b.first.value, b.first.plus, deceleration())),
        braked: brakesUntil(b),
        climb: plain(alone(h.climb.first.value, h.climb.first.plus, percent())),
        climbed: climbsUntil(h.climb),
      }),
    ];
  });
  const exceeded = [
    over.length ? t("limits.gist.over", { what: over.join(", ") }) : "",
    near.length ? t("limits.gist.near", { what: near.join(", ") }) : "",
  ].filter(Boolean);
  if (!exceeded.length && list.some(({ side }) => held(side).length)) exceeded.push(t("limits.gist.none"));
  if (!told.length && !exceeded.length) return { text: t("limits.gist") };
  return { text: [...told, ...exceeded].join("; "), alarm: over.length + near.length > 0 };
}

class Limits extends Section {
  protected readonly fold = "limits";

  protected body(): TemplateResult {
    const list = sides().filter(({ side }) => side.handling);
    if (!list.length) {
      // The core reckons handling of what carries a load, and ratings of any bike.
      if (!sides().some(({ side }) => side.weighed)) return html`<p class="quiet">${t("limits.none")}</p>`;
      return html`<p class="quiet">${t("limits.unladen")}</p>
        <div class="limitsheet">
          <div class="wide">${this.ratings(sides())}</div>
          <div>${this.entry()}</div>
          <div class="wide">${room()}</div>
        </div>`;
    }
    const states = [...new Set(list.map(({ side }) => stateText(side.handling!.state, side.handling!.supplies)))];
    return html`<p class="quiet">${t("limits.of", { states: states.join("; ") })}</p>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${word("help", "load")}</p>
      <div class="limitsheet">
        <div>${this.road(list)}</div>
        <div>${this.slopes(list)}</div>
        <div>${this.braking(list)}</div>
        <div class="wide">${this.ratings(sides())}</div>
        <div>${this.entry()}</div>
        <div class="wide">${room()}</div>
      </div>`;
  }

  private road(list: Of[]): TemplateResult {
    const show = store.doc!.show;
    const two = list.length > 1;
    const g = deceleration();
    const pc = percent();
    const row = (label: string, unit: string, value: (h: Handling) => TemplateResult | string) =>
      html`<tr>
        <th scope="row">${label}${unit ? html` <span class="unit">${unit}</span>` : nothing}</th>
        ${list.map(({ side }) => html`<td>${value(side.handling!)}</td>`)}
      </tr>`;
    const value = (v: Value | undefined | null, s: Scale) => (v ? number(write(v.value, v.plus, s)) : "–");
    return html`${subhead(t("limits.road"), t("limits.road.caption"))}
      <table class="lines road">
        <caption class="unseen">
          ${t("limits.road.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${t("limits.limit")}</span></th>
            ${list.map(({ letter }) => html`<th scope="col" class="right doubt">${two ? badge(letter) : nothing}<span class="unseen">${letter}</span></th>`)}
          </tr>
        </thead>
        <tbody>
          ${row(t("limits.brake"), g.unit, (h) => value(level(h)?.lift, g))} ${row(t("limits.brake.slip"), g.unit, (h) => value(level(h)?.slip, g))}
          ${row(t("limits.first.brake"), "", (h) => {
            const b = level(h);
            return b ? html`<span>${brakesUntil(b)}</span>` : "–";
          })}
          ${row(t("limits.lift"), pc.unit, (h) => value(h.climb?.lift, pc))}
          ${row(t("limits.slip"), pc.unit, (h) => (h.climb && !h.climb.slip ? t("limits.slip.never") : value(h.climb?.slip, pc)))}
          ${row(t("limits.first"), "", (h) => (h.climb ? html`<span>${climbsUntil(h.climb)}</span>` : "–"))}
        </tbody>
      </table>
      <div class="specs">
        ${numberInput({
          key: "show/grip",
          label: t("limits.grip"),
          value: show.grip ?? showDefaults.grip,
          step: 0.05,
          problem: problemAt("show.grip", ""),
          set: (v) => store.edit(t("do.grip"), (d) => ({ ...d, show: { ...d.show, grip: v } }), "show/grip"),
        })}
      </div>
      <p class="fine">${t("limits.grip.help")}</p>
      <p class="fine">${word("help", "braking")} ${word("help", "climb")}</p>
      ${caution()}`;
  }

  private slopes(list: Of[]): TemplateResult {
    const show = store.doc!.show;
    const s = figureScale("g", show);
    const two = list.length > 1;
    const series = list.flatMap(({ letter, side }): Series[] =>
      (["front", "rear"] as const).map((end) => ({
        name: two ? `${letter} ${t(`limits.${end}`)}` : t(`limits.${end}`),
        tone: end,
        dashed: letter === "B",
        points: side.handling!.slopes.map((p) => ({ x: p.gradient, y: p[`${end}_g`] / s.per, plus: p[`${end}_plus_g`] / s.per })),
      })),
    );
    const gradients = list[0]!.side.handling!.slopes.map((p) => p.gradient);
    return html`<h3>${t("limits.slopes")}</h3>
      ${chart({ label: t("limits.slopes.label"), wide: narrow.matches ? 350 : 460, high: 240, unit: s.unit, down: t("limits.down"), up: t("limits.up"), series })}
      ${this.table(
        "slopes",
        t("limits.slopes.caption"),
        list.flatMap(({ letter }) =>
          (["front", "rear"] as const).map((end) => html`${two ? badge(letter) : nothing}<span class="unseen">${letter} </span> ${t(`limits.${end}`)}`),
        ),
        gradients,
        (i) =>
          list.flatMap(({ side }) => {
            const p = side.handling!.slopes[i];
            return p ? [write(p.front_g, p.front_plus_g, s), write(p.rear_g, p.rear_plus_g, s)] : [];
          }),
        s.unit,
      )}
      ${caution()}`;
  }

  private braking(list: Of[]): TemplateResult {
    const s = deceleration();
    const two = list.length > 1;
    const series = list.map(
      ({ letter, side }): Series => ({
        name: two ? letter : t("unit.g0"),
        tone: "text",
        dashed: letter === "B",
        points: side.handling!.braking.map((p) => ({ x: p.gradient, y: p.first.value, plus: p.first.plus })),
      }),
    );
    const gradients = list[0]!.side.handling!.braking.map((p) => p.gradient);
    return html`<h3>${t("limits.braking")}</h3>
      ${chart({ label: t("limits.braking.label"), wide: narrow.matches ? 350 : 460, high: 240, unit: t("limits.braking.axis"), down: t("limits.down"), up: t("limits.up"), series })}
      ${this.table(
        "braking",
        t("limits.braking.caption"),
        list.map(({ letter }) => html`${two ? badge(letter) : nothing}<span class="unseen">${letter}</span>`),
        gradients,
        (i) =>
          list.flatMap(({ side }) => {
            const p = side.handling!.braking[i];
            return p ? [write(p.first.value, p.first.plus, s)] : [];
          }),
        s.unit,
      )}
      ${caution()}`;
  }

  private table(
    key: string,
    caption: string,
    heads: TemplateResult[],
    gradients: number[],
    row: (i: number) => ReturnType<typeof write>[],
    unit: string,
  ): TemplateResult {
    return html`<details class="explain" ?open=${foldOpen(`limits/${key}`)} @toggle=${foldMoved(`limits/${key}`)}>
      <summary>${t("limits.table")}</summary>
      <p class="copyline">${copyTable(caption)}</p>
      <div class="scroll" tabindex="0" role="region" aria-label=${caption}>
      <table class="lines">
        <caption class="unseen">
          ${caption}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("limits.gradient")} <span class="unit">${t("unit.percent")}</span></th>
            ${heads.map((h) => html`<th scope="col" class="right">${h} <span class="unit">${unit}</span></th>`)}
          </tr>
        </thead>
        <tbody>
          ${gradients.map(
            (g, i) =>
              html`<tr>
                <th scope="row">${signed(g * 100, 0)}</th>
                ${row(i).map((w) => html`<td>${number(w)}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
      </div>
    </details>`;
  }

  private ratings(list: Of[]): TemplateResult {
    const any = list.filter(({ side }) => held(side).length);
    const two = list.length > 1;
    return html`<h3>${t("ratings.title")}</h3>
      ${any.length ? nothing : html`<p class="quiet">${t("ratings.none")}</p>`}
      ${any.map(({ letter, side }) => {
        const rows = held(side);
        // What is over, then what may be.
        const over = [...judged(side, "over"), ...judged(side, "near")];
        // Of the bags' volumes only those are worth a line that are not enough.
        const bags = rows.filter((h) => h.bag && (h.what !== "volume" || h.verdict !== "ok"));
        return html`<p class="copyline">${copyTable(two ? `${t("ratings.caption")}, ${letter}` : t("ratings.caption"))}</p>
          <table class="lines ratings">
            <caption class=${two ? "" : "unseen"}>
              ${two ? html`${badge(letter)} ${side.name}` : t("ratings.caption")}
            </caption>
            <thead>
              <tr>
                <th scope="col">${t("ratings.what")}</th>
                <th scope="col" class="barcell"><span class="unseen">${t("ratings.used.head")}</span></th>
                <th scope="col" class="right doubt">${t("ratings.load")}</th>
                <th scope="col" class="right">${t("ratings.limit")}</th>
                <th scope="col" class="right">${t("ratings.left")}</th>
              </tr>
            </thead>
            <tbody>
              ${rows.filter((h) => !h.bag).map((h) => this.headroom(h))}
            </tbody>
            ${
              bags.length
                ? html`<tbody>
                  <tr class="band">
                    <th scope="rowgroup" colspan="5">${t("ratings.bags")}</th>
                  </tr>
                  ${bags.map((h) => this.headroom(h))}
                </tbody>`
                : nothing
            }
          </table>
          ${
            over.length
              ? html`<ul class="overloads">
                ${over.map((h) => html`<li><strong>${h.text}</strong></li>`)}
              </ul>`
              : nothing
          }
          ${side.ratings && !side.ratings.rider ? html`<p class="fine">${t("ratings.norider")}</p>` : nothing}`;
      })}
      ${any.length ? caution() : nothing}`;
  }

  private headroom(h: Headroom): TemplateResult {
    const s: Scale = h.unit === "l" ? plainScale(t("unit.l"), 1) : figureScale("g", store.doc!.show);
    const name = h.bag ? h.name : short("rating", h.what);
    return html`<tr class=${h.verdict} title=${h.text}>
      <th scope="row">${brief(name)}${h.what === "volume" ? html` <span class="unit">${t("bag.volume").toLowerCase()}</span>` : nothing}</th>
      <td class="barcell">${fillBar({ used: h.used, plus: h.limit > 0 ? h.plus / h.limit : 0, verdict: h.verdict })}</td>
      <td>${number(write(h.load, h.plus, s))}</td>
      <td class="right">${plain(write(h.limit, 0, s))}</td>
      <td class="right left">
        ${
          h.verdict === "ok"
            ? plain(alone(h.left, h.plus, s))
            : html`<strong><span aria-hidden="true">${verdictSigns[h.verdict]}</span> ${h.left < 0 ? t("ratings.over", { mass: plain(alone(-h.left, h.plus, s)) }) : verdictWord(h.verdict)}</strong>`
        }
      </td>
    </tr>`;
  }

  private entry(): TemplateResult {
    const doc = store.doc!;
    const { A, B } = store.ids;
    const builds = [...new Set([A, B].filter(Boolean))].map((id) => ({ id, letter: (id === A ? "A" : "B") as Letter }));
    const unit = heavyField(doc.show);
    return html`<h3>${t("ratings.enter")}</h3>
      <table class="lines rates">
        <caption class="unseen">
          ${t("ratings.enter.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("ratings.what")}</th>
            ${builds.map(({ letter }) => html`<th scope="col" class="right">${builds.length > 1 ? badge(letter) : nothing}<span class="unseen">${letter}</span> <span class="unit">${unit.unit}</span></th>`)}
          </tr>
        </thead>
        <tbody>
          ${ratedValues.map(
            (what) =>
              html`<tr>
                <th scope="row">${t(`rating.${what}`)}</th>
                ${builds.map(({ id, letter }) => html`<td>${this.rate(id, letter, what)}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
      <p class="fine">${t("ratings.enter.help")}</p>`;
  }

  private rate(build: string, letter: Letter, what: Rated): TemplateResult {
    const show = store.doc!.show;
    const unit = heavyField(show);
    const list = findBuild(store.doc!, build)?.ratings ?? [];
    const i = list.findIndex((r) => r.what === what);
    const limit = list[i]?.limit_g ?? 0;
    const name = short("rating", what);
    const key = `${build}/ratings/${what}`;
    return field({
      key,
      label: `${name}, ${letter}, ${unit.unit}`,
      hidden: true,
      kind: "number",
      placeholder: "–",
      step: unit.parse === "g" ? 500 : 1,
      text: limit ? unit.text(limit) : "",
      problem: i < 0 ? undefined : problemAt(`ratings.${i}`, build),
      accept: (typed) => {
        const v = typed.trim() === "" ? 0 : core.parseMass(typed, unit.parse);
        store.edit(t("do.rating", { what: name }), (d) => rate(d, build, what, v), key);
      },
    });
  }
}

customElements.define("sy-limits", Limits);

function stateText(state: Handling["state"], supplies: Handling["supplies"]): string {
  return `${t(`state.${state}`)}, ${t("carry.supplies").toLowerCase()} ${t(`supplies.${supplies}`)}`;
}
