// What the page is for, in a sentence, and three ways to begin: told to who has come
// for the first time, until they have done something.

import { html, nothing, type PropertyValues, type TemplateResult } from "lit";
import { openers } from "../../app/files.ts";
import { store } from "../../app/state.ts";
import { StoreElement } from "../../elements/element.ts";
import { visit } from "../../elements/way.ts";
import { t } from "../../text/index.ts";

const pause = 1500; // ms without an edit, after which nobody is in the middle of one

class Welcome extends StoreElement {
  private shown = false;
  private timer = 0;

  // What goes while a hand moves something takes nothing from its place: its room is
  // left empty until the hand has rested.
  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    clearTimeout(this.timer);
    if (store.greeting) this.shown = true;
    else if (this.shown) this.timer = window.setTimeout(() => this.close(), pause);
  }

  private close(): void {
    this.shown = store.held;
    this.requestUpdate();
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.shown) return nothing;
    return html`<section class="welcome ${store.greeting ? "" : "going"}" aria-label=${t("welcome.title")}>
      <p>${t("welcome.what")}</p>
      <div class="acts">
        <button type="button" @click=${() => this.demo()}>${t("welcome.demo")}</button>
        <button type="button" @click=${() => openers.bike()}>${t("welcome.bike")}</button>
        <button type="button" @click=${() => openers.list()}>${t("welcome.list")}</button>
      </div>
    </section>`;
  }

  // The demo is open already: what is asked for is to see it.
  private demo(): void {
    this.shown = false;
    store.welcomed();
    store.tell(t("welcome.demoed"));
    visit("balance");
  }
}

customElements.define("sy-welcome", Welcome);
