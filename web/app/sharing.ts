// Weighed once: what is known of a thing that several builds or loads share is
// known of it in all of them. Which ones do is for the core to say, and it is asked
// before an edit, since afterwards they would differ.

import { core, CoreError } from "../core/core.ts";
import { editPart } from "./edit.ts";
import { editBag, editGood, editRider } from "./loadEdit.ts";
import { store } from "./state.ts";
import type { Adjusted, Bag, Doc, Good, Part, SharedThing, Sharing } from "../model/types.ts";
import { language, t } from "../text/index.ts";

interface Things {
  parts: Part;
  bags: Bag;
  goods: Good;
}

export type Sort = keyof Things;

type Edit<S extends Sort> = (doc: Doc, owner: string, id: string, to: (x: Things[S]) => Things[S]) => Doc;

const edits: { [S in Sort]: Edit<S> } = { parts: editPart, bags: editBag, goods: editGood };

let known: { of: Doc | null; language: unknown; value: Sharing } = { of: null, language: null, value: { builds: [], loads: [] } };

// sharing is what the document has in common as it stands; asked once for all.
export function sharing(): Sharing {
  const { doc } = store;
  if (known.of !== doc || known.language !== language()) known = { of: doc, language: language(), value: core.shared(store.text) };
  return known.value;
}

// sharedIn picks out what there is to tell of the things of an owner, by id.
export function sharedIn(of: Sharing | null, sort: Sort, owner: string): Map<string, SharedThing> {
  const list = sort === "parts" ? of?.builds.find((b) => b.id === owner)?.parts : of?.loads.find((l) => l.id === owner)?.[sort];
  return new Map(list?.map((s) => [s.id, s]));
}

// ownersOf gives whose thing it is: the owner's, and of all with whom it is the
// same. A core that does not answer knows of none.
function ownersOf(sort: Sort, owner: string, id: string): string[] {
  try {
    return [owner, ...(sharedIn(sharing(), sort, owner).get(id)?.also ?? [])];
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    return [owner];
  }
}

// making is the step that typing still adds to. Those that shared the thing when it
// began share it until it ends: on the way a half-typed figure may be that of
// another build by chance.
let making = { key: "", after: null as Doc | null, owners: [] as string[] };

// editKnown changes what is known of a thing, everywhere, as one step.
export function editKnown<S extends Sort>(
  sort: S,
  owner: string,
  thing: { id: string; name: string },
  field: string,
  to: (x: Things[S]) => Things[S],
  key = "",
): void {
  const step = `${sort}/${owner}/${thing.id}/${key}`;
  const goesOn = key !== "" && making.key === step && making.after === store.doc;
  const owners = goesOn ? making.owners : ownersOf(sort, owner, thing.id);
  const what = { field, part: thing.name, n: owners.length };
  const label = owners.length === 1 ? t("do.edit", what) : t(sort === "parts" ? "do.edit.builds" : "do.edit.loads", what);
  store.edit(label, (d) => owners.reduce((out, o) => edits[sort](out, o, thing.id, to), d), key);
  making = { key: step, after: store.doc, owners };
}

// spread is the edit alone, of several things and for a step that does more.
export function spread<S extends Sort>(doc: Doc, sort: S, things: { owner: string; id: string; to: (x: Things[S]) => Things[S] }[]): Doc {
  // Whose they are is asked of the document as it is before any of it.
  const all = things.map((x) => ({ ...x, owners: ownersOf(sort, x.owner, x.id) }));
  return all.reduce((d, x) => x.owners.reduce((out, o) => edits[sort](out, o, x.id, x.to), d), doc);
}

// adopt puts weights that a weigh-in has adjusted in the place of the old ones,
// everywhere.
export function adopt(doc: Doc, list: Adjusted[]): Doc {
  const to =
    (a: Adjusted) =>
    <T extends object>(x: T): T => ({ ...x, mass_g: a.mass_g, half_width_g: a.half_width_g, basis: a.basis });
  const things = (sort: Sort) => list.filter((a) => a.list === sort).map((a) => ({ owner: a.owner, id: a.id, to: to(a) }));
  const out = (["parts", "bags", "goods"] as const).reduce((d, sort) => spread(d, sort, things(sort)), doc);
  return list.filter((a) => a.list === "riders").reduce((d, a) => editRider(d, a.id, (r) => ({ ...r, mass_g: a.mass_g, half_width_g: a.half_width_g })), out);
}
