// Fields: what is typed takes effect at every keystroke that makes sense. What
// makes none stays in the field with a word on what would be right, and the
// document goes back to what the field held before.

import { html, nothing, type TemplateResult } from "lit";
import { live } from "lit/directives/live.js";
import { core, CoreError } from "../core/core.ts";
import { sameField } from "../app/fields.ts";
import { store } from "../app/state.ts";
import { t } from "../text/index.ts";
import type { Problem } from "../model/types.ts";
import { heavyField, lengthField, massField, minus, readNumber, trim } from "../model/units.ts";
import { domID } from "./element.ts";

export interface FieldSpec {
  key: string; // unlike any other field's: names the draft and the element
  label: string;
  text: string; // what the document holds, as text
  accept: (typed: string) => void; // takes it into the document, or throws
  unit?: string;
  hidden?: boolean; // the label is for those who do not see the column's head
  kind?: "text" | "number" | "long";
  step?: number; // for the arrow keys, outside of a list; none for a weight: see massInput
  problem?: Problem | undefined;
  class?: string;
  placeholder?: string;
  other?: string; // what the other build has here, if it is not the same
}

// problemAt finds what the core has to say about one field.
export function problemAt(field: string, build: string, part = ""): Problem | undefined {
  return store.problems.find((p) => (p.build ?? "") === build && (p.part ?? "") === part && p.field !== undefined && sameField(p.field, field));
}

// Owner is the thing beside the builds that a field belongs to.
export type Owner = Pick<Problem, "rider" | "load" | "bag" | "good" | "weigh_in">;

// problemOf is problemAt for what is no build's. A rider's problem may name the
// bike and the load that he does not fit as well.
export function problemOf(owner: Owner, field: string): Problem | undefined {
  const same = (k: keyof Owner, p: Problem) => (p[k] ?? "") === (owner[k] ?? "");
  return store.problems.find(
    (p) =>
      p.field !== undefined &&
      sameField(p.field, field) &&
      same("rider", p) &&
      (owner.rider !== undefined || (same("load", p) && same("bag", p) && same("good", p) && same("weigh_in", p))),
  );
}

// waits is why a draft is one that is typed before the program is there: it is taken
// into the document when it is.
const waits = "waits";

function message(e: unknown): string {
  if (e instanceof CoreError && core.state === "loading") return waits;
  if (e instanceof CoreError || e instanceof RangeError) return e.message;
  throw e;
}

function typed(spec: FieldSpec, text: string): void {
  const base = store.drafts.get(spec.key)?.base ?? spec.text;
  try {
    spec.accept(text);
    store.draft(spec.key, { text, why: "", base });
  } catch (e) {
    store.draft(spec.key, { text, why: message(e), base });
    // A part of a number on the way here (3,27 of 3,275) is not what was meant.
    if (base !== spec.text && core.state !== "loading") spec.accept(base);
  }
  store.touch();
}

// counted takes in what was typed before the program was there.
function counted(spec: FieldSpec): void {
  const d = store.drafts.get(spec.key);
  if (d?.why !== waits) return; // it was taken in, or typed over
  typed(spec, d.text);
  if (document.activeElement?.id !== domID("f", spec.key)) left(spec);
}

function left(spec: FieldSpec): void {
  const d = store.drafts.get(spec.key);
  if (d && d.why === "") store.draft(spec.key, null);
  store.seal();
  store.touch();
}

// marked marks what is in a field that has the focus, once the press that gave
// it the focus is over. By then it may have gone on, and select would fetch it
// back; or somebody quick has typed, which the next key must not replace.
function marked(input: HTMLInputElement): void {
  const was = input.value;
  setTimeout(() => {
    if (document.activeElement === input && input.value === was) input.select();
  });
}

// further goes to the same field of a line of the list further down, or up; false
// when the field is in no list, or the list has no such line.
function further(input: HTMLInputElement, down: boolean): boolean {
  const line = input.closest<HTMLTableRowElement>("tr.part");
  const column = input.closest("td, th");
  if (!line || !column) return false;
  const lines = [...line.closest("table")!.querySelectorAll<HTMLTableRowElement>("tr.part")];
  const at = [...line.children].indexOf(column);
  const next = lines[lines.indexOf(line) + (down ? 1 : -1)]?.children[at]?.querySelector<HTMLInputElement>("input");
  if (!next) return false;
  next.focus();
  next.select();
  return true;
}

function pressed(spec: FieldSpec, e: KeyboardEvent): void {
  const input = e.currentTarget as HTMLInputElement;
  const draft = store.drafts.get(spec.key);
  const listed = input.closest("tr.part") !== null;
  if (e.key === "Escape" && draft) {
    e.stopPropagation();
    if (draft.base !== spec.text) spec.accept(draft.base);
    store.draft(spec.key, null);
    marked(input);
  } else if (e.key === "Enter" && spec.kind !== "long") {
    e.preventDefault();
    left(spec);
    if (!further(input, !e.shiftKey)) input.select();
  } else if (listed && spec.kind !== "long" && (e.key === "ArrowUp" || e.key === "ArrowDown")) {
    // In a list arrows go from line to line; they change nothing.
    e.preventDefault();
    further(input, e.key === "ArrowDown");
  } else if (spec.step && (e.key === "ArrowUp" || e.key === "ArrowDown") && !e.altKey) {
    const now = readNumber(input.value);
    if (!Number.isFinite(now)) return;
    e.preventDefault();
    const by = spec.step * (e.shiftKey ? 10 : 1) * (e.key === "ArrowUp" ? 1 : -1);
    typed(spec, trim(now + by, 6).replace(minus, "-"));
  }
}

export function field(spec: FieldSpec): TemplateResult {
  const id = domID("f", spec.key);
  const draft = store.drafts.get(spec.key);
  const waiting = draft?.why === waits;
  if (waiting && core.state === "ready" && !store.early) queueMicrotask(() => counted(spec));
  const why = waiting ? t("field.waits") : draft?.why || spec.problem?.message || "";
  const wrong = (Boolean(draft?.why) && !waiting) || spec.problem?.severity === "error";
  const value = draft?.text ?? spec.text;
  const described = why ? `${id}-why` : nothing;
  const number = spec.kind === "number";
  const control =
    spec.kind === "long"
      ? html`<textarea
          id=${id}
          rows="2"
          .value=${live(value)}
          aria-invalid=${wrong ? "true" : nothing}
          aria-describedby=${described}
          @input=${(e: Event) => typed(spec, (e.target as HTMLTextAreaElement).value)}
          @blur=${() => left(spec)}
          @keydown=${(e: KeyboardEvent) => pressed(spec, e)}
        ></textarea>`
      : html`<input
          id=${id}
          type="text"
          inputmode=${number ? "decimal" : nothing}
          autocomplete="off"
          spellcheck="false"
          placeholder=${spec.placeholder ?? nothing}
          title=${spec.kind === undefined && value.length > 24 ? value : nothing}
          .value=${live(value)}
          aria-invalid=${wrong ? "true" : nothing}
          aria-describedby=${described}
          @focus=${number ? (e: Event) => marked(e.target as HTMLInputElement) : nothing}
          @input=${(e: Event) => typed(spec, (e.target as HTMLInputElement).value)}
          @blur=${() => left(spec)}
          @keydown=${(e: KeyboardEvent) => pressed(spec, e)}
        />`;
  return html`<div class="field ${spec.kind ?? "text"} ${spec.class ?? ""}">
    <label for=${id} class=${spec.hidden ? "unseen" : ""}>${spec.label}${spec.unit ? html`<span class="unseen">, ${spec.unit}</span>` : nothing}</label>
    ${spec.hidden ? nothing : html`<span class="leader" aria-hidden="true"></span>`}
    ${spec.other ? html`<span class="other-value" title=${t("field.other")}>${spec.other}</span>` : nothing}
    <span class="control">${control}${spec.unit ? html`<span class="unit" aria-hidden="true">${spec.unit}</span>` : nothing}</span>
    ${why ? html`<p id="${id}-why" class=${wrong ? "why wrong" : "why"}>${why}</p>` : nothing}
  </div>`;
}

type NumberSpec = Omit<FieldSpec, "text" | "accept" | "kind" | "unit"> & {
  value: number;
  set: (v: number) => void;
  open?: boolean; // nought stands for not said, and is left empty
};

// figure is a field of a number: how it is written and read is for the unit.
function figure(spec: NumberSpec, unit: string | undefined, step: number, write: (v: number) => string, read: (typed: string) => number): TemplateResult {
  return field({
    ...spec,
    ...(unit === undefined ? {} : { unit }),
    ...(spec.open ? { placeholder: "–" } : {}),
    kind: "number",
    ...(step > 0 ? { step: spec.step ?? step } : {}),
    text: spec.open && spec.value === 0 ? "" : write(spec.value),
    accept: (typed) => spec.set(spec.open && typed.trim() === "" ? 0 : read(typed)),
  });
}

// A heavy mass stands in kilograms or pounds, where others stand in grams or
// ounces. Arrow keys never change a weight: it is read off a scale, and a gram
// more is soon there unseen.
export function massInput(spec: NumberSpec & { heavy?: boolean }): TemplateResult {
  const unit = (spec.heavy ? heavyField : massField)(store.doc!.show);
  return figure(spec, unit.unit, 0, unit.text, (typed) => core.parseMass(typed, unit.parse));
}

export function lengthInput(spec: NumberSpec): TemplateResult {
  const unit = lengthField(store.doc!.show);
  return figure(spec, unit.unit, unit.parse === "in" ? 0.1 : 1, unit.text, (typed) => core.parseLength(typed, unit.parse));
}

export function numberInput(spec: NumberSpec & { unit?: string; whole?: boolean; decimals?: number }): TemplateResult {
  return figure(
    spec,
    spec.unit,
    1,
    (v) => trim(v, spec.whole ? 0 : (spec.decimals ?? 3)),
    (typed) => {
      const v = readNumber(typed);
      if (!Number.isFinite(v)) throw new RangeError(t("field.number"));
      if (spec.whole && !Number.isInteger(v)) throw new RangeError(t("field.whole"));
      return v;
    },
  );
}

export interface Choice {
  value: string;
  label: string;
}

export function choice(spec: {
  key: string;
  label: string;
  value: string;
  options: Choice[];
  set: (v: string) => void;
  hidden?: boolean;
  problem?: Problem | undefined;
  class?: string;
}): TemplateResult {
  const id = domID("f", spec.key);
  const known = spec.options.some((o) => o.value === spec.value);
  const why = spec.problem?.message ?? "";
  const wrong = spec.problem?.severity === "error";
  return html`<div class="field choice ${spec.class ?? ""}">
    <label for=${id} class=${spec.hidden ? "unseen" : ""}>${spec.label}</label>
    ${spec.hidden ? nothing : html`<span class="leader" aria-hidden="true"></span>`}
    <span class="control"
      ><select
        id=${id}
        aria-invalid=${wrong ? "true" : nothing}
        aria-describedby=${why ? `${id}-why` : nothing}
        @change=${(e: Event) => spec.set((e.target as HTMLSelectElement).value)}
      >
        ${known ? nothing : html`<option value=${spec.value} .selected=${live(true)}>${spec.value || "–"}</option>`}
        ${spec.options.map((o) => html`<option value=${o.value} .selected=${live(o.value === spec.value)}>${o.label}</option>`)}
      </select></span
    >
    ${why ? html`<p id="${id}-why" class=${wrong ? "why wrong" : "why"}>${why}</p>` : nothing}
  </div>`;
}
