// The difference on paper, and what to weigh first.

import { html, nothing, type TemplateResult } from "lit";
import { number } from "../../elements/figure.ts";
import { lettersPrinted } from "../../elements/paper.ts";
import { groupOfBoth } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { Advice, Difference } from "../../model/types.ts";
import { partScale, plain, rough, write } from "../../model/units.ts";

export function printDifference(): TemplateResult | typeof nothing {
  return store.difference ? difference(store.difference) : nothing;
}

function difference(d: Difference): TemplateResult {
  const show = store.doc!.show;
  const s = partScale(show);
  return html`<section>
    <h2>${t("diff.title")}</h2>
    <p>${d.summary}</p>
    <h3>${t("diff.groups")}</h3>
    <table class="lines">
      <thead>
        <tr>
          <th scope="col">${t("diff.group")}</th>
          ${lettersPrinted().map((l) => html`<th scope="col" class="right">${l}, ${s.unit}</th>`)}
          <th scope="col" class="right">${t("diff.mass")}, ${s.unit}</th>
        </tr>
      </thead>
      <tbody>
        ${d.groups.map(
          (g) =>
            html`<tr>
              <th scope="row">${groupOfBoth(g.key)}</th>
              <td class="right">${number(rough(g.a_g, s))}</td>
              <td class="right">${number(rough(g.b_g, s))}</td>
              <td class="right">${number(write(g.delta_g, g.plus_g, s, true))}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${
      d.parts.length
        ? html`<h3>${t("diff.parts")}</h3>
          <table class="lines">
            <thead>
              <tr>
                <th scope="col">${t("diff.part")}</th>
                <th scope="col">${t("diff.what")}</th>
                <th scope="col" class="right">${t("diff.mass")}, ${s.unit}</th>
              </tr>
            </thead>
            <tbody>
              ${d.parts.map(
                (p) =>
                  html`<tr>
                    <th scope="row">${p.name}</th>
                    <td>${t(`diff.${p.what}`)}</td>
                    <td class="right">${number(write(p.delta_g, p.plus_g, s, true))}</td>
                  </tr>`,
              )}
            </tbody>
          </table>`
        : html`<p>${t("diff.same")}</p>`
    }
  </section>`;
}

export function printAdvice(): TemplateResult | typeof nothing {
  const d = store.difference;
  const s = partScale(store.doc!.show);
  const n = (v: number) => plain(rough(v, s));
  const list = (of: Advice[], lead: string) =>
    html`<div class="whole">
      <p>${lead}</p>
      <ol>
        ${of.slice(0, 5).map((a) => html`<li>${a.name}: ${t("diff.weigh.step", { plus: n(a.then_g) })}${a.settles ? `, ${t("diff.weigh.settles")}` : ""}</li>`)}
      </ol>
    </div>`;
  const all = [
    ...(d?.weigh.length ? [list(d.weigh, t("diff.weigh.lead", { now: n(d.weigh[0]!.now_g) }))] : []),
    ...lettersPrinted().flatMap((letter) => {
      const own = store.shown(letter)?.weigh ?? [];
      return own.length ? [list(own, t("diff.weigh.build", { letter, now: n(own[0]!.now_g) }))] : [];
    }),
  ];
  return all.length
    ? html`<section>
        <h2>${t("diff.weigh")}</h2>
        ${all}
      </section>`
    : nothing;
}
