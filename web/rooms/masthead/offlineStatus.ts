// OfflineStatus tells whether the page works without a network, and lets a new
// version in.

import { html, type TemplateResult } from "lit";
import { offline } from "../../offline/offline.ts";
import { t } from "../../text/index.ts";
import { StoreElement } from "../../elements/element.ts";

class OfflineStatus extends StoreElement {
  protected override render(): TemplateResult {
    const { state } = offline;
    const words = state === "ready" && offline.away ? t("offline.away") : t(`offline.${state}`);
    return html`<span role="status"
      >${
        offline.newer
          ? html`<button type="button" class="plain strong" title=${t("offline.newer.name")} @click=${() => void offline.renew()}>${t("offline.newer")}</button>`
          : html`<span class=${state}>${words}</span>`
      }</span
    >`;
  }
}

customElements.define("sy-standing", OfflineStatus);
