// StoreElement is what the components of the page are built on: an element that
// shows the store's state and renders into the page itself, so that labels, ids
// and styles reach across components.

import { LitElement } from "lit";
import { store } from "../app/state.ts";

export abstract class StoreElement extends LitElement {
  private readonly follow = () => this.requestUpdate();

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    store.addEventListener("change", this.follow);
  }

  override disconnectedCallback(): void {
    store.removeEventListener("change", this.follow);
    super.disconnectedCallback();
  }
}

// shown is kept once the page has painted its first figures.
let shown: Promise<unknown> | null = null;

// firstShown waits for that; a slow phone takes a while to paint.
export function firstShown(): Promise<unknown> {
  shown ??= Promise.race([
    // The frame after is begun once the first is drawn.
    new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)))),
    new Promise((done) => setTimeout(done, document.hidden ? 0 : 1500)), // a page in the background paints nothing
  ]);
  return shown;
}

// turn is the next turn of the page, for all that wait for it.
let turn: Promise<void> | null = null;

function nextTurn(): Promise<void> {
  turn ??= new Promise((done) =>
    setTimeout(() => {
      turn = null;
      done();
    }),
  );
  return turn;
}

// DeferredElement is a StoreElement that lets the figures at the top of the sheet
// come first: at the start, when building a long list takes a while, until they
// are painted; after an edit until they are in the page.
export abstract class DeferredElement extends StoreElement {
  private waited = false;

  protected override async scheduleUpdate(): Promise<void> {
    if (store.report) await (this.waited ? nextTurn() : firstShown());
    this.waited ||= store.report !== null;
    await super.scheduleUpdate();
  }
}

// showDialog opens the dialog that a piece renders, once it is there.
export function showDialog(piece: StoreElement): void {
  piece.requestUpdate();
  void piece.updateComplete.then(() => {
    const d = piece.querySelector("dialog");
    if (d && !d.open) d.showModal();
    store.touch(); // messages go where they can be read
  });
}

// closeDialog closes the dialog of a piece that has forgotten what it shows, and
// gives the focus back to what had it before.
export function closeDialog(piece: StoreElement, before: Element | null): void {
  piece.querySelector("dialog")?.close();
  piece.requestUpdate();
  if (before instanceof HTMLElement && before.isConnected) before.focus();
}

// hasClosed says whether what a dialog told of its end still holds. That comes a
// moment later: by then the next may be open.
export const hasClosed = (e: Event): boolean => !(e.target as HTMLDialogElement).open;

// domID makes a key usable as an id of the page.
export function domID(...parts: string[]): string {
  return parts.join("--").replace(/[^A-Za-z0-9_-]/g, "_");
}

// focusSoon moves the focus once what is being rendered is there.
export function focusSoon(id: string): void {
  setTimeout(() => {
    const e = document.getElementById(id);
    e?.focus();
    e?.scrollIntoView({ block: "nearest" });
  }, 60);
}

// nameSoon does that with the field of a name, all of which the first key then
// replaces.
export function nameSoon(id: string): void {
  focusSoon(id);
  setTimeout(() => {
    const e = document.getElementById(id);
    if (e instanceof HTMLInputElement && e === document.activeElement) e.select();
  }, 60);
}
