// The contents: a line of all chapters that stays in reach, at the foot of a phone's
// window, where the thumb is, and at the top of any other; and a list of them with
// what each comes to, which is only worked out while the list is open.

import { html, nothing, type TemplateResult } from "lit";
import { store } from "../../app/state.ts";
import { core } from "../../core/core.ts";
import { StoreElement } from "../../elements/element.ts";
import { allRooms, type Gist, type Room } from "../../elements/room.ts";
import { chapter, followWay, visit } from "../../elements/way.ts";
import { t } from "../../text/index.ts";

class Contents extends StoreElement {
  private shown = false;
  private pressed = false; // the press that has opened the list is not over yet
  private near = ""; // the chapter before the reader's eyes
  private shownNear = ""; // the one that the line was scrolled to last
  private over = ""; // and the one below a finger that slides
  private watch: IntersectionObserver | null = null;
  private readonly level = new Set<string>(); // chapters at the height of the eyes
  private leave = () => {};

  private readonly outside = (e: Event) => {
    if (!e.composedPath().includes(this)) this.show(false);
  };

  override connectedCallback(): void {
    super.connectedCallback();
    this.leave = followWay(() => this.look());
  }

  protected override firstUpdated(): void {
    // A line a third down the window.
    this.watch = new IntersectionObserver(
      (entries) => {
        for (const e of entries) {
          if (e.isIntersecting) this.level.add(e.target.id);
          else this.level.delete(e.target.id);
        }
        this.look();
      },
      { rootMargin: "-33% 0px -66% 0px" },
    );
    for (const r of allRooms()) {
      const section = document.getElementById(r.name);
      if (section) this.watch.observe(section);
    }
  }

  override disconnectedCallback(): void {
    this.watch?.disconnect();
    this.leave();
    this.show(false);
    super.disconnectedCallback();
  }

  // look finds where the reader is: where they went, as long as that is in sight.
  private look(): void {
    const gone = chapter();
    const r = gone ? document.getElementById(gone)?.getBoundingClientRect() : undefined;
    const sight = r !== undefined && r.top < 0.6 * innerHeight && r.bottom > 0.2 * innerHeight;
    const near = sight ? gone : (allRooms().find((x) => this.level.has(x.name))?.name ?? this.near);
    if (near === this.near) return;
    this.near = near;
    this.requestUpdate();
  }

  protected override updated(): void {
    if (this.near === this.shownNear) return;
    this.shownNear = this.near;
    // With the next frame: laying the page out twice for one edit takes as long as the edit.
    requestAnimationFrame(() => this.scrollToNear());
  }

  private scrollToNear(): void {
    const line = this.querySelector(".line");
    const link = line?.querySelector<HTMLElement>("[aria-current]");
    if (!line || !link) return;
    const left = link.offsetLeft - line.scrollLeft;
    if (left < 0 || left + link.offsetWidth > line.clientWidth) line.scrollLeft = link.offsetLeft - (line.clientWidth - link.offsetWidth) / 2;
  }

  private show(on: boolean, refocus = false): void {
    if (this.shown === on) return;
    this.shown = on;
    this.over = "";
    const act = on ? "addEventListener" : "removeEventListener";
    document[act]("pointerdown", this.outside);
    document[act]("focusin", this.outside);
    this.requestUpdate();
    if (refocus) this.querySelector<HTMLElement>(".opens")?.focus();
  }

  private go(e: Event, name: string): void {
    const { ctrlKey, metaKey, shiftKey } = e as MouseEvent;
    if (ctrlKey || metaKey || shiftKey) return; // the browser knows what to do with the address
    e.preventDefault();
    this.show(false);
    visit(name);
  }

  // press opens the list for a finger that slides on to a chapter, and is lifted there.
  private press(e: PointerEvent): void {
    if (this.shown || e.button !== 0) return;
    this.pressed = true;
    this.show(true);
    (e.target as Element).releasePointerCapture(e.pointerId);
    const below = (at: PointerEvent) => {
      const link = document.elementFromPoint(at.clientX, at.clientY)?.closest<HTMLAnchorElement>(".list a");
      return link && this.contains(link) ? link.hash.slice(1) : "";
    };
    const slide = (at: PointerEvent) => {
      const over = below(at);
      if (over === this.over) return;
      this.over = over;
      this.requestUpdate();
    };
    const lift = (at: PointerEvent) => {
      removeEventListener("pointermove", slide);
      removeEventListener("pointerup", lift);
      removeEventListener("pointercancel", lift);
      const name = at.type === "pointerup" ? below(at) : "";
      setTimeout(() => {
        this.pressed = false; // by now the press has been told as a click too
      });
      if (!name) return;
      this.show(false);
      visit(name);
    };
    addEventListener("pointermove", slide);
    addEventListener("pointerup", lift);
    addEventListener("pointercancel", lift);
  }

  private toggle(): void {
    if (this.pressed) return;
    this.show(!this.shown);
    if (this.shown)
      void this.updateComplete.then(() =>
        this.links()
          .find((l) => l.ariaCurrent)
          ?.focus(),
      );
  }

  private links(): HTMLElement[] {
    return [...this.querySelectorAll<HTMLElement>(".list a")];
  }

  private key(e: KeyboardEvent): void {
    if (!this.shown) return;
    if (e.key === "Escape") {
      e.stopPropagation();
      this.show(false, true);
      return;
    }
    const links = this.links();
    const n = links.length;
    const from = links.indexOf(document.activeElement as HTMLElement);
    const to = { ArrowDown: from + 1, ArrowUp: from < 0 ? n - 1 : from - 1 + n, Home: 0, End: n - 1 }[e.key];
    if (to === undefined) return;
    e.preventDefault();
    links[to % n]?.focus();
  }

  private link(r: Room, answer?: Gist): TemplateResult {
    return html`<a
      href="#${r.name}"
      class=${r.name === this.over ? "over" : ""}
      aria-current=${r.name === this.near ? "location" : nothing}
      @click=${(e: Event) => this.go(e, r.name)}
      ><span class="name">${t(r.short)}</span>${answer?.text ? html` <span class="answer ${answer.alarm ? "alarm" : ""}">${answer.text}</span>` : nothing}</a
    >`;
  }

  // answers are what the chapters come to. Those that the core has to be asked for
  // are asked for one after another, so that the page lends an ear in between.
  private answers(): Map<string, Gist> {
    const out = new Map<string, Gist>();
    if (!store.doc || core.state !== "ready") return out;
    let waits = false;
    for (const r of allRooms()) {
      const asked: Gist | undefined = waits ? undefined : r.answer?.();
      waits ||= r.answer !== undefined && asked === undefined;
      const told = asked ?? r.gist?.();
      if (told) out.set(r.name, told);
    }
    return out;
  }

  protected override render(): TemplateResult {
    const answers = this.shown ? this.answers() : new Map<string, Gist>();
    return html`<nav class="contents" aria-label=${t("contents.title")} @keydown=${(e: KeyboardEvent) => this.key(e)}>
      <div class="bar">
        <button
          type="button"
          class="plain opens"
          aria-expanded=${this.shown}
          aria-controls="contents-list"
          @pointerdown=${(e: PointerEvent) => this.press(e)}
          @click=${() => this.toggle()}
        >
          ${t("contents.title")}
        </button>
        <ul class="line">
          ${allRooms().map((r) => html`<li>${this.link(r)}</li>`)}
        </ul>
      </div>
      <div id="contents-list" class="list" ?hidden=${!this.shown}>
        ${
          this.shown
            ? html`<ul>
              ${allRooms().map((r) => html`<li>${this.link(r, answers.get(r.name))}</li>`)}
            </ul>`
            : nothing
        }
      </div>
    </nav>`;
  }
}

customElements.define("sy-contents", Contents);
