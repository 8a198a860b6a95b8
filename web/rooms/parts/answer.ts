// How many parts there are, and how much of their mass is weighed, in a line.

import { core } from "../../core/core.ts";
import { store } from "../../app/state.ts";
import { Answer, inWords } from "../../elements/answer.ts";
import type { Gist } from "../../elements/room.ts";
import { massText } from "../../model/units.ts";
import { count } from "../../text/index.ts";

const plan = new Answer(
  (document, build) => core.weighNext(document, build, 1),
  () => store.activeID,
);

export function answer(): Gist | undefined {
  if (!store.build?.parts.length) return { text: "" };
  return inWords(
    plan,
    (p) => {
      const { show } = store.doc!;
      return count(p.parts, "parts.answer.one", "parts.answer.many", { weighed: massText(p.weighed_g, show), all: massText(p.total_g, show) });
    },
    "parts.short",
  );
}
