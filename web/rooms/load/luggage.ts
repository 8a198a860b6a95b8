// The packing list of a load: its bags as groups, in each the goods packed in
// it, every line editable where it stands.

import { html, nothing, type TemplateResult } from "lit";
import { guard } from "lit/directives/guard.js";
import { live } from "lit/directives/live.js";
import { repeat } from "lit/directives/repeat.js";
import { activeLoad, sideWith } from "../../app/activeLoad.ts";
import { core } from "../../core/core.ts";
import { setPath } from "../../app/edit.ts";
import { addBag, addGood, bagApart, editBag, editGood, goodApart, removeBag, removeGood } from "../../app/loadEdit.ts";
import { editKnown, sharedIn, sharing } from "../../app/sharing.ts";
import {
  basisValues,
  carrierValues,
  bagLiquidsValues,
  goodLiquidValues,
  supplyKindValues,
  type Bag,
  type BagReport,
  type Basis,
  type Good,
  type GoodReport,
  type Headroom,
  type Load,
  type SharedThing,
} from "../../model/types.ts";
import { lineID, splitLine } from "../../app/loadlines.ts";
import { store } from "../../app/state.ts";
import { language, brief, t, word } from "../../text/index.ts";
import { alone, decimal, figureScale, massField, partScale, plain } from "../../model/units.ts";
import { offer, type Typed } from "../../elements/offer.ts";
import "../../elements/combo.ts";
import type { Offer } from "../../elements/combo.ts";
import { Answer } from "../../elements/answer.ts";
import { copyMenu } from "../../elements/copytable.ts";
import { domID, focusSoon } from "../../elements/element.ts";
import { choice, field, lengthInput, massInput, numberInput, problemOf } from "../../elements/field.ts";
import { number } from "../../elements/figure.ts";
import { alsoIn, betterKnown, sharedNote } from "../../elements/shared.ts";
import { fillBar, verdictSigns, verdictWord } from "../../elements/fill.ts";

const many = 300; // lines from which on a list is a long one
const page = 60; // lines of a bag shown at first in a long list
const reach = new Map<string, number>();

// What loads share is told after the figures: nobody waits for it.
const after = 120; // ms
const shares = new Answer(() => sharing());

// Labels of volumes have one decimal: nobody knows a bag better.
const litres = (v: number) => decimal(v, v < 10 ? 1 : 0);

const bagOffer = (typed: string): Offer =>
  offer(
    typed,
    { of: "bags", list: store.templates.bags },
    (b) => word("station", b.station),
    (b, mass) => putBag(core.bagFromEntry(b.id, mass)),
    (own) => putOwnBag(own),
    "bag.own",
  );

const goodOffer = (typed: string): Offer =>
  offer(
    typed,
    { of: "goods", list: store.templates.goods },
    (g) => `${litres(g.volume_l)}\u00a0${t("unit.l")}`,
    (g, mass) => putGood({ ...core.goodFromEntry(g.id, mass), in: target() }),
    (own) => {
      const id = putGood({ ...core.goodFromWords(own.name, own.mass ?? 0), in: target() });
      if (own.mass === null) focusSoon(domID("f", `load/${activeLoad()?.id}/good/${id}/mass_g`));
    },
    "good.own",
  );

function putBag(bag: Omit<Bag, "id">): string {
  const load = activeLoad();
  if (!load) return "";
  let id = "";
  store.edit(t("do.add", { part: bag.name }), (d) => {
    const n = addBag(d, load.id, bag);
    id = n.id;
    return n.doc;
  });
  store.select(lineID("bag", id));
  store.tell(t("load.added", { name: bag.name }), { label: t("undo"), run: () => store.undo() });
  return id;
}

function putOwnBag(own: Typed): void {
  const id = putBag(core.bagFromWords(own.name, own.mass ?? 0));
  // Where a bag of one's own hangs and what it holds is still to be said.
  store.open.add(lineID("bag", id));
  focusSoon(domID("f", `load/${activeLoad()?.id}/bag/${id}/${own.mass === null ? "mass_g" : "station"}`));
}

// target is the bag that new goods go into: the chosen one, or the one of the
// chosen good.
function target(): string {
  const load = activeLoad();
  const at = splitLine(store.selected);
  if (!load || !at) return "";
  if (at.kind === "bag") return load.bags.some((b) => b.id === at.id) ? at.id : "";
  return load.goods.find((g) => g.id === at.id)?.in ?? "";
}

function putGood(good: Omit<Good, "id">): string {
  const load = activeLoad();
  if (!load) return "";
  let id = "";
  store.edit(t("do.add", { part: good.name }), (d) => {
    const n = addGood(d, load.id, good);
    id = n.id;
    return n.doc;
  });
  store.select(lineID("good", id));
  const bag = load.bags.find((b) => b.id === good.in);
  const text = bag ? t("load.added.in", { name: good.name, part: bag.name }) : t("load.added.out", { name: good.name });
  store.tell(text, { label: t("undo"), run: () => store.undo() });
  return id;
}

export function luggage(load: Load): TemplateResult {
  const into = load.bags.find((b) => b.id === target());
  return html`<div class="partsbar">
      <sy-combo name="add-bag" .label=${t("bag.add")} .placeholder=${t("bag.add.hint")} .offer=${bagOffer}></sy-combo>
      <sy-combo
        name="add-good"
        .label=${into ? t("good.add.to", { name: into.name }) : t("good.add")}
        .placeholder=${t("good.add.hint")}
        .offer=${goodOffer}
      ></sy-combo>
    </div>
    ${
      load.bags.length || load.goods.length
        ? html`<p class="copyline">${copyMenu(t("load.caption", { name: load.name }), { luggage: load.id })}</p>
          ${list(load)}`
        : html`<p class="quiet">${t("load.empty")}</p>`
    }`;
}

const columns = 9;

function list(load: Load): TemplateResult {
  const unit = massField(store.doc!.show).unit;
  const long = load.goods.length > many;
  const inBags = new Map<string, Good[]>(load.bags.map((b) => [b.id, []]));
  const out: Good[] = [];
  for (const g of load.goods) (inBags.get(g.in) ?? out).push(g);
  const side = sideWith(load.id);
  const bags = new Map(side?.bags.map((b) => [b.id, b]));
  const goods = new Map(side?.goods.map((g) => [g.id, g]));
  const common = shares.seen(after).value;
  const sharedBags = sharedIn(common, "bags", load.id);
  const sharedGoods = sharedIn(common, "goods", load.id);
  const head = (cls: string, label: TemplateResult | string) => html`<th role="columnheader" scope="col" class=${cls}>${label}</th>`;
  return html`<table class="parts luggage" role="table">
    <caption class="unseen">
      ${t("load.caption", { name: load.name })}
    </caption>
    <thead role="rowgroup">
      <tr role="row">
        ${head("q", html`<abbr title=${t("good.quantity")}>${t("good.quantity.short")}</abbr>`)} ${head("n", t("good.name"))}
        ${head("m right", `${t("good.mass.short")}, ${unit}`)} ${head("v right", `${t("good.volume.short")}, ${t("unit.l")}`)} ${head("u", t("good.supply"))}
        ${head("i", t("good.in"))} ${head("x", html`<abbr title=${t("good.pinned.help")}>${t("good.pinned")}</abbr>`)} ${head("t right", t("good.total"))}
        ${head("a", html`<span class="unseen">${t("parts.details.short")}</span>`)}
      </tr>
    </thead>
    ${repeat(
      load.bags,
      (b) => b.id,
      (b) => html`<tbody role="rowgroup">
        ${bagRows(load, b, bags.get(b.id), sharedBags.get(b.id))} ${goodLines(load, b.id, inBags.get(b.id)!, goods, long, sharedGoods)}
      </tbody>`,
    )}
    ${
      out.length
        ? html`<tbody role="rowgroup">
          <tr class="group" role="row">
            <th role="rowheader" scope="rowgroup" colspan=${columns}>
              ${t("load.unpacked")} <span class="n">${t("load.unpacked.why")}</span>
            </th>
          </tr>
          ${goodLines(load, "", out, goods, long, sharedGoods)}
        </tbody>`
        : nothing
    }
  </table>`;
}

function goodLines(load: Load, bag: string, list: Good[], reports: Map<string, GoodReport>, long: boolean, shared: Map<string, SharedThing>): TemplateResult {
  const key = `${load.id}/${bag}`;
  const most = long ? (reach.get(key) ?? page) : list.length;
  const seen = list.slice(0, most);
  const chosen = list.findIndex((g) => lineID("good", g.id) === store.selected);
  if (chosen >= most) seen.push(list[chosen]!);
  return html`${repeat(
    seen,
    (g) => g.id,
    (g) => goodRows(load, g, reports.get(g.id), shared.get(g.id)),
  )}
  ${
    list.length > seen.length
      ? html`<tr role="row" class="morerow">
        <td role="cell" colspan=${columns}>
          <button
            type="button"
            class="plain strong"
            @click=${() => {
              reach.set(key, most + 5 * page);
              store.touch();
            }}
          >
            ${t("load.more", { n: Math.min(list.length - seen.length, 5 * page) })}
          </button>
        </td>
      </tr>`
      : nothing
  }`;
}

// watched gives what a line depends on beside its own object: what is typed
// into it and what is wrong with it.
function watched(stem: string, load: string, of: "bag" | "good", id: string): string {
  const typing = [...store.drafts].filter(([k]) => k.startsWith(stem)).map(([k, d]) => `${k}=${d.text}=${d.why}`);
  const problems = store.problems.filter((p) => p[of] === id && p.load === load).map((p) => `${p.field}${p.message}`);
  return `${typing.join()}|${problems.join()}`;
}

function disclosure(line: string, name: string, open: boolean): TemplateResult {
  return html`<button
    type="button"
    class="plain disclose"
    aria-expanded=${open}
    aria-label=${t(open ? "good.less" : "good.details", { name })}
    @click=${(e: Event) => {
      e.stopPropagation();
      if (open) store.open.delete(line);
      else store.open.add(line);
      store.select(line);
      store.touch();
    }}
  >
    <span aria-hidden="true">${open ? "▲" : "▼"}</span>
  </button>`;
}

// Bags

function bagRows(load: Load, b: Bag, r: BagReport | undefined, shared: SharedThing | undefined): TemplateResult {
  const line = lineID("bag", b.id);
  const open = store.open.has(line);
  const chosen = store.selected === line;
  const stem = `load/${load.id}/bag/${b.id}/`;
  const known = [load.id, b, open, chosen, store.doc!.show, language(), store.stations, watched(stem, load.id, "bag", b.id), JSON.stringify([r, shared])];
  return html`${guard(known, () => html`${bagLine(load, b, r, line, chosen, open, shared)}${open ? bagDetails(load, b, shared) : nothing}`)}`;
}

function bagSetter(load: Load, b: Bag): (path: string, label: string) => (v: unknown) => void {
  return (path, label) => (v) =>
    store.edit(
      t("do.line", { field: label, name: b.name }),
      (d) => editBag(d, load.id, b.id, (x) => setPath(x, path, v)),
      `load/${load.id}/bag/${b.id}/${path}`,
    );
}

// What is known of a bag or good is known of it in every load.
function knowBag(load: Load, b: Bag, label: string, to: (b: Bag) => Bag, key = ""): void {
  editKnown("bags", load.id, b, label, to, key);
}

function knowGood(load: Load, g: Good, label: string, to: (g: Good) => Good, key = ""): void {
  editKnown("goods", load.id, g, label, to, key);
}

function knownSetter(sort: "bags" | "goods", load: Load, x: Bag | Good): (path: string, label: string) => (v: unknown) => void {
  return (path, label) => (v) =>
    editKnown(sort, load.id, x, label, <T>(y: T) => setPath(y, path, v), `load/${load.id}/${sort === "bags" ? "bag" : "good"}/${x.id}/${path}`);
}

// makeOwn lets a bag or good be known apart from those that it was one with.
function makeOwn(load: Load, x: Bag | Good, kind: "bag" | "good"): void {
  let id = "";
  store.edit(t("do.apart", { part: x.name, build: load.name }), (d) => {
    const r = (kind === "bag" ? bagApart : goodApart)(d, load.id, x.id);
    id = r.id;
    return r.doc;
  });
  store.open.delete(lineID(kind, x.id));
  store.open.add(lineID(kind, id));
  store.select(lineID(kind, id));
  focusSoon(domID("f", `load/${load.id}/${kind}/${id}/mass_g`));
  store.tell(t("shared.apart.done", { part: x.name }), { label: t("undo"), run: () => store.undo() });
}

function bagLine(load: Load, b: Bag, r: BagReport | undefined, line: string, chosen: boolean, open: boolean, shared: SharedThing | undefined): TemplateResult {
  const known = knownSetter("bags", load, b);
  const at = (f: string) => problemOf({ load: load.id, bag: b.id }, f);
  return html`<tr
    id=${domID("row", line)}
    role="row"
    tabindex="-1"
    class="group bag ${chosen ? "chosen" : ""} ${r && !r.ok ? "out" : ""}"
    @focusin=${() => store.select(line)}
    @click=${() => store.select(line)}
  >
    <th role="rowheader" scope="rowgroup" class="n" colspan="2">
      ${field({ key: `load/${load.id}/bag/${b.id}/name`, label: t("bag.name"), hidden: true, text: b.name, problem: at("name"), accept: known("name", t("bag.name")) })}
      ${alsoIn("bags", shared)} ${betterKnown(shared, b.name, (q) => knowBag(load, b, t("bag.mass"), (x) => ({ ...x, ...q })))}
      ${r && !r.ok ? html`<em class="left">${t("parts.left")}</em>` : nothing}
    </th>
    <td role="cell" class="fills" colspan="3">${r ? fills(b, r) : nothing}</td>
    <td role="cell" class="i" colspan="2">${station(load, b, true)}</td>
    <td role="cell" class="t right">${r?.ok ? plain(alone(r.whole_g, r.whole_plus_g, partScale(store.doc!.show))) : "–"}</td>
    <td role="cell" class="a">${disclosure(line, b.name, open)}</td>
  </tr>`;
}

function fills(b: Bag, r: BagReport): TemplateResult {
  const show = store.doc!.show;
  const mass = figureScale("g", show);
  const kg = (g: number) => decimal(g / mass.per, show.mass === "g" ? 0 : 1);
  const line = (label: string, h: Headroom | undefined, load: number, unit: string, text: (v: number) => string) =>
    h
      ? html`<span class="fillline ${h.verdict}" title=${h.text}
          ><span class="unseen">${label}: </span>${fillBar({ used: h.used, plus: h.limit > 0 ? h.plus / h.limit : 0, verdict: h.verdict })}
          <span class="filltext"
            >${t("fill.of", { load: text(h.load), limit: text(h.limit), unit })}${
              h.verdict === "ok"
                ? nothing
                : html` <strong><span aria-hidden="true">${verdictSigns[h.verdict]}</span> <span class=${h.verdict === "over" ? "" : "unseen"}>${verdictWord(h.verdict)}</span></strong>`
            }</span
          ></span
        >`
      : html`<span class="fillline"><span class="unseen">${label}: </span><span class="filltext open">${t("fill.open", { load: text(load), unit })}</span></span>`;
  return html`${line(t("fill.mass"), r.headroom, r.goods_g, mass.unit, kg)}
  ${b.volume_l > 0 || r.volume_l > 0 ? line(t("fill.volume"), r.room, r.volume_l, t("unit.l"), litres) : nothing}`;
}

function station(load: Load, b: Bag, hidden: boolean): TemplateResult {
  return choice({
    key: `load/${load.id}/bag/${b.id}/${hidden ? "station" : "station-2"}`,
    label: hidden ? `${t("bag.station")}, ${brief(b.name)}` : t("bag.station"),
    hidden,
    value: b.station,
    problem: problemOf({ load: load.id, bag: b.id }, "station"),
    // A place on both sides is offered only where a document already says it.
    options: store.stations.filter((s) => s.name === b.station || !s.pair).map((s) => ({ value: s.name, label: word("station", s.name) })),
    set: bagSetter(load, b)("station", t("bag.station")),
  });
}

function bagDetails(load: Load, b: Bag, shared: SharedThing | undefined): TemplateResult {
  const key = (f: string) => `load/${load.id}/bag/${b.id}/${f}`;
  const at = (f: string) => problemOf({ load: load.id, bag: b.id }, f);
  const set = bagSetter(load, b);
  const length = (path: string, label: string, value: number, problem?: string) =>
    lengthInput({ key: key(path), label, value, problem: problem ? at(problem) : undefined, set: set(path, label) });
  return html`<tr class="details" role="row">
    <td role="cell" colspan=${columns}>
      <div class="sheetlet">
        <div class="specs">
          <h3>${t("bag.name")}</h3>
          ${massInput({ key: key("permitted_g"), label: t("bag.permitted"), value: b.permitted_g, heavy: true, open: true, problem: at("permitted_g"), set: set("permitted_g", t("bag.permitted")) })}
          ${numberInput({ key: key("volume_l"), label: t("bag.volume"), unit: t("unit.l"), step: 0.5, open: true, value: b.volume_l, problem: at("volume_l"), set: set("volume_l", t("bag.volume")) })}
          ${massInput({ key: key("mass_g"), label: t("bag.mass"), value: b.mass_g, problem: at("mass_g"), set: massSetter<Bag>((to, k) => knowBag(load, b, t("bag.mass"), to, key(k))) })}
          ${massInput({ key: key("half_width_g"), label: t("good.half"), value: b.half_width_g, problem: at("half_width_g"), set: knownSetter("bags", load, b)("half_width_g", t("good.half")) })}
          ${basis(key("basis"), b.basis, at("basis"), (v) => knowBag(load, b, t("good.basis"), (x) => ({ ...x, basis: v, half_width_g: core.halfWidth(v, x.mass_g) })))}
          <p class="fine">${t("bag.open.help")}</p>
        </div>
        <div class="specs">
          <h3>${t("bag.place")}</h3>
          ${station(load, b, false)}
          ${choice({
            key: key("carrier"),
            label: t("bag.carrier"),
            value: b.carrier,
            problem: at("carrier"),
            options: carrierValues.map((c) => ({ value: c, label: word("carrier", c) })),
            set: set("carrier", t("bag.carrier")),
          })}
          ${length("offset_mm.0", `${t("part.offset")}, ${t("part.forward")}`, b.offset_mm[0], "offset_mm")}
          ${length("offset_mm.1", `${t("part.offset")}, ${t("part.left")}`, b.offset_mm[1])}
          ${length("offset_mm.2", `${t("part.offset")}, ${t("part.up")}`, b.offset_mm[2])}
        </div>
        <div class="specs">
          <h3>${t("bag.size")}</h3>
          ${length("size_mm.0", t("bag.size.0"), b.size_mm[0], "size_mm")} ${length("size_mm.1", t("bag.size.1"), b.size_mm[1])}
          ${length("size_mm.2", t("bag.size.2"), b.size_mm[2])}
          <h3>${t("bag.packing")}</h3>
          ${choice({
            key: key("liquids"),
            label: t("bag.liquids"),
            value: b.liquids ?? "",
            problem: at("liquids"),
            options: (["", ...bagLiquidsValues] as const).map((v) => ({ value: v, label: t(`bag.liquids.${v || "auto"}`) })),
            set: (v) => set("liquids", t("bag.liquids"))(v || undefined),
          })}
          ${choice({
            key: key("at_hand"),
            label: t("bag.hand"),
            value: b.at_hand == null ? "auto" : b.at_hand ? "yes" : "no",
            problem: at("at_hand"),
            options: (["auto", "yes", "no"] as const).map((v) => ({ value: v, label: t(`bag.hand.${v}`) })),
            set: (v) => set("at_hand", t("bag.hand"))(v === "auto" ? undefined : v === "yes"),
          })}
          ${sharedNote("bags", shared, () => makeOwn(load, b, "bag"))}
          <div class="acts">
            <button
              type="button"
              class="danger"
              @click=${() => {
                store.edit(t("do.delete", { part: b.name }), (d) => removeBag(d, load.id, b.id));
                store.open.delete(lineID("bag", b.id));
                store.tell(t("bag.deleted", { name: b.name }), { label: t("undo"), run: () => store.undo() });
              }}
            >
              ${t("bag.delete")}
            </button>
          </div>
        </div>
      </div>
    </td>
  </tr>`;
}

// massSetter lets the half-width follow the mass as long as it is the usual one.
function massSetter<T extends { mass_g: number; half_width_g: number; basis: Basis }>(edit: (to: (x: T) => T, key: string) => void): (v: number) => void {
  return (v) =>
    edit(
      (x) => ({ ...x, mass_g: v, half_width_g: x.half_width_g === core.halfWidth(x.basis, x.mass_g) ? core.halfWidth(x.basis, v) : x.half_width_g }),
      "mass_g",
    );
}

function basis(key: string, value: Basis, problem: ReturnType<typeof problemOf>, set: (v: Basis) => void): TemplateResult {
  return choice({
    key,
    label: t("good.basis"),
    value,
    problem,
    options: basisValues.map((b) => ({ value: b, label: t(`basis.${b}.short`) })),
    set: (v) => set(v as Basis),
  });
}

// Goods

function goodRows(load: Load, g: Good, r: GoodReport | undefined, shared: SharedThing | undefined): TemplateResult {
  const line = lineID("good", g.id);
  const open = store.open.has(line);
  const chosen = store.selected === line;
  const stem = `load/${load.id}/good/${g.id}/`;
  const names = load.bags.map((b) => `${b.id}=${b.name}`).join();
  const known = [load.id, g, open, chosen, store.doc!.show, language(), names, watched(stem, load.id, "good", g.id), JSON.stringify([r, shared])];
  return html`${guard(known, () => html`${goodLine(load, g, r, line, chosen, open, shared)}${open ? goodDetails(load, g, shared) : nothing}`)}`;
}

function goodSetter(load: Load, g: Good): (path: string, label: string, typing?: boolean) => (v: unknown) => void {
  return (path, label, typing = true) =>
    (v) =>
      store.edit(
        t("do.line", { field: label, name: g.name }),
        (d) => editGood(d, load.id, g.id, (x) => setPath(x, path, v)),
        typing ? `load/${load.id}/good/${g.id}/${path}` : "",
      );
}

function goodLine(
  load: Load,
  g: Good,
  r: GoodReport | undefined,
  line: string,
  chosen: boolean,
  open: boolean,
  shared: SharedThing | undefined,
): TemplateResult {
  const key = (f: string) => `load/${load.id}/good/${g.id}/${f}`;
  const at = (f: string) => problemOf({ load: load.id, good: g.id }, f);
  const set = goodSetter(load, g);
  const named = (label: string) => `${label}, ${brief(g.name)}`;
  return html`<tr
    id=${domID("row", line)}
    role="row"
    tabindex="-1"
    class="part good ${chosen ? "chosen" : ""} ${r && !r.ok ? "out" : ""}"
    @focusin=${() => store.select(line)}
    @click=${() => store.select(line)}
  >
    <td role="cell" class="q">
      ${numberInput({ key: key("quantity"), label: named(t("good.quantity")), hidden: true, whole: true, value: g.quantity, problem: at("quantity"), set: set("quantity", t("good.quantity")) })}
    </td>
    <th role="rowheader" scope="row" class="n">
      ${field({ key: key("name"), label: t("good.name"), hidden: true, text: g.name, problem: at("name"), accept: knownSetter("goods", load, g)("name", t("good.name")) })}
      ${alsoIn("goods", shared)} ${betterKnown(shared, g.name, (q) => knowGood(load, g, t("good.mass"), (x) => ({ ...x, ...q })))}
      ${r && !r.ok ? html`<em class="left">${t("parts.left")}</em>` : nothing}
    </th>
    <td role="cell" class="m">
      ${massInput({ key: key("mass_g"), label: named(t("good.mass")), hidden: true, value: g.mass_g, problem: at("mass_g"), set: massSetter<Good>((to, k) => knowGood(load, g, t("good.mass"), to, key(k))) })}
    </td>
    <td role="cell" class="v">
      ${numberInput({ key: key("volume_l"), label: named(t("good.volume")), unit: t("unit.l"), hidden: true, step: 0.1, value: g.volume_l, problem: at("volume_l"), set: set("volume_l", t("good.volume")) })}
    </td>
    <td role="cell" class="u">
      ${choice({
        key: key("supply"),
        label: named(t("good.supply")),
        hidden: true,
        value: g.supply ?? "",
        problem: at("supply"),
        options: [{ value: "", label: t("supply.none") }, ...supplyKindValues.map((k) => ({ value: k, label: t(`supply.${k}`).toLowerCase() }))],
        set: (v) => set("supply", t("good.supply"), false)(v || undefined),
      })}
    </td>
    <td role="cell" class="i">
      ${choice({
        key: key("in"),
        label: named(t("good.in")),
        hidden: true,
        value: g.in,
        problem: at("in"),
        options: [{ value: "", label: t("good.in.none") }, ...load.bags.map((b) => ({ value: b.id, label: brief(b.name || b.id) }))],
        set: (v) => {
          set("in", t("good.in"), false)(v);
          // The line is in another group now; the focus goes with it.
          focusSoon(domID("f", key("in")));
        },
      })}
    </td>
    <td role="cell" class="x">
      <label class="pin" title=${t("good.pinned.help")}
        ><input
          type="checkbox"
          aria-label=${t("good.pinned.name", { name: g.name })}
          .checked=${live(g.pinned ?? false)}
          @change=${(e: Event) => set("pinned", t("good.pinned"), false)((e.target as HTMLInputElement).checked || undefined)}
      /><span class="pinword" aria-hidden="true">${t("good.pinned")}</span></label>
    </td>
    <td role="cell" class="t right">${r?.ok ? number(alone(r.mass_g, r.plus_g, partScale(store.doc!.show)), true) : "–"}</td>
    <td role="cell" class="a">${disclosure(line, g.name, open)}</td>
  </tr>`;
}

// goodPacking is what a packing must be told of a good.
function goodPacking(load: Load, g: Good): TemplateResult {
  const key = (f: string) => `load/${load.id}/good/${g.id}/${f}`;
  const at = (f: string) => problemOf({ load: load.id, good: g.id }, f);
  const set = goodSetter(load, g);
  return html`<div class="specs">
    <h3>${t("good.packing")}</h3>
    ${field({ key: key("together"), label: t("good.together"), text: g.together ?? "", placeholder: t("good.together.hint"), problem: at("together"), accept: (v) => set("together", t("good.together"))(v.trim() || undefined) })}
    ${choice({
      key: key("at_hand"),
      label: t("good.hand"),
      value: g.at_hand ? "yes" : "no",
      problem: at("at_hand"),
      options: (["no", "yes"] as const).map((v) => ({ value: v, label: t(`bag.hand.${v}`) })),
      set: (v) => set("at_hand", t("good.hand"), false)(v === "yes" || undefined),
    })}
    ${
      g.quantity > 1 || g.split
        ? choice({
            key: key("split"),
            label: t("good.split"),
            value: g.split ? "yes" : "no",
            problem: at("split"),
            options: (["no", "yes"] as const).map((v) => ({ value: v, label: t(`good.split.${v}`) })),
            set: (v) => set("split", t("good.split"), false)(v === "yes" || undefined),
          })
        : nothing
    }
    ${choice({
      key: key("liquid"),
      label: t("good.liquid"),
      value: g.liquid ?? "",
      problem: at("liquid"),
      options: (["", ...goodLiquidValues] as const).map((v) => ({ value: v, label: t(`good.liquid.${v || "auto"}`) })),
      set: (v) => set("liquid", t("good.liquid"), false)(v || undefined),
    })}
  </div>`;
}

function goodDetails(load: Load, g: Good, shared: SharedThing | undefined): TemplateResult {
  const key = (f: string) => `load/${load.id}/good/${g.id}/${f}`;
  const at = (f: string) => problemOf({ load: load.id, good: g.id }, f);
  const known = knownSetter("goods", load, g);
  return html`<tr class="details" role="row">
    <td role="cell" colspan=${columns}>
      <div class="sheetlet">
        <div class="specs">
          ${massInput({ key: key("half_width_g"), label: t("good.half"), value: g.half_width_g, problem: at("half_width_g"), set: known("half_width_g", t("good.half")) })}
          ${basis(key("basis"), g.basis, at("basis"), (v) => knowGood(load, g, t("good.basis"), (x) => ({ ...x, basis: v, half_width_g: core.halfWidth(v, x.mass_g) })))}
        </div>
        ${goodPacking(load, g)} ${sharedNote("goods", shared, () => makeOwn(load, g, "good"))}
        <div class="acts">
          <button type="button" @click=${() => store.edit(t("do.duplicate", { part: g.name }), (d) => addGood(d, load.id, g).doc)}>${t("good.duplicate")}</button>
          <button
            type="button"
            class="danger"
            @click=${() => {
              store.edit(t("do.delete", { part: g.name }), (d) => removeGood(d, load.id, g.id));
              store.open.delete(lineID("good", g.id));
              store.tell(t("load.removed", { name: g.name }), { label: t("undo"), run: () => store.undo() });
            }}
          >
            ${t("good.delete")}
          </button>
        </div>
      </div>
    </td>
  </tr>`;
}
