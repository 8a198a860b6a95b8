// What stands at a field of a document, as the core names fields: keys and numbers
// in lists, with dots between. None of this knows the page.

import { editBuild, findBuild, getPath } from "./edit.ts";
import { editRider, findRider } from "./loadEdit.ts";
import type { Doc, Problem } from "../model/types.ts";

// Place is a field of a build, of a rider, or else of the document itself.
export interface Place {
  field: string;
  build?: string;
  rider?: string;
}

const number = /^\d+$/;

// planted is a value with another at the keys; undefined takes what is there away,
// and with it what is left empty by that.
function planted(into: unknown, keys: readonly string[], value: unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  if (number.test(key)) {
    const list = Array.isArray(into) ? into : [];
    const i = Number(key);
    const next = planted(list[i], rest, value);
    if (i >= list.length) return next === undefined ? into : [...list, next];
    const left = next === undefined ? list.toSpliced(i, 1) : list.with(i, next);
    return left.length ? left : undefined;
  }
  const { [key]: old, ...others } = (into ?? {}) as Record<string, unknown>;
  const next = planted(old, rest, value);
  if (next !== undefined) return { ...(into as object), [key]: next };
  return Object.keys(others).length ? others : undefined;
}

// valueAt is what a document has at a place, undefined where it has nothing.
export function valueAt(doc: Doc, place: Place): unknown {
  return getPath(place.build ? findBuild(doc, place.build) : place.rider ? findRider(doc, place.rider) : doc, place.field);
}

// setAt gives a document with a value at a place; undefined leaves it unsaid.
export function setAt(doc: Doc, place: Place, value: unknown): Doc {
  const to = <T extends object>(owner: T): T => (valueAt(doc, place) === value ? owner : (planted(owner, place.field.split("."), value) as T));
  if (place.build) return editBuild(doc, place.build, to);
  if (place.rider) return editRider(doc, place.rider, to);
  return to(doc);
}

// sameField says whether what is told of a field is also of another: it is the same,
// or one is within the other.
export const sameField = (a: string, b: string): boolean => a === b || a.startsWith(`${b}.`) || b.startsWith(`${a}.`);

// problemIn finds what is told of a place.
export function problemIn(problems: readonly Problem[], place: Place): Problem | undefined {
  return problems.find(
    ({ field, build = "", rider = "", part }) =>
      field !== undefined &&
      !part &&
      rider === (place.rider ?? "") &&
      (place.rider !== undefined || build === (place.build ?? "")) &&
      sameField(field, place.field),
  );
}
