// What the core says of a rough road, asked while somebody looks.

import { core } from "../../core/core.ts";
import { letters } from "../../app/sides.ts";
import { Answer } from "../../elements/answer.ts";
import { t } from "../../text/index.ts";
import type { RoadAnswer, RoadCurves } from "../../model/types.ts";

export const answer = new Answer((document) => core.road(document));
export const further = new Answer((document) => core.roadCurves(document));

// sided gives each side of an answer its letter.
export function sided<T>(sides: readonly T[]): { letter: (typeof letters)[number]; side: T }[] {
  return sides.flatMap((side, i) => (letters[i] ? [{ letter: letters[i], side }] : []));
}

export type Ridden = RoadAnswer["sides"][number];
export type Drawn = RoadCurves["sides"][number];

// ridden says in which states the bikes go over the road.
export const ridden = (value: RoadAnswer): string => t("rough.of", { states: [...new Set(value.sides.map((s) => t(`state.${s.state}`)))].join("; ") });
