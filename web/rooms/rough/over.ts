// A single obstacle beside the rough road, and what it does to the bikes.

import { html, nothing, type TemplateResult } from "lit";
import { sided } from "./answer.ts";
import { ask } from "./edit.ts";
import { notes } from "./marks.ts";
import { narrow } from "../../elements/narrow.ts";
import { headed, comparison } from "../../elements/comparison.ts";
import { curves } from "../../elements/curves.ts";
import { choice, numberInput, problemAt } from "../../elements/field.ts";
import { badge } from "../../elements/figure.ts";
import { store } from "../../app/state.ts";
import { t } from "../../text/index.ts";
import type { Obstacle, Problem, RoadCurves } from "../../model/types.ts";

function fields(value: RoadCurves): TemplateResult {
  const { forms, ...reckoned } = value.obstacle;
  const now: Obstacle = store.doc!.show.rough?.obstacle ?? {
    form: reckoned.form as Obstacle["form"],
    height_mm: reckoned.height_mm,
    length_mm: reckoned.length_mm,
  };
  const { form, height_mm, length_mm } = now;
  const put = (change: Partial<Obstacle>) => ask({ obstacle: { ...now, ...change } }, "show/rough/obstacle");
  const problem = (key: string): Problem | undefined => {
    const field = `show.rough.obstacle.${key}`;
    return problemAt(field, "") ?? value.sides.flatMap((s) => s.over?.problems ?? []).find((p) => p.field === field);
  };
  return html`<div class="specs narrowspecs">
    ${choice({
      key: "show/rough/obstacle/form",
      label: t("rough.obstacle"),
      value: form,
      options: forms.map((f) => ({ value: f.key, label: f.label })),
      problem: problem("form"),
      set: (v) => {
        const f = forms.find((f) => f.key === v);
        if (f) put({ form: f.key, length_mm: f.length_mm });
      },
    })}
    ${numberInput({
      key: "show/rough/obstacle/height",
      label: form === "hole" ? t("rough.depth") : t("rough.height"),
      unit: "mm",
      value: height_mm,
      step: 1,
      problem: problem("height_mm"),
      set: (v) => put({ height_mm: v }),
    })}
    ${
      form === "edge"
        ? nothing
        : numberInput({
            key: "show/rough/obstacle/length",
            label: t("rough.length"),
            unit: "mm",
            value: length_mm,
            step: 10,
            problem: problem("length_mm"),
            set: (v) => put({ length_mm: v }),
          })
    }
  </div>`;
}

function figures(value: RoadCurves) {
  return notes(sided(value.sides).flatMap(({ letter, side }) => (side.over?.ok ? [{ letter, figures: side.over.figures, marks: side.over.marks }] : [])));
}

function whyNot(value: RoadCurves): TemplateResult[] {
  return sided(value.sides).flatMap(({ letter, side }) => {
    const why = side.ok ? side.over?.why : side.why;
    return why ? [html`<p class="alarm">${value.sides.length > 1 ? badge(letter) : nothing} ${why}</p>`] : [];
  });
}

// trace is the load of the rear tyre while it rides over.
function trace(value: RoadCurves): TemplateResult | typeof nothing {
  const list = sided(value.sides).flatMap(({ letter, side: { over } }) =>
    over?.ok ? [{ name: letter, tone: "rear" as const, dashed: letter === "B", points: over.times_s.map((x, k) => ({ x, y: over.load_rear_n[k] ?? 0 })) }] : [],
  );
  return list.length
    ? html`<h4>${t("rough.trace")}</h4>
        ${curves({ label: t("rough.trace"), wide: narrow.matches ? 350 : 460, high: 180, x: "s", y: "N", curves: list })}`
    : nothing;
}

// over is the obstacle with its fields and its figures.
export function over(value: RoadCurves): TemplateResult {
  const told = figures(value);
  return html`${fields(value)} ${whyNot(value)}
    <div class="roomsheet">
      <div>${headed(t("rough.over"), told.sides, value.over)} ${told.list}</div>
      <div>${trace(value)}</div>
    </div>`;
}

// printOver is the same on paper.
export function printOver(value: RoadCurves): TemplateResult {
  const told = figures(value);
  const { label, form, height_mm, length_mm } = value.obstacle;
  return html`<h3>${t("rough.over")}</h3>
    <p>${label}, ${height_mm} mm${form === "edge" ? nothing : html`, ${length_mm} mm`}</p>
    ${whyNot(value)} ${comparison(t("rough.over"), told.sides, value.over)} ${told.list}`;
}
