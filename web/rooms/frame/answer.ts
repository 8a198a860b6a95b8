// The lengths by which a frame is known, in a line.

import { store } from "../../app/state.ts";
import type { Gist } from "../../elements/room.ts";
import { decimal, figureScale } from "../../model/units.ts";
import { word } from "../../text/index.ts";

const told = ["wheelbase", "trail", "bb_height"];

export function answer(): Gist {
  const { doc, activeID } = store;
  if (!doc) return { text: "" };
  const lengths = store.figures(activeID)?.geometry.filter((g) => told.includes(g.key)) ?? [];
  const text = lengths.map((g) => {
    const s = figureScale(g.unit, doc.show);
    return `${word("geometry", g.key)} ${decimal(g.value / s.per, s.decimals)} ${s.unit}`;
  });
  return { text: text.join(", ") };
}
