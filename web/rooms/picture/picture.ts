// Around the canvas: what it shows, what is chosen in it, and the same in words.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core } from "../../core/core.ts";
import { speaker } from "../../app/language.ts";
import { lineID, loadLine, type Line } from "../../app/loadlines.ts";
import { arrow, large, nudge, small } from "../../app/nudge.ts";
import { chooseNeighbour, deletePart } from "../../elements/partActs.ts";
import { sprung } from "../../app/places.ts";
import { store } from "../../app/state.ts";
import { svgElement } from "../../io/svg.ts";
import { brief, t } from "../../text/index.ts";
import type { Intent, PartReport, Vec3, View } from "../../model/types.ts";
import { figureScale, partScale, placeText, plain, write } from "../../model/units.ts";
import { StoreElement } from "../../elements/element.ts";
import { earlyMark } from "../../elements/early.ts";
import { badge } from "../../elements/figure.ts";
import { reveal } from "../../elements/lines.ts";
import { openers } from "../../app/files.ts";
import { photographs } from "../../app/photographs.ts";
import { foldMoved, foldOpen } from "../../elements/section.ts";

class PictureHead extends StoreElement {
  private shown = false; // on a narrow sheet, where the tools lie folded into one

  protected override render(): TemplateResult {
    const { look } = store;
    const { B } = store.ids;
    const off = !store.doc;
    const photographed = photographs.of(store.build);
    const press = (label: string, on: boolean, act: () => void, disabled = off) =>
      html`<button type="button" class="toggle" aria-pressed=${on} ?disabled=${disabled} @click=${act}>${label}</button>`;
    return html`<div class="head ${this.shown ? "shown" : ""}">
      <h2 id="picture-title">${t("picture.title")}</h2>
      <button
        type="button"
        class="plain opens"
        aria-expanded=${this.shown}
        aria-controls="picture-tools"
        @click=${() => {
          this.shown = !this.shown;
          this.requestUpdate();
        }}
      >
        ${t("picture.tools")}
      </button>
      <div class="acts publishing">
        ${
          photographed && look.side === "side"
            ? html`<input
                type="range"
                class="strength"
                min="0"
                max="1"
                step="0.05"
                aria-label=${t("picture.strength")}
                title=${t("picture.strength")}
                .value=${live(String(look.strength))}
                @input=${(e: Event) => store.setLook({ strength: Number((e.target as HTMLInputElement).value) })}
              />`
            : nothing
        }
        <button type="button" class="plain" ?disabled=${off} @click=${() => openers.photograph()}>${t("picture.photograph")}</button>
        <button type="button" class="plain" ?disabled=${off} @click=${() => openers.publish()}>${t("publish.open.picture")}</button>
      </div>
      <div class="tools" id="picture-tools">
        <div class="set" role="group" aria-label=${t("picture.show")}>
          ${(["A", "B"] as const).map(
            (letter) =>
              html`<button
                type="button"
                class="toggle letter"
                aria-label=${t(letter === "A" ? "builds.a" : "builds.b")}
                aria-pressed=${store.letter === letter && !off}
                ?disabled=${off || (letter === "B" && !B)}
                @click=${() => store.activate(letter)}
              >
                ${badge(letter)}
              </button>`,
          )}
        </div>
        <div class="set" role="group" aria-label=${t("picture.view")}>
          ${press(t("picture.side"), look.side === "side", () => store.setLook({ side: "side" }))}
          ${press(t("picture.rear"), look.side === "rear", () => store.setLook({ side: "rear" }))}
        </div>
        <div class="set shows">
          ${press(t("picture.labels"), look.labels, () => store.setLook({ labels: !look.labels }))}
          ${press(t("picture.dimensions"), look.dimensions, () => store.setLook({ dimensions: !look.dimensions }))}
          ${press(t("picture.steering"), look.steering, () => store.setLook({ steering: !look.steering }))}
          ${press(t("picture.key"), look.key, () => store.setLook({ key: !look.key }))}
          ${press(t("picture.ghost"), look.ghost && B !== "", () => store.setLook({ ghost: !look.ghost }), off || !B)}
        </div>
        <div class="set" role="group" aria-label=${t("picture.zoom")}>
          <button type="button" class="toggle" aria-label=${t("picture.out")} ?disabled=${off} @click=${() => core.camera("out")}>−</button>
          <button type="button" class="toggle" aria-label=${t("picture.in")} ?disabled=${off} @click=${() => core.camera("in")}>+</button>
          <button type="button" class="toggle" ?disabled=${off} @click=${() => core.camera("fit")}>${t("picture.fit")}</button>
        </div>
      </div>
    </div>`;
  }
}

customElements.define("sy-picture-head", PictureHead);

// Loading covers the plate until the calculator is there.
class Loading extends StoreElement {
  protected override render(): TemplateResult | typeof nothing {
    // A picture from some other time says whose it is.
    if (store.early) return html`<p class="stamp">${earlyMark()}</p>`;
    if (core.state !== "loading") return nothing;
    return html`<div class="loading">
      <label for="loaded">${t("page.loading")}</label>
      ${
        core.total > 0
          ? html`<progress id="loaded" max=${core.total} .value=${Math.min(core.loaded, core.total)}></progress>`
          : html`<progress id="loaded"></progress>`
      }
    </div>`;
  }
}

customElements.define("sy-loading", Loading);

// On a narrow sheet the words wait until asked for: the totals come first.
const roomy = matchMedia("(min-width: 44rem)").matches;

class PictureFoot extends StoreElement {
  protected override render(): TemplateResult {
    const summary = store.shown(store.letter)?.summary ?? "";
    return html`<div class="picked">${this.chosen()}</div>
      ${core.drawing && !core.still ? html`<p class="why wrong">${core.drawing}</p>` : nothing}
      <details class="words" ?open=${foldOpen("picture/words", roomy)} @toggle=${foldMoved("picture/words", roomy)}>
        <summary>${t("picture.words")}</summary>
        <p id="picture-words">${summary} ${store.difference?.summary ?? ""}</p>
        <p class="fine">${t("picture.keys")}</p>
      </details>`;
  }

  private chosen(): TemplateResult {
    const line = loadLine(store.hovered) ?? (store.part(store.hovered) ? undefined : loadLine(store.selected));
    if (line) return this.line(line);
    const id = store.part(store.hovered) ? store.hovered : store.selected;
    const p = store.part(id);
    const doc = store.doc;
    if (!p || !doc) return html`<p class="quiet">${t("picture.hint")}</p>`;
    const w = store.weighed(id);
    const s = partScale(doc.show);
    const picked = id === store.selected;
    return html`<p class="what">
        <strong>${brief(p.name)}</strong>
        <span class="facts">${w ? plain(write(w.mass_g, w.plus_g, s)) : "–"}${w ? html`${sprung(w) ? ` · ${sprung(w)}` : nothing} · ${place(w)}` : nothing}</span>
      </p>
      ${
        picked
          ? html`<div class="tools">
            ${this.steps(id)}
            <button type="button" class="plain strong" @click=${() => reveal(id)}>${t("picture.tolist")}</button>
            <button type="button" class="plain" @click=${() => deletePart(id)}>${t("part.delete")}</button>
            <button type="button" class="plain" @click=${() => store.select("")}>${t("picture.deselect")}</button>
          </div>`
          : nothing
      }`;
  }

  // line tells of what is no part: a bag, something in one, the rider.
  private line(l: Line): TemplateResult {
    const doc = store.doc!;
    const id = lineID(l.kind, l.id);
    return html`<p class="what">
        <strong>${brief(l.name)}</strong>
        <span class="facts"
          >${plain(write(l.mass_g, l.plus_g, l.kind === "rider" ? figureScale("g", doc.show) : partScale(doc.show)))}${l.place_mm ? html` · ${placed(l.place_mm)}` : nothing}</span
        >
      </p>
      ${
        id === store.selected
          ? html`<div class="tools">
            ${l.kind === "bag" ? this.steps(id) : nothing}
            <button type="button" class="plain strong" @click=${() => reveal(id)}>${t("picture.tolist")}</button>
            <button type="button" class="plain" @click=${() => store.select("")}>${t("picture.deselect")}</button>
          </div>`
          : nothing
      }`;
  }

  private steps(id: string): TemplateResult {
    const rear = store.look.side === "rear";
    const step = (label: string, sign: string, by: Vec3) =>
      html`<button
        type="button"
        class="toggle"
        aria-label=${`${label} ${t("nudge.by", { mm: small })}`}
        title=${label}
        @click=${(e: MouseEvent) => nudge(id, (e.shiftKey ? by.map((v) => (v * large) / small) : by) as Vec3)}
      >
        ${sign}
      </button>`;
    return html`<div class="set" role="group" aria-label=${t("nudge.title")}>
      ${
        rear
          ? html`${step(t("nudge.left"), "←", [0, small, 0])}${step(t("nudge.right"), "→", [0, -small, 0])}`
          : html`${step(t("nudge.back"), "←", [-small, 0, 0])}${step(t("nudge.forward"), "→", [small, 0, 0])}`
      }
      ${step(t("nudge.up"), "↑", [0, 0, small])}${step(t("nudge.down"), "↓", [0, 0, -small])}
    </div>`;
  }
}

customElements.define("sy-picture-foot", PictureFoot);

function place(w: PartReport): string {
  return placed(w.place_mm);
}

function placed(at: Vec3): string {
  const show = store.doc!.show;
  const [x, y, z] = placeText(at, show);
  const unit = figureScale("mm", show).unit;
  return t("picture.at", { x, y, z, unit });
}

// Backdrop is the photograph behind the canvas, which can be seen through then.
class Backdrop {
  private readonly pane = document.createElement("div");
  private readonly image = document.createElement("img");
  private url = "";

  constructor(frame: HTMLIFrameElement) {
    this.pane.className = "plate-photograph";
    this.image.alt = "";
    frame.before(this.pane);
    this.pane.hidden = true;
  }

  show(url: string, strength: number): void {
    this.image.style.opacity = String(strength);
    if (url === this.url) return;
    this.url = url;
    this.image.src = url;
    // A page without a photograph has no image in it.
    if (url) this.pane.append(this.image);
    else this.image.remove();
  }

  // follow lays it where the core says, in the frame in which the canvas is painted.
  follow(): void {
    const at = this.url ? core.backdrop() : "";
    this.pane.hidden = at === "";
    this.image.style.transform = at;
  }
}

// watchCanvas keeps the canvas showing what the store holds, and takes what
// happens on it to the store.
export function watchCanvas(frame: HTMLIFrameElement): void {
  let last = "";
  let due = false;
  const plate = frame.parentElement!;
  const backdrop = new Backdrop(frame);
  frame.title = t("picture.title");

  const show = () => {
    due = false;
    const { doc, look } = store;
    if (!doc || core.state !== "ready") return;
    const behind = look.strength ? photographs.of(store.build) : null;
    backdrop.show(behind?.url ?? "", look.strength);
    const view: View = {
      build: store.activeID,
      ghost: look.ghost ? store.otherID : "",
      at: store.letter === "B" ? "b" : "a",
      ...(look.ghost && store.ids.B ? { ghost_at: store.letter === "B" ? "a" : "b" } : {}),
      side: look.side,
      dark: document.documentElement.dataset.theme === "dark",
      selected: store.selected,
      dimensions: look.dimensions,
      steering: look.steering,
      labels: look.labels,
      key: look.key,
      units: { mass: doc.show.mass, length: doc.show.length },
      ...(behind && { photograph: behind.of }),
      width: plate.clientWidth,
      height: plate.clientHeight,
    };
    // A frame of another colour scheme than the page's would not be see-through.
    // While the page is being left, the frame's document may be empty already.
    const root = core.window?.document.documentElement;
    if (!root) return;
    root.style.colorScheme = view.dark ? "dark" : "light";
    const { text } = store;
    const now = speaker.code + JSON.stringify(view) + text;
    if (now === last) return;
    last = now;
    core.show(text, view);
    frame.title = t("picture.frame", { build: store.build?.name ?? "" });
    describe();
  };
  // Without a canvas its picture lies over the frame as SVG: the frame below
  // still takes what pointer and keys do. So does, until the canvas is painted,
  // the picture that the page shows before.
  const still = document.createElement("div");
  still.className = "plate-picture";
  still.ariaHidden = "true";
  let stale = false;
  let early = "";
  const lay = (picture: string) => {
    const drawn = svgElement(picture);
    if (drawn) still.replaceChildren(drawn);
    frame.after(still);
  };
  const paint = () => {
    stale = false;
    if (core.still && core.state === "ready") {
      lay(core.picture());
      backdrop.follow();
    } else if (!early || painted) still.remove();
  };
  let painted = false;
  core.addEventListener("painted", () => {
    painted = true;
  });
  const before = () => {
    if (!store.early || store.early.picture === early) return;
    early = store.early.picture;
    lay(early);
  };
  store.addEventListener("change", before);
  store.picture = () => (painted || core.still ? core.picture() : "");
  const repaint = () => {
    if (stale) return;
    stale = true;
    requestAnimationFrame(paint);
  };
  const soon = () => {
    if (due) return;
    due = true;
    requestAnimationFrame(show);
  };

  // The canvas itself is made by the core; give it a name, a role and words.
  const describe = () => {
    const canvas = core.window?.document.querySelector("canvas");
    if (!canvas) return;
    canvas.setAttribute("role", "application");
    canvas.setAttribute("aria-label", `${frame.title}. ${t("picture.keys")}`);
  };

  store.addEventListener("change", soon);
  for (const change of ["painted", "drawing", "state"]) {
    core.addEventListener(change, () => {
      last = "";
      soon();
      repaint();
    });
  }
  core.addEventListener("still", repaint);
  core.addEventListener("drawn", () => backdrop.follow());
  new ResizeObserver(soon).observe(plate);

  core.onintent = (i: Intent) => {
    if (i.hover !== undefined) store.hover(i.hover);
    if (i.select !== undefined) store.select(i.select);
    if (i.move) {
      store.held = !i.move.done;
      nudge(i.move.part, i.move.by_mm);
      if (i.move.done) store.seal();
    }
  };

  core.onkey = (e: KeyboardEvent) => {
    if (canvasKey(e)) return true;
    // Shortcuts of the page hold in the canvas too.
    const copy = new KeyboardEvent("keydown", { key: e.key, ctrlKey: e.ctrlKey, metaKey: e.metaKey, shiftKey: e.shiftKey, altKey: e.altKey, cancelable: true });
    return !document.dispatchEvent(copy);
  };
}

function canvasKey(e: KeyboardEvent): boolean {
  if (e.ctrlKey || e.metaKey || e.altKey) return false;
  const by = arrow(e.key, e.shiftKey);
  if (by) {
    if (!store.selected) chooseNeighbour(1);
    else nudge(store.selected, by);
    return true;
  }
  switch (e.key) {
    case "PageDown":
      chooseNeighbour(1);
      return true;
    case "PageUp":
      chooseNeighbour(-1);
      return true;
    case "+":
    case "=":
      core.camera("in");
      return true;
    case "-":
      core.camera("out");
      return true;
    case "0":
      core.camera("fit");
      return true;
    case "Enter":
      if (store.selected) reveal(store.selected);
      return store.selected !== "";
    default:
      return false;
  }
}
