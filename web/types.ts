// The document and the report as the core writes them, key by key. Masses are
// grams, lengths millimetres, angles degrees; axes are x forward, y to the
// rider's left, z up. A document may hold keys of a newer program: edits copy
// objects with spread so that those survive.

import type { Aim, Load, Rating, Rider, Side, State, Supplies, WeighIn } from "./loadtypes.ts";

export type Vec3 = [number, number, number];
export type Point2 = [number, number];

export interface Doc {
  format: string;
  version: number;
  title: string;
  notes?: string;
  show: Show;
  builds: Build[];
  riders?: Rider[];
  loads?: Load[];
  weigh_ins?: WeighIn[];
}

export type MassUnit = "g" | "kg" | "lb_oz";
export type LengthUnit = "mm" | "in";

export interface Show {
  mass: MassUnit;
  length: LengthUnit;
  compare?: string[];
  loads?: string[]; // of the two sides; empty is none
  state?: State;
  supplies?: Supplies;
  grip?: number;
  packing?: Aim;
}

export interface Build {
  id: string;
  name: string;
  notes?: string;
  frame: Record<string, number>;
  fork: Record<string, number>;
  rear: Rear;
  wheels: { front: Wheel; rear: Wheel };
  cockpit: Record<string, number>;
  saddle: Record<string, number>;
  cranks: Record<string, number>;
  parts: Part[];
  ratings?: Rating[];
}

export interface Rear {
  travel_mm: number;
  sag_mm: number;
  pivot_forward_mm: number;
  pivot_up_mm: number;
  shock_frame_mm: Point2;
  shock_swing_mm: Point2;
}

export interface Wheel {
  bead_seat_mm: number;
  tyre_mm: number;
}

export const bases = ["weighed", "stated", "typical", "guessed"] as const;
export type Basis = (typeof bases)[number];

export const carriers = ["main-frame", "swingarm", "rear-wheel", "fork-upper", "fork-lower", "front-wheel", "link"] as const;
export type Carrier = (typeof carriers)[number];

export const forms = ["point", "rod", "ring", "disc", "box", "pair"] as const;
export type Form = (typeof forms)[number];

export interface Shape {
  form: Form;
  size_mm: Vec3;
  pitch_deg?: number;
}

export interface Part {
  id: string;
  name: string;
  kind: string;
  catalogue?: string;
  quantity: number;
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  station?: string;
  offset_mm: Vec3;
  at_mm?: Vec3;
  within_mm: number;
  carrier: Carrier;
  shape: Shape;
  note?: string;
}

// Entry is a part of the catalogue.
export interface Entry {
  id: string;
  name: string;
  kind: string;
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  station: string;
  offset_mm: Vec3;
  within_mm: number;
  carrier: Carrier;
  shape: Shape;
  quantity: number;
  search: string[];
  note?: string;
}

export interface Problem {
  severity: "error" | "warning";
  build?: string;
  part?: string;
  rider?: string;
  load?: string;
  bag?: string;
  good?: string;
  weigh_in?: string;
  field?: string;
  message: string;
}

export interface Report {
  format: string;
  version: number;
  program: string;
  problems: Problem[];
  builds: BuildReport[];
  sides: Side[];
  difference?: Difference;
}

export interface BuildReport {
  id: string;
  name: string;
  weighed: boolean;
  front_sprung: boolean;
  rear_sprung: boolean;
  geometry: Length[];
  figures: Figure[];
  groups: Subset[];
  carriers: Subset[];
  parts: PartReport[];
  weigh: Advice[];
  summary: string;
}

export interface Length {
  key: string;
  unit: string;
  value: number;
}

export interface Figure {
  key: string;
  unit: string;
  value: number;
  plus: number;
}

export interface Subset {
  key: string;
  mass_g: number;
  plus_g: number;
  count: number;
}

export interface PartReport {
  id: string;
  mass_g: number;
  plus_g: number;
  place_mm: Vec3;
  group: string;
  unsprung: number;
  doubt: number;
  ok: boolean;
  off?: boolean; // not on the bike in the state shown
}

export interface Advice {
  part: string;
  build: string;
  name: string;
  now_g: number;
  then_g: number;
  settles: boolean;
}

export type Verdict = "more" | "less" | "undecided" | "same";

export interface Difference {
  a: string;
  b: string;
  figures: Change[];
  groups: GroupChange[];
  parts: PartChange[];
  weigh: Advice[];
  moved: Mover[];
  summary: string;
}

export interface Change {
  key: string;
  unit: string;
  a: number;
  b: number;
  delta: number;
  plus: number;
  verdict: Verdict;
}

export interface GroupChange {
  key: string;
  a_g: number;
  b_g: number;
  delta_g: number;
  plus_g: number;
}

export interface PartChange {
  what: "added" | "removed" | "changed" | "moved";
  a?: string;
  b?: string;
  name: string;
  group: string;
  delta_g: number;
  plus_g: number;
  moved_mm: Vec3;
  with_frame?: boolean; // it sits at the same station, which the bike's own figures moved
  within_a_mm?: number;
  within_b_mm?: number;
  carrier_a?: string;
  carrier_b?: string;
}

export interface Mover {
  name: string;
  a?: string;
  b?: string;
  by_mm: Vec3;
}

// Opened is what reading a document, a link or a file gives.
export interface Opened {
  document: Doc | null;
  problems: Problem[];
}

export interface Kind {
  id: string;
  group: string;
}

// Station is a place that a part can sit at; a pair has a point on either side of
// the bike.
export interface Station {
  name: string;
  pair: boolean;
}

// Table is what reading a parts list as CSV gives.
export interface Table {
  columns: string[];
  guess: Record<string, number>;
  rows: number;
  parts: Part[];
  bad: { line: number; text: string; why: string }[];
  problems: Problem[];
}

// View tells the core what the canvas shows.
export interface View {
  build: string;
  ghost: string;
  at?: "a" | "b"; // a side of the comparison, in place of build
  ghost_at?: "a" | "b";
  side: "side" | "rear";
  dark: boolean;
  selected: string;
  dimensions: boolean;
  labels: boolean;
  key: boolean; // what the marks mean
  units: { mass: MassUnit; length: LengthUnit };
  width?: number;
  height?: number;
  caption?: Caption; // below the picture, of an SVG
  pixels?: number; // how wide an SVG says it is
}

// Caption is what stands below a picture that leaves the page.
export interface Caption {
  title: string;
  date: string;
  figures: boolean;
  sources: boolean;
  on: string; // the date to tell with the sources
}

// Intent is what a pointer on the canvas means.
export interface Intent {
  hover?: string;
  select?: string;
  move?: { part: string; by_mm: Vec3; done: boolean };
  cursor?: string;
  redraw?: boolean;
}
