// Photographs of the reader's own bikes. A build has the name of one; the picture,
// and what is marked in it, lie in a record of their own beside the document, in this
// browser. They leave it in a file that is asked for, never in a link.

import { core } from "../core/core.ts";
import { base64, fromBase64, redraw } from "../io/photofile.ts";
import type { Build, Doc, Photograph } from "../model/types.ts";
import { t } from "../text/index.ts";
import { editBuild, setPath } from "./edit.ts";
import { store } from "./state.ts";

// Kept is a photograph with its picture.
export interface Kept {
  of: Photograph; // without its picture
  bytes: Uint8Array<ArrayBuffer>; // of a JPEG file
  url: string; // to show it
}

interface Record {
  of: Photograph;
  bytes: Uint8Array<ArrayBuffer>;
  at: number; // ms since 1970, when it was last changed
  gone: boolean; // it was taken away: the next start forgets it, if nothing has it again
}

const prefix = "photograph ";
const most = 12; // kept that no build of the document has: of other files, and steps taken back
const head = 2 << 20; // bytes that the core judges a file by
const pause = 400; // ms without a change, after which one is kept

function isRecord(v: unknown): v is Record {
  const r = v as Partial<Record> | null | undefined;
  return typeof r === "object" && r !== null && typeof r.of === "object" && r.of !== null && Array.isArray(r.of.marks) && r.bytes instanceof Uint8Array;
}

class Photographs {
  private readonly known = new Map<string, Kept | null>(); // null is not in this browser
  private readonly asked = new Set<string>();
  private readonly due = new Map<string, ReturnType<typeof setTimeout>>();
  unkept = false; // the browser keeps none

  constructor() {
    addEventListener("pagehide", () => {
      for (const id of this.due.keys()) void this.keep(id);
    });
  }

  // of is the photograph of a build: null where it has none that is here, undefined
  // while it is being fetched.
  of(build: Build | undefined): Kept | null | undefined {
    const id = build?.photograph;
    if (!id) return null;
    const here = this.known.get(id);
    if (here === undefined) void this.fetch(id);
    return here;
  }

  private async fetch(id: string): Promise<void> {
    if (this.asked.has(id)) return;
    this.asked.add(id);
    const found = await store.storage.get(prefix + id).catch(() => undefined);
    if (this.known.has(id)) return;
    if (isRecord(found) && found.of.id === id) this.hold(found.of, found.bytes);
    else this.known.set(id, null);
    store.touch();
  }

  private hold(of: Photograph, bytes: Uint8Array<ArrayBuffer>): void {
    const before = this.known.get(of.id);
    if (before) URL.revokeObjectURL(before.url);
    this.known.set(of.id, { of, bytes, url: URL.createObjectURL(new Blob([bytes], { type: "image/jpeg" })) });
  }

  private async keep(id: string, gone = false): Promise<void> {
    const k = this.known.get(id);
    clearTimeout(this.due.get(id));
    this.due.delete(id);
    if (!k) return;
    try {
      await store.storage.put(prefix + id, { of: k.of, bytes: k.bytes, at: Date.now(), gone } satisfies Record);
      this.unkept = false;
    } catch {
      this.unkept = true;
    }
    store.touch();
  }

  // take makes a file the photograph of a build, as one step. It throws with the
  // reason when it is no picture that can be kept.
  async take(file: File, build: string): Promise<void> {
    const size = core.pictureFile(new Uint8Array(await file.slice(0, head).arrayBuffer()), file.size);
    const { bytes, width, height } = await redraw(file, size).catch(() => {
      throw new RangeError(t("photo.undecoded"));
    });
    const id = [...crypto.getRandomValues(new Uint8Array(12))].map((b) => (b % 36).toString(36)).join("");
    this.hold({ id, width, height, marks: [], scale: "wheelbase", wheelbase_mm: 0, distance_m: 5, within_mm: 3 }, bytes);
    await this.keep(id);
    store.seal();
    store.edit(t("do.photo"), (d) => editBuild(d, build, (b) => setPath(b, "photograph", id)));
    if (!store.look.strength) store.setLook({ strength: 0.6 });
  }

  // change changes what is known of a photograph: marks, and what gives the scale.
  change(id: string, change: (p: Photograph) => Photograph): void {
    const k = this.known.get(id);
    if (!k) return;
    k.of = change(k.of);
    clearTimeout(this.due.get(id));
    this.due.set(
      id,
      setTimeout(() => void this.keep(id), pause),
    );
    store.touch();
  }

  // remove takes it from a build. While that can be undone it stays; the next start
  // forgets it.
  remove(build: Build): void {
    const id = build.photograph;
    if (!id) return;
    store.seal();
    store.edit(t("do.photo.remove"), (d) => editBuild(d, build.id, (b) => setPath(b, "photograph", undefined)));
    if (!store.doc?.builds.some((b) => b.photograph === id)) void this.keep(id, true);
  }

  // carried are those that builds of a document have, with their pictures, for a file.
  async carried(doc: Doc): Promise<Photograph[]> {
    const out = new Map<string, Photograph>();
    for (const { photograph: id } of doc.builds) {
      if (!id || out.has(id)) continue;
      await this.fetch(id);
      const k = this.known.get(id);
      if (k) out.set(id, { ...k.of, picture: base64(k.bytes) });
    }
    return [...out.values()];
  }

  // receive keeps those that came in a file, before its document is opened.
  receive(list: readonly Photograph[]): void {
    for (const { picture = "", ...of } of list) {
      this.hold(of, fromBase64(picture));
      void this.keep(of.id);
    }
  }

  // tidy forgets, at the start, what was taken away, and the oldest of many that no
  // build has.
  async tidy(): Promise<void> {
    const used = new Set(store.doc?.builds.map((b) => b.photograph));
    const idle: { name: string; at: number }[] = [];
    for (const name of await store.storage.names(prefix)) {
      if (used.has(name.slice(prefix.length))) continue;
      const r = await store.storage.get(name);
      if (!isRecord(r) || r.gone) await store.storage.drop(name);
      else idle.push({ name, at: r.at });
    }
    idle.sort((a, b) => b.at - a.at);
    for (const { name } of idle.slice(most)) await store.storage.drop(name);
  }
}

export const photographs = new Photographs();
