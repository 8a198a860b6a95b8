// The rider of a load: measures, posture, and whether the body reaches what it
// must on the bikes that carry the load.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core } from "../../core/core.ts";
import { setPath } from "../../app/edit.ts";
import { addRider, carried, editRider, findLoad, findRider, removeRider, ridersOf, seat } from "../../app/loadEdit.ts";
import { bodyTableValues, postureValues, type Load, type Problem, type Rider } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { brief, phrase, t, word } from "../../text/index.ts";
import { decimal, figureScale, plain, write } from "../../model/units.ts";
import { domID, focusSoon } from "../../elements/element.ts";
import { choice, field, lengthInput, massInput, numberInput, problemOf } from "../../elements/field.ts";
import { badge } from "../../elements/figure.ts";
import "../../elements/menu.ts";
import { go } from "../../elements/lines.ts";
import { sidesShown } from "../../app/sides.ts";

const unseated = "new";

function choose(load: Load, id: string): void {
  if (id === unseated) {
    fresh(load, { ...core.newRider(), name: t("rider.new.name") });
    return;
  }
  store.edit(t("do.seat", { name: load.name }), (d) => seat(d, load.id, id));
}

// fresh adds a rider, seats it and goes to its name.
function fresh(load: Load, rider: Omit<Rider, "id">): void {
  let id = "";
  store.edit(t("do.seat", { name: load.name }), (d) => {
    const n = addRider(d, rider);
    id = n.id;
    return seat(n.doc, load.id, n.id);
  });
  focusSoon(domID("f", `rider/${id}/name`));
}

export function riderForm(load: Load): TemplateResult {
  const doc = store.doc!;
  const rider = findRider(doc, load.rider ?? "");
  const options = [
    { value: "", label: t("rider.none") },
    ...ridersOf(doc).map((r) => ({ value: r.id, label: brief(r.name || r.id) })),
    { value: unseated, label: `${t("rider.new")}…` },
  ];
  const wrong = problemOf({ load: load.id }, "rider");
  return html`<fieldset class="specs">
    <legend>
      <span>${t("load.rider")}</span>
      ${
        rider
          ? html`<sy-menu
            .label=${t("builds.menu")}
            .name=${t("rider.menu")}
            .items=${[
              { label: t("rider.copy"), run: () => fresh(load, { ...rider, name: `${rider.name}${t("load.copysuffix")}` }) },
              { label: t("rider.delete"), run: () => discard(rider) },
            ]}
          ></sy-menu>`
          : nothing
      }
    </legend>
    <div class="field choice">
      <label for="f--rider-of">${t("rider.choose")}</label><span class="leader" aria-hidden="true"></span>
      <span class="control"
        ><select
          id="f--rider-of"
          .value=${live(rider?.id ?? "")}
          aria-invalid=${wrong ? "true" : nothing}
          aria-describedby=${wrong ? "f--rider-of-why" : nothing}
          @change=${(e: Event) => choose(load, (e.target as HTMLSelectElement).value)}
        >
          ${options.map((o) => html`<option value=${o.value} ?selected=${o.value === (rider?.id ?? "")}>${o.label}</option>`)}
        </select></span
      >
      ${wrong ? html`<p id="f--rider-of-why" class="why wrong">${wrong.message}</p>` : nothing}
    </div>
    ${rider ? fields(rider) : html`<p class="fine">${t("rider.nobody")}</p>`}
  </fieldset>`;
}

function discard(r: Rider): void {
  store.edit(t("do.deleteload", { name: r.name }), (d) => removeRider(d, r.id));
  store.tell(t("rider.deleted", { name: r.name }), { label: t("undo"), run: () => store.undo() });
}

function fields(r: Rider): TemplateResult {
  const key = (f: string) => `rider/${r.id}/${f}`;
  const at = (f: string) => problemOf({ rider: r.id }, f);
  const set = (f: keyof Rider, label: string) => (v: unknown) =>
    store.edit(t("do.line", { field: label, name: r.name }), (d) => editRider(d, r.id, (q) => setPath(q, f, v)), key(f));
  const mass = (f: "mass_g" | "half_width_g" | "clothing_g" | "shoes_g", label: string, heavy: boolean) =>
    massInput({ key: key(f), label, value: r[f], heavy, problem: at(f), set: set(f, label) });
  return html`${field({ key: key("name"), label: t("rider.name"), text: r.name, problem: at("name"), accept: set("name", t("rider.name")) })}
    ${lengthInput({ key: key("stature_mm"), label: t("rider.stature"), value: r.stature_mm, problem: at("stature_mm"), set: set("stature_mm", t("rider.stature")) })}
    ${mass("mass_g", t("rider.mass"), true)} ${mass("half_width_g", t("rider.half"), true)} ${mass("clothing_g", t("rider.clothing"), false)}
    ${mass("shoes_g", t("rider.shoes"), false)}
    ${choice({
      key: key("table"),
      label: t("rider.table"),
      value: r.table,
      problem: at("table"),
      options: bodyTableValues.map((v) => ({ value: v, label: t(`rider.table.${v}`) })),
      set: set("table", t("rider.table")),
    })}
    ${choice({
      key: key("posture"),
      label: t("rider.posture"),
      value: r.posture,
      problem: at("posture"),
      options: postureValues.map((v) => ({ value: v, label: t(`rider.posture.${v}`) })),
      set: set("posture", t("rider.posture")),
    })}
    ${numberInput({ key: key("crank_deg"), label: t("rider.crank"), unit: t("unit.deg"), step: 5, value: r.crank_deg, problem: at("crank_deg"), set: set("crank_deg", t("rider.crank")) })}
    <p class="fine">${word("help", "rider")}</p>
    ${fit(r)}`;
}

// fit tells, for each bike that carries this rider, how the body sits on it or
// what is in the way.
function fit(r: Rider): TemplateResult {
  const show = store.doc!.show;
  const mm = figureScale("mm", show);
  const told = sidesShown().flatMap((letter) => {
    const side = store.side(letter);
    const load = store.doc && findLoad(store.doc, carried(store.doc)[letter === "A" ? 0 : 1]);
    if (load?.rider !== r.id) return [];
    const b = side?.rider === r.id ? side.body : undefined;
    const sits = b
      ? `${t("rider.fits", {
          deg: `${decimal(b.lean_deg, 0)}${t("unit.deg")}`,
          mass: plain(write(b.mass_g, b.plus_g, figureScale("g", show))),
          z: `${decimal(b.centre_mm[2] / mm.per, mm.decimals)}\u00a0${mm.unit}`,
        })} ${phrase(b.note)}`
      : "";
    // What stands at one of the rider's own fields is told there.
    const amiss = store.problems.filter((p: Problem) => p.rider === r.id && p.build === store.ids[letter] && !(p.field && p.field in r));
    return [{ letters: [letter], sits, amiss }];
  });
  const [a, b] = told;
  if (a && b && a.sits === b.sits && JSON.stringify(a.amiss.map((p) => p.message)) === JSON.stringify(b.amiss.map((p) => p.message))) {
    a.letters.push("B");
    told.pop();
  }
  return html`${told.map(
    ({ letters, sits, amiss }) =>
      html`<div class="fit">
        <span>${letters.map((l) => html`${badge(l)}<span class="unseen">${l} </span>`)}</span>
        <div>
          ${sits ? html`<p>${sits}</p>` : nothing}
          ${amiss.map(
            (p) =>
              html`<p class=${p.severity === "error" ? "why wrong" : "why"}>
                ${p.message} <button type="button" class="plain strong" @click=${() => go(p)}>${t("problems.go")}</button>
              </p>`,
          )}
        </div>
      </div>`,
  )}`;
}
