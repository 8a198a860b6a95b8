// A table of the figures that an answer is reckoned with: what nobody said is
// typical, and can be said in place, with its ± and where it is known from.

import { html, nothing, type TemplateResult } from "lit";
import { choice, field, numberInput, type Choice } from "./field.ts";
import { t, word } from "../text/index.ts";
import type { Problem } from "../model/types.ts";
import { plainScale, trim, write } from "../model/units.ts";

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

  bare?: boolean; // it has neither ± nor basis
  open?: boolean; // nought stands for not said
  from?: string; // what it is while nobody said it, where that is not typical
  forgetting?: string; // what forgetting it is called, likewise
  annotate?: (note: string) => void; // for a note of one's own
  extra?: TemplateResult | string; // what comes of it, in a column of its own
  options?: readonly Choice[]; // of a choice among several, which is no figure
  chosen?: string;
  choose?: (value: string) => void;
}

const decimals = 5; // a rolling coefficient has four

function said(r: Reckoned, set: NonNullable<Reckoned["set"]>): TemplateResult {
  const input = (key: "value" | "half", label: string, v: number) =>
    numberInput({
      key: `${r.key}/${key}`,
      label,
      hidden: true,
      value: v,
      decimals,
      step: r.step ?? 1,
      open: key === "value" && r.open === true,
      ...(key === "value" ? { problem: r.problem } : {}),
      set: (to) => set({ [key]: to }),
    });
  return html`<td class="value">${input("value", r.unit ? `${r.label}, ${r.unit}` : r.label, r.value)}</td>
    <td class="half">${r.bare ? nothing : input("half", t("known.half", { of: r.label }), r.half)}</td>`;
}

// told is a figure that follows from others, with no more places than its ± knows.
function told(r: Reckoned): TemplateResult {
  const w = write(r.value, r.half, plainScale(r.unit, decimals));
  return html`<td class="value right">${r.options ? r.options.find((o) => o.value === r.chosen)?.label : r.half ? w.whole + w.rest : trim(r.value, decimals)}</td>
    <td class="half right">${r.half ? w.plus : ""}</td>`;
}

// taken is the cell of a choice, which has no ±.
function taken(r: Reckoned, choose: NonNullable<Reckoned["choose"]>): TemplateResult {
  return html`<td class="value" colspan="2">
    ${choice({ key: `${r.key}/value`, label: r.label, hidden: true, value: r.chosen ?? "", options: [...(r.options ?? [])], problem: r.problem, set: choose })}
  </td>`;
}

function from(r: Reckoned): TemplateResult | string {
  if (r.typical) return r.from ?? t("known.typical");
  if (!r.set || !r.bases || r.bare) return r.basis ? word("basis", r.basis) : "";
  return choice({
    key: `${r.key}/basis`,
    label: t("known.basis", { of: r.label }),
    hidden: true,
    value: r.basis ?? "",
    options: r.bases.map((b) => ({ value: b, label: word("basis", b) })),
    set: (basis) => r.set?.({ basis }),
  });
}

function row(r: Reckoned, extra: boolean): TemplateResult {
  const note =
    r.annotate && !r.typical
      ? field({
          key: `${r.key}/note`,
          label: t("known.note", { of: r.label }),
          hidden: true,
          text: r.note ?? "",
          placeholder: t("known.noted"),
          accept: r.annotate,
          class: "remark",
        })
      : r.note
        ? html` <span class="quiet">${r.note}</span>`
        : nothing;
  return html`<tr class=${r.typical ? "typical" : ""}>
    <th scope="row">${r.label}${r.unit ? html` <span class="unit">${r.unit}</span>` : nothing}${note}</th>
    ${r.options && r.choose ? taken(r, r.choose) : r.set ? said(r, r.set) : told(r)}
    <td class="what">
      ${from(r)}
      ${
        r.typical || !r.forget
          ? nothing
          : html`<button type="button" class="plain" @click=${r.forget}>${r.forgetting ?? t("known.forget")}<span class="unseen">: ${r.label}</span></button>`
      }
    </td>
    ${extra ? html`<td class="extra">${r.extra ?? ""}</td>` : nothing}
  </tr>`;
}

// reckoned sets such figures in a table, one a line. Where something comes of each,
// extra is the head of the column that says what.
export function reckoned(caption: string, list: readonly Reckoned[], extra = ""): TemplateResult | typeof nothing {
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
        ${extra ? html`<th scope="col" class="right">${extra}</th>` : nothing}
      </tr>
    </thead>
    <tbody>
      ${list.map((r) => row(r, extra !== ""))}
    </tbody>
  </table>`;
}
