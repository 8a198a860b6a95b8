// What the balance comes to, in a line.

import { findBuild } from "../../app/edit.ts";
import { sidesShown } from "../../app/sides.ts";
import { store } from "../../app/state.ts";
import type { Gist } from "../../elements/room.ts";
import { figureScale, plain, write } from "../../model/units.ts";
import { brief } from "../../text/index.ts";

export function answer(): Gist {
  const { doc } = store;
  if (!doc) return { text: "" };
  const s = figureScale("g", doc.show);
  const told = sidesShown().map((letter) => {
    const total = store.shown(letter)?.figures.find((f) => f.key === "total");
    return `${brief(findBuild(doc, store.ids[letter])?.name ?? "")} ${total ? plain(write(total.value, total.plus, s)) : "–"}`;
  });
  return { text: told.join("; ") };
}
