// The figures of every state in one table, and what using up supplies does.

import { html, nothing, type TemplateResult } from "lit";
import { sidesShown, weighAs, type Letter } from "../../app/sides.ts";
import { stateValues, suppliesValues, type Path, type Side, type StateReport } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import { decimal, figureScale, signed, write } from "../../model/units.ts";
import { badge, number } from "../../elements/figure.ts";

const columns = ["total", "centre_x", "centre_z", "front_load", "rear_load", "front_share"] as const;

// folded leaves of the levels of a state only the first when they are all alike.
function folded(list: StateReport[]): (StateReport & { alone: boolean })[] {
  const value = (s: StateReport) => JSON.stringify(s.figures.map((f) => f.value));
  return stateValues.flatMap((name) => {
    const of = list.filter((s) => s.state === name);
    const alone = of.every((s) => value(s) === value(of[0]!));
    return (alone ? of.slice(0, 1) : of).map((s) => ({ ...s, alone }));
  });
}

// statesTable is every state of both sides. The name of a state shows the bike
// in it.
export function statesTable(): TemplateResult {
  const doc = store.doc!;
  const sides = sidesShown()
    .map((letter) => ({ letter, side: store.side(letter) }))
    .filter((s): s is { letter: Letter; side: Side } => (s.side?.states.length ?? 0) > 0);
  const two = sides.length > 1;
  const rows = sides.map(({ letter, side }) => ({ letter, list: folded(side.states) }));
  const keys = stateValues.flatMap((state) =>
    suppliesValues
      .filter((supplies) => rows.some((r) => r.list.some((s) => s.state === state && s.supplies === supplies)))
      .map((supplies) => ({ state, supplies, alone: rows.every((r) => r.list.find((s) => s.state === state)?.alone ?? true) })),
  );
  const now = doc.show.state ?? "ready";
  const level = doc.show.supplies ?? "full";
  return html`<table class="lines states" role="table">
    <caption class="unseen">
      ${t("states.caption")}
    </caption>
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader" scope="col">${t("states.state")}</th>
        ${two ? html`<th role="columnheader" scope="col"><span class="unseen">${t("picture.show")}</span></th>` : nothing}
        ${columns.map((key) => {
          const s = figureScale(key === "front_share" ? "ratio" : key.startsWith("centre") ? "mm" : "g", doc.show, key);
          return html`<th role="columnheader" scope="col" class="right doubt">${t(`figure.${key}`)} <span class="unit">${s.unit}</span></th>`;
        })}
      </tr>
    </thead>
    ${keys.map(({ state, supplies, alone }) => {
      const shown = state === now && (alone || supplies === level);
      const name = alone ? t(`state.${state}.long`) : t("states.name", { state: t(`state.${state}.long`), supplies: t(`supplies.${supplies}`) });
      const lines = rows
        .map((r) => ({ letter: r.letter, of: r.list.find((s) => s.state === state && (s.alone || s.supplies === supplies)) }))
        .filter((l) => l.of);
      return html`<tbody role="rowgroup" class=${shown ? "shown" : ""}>
        ${lines.map(
          (l, i) =>
            html`<tr role="row">
              ${
                i === 0
                  ? html`<th role="rowheader" scope="rowgroup" rowspan=${lines.length}>
                    <button
                      type="button"
                      class="plain name"
                      aria-pressed=${shown}
                      title=${t("states.show", { state: name })}
                      @click=${() => weighAs(alone ? { state } : { state, supplies })}
                    >
                      ${name}
                    </button>
                  </th>`
                  : nothing
              }
              ${two ? html`<td role="cell" class="of">${badge(l.letter)}<span class="unseen">${l.letter}</span></td>` : nothing}
              ${columns.map((key) => {
                const f = l.of!.figures.find((x) => x.key === key);
                return html`<td role="cell" data-label=${t(`figure.${key}`)}>${f ? number(write(f.value, f.plus, figureScale(f.unit, doc.show, key))) : "–"}</td>`;
              })}
            </tr>`,
        )}
      </tbody>`;
    })}
  </table>`;
}

// pathTable says what using up each supply does, from full to none.
export function pathTable(): TemplateResult | typeof nothing {
  const show = store.doc!.show;
  const sides = sidesShown().flatMap((letter) => (store.side(letter)?.path ?? []).map((path) => ({ letter, path })));
  if (!sides.length) return nothing;
  const two = new Set(sides.map((s) => s.letter)).size > 1;
  const mass = figureScale("g", show);
  const mm = figureScale("mm", show);
  const row = ({ letter, path }: { letter: Letter; path: Path }) => {
    if (!path.points.length) return nothing;
    return html`<tr>
      <th scope="row" class="supply">${two ? html`${badge(letter)}<span class="unseen">${letter}: </span> ` : nothing}${t(path.supply === "all" ? "supply.all" : (`supply.${path.supply}` as "supply.water"))}</th>
      <td class="right">${decimal(path.gone_g / mass.per, mass.decimals)}</td>
      <td class="right">${signed(path.moved_mm[0] / mm.per, mm.decimals)}</td>
      <td class="right">${signed(path.moved_mm[2] / mm.per, mm.decimals)}</td>
      <td class="right">${signed(path.front_share_by * 100, 1)}</td>
    </tr>`;
  };
  return html`<h3>${t("states.path")}</h3>
    <table class="lines path">
      <caption class="unseen">
        ${t("states.path.caption")}
      </caption>
      <thead>
        <tr>
          <th scope="col">${t("states.supply")}</th>
          <th scope="col" class="right">${t("states.gone")} <span class="unit">${mass.unit}</span></th>
          <th scope="col" class="right">${t("diff.forward")} <span class="unit">${mm.unit}</span></th>
          <th scope="col" class="right">${t("diff.up")} <span class="unit">${mm.unit}</span></th>
          <th scope="col" class="right">${t("states.share")} <span class="unit">${t("unit.percent")}</span></th>
        </tr>
      </thead>
      <tbody>
        ${sides.map(row)}
      </tbody>
    </table>`;
}
