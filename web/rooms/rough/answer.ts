// What the core says of a rough road, asked while somebody looks.

import { core } from "../../core/core.ts";
import { letters } from "../../app/sides.ts";
import { Answer } from "../../elements/answer.ts";
import type { Compared } from "../../elements/comparison.ts";
import type { RoadAnswer } from "../../model/types.ts";

export const answer = new Answer((document) => core.road(document));

export const figuresOf = (value: RoadAnswer): Compared[] => value.sides.flatMap((s, i) => (letters[i] ? [{ letter: letters[i], figures: s.figures }] : []));
