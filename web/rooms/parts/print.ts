// The lists of parts on paper.

import { html, nothing, type TemplateResult } from "lit";
import { lettersPrinted } from "../../elements/paper.ts";
import { findBuild } from "../../app/edit.ts";
import { named } from "../../app/places.ts";
import type { Letter } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import { t, type Key } from "../../text/index.ts";
import type { Part } from "../../model/types.ts";
import { decimal, lengthField, massField, partScale } from "../../model/units.ts";

export function printParts(): (TemplateResult | typeof nothing)[] {
  // Several builds stand in one list, which their own room prints.
  if (store.doc!.builds.length > 1) return [];
  return buildsShown().map(parts);
}

function buildsShown(): Letter[] {
  const { A, B } = store.ids;
  return lettersPrinted().filter((l) => l === "A" || A !== B);
}

function parts(letter: Letter): TemplateResult | typeof nothing {
  const doc = store.doc!;
  const build = findBuild(doc, store.ids[letter]);
  if (!build?.parts.length) return nothing;
  const told = new Map(store.figures(build.id)?.parts.map((p) => [p.id, p]));
  const own = new Map<string, number>(store.figures(build.id)?.own.map((g) => [g.key, g.mass_g]));
  const group = new Map(store.kinds.map((k) => [k.id, k.group]));
  const groups = new Map<string, Part[]>([...new Set(store.kinds.map((k) => k.group))].map((g) => [g, []]));
  for (const p of build.parts) groups.get(group.get(p.kind) ?? "other")?.push(p);
  const s = partScale(doc.show);
  const mass = massField(doc.show);
  const length = lengthField(doc.show);
  return html`<section>
    <h2>${t("report.parts", { letter, build: build.name })}</h2>
    ${build.notes ? html`<p>${build.notes}</p>` : nothing}
    <table class="lines partslist">
      <thead>
        <tr>
          <th scope="col" class="right">${t("parts.quantity.short")}</th>
          <th scope="col">${t("parts.name")}</th>
          <th scope="col" class="right">${t("report.each")}, ${mass.unit}</th>
          <th scope="col" class="right">±, ${mass.unit}</th>
          <th scope="col">${t("parts.basis")}</th>
          <th scope="col">${t("parts.station")}</th>
          <th scope="col" class="right">${t("report.together")}, ${s.unit}</th>
        </tr>
      </thead>
      ${[...groups].map(([g, list]) =>
        list.length
          ? html`<tbody>
              <tr class="group">
                <th scope="rowgroup" colspan="6">${named("group", g, build.id)}</th>
                <td class="right">${decimal((own.get(g) ?? 0) / s.per, s.decimals)}</td>
              </tr>
              ${list.map((p) => {
                const r = told.get(p.id);
                return html`<tr>
                  <td class="right">${p.quantity}</td>
                  <th scope="row">${p.name}${p.note ? html`<br /><small>${p.note}</small>` : nothing}</th>
                  <td class="right">${mass.text(p.mass_g)}</td>
                  <td class="right">${mass.text(p.half_width_g)}</td>
                  <td>${t(`basis.${p.basis}.short`)}</td>
                  <td>${p.at_mm ? `${p.at_mm.map((v) => length.text(v)).join(" / ")} ${length.unit}` : named("station", p.station ?? "", build.id)}</td>
                  <td class="right">${r?.ok ? decimal(r.mass_g / s.per, s.decimals) : t("parts.left" as Key)}</td>
                </tr>`;
              })}
            </tbody>`
          : nothing,
      )}
    </table>
  </section>`;
}
