// One line of the parts list, and its details.

import { html, nothing, type TemplateResult } from "lit";
import { guard } from "lit/directives/guard.js";
import { core } from "../../core/core.ts";
import { live as bound } from "lit/directives/live.js";
import { apart, editPart, findBuild, setPath } from "../../app/edit.ts";
import { editKnown } from "../../app/sharing.ts";
import { deletePart, duplicate, moveToOther } from "../../elements/partActs.ts";
import { named, springs, sprung } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { language, brief, has, t, word } from "../../text/index.ts";
import { basisValues, carrierValues, formValues, type Basis, type Form, type Part, type PartReport, type SharedThing, type Vec3 } from "../../model/types.ts";
import { alone, partScale, placeText } from "../../model/units.ts";
import { domID, focusSoon } from "../../elements/element.ts";
import { choice, field, lengthInput, massInput, numberInput, problemAt } from "../../elements/field.ts";
import { number } from "../../elements/figure.ts";
import { alsoIn, betterKnown, sharedNote } from "../../elements/shared.ts";
import { mark, marks, step } from "./marks.ts";
import { deleteMarked } from "./markbar.ts";

// partRows gives the line, and under it the details when they are open. What
// has not changed is not looked at again.
export function partRows(p: Part, long: boolean, shared: SharedThing | undefined): TemplateResult {
  const open = store.open.has(p.id);
  const chosen = store.selected === p.id;
  const w = store.weighed(p.id);
  const stem = `${store.activeID}/${p.id}/`;
  const typing = [...store.drafts].filter(([k]) => k.startsWith(stem)).map(([k, d]) => `${k}=${d.text}=${d.why}`);
  const problems = store.problems.filter((q) => q.part === p.id && q.build === store.activeID).map((q) => `${q.field}${q.message}`);
  const known = [
    p,
    open,
    chosen,
    long,
    store.activeID,
    store.otherID,
    store.doc!.show,
    language(),
    store.kinds,
    store.stations,
    springs(),
    store.figures(store.activeID)?.rear_sprung,
    typing.join(),
    problems.join(),
    JSON.stringify(shared),
    open && store.doc!.builds.map((b) => b.name).join(),
    marks.on && marks.ids.has(p.id),
    marks.on,
    w ? `${w.mass_g},${w.place_mm},${w.unsprung},${w.ok},${w.off}` : "",
  ];
  return html`${guard(known, () => html`${line(p, w, chosen, open, long, shared)}${open ? details(p, shared) : nothing}`)}`;
}

function edit(p: Part, what: string, change: (p: Part) => Part, key = ""): void {
  const path = key ? `${store.activeID}/${p.id}/${key}` : "";
  store.edit(t("do.edit", { field: what, part: p.name }), (d) => editPart(d, store.activeID, p.id, change), path);
}

function set(p: Part, path: string, what: string): (v: unknown) => void {
  return (v) => edit(p, what, (q) => setPath(q, path, v), path);
}

// know is edit for what is known of a part, which is known of it in every build.
function know(p: Part, what: string, change: (p: Part) => Part, key = ""): void {
  editKnown("parts", store.activeID, p, what, change, key ? `${store.activeID}/${p.id}/${key}` : "");
}

function setKnown(p: Part, path: string, what: string): (v: unknown) => void {
  return (v) => know(p, what, (q) => setPath(q, path, v), path);
}

function setMass(p: Part): (v: number) => void {
  return (v) =>
    know(
      p,
      t("parts.mass"),
      (q) => ({ ...q, mass_g: v, half_width_g: q.half_width_g === core.halfWidth(q.basis, q.mass_g) ? core.halfWidth(q.basis, v) : q.half_width_g }),
      "mass_g",
    );
}

function line(p: Part, w: PartReport | undefined, chosen: boolean, open: boolean, long: boolean, shared: SharedThing | undefined): TemplateResult {
  const build = store.activeID;
  const key = (f: string) => `${build}/${p.id}/${f}`;
  const at = (f: string) => problemAt(f, build, p.id);
  const show = store.doc!.show;
  const [x, y, z] = w ? placeText(w.place_mm, show) : ["", "", ""];
  const live = !long || chosen;
  const choose = () => store.select(p.id);
  return html`<tr
    id=${domID("row", p.id)}
    data-part=${p.id}
    role="row"
    tabindex="-1"
    class="part ${chosen ? "chosen" : ""} ${marks.on && marks.ids.has(p.id) ? "marked" : ""} ${w && !w.ok && !w.off ? "out" : ""}"
    aria-selected=${nothing}
    @focusin=${choose}
    @click=${choose}
  >
    <td role="cell" class="q">
      ${numberInput({
        key: key("quantity"),
        label: `${t("parts.quantity")}, ${brief(p.name)}`,
        hidden: true,
        whole: true,
        value: p.quantity,
        problem: at("quantity"),
        set: set(p, "quantity", t("parts.quantity")),
      })}
    </td>
    <th role="rowheader" scope="row" class="n">
      ${marks.on ? marker(p) : nothing}
      ${
        w && springs()
          ? html`<span class="sw ${w.unsprung >= 0.999 ? "unsprung" : w.unsprung > 0.001 ? "half" : "sprung"}" title=${sprung(w)}><span class="unseen">${sprung(w)}</span></span>`
          : nothing
      }
      ${field({
        key: key("name"),
        label: t("parts.name"),
        hidden: true,
        text: p.name,
        problem: at("name"),
        accept: (v) => setKnown(p, "name", t("parts.name"))(v),
      })}
      ${alsoIn("parts", shared)} ${betterKnown(shared, p.name, (q) => know(p, t("parts.mass"), (x) => ({ ...x, ...q })))}
      ${w?.off ? html`<em class="off">${t("parts.off")}</em>` : w && !w.ok ? html`<em class="left">${t("parts.left")}</em>` : nothing}
    </th>
    <td role="cell" class="m">
      ${massInput({ key: key("mass_g"), label: `${t("parts.mass")}, ${brief(p.name)}`, hidden: true, value: p.mass_g, problem: at("mass_g"), set: setMass(p) })}
    </td>
    <td role="cell" class="h">
      ${massInput({
        key: key("half_width_g"),
        label: `${t("parts.half")}, ${brief(p.name)}`,
        hidden: true,
        value: p.half_width_g,
        problem: at("half_width_g"),
        set: setKnown(p, "half_width_g", t("parts.half")),
      })}
    </td>
    <td role="cell" class="b">
      ${
        live
          ? choice({
              key: key("basis"),
              label: `${t("parts.basis")}, ${brief(p.name)}`,
              hidden: true,
              value: p.basis,
              problem: at("basis"),
              options: basisValues.map((b) => ({ value: b, label: t(`basis.${b}.short`) })),
              set: (v) => know(p, t("parts.basis"), (q) => ({ ...q, basis: v as Basis, half_width_g: core.halfWidth(v as Basis, q.mass_g) })),
            })
          : html`<span class="still">${has(`basis.${p.basis}.short`) ? t(`basis.${p.basis}.short`) : p.basis}</span>`
      }
    </td>
    <td role="cell" class="s">
      ${
        p.at_mm
          ? html`<span class="still">${t("part.placed.at")}</span>`
          : live
            ? stationChoice(p, true)
            : html`<span class="still">${named("station", p.station ?? "")}</span>`
      }
    </td>
    <td role="cell" class="c">
      ${
        live
          ? choice({
              key: key("carrier"),
              label: `${t("parts.carrier")}, ${brief(p.name)}`,
              hidden: true,
              value: p.carrier,
              problem: at("carrier"),
              options: carrierValues.map((c) => ({ value: c, label: named("carrier", c) })),
              set: set(p, "carrier", t("parts.carrier")),
            })
          : html`<span class="still">${named("carrier", p.carrier)}</span>`
      }
    </td>
    <td role="cell" class="p right" data-label=${t("parts.place.x")}>${x}</td>
    <td role="cell" class="p right" data-label=${t("parts.place.y")}>${y}</td>
    <td role="cell" class="p right" data-label=${t("parts.place.z")}>${z}</td>
    <td role="cell" class="t right">${w?.ok ? number(alone(w.mass_g, w.plus_g, partScale(show)), true) : "–"}</td>
    <td role="cell" class="a">
      <button
        type="button"
        class="plain disclose"
        aria-expanded=${open}
        aria-label=${open ? t("parts.less", { part: p.name }) : t("parts.details", { part: p.name })}
        @click=${(e: Event) => {
          e.stopPropagation();
          if (open) store.open.delete(p.id);
          else store.open.add(p.id);
          store.select(p.id);
          store.touch();
        }}
      >
        <span aria-hidden="true">${open ? "▲" : "▼"}</span>
      </button>
    </td>
  </tr>`;
}

function marker(p: Part): TemplateResult {
  return html`<label class="marker"
    ><input
      type="checkbox"
      aria-label=${t("marks.part", { part: p.name })}
      .checked=${bound(marks.ids.has(p.id))}
      @click=${(e: MouseEvent) => mark(p.id, (e.target as HTMLInputElement).checked, e.shiftKey)}
      @keydown=${(e: KeyboardEvent) => {
        if (e.key === "ArrowDown" || e.key === "ArrowUp") step(p.id, e.key === "ArrowDown" ? 1 : -1, e.shiftKey);
        else if (e.key === "Delete") deleteMarked();
        else return;
        e.preventDefault();
      }}
  /></label>`;
}

// makeOwn lets a part be known apart from those that it was one with.
function makeOwn(p: Part): void {
  const build = store.activeID;
  let id = "";
  store.edit(t("do.apart", { part: p.name, build: findBuild(store.doc!, build)?.name ?? "" }), (d) => {
    const r = apart(d, build, p.id);
    id = r.id;
    return r.doc;
  });
  store.open.delete(p.id);
  store.open.add(id);
  store.select(id);
  focusSoon(domID("f", `${build}/${id}/mass_g`));
  store.tell(t("shared.apart.done", { part: p.name }), { label: t("undo"), run: () => store.undo() });
}

function stationChoice(p: Part, hidden: boolean): TemplateResult {
  return choice({
    key: `${store.activeID}/${p.id}/${hidden ? "station" : "station-2"}`,
    label: hidden ? `${t("parts.station")}, ${brief(p.name)}` : t("parts.station"),
    hidden,
    value: p.station ?? "",
    problem: problemAt("station", store.activeID, p.id),
    options: store.stations.map((s) => ({ value: s.name, label: named("station", s.name) })),
    set: (v) => edit(p, t("parts.station"), (q) => ({ ...q, station: v })),
  });
}

const sizes: Record<Form, string[]> = {
  point: [],
  rod: ["size.rod.0"],
  ring: ["size.ring.0"],
  disc: ["size.disc.0", "size.disc.1"],
  box: ["size.box.0", "size.box.1", "size.box.2"],
  pair: ["size.pair.0"],
};

function details(p: Part, shared: SharedThing | undefined): TemplateResult {
  const build = store.activeID;
  const key = (f: string) => `${build}/${p.id}/${f}`;
  const at = (f: string) => problemAt(f, build, p.id);
  const placed = p.at_mm ? "at_mm" : "offset_mm";
  const place: Vec3 = p.at_mm ?? p.offset_mm;
  const w = store.weighed(p.id);
  const other = store.otherID;
  const letter = other === store.ids.B ? "B" : "A";
  const coordinate = (i: 0 | 1 | 2, label: string) =>
    lengthInput({
      key: key(`${placed}.${i}`),
      label,
      value: place[i],
      problem: i === 0 ? at(placed) : undefined,
      set: set(p, `${placed}.${i}`, t("part.at")),
    });
  return html`<tr class="details" role="row">
    <td role="cell" colspan="12">
      <div class="sheetlet">
        <div class="specs">
          <h3>${t("part.at")}</h3>
          ${choice({
            key: key("placed"),
            label: t("part.placed"),
            value: p.at_mm ? "at" : "station",
            options: [
              { value: "station", label: t("part.placed.station") },
              { value: "at", label: t("part.placed.at") },
            ],
            set: (v) =>
              edit(p, t("part.placed"), (q) => {
                if (v === "at") {
                  const { station: _, ...rest } = q;
                  return { ...rest, at_mm: (w?.place_mm ?? [0, 0, 500]).map((n) => Math.round(n)) as Vec3 };
                }
                const { at_mm: _, ...rest } = q;
                return { ...rest, station: q.station || "frame", offset_mm: [0, 0, 0] };
              }),
          })}
          ${p.at_mm ? nothing : stationChoice(p, false)} ${coordinate(0, `${p.at_mm ? "" : `${t("part.offset")}, `}${t("part.forward")}`)}
          ${coordinate(1, p.at_mm ? t("part.left") : t("part.left.outward"))} ${coordinate(2, t("part.up"))}
          ${lengthInput({ key: key("within_mm"), label: t("part.within"), value: p.within_mm, problem: at("within_mm"), set: set(p, "within_mm", t("part.within")) })}
        </div>
        <div class="specs">
          <h3>${t("part.shape")}</h3>
          ${choice({
            key: key("kind"),
            label: t("part.kind"),
            value: p.kind,
            problem: at("kind"),
            options: store.kinds.map((k) => ({ value: k.id, label: word("kind", k.id) })),
            set: set(p, "kind", t("part.kind")),
          })}
          ${choice({
            key: key("carrier-2"),
            label: t("parts.carrier"),
            value: p.carrier,
            options: carrierValues.map((c) => ({ value: c, label: named("carrier", c) })),
            set: set(p, "carrier", t("parts.carrier")),
          })}
          ${choice({
            key: key("shape.form"),
            label: t("part.shape"),
            value: p.shape.form,
            problem: at("shape.form"),
            options: formValues.map((f) => ({ value: f, label: t(`form.${f}`) })),
            set: set(p, "shape.form", t("part.shape")),
          })}
          ${(sizes[p.shape.form] ?? []).map((label, i) =>
            lengthInput({
              key: key(`shape.size_mm.${i}`),
              label: t(label as Parameters<typeof t>[0]),
              value: p.shape.size_mm[i] ?? 0,
              problem: i === 0 ? at("shape.size_mm") : undefined,
              set: set(p, `shape.size_mm.${i}`, t("part.shape")),
            }),
          )}
          ${
            p.shape.form === "rod" || p.shape.form === "box"
              ? numberInput({
                  key: key("shape.pitch_deg"),
                  label: t("part.pitch"),
                  unit: t("unit.deg"),
                  value: p.shape.pitch_deg ?? 0,
                  problem: at("shape.pitch_deg"),
                  set: set(p, "shape.pitch_deg", t("part.pitch")),
                })
              : nothing
          }
        </div>
        <div class="specs">
          <h3>${t("part.note")}</h3>
          ${field({
            key: key("note"),
            label: t("part.note"),
            hidden: true,
            kind: "long",
            text: p.note ?? "",
            accept: (v) => setKnown(p, "note", t("part.note"))(v === "" ? undefined : v),
          })}
          ${sharedNote("parts", shared, () => makeOwn(p))}
          <div class="acts">
            <button type="button" @click=${() => duplicate(p.id)}>${t("part.duplicate")}</button>
            ${other ? html`<button type="button" @click=${() => moveToOther(p.id)}>${t("part.handover", { letter })}</button>` : nothing}
            <button type="button" class="danger" @click=${() => deletePart(p.id)}>${t("part.delete")}</button>
          </div>
        </div>
      </div>
    </td>
  </tr>`;
}
