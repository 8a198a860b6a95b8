// Edits of a document: each takes a document and gives a new one that shares
// whatever did not change. None of them knows the page; ids are the core's.

import { core } from "../core/core.ts";
import type { Build, Doc, Part } from "../model/types.ts";

export function findBuild(doc: Doc, id: string): Build | undefined {
  return doc.builds.find((b) => b.id === id);
}

export function editBuild(doc: Doc, id: string, change: (b: Build) => Build): Doc {
  let hit = false;
  const builds = doc.builds.map((b) => {
    if (b.id !== id) return b;
    const c = change(b);
    hit ||= c !== b;
    return c;
  });
  return hit ? { ...doc, builds } : doc;
}

export function editPart(doc: Doc, build: string, part: string, change: (p: Part) => Part): Doc {
  return editBuild(doc, build, (b) => {
    const i = b.parts.findIndex((p) => p.id === part);
    const old = b.parts[i];
    if (!old) return b;
    const parts = b.parts.slice();
    parts[i] = change(old);
    return { ...b, parts };
  });
}

export function addParts(doc: Doc, build: string, parts: Part[]): Doc {
  return editBuild(doc, build, (b) => ({ ...b, parts: [...b.parts, ...parts] }));
}

// replaceParts puts a part where the first of others is, and takes them off.
export function replaceParts(doc: Doc, build: string, old: readonly string[], part: Part): Doc {
  return editBuild(doc, build, (b) => ({
    ...b,
    parts: b.parts.flatMap((p) => (p.id === old[0] ? [part] : old.includes(p.id) ? [] : [p])),
  }));
}

export function removePart(doc: Doc, build: string, part: string): Doc {
  return editBuild(doc, build, (b) => ({ ...b, parts: b.parts.filter((p) => p.id !== part) }));
}

export function duplicatePart(doc: Doc, build: string, part: string): { doc: Doc; id: string } {
  const id = core.newID(doc, "part");
  const out = editBuild(doc, build, (b) => {
    const i = b.parts.findIndex((p) => p.id === part);
    const old = b.parts[i];
    if (!old) return b;
    return { ...b, parts: b.parts.toSpliced(i + 1, 0, { ...old, id }) };
  });
  return { doc: out, id };
}

// handOver moves a part from one build to the other. A part keeps its id if
// that is free there: parts of one id are one thing in a comparison.
export function handOver(doc: Doc, from: string, to: string, part: string): { doc: Doc; id: string } {
  const old = findBuild(doc, from)?.parts.find((p) => p.id === part);
  const target = findBuild(doc, to);
  if (!old || !target) return { doc, id: "" };
  const taken = target.parts.some((p) => p.id === old.id);
  const moved = taken ? { ...old, id: core.newID(doc, "part") } : old;
  return { doc: addParts(removePart(doc, from, part), to, [moved]), id: moved.id };
}

// apart makes a part one of its own, known apart from those of other builds.
export function apart(doc: Doc, build: string, part: string): { doc: Doc; id: string } {
  const id = core.newID(doc, "part");
  return { doc: editPart(doc, build, part, (p) => ({ ...p, id })), id };
}

export function removeParts(doc: Doc, build: string, ids: ReadonlySet<string>): Doc {
  return editBuild(doc, build, (b) => ({ ...b, parts: b.parts.filter((p) => !ids.has(p.id)) }));
}

export function editParts(doc: Doc, build: string, ids: ReadonlySet<string>, change: (p: Part) => Part): Doc {
  return editBuild(doc, build, (b) => ({ ...b, parts: b.parts.map((p) => (ids.has(p.id) ? change(p) : p)) }));
}

// copyParts copies parts of a build to others. Copies keep their ids: there they
// are the same thing. Where it is already, a part is not copied again; made says how
// many copies there are.
export function copyParts(doc: Doc, from: string, ids: ReadonlySet<string>, to: readonly string[]): { doc: Doc; made: number } {
  const parts = findBuild(doc, from)?.parts.filter((p) => ids.has(p.id)) ?? [];
  let made = 0;
  const out = to.reduce((d, id) => {
    const there = new Set(findBuild(d, id)?.parts.map((p) => p.id));
    const missing = parts.filter((p) => !there.has(p.id));
    made += missing.length;
    return missing.length ? addParts(d, id, missing) : d;
  }, doc);
  return { doc: out, made };
}

// fitAside puts a part that was kept aside on a build again, under its id where
// that is free.
export function fitAside(doc: Doc, at: number, build: string): { doc: Doc; id: string } {
  const kept = doc.aside?.[at]?.part;
  const target = findBuild(doc, build);
  if (!kept || !target) return { doc, id: "" };
  const part = target.parts.some((p) => p.id === kept.id) ? { ...kept, id: core.newID(doc, "part") } : kept;
  return { doc: addParts(forgetAside(doc, at), build, [part]), id: part.id };
}

export function forgetAside(doc: Doc, at: number): Doc {
  const { aside = [], ...rest } = doc;
  const left = aside.toSpliced(at, 1);
  return left.length ? { ...rest, aside: left } : rest;
}

// goWithout says that a build goes without something on purpose, or no longer.
export function goWithout(doc: Doc, build: string, roles: readonly string[], on: boolean): Doc {
  return editBuild(doc, build, (b) => {
    const { without = [], ...rest } = b;
    const left = without.filter((r) => !roles.includes(r));
    const next = on ? [...left, ...roles] : left;
    return next.length ? { ...rest, without: next } : rest;
  });
}

// compared gives the ids of the two builds that are set side by side. A
// document that names none, or names builds that are gone, gets the first. One
// build stands on both sides only when it carries two loads.
export function compared(doc: Doc): [string, string] {
  const ids = doc.builds.map((b) => b.id);
  const [a, b] = (doc.show.compare ?? []).filter((id) => ids.includes(id));
  const first = a ?? ids[0] ?? "";
  const second = b !== undefined && (b !== first || twoLoads(doc)) ? b : "";
  return [first, second];
}

function twoLoads(doc: Doc): boolean {
  const known = (id = "") => (doc.loads?.some((l) => l.id === id) ? id : "");
  const [a, b] = doc.show.loads ?? [];
  return known(a) !== known(b);
}

export function compare(doc: Doc, a: string, b: string): Doc {
  const ids = [a, b].filter((id, i, all) => id !== "" && (all.indexOf(id) === i || twoLoads(doc)));
  return { ...doc, show: { ...doc.show, compare: ids } };
}

// tabulate takes a build into the table of all builds, or out of it; the last one
// stays. All of them are named by none, so that a build that is made later is
// among them.
export function tabulate(doc: Doc, id: string, on: boolean): Doc {
  const all = doc.builds.map((b) => b.id);
  const named = all.filter((b) => doc.show.table?.includes(b));
  const listed = all.filter((b) => (b === id ? on : named.length === 0 || named.includes(b)));
  if (listed.length === 0) return doc;
  const { table: _, ...show } = doc.show;
  return { ...doc, show: listed.length === doc.builds.length ? show : { ...show, table: listed } };
}

// setBase has the builds of the table set against one of them.
export function setBase(doc: Doc, id: string): Doc {
  return doc.show.base === id ? doc : { ...doc, show: { ...doc.show, base: id } };
}

export function copyBuild(doc: Doc, id: string, name: string): { doc: Doc; id: string } {
  const i = doc.builds.findIndex((b) => b.id === id);
  const old = doc.builds[i];
  if (!old) return { doc, id: "" };
  const copy = { ...old, id: core.newID(doc, "build"), name };
  return { doc: { ...doc, builds: doc.builds.toSpliced(i + 1, 0, copy) }, id: copy.id };
}

export function addBuild(doc: Doc, build: Build): { doc: Doc; id: string } {
  const id = core.newID(doc, "build");
  return { doc: { ...doc, builds: [...doc.builds, { ...build, id }] }, id };
}

// removeBuild keeps at least one build. Whatever was compared with the removed
// one is compared with the next that is left.
export function removeBuild(doc: Doc, id: string): Doc {
  if (doc.builds.length < 2) return doc;
  const [a, b] = compared(doc);
  const builds = doc.builds.filter((x) => x.id !== id);
  const rest = builds.map((x) => x.id);
  const free = rest.find((x) => x !== a && x !== b) ?? "";
  const na = a === id ? (b !== id && b) || rest[0] || "" : a;
  const nb = a === id || b === id ? (free !== na ? free : "") : b;
  return compare({ ...doc, builds }, na, nb);
}

// getPath and setPath read and write a field by its key as the core names it
// in problems: "frame.reach_mm", "wheels.rear.tyre_mm", "offset_mm.0".
export function getPath(o: unknown, path: string): unknown {
  return path.split(".").reduce<unknown>((v, k) => (v === null || v === undefined ? undefined : (v as Record<string, unknown>)[k]), o);
}

export function setPath<T>(o: T, path: string, value: unknown): T {
  const [k, ...rest] = path.split(".") as [string, ...string[]];
  const old = (o ?? {}) as Record<string, unknown>;
  const next = rest.length ? setPath(old[k], rest.join("."), value) : value;
  if (old[k] === next) return o;
  if (Array.isArray(o)) {
    const copy = o.slice();
    copy[Number(k)] = next;
    return copy as T;
  }
  const copy = { ...old };
  if (next === undefined) delete copy[k];
  else copy[k] = next;
  return copy as T;
}
