// The picture told in text: what it shows, in a few sentences that the canvas
// is described by, and its markers as a table.

import { html, nothing, type TemplateResult } from "lit";
import { needsLoad } from "../../app/loadEdit.ts";
import { lineID, loadLine, type LineKind } from "../../app/loadlines.ts";
import { named, sprung } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { brief, t, type Key } from "../../text/index.ts";
import type { Show, Vec3 } from "../../model/types.ts";
import { alone, figureScale, lengthField, partScale, placeText, plain, rough, write, type Scale } from "../../model/units.ts";
import { DeferredElement } from "../../elements/element.ts";
import { foldMoved, foldOpen } from "../../elements/section.ts";

// Marker is one thing with a place in the picture.
interface Marker {
  id: string;
  name: string;
  mass_g: number;
  plus_g: number;
  place_mm: Vec3;
  carrier: string;
  springs: string;
}

const heaviest = 5; // told in a sentence
const first = 40; // rows of the table before all are asked for

// markers are those of the side looked at, as it is weighed now.
function markers(): Marker[] {
  const of = store.figures(store.activeID);
  const parts = new Map(store.build?.parts.map((p) => [p.id, p]));
  const list: Marker[] = [];
  for (const r of of?.parts ?? []) {
    const p = parts.get(r.id);
    if (!p || !r.ok || r.off) continue;
    list.push({ id: r.id, name: p.name, mass_g: r.mass_g, plus_g: r.plus_g, place_mm: r.place_mm, carrier: named("carrier", p.carrier), springs: sprung(r) });
  }
  const side = store.side(store.letter);
  const line = (kind: LineKind, id: string, springs: string) => {
    const l = loadLine(lineID(kind, id));
    if (l?.place_mm) list.push({ ...l, id: lineID(kind, id), place_mm: l.place_mm, carrier: "", springs });
  };
  if (side && needsLoad(side.state)) {
    for (const b of side.bags) if (b.ok) line("bag", b.id, t("markers.bag"));
    if (side.state === "ridden" && side.body) line("rider", side.body.rider, t("markers.rider"));
  }
  return list.sort((a, b) => b.mass_g - a.mass_g);
}

// way says how far in one of two directions; nothing for no way that shows.
function way(mm: number, more: Key, less: Key, s: Scale): string {
  if (Math.abs(mm) < 0.5 * s.per * 10 ** -s.decimals) return "";
  return t(mm < 0 ? less : more, { length: plain(rough(Math.abs(mm), s)) });
}

// told is what the picture shows, in sentences.
export function told(list = markers()): string {
  const doc = store.doc;
  const of = store.shown(store.letter);
  const total = of?.figures.find((f) => f.key === "total");
  const figure = (key: string) => of?.figures.find((f) => f.key === key) ?? { value: 0, plus: 0, unit: "" };
  const name = (id: string) => doc?.builds.find((b) => b.id === id)?.name ?? "";
  if (!doc || !of || !total || !list.length) return t("markers.none");
  const { show } = doc;
  const length = figureScale("mm", show);
  const mass = figureScale("g", show);
  const m = (key: string) => plain(write(figure(key).value, figure(key).plus, mass));
  const y = figure("centre_y").value;
  const out = [
    t(store.look.side === "rear" ? "markers.view.rear" : "markers.view.side", { build: "name" in of && of.name ? of.name : name(store.activeID) }),
    t("markers.total", { value: m("total") }),
    t("markers.centre", {
      x: plain(alone(figure("centre_x").value, figure("centre_x").plus, length)),
      y: way(y, "markers.left.of", "markers.right.of", length) || t("markers.middle"),
      z: plain(alone(figure("centre_z").value, figure("centre_z").plus, length)),
    }),
    t("markers.axles", {
      front: m("front_load"),
      rear: m("rear_load"),
      share: plain(alone(figure("front_share").value, figure("front_share").plus, figureScale("ratio", show, "front_share"))),
    }),
    t("markers.heaviest", {
      list: list
        .slice(0, heaviest)
        .map((k) => `${brief(k.name)}, ${massOf(k, show)}`)
        .join("; "),
    }),
  ];
  const other = store.ids.B ? store.ids[store.letter === "A" ? "B" : "A"] : "";
  const d = store.difference;
  if (other && !store.look.ghost) out.push(t("markers.noghost"));
  else if (other) {
    out.push(t("markers.ghost", { build: name(other) }));
    const by = (key: string) => (d?.figures.find((f) => f.key === key)?.delta ?? 0) * (store.letter === "B" ? 1 : -1);
    const ways = [
      way(by("centre_x"), "markers.forward", "markers.back", length),
      way(by("centre_y"), "markers.left", "markers.right", length),
      way(by("centre_z"), "markers.up", "markers.down", length),
    ].filter(Boolean);
    if (d) out.push(ways.length ? t("markers.shift", { list: ways.join(", ") }) : t("markers.still"));
  }
  const chosen = list.find((k) => k.id === store.selected);
  if (chosen) out.push(t("markers.chosen", { part: chosen.name }));
  return out.join(" ");
}

function massOf(k: Marker, show: Show): string {
  return plain(write(k.mass_g, k.plus_g, partScale(show)));
}

class Markers extends DeferredElement {
  private all = false;

  protected override render(): TemplateResult {
    const list = markers();
    const on = foldOpen("picture/markers");
    return html`<details class="words" ?open=${on} @toggle=${foldMoved("picture/markers", false, () => this.requestUpdate())}>
      <summary>${t("markers.title")}</summary>
      <p id="picture-told"><span class="unseen">${t("markers.summary")}: </span>${told(list)}</p>
      ${on && list.length ? this.table(list) : nothing}
    </details>`;
  }

  private table(list: Marker[]): TemplateResult {
    const { show } = store.doc!;
    const unit = lengthField(show).unit;
    const s = partScale(show);
    const caption = t("markers.caption", { build: store.build?.name ?? "", unit });
    return html`<p class="fine" id="markers-caption">${caption}</p>
      <div class="scroll" tabindex="0" role="region" aria-label=${t("markers.title")}>
        <table class="lines markers" aria-labelledby="markers-caption">
          <thead>
            <tr>
              <th scope="col">${t("markers.part")}</th>
              <th scope="col" class="right">${t("markers.mass", { unit: s.unit })}</th>
              <th scope="col" class="right">${t("markers.x")}</th>
              <th scope="col" class="right">${t("markers.y")}</th>
              <th scope="col" class="right">${t("markers.z")}</th>
              <th scope="col">${t("markers.carrier")}</th>
              <th scope="col">${t("markers.sprung")}</th>
            </tr>
          </thead>
          <tbody>
            ${(this.all ? list : list.slice(0, first)).map((k) => {
              const [x, y, z] = placeText(k.place_mm, show);
              const chosen = k.id === store.selected;
              return html`<tr class=${chosen ? "chosen" : ""}>
                <th scope="row">
                  <button type="button" class="plain name" aria-pressed=${chosen} title=${t("markers.choose", { part: k.name })} @click=${() => store.select(chosen ? "" : k.id)}>
                    ${brief(k.name)}
                  </button>
                </th>
                <td class="right">${plain({ ...write(k.mass_g, k.plus_g, s), unit: "" })}</td>
                <td class="right">${x}</td>
                <td class="right">${y}</td>
                <td class="right">${z}</td>
                <td>${k.carrier}</td>
                <td>${k.springs}</td>
              </tr>`;
            })}
          </tbody>
        </table>
      </div>
      ${
        list.length > first
          ? html`<button
            type="button"
            class="plain"
            @click=${() => {
              this.all = !this.all;
              this.requestUpdate();
            }}
          >
            ${this.all ? t("markers.fewer") : t("markers.more", { n: list.length })}
          </button>`
          : nothing
      }`;
  }
}

customElements.define("sy-markers", Markers);
