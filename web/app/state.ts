// The state of the page: the document with its history, the report on it, and
// what is looked at. Every edit evaluates the document anew and tells the
// components; they read from here and keep nothing that matters themselves.

import { core, CoreError } from "../core/core.ts";
import { compare, compared, findBuild } from "./edit.ts";
import { History } from "../model/history.ts";
import { carried } from "./loadEdit.ts";
import type { Build, BuildReport, Difference, Doc, Entry, Kind, Part, PartReport, Problem, Report, Side, Station, Templates } from "../model/types.ts";
import { contract } from "../model/types.ts";
import { Memory, readPreference, Storage, writePreference, type Drafts, type Draft } from "../io/storage.ts";
import { corrections, type Corrections } from "./corrections.ts";
import { t } from "../text/index.ts";

export type Theme = "auto" | "light" | "dark";

export interface Look {
  side: "side" | "rear";
  labels: boolean;
  dimensions: boolean;
  steering: boolean; // what turns with the bar, trail and flop
  ghost: boolean;
  key: boolean;
  strength: number; // of the photograph behind a build that has one, 0 to 1
  theme: Theme;
}

// Early is what is shown before the program is there: figures that it worked out
// some other time.
export interface Early {
  of: "demo" | "kept";
  at: number; // ms since 1970, of what is kept
  current: boolean; // nothing was edited since
  language: string;
  picture: string; // SVG
}

export interface Notice {
  id: number;
  kind: "note" | "error";
  text: string;
  action?: { label: string; run: () => void };
}

export const draftPrefix = "unmade/"; // begins the key of what is typed to become a thing

const looks = "look";
const greeted = "greeted";
const small = 1200; // parts; a document of so many is evaluated at every keystroke

function readLook(): Look {
  const look: Look = {
    side: "side",
    labels: true,
    dimensions: false,
    steering: false,
    ghost: true,
    key: false,

    strength: 0.6,
    theme: "auto",
  };
  try {
    const kept = JSON.parse(readPreference(looks) || "{}") as Partial<Look>;
    for (const k of ["labels", "dimensions", "steering", "ghost", "key"] as const) if (typeof kept[k] === "boolean") look[k] = kept[k];
    if (kept.side === "rear") look.side = "rear";
    if (typeof kept.strength === "number" && kept.strength >= 0 && kept.strength <= 1) look.strength = kept.strength;
    if (kept.theme === "light" || kept.theme === "dark") look.theme = kept.theme;
  } catch {
    // A preference that cannot be read is none.
  }
  return look;
}

export class Store extends EventTarget {
  readonly storage = new Storage(() => ({ text: this.text, drafts: this.draftPrefix }), contract);
  // picture gives what the canvas shows, as SVG; the room of the picture sets it.
  picture: () => string = () => "";
  language: () => string = () => "en"; // likewise language.ts
  private readonly memory = new Memory(this.storage, () => {
    const { report, kinds, stations } = this;
    if (!report || this.early || core.state !== "ready" || this.problems.some((p) => p.severity === "error")) return null;
    const sight = () => ({ report, kinds, stations, picture: this.picture(), language: this.language() });
    return { of: report, size: this.text.length, sight };
  });
  look = readLook();
  active: "A" | "B" = "A";
  selected = ""; // part id in the active build
  hovered = ""; // likewise, under the pointer on the canvas
  readonly open = new Set<string>(); // part ids whose details are open
  readonly drafts = new Map<string, Draft>();
  notices: Notice[] = [];
  report: Report | null = null;
  problems: Problem[] = [];
  catalogue: Entry[] = [];
  kinds: Kind[] = [];
  stations: Station[] = [];
  templates: Templates = { goods: [], bags: [] };
  took = 0; // ms of the last evaluation
  held = false; // something is being dragged
  greeting = false; // nothing is the reader's own yet, and they are told how to begin
  early: Early | null = null; // until the program has reckoned
  corrected: Corrections = new Map(); // what it then found otherwise, until the next edit

  private history: History<Doc> | null = null;
  private written: { of: Doc | null; text: string } = { of: null, text: "null" };
  private readonly last = new Map<string, BuildReport>(); // the last figures of each build that held
  private lastDifference: Difference | null = null;
  private readonly lastSides = new Map<string, Side>(); // likewise, of each build with each load
  private places: { of: BuildReport | undefined; parts: Map<string, PartReport> } = { of: undefined, parts: new Map() };
  private due = 0; // timer of an evaluation put off
  private since = 0; // when it was first put off
  private told = false;
  private notice = 0;

  get doc(): Doc | null {
    return this.history?.value ?? null;
  }

  // text is the document as the core takes it, written once for all who ask.
  get text(): string {
    const { doc } = this;
    if (this.written.of !== doc) this.written = { of: doc, text: JSON.stringify(doc) };
    return this.written.text;
  }

  get undoable(): string | null {
    return this.history?.undoable ?? null;
  }

  get redoable(): string | null {
    return this.history?.redoable ?? null;
  }

  // start takes the document that the page opens with.
  start(doc: Doc): void {
    if (this.history) this.history.reset(doc);
    else this.history = new History(doc);
    this.evaluate();
  }

  // show takes a document with figures that the program has not reckoned now.
  show(doc: Doc, report: Report, early: Early): void {
    this.history = new History(doc);
    this.early = early;
    this.take(report);
    this.dispatchEvent(new Event("figures"));
    this.touch();
  }

  private take(r: Report): void {
    this.report = r;
    this.problems = r.problems;
    for (const b of r.builds) if (b.weighed) this.last.set(b.id, b);
    for (const s of r.sides) if (s.weighed) this.lastSides.set(`${s.build}/${s.load}`, s);
    if (r.difference) this.lastDifference = r.difference;
  }

  // arrive has the program reckon anew what was shown before it was there, and
  // notes what it finds otherwise.
  private arrive(r: Report): void {
    const { early, report } = this;
    this.early = null;
    if (!early || !report) return;
    this.corrected = corrections(report, r);
    this.dispatchEvent(new Event("reckoned"));
  }

  // edit changes the document as one step, or as part of the step that the
  // same key is still making.
  edit(label: string, change: (doc: Doc) => Doc, key = ""): void {
    const h = this.history;
    if (!h) return;
    const before = h.value;
    const after = change(before);
    if (after === before) return;
    h.push(after, label, key);
    this.follow();
  }

  undo(): void {
    const label = this.history?.undo();
    if (label) this.travelled(t("undone", { what: label }));
  }

  redo(): void {
    const label = this.history?.redo();
    if (label) this.travelled(t("redone", { what: label }));
  }

  seal(): void {
    this.history?.seal();
  }

  private travelled(what: string): void {
    this.drafts.clear();
    this.dispatchEvent(new CustomEvent("say", { detail: what }));
    this.follow();
  }

  // draft notes what is being typed into a field; null forgets it. The document
  // has what makes sense of it; the rest is kept beside.
  draft(key: string, d: Draft | null): void {
    const before = JSON.stringify(this.draftPrefix);
    if (d) this.drafts.set(key, d);
    else this.drafts.delete(key);
    if (JSON.stringify(this.draftPrefix) !== before) this.storage.save();
    this.touch();
  }

  private get draftPrefix(): Drafts {
    return [...this.drafts].filter(([key, d]) => d.why !== "" || key.startsWith(draftPrefix));
  }

  // greet tells who has come for the first time how to begin, until they have.
  greet(): void {
    this.greeting = readPreference(greeted) === "";
    this.touch();
  }

  welcomed(): void {
    if (!this.greeting) return;
    this.greeting = false;
    writePreference(greeted, "yes");
    this.touch();
  }

  // follow is what comes after every change of the document.
  private follow(): void {
    const doc = this.doc;
    if (!doc) return;
    this.welcomed();
    if (!this.early) this.corrected = new Map();
    this.storage.save();
    const parts = doc.builds.reduce((n, b) => n + b.parts.length, 0);
    if (parts < small || this.took < 16) {
      this.evaluate();
      return;
    }
    // A document so large that evaluating takes a while: let typing breathe,
    // but not for ever.
    this.since ||= performance.now();
    window.clearTimeout(this.due);
    const waited = performance.now() - this.since;
    this.due = window.setTimeout(() => this.evaluate(), Math.min(2 * this.took, 400, Math.max(0, 2000 - waited)));
    this.touch();
  }

  // learn asks the core for what can be searched for and taken, in its language.
  learn(): void {
    if (core.state !== "ready") return;
    this.catalogue = core.catalogue();
    this.templates = core.templates();
    this.touch();
  }

  // evaluate asks the core for the figures of the document as it stands. When
  // the document cannot be evaluated the last figures stay.
  evaluate(): void {
    window.clearTimeout(this.due);
    this.since = 0;
    const doc = this.doc;
    if (doc && core.state === "ready") {
      const from = performance.now();
      try {
        const r = core.evaluate(this.text);
        if (this.early) this.arrive(r);
        this.take(r);
        this.memory.changed();
      } catch (e) {
        if (!(e instanceof CoreError)) throw e;
        this.problems = [e.problem];
      } finally {
        this.took = performance.now() - from;
      }
      this.dispatchEvent(new Event("figures"));
    }
    this.touch();
  }

  // touch tells the components that something is to be shown anew.
  touch(): void {
    if (this.told) return;
    this.told = true;
    queueMicrotask(() => {
      this.told = false;
      this.dispatchEvent(new Event("change"));
    });
  }

  get ids(): { A: string; B: string } {
    const doc = this.doc;
    const [A, B] = doc ? compared(doc) : ["", ""];
    return { A, B };
  }

  // activeID is the build that is edited and pictured.
  get activeID(): string {
    const { A, B } = this.ids;
    return this.active === "B" && B ? B : A;
  }

  // otherID is the build that it is compared with; empty when that is itself.
  get otherID(): string {
    const { A, B } = this.ids;
    if (A === B) return "";
    return this.activeID === A ? B : A;
  }

  // letter is the side that is edited and pictured.
  get letter(): "A" | "B" {
    return this.active === "B" && this.ids.B ? "B" : "A";
  }

  // side is a build with what it carries.
  side(letter: "A" | "B"): Side | undefined {
    const id = this.ids[letter];
    const at = letter === "A" ? 0 : 1;
    const now = this.report?.sides[at];
    if (!id || !this.doc) return undefined;
    if (now?.build === id && now.weighed) return now;
    return this.lastSides.get(`${id}/${carried(this.doc)[at]}`) ?? (now?.build === id ? now : undefined);
  }

  // shown is what the figures of a side are read from.
  shown(letter: "A" | "B"): Side | BuildReport | undefined {
    const id = this.ids[letter];
    return id ? (this.side(letter) ?? this.figures(id)) : undefined;
  }

  get build(): Build | undefined {
    return this.doc ? findBuild(this.doc, this.activeID) : undefined;
  }

  figures(id: string): BuildReport | undefined {
    const now = this.report?.builds.find((b) => b.id === id);
    return now?.weighed ? now : (this.last.get(id) ?? now);
  }

  // stale says that a build's figures are from before a problem.
  stale(id: string): boolean {
    return this.problems.some((p) => p.severity === "error" && (!p.build || (p.build === id && !p.part)));
  }

  get difference(): Difference | null {
    const d = this.report?.difference;
    const { A, B } = this.ids;
    if (d?.a === A && d.b === B) return d;
    // A problem, or an evaluation put off: the last one of the same two stands.
    const l = this.lastDifference;
    return l?.a === A && l.b === B ? l : null;
  }

  part(id: string): Part | undefined {
    return this.build?.parts.find((p) => p.id === id);
  }

  weighed(id: string): PartReport | undefined {
    const of = this.figures(this.activeID);
    if (this.places.of !== of) this.places = { of, parts: new Map(of?.parts.map((p) => [p.id, p])) };
    return this.places.parts.get(id);
  }

  activate(which: "A" | "B"): void {
    if (this.active === which) return;
    this.active = which;
    if (!this.part(this.selected)) this.selected = "";
    this.touch();
  }

  // activateBuild looks at a build that is compared; any other takes A's place.
  activateBuild(id: string): void {
    const { A, B } = this.ids;
    if (id === this.activeID) return;
    if (id === B) this.activate("B");
    else {
      if (id !== A) this.edit(t("do.compare"), (d) => compare(d, id, B));
      this.activate("A");
    }
  }

  select(id: string): void {
    if (this.selected === id) return;
    this.selected = id;
    this.hovered = ""; // what was just chosen is what is told about
    this.touch();
  }

  hover(id: string): void {
    if (this.hovered === id) return;
    this.hovered = id;
    this.touch();
  }

  setLook(change: Partial<Look>): void {
    this.look = { ...this.look, ...change };
    writePreference(looks, JSON.stringify(this.look));
    this.touch();
  }

  // tell puts up a notice. One with an action stays until it is dismissed or
  // the next takes its place.
  tell(text: string, action?: Notice["action"], kind: Notice["kind"] = "note"): void {
    const n: Notice = { id: ++this.notice, kind, text, ...(action ? { action } : {}) };
    this.notices = [...this.notices.filter((o) => o.kind === "error" && o.text !== text), n].slice(-3);
    this.touch();
    if (kind === "note") window.setTimeout(() => this.dismiss(n.id), action ? 12000 : 6000);
  }

  dismiss(id: number): void {
    const rest = this.notices.filter((n) => n.id !== id);
    if (rest.length === this.notices.length) return;
    this.notices = rest;
    this.touch();
  }
}

export const store = new Store();
