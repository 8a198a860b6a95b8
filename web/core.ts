// The core is the WebAssembly in the canvas's frame. It puts one object on its
// window; every function of it takes and gives text. This is the thin typed
// client: it waits for that object, turns text into values, and notices when
// the program behind it has died, so that the page can offer to start it anew.

import type { Aim, Pack, Side, Templates, Weighed } from "./loadtypes.ts";
import type { Doc, Entry, Intent, Kind, Opened, Part, Problem, Report, Station, Table, View } from "./types.ts";

interface Bridge {
  evaluate(document: string): string;
  speak(words: string): string;
  open(text: string): string;
  blank(): string;
  demo(): string;
  catalogue(): string;
  stations(): string;
  kinds(): string;
  encodeLink(document: string): string;
  decodeLink(fragment: string): string;
  readPartsCSV(text: string, options: string): string;
  partsCSV(document: string, build: string, style: string, date: string): string;
  partsMarkdown(document: string, build: string, style: string, date: string): string;
  luggageCSV(document: string, load: string, style: string, date: string): string;
  luggageMarkdown(document: string, load: string, style: string, date: string): string;
  figuresCSV(document: string, style: string, date: string): string;
  differenceCSV(document: string, style: string, date: string): string;
  figuresMarkdown(document: string, style: string, date: string): string;
  differenceMarkdown(document: string, style: string, date: string): string;
  statesCSV(document: string, style: string, date: string): string;
  statesMarkdown(document: string, style: string, date: string): string;
  notes(document: string, date: string): string;
  provenance(document: string, date: string): string;
  parseMass(text: string, unit: string): string;
  parseLength(text: string, unit: string): string;
  svg(document: string, view: string): string;
  show(document: string, view: string): string;
  goods(): string;
  copyLoad(document: string, load: string, name: string): string;
  packStart(document: string, options: string): string;
  packRun(nodes: string): string;
  packApply(document: string): string;
  packStop(): string;
  weighIn(document: string, weighIn: string): string;
  weighInDrawing(document: string, weighIn: string, view: string): string;
  camera(command: string): string;
  onintent?: (json: string) => void;
  onkey?: (event: KeyboardEvent) => boolean;
  ondrop?: (files: FileList) => void;
  onstill?: () => void;
  picture(): string;
}

type Called = Exclude<keyof Bridge, "onintent" | "onkey" | "ondrop" | "onstill">;
type Frame = Window & { steelyard?: Bridge; steelyardFrame?: Status };

export type CoreState = "loading" | "ready" | "dead";

// Trouble is a problem told by the core, as an exception.
export class Trouble extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
  }
}

export interface CSVOptions {
  columns?: Record<string, number>;
  mass_unit?: "g" | "kg" | "lb" | "oz";
}

const list = <T>(v: T[] | null | undefined): T[] => v ?? [];

// Status is what the frame tells about itself, see frame.js.
interface Status {
  state: "loading" | "ready" | "painted" | "stopped" | "failed";
  still: boolean;
  loaded: number;
  total: number;
  problem: string;
}

// whole gives a document the lists that an empty one may lack.
function whole(d: Doc): Doc {
  const out = { ...d, builds: list(d.builds).map((b) => ({ ...b, parts: list(b.parts) })) };
  if (d.loads) out.loads = d.loads.map((l) => ({ ...l, bags: list(l.bags), goods: list(l.goods) }));
  if (d.weigh_ins) out.weigh_ins = d.weigh_ins.map((w) => ({ ...w, readings: list(w.readings) }));
  return out;
}

function wholeSide(s: Side): Side {
  const out = { ...s };
  for (const k of ["figures", "groups", "carriers", "weigh", "states", "path", "bags", "goods"] as const) (out[k] as unknown[]) = list<unknown>(s[k]);
  if (s.handling) out.handling = { ...s.handling, braking: list(s.handling.braking), slopes: list(s.handling.slopes) };
  if (s.ratings) out.ratings = { ...s.ratings, list: list(s.ratings.list) };
  return out;
}

function wholePack(p: Pack): Pack {
  return { ...p, moves: list(p.moves) };
}

function opened(o: Opened): Opened {
  return { document: o.document ? whole(o.document) : null, problems: list(o.problems) };
}

export class Core extends EventTarget {
  state: CoreState = "loading";
  // why tells what the core's death looked like.
  why = "";
  loaded = 0; // bytes
  total = 0; // 0 when unknown
  // drawing says what is wrong with the canvas while the figures still work.
  drawing = "";
  // still is whether there is no canvas: the page then shows picture() in its place.
  still = false;
  onintent: (intent: Intent) => void = () => {};
  onkey: (event: KeyboardEvent) => boolean = () => false;
  ondrop: (files: FileList) => void = () => {};
  private frame: HTMLIFrameElement | null = null;

  attach(frame: HTMLIFrameElement): void {
    this.frame = frame;
    addEventListener("message", (e: MessageEvent<{ steelyardFrame?: Status } | null>) => {
      if (e.source === frame.contentWindow && e.data?.steelyardFrame) this.heard(e.data.steelyardFrame);
    });
    const status = this.window?.steelyardFrame;
    if (status) this.heard(status);
  }

  get window(): Frame | null {
    return (this.frame?.contentWindow as Frame | null) ?? null;
  }

  // restart loads the frame again; the document lives in the page and stays.
  restart(): void {
    this.become("loading");
    this.window?.location.reload();
  }

  fail(why: string): void {
    if (this.state === "dead") return;
    this.why = why;
    this.become("dead");
  }

  private heard(s: Status): void {
    this.loaded = s.loaded;
    this.total = s.total;
    switch (s.state) {
      case "loading":
        this.become("loading");
        this.dispatchEvent(new Event("progress"));
        break;
      case "ready":
      case "painted": {
        const before = this.drawing;
        this.drawing = s.problem;
        this.still = s.still;
        const bridge = this.window?.steelyard;
        if (bridge) {
          bridge.onintent = (json) => this.onintent(JSON.parse(json) as Intent);
          bridge.onkey = (e) => this.onkey(e);
          bridge.ondrop = (files) => this.ondrop(files);
          bridge.onstill = () => this.dispatchEvent(new Event("still"));
        }
        this.become("ready");
        if (s.problem !== before) this.dispatchEvent(new Event("drawing"));
        if (s.state === "painted") this.dispatchEvent(new Event("painted"));
        break;
      }
      default:
        this.fail(s.problem || s.state);
    }
  }

  private become(state: CoreState): void {
    if (this.state === state) return;
    this.state = state;
    this.dispatchEvent(new Event("state"));
  }

  // call runs one function of the bridge. A program that is gone throws or
  // gives nothing back; both mean that the core is dead.
  private call(name: Called, ...args: string[]): string {
    const bridge = this.window?.steelyard;
    if (!bridge || this.state !== "ready") throw new Trouble({ severity: "error", message: "The calculator is not loaded." });
    let out: unknown;
    try {
      out = (bridge[name] as (...a: string[]) => string)(...args);
    } catch (e) {
      this.fail(e instanceof Error ? e.message : String(e));
      throw e;
    }
    if (typeof out !== "string") {
      this.fail(`${name} gave no answer`);
      throw new Error(this.why);
    }
    return out;
  }

  private ask<T>(name: Called, ...args: string[]): T {
    const v = JSON.parse(this.call(name, ...args)) as T & { problem?: Problem };
    if (v && typeof v === "object" && v.problem) throw new Trouble(v.problem);
    return v;
  }

  // text is for functions that give plain text, or a problem as JSON.
  private text(name: Called, ...args: string[]): string {
    const out = this.call(name, ...args);
    if (out.startsWith('{"problem"')) throw new Trouble((JSON.parse(out) as { problem: Problem }).problem);
    return out;
  }

  evaluate(document: string): Report {
    const r = this.ask<Report>("evaluate", document);
    r.problems = list(r.problems);
    r.builds = list(r.builds);
    for (const b of r.builds) {
      b.geometry = list(b.geometry);
      b.figures = list(b.figures);
      b.groups = list(b.groups);
      b.carriers = list(b.carriers);
      b.parts = list(b.parts);
      b.weigh = list(b.weigh);
    }
    r.sides = list(r.sides).map(wholeSide);
    const d = r.difference;
    if (d) {
      d.figures = list(d.figures);
      d.groups = list(d.groups);
      d.parts = list(d.parts);
      d.weigh = list(d.weigh);
      d.moved = list(d.moved);
    }
    return r;
  }

  // speak takes the words of a language, as JSON; none are English.
  speak(words: string): void {
    this.text("speak", words);
  }

  open(text: string): Opened {
    return opened(this.ask<Opened>("open", text));
  }

  decodeLink(fragment: string): Opened {
    return opened(this.ask<Opened>("decodeLink", fragment));
  }

  encodeLink(document: string): string {
    return this.text("encodeLink", document);
  }

  blank(): Doc {
    return whole(this.ask<Doc>("blank"));
  }

  demo(): Doc {
    return whole(this.ask<Doc>("demo"));
  }

  catalogue(): Entry[] {
    return list(this.ask<Entry[]>("catalogue"));
  }

  stations(): Station[] {
    return list(this.ask<Station[]>("stations"));
  }

  kinds(): Kind[] {
    return list(this.ask<Kind[]>("kinds"));
  }

  readPartsCSV(text: string, options: CSVOptions): Table {
    const t = this.ask<Table>("readPartsCSV", text, JSON.stringify(options));
    return { ...t, columns: list(t.columns), guess: t.guess ?? {}, parts: list(t.parts), bad: list(t.bad), problems: list(t.problems) };
  }

  // parts gives the parts of a build as text; style is "semicolon" for CSV with a
  // decimal comma, and with a date it is told how the figures were obtained.
  parts(as: "CSV" | "Markdown", document: string, build: string, style = "", date = ""): string {
    return this.text(`parts${as}`, document, build, style, date);
  }

  // luggage gives the bags and goods of a load as text, likewise.
  luggage(as: "CSV" | "Markdown", document: string, load: string, style = "", date = ""): string {
    return this.text(`luggage${as}`, document, load, style, date);
  }

  // notes are what goes with a table that leaves the page: provenance and caution.
  notes(document: string, date: string): string[] {
    return list(this.ask<string[]>("notes", document, date));
  }

  // provenance tells how the figures of a document were obtained.
  provenance(document: string, date: string): string[] {
    return list(this.ask<string[]>("provenance", document, date));
  }

  // table gives a table of the report as text; style and date are as for parts.
  table(name: `${"figures" | "difference" | "states"}${"CSV" | "Markdown"}`, document: string, style = "", date = ""): string {
    return this.text(name, document, style, date);
  }

  // partFromWords makes a part of a name and a mass as a parts list of one line:
  // the core then guesses its kind, place and shape as it would for a list.
  partFromWords(name: string, grams: number): Part | null {
    const cell = `"${name.replace(/"/g, '""').replace(/\s+/g, " ")}"`;
    const list = this.readPartsCSV(`name,mass_g\n${cell},${grams.toFixed(2)}\n`, { columns: { name: 0, mass: 1 }, mass_unit: "g" });
    return list.parts[0] ?? null;
  }

  parseMass(text: string, unit: string): number {
    return this.ask<{ value: number }>("parseMass", text, unit).value;
  }

  parseLength(text: string, unit: string): number {
    return this.ask<{ value: number }>("parseLength", text, unit).value;
  }

  svg(document: string, view: View): string {
    return this.text("svg", document, JSON.stringify(view));
  }

  show(document: string, view: View): void {
    this.text("show", document, JSON.stringify(view));
  }

  // picture is what the canvas would show, as SVG; "" for nothing.
  picture(): string {
    return this.text("picture");
  }

  camera(command: string): void {
    this.call("camera", command);
  }

  templates(): Templates {
    const t = this.ask<Templates>("goods");
    return { goods: list(t.goods), bags: list(t.bags) };
  }

  copyLoad(document: string, load: string, name: string): Opened {
    return opened(this.ask<Opened>("copyLoad", document, load, name));
  }

  // The search for the best packing goes on by slices: start it, run it until
  // it is done, take what it has found.
  packStart(document: string, options: { build?: string; load?: string; aim?: Aim }): Pack {
    return wholePack(this.ask<Pack>("packStart", document, JSON.stringify(options)));
  }

  packRun(nodes: number): Pack {
    return wholePack(this.ask<Pack>("packRun", String(nodes)));
  }

  packApply(document: string): Opened {
    return opened(this.ask<Opened>("packApply", document));
  }

  packStop(): void {
    this.call("packStop");
  }

  weighIn(document: string, id: string): Weighed {
    const w = this.ask<Weighed>("weighIn", document, id);
    return { ...w, problems: list(w.problems), explanations: list(w.explanations), adjusted: list(w.adjusted) };
  }

  // weighInDrawing shows how to weigh, as SVG.
  weighInDrawing(document: string, id: string, view: string): string {
    return this.text("weighInDrawing", document, id, view);
  }
}

export const core = new Core();
