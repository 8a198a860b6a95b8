// The figures of the frame and all that decides where things are, set like the
// specification on a workshop sheet; and the geometry that follows from them.

import { html, nothing, type TemplateResult } from "lit";
import { editBuild, findBuild, getPath, setPath } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { t, word, type Key } from "../../text/index.ts";
import type { Build } from "../../model/types.ts";
import { decimal, figureScale, lengthField, signed, trim } from "../../model/units.ts";
import { subhead } from "../../elements/copytable.ts";
import { DeferredElement } from "../../elements/element.ts";
import { field, lengthInput, numberInput, problemAt } from "../../elements/field.ts";
import { badge } from "../../elements/figure.ts";
import type { FrameTableDialog } from "./table.ts";
import "./table.ts";

const sections = ["frame", "fork", "rear", "wheels", "cockpit", "saddle", "cranks"] as const;
type Section = (typeof sections)[number];

const fields: Record<Section, string[]> = {
  frame: ["stack_mm", "reach_mm", "head_tube_mm", "head_angle_deg", "seat_tube_mm", "seat_angle_deg", "chainstay_mm", "bb_drop_mm"],
  fork: ["length_mm", "offset_mm", "travel_mm", "sag_mm"],
  rear: ["travel_mm", "sag_mm", "pivot_forward_mm", "pivot_up_mm", "shock_frame_mm.0", "shock_frame_mm.1", "shock_swing_mm.0", "shock_swing_mm.1"],
  wheels: ["front.bead_seat_mm", "front.tyre_mm", "rear.bead_seat_mm", "rear.tyre_mm"],
  cockpit: ["spacers_mm", "stem_mm", "stem_angle_deg", "bar_width_mm", "bar_rise_mm", "bar_back_mm"],
  saddle: ["height_mm", "setback_mm"],
  cranks: ["length_mm", "width_mm"],
};

// What is asked of a spring beside its travel.
const ofSpring = { fork: ["sag_mm"], rear: fields.rear.filter((f) => f !== "travel_mm") };

class FrameSheet extends DeferredElement {
  protected override render(): TemplateResult {
    const { build } = store;
    const { letter } = store;
    return html`<div class="head">
        <h2 id="frame-title">${t("frame.title", { letter })}</h2>
        <p class="quiet">${t("frame.lead")}</p>
        ${build ? html`<button type="button" class="pasting" @click=${() => this.querySelector<FrameTableDialog>("sy-frametable")?.open(build.id)}>${t("frame.paste")}</button>` : nothing}
      </div>
      <sy-frametable></sy-frametable>
      ${
        build
          ? html`<div class="specsheet">
            ${sections.map(
              (s) =>
                html`<fieldset class="specs">
                  <legend>${t(`frame.${s}`)}</legend>
                  ${this.asked(build, s).map((f) => this.input(build, s, f))} ${s === "rear" || s === "fork" ? html`<p class="fine">${t("frame.rigid")}</p>` : nothing}
                </fieldset>`,
            )}
            <div class="specs worked">${this.worked()}</div>
            <fieldset class="specs">
              <legend>${t("frame.notes")}</legend>
              ${field({
                key: `${build.id}/notes`,
                label: t("frame.notes"),
                hidden: true,
                kind: "long",
                text: build.notes ?? "",
                accept: (v) =>
                  store.edit(t("frame.notes"), (d) => editBuild(d, build.id, (b) => setPath(b, "notes", v === "" ? undefined : v)), `${build.id}/notes`),
              })}
            </fieldset>
          </div>`
          : nothing
      }`;
  }

  // asked are the fields of a section. An end without travel is asked for nothing
  // else of its spring, unless something there is wrong.
  private asked(build: Build, section: Section): string[] {
    if (section !== "fork" && section !== "rear") return fields[section];
    const report = store.figures(build.id);
    const sprung = section === "fork" ? report?.front_sprung : report?.rear_sprung;
    if (sprung !== false || store.stale(build.id)) return fields[section];
    return fields[section].filter((f) => !ofSpring[section].includes(f) || problemAt(`${section}.${f}`, build.id));
  }

  private input(build: Build, section: Section, f: string): TemplateResult {
    const path = `${section}.${f}`;
    const label = t(`${section}.f.${f}` as Key);
    const value = Number(getPath(build, path) ?? 0);
    const other = store.doc ? findBuild(store.doc, store.otherID) : undefined;
    const there = other ? Number(getPath(other, path) ?? 0) : value;
    const spec = {
      key: `${build.id}/${path}`,
      label,
      value,
      problem: problemAt(path, build.id),
      set: (v: number) => store.edit(label, (d) => editBuild(d, build.id, (b) => setPath(b, path, v)), `${build.id}/${path}`),
    };
    if (f.endsWith("_deg")) {
      return numberInput({ ...spec, unit: t("unit.deg"), step: 0.5, ...(there === value ? {} : { other: trim(there, 2) }) });
    }
    return lengthInput({ ...spec, ...(there === value ? {} : { other: lengthField(store.doc!.show).text(there) }) });
  }

  private worked(): TemplateResult {
    const show = store.doc!.show;
    const { A, B } = store.ids;
    const a = store.figures(A)?.geometry ?? [];
    const b = B ? (store.figures(B)?.geometry ?? []) : [];
    const keys = (a.length ? a : b).map((g) => g.key);
    const value = (list: typeof a, key: string) => list.find((g) => g.key === key);
    const text = (g: { value: number; unit: string } | undefined, sign = false) => {
      if (!g) return "–";
      const s = figureScale(g.unit, show);
      return sign ? signed(g.value / s.per, s.decimals) : decimal(g.value / s.per, s.decimals);
    };
    return html`${subhead(t("frame.worked"), t("frame.worked"))}
      <table class="lines geometry">
        <caption class="unseen">
          ${t("frame.worked.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col"><span class="unseen">${t("table.figure")}</span></th>
            <th scope="col" class="right">${badge("A")}<span class="unseen">A</span></th>
            ${B ? html`<th scope="col" class="right">${badge("B")}<span class="unseen">B</span></th>` : nothing}
          </tr>
        </thead>
        <tbody>
          ${keys.map((k) => {
            const g = value(a, k) ?? value(b, k)!;
            return html`<tr>
              <th scope="row">${word("geometry", k)} <span class="unit">${figureScale(g.unit, show).unit}</span></th>
              <td class="right">${text(value(a, k))}</td>
              ${B ? html`<td class="right">${text(value(b, k))}</td>` : nothing}
            </tr>`;
          })}
        </tbody>
      </table>
      <p class="fine">${t("frame.worked.caption")}.</p>`;
  }
}

customElements.define("sy-frame", FrameSheet);
