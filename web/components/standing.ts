// Standing tells whether the page works without a network, and lets a new
// version in.

import { html, nothing, type TemplateResult } from "lit";
import { offline } from "../offline.ts";
import { t } from "../text/index.ts";
import { Piece } from "./element.ts";

class Standing extends Piece {
  protected override render(): TemplateResult {
    const { state } = offline;
    const words = state === "ready" && offline.away ? t("offline.away") : t(`offline.${state}`);
    return html`<span class="offline ${state}" role="status">${words}</span>${offline.newer
        ? html` <button type="button" class="plain strong" title=${t("offline.newer.name")} @click=${() => void offline.renew()}>${t("offline.newer")}</button>`
        : nothing}`;
  }
}

customElements.define("sy-standing", Standing);
