// A table of the figures that an answer is reckoned with: what nobody said is
// typical, and can be said in place, with its ± and where it is known from.

import { html, nothing, type TemplateResult } from "lit";
import { choice, numberInput } from "./field.ts";
import { t, word } from "../text/index.ts";
import type { Problem } from "../model/types.ts";
import { trim } from "../model/units.ts";

// Reckoned is one such figure, in the unit that is shown. It is only told where
// it cannot be set.
export interface Reckoned {
  key: string; // unlike that of any other field
  label: string;
  unit: string; // as it is written
  value: number;
  half: number; // ±
  typical: boolean; // nobody said it
  basis?: string; // "" or left out where it has none
  bases?: readonly string[]; // that it may have
  note?: string;
  problem?: Problem | undefined;
  step?: number;
  set?: (change: { value?: number; half?: number; basis?: string }) => void;
  forget?: () => void; // takes the typical figure again
}

function said(r: Reckoned, set: NonNullable<Reckoned["set"]>): TemplateResult {
  const input = (key: "value" | "half", label: string, v: number) =>
    numberInput({
      key: `${r.key}/${key}`,
      label,
      hidden: true,
      value: v,
      step: r.step ?? 1,
      ...(key === "value" ? { problem: r.problem } : {}),
      set: (to) => set({ [key]: to }),
    });
  return html`<td>${input("value", `${r.label}, ${r.unit}`, r.value)}</td>
    <td>${input("half", t("known.half", { of: r.label }), r.half)}</td>`;
}

// reckoned sets such figures in a table, one a line.
export function reckoned(caption: string, list: readonly Reckoned[]): TemplateResult | typeof nothing {
  if (!list.length) return nothing;
  return html`<table class="lines reckoned">
    <caption class="unseen">
      ${caption}
    </caption>
    <thead>
      <tr>
        <th scope="col"><span class="unseen">${t("rooms.figure")}</span></th>
        <th scope="col" class="right">${t("known.value")}</th>
        <th scope="col" class="right">±</th>
        <th scope="col">${t("known.from")}</th>
      </tr>
    </thead>
    <tbody>
      ${list.map(
        (r) =>
          html`<tr class=${r.typical ? "typical" : ""}>
            <th scope="row">${r.label}${r.unit ? html` <span class="unit">${r.unit}</span>` : nothing}${r.note ? html` <span class="quiet">${r.note}</span>` : nothing}</th>
            ${
              r.set
                ? said(r, r.set)
                : html`<td class="right">${trim(r.value, 3)}</td>
                  <td class="right">${r.half ? trim(r.half, 3) : ""}</td>`
            }
            <td class="what">
              ${
                r.typical || !r.set || !r.bases
                  ? r.typical
                    ? t("known.typical")
                    : r.basis
                      ? word("basis", r.basis)
                      : ""
                  : choice({
                      key: `${r.key}/basis`,
                      label: t("known.basis", { of: r.label }),
                      hidden: true,
                      value: r.basis ?? "",
                      options: r.bases.map((b) => ({ value: b, label: word("basis", b) })),
                      set: (basis) => r.set?.({ basis }),
                    })
              }
              ${r.typical || !r.forget ? nothing : html`<button type="button" class="plain" @click=${r.forget}>${t("known.forget")}<span class="unseen">: ${r.label}</span></button>`}
            </td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
