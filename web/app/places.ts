// How places, carriers and groups of a build are called. A rear without a spring has
// neither swingarm nor shock: what is there instead has names of its own.

import { store } from "./state.ts";
import { phrase, t, word } from "../text/index.ts";
import type { PartReport } from "../model/types.ts";

// named is the name of a place, a carrier or a group on a build, by itself the one
// looked at.
export function named(kind: "station" | "carrier" | "group", key: string, build = store.activeID): string {
  const rigid = store.figures(build)?.rear_sprung === false ? phrase(`${kind}_rigid.${key}`) : "";
  return rigid || word(kind, key);
}

// groupOfBoth is the name of a group of the two builds that are compared.
export function groupOfBoth(key: string): string {
  const { A, B } = store.ids;
  return named("group", key, store.figures(A)?.rear_sprung === false ? B || A : A);
}

// springs says whether a build has a spring but for its tyres.
export function springs(build = store.activeID): boolean {
  const b = store.figures(build);
  return !b || b.front_sprung || b.rear_sprung;
}

// sprung says how a part is sprung; nothing on a bike without springs.
export function sprung(w: PartReport): string {
  if (!springs()) return "";
  if (w.unsprung >= 0.999) return t("parts.unsprung");
  return w.unsprung > 0.001 ? t("parts.halfsprung") : t("parts.sprung");
}
