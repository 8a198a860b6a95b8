// The search for the best packing, run in slices between frames so that the page
// stays responsive. The core holds the search; this holds what it was asked and
// what it has found.

import { core, CoreError } from "../../core/core.ts";
import { compared } from "../../app/edit.ts";
import { carried, findLoad } from "../../app/loadEdit.ts";
import { aimDefaults, type Aim, type Build, type Doc, type Load, type Pack } from "../../model/types.ts";
import { store } from "../../app/state.ts";

const slice = 14; // ms of work between two frames
const usual = 40; // steps of the first slice, before it is known how long they take

export type Phase = "idle" | "running" | "stopped" | "done";

// Asked is all that the answer hangs on.
interface Asked {
  load: Load | undefined;
  build: Build | undefined;
  rider: unknown;
  aim: string;
}

export class Packer extends EventTarget {
  phase: Phase = "idle";
  pack: Pack | null = null;
  why = ""; // it could not start
  widest = 0; // the gap at first
  private asked: Asked | null = null;
  private nodes = usual; // of the next slice
  private turn = 0;

  constructor() {
    super();
    // A core that is gone takes the search with it.
    core.addEventListener("state", () => {
      if (core.state !== "ready" && this.phase !== "idle") this.reset();
    });
  }

  // told lets the whole page know of a turn in the search; its steps are of
  // interest only to who listens here.
  private told(): void {
    this.dispatchEvent(new Event("change"));
    store.touch();
  }

  private reset(): void {
    this.turn++;
    this.phase = "idle";
    this.pack = null;
    this.asked = null;
    this.told();
  }

  private ask(doc: Doc, build: string, load: string): Asked {
    const of = findLoad(doc, load);
    return {
      load: of,
      build: doc.builds.find((b) => b.id === build),
      rider: doc.riders?.find((r) => r.id === of?.rider),
      aim: JSON.stringify(aimOf(doc)),
    };
  }

  // stale says that what was asked is no longer what the document holds.
  get stale(): boolean {
    const { doc } = store;
    const { pack, asked } = this;
    if (!pack || !asked || !doc) return false;
    const now = this.ask(doc, pack.build, pack.load);
    // The build's name and the like do not matter, but comparing is not worth it.
    return now.load !== asked.load || now.build !== asked.build || now.rider !== asked.rider || now.aim !== asked.aim;
  }

  start(letter: "A" | "B"): void {
    const { doc } = store;
    if (!doc) return;
    const at = letter === "A" ? 0 : 1;
    const build = compared(doc)[at];
    const load = carried(doc)[at];
    this.turn++;
    this.why = "";
    this.widest = 0;
    this.nodes = usual;
    try {
      this.pack = core.packStart(store.text, { build, load, aim: aimOf(doc) });
    } catch (e) {
      if (!(e instanceof CoreError)) throw e;
      this.pack = null;
      this.phase = "idle";
      this.why = e.message;
      this.told();
      return;
    }
    this.asked = this.ask(doc, build, load);
    this.phase = this.pack.done ? "done" : "running";
    this.told();
    this.go();
  }

  stop(): void {
    if (this.phase !== "running") return;
    this.turn++;
    this.phase = "stopped";
    this.told();
  }

  goOn(): void {
    if (this.phase !== "stopped" || this.stale) return;
    this.phase = "running";
    this.told();
    this.go();
  }

  // go runs slices until the search is done or somebody stops it.
  private go(): void {
    const turn = ++this.turn;
    const next = () => (document.hidden ? setTimeout(run, 50) : requestAnimationFrame(run));
    const run = () => {
      if (turn !== this.turn || this.phase !== "running") return;
      if (this.stale) {
        this.stop();
        return;
      }
      const from = performance.now();
      try {
        this.pack = core.packRun(Math.round(this.nodes));
        this.widest ||= this.pack.gap ?? 0;
      } catch (e) {
        if (!(e instanceof CoreError)) throw e;
        this.why = e.message;
        this.phase = "stopped";
        this.told();
        return;
      }
      const took = Math.max(performance.now() - from, 0.1);
      this.nodes = Math.min(Math.max((this.nodes * slice) / took, this.nodes / 4, 20), this.nodes * 2, 1e6);
      if (this.pack.done) {
        this.phase = "done";
        this.told();
        return;
      }
      this.dispatchEvent(new Event("change"));
      next();
    };
    next();
  }

  // apply gives the document with the best packing so far in its load.
  apply(doc: Doc): Doc | null {
    const { document: out } = core.packApply(JSON.stringify(doc));
    const id = this.pack?.load;
    const load = out?.loads?.find((l) => l.id === id);
    if (!load) return null;
    // Only the load is taken over: all else stays the objects that they were.
    return { ...doc, loads: doc.loads?.map((l) => (l.id === id ? load : l)) ?? [] };
  }

  // taken forgets a search whose result was put into the document.
  taken(): void {
    core.packStop();
    this.reset();
  }
}

export function aimOf(doc: Doc): Aim {
  return doc.show.packing ?? aimDefaults;
}

export const packer = new Packer();
