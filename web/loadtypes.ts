// What comes on top of the bare bike, as the core writes it: riders, loads,
// ratings and weigh-ins in the document, and what the report says of them.

import type { Advice, Basis, Carrier, Doc, Figure, Problem, Subset, Vec3 } from "./types.ts";

export const states = ["bare", "ready", "loaded", "ridden"] as const;
export type State = (typeof states)[number];

export const levels = ["full", "half", "empty"] as const;
export type Supplies = (typeof levels)[number];

export const supplyKinds = ["water", "food", "fuel"] as const;
export const tables = ["female", "male"] as const;
export const postures = ["upright", "leaned", "low", "standing"] as const;
export const rated = [
  "total",
  "front-rack",
  "rear-rack",
  "fork-cage-left",
  "fork-cage-right",
  "down-tube-cage",
  "front-tyre",
  "rear-tyre",
  "front-rim",
  "rear-rim",
] as const;

export interface Aim {
  of: "load" | "all";
  front_share: number;
  front: number;
  low: number;
  balance: number;
  middle: number;
}

export interface Rider {
  id: string;
  name: string;
  stature_mm: number;
  mass_g: number;
  half_width_g: number;
  clothing_g: number;
  shoes_g: number;
  table: string;
  posture: string;
  crank_deg: number;
}

export interface Load {
  id: string;
  name: string;
  notes?: string;
  rider?: string;
  bags: Bag[];
  goods: Good[];
}

export interface Bag {
  id: string;
  name: string;
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  station: string;
  offset_mm: Vec3;
  carrier: Carrier;
  size_mm: Vec3;
  volume_l: number;
  permitted_g: number;
}

export interface Good {
  id: string;
  name: string;
  quantity: number;
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  volume_l: number;
  in: string;
  pinned?: boolean;
  supply?: string;
}

export interface Rating {
  what: string;
  limit_g: number;
}

export interface WeighIn {
  id: string;
  name: string;
  build: string;
  state: State;
  load?: string;
  scales?: Scale[];
  readings: Reading[];
  wheelbase_within_mm?: number; // what the core takes for granted when it is not there
  radius_within_mm?: number;
  front_sag_mm?: number;
  rear_sag_mm?: number;
}

export interface Scale {
  id: string;
  name?: string;
  step_g: number;
  calibration_share?: number;
}

export interface Reading {
  wheel: string;
  raised?: string;
  height_mm: number;
  height_within_mm: number;
  scale?: string;
  mass_g: number;
  resolution_g?: number; // the step of a scale that has no name
}

// Templates are what the core proposes to take along.
export interface GoodTemplate {
  id: string;
  name: string;
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  volume_l: number;
  quantity: number;
  supply?: string;
  search: string[];
}

// What a bag may hold is for its maker to say: a template does not.
export type BagTemplate = Omit<Bag, "permitted_g"> & { search: string[] };

export interface Templates {
  goods: GoodTemplate[];
  bags: BagTemplate[];
}

// Side is one column of the comparison: a build with what it carries.
export interface Side {
  build: string;
  load: string;
  rider: string;
  name: string;
  state: State;
  supplies: Supplies;
  weighed: boolean;
  figures: Figure[];
  groups: Subset[];
  carriers: Subset[];
  weigh: Advice[];
  summary: string;
  states: StateReport[];
  path: Path[];
  bags: BagReport[];
  goods: GoodReport[];
  body?: BodyReport;
  handling?: Handling;
  ratings?: Ratings;
}

export interface StateReport {
  state: State;
  supplies: Supplies;
  figures: Figure[];
}

export interface Path {
  supply: string;
  points: { left: number; total_g: number; centre_mm: Vec3; front_share: number }[];
}

export interface BagReport {
  id: string;
  ok: boolean;
  mass_g: number;
  plus_g: number;
  goods_g: number;
  goods_plus_g: number;
  pieces: number;
  volume_l: number;
  place_mm: Vec3;
  headroom?: Headroom; // of the permitted load
  room?: Headroom; // of the volume
}

export interface GoodReport {
  id: string;
  ok: boolean;
  bag: string;
  mass_g: number;
  plus_g: number;
  volume_l: number;
  place_mm: Vec3;
}

export interface BodyReport {
  rider: string;
  posture: string;
  lean_deg: number;
  mass_g: number;
  plus_g: number;
  centre_mm: Vec3;
  note: string;
}

// Value is a number with its doubt.
export interface Value {
  value: number;
  plus: number;
}

export interface Handling {
  state: State;
  supplies: Supplies;
  left_g: number;
  right_g: number;
  lean?: Figure;
  rebalance?: { mass_g: number; plus_g: number; from: "left" | "right"; apart_mm: number };
  braking: Braking[];
  climb?: { grip: number; lift: Value; slip: Value | null; first: Value; slips: boolean; decided: boolean };
  slopes: Slope[];
}

export interface Braking {
  gradient: number;
  lift: Value;
  slip: Value;
  first: Value;
  slips: boolean;
  decided: boolean;
}

export interface Slope {
  gradient: number;
  front_g: number;
  front_plus_g: number;
  rear_g: number;
  rear_plus_g: number;
}

export interface Ratings {
  state: State;
  rider: boolean;
  list: Headroom[];
}

export type Verdict = "ok" | "near" | "over";

export interface Headroom {
  what: string;
  bag?: string;
  name: string;
  unit: string;
  load: number;
  plus: number;
  limit: number;
  left: number;
  used: number;
  verdict: Verdict;
  sure: boolean;
  text: string;
}

// Pack is where a search for the best packing stands.
export interface Pack {
  build: string;
  load: string;
  running: boolean;
  done: boolean;
  nodes: number;
  incumbent: number | null;
  bound: number | null;
  gap: number | null;
  tolerance: number; // done is when the gap is within this
  assignment: { good: string; quantity: number; bag: string }[] | null;
  moves: { good: string; name: string; quantity: number; from: string; to: string }[];
  before: Terms;
  after: Terms | null;
  unrated: string[]; // names of bags without a permitted load
  shortage?: { message: string; goods: string[]; bags: string[] };
}

export interface Terms {
  aim: number;
  front_share: number;
  height_mm: number;
  aside_mm: number;
  radius_mm: number;
  costs: { front: number; low: number; balance: number; middle: number };
  keeps: boolean;
  breaks?: string;
  perhaps?: string; // what is kept only within the doubt of the masses
}

// Weighed is what a weigh-in comes to.
export interface Weighed {
  weigh_in: string;
  build: string;
  load: string;
  state: string;
  problems: Problem[];
  scales: { id: string; name: string; step_g: number; calibration_share: number; readings: number[] }[];
  stand: { wheelbase_within_mm: number; radius_within_mm: number };
  expected: { line: number; mass_g: number; plus_g: number }[];
  measured?: {
    figures: Figure[];
    has_height: boolean;
    check: { chi_square: number; freedom: number; p: number; unlikely: boolean; widened: number };
    readings: { line: number; by_g: number; score: number }[];
    limits: { key: string; unit: string; doubt: string; share: number; plus: number; else: number }[];
    text: string;
  };
  paper?: { figures: Figure[] };
  agreement?: {
    agrees: boolean;
    p: number;
    chi_square: number;
    freedom: number;
    verdict: string;
    text: string;
    figures: { key: string; unit: string; paper: number; measured: number; delta: number; plus: number; verdict: string }[];
  };
  explanations: Explanation[];
  explained: string; // that in words
  adjusted: Adjusted[];
  block?: { height_mm: number; plus_mm: number; enough: boolean };
}

export interface Explanation {
  what: "part" | "missing"; // another mass of a line, or a mass that no line has
  part?: string;
  station?: string;
  name: string;
  by_g: number;
  plus_g: number;
  limit?: boolean; // as far as the line's half-width goes
  p?: number;
}

export interface Adjusted {
  list: "parts" | "bags" | "goods" | "riders";
  owner: string;
  id: string;
  name: string;
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  was_g: number;
  was_half_width_g: number;
}

export const usualAim: Aim = { of: "load", front_share: 0.4, front: 100, low: 50, balance: 100, middle: 25 };
export const usualGrip = 0.6;

export const loadsOf = (doc: Doc): Load[] => doc.loads ?? [];
export const ridersOf = (doc: Doc): Rider[] => doc.riders ?? [];
export const weighInsOf = (doc: Doc): WeighIn[] => doc.weigh_ins ?? [];
