// What the bike is weighed with: the load of each side, the state of the load,
// what is left of the supplies; and the figures of every state in one table.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { addLoad, blankLoad, carried, carry, loadsOf } from "../../app/loadEdit.ts";
import { stateValues, suppliesValues, type Path, type Side, type State, type StateReport, type Supplies } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { brief, t } from "../../text/index.ts";
import { decimal, figureScale, signed, write } from "../../model/units.ts";
import { StoreElement } from "../../elements/element.ts";
import { badge, number } from "../../elements/figure.ts";
import { unfold } from "../../elements/section.ts";

export type Letter = "A" | "B";

// sidesShown are the sides that there are.
export function sidesShown(): Letter[] {
  const { A, B } = store.ids;
  return [...(A ? (["A"] as const) : []), ...(B ? (["B"] as const) : [])];
}

// loadChoice chooses what a side carries; it is there as soon as there is
// something to carry.
export function loadChoice(letter: Letter): TemplateResult | typeof nothing {
  const doc = store.doc;
  if (!doc || !loadsOf(doc).length) return nothing;
  const now = carried(doc)[letter === "A" ? 0 : 1];
  const options = [{ id: "", name: t("carry.none") }, ...loadsOf(doc).map((l) => ({ id: l.id, name: l.name || l.id }))];
  return html`<label class="carries"
    >${t("carry.with")}
    <select
      aria-label=${t("carry.choose", { letter })}
      .value=${live(now)}
      @change=${(e: Event) => store.edit(t("do.load", { letter }), (d) => carry(d, letter, (e.target as HTMLSelectElement).value))}
    >
      ${options.map((o) => html`<option value=${o.id} ?selected=${o.id === now}>${brief(o.name)}</option>`)}
    </select></label
  >`;
}

// fallen says in which state a side is weighed when it is not the one asked for.
export function fallen(letter: Letter): string {
  const side = store.side(letter);
  const asked = store.doc?.show.state ?? "ready";
  return side?.weighed && side.state !== asked ? t("carry.fallen", { state: t(`state.${side.state}`) }) : "";
}

// usedUp says whether something on either side is used up on the way.
function usedUp(): boolean {
  return sidesShown().some((l) => (store.side(l)?.path.length ?? 0) > 0);
}

export function show(change: { state?: State; supplies?: Supplies }): void {
  store.edit(t("do.state"), (d) => {
    const next = { ...d.show, ...change };
    return next.state === d.show.state && next.supplies === d.show.supplies ? d : { ...d, show: next };
  });
}

// firstLoad makes a load, puts it on both sides, and goes to it.
export function firstLoad(): void {
  store.edit(t("do.newload"), (d) => {
    const n = addLoad(d, blankLoad(t("load.new.name")));
    return { ...n.doc, show: { ...n.doc.show, loads: [n.id, n.id], state: "loaded" } };
  });
  unfold("load");
}

class StateRow extends StoreElement {
  protected override render(): TemplateResult | typeof nothing {
    const doc = store.doc;
    if (!doc || !store.ids.A) return nothing;
    const now = doc.show.state ?? "ready";
    const level = doc.show.supplies ?? "full";
    const loaded = carried(doc).some(Boolean);
    const seated = sidesShown().some((l) => store.side(l)?.rider);
    const wanted = loadsOf(doc).some((l) => l.rider && carried(doc).includes(l.id));
    const why = (s: State): string => {
      if ((s === "loaded" || s === "ridden") && !loaded) return t("carry.none.why");
      if (s === "ridden" && !seated) return wanted ? t("carry.misfit.why") : t("carry.norider.why");
      return "";
    };
    return html`<div class="staterow">
      <div class="set" role="group" aria-label=${t("carry.state")}>
        <span class="quiet" aria-hidden="true">${t("carry.state")}</span>
        ${stateValues.map((s) => {
          const off = why(s);
          if (off && !loadsOf(doc).length) return nothing;
          return html`<button
            type="button"
            class="toggle"
            aria-pressed=${s === now}
            title=${off || t(`state.${s}.help`)}
            ?disabled=${off !== "" && s !== now}
            @click=${() => show({ state: s })}
          >
            ${t(`state.${s}`)}
          </button>`;
        })}
      </div>
      ${
        usedUp() && now !== "bare"
          ? html`<div class="set" role="group" aria-label=${t("carry.supplies")}>
            <span class="quiet" aria-hidden="true">${t("carry.supplies")}</span>
            ${suppliesValues.map(
              (l) =>
                html`<button type="button" class="toggle" aria-pressed=${l === level} @click=${() => show({ supplies: l })}>${t(`supplies.${l}`)}</button>`,
            )}
          </div>`
          : nothing
      }
      ${loadsOf(doc).length ? nothing : html`<button type="button" class="plain strong" @click=${firstLoad}>${t("carry.add")}</button>`}
    </div>`;
  }
}

customElements.define("sy-state", StateRow);

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
                      @click=${() => show(alone ? { state } : { state, supplies })}
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
