// Load and rider: which load, who rides, what hangs where and what is in it,
// how left and right compare, and what it comes to in every state.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { activeLoad, sideWith, workOn } from "../../app/activeLoad.ts";
import { core } from "../../core/core.ts";
import { setPath } from "../../app/edit.ts";
import { addLoad, blankLoad, carried, carry, editLoad, findLoad, loadsOf, removeLoad } from "../../app/loadEdit.ts";
import type { Load, Side } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { count, t, word } from "../../text/index.ts";
import { figureScale, massText, plain, plainScale, write } from "../../model/units.ts";
import { copyMenu } from "../../elements/copytable.ts";
import { focusSoon, nameSoon } from "../../elements/element.ts";
import { field } from "../../elements/field.ts";
import { badge } from "../../elements/figure.ts";
import { luggage } from "./luggage.ts";
import "../../elements/menu.ts";
import { riderForm } from "./rider.ts";
import type { Gist } from "../../elements/room.ts";
import { caution, Section } from "../../elements/section.ts";
import { firstLoad, sidesShown } from "../../app/sides.ts";
import { pathTable, statesTable } from "./states.ts";

// gist is what the room comes to.
export function gist(): Gist {
  const doc = store.doc!;
  if (!carried(doc).some(Boolean)) return { text: t("load.gist.none") };
  const lines = sidesShown().map((letter) => ({ letter, text: line(store.side(letter)) }));
  const [a, b] = lines;
  if (a && b && a.text === b.text) return { text: t("load.gist.both", { load: a.text }) };
  return { text: lines.map(({ letter, text }) => t("load.gist", { letter, load: text })).join("; ") };
}

function line(s: Side | undefined): string {
  const load = s && findLoad(store.doc!, s.load);
  if (!load) return t("load.gist.nothing");
  if (!load.bags.length) return t("load.gist.bare", { load: load.name });
  const grams = s.luggage_g;
  return count(load.bags.length, "load.gist.mass.one", "load.gist.mass", { load: load.name, mass: massText(grams, store.doc!.show) });
}

class LoadSection extends Section {
  protected readonly fold = "load";
  private naming = false;
  private was = ""; // the name before

  protected body(): TemplateResult {
    const load = activeLoad();
    if (!load) {
      return html`<p>${t("load.start")}</p>
        <p><button type="button" class="go" @click=${firstLoad}>${t("load.start.button")}</button></p>`;
    }
    return html`${this.bar(load)} ${caution()}
      <div class="loadsheet">
        <div class="aside">${riderForm(load)} ${leftRight(load)} ${this.notes(load)}</div>
        <div class="main">${luggage(load)}</div>
      </div>
      ${this.tables()}`;
  }

  private bar(load: Load): TemplateResult {
    const doc = store.doc!;
    const sides = carried(doc);
    const letters = sidesShown();
    return html`<div class="loadbar">
        ${
          this.naming
            ? html`<input
              id="load-name"
              class="name"
              type="text"
              aria-label=${t("load.name")}
              .value=${live(load.name)}
              @input=${(e: Event) => {
                const name = (e.target as HTMLInputElement).value;
                store.edit(
                  t("do.line", { field: t("load.name"), name: load.name }),
                  (d) => editLoad(d, load.id, (l) => ({ ...l, name })),
                  `load/${load.id}/name`,
                );
              }}
              @keydown=${(e: KeyboardEvent) => {
                if (e.key !== "Enter" && e.key !== "Escape") return;
                e.preventDefault();
                if (e.key === "Escape")
                  store.edit(
                    t("do.line", { field: t("load.name"), name: load.name }),
                    (d) => editLoad(d, load.id, (l) => ({ ...l, name: this.was })),
                    `load/${load.id}/name`,
                  );
                this.named();
                focusSoon("load-chosen");
              }}
              @blur=${() => this.named()}
            />`
            : html`<div class="set" role="group" aria-label=${t("load.choose")}>
              ${loadsOf(doc).map(
                (l) =>
                  html`<button type="button" id=${l.id === load.id ? "load-chosen" : nothing} class="toggle named" aria-pressed=${l.id === load.id} @click=${() => workOn(l.id)}>
                    <span class="build-name">${l.name || l.id}</span>
                  </button>`,
              )}
            </div>`
        }
        <div class="set">
          ${letters.map((letter) => {
            const on = sides[letter === "A" ? 0 : 1] === load.id;
            return html`<button
              type="button"
              class="toggle letter"
              aria-pressed=${on}
              title=${t("load.on.name", { letter })}
              @click=${() => store.edit(t("do.load", { letter }), (d) => carry(d, letter, on ? "" : load.id))}
            >
              <span class="unseen">${t("load.on.name", { letter })}</span><span class="onside" aria-hidden="true">${badge(letter)}</span>
            </button>`;
          })}
        </div>
        <div class="acts">
          <sy-menu
            .label=${t("builds.menu")}
            .name=${t("load.menu")}
            .items=${[
              { label: t("load.rename"), run: () => this.rename() },
              { label: t("load.copy"), run: () => this.copy(load) },
              { label: t("load.delete"), run: () => this.discard(load) },
            ]}
          ></sy-menu>
          <button type="button" class="plain" @click=${() => this.fresh()}>${t("load.new")}</button>
        </div>
      </div>
      ${sides.includes(load.id) ? nothing : html`<p class="quiet">${t("load.off")}</p>`}`;
  }

  private rename(): void {
    this.naming = true;
    this.was = activeLoad()?.name ?? "";
    this.requestUpdate();
    nameSoon("load-name");
  }

  private named(): void {
    if (!this.naming) return;
    this.naming = false;
    store.seal();
    this.requestUpdate();
  }

  private fresh(): void {
    store.edit(t("do.newload"), (d) => {
      const n = addLoad(d, blankLoad(t("load.new.name")));
      workOn(n.id);
      return n.doc;
    });
    this.rename();
  }

  private copy(load: Load): void {
    const doc = store.doc!;
    const o = core.copyLoad(JSON.stringify(doc), load.id, `${load.name}${t("load.copysuffix")}`);
    const made = o.document?.loads?.at(-1);
    if (!made) return;
    store.edit(t("do.copyload", { name: load.name }), (d) => ({ ...d, loads: [...loadsOf(d), made] }));
    workOn(made.id);
    store.tell(t("load.copied", { name: load.name }), { label: t("undo"), run: () => store.undo() });
    this.rename();
  }

  private discard(load: Load): void {
    store.edit(t("do.deleteload", { name: load.name }), (d) => removeLoad(d, load.id));
    workOn("");
    store.tell(t("load.deleted", { name: load.name }), { label: t("undo"), run: () => store.undo() });
  }

  private notes(load: Load): TemplateResult {
    const key = `load/${load.id}/notes`;
    return html`<fieldset class="specs">
      <legend>${t("frame.notes")}</legend>
      ${field({
        key,
        label: t("load.notes"),
        hidden: true,
        kind: "long",
        text: load.notes ?? "",
        accept: (v) => store.edit(t("load.notes"), (d) => editLoad(d, load.id, (l) => setPath(l, "notes", v === "" ? undefined : v)), key),
      })}
    </fieldset>`;
  }

  private tables(): TemplateResult | typeof nothing {
    if (!sidesShown().some((l) => store.side(l)?.states.length)) return nothing;
    const path = pathTable();
    return html`<div class="statesheet ${path === nothing ? "" : "two"}">
      <div>
        <div class="subhead">
          <h3>${t("states.title")}</h3>
          ${copyMenu(t("states.title"), "states")}
        </div>
        ${statesTable()}
      </div>
      ${path === nothing ? nothing : html`<div>${path}</div>`}
    </div>`;
  }
}

customElements.define("sy-load", LoadSection);

const panWide = 260;

// leftRight weighs the left side against the right, with the lean that the
// difference causes.
function leftRight(load: Load): TemplateResult | typeof nothing {
  const h = sideWith(load.id)?.handling;
  if (!h || !(h.left_g + h.right_g > 0)) return nothing;
  const show = store.doc!.show;
  const text = (g: number) => massText(g, show);
  const most = Math.max(h.left_g, h.right_g);
  const bar = (g: number) => (g / most) * (panWide / 2 - 2);
  const middle = panWide / 2;
  const deg = (v: number, plus: number) => plain(write(Math.abs(v), plus, plainScale(t("unit.deg"), 1))).replace("\u00a0", "");
  const lean = h.lean;
  const level = !lean || Math.abs(lean.value) < 0.05;
  const move = h.rebalance;
  return html`<h3>${t("sides.title")}</h3>
    <div class="pans">
      <p><span>${t("sides.left")} <b>${text(h.left_g)}</b></span> <span><b>${text(h.right_g)}</b> ${t("sides.right")}</span></p>
      <svg viewBox="0 0 ${panWide} 14" aria-hidden="true" focusable="false">
        <rect class="luggage" x=${(middle - bar(h.left_g)).toFixed(1)} y="3" width=${bar(h.left_g).toFixed(1)} height="8" />
        <rect class="luggage" x=${middle} y="3" width=${bar(h.right_g).toFixed(1)} height="8" />
        <path class="axis" d="M${middle} 0v14" />
      </svg>
      <p>
        ${level ? t("sides.lean.none") : t(lean.value > 0 ? "sides.lean.right" : "sides.lean.left", { deg: deg(lean.value, lean.plus) })}
        ${
          move && !level
            ? t(move.plus_g > move.mass_g ? "sides.move.unsure" : move.from === "left" ? "sides.move.left" : "sides.move.right", {
                mass: plain(write(move.mass_g, move.plus_g, figureScale("g", show))),
              })
            : nothing
        }
        ${word("help", "lean")}
      </p>
    </div>`;
}
