// How the bikes are set up for a rough road: tyres, springs and dampers, each to be
// said in place, and what their makers permit.

import { html, nothing, type TemplateResult } from "lit";
import { sided, type Ridden } from "./answer.ts";
import { put } from "./edit.ts";
import { findBuild, getPath } from "../../app/edit.ts";
import { store } from "../../app/state.ts";
import { unitText } from "../../elements/comparison.ts";
import { choice, numberInput, problemAt } from "../../elements/field.ts";
import { badge } from "../../elements/figure.ts";
import { inputLine } from "../../elements/inputs.ts";
import { reckoned, type Reckoned } from "../../elements/known.ts";
import { t, short } from "../../text/index.ts";
import { springWayValues, setupDefaults, type Problem, type RoadAnswer, type RoadSetting, type RoadWrite } from "../../model/types.ts";
import { trim } from "../../model/units.ts";

// A load is held in grams and read off a scale in kilograms.
const per = (unit: string) => (unit === "g" ? 1000 : 1);
const sign = (unit: string) => (unit === "g" ? "kg" : unit === "share" ? "" : unitText(unit));
const rounded = (v: number) => Math.round(v * 100) / 100;

// problemOf is what the core says of a field of a side's build: as a document, or
// as a bike that is ridden.
function problemOf(s: Ridden, field: string): Problem | undefined {
  return problemAt(field, s.build) ?? s.problems.find((p) => p.field === field);
}

function line(s: Ridden, x: RoadSetting): Reckoned {
  const key = `${s.build}/${x.field ?? x.key}`;
  const { field, plus_field, forget } = x;
  // What is in the document stands in its field at once, while the core still reckons.
  const build = findBuild(store.doc!, s.build);
  const now = (field: string | undefined, reckoned: number) => {
    const v = field && getPath(build, field);
    return typeof v === "number" ? v / per(x.unit) : rounded(reckoned / per(x.unit));
  };
  const one = { key, label: x.label, unit: sign(x.unit), value: now(field, x.value), half: now(plus_field, x.plus), typical: x.typical };
  if (!field || !plus_field) return { ...one, typical: false, note: x.typical ? t("rough.follows") : "" };
  const step = x.unit === "bar" || x.unit === "mm" ? 0.1 : x.unit === "share" ? 0.01 : 1;
  const write = (list: RoadWrite[]) => put(s.build, list, key);
  return {
    ...one,
    step,
    problem: problemOf(s, field) ?? problemOf(s, plus_field),
    set: ({ value, half }) =>
      write([
        ...(value === undefined ? [] : [{ field, value: value * per(x.unit) }]),
        ...(half === undefined ? [] : [{ field: plus_field, value: half * per(x.unit) }]),
      ]),
    ...(forget?.length
      ? {
          forget: () => {
            write(forget.map((field) => ({ field, value: null })));
            store.seal();
          },
        }
      : {}),
  };
}

function ways(s: Ridden): TemplateResult {
  const springs = findBuild(store.doc!, s.build)?.setup?.springs ?? setupDefaults.springs;
  const sprung = s.settings.some((x) => x.key.startsWith("set_sag") || x.key.startsWith("spring"));
  return html`<div class="specs narrowspecs">
    ${s.ways.map((w) =>
      choice({
        key: `${s.build}/way/${w.key}`,
        label: w.label,
        value: w.way,
        options: w.ways.map((o) => ({ value: o.key, label: o.label })),
        set: (v) => {
          put(s.build, w.ways.find((o) => o.key === v)?.write ?? [], "");
          store.seal();
        },
      }),
    )}
    ${
      sprung
        ? choice({
            key: `${s.build}/setup/springs`,
            label: t("rough.springs"),
            value: springs,
            options: springWayValues.map((v) => ({ value: v, label: t(`rough.springs.${v}`) })),
            set: (v) => {
              store.edit(t("do.setup"), (d) => ({
                ...d,
                builds: d.builds.map((b) => (b.id === s.build ? { ...b, setup: { ...b.setup, springs: v as (typeof springWayValues)[number] } } : b)),
              }));
              store.seal();
            },
          })
        : nothing
    }
  </div>`;
}

function ratings(s: Ridden): TemplateResult {
  return html`<h4>${t("rough.ratings")}</h4>
    <p class="caution">${t("rough.pressure.caution")}</p>
    <div class="specs narrowspecs">
      ${s.ratings.map((r) =>
        numberInput({
          key: `${s.build}/${r.field}`,
          label: r.label,
          unit: r.unit,
          value: r.value ?? 0,
          open: true,
          step: 0.1,
          problem: problemOf(s, r.field),
          set: (v) => put(s.build, [{ field: r.field, value: v === 0 ? null : v }], `${s.build}/${r.field}`),
        }),
      )}
    </div>`;
}

// bodies are what is said of riders who stand on a build, once each.
function bodies(value: RoadAnswer, build: string): Reckoned[] {
  const all = value.sides.filter((s) => s.build === build).flatMap((s) => s.inputs.map((i) => ({ i, problems: s.problems })));
  return all
    .filter(({ i }, at) => all.findIndex((o) => o.i.key === i.key && o.i.rider === i.rider) === at)
    .map(({ i, problems }) => inputLine(i, `rough/${build}`, problems));
}

// settings are those of every build that is ridden, once each.
export function settings(value: RoadAnswer): TemplateResult {
  const two = new Set(value.sides.map((s) => s.build)).size > 1;
  const once = sided(value.sides).filter(({ side }, i, all) => all.findIndex((o) => o.side.build === side.build) === i && side.settings.length > 0);
  return html`<div class="roomsheet">
    ${once.map(
      ({ letter, side }) =>
        html`<div>
          ${two ? html`<h4>${badge(letter)} ${side.name}</h4>` : nothing}
          ${reckoned(`${t("rough.settings")}: ${side.name}`, [...side.settings.map((x) => line(side, x)), ...bodies(value, side.build)])}
          <p class="quiet">${t("rough.setin", { state: short("state", side.set_state) })}</p>
          ${ways(side)} ${ratings(side)}
        </div>`,
    )}
  </div>`;
}

// said is a setting on paper.
export const said = (x: RoadSetting): string => `${trim(x.value / per(x.unit), 2)} ± ${trim(x.plus / per(x.unit), 2)} ${sign(x.unit)}`;
