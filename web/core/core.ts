// The core is the WebAssembly in the canvas's frame. It puts one object on its
// window; every function of it takes and gives text; one takes the bytes of a file. This is the
// thin typed client: it waits for that object, turns text into values, and notices when
// the program behind it has died, so that the page can offer to start it anew.

import type {
  Bag,
  Basis,
  Changed,
  Changing,
  Clearances,
  ClimbAnswer,
  CSVOptions,
  Doc,
  Drawing,
  Entered,
  Entry,
  Failure,
  Found,
  FrameTable,
  FrameTableWanted,
  Functions,
  GearsAnswer,
  Good,
  Intent,
  Kind,
  NewBike,
  NewBikeChoice,
  OnScale,
  Opened,
  Pack,
  PackOptions,
  PartsSideBySide,
  Photograph,
  PhotographReading,
  PictureSize,
  Placements,
  Problem,
  Report,
  SideBySide,
  Rider,
  RoadAnswer,
  RoadCurves,
  SetLine,
  Sharing,
  Station,
  Steering,
  Table,
  Templates,
  Track,
  TrackStretches,
  TypedIn,
  View,
  Wanted,
  Weighed,
  WeighPlan,
  WeighTaken,
} from "../model/types.ts";

import { t } from "../text/index.ts";

type Called = keyof Functions;

// Bridge is that object: the functions, each of which answers with text, and
// what the page may set to be told something.
type Bridge = { [F in Called]: (...args: Functions[F]["arguments"]) => string } & {
  onintent?: (json: string) => void;
  onkey?: (event: KeyboardEvent) => boolean;
  ondrop?: (files: FileList) => void;
  onstill?: () => void;
  ondrawn?: () => void;
};

type Frame = Window & { steelyard?: Bridge; steelyardFrame?: Status };

// Sort is a sort of thing that has ids of its own.
export type Sort = "part" | "build" | "rider" | "load" | "bag" | "good" | "weigh_in" | "scale" | "day";

export type CoreState = "loading" | "ready" | "dead";

// CoreError is a problem told by the core, as an exception.
export class CoreError extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message);
  }
}

// Status is what the frame tells about itself, see frame.js.
interface Status {
  state: "loading" | "ready" | "painted" | "stopped" | "failed";
  still: boolean;
  loaded: number;
  total: number;
  problem: string;
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
          bridge.ondrawn = () => this.dispatchEvent(new Event("drawn"));
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
  private call<F extends Called>(name: F, ...args: Functions[F]["arguments"]): string {
    const bridge = this.window?.steelyard;
    if (!bridge || this.state !== "ready") throw new CoreError({ severity: "error", message: t(this.state === "dead" ? "core.gone" : "core.coming") });
    let out: unknown;
    try {
      out = (bridge[name] as (...a: (string | Uint8Array)[]) => unknown)(...args);
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

  // ask is for functions that answer with JSON.
  private ask<F extends Called>(name: F, ...args: Functions[F]["arguments"]): Functions[F]["answer"] {
    const v = JSON.parse(this.call(name, ...args)) as Functions[F]["answer"] | Failure;
    if (v && typeof v === "object" && "problem" in v) throw new CoreError((v as Failure).problem);
    return v as Functions[F]["answer"];
  }

  // text is for functions that give plain text, or a problem as JSON.
  private text<F extends Called>(name: F, ...args: Functions[F]["arguments"]): string {
    const out = this.call(name, ...args);
    if (out.startsWith('{"problem"')) throw new CoreError((JSON.parse(out) as Failure).problem);
    return out;
  }

  evaluate(document: string): Report {
    return this.ask("evaluate", document);
  }

  // speak takes the words of a language, as JSON; none are English.
  speak(words: string): void {
    this.text("speak", words);
  }

  open(text: string): Opened {
    return this.ask("open", text);
  }

  decodeLink(fragment: string): Opened {
    return this.ask("decodeLink", fragment);
  }

  encodeLink(document: string): string {
    return this.text("encodeLink", document);
  }

  blank(): Doc {
    return this.ask("blank");
  }

  demo(): Doc {
    return this.ask("demo");
  }

  catalogue(): Entry[] {
    return this.ask("catalogue");
  }

  stations(): Station[] {
    return this.ask("stations");
  }

  kinds(): Kind[] {
    return this.ask("kinds");
  }

  readPartsCSV(file: string | Uint8Array, options: CSVOptions): Table {
    return this.ask("readPartsCSV", file, JSON.stringify(options));
  }

  readFrameTable(document: string, wanted: FrameTableWanted): FrameTable {
    return this.ask("readFrameTable", document, JSON.stringify(wanted));
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
    return this.ask("notes", document, date);
  }

  // provenance tells how the figures of a document were obtained.
  provenance(document: string, date: string): string[] {
    return this.ask("provenance", document, date);
  }

  // table gives a table of the report as text; style and date are as for parts.
  table(name: `${"figures" | "difference" | "states" | "builds"}${"CSV" | "Markdown"}`, document: string, style = "", date = ""): string {
    return this.text(name, document, style, date);
  }

  // builds sets the builds of a document side by side, "brief" without riding them.
  builds(document: string, extent = ""): SideBySide {
    return this.ask("builds", document, extent);
  }

  // buildsParts lists the parts of those builds, what is the same once.
  buildsParts(document: string): PartsSideBySide {
    return this.ask("buildsParts", document);
  }

  // newBike says what comes of a choice of frame, size and sets.
  newBike(choice: NewBikeChoice): NewBike {
    return this.ask("newBike", JSON.stringify(choice));
  }

  // newRider is somebody of middling size, to be put right.
  newRider(): Rider {
    return this.ask("newRider");
  }

  // newIDs gives ids that nothing of a sort has anywhere in the document.
  newIDs(document: Doc, sort: Sort, n: number): string[] {
    return this.ask("newIDs", JSON.stringify(document), sort, String(n));
  }

  newID(document: Doc, sort: Sort): string {
    return this.newIDs(document, sort, 1)[0]!;
  }

  // halfWidth is how far a mass of a basis is taken to lie off when nobody says
  // better.
  halfWidth(basis: Basis, grams: number): number {
    return this.ask("halfWidth", basis, String(grams)).value;
  }

  // enter gives the part that comes of what was chosen in a search and typed into it.
  enter(document: string, build: string, typed: TypedIn): Entered {
    return this.ask("enter", document, build, JSON.stringify(typed));
  }

  // What is made here has no id yet. A mass is what the maker says of it; without
  // one it has the entry's.
  bagFromEntry(id: string, grams: number | null): Bag {
    return this.stated(this.ask("bagFromEntry", id), grams);
  }

  goodFromEntry(id: string, grams: number | null): Good {
    return this.stated(this.ask("goodFromEntry", id), grams);
  }

  private stated<T extends { mass_g: number; half_width_g: number; basis: Basis }>(thing: T, grams: number | null): T {
    return grams === null ? thing : { ...thing, mass_g: grams, half_width_g: this.halfWidth("stated", grams), basis: "stated" };
  }

  bagFromWords(name: string, grams: number): Bag {
    return this.ask("bagFromWords", name, String(grams));
  }

  goodFromWords(name: string, grams: number): Good {
    return this.ask("goodFromWords", name, String(grams));
  }

  // fileText is the text of a document's file, with photographs in it or without.
  fileText(document: string, photographs: readonly Photograph[] = []): string {
    return this.text("fileText", document, photographs.length ? JSON.stringify(photographs) : "");
  }

  // pictureFile judges a file by its first bytes, before anybody decodes it.
  pictureFile(head: Uint8Array, bytes: number): PictureSize {
    return this.ask("pictureFile", head, String(bytes));
  }

  // photograph reads the frame of a build off a photograph of it.
  photograph(document: string, build: string, photograph: string): PhotographReading {
    return this.ask("photograph", document, build, photograph);
  }

  // backdrop is where the photograph lies behind what was drawn last, as a transform
  // of its px; "" for nowhere.
  backdrop(): string {
    return this.text("backdrop");
  }

  parseMass(text: string, unit: string): number {
    return this.ask("parseMass", text, unit).value;
  }

  parseLength(text: string, unit: string): number {
    return this.ask("parseLength", text, unit).value;
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

  camera(command: Functions["camera"]["arguments"][0]): void {
    this.call("camera", command);
  }

  templates(): Templates {
    return this.ask("goods");
  }

  find(typed: string, wanted: Wanted): Found {
    return this.ask("find", typed, JSON.stringify(wanted));
  }

  // findParts gives the ids of the parts of a build that are meant.
  findParts(document: string, build: string, typed: string): string[] {
    return this.ask("findParts", document, build, typed);
  }

  // sets are the sets of parts that a build can be changed to.
  sets(document: string, build: string): SetLine[] {
    return this.ask("sets", document, build);
  }

  // change says what a change of a build brings; what is to be done about it is in
  // its document.
  change(document: string, what: Changing): Changed {
    return this.ask("change", document, JSON.stringify(what));
  }

  // shared is what the builds have in common, and the loads, and what a build lacks.
  shared(document: string): Sharing {
    return this.ask("shared", document);
  }

  // weighNext says what is left to weigh of a build, on a scale with a step in g.
  weighNext(document: string, build: string, step: number): WeighPlan {
    return this.ask("weighNext", document, build, String(step));
  }

  // weighTaken says what a reading of the scale says of a part.
  weighTaken(document: string, build: string, reading: OnScale): WeighTaken {
    return this.ask("weighTaken", document, build, JSON.stringify(reading));
  }

  copyLoad(document: string, load: string, name: string): Opened {
    return this.ask("copyLoad", document, load, name);
  }

  // The search for the best packing goes on by slices: start it, run it until
  // it is done, take what it has found.
  packStart(document: string, options: PackOptions): Pack {
    return this.ask("packStart", document, JSON.stringify(options));
  }

  packRun(nodes: number): Pack {
    return this.ask("packRun", String(nodes));
  }

  packApply(document: string): Opened {
    return this.ask("packApply", document);
  }

  packStop(): void {
    this.call("packStop");
  }

  // frameBag is the outline of the largest frame bag of a build, as SVG at 1:1.
  frameBag(document: string, build: string): string {
    return this.text("frameBag", document, build);
  }

  gears(document: string): GearsAnswer {
    return this.ask("gears", document);
  }

  climb(document: string): ClimbAnswer {
    return this.ask("climb", document);
  }

  stretches(track: Track): TrackStretches {
    return this.ask("stretches", JSON.stringify(track));
  }

  road(document: string): RoadAnswer {
    return this.ask("road", document);
  }

  roadCurves(document: string): RoadCurves {
    return this.ask("roadCurves", document);
  }

  placements(document: string): Placements {
    return this.ask("placements", document);
  }

  clearances(document: string): Clearances {
    return this.ask("clearances", document);
  }

  steering(document: string): Steering {
    return this.ask("steering", document);
  }

  weighIn(document: string, id: string): Weighed {
    return this.ask("weighIn", document, id);
  }

  // weighInDrawing shows how to weigh, as SVG.
  weighInDrawing(document: string, id: string, view: Drawing): string {
    return this.text("weighInDrawing", document, id, JSON.stringify(view));
  }
}

export const core = new Core();
