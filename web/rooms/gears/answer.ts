// What the core says of gears, asked while somebody looks.

import { core } from "../../core/core.ts";
import { store } from "../../app/state.ts";
import { sidesShown, type Letter } from "../../app/sides.ts";
import { Answer } from "../../elements/answer.ts";
import type { GearedBuild, GearsAnswer as Gears } from "../../model/types.ts";

export const answer = new Answer((document) => core.gears(document));

export interface Told {
  letter: Letter;
  build: GearedBuild;
}

// comparedIn are the builds of the comparison.
export const comparedIn = (value: Gears): Told[] =>
  sidesShown().flatMap((letter) => {
    const build = value.builds.find((b) => b.build === store.ids[letter]);
    return build ? [{ letter, build }] : [];
  });
