// About: what the program is, its version, the caution, where its figures come
// from, how it stands without a network, and the licences of what it is made of.

import { html, nothing, type TemplateResult } from "lit";
import { because } from "../../app/files.ts";
import { offline } from "../../offline/offline.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import { hasClosed, StoreElement, showDialog } from "../../elements/element.ts";

class About extends StoreElement {
  private shown = false;
  private notices = "";
  private why = "";

  open(): void {
    this.shown = true;
    showDialog(this);
  }

  private close(): void {
    this.querySelector("dialog")?.close();
    this.shown = false;
    this.requestUpdate();
  }

  // In the one file the notices are an element of the page.
  private readonly within = document.getElementById("notices");

  private async load(): Promise<void> {
    if (this.notices) return;
    this.why = "";
    try {
      if (this.within) this.notices = this.within.textContent ?? "";
      else {
        const answer = await fetch("notices.txt");
        if (!answer.ok) throw new Error(String(answer.status));
        this.notices = await answer.text();
      }
    } catch (e) {
      this.why = because(e);
    }
    this.requestUpdate();
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.shown) return nothing;
    return html`<dialog class="about" aria-labelledby="about-title" @close=${(e: Event) => this.shown && hasClosed(e) && this.close()}>
      <h2 id="about-title" tabindex="-1" autofocus>${t("about.title")}</h2>
      <p>${t("about.what")}</p>
      <p>${t("about.version", { version: store.report?.program ?? "" })}</p>
      <h3>${t("about.caution")}</h3>
      <p>${t("about.caution.text")}</p>
      <h3>${t("about.sources")}</h3>
      <ul>
        ${(["parts", "plus", "axes", "body"] as const).map((s) => html`<li>${t(`about.sources.${s}`)}</li>`)}
      </ul>
      <h3>${t("about.offline")}</h3>
      <p>${t(`offline.${offline.state}.long`, { why: offline.why })}</p>
      <details class="licences" @toggle=${(e: Event) => (e.target as HTMLDetailsElement).open && void this.load()}>
        <summary>${t("about.notices")}</summary>
        ${this.why ? html`<p class="why wrong" role="alert">${t("about.notices.failed", { why: this.why })}</p>` : nothing}
        ${
          this.notices
            ? html`<pre tabindex="0" aria-label=${t("about.notices")}>${this.notices}</pre>`
            : this.why
              ? nothing
              : html`<p class="quiet">${t("about.notices.getting")}</p>`
        }
        ${this.within ? nothing : html`<p><a href="notices.txt" target="_blank">notices.txt</a>, ${t("about.notices.file")}</p>`}
      </details>
      <div class="acts"><button type="button" class="go" @click=${() => this.close()}>${t("close")}</button></div>
    </dialog>`;
  }
}

customElements.define("sy-about", About);

export function showAbout(): void {
  (document.querySelector("sy-about") as About | null)?.open();
}
