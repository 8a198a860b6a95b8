// Figures that are at the end of what the model can say: each has the number of
// what is said of it below.

import { html, nothing, type TemplateResult } from "lit";
import type { Compared } from "../../elements/comparison.ts";
import { badge } from "../../elements/figure.ts";
import { t } from "../../text/index.ts";
import type { RoadMark, RoomFigure } from "../../model/types.ts";
import type { Letter } from "../../app/sides.ts";

interface Marked {
  letter: Letter;
  figures: readonly RoomFigure[];
  marks: readonly RoadMark[];
}

export interface Notes {
  sides: Compared[];
  list: TemplateResult | typeof nothing;
}

// notes numbers the marks of all sides.
export function notes(all: readonly Marked[]): Notes {
  const list = all.flatMap(({ letter, marks }) => marks.map((mark) => ({ letter, mark })));
  const beside = (letter: Letter) => (key: string) => {
    const of = list.flatMap((m, i) => (m.letter === letter && (!m.mark.figures.length || m.mark.figures.includes(key)) ? [i + 1] : []));
    return of.length ? html` <span class="unseen">${t("rough.note")} </span><sup class="notemark">${of.join(", ")}</sup>` : nothing;
  };
  return {
    sides: all.map(({ letter, figures }) => ({ letter, figures, note: beside(letter) })),
    list: list.length
      ? html`<ol class="marknotes">
          ${list.map(({ letter, mark }) => html`<li>${all.length > 1 ? badge(letter) : nothing} ${mark.words}</li>`)}
        </ol>`
      : nothing,
  };
}
