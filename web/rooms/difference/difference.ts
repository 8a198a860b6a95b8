// Where the difference comes from: by group, part by part, what moved the
// centre of mass, and which parts to weigh first.

import { html, nothing, svg, type TemplateResult } from "lit";
import { openers } from "../../app/files.ts";
import { groupOfBoth } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { Advice, Difference as Diff, GroupChange, Mover, PartChange } from "../../model/types.ts";
import { decimal, figureScale, partScale, plain, rough, signed, trim, write } from "../../model/units.ts";
import { copyMenu, copyTable, subhead } from "../../elements/copytable.ts";
import { DeferredElement } from "../../elements/element.ts";
import { number } from "../../elements/figure.ts";
import { reveal } from "../../elements/lines.ts";

const few = 10;

class Difference extends DeferredElement {
  private all = new Set<string>();

  protected override render(): TemplateResult {
    const d = store.difference;
    return html`<div class="head">
        <h2 id="difference-title">${t("diff.title")}</h2>
        ${d ? copyMenu(t("diff.title"), "difference") : nothing}
      </div>
      ${
        d
          ? html`<div class="columns">
            <div class="column">${this.groups(d)}${this.weigh(d)}</div>
            <div class="column wide">${this.parts(d)}</div>
            <div class="column">${this.moved(d)}</div>
          </div>`
          : html`<p class="quiet">${t("diff.none")}</p>`
      }`;
  }

  private more(key: string, n: number): TemplateResult | typeof nothing {
    if (n <= few) return nothing;
    const open = this.all.has(key);
    return html`<p class="after">
      <button
        type="button"
        class="plain strong"
        aria-expanded=${open}
        @click=${() => {
          if (open) this.all.delete(key);
          else this.all.add(key);
          this.requestUpdate();
        }}
      >
        ${open ? t("diff.fewer") : t("diff.all", { n })}
      </button>
    </p>`;
  }

  private cut<T>(key: string, rows: T[]): T[] {
    // Even all is not without end: a page of so many rows is no use to anyone.
    return rows.slice(0, this.all.has(key) ? 500 : few);
  }

  // whole shows all lines of a table, until the function that it gives is called.
  private async whole(key: string): Promise<() => void> {
    if (this.all.has(key)) return () => {};
    this.all.add(key);
    this.requestUpdate();
    await this.updateComplete;
    return () => {
      this.all.delete(key);
      this.requestUpdate();
    };
  }

  private groups(d: Diff): TemplateResult {
    const s = partScale(store.doc!.show);
    const other = d.groups.filter((g) => g.delta_g !== 0 || g.plus_g !== 0);
    const same = d.groups.filter((g) => !other.includes(g)).map((g) => groupOfBoth(g.key));
    const reach = Math.max(...d.groups.map((g) => Math.abs(g.delta_g) + g.plus_g), 1);
    return html`${subhead(t("diff.groups"), t("diff.groups"))}
      <table class="lines">
        <caption class="unseen">
          ${t("diff.groups.caption")}
        </caption>
        <thead>
          <tr>
            <th scope="col">${t("diff.group")}</th>
            <td></td>
            <th scope="col" class="right">${t("diff.mass")}, ${s.unit}</th>
          </tr>
        </thead>
        <tbody>
          ${other.map(
            (g) =>
              html`<tr>
                <th scope="row">${groupOfBoth(g.key)}</th>
                <td class="barcell">${bar(g, reach)}</td>
                <td>${number(write(g.delta_g, g.plus_g, s, true))}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      ${same.length ? html`<p class="fine">${t("diff.groups.same", { groups: same.join("; ") })}</p>` : nothing}
      <p class="fine">${t("diff.bars")}</p>`;
  }

  private parts(d: Diff): TemplateResult {
    const show = store.doc!.show;
    const s = partScale(show);
    return html`${d.parts.length ? subhead(t("diff.parts"), t("diff.parts"), () => this.whole("parts")) : html`<h3>${t("diff.parts")}</h3>`}
      ${
        d.parts.length
          ? html`<table class="lines">
              <caption class="unseen">
                ${t("diff.parts.caption")}
              </caption>
              <thead>
                <tr>
                  <th scope="col">${t("diff.part")}</th>
                  <th scope="col">${t("diff.what")}</th>
                  <th scope="col" class="right">${t("diff.mass")}, ${s.unit}</th>
                </tr>
              </thead>
              <tbody>
                ${this.cut("parts", d.parts).map(
                  (p) =>
                    html`<tr>
                      <th scope="row">${link(p.name, p.a, p.b)}</th>
                      <td class="what">${what(p)}</td>
                      <td>${number(write(p.delta_g, p.plus_g, s, true))}</td>
                    </tr>`,
                )}
              </tbody>
            </table>
            ${this.more("parts", d.parts.length)}`
          : html`<p class="quiet">${t("diff.same")}</p>`
      }`;
  }

  private moved(d: Diff): TemplateResult {
    const show = store.doc!.show;
    const s = figureScale("mm", show);
    const n = (v: number) => signed(v / s.per, 1);
    const heading = html`${t("diff.centre")} <span class="unit">${s.unit}</span>`;
    return html`${d.moved.length ? subhead(heading, t("diff.centre"), () => this.whole("moved")) : html`<h3>${heading}</h3>`}
      ${
        d.moved.length
          ? html`<table class="lines xyz">
              <caption class="unseen">
                ${t("diff.centre.caption")}
              </caption>
              <thead>
                <tr>
                  <th scope="col">${t("diff.part")}</th>
                  <th scope="col" class="right">${t("diff.forward")}</th>
                  <th scope="col" class="right">${t("diff.left")}</th>
                  <th scope="col" class="right">${t("diff.up")}</th>
                </tr>
              </thead>
              <tbody>
                ${this.cut("moved", d.moved).map(
                  (m: Mover) =>
                    html`<tr>
                      <th scope="row">${link(m.name, m.a, m.b)}</th>
                      ${m.by_mm.map((v) => html`<td class="right">${n(v)}</td>`)}
                    </tr>`,
                )}
              </tbody>
            </table>
            ${this.more("moved", d.moved.length)}`
          : html`<p class="quiet">${t("diff.centre.none")}</p>`
      }`;
  }

  private weigh(d: Diff): TemplateResult {
    const { letter } = store;
    const own = store.shown(letter)?.weigh ?? [];
    return html`<h3>${t("diff.weigh")}</h3>
      ${
        d.weigh.length || own.length
          ? html`${d.weigh.length ? advice(d.weigh, (now) => t("diff.weigh.lead", { now })) : nothing}
          ${own.length ? advice(own, (now) => t("diff.weigh.build", { letter, now })) : nothing}`
          : html`<p class="quiet">${t("diff.weigh.none")}</p>`
      }`;
  }
}

customElements.define("sy-difference", Difference);

function advice(list: Advice[], lead: (now: string) => string): TemplateResult {
  const s = partScale(store.doc!.show);
  const n = (v: number) => plain(rough(v, s));
  const said = lead(n(list[0]!.now_g));
  return html`<p class="fine lead"><span>${said}</span> ${copyTable(said)}</p>
    <ol class="advice">
    ${list.slice(0, 5).map(
      (a) =>
        html`<li>
            ${weighable(a) ? onScale(a) : link(a.name, a.part, undefined, a.build, "mass_g")}
            <span class="then">${t("diff.weigh.step", { plus: n(a.then_g) })}${a.settles ? html`, <strong>${t("diff.weigh.settles")}</strong>` : nothing}</span>
          </li>`,
    )}
  </ol>`;
}

// weighable says whether it is a part, which goes on the kitchen scale; what is
// carried is weighed where it stands in the load.
const weighable = (a: Advice): boolean => store.doc?.builds.find((b) => b.id === a.build)?.parts.some((p) => p.id === a.part) ?? false;

function onScale(a: Advice): TemplateResult {
  return html`<button
    type="button"
    class="plain name"
    title=${t("scale.open")}
    @click=${() => {
      store.activateBuild(a.build);
      openers.scale(a.build, a.part);
    }}
  >
    ${a.name}
  </button>`;
}

function what(p: PartChange): string {
  if (p.what === "added") return t("diff.added");
  if (p.what === "removed") return t("diff.removed");
  const s = figureScale("mm", store.doc!.show);
  const far = p.far_mm / s.per;
  const by = `${decimal(far, s.decimals)}\u00a0${s.unit}`;
  const known = p.within_a_mm !== p.within_b_mm;
  const words = p.what === "changed" && !(known && p.delta_g === 0 && p.plus_g === 0) ? [t("diff.changed")] : [];
  if (far * s.per >= 1) words.push(t(p.with_frame ? "diff.moved.frame" : "diff.moved.by", { by }));
  if (p.carrier_a !== p.carrier_b) words.push(t("diff.carrier"));
  const within = (mm = 0) => `±${trim(mm / s.per, 1)}\u00a0${s.unit}`;
  if (known) words.push(t("diff.within", { a: within(p.within_a_mm), b: within(p.within_b_mm) }));
  return words.join(", ") || t("diff.moved");
}

// link leads to a part in the list of the build that has it: B if both have.
function link(name: string, a?: string, b?: string, build?: string, to: "name" | "mass_g" = "name"): TemplateResult {
  return html`<button
    type="button"
    class="plain name"
    @click=${() => {
      const { A, B } = store.ids;
      if (build) store.activateBuild(build);
      else if (b && store.activeID !== B && (!a || store.activeID !== A)) store.activate("B");
      else if (a && !b) store.activate("A");
      else if (b && !a) store.activate("B");
      const id = store.activeID === B && !build ? (b ?? a) : (a ?? b);
      if (id) reveal(id, to);
    }}
  >
    ${name}
  </button>`;
}

const barWide = 96;

function bar(g: GroupChange, reach: number): TemplateResult {
  const px = (v: number) => barWide / 2 + (v / reach) * (barWide / 2 - 1);
  const x = px(g.delta_g);
  const middle = barWide / 2;
  return html`<svg class="bar ${g.delta_g < 0 ? "less" : "more"}" viewBox="0 0 ${barWide} 14" width=${barWide} height="14" aria-hidden="true" focusable="false">
    <path class="axis" d="M${middle} 0v14" />
    <rect x=${Math.min(x, middle).toFixed(1)} y="3" width=${Math.abs(x - middle).toFixed(1)} height="8" />
    ${g.plus_g > 0 ? svg`<path class="range" d="M${px(g.delta_g - g.plus_g).toFixed(1)} 7H${px(g.delta_g + g.plus_g).toFixed(1)}"/>` : nothing}
  </svg>`;
}
