// Packing: what is wanted, the search for it, and what it would change.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { CoreError } from "../../core/core.ts";
import { carried, findLoad } from "../../app/loadEdit.ts";
import { aimDefaults, type Aim, type Doc, type Pack, type Terms, type TermsChange } from "../../model/types.ts";
import { aimOf, packer } from "./packer.ts";
import { store } from "../../app/state.ts";
import { brief, t, type Key } from "../../text/index.ts";
import { decimal, figureScale, minus, readNumber, signed, trim } from "../../model/units.ts";
import { subhead } from "../../elements/copytable.ts";
import { domID } from "../../elements/element.ts";
import { choice, field, problemAt } from "../../elements/field.ts";
import { badge } from "../../elements/figure.ts";
import type { Gist } from "../../elements/room.ts";
import { caution, Section } from "../../elements/section.ts";
import { sidesShown, type Letter } from "../../app/sides.ts";

// packable are the sides whose load has bags and goods.
function packable(): Letter[] {
  const doc = store.doc;
  if (!doc) return [];
  return sidesShown().filter((l) => {
    const load = findLoad(doc, carried(doc)[l === "A" ? 0 : 1]);
    return load !== undefined && load.bags.length > 0 && load.goods.length > 0;
  });
}

function loadName(id: string): string {
  return store.doc ? (findLoad(store.doc, id)?.name ?? id) : id;
}

function bagName(load: string, bag: string): string {
  if (!bag) return t("packing.unpacked");
  return (store.doc && findLoad(store.doc, load)?.bags.find((b) => b.id === bag)?.name) || bag;
}

// gist is what the room comes to.
export function gist(): Gist {
  const { pack, phase } = packer;
  if (phase === "running" && pack) return { text: t("packing.gist.running", { load: loadName(pack.load) }) };
  if ((phase === "done" || phase === "stopped") && pack?.moves.length && !packer.stale) return { text: t("packing.gist.found", { load: loadName(pack.load) }) };
  return { text: t(packable().length ? "packing.gist" : "packing.gist.none") };
}

class Packing extends Section {
  protected readonly fold = "packing";
  private letter: Letter = "A";
  private toldAt = 0;
  private told = "";
  private readonly step = () => this.requestUpdate();

  override connectedCallback(): void {
    super.connectedCallback();
    packer.addEventListener("change", this.step);
  }

  override disconnectedCallback(): void {
    packer.removeEventListener("change", this.step);
    super.disconnectedCallback();
  }

  protected body(): TemplateResult {
    const sides = packable();
    if (!sides.length) return html`<p class="quiet">${t("packing.none")}</p>`;
    if (!sides.includes(this.letter)) this.letter = sides[0]!;
    return html`<div class="packsheet">
      <div>${this.aims()} ${this.search(sides)}</div>
      <div>${this.result()}</div>
    </div>`;
  }

  private aims(): TemplateResult {
    const aim = aimOf(store.doc!);
    const set = (change: Partial<Aim>, key: string, any = false) =>
      store.edit(
        t("do.aim"),
        (d) => {
          const { moves, ...rest } = { ...aimOf(d), ...change };
          return { ...d, show: { ...d.show, packing: any || moves === undefined ? rest : { ...rest, moves } } };
        },
        key && `show/packing/${key}`,
      );
    const weight = (k: "front" | "low" | "balance" | "middle" | "steered") =>
      slider({ key: k, label: t(`packing.${k}`), value: aim[k] ?? 0, most: 100, per: 1, unit: "", set: (v) => set({ [k]: v }, k) });
    const moves = aim.moves ?? null;
    const usual = moves === null && Object.entries(aimDefaults).every(([k, v]) => (aim[k as keyof Aim] ?? 0) === v);
    return html`<fieldset class="specs aims">
      <legend>${t("packing.aim")}</legend>
      ${slider({
        key: "front_share",
        label: t("packing.share"),
        value: aim.front_share,
        most: 100,
        per: 0.01,
        unit: t("unit.percent"),
        set: (v) => set({ front_share: v }, "front_share"),
      })}
      ${choice({
        key: "show/packing/of",
        label: t("packing.of"),
        value: aim.of,
        problem: problemAt("show.packing.of", ""),
        options: (["load", "all"] as const).map((v) => ({ value: v, label: t(`packing.of.${v}`) })),
        set: (v) => set({ of: v as Aim["of"] }, ""),
      })}
      <p class="fine">${t("packing.weights")}</p>
      ${weight("front")} ${weight("low")} ${weight("balance")} ${weight("middle")} ${weight("steered")}
      ${field({
        key: "show/packing/moves",
        label: t("packing.most"),
        kind: "number",
        step: 1,
        placeholder: t("packing.most.any"),
        text: moves === null ? "" : String(moves),
        problem: problemAt("show.packing.moves", ""),
        accept: (typed) => {
          const n = typed.trim() ? readNumber(typed) : null;
          if (n !== null && !Number.isInteger(n)) throw new RangeError(t("field.whole"));
          set(n === null ? {} : { moves: n }, "moves", n === null);
        },
      })}
      <p class="fine">${t("packing.pinned")}</p>
      ${usual ? nothing : html`<button type="button" class="plain strong" @click=${() => set(aimDefaults, "", true)}>${t("packing.usual")}</button>`}
    </fieldset>`;
  }

  private search(sides: Letter[]): TemplateResult {
    const { phase, pack, why } = packer;
    const doc = store.doc!;
    const running = phase === "running";
    return html`<h3>${t("packing.search")}</h3>
      <div class="set" role="group" aria-label=${t("packing.for")}>
        ${sides.map(
          (l) =>
            html`<button
              type="button"
              class="toggle named"
              aria-pressed=${l === this.letter}
              ?disabled=${running}
              @click=${() => {
                this.letter = l;
                this.requestUpdate();
              }}
            >
              ${badge(l)}<span class="unseen">${l}: </span><span class="build-name">${loadName(carried(doc)[l === "A" ? 0 : 1])}</span>
            </button>`,
        )}
      </div>
      <div class="acts">
        <button type="button" class="go" ?disabled=${running} @click=${() => packer.start(this.letter)}>
          ${t(pack ? "packing.again" : "packing.start")}
        </button>
        ${running ? html`<button type="button" @click=${() => packer.stop()}>${t("packing.stop")}</button>` : nothing}
        ${phase === "stopped" && pack && !pack.done && !packer.stale ? html`<button type="button" @click=${() => packer.goOn()}>${t("packing.goon")}</button>` : nothing}
      </div>
      ${why ? html`<p class="why wrong" role="alert">${why}</p>` : nothing} ${pack ? this.progress(pack) : nothing}`;
  }

  private progress(p: Pack): TemplateResult {
    const running = packer.phase === "running";
    const text = this.standing(p);
    // Those who listen are told now and then, and at the end.
    if (!running || performance.now() - this.toldAt > 4000) {
      this.toldAt = performance.now();
      this.told = text;
    }
    return html`<div class="progress">
      ${
        running
          ? p.gap === null || p.proved || !packer.widest
            ? html`<progress aria-label=${t("packing.progress")}></progress>`
            : html`<progress aria-label=${t("packing.progress")} max="1" .value=${Math.max(0, 1 - p.gap / packer.widest)}></progress>`
          : nothing
      }
      <p aria-hidden="true">${text} <span class="quiet">${t("packing.looked", { n: decimal(p.nodes, 0) })}</span></p>
      <p class="unseen" role="status">${this.told}</p>
      ${running && !p.proved ? html`<p class="fine">${t("packing.until", { gap: points(p.tolerance), within: worth(p.tolerance) })}</p>` : nothing}
    </div>`;
  }

  private standing(p: Pack): string {
    if (packer.stale) return t("packing.changed");
    if (p.shortage) return `${t("packing.shortage")} ${p.shortage.message}`;
    const gap = p.gap === null ? "–" : points(p.gap);
    const within = worth(p.gap ?? 0);
    const n = decimal(p.moved, 0);
    if (packer.phase === "running" && p.proved) return t("packing.fewer", { gap, within, n });
    if (packer.phase === "done" || p.proved)
      return p.moves.length
        ? `${t("packing.proved", { gap, within })} ${t(p.fewest ? "packing.fewest" : "packing.fewest.open", { n })}`
        : t("packing.proved.same", { gap, within });
    if (packer.phase === "stopped")
      return p.assignment ? t("packing.stopped", { gap, within, best: p.incumbent === null ? "–" : decimal(p.incumbent, 2) }) : t("packing.stopped.none");
    if (p.incumbent === null) return t("packing.nothing");
    return t("packing.best", { best: decimal(p.incumbent, 2), bound: p.bound === null ? "–" : decimal(p.bound, 2), gap });
  }

  private result(): TemplateResult | typeof nothing {
    const p = packer.pack;
    if (!p || packer.stale) return nothing;
    return html`${subhead(t("packing.compare"), t("packing.compare"))}
      ${this.terms(p)}
      ${p.unrated.length ? html`<p class="fine">${t("packing.unrated", { bags: p.unrated.map(brief).join(", ") })}</p>` : nothing}
      ${
        p.moves.length
          ? html`<p class="acts">
            <button type="button" class="go" @click=${() => apply(p)}>${t("packing.apply")}</button>
          </p>`
          : nothing
      }
      ${caution()} ${p.after && packer.phase !== "running" ? this.moves(p) : nothing}`;
  }

  private terms({ before, after, change }: Pack): TemplateResult {
    const show = store.doc!.show;
    const mm = figureScale("mm", show);
    const rows: { key: keyof TermsChange; unit: string; text: (v: number) => string; diff: (v: number) => string }[] = [
      { key: "front_share", unit: t("unit.percent"), text: (v) => decimal(v * 100, 1), diff: (v) => signed(v * 100, 1) },
      ...(["height_mm", "aside_mm", "radius_mm"] as const).map((key) => ({
        key,
        unit: mm.unit,
        text: (v: number) => decimal(v / mm.per, mm.decimals),
        diff: (v: number) => signed(v / mm.per, mm.decimals),
      })),
      ...(Math.max(before.steered_kg_m2, after?.steered_kg_m2 ?? 0) > 0
        ? [{ key: "steered_kg_m2" as const, unit: "kg\u00a0m²", text: (v: number) => decimal(v, 3), diff: (v: number) => signed(v, 3) }]
        : []),
      { key: "aim", unit: "", text: (v) => decimal(v, 2), diff: (v) => signed(v, 2) },
    ];
    const n = (x: Terms | null, k: keyof Terms) => (x ? Number(x[k]) : NaN);
    return html`<table class="lines terms">
      <caption class="unseen">
        ${t("packing.compare.caption")}
      </caption>
      <thead>
        <tr>
          <th scope="col">${t("packing.figure")}</th>
          <th scope="col" class="right">${t("packing.before")}</th>
          <th scope="col" class="right">${t("packing.after")}</th>
          <th scope="col" class="right"><span class="unseen">${t("diff.what")}</span></th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          (r) =>
            html`<tr>
              <th scope="row">${t(`packing.t.${r.key}` as Key)} <span class="unit">${r.unit}</span></th>
              <td class="right">${r.text(n(before, r.key))}</td>
              <td class="right">${after ? r.text(n(after, r.key)) : "–"}</td>
              <td class="right quiet">${change ? r.diff(change[r.key]) : nothing}</td>
            </tr>`,
        )}
        <tr>
          <th scope="row">${t("packing.t.keeps")}</th>
          <td class="right">${keeps(before)}</td>
          <td class="right">${after ? keeps(after) : "–"}</td>
          <td></td>
        </tr>
      </tbody>
    </table>
    <p class="fine">${t("packing.unit")}</p>
    ${before.breaks && !before.keeps ? html`<p class="fine">${t("packing.before")}: ${before.breaks}</p>` : nothing}
    ${before.perhaps ? html`<p class="fine">${t("packing.before")}: ${before.perhaps}</p>` : nothing}
    ${after?.perhaps ? html`<p><strong>${t("packing.after")}: ${after.perhaps}</strong></p>` : nothing}`;
  }

  private moves(p: Pack): TemplateResult {
    return html`${p.moves.length ? subhead(t("packing.moves"), t("packing.moves")) : html`<h3>${t("packing.moves")}</h3>`}
      ${
        p.moves.length
          ? html`<table class="lines moves">
              <caption class="unseen">
                ${t("packing.moves.caption")}
              </caption>
              <thead>
                <tr>
                  <th scope="col">${t("packing.goods")}</th>
                  <th scope="col">${t("packing.from")}</th>
                  <th scope="col">${t("packing.to")}</th>
                </tr>
              </thead>
              <tbody>
                ${p.moves.map(
                  (m) =>
                    html`<tr>
                      <th scope="row">${m.quantity > 1 ? `${m.quantity} × ` : nothing}${m.name}</th>
                      <td class="what">${m.aside && !m.from ? t("packing.aside") : bagName(p.load, m.from)}</td>
                      <td class="what">${m.aside && !m.to ? t("packing.aside") : bagName(p.load, m.to)}</td>
                    </tr>`,
                )}
              </tbody>
            </table>
            <p class="fine">${t("packing.moves.order")}</p>
          `
          : html`<p class="quiet">${t("packing.moves.none")}</p>`
      }`;
  }
}

customElements.define("sy-packing", Packing);

function keeps(x: Terms): TemplateResult {
  if (x.keeps && x.perhaps) return html`<strong class="breaks">${t("packing.perhaps")}</strong>`;
  return x.keeps ? html`${t("packing.yes")}` : html`<strong class="breaks">${t("packing.no")}</strong>`;
}

// points writes a part of the aim.
function points(v: number): string {
  return v > 0 && v < 0.0005 ? t("packing.least") : decimal(v, v < 0.095 ? 3 : 2);
}

// worth says what a part of the aim is on the bike, under the weights that there
// are: as much of any one of the things that are wanted.
function worth(v: number): string {
  const aim = aimOf(store.doc!);
  const mm = figureScale("mm", store.doc!.show);
  const up = (x: number) => decimal(x, x < 0.095 ? 2 : 1);
  const length = (w: number) => `${up(((v / w) * 1000) / mm.per)}\u00a0${mm.unit}`;
  const list = [
    aim.front > 0 ? t("packing.worth.front", { n: up((v / aim.front) * 100) }) : "",
    aim.low > 0 ? t("packing.worth.low", { n: length(aim.low) }) : "",
    aim.balance > 0 ? t("packing.worth.balance", { n: length(aim.balance) }) : "",
  ].filter(Boolean);
  const last = list.pop();
  if (!last) return t("packing.worth.aim", { n: points(v) });
  return list.length ? t("packing.or", { list: list.join(", "), last }) : last;
}

function apply(p: Pack): void {
  const doc = store.doc;
  packer.stop();
  let out: Doc | null = null;
  try {
    out = doc && packer.apply(doc);
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    store.tell(e.message, undefined, "error");
  }
  if (!out) return;
  const made = out;
  const name = loadName(p.load);
  store.edit(t("do.pack", { name }), () => made);
  packer.taken();
  store.tell(t("packing.applied", { name }), { label: t("undo"), run: () => store.undo() });
}

// slider is a weight with its number beside it: either is moved or typed.
function slider(s: { key: string; label: string; value: number; most: number; per: number; unit: string; set: (v: number) => void }): TemplateResult {
  const shown = s.value / s.per;
  const key = `show/packing/${s.key}`;
  const problem = problemAt(`show.packing.${s.key}`, "");
  const set = (v: number) => s.set(Math.round(v * s.per * 1e4) / 1e4);
  return html`<div class="slide">
    <label for=${domID("s", key)}>${s.label}</label>
    <input
      id=${domID("s", key)}
      type="range"
      min="0"
      max=${s.most}
      step="1"
      .value=${live(String(Math.round(shown)))}
      aria-valuetext=${`${trim(shown, 1).replace(minus, "-")} ${s.unit}`.trim()}
      @input=${(e: Event) => set(Number((e.target as HTMLInputElement).value))}
      @change=${() => store.seal()}
    />
    ${field({
      key,
      label: s.label,
      hidden: true,
      kind: "number",
      step: 1,
      ...(s.unit ? { unit: s.unit } : {}),
      text: trim(shown, 1),
      problem,
      accept: (typed) => {
        const v = readNumber(typed);
        if (!Number.isFinite(v)) throw new RangeError(t("field.number"));
        set(v);
      },
    })}
  </div>`;
}
