// What the core says of all builds, for the sheet and for paper.

import { core } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";
import { stacks } from "../../elements/stack.ts";
import type { Gist } from "../../elements/room.ts";
import { isUnfolded } from "../../elements/section.ts";
import { store } from "../../app/state.ts";
import { brief, t, word } from "../../text/index.ts";
import type { nothing, TemplateResult } from "lit";

import type { Column, Row, SideBySide } from "../../model/types.ts";
import { figureScale, plain, write } from "../../model/units.ts";

export const told = new Answer((text) => core.builds(text));
const masses = new Answer((text) => core.builds(text, "brief")); // for the line that a closed chapter shows

const idle = 1500; // ms without an edit, after which a closed chapter says what it comes to

const group = "group.";

// nameOf is what stands over a column.
export const nameOf = (c: Column): string => brief(c.name || c.id);

const totalOf = (v: SideBySide): Row | undefined => v.chapters.flatMap((c) => c.rows).find((r) => r.key === "total");

export function gist(): Gist {
  const n = store.doc?.builds.length ?? 0;
  if (n < 2) return { text: t("all.gist.one") };
  const { value, stale } = isUnfolded("builds") ? told.seen() : masses.seen(idle);
  const total = value && !stale ? totalOf(value) : undefined;
  if (!value || !total) return { text: t("all.gist", { n }) };
  const among = value.builds.length;
  if (among < 2) return { text: t("all.gist", { n: among }) };
  const i = value.builds.findIndex((b) => b.id === total.best);
  const cell = total.cells[i];
  if (!cell) return { text: t("all.gist.open", { n: among }) };
  return {
    text: t("all.gist.best", { n: among, name: nameOf(value.builds[i]!), mass: plain(write(cell.value, cell.plus, figureScale("g", store.doc!.show))) }),
  };
}

// loadedAs says what a build is weighed with.
export function loadedAs(c: Column): string {
  if (!c.weighed) return t("builds.unweighed");
  const laden = c.state === "loaded" || c.state === "ridden";
  const load = laden ? store.doc?.loads?.find((l) => l.id === c.load)?.name : "";
  return [word("state", c.state), ...(load ? [brief(load)] : [])].join(", ");
}

// alike is what is said of all columns alike, once; "" where they are not.
export function alike(v: SideBySide): string {
  const said = new Set(v.builds.map(loadedAs));
  return said.size === 1 ? [...said][0]! : "";
}

// massChart draws the groups of every build, in the order of the columns.
export function massChart(v: SideBySide, order: number[], wide: number, id: string): TemplateResult | typeof nothing {
  const s = figureScale("g", store.doc!.show);
  const total = totalOf(v);
  const groups = v.chapters.flatMap((c) => c.rows).filter((r) => r.key.startsWith(group));
  return stacks({
    id,
    label: t("all.chart.label", { n: v.builds.length }),
    wide,
    unit: s.unit,
    names: new Map(groups.map((r) => [r.key.slice(group.length), r.label])),
    stacks: order.flatMap((i) => {
      const c = total?.cells[i];
      const b = v.builds[i]!;
      if (!c) return [];
      return [
        {
          name: nameOf(b),
          marked: b.id === v.base,
          pieces: groups.flatMap((r) => (r.cells[i] ? [{ key: r.key.slice(group.length), value: r.cells[i].value / s.per }] : [])),
          whole: c.value / s.per,
          plus: c.plus / s.per,
          said: plain(write(c.value, c.plus, s)),
        },
      ];
    }),
  });
}
