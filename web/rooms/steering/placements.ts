// Where to put the load: each bag at each place where bags are hung, and what that
// does to the steering.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { editBag, findLoad, loadsOf } from "../../app/loadEdit.ts";
import { letters, type Letter } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { Answer } from "../../elements/answer.ts";
import { roomScale } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { choice } from "../../elements/field.ts";
import { badge, number } from "../../elements/figure.ts";
import { narrow } from "../../elements/narrow.ts";
import { spots } from "../../elements/spots.ts";
import { signs } from "../../elements/verdict.ts";
import { t } from "../../text/index.ts";
import type { BagPlaces, Doc, Placements as Said, PlacementSide } from "../../model/types.ts";
import { figureScale, massText, plain, write } from "../../model/units.ts";

const answer = new Answer((document) => core.placements(document));

// copies makes a copy of the load for each place, with the bag hung there; the
// load itself stays.
function copies(side: PlacementSide, bag: BagPlaces): void {
  store.edit(t("do.placements", { name: bag.name }), (doc) => {
    let d: Doc = doc;
    for (const place of bag.places) {
      if (place.here) continue;
      const load = findLoad(d, side.load);
      if (!load) return doc;
      const made = core.copyLoad(JSON.stringify(d), side.load, `${load.name}: ${bag.name}, ${place.label}`).document?.loads?.at(-1);
      if (!made) return doc;
      d = { ...d, loads: [...loadsOf(d), made] };
      d = editBag(d, made.id, bag.bag, (b) => ({ ...b, station: place.station, carrier: place.carrier, offset_mm: [0, 0, 0] }));
    }
    return d;
  });
  store.tell(t("placements.copied", { name: bag.name }), { label: t("undo"), run: () => store.undo() });
}

// sidesWith are the sides that have bags, each with its letter where it needs one.
// Two sides with one load say the same of it twice.
function sidesWith(value: Said): { side: PlacementSide; letter: string }[] {
  const all = value.sides.map((side, i) => ({ side, letter: letters[i] ?? "" })).filter(({ side }) => side.bags.length);
  const shown = all.filter(({ side }, at) => at === 0 || side.load !== all[0]!.side.load);
  return shown.map(({ side, letter }) => ({ side, letter: shown.length > 1 ? letter : "" }));
}

export function placements(): TemplateResult | typeof nothing {
  const { value } = answer.seen();
  if (!value) return nothing;
  const shown = sidesWith(value);
  if (!shown.length) return html`<h3>${t("placements.title")}</h3><p class="quiet">${t("placements.none")}</p>`;
  return html`${shown.map((one) => html`${table(one)} ${drawn(one)}`)}
    <p class="fine">${t("placements.help")}</p>`;
}

// printPlacements sets them on paper.
export function printPlacements(): TemplateResult | typeof nothing {
  const { value } = answer.now();
  const shown = value ? sidesWith(value) : [];
  if (!shown.length) return nothing;
  return html`${shown.map((one) => html`${table(one, false)} ${chart(one, 460)}`)}
    <p class="fine">${t("placements.help")}</p>`;
}

// picked is the figure that the chart draws, on the screen and on paper. It is no
// part of the document.
let picked = "steering_inertia";

const figuresOf = (side: PlacementSide) => side.bags[0]!.places[0]!.figures;

// drawn is the chart, with the choice of what it draws.
function drawn(one: { side: PlacementSide; letter: string }): TemplateResult {
  return html`<div class="specs narrowspecs">
      ${choice({
        key: `placements/picked/${one.letter}`,
        label: t("placements.drawn"),
        value: picked,
        options: figuresOf(one.side).map((f) => ({ value: f.key, label: f.label })),
        set: (v) => {
          picked = v;
          store.touch();
        },
      })}
    </div>
    ${chart(one, narrow.matches ? 350 : 460)}`;
}

function chart({ side, letter }: { side: PlacementSide; letter: string }, wide: number): TemplateResult | typeof nothing {
  const figure = figuresOf(side).find((f) => f.key === picked);
  if (!figure) return nothing;
  const s = roomScale(figure.unit);
  return spots({
    label: `${letter ? `${letter}: ` : ""}${t("placements.chart", { figure: figure.label })}`,
    wide,
    x: s.unit,
    groups: side.bags.map((bag) => ({
      name: bag.name,
      spots: bag.places.map((p) => {
        const f = p.figures.find((f) => f.key === picked)!;
        return { name: p.label, delta: f.delta / s.per, plus: f.plus / s.per };
      }),
    })),
  });
}

function table({ side, letter }: { side: PlacementSide; letter: string }, copied = true): TemplateResult {
  const heads = figuresOf(side);
  const share = figureScale("ratio", store.doc!.show, "share");
  const name = html`${letter ? badge(letter as Letter) : nothing} ${t("placements.title")}`;
  const [most] = side.bags;
  return html`${copied ? subhead(name, t("placements.title")) : html`<h3>${name}</h3>`}
    ${side.bags.length > 1 ? html`<p>${t("placements.most", { name: most!.name, share: plain(write(most!.share, 0, share)) })}</p>` : nothing}
    <div class="scroll" tabindex="0" role="region" aria-label=${t("placements.title")}>
      <table class="lines compared placements">
        <caption class="unseen">
          ${t("placements.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("placements.bag")}</th>
            ${heads.map((f) => {
              const s = roomScale(f.unit);
              return html`<th scope="col" class="right doubt">${f.label}${s.unit ? html` <span class="unit">${s.unit}</span>` : nothing}</th>`;
            })}
          </tr>
        </thead>
        ${side.bags.map(
          (bag) => html`<tbody>
            <tr class="group">
              <th scope="rowgroup" colspan=${heads.length + 1}>
                ${t("placements.of", { name: bag.name, mass: massText(bag.mass_g, store.doc!.show), share: plain(write(bag.share, 0, share)) })}
                ${copied ? html`<button type="button" class="plain" @click=${() => copies(side, bag)}>${t("placements.copies")}</button>` : nothing}
              </th>
            </tr>
            ${bag.places.map(
              (p) => html`<tr>
                <th scope="row">${p.label}${p.here ? html` <span class="quiet">${t("placements.here")}</span>` : nothing}</th>
                ${p.figures.map((f) => {
                  const s = roomScale(f.unit);
                  return html`<td>
                    ${number(write(f.b, f.plus, s))}
                    <span class="what" aria-label=${t(`verdict.${f.verdict}`)} role="img">${signs[f.verdict]}</span>
                  </td>`;
                })}
              </tr>`,
            )}
          </tbody>`,
        )}
      </table>
    </div>`;
}
