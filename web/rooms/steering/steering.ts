// How the bike steers and balances, and what it is in the hand.

import { html, nothing, type TemplateResult } from "lit";
import { answer, compared, sidesOf, states, type Told } from "./answer.ts";
import { balance } from "./balance.ts";
import { placements } from "./placements.ts";
import { headed } from "../../elements/comparison.ts";
import { badge } from "../../elements/figure.ts";
import { inputLine } from "../../elements/inputs.ts";
import type { Gist } from "../../elements/room.ts";
import { Section } from "../../elements/section.ts";
import { store } from "../../app/state.ts";
import { editBuild, findBuild } from "../../app/edit.ts";
import { numberInput, problemAt } from "../../elements/field.ts";
import { t } from "../../text/index.ts";
import type { Steering as Said } from "../../model/types.ts";

// gist is what the room comes to, once it was asked.
export function gist(): Gist {
  return { text: t("steering.gist") };
}

class Steering extends Section {
  protected readonly fold = "steering";

  protected body(): TemplateResult {
    const { value, why, stale } = answer.seen();
    if (!value) return html`<p class="quiet">${why || t("rooms.working")}</p>`;
    const list = sidesOf(value);
    return html`<div class=${stale ? "stale" : ""} aria-busy=${stale}>
      <p class="caution"><strong>${t("page.caution")}.</strong> ${value.caution}</p>
      <p class="quiet">${states(list)}</p>
      ${value.words ? html`<p class="verdictwords">${value.words}</p>` : nothing}
      ${list.map(({ letter, side }) => (side.words ? html`<p class="sidewords">${list.length > 1 ? badge(letter) : nothing} <strong>${side.name}.</strong> ${side.words}</p>` : nothing))}
      <div class="roomsheet">
        <div>${this.plain(value, list)}</div>
        <div>${balance(list)}</div>
        <div>${this.hand(value, list)}</div>
        <div>${placements()}</div>
      </div>
    </div>`;
  }

  private plain(value: Said, list: readonly Told[]): TemplateResult {
    return html`${headed(
      t("steering.plain"),
      compared(list, (s) => s.plain),
      value.difference,
    )}
      <p class="fine">${t("steering.plain.help")}</p>`;
  }

  private hand(value: Said, list: readonly Told[]): TemplateResult {
    const stands = list.filter(({ side }) => side.stand);
    return html`${headed(
      t("steering.hand"),
      compared(list, (s) => [...s.hand, ...(s.stand?.figures ?? [])]),
      value.difference,
    )}
      ${stands.map(({ letter, side }) => (side.stand!.over ? html`<p class="alarm">${t("steering.over", { letter })}</p>` : nothing))}
      ${stands.some(({ side }) => side.stand!.typical) ? html`<p class="fine">${t("steering.stand.typical")}</p>` : nothing}
      ${this.done(value)} ${this.stands(list)}
      <p class="fine">${t("steering.hand.help")}</p>`;
  }

  // What is done with the bike, which everybody may say otherwise.
  private done(value: Said): TemplateResult {
    return html`<div class="specs narrowspecs">
      ${value.inputs.map((i) => {
        const { key, label, unit, value, step, problem, set } = inputLine(i, "hand");
        return numberInput({ key, label, unit, value, step: step ?? 1, problem, open: true, set: (value) => set?.({ value }) });
      })}
    </div>`;
  }

  // Where the foot of the stand is, for whoever measures it.
  private stands(list: readonly Told[]): TemplateResult {
    const d = store.doc!;
    return html`<div class="specs narrowspecs">
      ${list.map(({ letter, side }) => {
        const b = findBuild(d, side.build);
        if (!b || !side.stand) return nothing;
        const { forward_mm, out_mm, lean_deg } = side.stand;
        const here = { forward_mm, out_mm, lean_deg };
        const field = (key: keyof typeof here) =>
          numberInput({
            key: `${b.id}/stand/${key}`,
            label: `${list.length > 1 ? `${letter}: ` : ""}${t(`steering.stand.${key}`)}`,
            value: here[key],
            step: 1,
            problem: problemAt(`stand.${key}`, b.id),
            set: (v) => store.edit(t("do.stand"), (doc) => editBuild(doc, b.id, (b) => ({ ...b, stand: { ...here, [key]: v } })), `${b.id}/stand/${key}`),
          });
        return html`${field("out_mm")} ${field("lean_deg")} ${field("forward_mm")}`;
      })}
    </div>`;
  }
}

customElements.define("sy-steering", Steering);
