// The picture in which marks are set: by pressing and dragging, or by the arrow keys,
// with a glass that shows what is around the mark.

import { html, nothing, svg, type PropertyValues, type TemplateResult } from "lit";
import type { Kept } from "../../app/photographs.ts";
import { StoreElement } from "../../elements/element.ts";
import { markedValues, type Marked, type PhotographMark } from "../../model/types.ts";
import { t } from "../../text/index.ts";

const glass = 152; // CSS px across
const nearer = 3; // px of the screen in the glass for one of the picture as it is shown
const grab = 14; // CSS px, about a mark
const touchGrab = 26;
const large = 10; // steps of an arrow key with Shift

// Held is a mark that is being dragged.
interface Held {
  x: number; // where the pointer was, CSS px in the picture
  y: number;
  moved: boolean;
  finger: boolean; // it moves the mark by as much as it moves, and may stay beside it
  fresh: boolean; // the mark was not set before
}

export class Marker extends StoreElement {
  static override properties = { kept: { attribute: false }, chosen: { attribute: false } };
  declare kept: Kept | undefined;
  declare chosen: Marked;
  // onset is told where a mark is now, null for nowhere; onchoose which one is to be
  // set next.
  onset: (of: Marked, at: { x: number; y: number } | null) => void = () => {};
  onchoose: (of: Marked) => void = () => {};
  private held: Held | null = null;
  private over: { x: number; y: number } | null = null; // px of the picture, under the pointer
  private peek = false; // the glass is over the mark though no pointer is
  private wide = 0; // CSS px of the picture as it is shown
  private readonly resized = new ResizeObserver(() => {
    const now = this.image?.clientWidth ?? 0;
    if (now === this.wide) return;
    this.wide = now;
    this.requestUpdate();
  });

  private get image(): HTMLImageElement | null {
    return this.querySelector("img");
  }

  private at(of: Marked): PhotographMark | undefined {
    return this.kept?.of.marks.find((m) => m.of === of);
  }

  // per is px of the picture to the CSS px.
  private get per(): number {
    return this.kept && this.wide ? this.kept.of.width / this.wide : 1;
  }

  override disconnectedCallback(): void {
    this.resized.disconnect();
    super.disconnectedCallback();
  }

  private put(of: Marked, x: number, y: number): void {
    const { width, height } = this.kept!.of;
    const tenth = (v: number, most: number) => Math.round(Math.min(Math.max(v, 0), most) * 10) / 10;
    this.onset(of, { x: tenth(x, width), y: tenth(y, height) });
  }

  // place is where a pointer is, CSS px in the picture.
  private place(e: PointerEvent): { x: number; y: number } {
    const r = this.image!.getBoundingClientRect();
    return { x: e.clientX - r.x, y: e.clientY - r.y };
  }

  private down(e: PointerEvent): void {
    if (e.button !== 0 || this.held) return;
    this.peek = false;
    const { x, y } = this.place(e);
    const finger = e.pointerType !== "mouse";
    const reach = (finger ? touchGrab : grab) * this.per;
    const near = this.kept!.of.marks.filter((m) => m.of !== this.chosen)
      .map((m) => ({ m, d: Math.hypot(m.x - x * this.per, m.y - y * this.per) }))
      .sort((a, b) => a.d - b.d)[0];
    const own = this.at(this.chosen);
    const ownNear = own && Math.hypot(own.x - x * this.per, own.y - y * this.per) < reach;
    let of = this.chosen;
    if (near && near.d < reach && !ownNear) {
      of = near.m.of;
      this.onchoose(of);
    }
    (e.currentTarget as Element).setPointerCapture(e.pointerId);
    const fresh = !this.at(of);
    this.held = { x, y, moved: false, finger, fresh };
    this.over = { x: x * this.per, y: y * this.per };
    // What is pressed is held as it is; a press elsewhere sets the mark there, a
    // finger's when it is lifted without having moved.
    if (of === this.chosen && (fresh || (!finger && !ownNear))) this.put(of, x * this.per, y * this.per);
  }

  private move(e: PointerEvent): void {
    const { x, y } = this.place(e);
    this.over = { x: x * this.per, y: y * this.per };
    const { held } = this;
    if (held && (held.moved || Math.hypot(x - held.x, y - held.y) > 3)) {
      const m = this.at(this.chosen);
      if (m) this.put(this.chosen, m.x + (x - held.x) * this.per, m.y + (y - held.y) * this.per);
      this.held = { ...held, x, y, moved: true };
    }
    this.requestUpdate();
  }

  private up(e: PointerEvent): void {
    const { held } = this;
    this.held = null;
    if (!held) return;
    const { x, y } = this.place(e);
    const own = this.at(this.chosen);
    const apart = own ? Math.hypot(own.x - x * this.per, own.y - y * this.per) / this.per : 0;
    if (held.finger && !held.moved && apart > touchGrab) this.put(this.chosen, x * this.per, y * this.per);
    if (e.pointerType !== "mouse") this.over = null;
    if (held.fresh) this.next();
    this.requestUpdate();
  }

  // next goes on to the first mark that is not set yet.
  private next(): void {
    const open = markedValues.find((of) => !this.at(of));
    if (open) this.onchoose(open);
  }

  // nudge moves the chosen mark by steps; one that is not set begins in the middle.
  nudge(dx: number, dy: number): void {
    this.peek = true;
    const { width, height } = this.kept!.of;
    const m = this.at(this.chosen);
    this.over = null;
    if (m) this.put(this.chosen, m.x + dx, m.y + dy);
    else this.put(this.chosen, width / 2, height / 2);
  }

  private key(e: KeyboardEvent): void {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    this.peek = true;
    const by = Math.max(1, Math.round(this.per)) * (e.shiftKey ? large : 1);
    const way = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, -by], ArrowDown: [0, by] }[e.key];
    const step = { PageUp: -1, PageDown: 1, Enter: 1 }[e.key];
    if (way) this.nudge(way[0]!, way[1]!);
    else if (step) {
      const n = markedValues.length;
      this.onchoose(markedValues[(markedValues.indexOf(this.chosen) + step + n) % n]!);
    } else if (e.key === "Delete" || e.key === "Backspace") this.onset(this.chosen, null);
    else return;
    e.preventDefault();
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.image) this.resized.observe(this.image);
    this.look();
  }

  // watched is what the glass is over: what is under the pointer, or the mark that is
  // being moved. Otherwise it is away, since it covers a part of the picture.
  private watched(own: PhotographMark | undefined): { x: number; y: number } | undefined {
    if (this.over && !this.held) return this.over;
    return this.held || this.peek ? own : undefined;
  }

  // look draws what is in the glass: what is under the pointer, or around the mark.
  private look(): void {
    const lens = this.querySelector("canvas");
    const image = this.image;
    const paint = lens?.getContext("2d");
    const m = this.at(this.chosen);
    const at = this.watched(m);
    if (!lens || !paint || !image?.complete || !this.kept) return;
    lens.toggleAttribute("hidden", !at);
    if (!at) return;
    const dense = devicePixelRatio || 1;
    lens.width = lens.height = Math.round((lens.clientWidth || glass) * dense);
    const seen = ((lens.clientWidth || glass) / nearer) * this.per; // px of the picture across
    paint.fillRect(0, 0, lens.width, lens.height);
    paint.drawImage(image, at.x - seen / 2, at.y - seen / 2, seen, seen, 0, 0, lens.width, lens.height);
    const c = lens.width / 2;
    // A cross that leaves the point itself free, dark on light and light on dark.
    for (const [ink, width] of [
      ["#fff", 3 * dense],
      ["#b0005a", dense],
    ] as const) {
      paint.strokeStyle = ink;
      paint.lineWidth = width;
      paint.beginPath();
      for (const [x, y] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        paint.moveTo(c + x * 5 * dense, c + y * 5 * dense);
        paint.lineTo(c + x * c * 0.6, c + y * c * 0.6);
      }
      paint.stroke();
    }
  }

  protected override render(): TemplateResult | typeof nothing {
    const { kept } = this;
    if (!kept) return nothing;
    const { width, height, marks } = kept.of;
    const r = 8 * this.per;
    const at = this.watched(this.at(this.chosen));
    return html`<div
      class="marking"
      tabindex="0"
      role="application"
      aria-label=${t("photo.area", { mark: t(`photo.mark.${this.chosen}`) })}
      aria-describedby="photo-keys"
      @keydown=${(e: KeyboardEvent) => this.key(e)}
      @pointerdown=${(e: PointerEvent) => this.down(e)}
      @pointermove=${(e: PointerEvent) => this.move(e)}
      @pointerup=${(e: PointerEvent) => this.up(e)}
      @pointercancel=${() => {
        this.held = null;
        this.over = null;
        this.requestUpdate();
      }}
      @pointerleave=${() => {
        if (this.held) return;
        this.over = null;
        this.requestUpdate();
      }}
    >
      <img src=${kept.url} width=${width} height=${height} alt=${t("photo.alt")} draggable="false" @load=${() => this.requestUpdate()} />
      <svg viewBox="0 0 ${width} ${height}" aria-hidden="true">
        ${marks.map((m) => {
          const on = m.of === this.chosen;
          const cross = `M${m.x - r} ${m.y}h${0.7 * r}m${0.6 * r} 0h${0.7 * r}M${m.x} ${m.y - r}v${0.7 * r}m0 ${0.6 * r}v${0.7 * r}`;
          return svg`<g class=${on ? "on" : ""}>
            <path class="halo" d=${cross} stroke-width=${3.5 * this.per}/><circle class="halo" cx=${m.x} cy=${m.y} r=${r} stroke-width=${3.5 * this.per}/>
            <path d=${cross} stroke-width=${1.2 * this.per}/><circle cx=${m.x} cy=${m.y} r=${r} stroke-width=${(on ? 2 : 1.2) * this.per}/>
            <text x=${m.x + 1.3 * r} y=${m.y - 0.9 * r} font-size=${14 * this.per} stroke-width=${3.5 * this.per}>${markedValues.indexOf(m.of) + 1}</text>
          </g>`;
        })}
      </svg>
      <canvas class="glass ${at && at.x < width / 2 ? "right" : ""}" aria-hidden="true" hidden></canvas>
    </div>`;
  }
}

customElements.define("sy-marker", Marker);
