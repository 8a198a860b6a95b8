// What the core says of steering, asked while somebody looks.

import { core } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";
import type { Compared } from "../../elements/comparison.ts";
import { letters, type Letter } from "../../app/sides.ts";
import { t } from "../../text/index.ts";
import type { Steering, SteeringSide } from "../../model/types.ts";

export const answer = new Answer((document) => core.steering(document));

export interface Told {
  letter: Letter;
  side: SteeringSide;
}

export const sidesOf = (s: Steering): Told[] => s.sides.flatMap((side, i) => (letters[i] ? [{ letter: letters[i], side }] : []));

export const compared = (list: readonly Told[], of: (s: SteeringSide) => Compared["figures"]): Compared[] =>
  list.map(({ letter, side }) => ({ letter, figures: of(side) }));

// states says of which bike the figures are, and who is on it.
export const states = (list: readonly Told[]): string =>
  t(list.some(({ side }) => side.state === "ridden") ? "steering.of" : "steering.of.bare", {
    states: [...new Set(list.map(({ side }) => t(`state.${side.state}`)))].join("; "),
  });
