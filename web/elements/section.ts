// A section that lies folded up, one line with what it comes to, until it is
// wanted. Which ones are open is remembered in the browser.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../core/core.ts";
import { store } from "../app/state.ts";
import { t } from "../text/index.ts";
import { readPreference, writePreference } from "../io/storage.ts";
import { DeferredElement } from "./element.ts";
import { narrow } from "./narrow.ts";
import { roomOf } from "./room.ts";

const kept = "unfolded";
const unfolded = new Set(readPreference(kept).split(" ").filter(Boolean));

const writeUnfolded = (): void => writePreference(kept, [...unfolded].join(" "));

export function isUnfolded(name: string): boolean {
  return unfolded.has(name);
}

export function setUnfolded(name: string, on: boolean): void {
  if (unfolded.has(name) === on) return;
  if (on) unfolded.add(name);
  else unfolded.delete(name);
  writeUnfolded();
  store.touch();
}

// What lies folded up within a chapter or the first screen has a key of its own,
// with "!" before it where it was closed although it is open by itself.

// foldOpen says whether a fold is open: as it was left, otherwise as it usually is.
export function foldOpen(key: string, usual = false): boolean {
  return usual ? !unfolded.has(`!${key}`) : unfolded.has(key);
}

// foldMoved hears that a fold was opened or closed, and remembers it; then is for
// what is only made while it is open.
export function foldMoved(key: string, usual = false, then?: () => void): (e: Event) => void {
  return (e) => {
    if (e.target !== e.currentTarget) return;
    const { open } = e.currentTarget as HTMLDetailsElement;
    if (open === foldOpen(key, usual)) return;
    const mark = usual ? `!${key}` : key;
    if (open === usual) unfolded.delete(mark);
    else unfolded.add(mark);
    writeUnfolded();
    then?.();
  };
}

// unfold opens a section and goes to one of its elements, or to its head.
export function unfold(name: string, id = ""): void {
  setUnfolded(name, true);
  setTimeout(() => {
    const hit = document.getElementById(id);
    (hit ?? document.getElementById(name))?.scrollIntoView({ block: hit ? "center" : "start" });
    (hit ?? document.querySelector<HTMLElement>(`#${name} summary`))?.focus({ preventScroll: true });
  }, 80);
}

// Section is a chapter that can be closed; its heading and its gist are what its
// room says of itself. A body is only asked for while it is open.
export abstract class Section extends DeferredElement {
  protected abstract readonly fold: string; // the room's name
  protected abstract body(): TemplateResult;

  // widths are those of the sheet at which the room looks otherwise.
  protected readonly widths: readonly MediaQueryList[] = [narrow];

  private readonly reshape = () => this.requestUpdate();

  override connectedCallback(): void {
    super.connectedCallback();
    for (const w of this.widths) w.addEventListener("change", this.reshape);
  }

  override disconnectedCallback(): void {
    for (const w of this.widths) w.removeEventListener("change", this.reshape);
    super.disconnectedCallback();
  }

  protected override render(): TemplateResult {
    const { fold } = this;
    const on = unfolded.has(fold);
    const there = store.doc !== null && (core.state !== "loading" || store.early !== null);
    const room = roomOf(fold);
    const gist = there && room.gist ? room.gist() : { text: "" };
    return html`<details class="fold" ?open=${on} @toggle=${(e: Event) => e.target === e.currentTarget && setUnfolded(fold, (e.currentTarget as HTMLDetailsElement).open)}>
      <summary>
        <h2 id="${fold}-title">${t(room.title)}</h2>
        <span class="gist ${gist.alarm ? "alarm" : ""}">${gist.text}</span>
      </summary>
      ${on && there ? this.body() : nothing}
    </details>`;
  }
}

// caution stands beside every figure that somebody might take for leave to ride.
export function caution(): TemplateResult {
  return html`<p class="caution"><strong>${t("page.caution")}.</strong> ${t("limits.caution")}</p>`;
}
