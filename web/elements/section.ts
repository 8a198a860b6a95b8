// A section that lies folded up, one line with what it comes to, until it is
// wanted. Which ones are open is remembered in the browser.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../core/core.ts";
import { store } from "../app/state.ts";
import { t, type Key } from "../text/index.ts";
import { readPreference, writePreference } from "../io/storage.ts";
import { DeferredElement } from "./element.ts";

const kept = "unfolded";
const unfolded = new Set(readPreference(kept).split(" ").filter(Boolean));

export type Fold = "load" | "limits" | "packing" | "weighin";

export interface Gist {
  text: string;
  alarm?: boolean; // something is wrong or over a limit
}

export function isUnfolded(name: Fold): boolean {
  return unfolded.has(name);
}

function set(name: Fold, on: boolean): void {
  if (unfolded.has(name) === on) return;
  if (on) unfolded.add(name);
  else unfolded.delete(name);
  writePreference(kept, [...unfolded].join(" "));
  store.touch();
}

// unfold opens a section and goes to one of its elements, or to its head.
export function unfold(name: Fold, id = ""): void {
  set(name, true);
  setTimeout(() => {
    const hit = document.getElementById(id);
    (hit ?? document.getElementById(name))?.scrollIntoView({ block: hit ? "center" : "start" });
    (hit ?? document.querySelector<HTMLElement>(`#${name} summary`))?.focus({ preventScroll: true });
  }, 80);
}

export abstract class Section extends DeferredElement {
  protected abstract readonly fold: Fold;
  protected abstract gist(): Gist;
  protected abstract body(): TemplateResult;

  protected override render(): TemplateResult {
    const { fold } = this;
    const on = unfolded.has(fold);
    const there = store.doc !== null && core.state !== "loading";
    const gist = there ? this.gist() : { text: "" };
    return html`<details class="fold" ?open=${on} @toggle=${(e: Event) => e.target === e.currentTarget && set(fold, (e.currentTarget as HTMLDetailsElement).open)}>
      <summary>
        <h2 id="${fold}-title">${t(`${fold}.title` as Key)}</h2>
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
