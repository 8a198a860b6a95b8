// What the page says of itself until its program is there: whose figures it shows
// and of when, how far the program is on its way, what waits for it, and what the
// address brings. It lies over the foot of the window, so that nothing moves when it
// goes; and when it goes it says what the program found otherwise.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { arrival } from "../../app/arrival.ts";
import { store } from "../../app/state.ts";
import { when } from "../../elements/early.ts";
import { StoreElement } from "../../elements/element.ts";
import { count, t } from "../../text/index.ts";
import { calledIn, carriesDocument } from "../../text/link.ts";

class EarlyBar extends StoreElement {
  private readonly reckoned = () => {
    const n = store.corrected.size;
    if (n) store.tell(count(n, "early.corrected.one", "early.corrected.many"));
    else store.dispatchEvent(new CustomEvent("say", { detail: t("early.same") }));
  };

  override connectedCallback(): void {
    super.connectedCallback();
    store.addEventListener("reckoned", this.reckoned);
  }

  override disconnectedCallback(): void {
    store.removeEventListener("reckoned", this.reckoned);
    super.disconnectedCallback();
  }

  protected override updated(): void {
    const root = document.documentElement;
    if (store.early) root.dataset.early = store.early.of;
    else delete root.dataset.early;
    // Only the picture is busy: what is told in words can be read meanwhile.
    const busy = core.state === "loading" || store.early !== null;
    document.getElementById("plate")?.setAttribute("aria-busy", String(busy));
  }

  protected override render(): TemplateResult | typeof nothing {
    if (core.state !== "loading" || document.documentElement.dataset.settled === undefined) return nothing;
    const { early } = store;
    const { names } = arrival;
    const share = Math.min(core.loaded / core.total, 1);
    return html`<section class="early" aria-label=${t("early.title")}>
      <div role="status">
        <p>
          ${early ? html`<strong>${early.of === "demo" ? t("early.demo") : t("early.kept", { when: when(early.at) })}</strong> ` : nothing}
          ${early && !early.current ? t("early.edited") : nothing}
          ${early ? t("early.anew") : t("early.coming")}
        </p>
        ${carriesDocument(location.hash) ? html`<p>${this.link(calledIn(location.hash))}</p>` : nothing}
        ${names.length ? html`<p>${t("early.waits", { list: names.join(", ") })}</p>` : nothing}
      </div>
      ${
        core.total > 0
          ? html`<progress aria-label=${t("page.loading")} max="100" .value=${Math.round(100 * share)}></progress>`
          : html`<progress aria-label=${t("page.loading")}></progress>`
      }
    </section>`;
  }

  private link(name: string): string {
    return name ? t("early.link.called", { name }) : t("early.link");
  }
}

customElements.define("sy-early", EarlyBar);
