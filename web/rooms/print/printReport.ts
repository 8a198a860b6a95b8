// The printed report. What is on the sheet is made for editing, and what the
// canvas shows does not reach a printer: for paper the page is set anew, as plain
// text, tables and a drawing, when the browser is about to print.

import { html, nothing, render, type TemplateResult } from "lit";
import { deltaLikely, signs, verdictText } from "../balance/balance.ts";
import { number } from "../../elements/figure.ts";
import { core } from "../../core/core.ts";
import { findBuild } from "../../app/edit.ts";
import { today } from "../../app/exports.ts";
import { findLoad } from "../../app/loadEdit.ts";
import type { Advice, Difference, Figure, Headroom, Part } from "../../model/types.ts";
import { groupOfBoth, named } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { svgElement } from "../../io/svg.ts";
import { t, word, type Key } from "../../text/index.ts";
import { alone, between, decimal, figureScale, lengthField, massField, partScale, plain, plainScale, rough, write } from "../../model/units.ts";

type Letter = "A" | "B";

const wide = 1000; // px of the drawing, scaled to the paper
const high = 560;

export function watchPrinting(): void {
  const box = document.createElement("div");
  box.id = "printed";
  document.body.append(box);
  addEventListener("beforeprint", () => {
    if (store.doc && core.state === "ready") render(report(), box);
  });
  addEventListener("afterprint", () => render(nothing, box));
}

const letters = (): Letter[] => (store.ids.B ? ["A", "B"] : ["A"]);

const nameOf = (letter: Letter): string => {
  const s = store.shown(letter);
  return s?.name || (store.doc && findBuild(store.doc, store.ids[letter])?.name) || letter;
};

function report(): TemplateResult {
  const doc = store.doc!;
  const d = store.difference;
  const notes = core.provenance(JSON.stringify(doc), today());
  return html`<header>
      <p class="of"><span class="cap">${t("page.name")}</span> <span>${t("report.page", { date: today() })}</span></p>
      <h1>${doc.title || t("file.untitled")}</h1>
      ${doc.notes ? html`<p class="remark">${doc.notes}</p>` : nothing}
    </header>
    ${totals()}
    <figure>${picture()}</figure>
    ${figures(d)} ${d ? difference(d) : nothing} ${advised(d)} ${rated()} ${letters().map(load)} ${buildsShown().map(parts)}
    <section class="small">
      <h2>${t("report.how")}</h2>
      ${notes.map((n) => html`<p>${n}</p>`)}
      <h2>${t("likely.explain.title")}</h2>
      <p>${t("likely.explain")}</p>
      <p>${t("likely.explain.diff")}</p>
      <h2>${t("report.sources")}</h2>
      <ul>
        ${(["parts", "plus", "axes", "body"] as const).map((s) => html`<li>${t(`about.sources.${s}`)}</li>`)}
      </ul>
      <h2>${t("page.caution")}</h2>
      <p>${word("help", "caution")} ${word("help", "load")}</p>
    </section>`;
}

// picture is the same drawing as the canvas's, light and with the whole bike.
function picture(): Node | typeof nothing {
  const { look, letter } = store;
  const { doc } = store;
  const text = core.svg(JSON.stringify(doc), {
    build: store.activeID,
    ghost: look.ghost ? store.otherID : "",
    at: letter === "B" ? "b" : "a",
    ...(look.ghost && store.ids.B ? { ghost_at: letter === "B" ? "a" : "b" } : {}),
    side: look.side,
    dark: false,
    selected: "",
    dimensions: look.dimensions,
    labels: look.labels,
    key: true,
    units: { mass: doc!.show.mass, length: doc!.show.length },
    width: wide,
    height: high,
  });
  return svgElement(text) ?? nothing;
}

function totals(): TemplateResult {
  const s = figureScale("g", store.doc!.show);
  const d = store.difference?.figures.find((f) => f.key === "total");
  return html`<section class="totals">
    ${letters().map((letter) => {
      const total = store.shown(letter)?.figures.find((f) => f.key === "total");
      return html`<div>
        <p class="who"><span class="badge ${letter}">${letter}</span> ${nameOf(letter)}</p>
        <p class="total">${total ? plain(alone(total.value, total.plus, s)) : "–"}</p>
        <p class="likely">${total ? (total.plus > 0 ? t("likely", between(total.value, total.plus, s)) : t("likely.exact")) : t("builds.unweighed")}</p>
      </div>`;
    })}
    ${
      d
        ? html`<div>
          <p class="who">${t("table.diff")}</p>
          <p class="total">${plain(alone(d.delta, d.plus, s, true))}</p>
          <p class="likely">${signs[d.verdict]} ${verdictText(d)}, ${deltaLikely(d, s)}</p>
        </div>`
        : nothing
    }
  </section>`;
}

function figures(d: Difference | null): TemplateResult {
  const show = store.doc!.show;
  const of = letters().map((l) => store.shown(l)?.figures ?? []);
  const all = new Map<string, Figure>(of.flat().map((f) => [f.key, f]));
  const rows = [
    ...(of[0]!.length ? of[0]! : [...all.values()]).map((f) => f.key),
    ...[...all.keys()].filter((k) => of[0]!.length && !of[0]!.some((f) => f.key === k)),
  ];
  return html`<section>
    <h2>${t("report.figures")}</h2>
    <table class="lines">
      <thead>
        <tr>
          <th scope="col">${t("table.figure")}</th>
          ${letters().map((l) => html`<th scope="col" class="right">${l}</th>`)}
          ${
            d
              ? html`<th scope="col" class="right">${t("table.diff")}</th>
                <th scope="col">${t("table.verdict")}</th>`
              : nothing
          }
        </tr>
      </thead>
      <tbody>
        ${rows.map((key) => {
          const s = figureScale(all.get(key)!.unit, show, key);
          const c = d?.figures.find((f) => f.key === key);
          return html`<tr>
            <th scope="row">${word("figure", key)}${s.unit ? html`, <span class="unit">${s.unit}</span>` : nothing}</th>
            ${of.map((list) => {
              const f = list.find((o) => o.key === key);
              return html`<td class="right">${f ? number(write(f.value, f.plus, s)) : "–"}</td>`;
            })}
            ${d ? html`<td class="right">${c ? number(write(c.delta, c.plus, s, true)) : "–"}</td><td>${c ? `${signs[c.verdict]} ${verdictText(c)}` : ""}</td>` : nothing}
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
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
          ${letters().map((l) => html`<th scope="col" class="right">${l}, ${s.unit}</th>`)}
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

function advised(d: Difference | null): TemplateResult | typeof nothing {
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
    ...letters().flatMap((letter) => {
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

// rated sets loads against the limits that makers state.
function rated(): TemplateResult | typeof nothing {
  const of = letters().flatMap((letter) => {
    const s = store.side(letter);
    return (s?.ratings?.list ?? []).map((h) => ({ letter, h }));
  });
  if (!of.length) return nothing;
  const scale = (h: Headroom) => (h.unit === "l" ? plainScale(t("unit.l"), 1) : figureScale("g", store.doc!.show));
  return html`<section>
    <h2>${t("ratings.title")}</h2>
    <table class="lines">
      <thead>
        <tr>
          <th scope="col"></th>
          <th scope="col">${t("ratings.what")}</th>
          <th scope="col" class="right">${t("ratings.load")}</th>
          <th scope="col" class="right">${t("ratings.limit")}</th>
          <th scope="col"></th>
        </tr>
      </thead>
      <tbody>
        ${of.map(
          ({ letter, h }) =>
            html`<tr>
              <th scope="row">${letter}</th>
              <td>${word("rating", h.what)}</td>
              <td class="right">${number(write(h.load, h.plus, scale(h)))}</td>
              <td class="right">${plain(write(h.limit, 0, scale(h)))}</td>
              <td>${h.text}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="caution">${t("limits.caution")}</p>
  </section>`;
}

// load lists what a side carries, once when both carry the same.
function load(letter: Letter): TemplateResult | typeof nothing {
  const side = store.side(letter);
  const l = side?.load ? findLoad(store.doc!, side.load) : undefined;
  const same = store.side("A")?.load === store.side("B")?.load;
  if (!side || !l || (letter === "B" && same)) return nothing;
  const s = partScale(store.doc!.show);
  const told = new Map(side.bags.map((b) => [b.id, b]));
  return html`<section>
    <h2>${t("report.load", { letter: same ? "A, B" : letter, load: l.name })}</h2>
    ${side.body ? html`<p>${store.doc!.riders?.find((r) => r.id === side.body!.rider)?.name}: ${plain(write(side.body.mass_g, side.body.plus_g, figureScale("g", store.doc!.show)))}</p>` : nothing}
    <table class="lines">
      <thead>
        <tr>
          <th scope="col">${t("report.bag")}</th>
          <th scope="col">${t("report.goods")}</th>
          <th scope="col" class="right">${t("report.together")}, ${s.unit}</th>
        </tr>
      </thead>
      <tbody>
        ${l.bags.map((b) => {
          const r = told.get(b.id);
          const goods = l.goods.filter((g) => g.in === b.id).map((g) => (g.quantity > 1 ? `${g.quantity} × ${g.name}` : g.name));
          return html`<tr>
            <th scope="row">${b.name}</th>
            <td>${goods.join(", ")}</td>
            <td class="right">${r?.ok ? number(write(r.whole_g, r.whole_plus_g, s)) : "–"}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
}

function buildsShown(): Letter[] {
  const { A, B } = store.ids;
  return letters().filter((l) => l === "A" || A !== B);
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
