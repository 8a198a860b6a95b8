// The balance: the two builds with their totals, the difference on a beam, and
// the table of figures.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { addBuild, compare, compared, copyBuild, editBuild, findBuild, removeBuild } from "../../app/edit.ts";
import { openers } from "../../app/files.ts";
import { core } from "../../core/core.ts";
import { carried, loadsOf, placeBuild, sameLoad, swapSides } from "../../app/loadEdit.ts";
import type { Change, Figure } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { brief, short, t, word } from "../../text/index.ts";
import { alone, between, figureScale, plain, write, type Scale } from "../../model/units.ts";
import { deltaScale } from "../../elements/deltaScale.ts";
import { copyMenu } from "../../elements/copytable.ts";
import { focusSoon, nameSoon, StoreElement } from "../../elements/element.ts";
import { narrow } from "../../elements/narrow.ts";
import { amended, earlyMark } from "../../elements/early.ts";
import { foldMoved, foldOpen, isUnfolded, setUnfolded } from "../../elements/section.ts";
import { badge, number } from "../../elements/figure.ts";
import { deltaLikely, signs, verdictText } from "../../elements/verdict.ts";
import "../../elements/menu.ts";
import { fallen, loadChoice } from "./stateRow.ts";

type Letter = "A" | "B";

interface Band {
  title: string;
  keys: string[];
  mark?: string;
}

const first: Band[] = [
  { title: "rows.springs", keys: ["unsprung_rear", "effective_rear", "ratio_rear", "unsprung_front", "effective_front", "ratio_front", "sprung"] },
  { title: "rows.place", keys: ["centre_x", "centre_z", "centre_y"] },
  { title: "rows.axles", keys: ["rear_load", "front_load", "front_share"] },
];

const further: Band[] = [
  { title: "rows.spin", keys: ["rotating_rear", "rim_rear", "rotating_front", "rim_front"] },
  { title: "rows.turn", keys: ["inertia_roll", "inertia_pitch", "inertia_yaw", "inertia_xz", "gyration_roll", "gyration_pitch", "gyration_yaw"] },
];

class Balance extends StoreElement {
  private naming: Letter | "" = "";
  private was = ""; // the name before
  private more = false;
  private helped = ""; // key of the figure whose help is open

  private readonly reshape = () => this.requestUpdate();

  override connectedCallback(): void {
    super.connectedCallback();
    narrow.addEventListener("change", this.reshape);
  }

  override disconnectedCallback(): void {
    narrow.removeEventListener("change", this.reshape);
    super.disconnectedCallback();
  }

  protected override render(): TemplateResult {
    const doc = store.doc;
    return html`
      <div class="head">
        <h2 id="balance-title">${t("builds.title")}</h2>
        ${earlyMark()}
        ${doc ? copyMenu(t("table.caption"), "figures") : nothing}
      </div>
      ${doc ? html`<sy-state></sy-state>${this.pair()}${this.figures()}` : html`<p class="quiet">${t("page.loading")}</p>`}
    `;
  }

  // figures are all that there is beyond the totals; on a narrow sheet they lie
  // folded up, and the picture comes first.
  private figures(): TemplateResult {
    const body = () => html`${this.empty() ? nothing : this.table()}${this.explain()}`;
    if (!narrow.matches) return body();
    const on = isUnfolded("figures");
    return html`<details class="allfigures" ?open=${on} @toggle=${(e: Event) => e.target === e.currentTarget && setUnfolded("figures", (e.currentTarget as HTMLDetailsElement).open)}>
      <summary><h3>${t("table.fold")}</h3></summary>
      ${on ? body() : nothing}
    </details>`;
  }

  // empty says that neither build has any figure but its total.
  private empty(): boolean {
    return (["A", "B"] as const).every((letter) => (store.shown(letter)?.figures.length ?? 0) < 2);
  }

  private pair(): TemplateResult {
    const { A, B } = store.ids;
    if (!A) return html`<p><button type="button" class="go" @click=${() => this.fresh("A")}>${t("builds.new")}</button></p>`;
    const [la, lb] = carried(store.doc!);
    return html`<div class="pair ${la === lb ? "alike" : ""}">
      ${this.plate("A", A)}
      <button
        type="button"
        class="swap"
        title=${t("builds.swap")}
        ?disabled=${!B}
        @click=${() => store.edit(t("do.swap"), swapSides)}
      >
        <span aria-hidden="true">↕</span><span class="unseen">${t("builds.swap")}</span>
      </button>
      ${B ? this.plate("B", B) : this.noB(A)} ${B ? this.delta() : nothing}
    </div>`;
  }

  private noB(a: string): TemplateResult {
    const doc = store.doc!;
    // A build can be compared with itself under another load.
    const others = doc.builds.filter((b) => b.id !== a || loadsOf(doc).length > 0);
    return html`<div class="plate none">
      ${badge("B")}
      <p>
        ${t("builds.nob")}
        ${others.length ? this.chooser("B", "") : nothing}
        <button type="button" class="plain strong" @click=${() => this.copy(a)}>${t("builds.nob.copy")}</button>
      </p>
    </div>`;
  }

  private chooser(letter: Letter, id: string): TemplateResult {
    const doc = store.doc!;
    const options = [...doc.builds.map((b) => ({ id: b.id, name: b.name || b.id })), ...(letter === "B" ? [{ id: "", name: t("builds.none") }] : [])];
    return html`<span class="chooser"
      ><select
        id="build-${letter}"
        aria-label=${t("builds.choose", { letter })}
        @change=${(e: Event) => this.choose(letter, (e.target as HTMLSelectElement).value)}
      >
        ${options.map((o) => html`<option value=${o.id} .selected=${live(o.id === id)}>${brief(o.name)}</option>`)}
      </select></span
    >`;
  }

  private choose(letter: Letter, id: string): void {
    store.edit(t("do.compare"), (d) => placeBuild(d, letter, id));
  }

  private copy(id: string): void {
    const old = findBuild(store.doc!, id);
    if (!old) return;
    store.edit(t("do.copy", { build: old.name }), (d) => {
      const c = copyBuild(d, id, `${old.name}${t("builds.copysuffix")}`);
      return compare(sameLoad(c.doc), id, c.id);
    });
    store.activate("B"); // it is the copy that is going to be changed
    store.tell(t("builds.copied", { name: old.name }), { label: t("undo"), run: () => store.undo() });
    this.name("B");
  }

  private plate(letter: Letter, id: string): TemplateResult {
    const doc = store.doc!;
    const build = findBuild(doc, id);
    const total = store.shown(letter)?.figures.find((f) => f.key === "total");
    const s = figureScale("g", doc.show);
    return html`<div class="plate ${letter}">
      ${badge(letter)}
      <div class="who">
        ${
          this.naming === letter
            ? html`<input
              id="name-${letter}"
              class="name"
              type="text"
              aria-label=${t("builds.name")}
              .value=${live(build?.name ?? "")}
              @input=${(e: Event) => {
                const name = (e.target as HTMLInputElement).value;
                store.edit(t("do.rename"), (d) => editBuild(d, id, (b) => ({ ...b, name })), `name/${id}`);
              }}
              @keydown=${(e: KeyboardEvent) => {
                if (e.key !== "Enter" && e.key !== "Escape") return;
                e.preventDefault();
                if (e.key === "Escape") store.edit(t("do.rename"), (d) => editBuild(d, id, (b) => ({ ...b, name: this.was })), `name/${id}`);
                this.named();
                focusSoon(`build-${letter}`);
              }}
              @blur=${() => this.named()}
            />`
            : this.chooser(letter, id)
        }
        <sy-menu
          .label=${t("builds.menu")}
          .name=${t("builds.menu.name", { letter })}
          .items=${[
            {
              label: t("builds.rename"),
              run: () => this.name(letter),
            },
            { label: t("change.open"), run: () => openers.change(id) },
            { label: t("builds.copy"), run: () => this.copy(id) },
            { label: t("builds.new"), run: () => this.fresh(letter) },
            { label: t("builds.delete"), disabled: doc.builds.length < 2, run: () => this.discard(id) },
          ]}
        ></sy-menu>
        ${loadChoice(letter)}
        <p class="likely">
          ${
            build && !build.parts.length
              ? html`<button type="button" class="plain strong" @click=${() => this.add(letter)}>${t("builds.first")}</button>`
              : total
                ? html`${total.plus > 0 ? t("likely", between(total.value, total.plus, s)) : t("likely.exact")}${
                    store.stale(id) ? html` <em>${t("builds.stale")}</em>` : fallen(letter) ? html` <em>${fallen(letter)}</em>` : nothing
                  }`
                : t("builds.unweighed")
          }
        </p>
      </div>
      ${total ? html`<p class="total ${store.stale(id) ? "stale" : ""}">${this.amended(letter, "total", s)}${number(alone(total.value, total.plus, s), true)}</p>` : html`<p class="total">–</p>`}
    </div>`;
  }

  private add(letter: Letter): void {
    store.activate(letter);
    focusSoon("add");
  }

  // name opens the field of a build's name, all of it marked.
  private name(letter: Letter): void {
    this.naming = letter;
    this.was = findBuild(store.doc!, store.ids[letter])?.name ?? "";
    this.requestUpdate();
    nameSoon(`name-${letter}`);
  }

  private named(): void {
    if (!this.naming) return;
    this.naming = "";
    store.seal();
    this.requestUpdate();
  }

  private fresh(letter: Letter): void {
    const blank = core.blank().builds[0];
    if (!blank) return;
    store.edit(t("do.newbuild"), (d) => {
      const n = addBuild(d, { ...blank, name: t("builds.newname") });
      const [a, b] = compared(d);
      return letter === "A" ? compare(n.doc, n.id, b) : compare(n.doc, a, n.id);
    });
    this.name(letter);
  }

  private discard(id: string): void {
    const name = findBuild(store.doc!, id)?.name ?? "";
    store.edit(t("do.deletebuild", { build: name }), (d) => removeBuild(d, id));
    store.tell(t("builds.deleted", { name }), { label: t("undo"), run: () => store.undo() });
  }

  private delta(): TemplateResult | typeof nothing {
    const show = store.doc!.show;
    const d = store.difference?.figures.find((f) => f.key === "total");
    if (!d) return nothing;
    const s = figureScale("g", show);
    const verdict = { more: t("delta.heavier"), less: t("delta.lighter"), same: t("delta.same"), undecided: t("delta.undecided") }[d.verdict];
    const likely = deltaLikely(d, s);
    const w = write(d.delta, d.plus, s, true);
    return html`<div class="plate delta">
        <span class="minus" aria-hidden="true">${t("table.diff")}</span>
        <div class="who">
          <p class="verdict"><span class="sign" aria-hidden="true">${signs[d.verdict]}</span> ${verdict}</p>
          <p class="likely"><span class="unseen">${t("delta.label")}: </span>${likely}</p>
        </div>
        <p class="total">${amended("difference", "total", s, true)}${number({ ...w, plus: "" }, true)}</p>
      </div>
      ${deltaScale({
        wide: narrow.matches ? 350 : 560,
        delta: d.delta / s.per,
        plus: d.plus / s.per,
        decided: d.verdict === "more" || d.verdict === "less",
        label: t("beam.label", { value: plain(w), likely }),
        less: t("beam.lighter"),
        more: t("beam.heavier"),
      })}`;
  }

  private table(): TemplateResult {
    const { B } = store.ids;
    return html`<table class="figures ${B ? "two" : "one"}">
      <caption class="unseen">
        ${t("table.caption")}
      </caption>
      <thead>
        <tr>
          <th scope="col"><span class="unseen">${t("table.figure")}</span></th>
          <th scope="col">${badge("A")}<span class="unseen">A</span></th>
          ${
            B
              ? html`<th scope="col">${badge("B")}<span class="unseen">B</span></th>
                <th scope="col">${t("table.diff")}</th>
                <th scope="col"><span class="unseen">${t("table.verdict")}</span></th>`
              : nothing
          }
        </tr>
      </thead>
      ${first.map((b) => this.band(b))}
      ${this.more ? further.map((b) => this.band(b)) : nothing}
      <tbody class="further">
        <tr>
          <td colspan=${B ? 5 : 2}>
            <button
              type="button"
              class="plain"
              aria-expanded=${this.more}
              @click=${() => {
                this.more = !this.more;
                this.requestUpdate();
              }}
            >
              ${this.more ? t("table.less") : t("table.more")}
            </button>
          </td>
        </tr>
      </tbody>
    </table>`;
  }

  private band(b: Band): TemplateResult | typeof nothing {
    const { B } = store.ids;
    const a = store.shown("A")?.figures ?? [];
    const changes = store.difference?.figures ?? [];
    const inB = B ? (store.shown("B")?.figures ?? []) : [];
    if (!b.keys.some((key) => a.some((f) => f.key === key) || inB.some((f) => f.key === key))) return nothing;
    return html`<tbody>
      <tr class="band">
        <th scope="rowgroup" colspan=${B ? 5 : 2}>${t(b.title as Parameters<typeof t>[0])}</th>
      </tr>
      ${b.keys.map((key) => {
        const fa = a.find((f) => f.key === key);
        const fb = inB.find((f) => f.key === key);
        if (!fa && !fb) return nothing;
        return this.row(
          key,
          fa,
          fb,
          changes.find((c) => c.key === key),
          B !== "",
        );
      })}
    </tbody>`;
  }

  private row(key: string, a: Figure | undefined, b: Figure | undefined, c: Change | undefined, two: boolean): TemplateResult {
    const show = store.doc!.show;
    const unit = (a ?? b)!.unit;
    const s = figureScale(unit, show, key);
    const help = word("help", key);
    const open = this.helped === key;
    const tone = key.startsWith("unsprung") || key.startsWith("effective") ? "unsprung" : key === "sprung" ? "sprung" : "";
    const { A, B } = store.ids;
    return html`<tr class=${tone}>
        <th scope="row">
          ${
            help
              ? html`<button
                type="button"
                class="plain label"
                aria-expanded=${open}
                title=${help}
                @click=${() => {
                  this.helped = open ? "" : key;
                  this.requestUpdate();
                }}
              >
                ${short("figure", key)}
              </button>`
              : short("figure", key)
          }${s.unit ? html` <span class="unit">${s.unit}</span>` : nothing}
        </th>
        <td class=${store.stale(A) ? "stale" : ""}>${a ? html`${this.amended("A", key, s)}${number(write(a.value, a.plus, s))}` : "–"}</td>
        ${
          two
            ? html`<td class=${store.stale(B) ? "stale" : ""}>${b ? html`${this.amended("B", key, s)}${number(write(b.value, b.plus, s))}` : "–"}</td>
              <td class="d">${c ? html`${amended("difference", key, s, true)}${number(write(c.delta, c.plus, s, true))}` : "–"}</td>
              <td class="v ${c?.verdict ?? ""}">${c ? html`<span class="sign" aria-hidden="true">${signs[c.verdict]}</span> ${verdictText(c)}` : nothing}</td>`
            : nothing
        }
      </tr>
      ${open ? html`<tr class="help"><td colspan=${two ? 5 : 2}>${help}</td></tr>` : nothing}`;
  }

  private amended(letter: Letter, key: string, s: Scale): TemplateResult | typeof nothing {
    const of = store.shown(letter);
    if (!of) return nothing;
    return amended("build" in of ? { build: of.build, load: of.load } : { build: of.id }, key, s);
  }

  private explain(): TemplateResult {
    return html`<details class="explain" ?open=${foldOpen("balance/likely")} @toggle=${foldMoved("balance/likely")}>
        <summary>${t("likely.explain.title")}</summary>
        <p>${t("likely.explain")}</p>
        <p>${t("likely.explain.diff")}</p>
      </details>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${word("help", "caution")}</p>`;
  }
}

customElements.define("sy-balance", Balance);
