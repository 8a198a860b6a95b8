// What the bike is weighed with: the load of each side, the state of the load and
// what is left of the supplies.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { carried, carry, loadsOf } from "../../app/loadEdit.ts";
import { firstLoad, sidesShown, weighAs, type Letter } from "../../app/sides.ts";
import { stateValues, suppliesValues, type State } from "../../model/types.ts";
import { store } from "../../app/state.ts";
import { brief, t } from "../../text/index.ts";
import { StoreElement } from "../../elements/element.ts";
import { unfold } from "../../elements/section.ts";

// loadChoice chooses what a side carries; it is there as soon as there is
// something to carry.
export function loadChoice(letter: Letter): TemplateResult | typeof nothing {
  const doc = store.doc;
  if (!doc || !loadsOf(doc).length) return nothing;
  const now = carried(doc)[letter === "A" ? 0 : 1];
  const options = [{ id: "", name: t("carry.none") }, ...loadsOf(doc).map((l) => ({ id: l.id, name: l.name || l.id }))];
  return html`<label class="carries"
    >${t("carry.with")}
    <select
      aria-label=${t("carry.choose", { letter })}
      .value=${live(now)}
      @change=${(e: Event) => store.edit(t("do.load", { letter }), (d) => carry(d, letter, (e.target as HTMLSelectElement).value))}
    >
      ${options.map((o) => html`<option value=${o.id} ?selected=${o.id === now}>${brief(o.name)}</option>`)}
    </select></label
  >`;
}

// fallen says in which state a side is weighed when it is not the one asked for.
export function fallen(letter: Letter): string {
  const side = store.side(letter);
  const asked = store.doc?.show.state ?? "ready";
  return side?.weighed && side.state !== asked ? t("carry.fallen", { state: t(`state.${side.state}`) }) : "";
}

// usedUp says whether something on either side is used up on the way.
function usedUp(): boolean {
  return sidesShown().some((l) => (store.side(l)?.path.length ?? 0) > 0);
}

class StateRow extends StoreElement {
  protected override render(): TemplateResult | typeof nothing {
    const doc = store.doc;
    if (!doc || !store.ids.A) return nothing;
    const now = doc.show.state ?? "ready";
    const level = doc.show.supplies ?? "full";
    const loaded = carried(doc).some(Boolean);
    const seated = sidesShown().some((l) => store.side(l)?.rider);
    const wanted = loadsOf(doc).some((l) => l.rider && carried(doc).includes(l.id));
    const why = (s: State): string => {
      if ((s === "loaded" || s === "ridden") && !loaded) return t("carry.none.why");
      if (s === "ridden" && !seated) return wanted ? t("carry.misfit.why") : t("carry.norider.why");
      return "";
    };
    return html`<div class="staterow">
      <div class="set" role="group" aria-label=${t("carry.state")}>
        <span class="quiet" aria-hidden="true">${t("carry.state")}</span>
        ${stateValues.map((s) => {
          const off = why(s);
          if (off && !loadsOf(doc).length) return nothing;
          return html`<button
            type="button"
            class="toggle"
            aria-pressed=${s === now}
            title=${off || t(`state.${s}.help`)}
            ?disabled=${off !== "" && s !== now}
            @click=${() => weighAs({ state: s })}
          >
            ${t(`state.${s}`)}
          </button>`;
        })}
      </div>
      ${
        usedUp() && now !== "bare"
          ? html`<div class="set" role="group" aria-label=${t("carry.supplies")}>
            <span class="quiet" aria-hidden="true">${t("carry.supplies")}</span>
            ${suppliesValues.map(
              (l) =>
                html`<button type="button" class="toggle" aria-pressed=${l === level} @click=${() => weighAs({ supplies: l })}>${t(`supplies.${l}`)}</button>`,
            )}
          </div>`
          : nothing
      }
      ${
        loadsOf(doc).length
          ? nothing
          : html`<button type="button" class="plain strong" @click=${() => {
              firstLoad();
              unfold("load");
            }}>${t("carry.add")}</button>`
      }
    </div>`;
  }
}

customElements.define("sy-state", StateRow);
