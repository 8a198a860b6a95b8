// Where to put the load: each bag at each place where bags are hung, and what that
// does to the steering.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { editBag, findLoad, loadsOf } from "../../app/loadEdit.ts";
import { letters } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { Answer } from "../../elements/answer.ts";
import { roomScale } from "../../elements/comparison.ts";
import { subhead } from "../../elements/copytable.ts";
import { badge, number } from "../../elements/figure.ts";
import { signs } from "../../elements/verdict.ts";
import { t } from "../../text/index.ts";
import type { BagPlaces, Doc, PlacementSide } from "../../model/types.ts";
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

export function placements(): TemplateResult | typeof nothing {
  const { value } = answer.seen();
  const sides = value?.sides.filter((s) => s.bags.length) ?? [];
  if (!value) return nothing;
  if (!sides.length) return html`<h3>${t("placements.title")}</h3><p class="quiet">${t("placements.none")}</p>`;
  // Two sides with one load say the same of it twice.
  const first = value.sides.findIndex((s) => s.bags.length);
  const shown = value.sides
    .map((side, i) => ({ side, i }))
    .filter(({ side, i }) => side.bags.length && (i === first || side.load !== value.sides[first]!.load));
  return html`${shown.map(({ side, i }) => table(side, shown.length > 1 ? i : -1))}
    <p class="fine">${t("placements.help")}</p>`;
}

function table(side: PlacementSide, i: number): TemplateResult {
  const letter = letters[i];
  const heads = side.bags[0]!.places[0]!.figures;
  const share = figureScale("ratio", store.doc!.show, "share");
  return html`${subhead(html`${letter ? badge(letter) : nothing} ${t("placements.title")}`, t("placements.title"))}
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
                <button type="button" class="plain" @click=${() => copies(side, bag)}>${t("placements.copies")}</button>
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
