// Made of data/schema by web/model/generate.mjs (make types): not to be edited by hand.

/**
 * The functions that the page may call, by name: text in, text out. An answer is either what stands here, as JSON or plain text, or a failure.
 */
export interface Functions {
  /**
   * All that the page shows of a document.
   */
  evaluate: {
    arguments: [document: string];
    answer: Report;
  };
  /**
   * Reads a document, brings it to this version and fills in every default.
   */
  open: {
    arguments: [text: string];
    answer: Opened;
  };
  /**
   * A document to start from.
   */
  blank: {
    arguments: [];
    answer: Doc;
  };
  /**
   * The demo document.
   */
  demo: {
    arguments: [];
    answer: Doc;
  };
  /**
   * The parts to choose from.
   */
  catalogue: {
    arguments: [];
    answer: Catalogue;
  };
  /**
   * The labels of all keys, in English.
   */
  words: {
    arguments: [];
    answer: Words;
  };
  /**
   * Takes the words of another language; from then on answers are in that.
   */
  speak: {
    arguments: [words: string];
    /**
     * Nothing.
     */
    answer: "";
  };
  /**
   * The stations, rear to front.
   */
  stations: {
    arguments: [];
    answer: Station[];
  };
  /**
   * The kinds of parts, in order.
   */
  kinds: {
    arguments: [];
    answer: Kind[];
  };
  /**
   * What there is to take along.
   */
  goods: {
    arguments: [];
    answer: Templates;
  };
  /**
   * Somebody of middling size, without id and name, to be put right.
   */
  newRider: {
    arguments: [];
    answer: Rider;
  };
  /**
   * Ids that nothing of that sort has anywhere in the document.
   */
  newIDs: {
    arguments: [document: string, sort: string, n: string];
    /**
     * As many as were wanted.
     */
    answer: string[];
  };
  /**
   * The half-width of a mass that nobody states one of.
   */
  halfWidth: {
    arguments: [basis: string, mass: string];
    /**
     * In g.
     */
    answer: Parsed;
  };
  /**
   * A part like an entry of the catalogue, without an id.
   */
  partFromEntry: {
    arguments: [id: string];
    answer: Part;
  };
  /**
   * A bag like an entry of the goods, without an id.
   */
  bagFromEntry: {
    arguments: [id: string];
    answer: Bag;
  };
  /**
   * A good like an entry of the goods, without an id and not packed.
   */
  goodFromEntry: {
    arguments: [id: string];
    answer: Good;
  };
  /**
   * A part of which a name and a mass are known, without an id: a guess, as a line of a list would be read.
   */
  partFromWords: {
    arguments: [name: string, mass: string];
    answer: Part;
  };
  /**
   * A bag of which a name and a mass are known, without an id: a guess.
   */
  bagFromWords: {
    arguments: [name: string, mass: string];
    answer: Bag;
  };
  /**
   * A good of which a name and a mass are known, without an id: a guess.
   */
  goodFromWords: {
    arguments: [name: string, mass: string];
    answer: Good;
  };
  /**
   * The text of a document's file, a part to a line.
   */
  fileText: {
    arguments: [document: string, photographs: string];
    /**
     * Indented, keys in a fixed order.
     */
    answer: string;
  };
  /**
   * What somebody means who types a name, and perhaps a mass, into a search.
   */
  find: {
    arguments: [typed: string, options: string];
    answer: Found;
  };
  /**
   * The part that comes of what was chosen in a search and typed into it.
   */
  enter: {
    arguments: [document: string, build: string, typed: string];
    answer: Entered;
  };
  /**
   * The parts of a build that somebody means.
   */
  findParts: {
    arguments: [document: string, build: string, typed: string];
    /**
     * Their ids, in the order of the build.
     */
    answer: string[];
  };
  /**
   * A document with a copy of a load at the end.
   */
  copyLoad: {
    arguments: [document: string, load: string, name: string];
    answer: Opened;
  };
  /**
   * What comes out of a weigh-in.
   */
  weighIn: {
    arguments: [document: string, weighIn: string];
    answer: Weighed;
  };
  /**
   * How to weigh, as a drawing.
   */
  weighInDrawing: {
    arguments: [document: string, weighIn: string, view: string];
    /**
     * The picture.
     */
    answer: string;
  };
  /**
   * Begins to pack a load anew, and ends what was in hand.
   */
  packStart: {
    arguments: [document: string, options: string];
    answer: Pack;
  };
  /**
   * Looks at so many more parts of the search.
   */
  packRun: {
    arguments: [nodes: string];
    answer: Pack;
  };
  /**
   * A document with its load packed as was found best.
   */
  packApply: {
    arguments: [document: string];
    answer: Opened;
  };
  /**
   * Ends the packing in hand, with what it has found.
   */
  packStop: {
    arguments: [];
    answer: Pack;
  };
  /**
   * Reads the frame of a build off a photograph.
   */
  photograph: {
    arguments: [document: string, build: string, photograph: string];
    answer: PhotographReading;
  };
  /**
   * Finds out whether a file is a picture that can be kept, before it is decoded.
   */
  pictureFile: {
    arguments: [head: string | Uint8Array, bytes: string];
    answer: PictureSize;
  };
  /**
   * A document packed for the part of an address after the #.
   */
  encodeLink: {
    arguments: [document: string];
    /**
     * The part of the address.
     */
    answer: string;
  };
  /**
   * Reads that like a document.
   */
  decodeLink: {
    arguments: [fragment: string];
    answer: Opened;
  };
  /**
   * Reads a list of parts.
   */
  readPartsCSV: {
    arguments: [text: string | Uint8Array, options: string];
    answer: Table;
  };
  /**
   * A table of the parts.
   */
  partsCSV: {
    arguments: [document: string, build: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The same as a page of text would have it.
   */
  partsMarkdown: {
    arguments: [document: string, build: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * A table of the luggage.
   */
  luggageCSV: {
    arguments: [document: string, load: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The same as a page of text would have it.
   */
  luggageMarkdown: {
    arguments: [document: string, load: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * A table of the figures.
   */
  figuresCSV: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The same as a page of text would have it.
   */
  figuresMarkdown: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * A table of the difference.
   */
  differenceCSV: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The same as a page of text would have it.
   */
  differenceMarkdown: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * A table of the states.
   */
  statesCSV: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The same as a page of text would have it.
   */
  statesMarkdown: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * What goes with a table of the figures of a document: how they were obtained, and the caution.
   */
  notes: {
    arguments: [document: string, date: string];
    /**
     * Sentences.
     */
    answer: string[];
  };
  /**
   * How the figures of a document were obtained.
   */
  provenance: {
    arguments: [document: string, date: string];
    /**
     * Sentences.
     */
    answer: string[];
  };
  /**
   * A mass as a person writes it.
   */
  parseMass: {
    arguments: [text: string, unit: string];
    /**
     * In g.
     */
    answer: Parsed;
  };
  /**
   * A length as a person writes it.
   */
  parseLength: {
    arguments: [text: string, unit: string];
    /**
     * In mm.
     */
    answer: Parsed;
  };
  /**
   * A picture.
   */
  svg: {
    arguments: [document: string, view: string];
    /**
     * The picture.
     */
    answer: string;
  };
  /**
   * The program's version.
   */
  version: {
    arguments: [];
    /**
     * The version.
     */
    answer: string;
  };
  /**
   * Sets what the canvas draws.
   */
  show: {
    arguments: [document: string, view: string];
    /**
     * Nothing.
     */
    answer: "";
  };
  /**
   * Takes a pointer event.
   */
  pointer: {
    arguments: [event: string];
    answer: Intent;
  };
  /**
   * Moves the camera.
   */
  camera: {
    arguments: [command: "fit" | "in" | "out" | "left" | "right" | "up" | "down"];
    /**
     * Nothing.
     */
    answer: "";
  };
  /**
   * What the canvas would show, as SVG; empty while there is nothing to show.
   */
  picture: {
    arguments: [];
    /**
     * The picture.
     */
    answer: string;
  };
  /**
   * Where the photograph lies behind what was drawn last.
   */
  backdrop: {
    arguments: [];
    /**
     * A transform of a style sheet, from the px of the photograph to those of the picture; empty where there is none.
     */
    answer: string;
  };
  /**
   * The sets of parts that a build can be changed to.
   */
  sets: {
    arguments: [document: string, build: string];
    answer: SetLine[];
  };
  /**
   * What goes, comes and stays when a build is changed to a set of parts, and the document after it.
   */
  change: {
    arguments: [document: string, changing: string];
    answer: Changed;
  };
  /**
   * What the builds of a document have in common, and what each lacks; and what its loads have in common.
   */
  shared: {
    arguments: [document: string];
    answer: Sharing;
  };
  /**
   * What is left to weigh of a build on a kitchen scale, and what of it narrows the total most.
   */
  weighNext: {
    arguments: [document: string, build: string, step: string];
    answer: WeighPlan;
  };
  /**
   * What a kitchen scale says of a part of a build.
   */
  weighTaken: {
    arguments: [document: string, build: string, reading: string];
    answer: WeighTaken;
  };
  /**
   * The builds side by side, as CSV.
   */
  buildsCSV: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The builds side by side, as Markdown.
   */
  buildsMarkdown: {
    arguments: [document: string, style: string, date: string];
    /**
     * The table.
     */
    answer: string;
  };
  /**
   * The builds side by side, against one of them.
   */
  builds: {
    arguments: [document: string, extent: string];
    answer: SideBySide;
  };
  /**
   * The parts of the builds side by side, in one list.
   */
  buildsParts: {
    arguments: [document: string];
    answer: PartsSideBySide;
  };
  /**
   * How the sides that a document compares steer and balance, and what each is in the hand.
   */
  steering: {
    arguments: [document: string];
    answer: Steering;
  };
  /**
   * The gears of all builds, what their drives lose, and the difference of the two compared.
   */
  gears: {
    arguments: [document: string];
    answer: GearsAnswer;
  };
  /**
   * What a climb and a day cost the sides that a document compares, and their difference.
   */
  climb: {
    arguments: [document: string];
    answer: ClimbAnswer;
  };
  /**
   * The stretches of a day that a track gives: its heights smoothed and its points thinned.
   */
  stretches: {
    arguments: [track: string];
    answer: TrackStretches;
  };
  /**
   * The room that the sides which a document compares have.
   */
  clearances: {
    arguments: [document: string];
    answer: Clearances;
  };
  /**
   * What it does to the steering of the sides to hang their bags elsewhere.
   */
  placements: {
    arguments: [document: string];
    answer: Placements;
  };
  /**
   * What the rough road that a document shows does to the sides that it compares, with the difference of the two.
   */
  road: {
    arguments: [document: string];
    answer: RoadAnswer;
  };
  /**
   * What takes longer of it: curves over speed, the response, spectra, a ride over an obstacle, and what it would take to do as well.
   */
  roadCurves: {
    arguments: [document: string];
    answer: RoadCurves;
  };
  /**
   * A bike to begin with.
   */
  newBike: {
    arguments: [choice: string];
    answer: NewBike;
  };
  /**
   * Reads a maker's table of frame figures for a build.
   */
  readFrameTable: {
    arguments: [document: string, wanted: string];
    answer: FrameTable;
  };
  /**
   * The outline of the largest frame bag of a build, at its true size.
   */
  frameBag: {
    arguments: [document: string, build: string];
    /**
     * The outline.
     */
    answer: string;
  };
}

/**
 * The answer when a function cannot do what it was asked to.
 */
export interface Failure {
  problem: Problem;
}

/**
 * What reading a document gives.
 */
export interface Opened {
  /**
   * Null when it could not be read.
   */
  document: Doc | null;
  /**
   * What is wrong, or was put right.
   */
  problems: Problem[];
  /**
   * That the file has, with their pictures.
   */
  photographs?: Photograph[];
}

/**
 * Key to label.
 */
export interface Words {
  [k: string]: string;
}

/**
 * A number that was read.
 */
export interface Parsed {
  value: number;
}

/**
 * Any number of builds set against one of them, figure by figure.
 */
export interface SideBySide {
  /**
   * The id of the build that the others are set against.
   */
  base: string;
  builds: Column[];
  chapters: Chapter[];
}

/**
 * A build of the table.
 */
export interface Column {
  id: string;
  name: string;
  /**
   * The id of what it carries, empty for nothing.
   */
  load: string;
  /**
   * How much of that is on the bike.
   */
  state: string;
  /**
   * False: it has no figures.
   */
  weighed: boolean;
}

/**
 * Rows that belong together.
 */
export interface Chapter {
  key: string;
  /**
   * In the language of the session.
   */
  label: string;
  rows: Row[];
}

/**
 * A figure of all builds.
 */
export interface Row {
  key: string;
  /**
   * In the language of the session.
   */
  label: string;
  /**
   * g, mm, kg_m2 or ratio; further chapters have their own.
   */
  unit: string;
  /**
   * Which is better; absent where that is for the rider to say.
   */
  wanted?: "less" | "more";
  /**
   * The id of the build that is better than every other, where that is decided.
   */
  best?: string;
  /**
   * One for each build; null where it has no such figure.
   */
  cells: (Cell | null)[];
}

/**
 * A figure of a build, and its difference from the base.
 */
export interface Cell {
  /**
   * In the unit of the row.
   */
  value: number;
  /**
   * ± this, expanded with coverage factor 2.
   */
  plus: number;
  /**
   * Minus that of the base.
   */
  delta: number;
  /**
   * ± of the difference, in which cancels what both have in common.
   */
  delta_plus: number;
  verdict: Verdict;
}

/**
 * The parts of all builds that are set side by side, in one list.
 */
export interface PartsSideBySide {
  builds: Column[];
  groups: PartsGroup[];
}

/**
 * A group of the list.
 */
export interface PartsGroup {
  key: string;
  /**
   * In the language of the session.
   */
  label: string;
  /**
   * Its mass in each build; null for one without figures.
   */
  masses_g: (number | null)[];
  lines: PartsLine[];
}

/**
 * A part as it is in each build. What the builds that have it do not agree on is empty.
 */
export interface PartsLine {
  name: string;
  note: string;
  /**
   * weighed, stated, typical or guessed.
   */
  basis: string;
  /**
   * Its station, in the language of the session.
   */
  where: string;
  /**
   * The builds have it in different places.
   */
  moved: boolean;
  /**
   * Every build has it, so many and as heavy.
   */
  same: boolean;
  /**
   * One for each build; null where it has no such part.
   */
  cells: (PartsCell | null)[];
}

/**
 * A part in one build.
 */
export interface PartsCell {
  name: string;
  basis: Basis;
  quantity: number;
  /**
   * Of all pieces together.
   */
  mass_g: number;
  plus_g: number;
}

/**
 * What the program comes with: generic parts, goods and bags, with typical values of its own, and the kinds and stations that a part may have. Units stand in the keys.
 */
export type Catalogue = Entry[];

/**
 * A part to choose, and words to find it by.
 */
export interface Entry {
  /**
   * Names the entry; a part that was made of it keeps that.
   */
  id: string;
  name: string;
  /**
   * A kind of part.
   */
  kind: string;
  /**
   * Of one piece.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this.
   */
  half_width_g: number;
  basis: Basis;
  /**
   * Where it usually sits.
   */
  station: string;
  /**
   * From the station, or from each of a pair, y outward.
   */
  offset_mm: Vec3;
  /**
   * Each coordinate of the place lies within plus or minus this.
   */
  within_mm: number;
  carrier: Carrier;
  shape: Shape;
  /**
   * How many a bike usually takes.
   */
  quantity: number;
  /**
   * Further words that a user would type.
   */
  search: string[];
  note?: string;
  /**
   * What a bike must have for the part to be of use on it; absent when nothing.
   */
  needs?: ("rear-suspension" | "rigid-rear" | "fork-suspension" | "rigid-fork" | "crank-gearbox" | "gear-hub" | "derailleur")[];
  /**
   * What the part does to the turns that go through it, of a part of the drive.
   */
  gearing?: Gearing;
}

/**
 * A good to take along, and words to find it by.
 */
export interface GoodTemplate {
  id: string;
  name: string;
  /**
   * Of one piece.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this.
   */
  half_width_g: number;
  basis: Basis;
  /**
   * Of one piece.
   */
  volume_l: number;
  /**
   * How many one usually takes.
   */
  quantity: number;
  /**
   * What of it is used up on the way; absent when nothing is.
   */
  supply?: SupplyKind;
  /**
   * Its pieces may go into several bags.
   */
  split?: boolean;
  /**
   * Further words that a user would type.
   */
  search: string[];
}

/**
 * A bag to pack, and words to find it by.
 */
export interface BagTemplate {
  id: string;
  name: string;
  /**
   * Of the empty bag.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this.
   */
  half_width_g: number;
  basis: Basis;
  /**
   * A single place, not a pair.
   */
  station: string;
  /**
   * From the station.
   */
  offset_mm: Vec3;
  carrier: Carrier;
  /**
   * Its box: forward, across, up.
   *
   * @minItems 3
   * @maxItems 3
   */
  size_mm: [number, number, number];
  /**
   * What fits in.
   */
  volume_l: number;
  /**
   * Further words that a user would type.
   */
  search: string[];
}

/**
 * What there is to take along, and to pack it in.
 */
export interface Templates {
  goods: GoodTemplate[];
  bags: BagTemplate[];
}

/**
 * A kind of part.
 */
export interface Kind {
  id: string;
  /**
   * The group of parts that its mass counts to.
   */
  group: string;
}

/**
 * A named place of the bike.
 */
export interface Station {
  name: string;
  /**
   * Whether it has a point on either side of the bike: a part may sit there twice, a bag hangs on one side.
   */
  pair: boolean;
}

/**
 * What to search among, and what for.
 */
export interface Wanted {
  of: "parts" | "goods" | "bags";
  /**
   * Of a mass that is typed without one.
   */
  unit?: string;
  /**
   * How many to find at most; 0 is all.
   */
  limit?: number;
  /**
   * What there is of the build that a part is for: what fits it comes first.
   */
  on?: {
    fork?: Fork;
    rear?: Rear;
    wheels?: Wheels;
    /**
     * What its parts are, each sort once.
     */
    parts?: {
      kind: string;
      carrier: Carrier;
    }[];
  };
}

/**
 * What was typed, and the entries that are meant.
 */
export interface Found {
  /**
   * What was typed, without the mass.
   */
  name: string;
  /**
   * The mass that was typed; absent when none was.
   */
  mass_g?: number;
  /**
   * Ids of entries, best first.
   */
  found: string[];
  /**
   * Those entries that would be taken otherwise than the list has them, for a mass or a size that was typed.
   */
  other?: {
    id: string;
    name: string;
    mass_g: number;
    half_width_g: number;
  }[];
  /**
   * How many parts were typed or pasted as a list, when there are several.
   */
  list?: number;
}

/**
 * What was chosen in a search for parts, and what was typed into it.
 */
export interface TypedIn {
  /**
   * Id of an entry of the catalogue; empty for a part of one's own.
   */
  entry: string;
  typed: string;
  /**
   * Of a mass that is typed without one.
   */
  unit?: string;
}

/**
 * The part that comes of it, and what is to be asked or remarked about it.
 */
export interface Entered {
  /**
   * Without an id.
   */
  part: Part;
  /**
   * Whether its mass was typed.
   */
  given: boolean;
  /**
   * It weighs under a fifth, or over five times, of what such a part does.
   */
  unusual?: "light" | "heavy";
  /**
   * And this is what one does.
   */
  usual_g?: number;
  /**
   * Parts of the build whose place it would take: a bike has one of it.
   */
  displaces?: Part[];
  /**
   * The part where the first of those stands.
   */
  in_place?: Part;
}

/**
 * The room that the sides of a comparison have.
 */
export interface Clearances {
  sides: ClearanceSide[];
  caution: string;
}

/**
 * The room that one side has.
 */
export interface ClearanceSide {
  /**
   * Its id.
   */
  build: string;
  name: string;
  /**
   * What is tightest first.
   */
  gaps: Gap[];
  bag?: FrameBag;
}

/**
 * The room between two things.
 */
export interface Gap {
  /**
   * What it is to.
   */
  key: "ground" | "tyre" | "front" | "knees" | "bar" | "tube" | "beside" | "long" | "high";
  /**
   * Of the part or bag.
   */
  name: string;
  /**
   * In the language of the session.
   */
  label: string;
  /**
   * As posed; below 0 they overlap.
   */
  pose_mm: number;
  pose_plus: number;
  /**
   * While the suspension moves, or the cranks turn.
   */
  least_mm: number;
  least_plus: number;
  verdict: Verdict;
  /**
   * A warning that names both.
   */
  text?: string;
}

/**
 * The largest frame bag that a main triangle takes.
 */
export interface FrameBag {
  long_mm: number;
  high_mm: number;
  /**
   * Of both, mm.
   */
  plus: number;
  /**
   * Where its edges are, and how sure that is.
   */
  text: string;
}

/**
 * Climb is what a climb and a day cost the sides of a comparison.
 */
export interface ClimbAnswer {
  sides: ClimbSide[];
  /**
   * Of the second side minus the first.
   */
  difference?: ClimbDifference;
  /**
   * Nothing without one.
   */
  day?: ClimbDay;
  words?: string;
  caution: string;
  /**
   * That a stretch may have.
   */
  surfaces: InputOption[];
  /**
   * That the document may have more.
   */
  days_left: number;
  /**
   * That all days may have more.
   */
  stretches_left: number;
}

/**
 * ClimbSide is how one side climbs, with all its load and its rider.
 */
export interface ClimbSide {
  build: string;
  load: string;
  name: string;
  /**
   * That is reckoned with: the fullest that there is.
   */
  state: State;
  /**
   * False: it cannot be told, see Why.
   */
  ok: boolean;
  why?: string;
  problems: Problem[];
  words?: string;
  mass_g: number;
  mass_plus_g: number;
  /**
   * How one gets along: one of effort's modes.
   */
  mode: string;
  speed_m_s: number;
  speed_plus: number;
  /**
   * 0 on foot.
   */
  cadence_rpm: number;
  /**
   * Its number in the order of shifting, from 1; 0 on foot.
   */
  gear: number;
  /**
   * In that gear, 0 on foot.
   */
  efficiency: number;
  efficiency_plus: number;
  length_m: number;
  time_s: number;
  time_plus_s: number;
  /**
   * Nothing on foot.
   */
  worth?: ClimbWorth;
  /**
   * Slope on which the lowest gear is just held at the least cadence.
   */
  steepest_percent?: number;
  steepest_plus?: number;
  /**
   * Slope on which the front wheel leaves the road.
   */
  lift_percent?: number;
  lift_plus?: number;
  /**
   * Slope on which the rear tyre slips.
   */
  slip_percent?: number;
  slip_plus?: number;
  inputs: RideInput[];
  /**
   * What to measure first for the time, s.
   */
  first: MeasureFirst[];
  /**
   * Those by which sides are set against each other.
   */
  figures: RoomFigure[];
}

/**
 * Worth says what a kilogram, a point of efficiency and a minute are worth in each other.
 */
export interface ClimbWorth {
  /**
   * Longer for one kilogram more.
   */
  kilogram_s: number;
  /**
   * Longer for one point of efficiency less.
   */
  point_s: number;
  kilograms_per_point: number;
  kilograms_per_minute: number;
  points_per_minute: number;
}

/**
 * ClimbDifference is a difference of times with its two causes.
 */
export interface ClimbDifference {
  time_s: number;
  time_plus_s: number;
  verdict: Verdict;
  /**
   * Of that for the weight.
   */
  mass_s: number;
  mass_plus_s: number;
  /**
   * For losses and gears.
   */
  loss_s: number;
  loss_plus_s: number;
  /**
   * Heavier by that.
   */
  mass_g: number;
  loss_points: number;
  /**
   * So much more on the second side, and both take as long; below 0 is less.
   */
  turn_g?: number;
  words: string;
  figures: RoomChange[];
  /**
   * What to measure first to decide it, s.
   */
  first: MeasureFirst[];
}

/**
 * ClimbDay is what a day costs.
 */
export interface ClimbDay {
  id: string;
  name: string;
  length_m: number;
  ascent_m: number;
  /**
   * Distance and height from the start, m, at the end of each stretch.
   */
  profile: [number, number][];
  sides: DaySide[];
  difference?: ClimbDifference;
  /**
   * That this day may have more.
   */
  stretches_left: number;
}

/**
 * DaySide is what a day costs one side.
 */
export interface DaySide {
  ok: boolean;
  time_s: number;
  time_plus_s: number;
  /**
   * Mean.
   */
  speed_m_s: number;
  /**
   * Mean while pedalling.
   */
  cadence_rpm: number;
  /**
   * That is used longest, 0 for none.
   */
  gear: number;
  /**
   * Over the work put into each gear.
   */
  efficiency: number;
  efficiency_plus: number;
  energy: DayEnergy;
  gears: GearUse[];
  modes: ModeUse[];
  walked_m: number;
  worth?: ClimbWorth;
  words: string;
}

/**
 * DayEnergy is where the work of a day goes, kJ.
 */
export interface DayEnergy {
  pedals_kj: number;
  drive_kj: number;
  air_kj: number;
  rolling_kj: number;
  bearings_kj: number;
  climbing_kj: number;
  brakes_kj: number;
}

/**
 * GearUse is how long a gear of the order of shifting is used.
 */
export interface GearUse {
  gear: number;
  time_s: number;
  /**
   * Of the time in all gears.
   */
  share: number;
}

/**
 * ModeUse is how long one gets along in a way.
 */
export interface ModeUse {
  key: string;
  label: string;
  time_s: number;
}

/**
 * Builds of a bike, part by part, and what they carry: riders, loads, and what a scale showed. Axes: x forward, y to the rider's left, z up; the origin is on the ground straight below the rear axle. Units stand in the keys: g, mm, l, deg. Ids are unique, of a build, a rider, a load and a weigh-in in the document, of a part in its build, of a bag and a good in their load, which a schema cannot say.
 */
export interface Doc {
  /**
   * Names the format.
   */
  format: "steelyard-document";
  /**
   * The version of the format.
   */
  version: 1;
  /**
   * What the document is called.
   */
  title: string;
  /**
   * Free text.
   */
  notes?: string;
  show: Show;
  /**
   * The builds; at most 20,000 parts in all of them.
   */
  builds: Build[];
  /**
   * Those who sit on the bikes.
   */
  riders?: Rider[];
  /**
   * What is taken along; at most 1,000 bags and 10,000 goods in all of them.
   */
  loads?: Load[];
  /**
   * Visits to the scale.
   */
  weigh_ins?: WeighIn[];
  /**
   * Parts that are on no build now, kept because their mass is known better than the catalogue's.
   */
  aside?: Aside[];
  /**
   * Roads to ride; at most 20,000 stretches in all of them.
   */
  days?: Day[];
}

/**
 * A unit that masses are shown in.
 */
export type MassUnit = "g" | "kg" | "lb_oz";
export const massUnitValues = ["g", "kg", "lb_oz"] as const satisfies readonly MassUnit[];

/**
 * A unit that lengths are shown in.
 */
export type LengthUnit = "mm" | "in";
export const lengthUnitValues = ["mm", "in"] as const satisfies readonly LengthUnit[];

/**
 * How much is on the bike, least first.
 */
export type State = "bare" | "ready" | "loaded" | "ridden";
export const stateValues = ["bare", "ready", "loaded", "ridden"] as const satisfies readonly State[];

/**
 * How much is left of what is used up on the way, fullest first.
 */
export type Supplies = "full" | "half" | "empty";
export const suppliesValues = ["full", "half", "empty"] as const satisfies readonly Supplies[];

/**
 * Where a mass comes from, best known first.
 */
export type Basis = "weighed" | "stated" | "typical" | "guessed";
export const basisValues = ["weighed", "stated", "typical", "guessed"] as const satisfies readonly Basis[];

/**
 * What something is fixed to.
 */
export type Carrier = "main-frame" | "swingarm" | "rear-wheel" | "fork-upper" | "fork-lower" | "front-wheel" | "link";
export const carrierValues = ["main-frame", "swingarm", "rear-wheel", "fork-upper", "fork-lower", "front-wheel", "link"] as const satisfies readonly Carrier[];

/**
 * A kind of body.
 */
export type Form = "point" | "rod" | "ring" | "disc" | "box" | "pair";
export const formValues = ["point", "rod", "ring", "disc", "box", "pair"] as const satisfies readonly Form[];

/**
 * What a maker may set a limit of.
 */
export type Rated =
  "total" | "front-rack" | "rear-rack" | "fork-cage-left" | "fork-cage-right" | "down-tube-cage" | "front-tyre" | "rear-tyre" | "front-rim" | "rear-rim";
export const ratedValues = ["total", "front-rack", "rear-rack", "fork-cage-left", "fork-cage-right", "down-tube-cage", "front-tyre", "rear-tyre", "front-rim", "rear-rim"] as const satisfies readonly Rated[];

/**
 * A body table of de Leva (1996).
 */
export type BodyTable = "female" | "male";
export const bodyTableValues = ["female", "male"] as const satisfies readonly BodyTable[];

/**
 * How a rider sits.
 */
export type Posture = "upright" | "leaned" | "low" | "standing";
export const postureValues = ["upright", "leaned", "low", "standing"] as const satisfies readonly Posture[];

/**
 * What a bag takes.
 */
export type BagLiquids = "only" | "upright" | "none";
export const bagLiquidsValues = ["only", "upright", "none"] as const satisfies readonly BagLiquids[];

/**
 * What a good is.
 */
export type GoodLiquid = "stays" | "moves" | "no";
export const goodLiquidValues = ["stays", "moves", "no"] as const satisfies readonly GoodLiquid[];

/**
 * What is used up on the way.
 */
export type SupplyKind = "water" | "food" | "fuel";
export const supplyKindValues = ["water", "food", "fuel"] as const satisfies readonly SupplyKind[];

/**
 * Which of the two wheels.
 */
export type WheelEnd = "front" | "rear";
export const wheelEndValues = ["front", "rear"] as const satisfies readonly WheelEnd[];

/**
 * Forward, left and up, mm.
 *
 * @minItems 3
 * @maxItems 3
 */
export type Vec3 = [number, number, number];

/**
 * Forward and up, mm.
 *
 * @minItems 2
 * @maxItems 2
 */
export type Point2 = [number, number];

/**
 * A wheel by its bead seat (ISO 5775) and its tyre.
 */
export interface Wheel {
  /**
   * Bead-seat diameter: 622, 584, 559, 507, 406, 349, ...
   */
  bead_seat_mm: number;
  /**
   * Section width of the tyre, inflated; its height is taken equal.
   */
  tyre_mm: number;
}

/**
 * What the page shows: in which units, which builds, and how much of what they carry. The units change no figure.
 */
export interface Show {
  /**
   * The unit that masses are shown in.
   */
  mass: MassUnit;
  /**
   * The unit that lengths are shown in.
   */
  length: LengthUnit;
  /**
   * The ids of the build looked at and of the one it is set against; the same one twice to set two loads against each other.
   */
  compare?: string[];
  /**
   * What each of the two carries: load ids, empty for none.
   */
  loads?: string[];
  /**
   * How much of it is on the bike. Bare is the build without bags, what is carried, and locks; ready is all of its parts; loaded is with the load's bags and what is packed in them; ridden is with the rider.
   */
  state?: State;
  /**
   * How much is left of water, food and fuel.
   */
  supplies?: Supplies;
  /**
   * Coefficient of grip of a tyre on the road, that a climb is judged by.
   */
  grip?: number;
  /**
   * The ids of the builds that are set side by side; none is all of them.
   */
  table?: string[];
  /**
   * The id of the build that the others are set against; empty is the first of them.
   */
  base?: string;
  /**
   * What a packing is wanted to be.
   */
  packing?: Aim;
  /**
   * The rough road that is ridden; a typical one without it.
   */
  rough?: RoughRoad;
  /**
   * What is done with the bike in the hand; as is usual without it.
   */
  hand?: Hand;
  /**
   * How a gear is shown.
   */
  gears?: GearUnit;
  /**
   * How many of the largest cogs are left out on the largest ring, and of the smallest on the smallest.
   */
  crossed_cogs?: number;
  /**
   * What is climbed.
   */
  road?: Road;
  /**
   * The id of the day that is ridden; empty is the first.
   */
  day?: string;
}
export const showDefaults = { mass: "kg", length: "mm", state: "ready", supplies: "full", grip: 0.6, gears: "development", crossed_cogs: 2 } satisfies Partial<Show>;

/**
 * The frame's figures as makers print them: on level ground, with the suspension at full length.
 */
export interface Frame {
  /**
   * Bottom bracket up to the top of the head tube, on its axis.
   */
  stack_mm: number;
  /**
   * Bottom bracket forward to the same point.
   */
  reach_mm: number;
  /**
   * Length of the head tube.
   */
  head_tube_mm: number;
  /**
   * Steering axis from the horizontal.
   */
  head_angle_deg: number;
  /**
   * Bottom bracket to the top of the seat tube.
   */
  seat_tube_mm: number;
  /**
   * Seat tube (effective) from the horizontal.
   */
  seat_angle_deg: number;
  /**
   * Bottom bracket to rear axle.
   */
  chainstay_mm: number;
  /**
   * Bottom bracket below the line of the rear's wheel size; negative is above.
   */
  bb_drop_mm: number;
}

/**
 * The fork.
 */
export interface Fork {
  /**
   * Crown race to axle along the steering axis, unloaded.
   */
  length_mm: number;
  /**
   * Axle ahead of the steering axis.
   */
  offset_mm: number;
  /**
   * Travel along the steering axis; 0 for a rigid fork.
   */
  travel_mm: number;
  /**
   * Along the steering axis, in the pose that is weighed.
   */
  sag_mm: number;
}

/**
 * The rear suspension.
 */
export interface Rear {
  /**
   * Vertical travel at the axle; 0 for a rigid rear.
   */
  travel_mm: number;
  /**
   * Vertical, at the axle, in the pose that is weighed.
   */
  sag_mm: number;
  /**
   * Main (or effective) pivot ahead of the bottom bracket, unloaded.
   */
  pivot_forward_mm: number;
  /**
   * And above it.
   */
  pivot_up_mm: number;
  /**
   * Shock eye on the frame, from the bottom bracket, unloaded.
   */
  shock_frame_mm: Point2;
  /**
   * Shock eye on the side of the swingarm or link, likewise.
   */
  shock_swing_mm: Point2;
}

/**
 * Both wheels.
 */
export interface Wheels {
  front: Wheel;
  rear: Wheel;
}

/**
 * Stem and bar.
 */
export interface Cockpit {
  /**
   * Between head tube and stem, upper bearing included.
   */
  spacers_mm: number;
  /**
   * Centre to centre.
   */
  stem_mm: number;
  /**
   * From square to the steering axis, positive up.
   */
  stem_angle_deg: number;
  /**
   * End to end.
   */
  bar_width_mm: number;
  /**
   * Grips above the clamp.
   */
  bar_rise_mm: number;
  /**
   * Grips behind the clamp.
   */
  bar_back_mm: number;
}

/**
 * Where the saddle is.
 */
export interface Saddle {
  /**
   * Bottom bracket to the top of the saddle along the seat angle.
   */
  height_mm: number;
  /**
   * Middle of the saddle behind (positive) the line of the seat tube.
   */
  setback_mm: number;
}

/**
 * The cranks.
 */
export interface Cranks {
  /**
   * Axle to pedal spindle.
   */
  length_mm: number;
  /**
   * Between the pedals' mounting faces.
   */
  width_mm: number;
}

export interface SideStand {
  /**
   * Of its foot, ahead of the rear contact.
   */
  forward_mm: number;
  /**
   * Of its foot, beside the line of the wheels.
   */
  out_mm: number;
  /**
   * Of the bike, to the side of the stand.
   */
  lean_deg: number;
}

export interface Aside {
  /**
   * The id of the build that the part was on.
   */
  build: string;
  /**
   * The drive that the build had then: derailleur, gear-hub or crank-gearbox.
   */
  with?: string;
  part: Part;
}

/**
 * One way to build the bike.
 */
export interface Build {
  /**
   * Names the build in this document, for life. Given when it is not there.
   */
  id: string;
  /**
   * What the build is called.
   */
  name: string;
  /**
   * Free text.
   */
  notes?: string;
  frame: Frame;
  fork: Fork;
  rear: Rear;
  wheels: Wheels;
  cockpit: Cockpit;
  saddle: Saddle;
  cranks: Cranks;
  /**
   * What is fitted, in the order of the list.
   */
  parts: Part[];
  /**
   * Limits that makers have set; one of a sort.
   */
  ratings?: Rating[];
  /**
   * Where the foot of a side stand is; a typical place without it, where a stand is fitted.
   */
  stand?: SideStand;
  /**
   * What a whole bike has and this one goes without on purpose: it is not missed.
   */
  without?: string[];
  /**
   * Tyres, springs and dampers; typical without it.
   */
  setup?: Setup;
  /**
   * The id of a picture that is kept beside the document, never in it.
   */
  photograph?: string;
  /**
   * Way of the loaded rear wheel for one turn, as measured: value from 500 to 4000.
   */
  roll_out_mm?: Known;
  /**
   * What is known of the losses of the drive.
   */
  losses?: DriveLosses;
  /**
   * What makers permit the drive to take.
   */
  drive_limits?: DriveLimits;
}

/**
 * A line of the parts list.
 */
export interface Part {
  /**
   * Names the part in its build; kept when a build is copied. Given when it is not there.
   */
  id: string;
  /**
   * What the part is called.
   */
  name: string;
  /**
   * A kind of the catalogue; one that is not known counts under "other".
   */
  kind: string;
  /**
   * The entry of the catalogue that the part came from.
   */
  catalogue?: string;
  /**
   * How many pieces.
   */
  quantity: number;
  /**
   * Of one piece.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this. When it is not there: 1 g for a weighed mass, else 5 % of a stated, 10 % of a typical, 20 % of a guessed one, and at least 1 g.
   */
  half_width_g: number;
  /**
   * Where the mass comes from.
   */
  basis: Basis;
  /**
   * A named place of the bike where the part sits.
   */
  station?: string;
  /**
   * From the station, or from each of a pair, y outward.
   */
  offset_mm: Vec3;
  /**
   * An absolute place instead of a station.
   */
  at_mm?: Vec3;
  /**
   * Each coordinate of the place lies within plus or minus this.
   */
  within_mm: number;
  /**
   * What the part is fixed to.
   */
  carrier: Carrier;
  shape: Shape;
  /**
   * Free text.
   */
  note?: string;
  /**
   * The reading with other parts that the mass is a share of; it counts while that is the part's mass.
   */
  joint?: Joint;
  /**
   * What the part does to the turns that go through it, of a part of the drive.
   */
  gearing?: Gearing;
}
export const partDefaults = { quantity: 1, mass_g: 0, basis: "guessed", within_mm: 20, carrier: "main-frame" } satisfies Partial<Part>;

/**
 * The body that stands for the part.
 */
export interface Shape {
  /**
   * The kind of body.
   */
  form: Form;
  /**
   * rod: length; ring: radius; disc: radius, width; box: x, y, z; pair: width. What a form does not need is 0.
   *
   * @minItems 3
   * @maxItems 3
   */
  size_mm: [number, number, number];
  /**
   * Turned about y, nose up positive.
   */
  pitch_deg?: number;
}
export const shapeDefaults = { form: "point" } satisfies Partial<Shape>;

/**
 * What is wanted of a packing. The weights set the terms against each other; 0 leaves one out.
 */
export interface Aim {
  /**
   * What is judged: the load alone, or bike, load and rider together.
   */
  of: "load" | "all";
  /**
   * Wanted share of that on the front wheel.
   */
  front_share: number;
  /**
   * Weight of keeping to the wanted share in front.
   */
  front: number;
  /**
   * Weight of being low.
   */
  low: number;
  /**
   * Weight of being as heavy left as right.
   */
  balance: number;
  /**
   * Weight of heavy things near the middle.
   */
  middle: number;
  /**
   * Weight of little inertia about the steering axis.
   */
  steered?: number;
  /**
   * At most so many things change bags; null is any number.
   */
  moves?: number;
}
export const aimDefaults = { of: "load", front_share: 0.4, front: 100, low: 50, balance: 100, middle: 25, steered: 0 } satisfies Partial<Aim>;

/**
 * A limit that a maker has set.
 */
export interface Rating {
  /**
   * What it is of; a tyre's and a rim's is the load on their wheel.
   */
  what: Rated;
  /**
   * The permitted load; 0 is not known.
   */
  limit_g: number;
}

/**
 * Somebody who sits on the bike.
 */
export interface Rider {
  /**
   * Names the rider in this document. Given when it is not there.
   */
  id: string;
  /**
   * What the rider is called.
   */
  name: string;
  /**
   * Height without shoes.
   */
  stature_mm: number;
  /**
   * Mass of the body, unclothed.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this.
   */
  half_width_g: number;
  /**
   * Clothes, helmet and what is in the pockets, spread over the body.
   */
  clothing_g: number;
  /**
   * The pair of shoes.
   */
  shoes_g: number;
  /**
   * The body table of de Leva (1996).
   */
  table: BodyTable;
  /**
   * How the rider sits.
   */
  posture: Posture;
  /**
   * Left crank from level and forward, positive up; the right one is opposite.
   */
  crank_deg: number;
  /**
   * What the rider holds and likes.
   */
  effort?: Effort;
  /**
   * How the body stands on legs and arms.
   */
  standing?: BodySpring;
}
export const riderDefaults = { half_width_g: 1000, clothing_g: 0, shoes_g: 0, posture: "leaned", crank_deg: 0 } satisfies Partial<Rider>;

/**
 * What is taken along, and by whom. It is kept beside the builds, so that two builds can carry the same.
 */
export interface Load {
  /**
   * Names the load in this document. Given when it is not there.
   */
  id: string;
  /**
   * What the load is called.
   */
  name: string;
  /**
   * Free text.
   */
  notes?: string;
  /**
   * Id of the rider; empty is nobody.
   */
  rider?: string;
  /**
   * Places to pack.
   */
  bags: Bag[];
  /**
   * What is packed, or may be.
   */
  goods: Good[];
}

/**
 * A place to pack: a pannier, a bag, a rack deck with a strap, a cage.
 */
export interface Bag {
  /**
   * Names the bag in its load; kept when a load is copied. Given when it is not there.
   */
  id: string;
  /**
   * What the bag is called.
   */
  name: string;
  /**
   * Of the empty bag.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this. When it is not there: 1 g for a weighed mass, else 5 % of a stated, 10 % of a typical, 20 % of a guessed one, and at least 1 g.
   */
  half_width_g: number;
  /**
   * Where the mass comes from.
   */
  basis: Basis;
  /**
   * A named place of the bike, a single one and not a pair: its middle is where the goods are.
   */
  station: string;
  /**
   * From the station.
   */
  offset_mm: Vec3;
  /**
   * What the bag is fixed to.
   */
  carrier: Carrier;
  /**
   * Its box: forward, across, up.
   *
   * @minItems 3
   * @maxItems 3
   */
  size_mm: [number, number, number];
  /**
   * What fits in; 0 is not limited.
   */
  volume_l: number;
  /**
   * What the maker lets it hold; 0 is not stated.
   */
  permitted_g: number;
  /**
   * What it takes: only liquids, as a bottle does, liquids too, since they stand upright in it, or none; empty is as place and size say.
   */
  liquids?: BagLiquids | "";
  /**
   * Whether it can be reached into while riding; null is as the place says.
   */
  at_hand?: boolean;
}
export const bagDefaults = { mass_g: 0, basis: "guessed", carrier: "main-frame", volume_l: 0, permitted_g: 0, liquids: "" } satisfies Partial<Bag>;

/**
 * Something packed.
 */
export interface Good {
  /**
   * Names the good in its load; kept when a load is copied. Given when it is not there.
   */
  id: string;
  /**
   * What it is.
   */
  name: string;
  /**
   * How many pieces.
   */
  quantity: number;
  /**
   * Of one piece, full.
   */
  mass_g: number;
  /**
   * The mass lies within plus or minus this. When it is not there: 1 g for a weighed mass, else 5 % of a stated, 10 % of a typical, 20 % of a guessed one, and at least 1 g.
   */
  half_width_g: number;
  /**
   * Where the mass comes from.
   */
  basis: Basis;
  /**
   * Of one piece.
   */
  volume_l: number;
  /**
   * Id of the bag; empty is not packed, and does not count.
   */
  in: string;
  /**
   * Stays where it is when the bags are packed anew, at home if it is in none.
   */
  pinned?: boolean;
  /**
   * Used up on the way; empty stays.
   */
  supply?: SupplyKind | "";
  /**
   * Its pieces may go into several bags.
   */
  split?: boolean;
  /**
   * Goods with the same name here are used together, and lie in one bag.
   */
  together?: string;
  /**
   * Lies in a bag that can be reached into while riding.
   */
  at_hand?: boolean;
  /**
   * A liquid, which stands upright and stays in its bag or may move to another, or none; empty is a liquid that stays where the supply is water, and none otherwise.
   */
  liquid?: GoodLiquid | "";
}
export const goodDefaults = { quantity: 1, mass_g: 0, basis: "guessed", volume_l: 0, pinned: false, supply: "", split: false, together: "", at_hand: false, liquid: "" } satisfies Partial<Good>;

/**
 * One visit to the scale.
 */
export interface WeighIn {
  /**
   * Names the weigh-in in this document. Given when it is not there.
   */
  id: string;
  /**
   * What it is called.
   */
  name: string;
  /**
   * Id of the build that was weighed.
   */
  build: string;
  /**
   * What was on the bike.
   */
  state: State;
  /**
   * Id of the load that was on it.
   */
  load?: string;
  /**
   * How far the fork had sunk on the scale, along the steering axis; as the build says when it is not there.
   */
  front_sag_mm?: number;
  /**
   * How far the rear had sunk on the scale, vertical at the axle; as the build says when it is not there.
   */
  rear_sag_mm?: number;
  /**
   * The scales that readings were taken on. What one rounds away and is off by, its readings share.
   */
  scales?: Scale[];
  /**
   * The wheelbase on the scale lies within plus or minus this of the build's; 5 when it is not there (common practice, no source).
   */
  wheelbase_within_mm?: number;
  /**
   * The radius of each wheel lies within plus or minus this of the build's; 5 when it is not there (common practice, no source).
   */
  radius_within_mm?: number;
  /**
   * What the scale showed.
   */
  readings: Reading[];
}

/**
 * A scale that readings were taken on.
 */
export interface Scale {
  /**
   * Names the scale in this weigh-in.
   */
  id: string;
  /**
   * What it is called.
   */
  name?: string;
  /**
   * Of its display: it shows a load to within plus or minus half of this, the same load the same way each time.
   */
  step_g: number;
  /**
   * It shows up to this share of a load too much or too little; 0.005 when it is not there (common practice, no source).
   */
  calibration_share?: number;
}
export const scaleDefaults = { name: "" } satisfies Partial<Scale>;

/**
 * What the scale showed under one wheel.
 */
export interface Reading {
  /**
   * The wheel on the scale.
   */
  wheel: WheelEnd;
  /**
   * The wheel that stood on a block; empty when the bike stood level.
   */
  raised?: WheelEnd | "";
  /**
   * Of the block, or of the scale where it lifts the wheel.
   */
  height_mm: number;
  /**
   * The height lies within plus or minus this.
   */
  height_within_mm: number;
  /**
   * Id of the scale that it was read on; empty for one that is known by its resolution alone.
   */
  scale?: string;
  /**
   * The reading.
   */
  mass_g: number;
  /**
   * The step of a scale that is not among the weigh-in's: the reading lies within plus or minus half of it. Readings without a scale that have the same resolution are of the same scale.
   */
  resolution_g?: number;
}
export const readingDefaults = { raised: "", height_mm: 0, height_within_mm: 0 } satisfies Partial<Reading>;

/**
 * Which wheels of a stage go together: each driving with each driven one, the first with the first and so on, or in turn: from the lowest gear up first the driving side moves one wheel, then the driven side.
 */
export type Combine = "every" | "listed" | "turn";
export const combineValues = ["every", "listed", "turn"] as const satisfies readonly Combine[];

/**
 * What links the two shafts of a stage.
 */
export type By = "gears" | "chain";
export const byValues = ["gears", "chain"] as const satisfies readonly By[];

/**
 * A reading of a scale on which several parts lay together.
 */
export interface Joint {
  /**
   * The same for all of them.
   */
  id: string;
  /**
   * Of one piece of this part: its share.
   */
  mass_g: number;
}

/**
 * Teeth of rings, cogs or belt pulleys, or ratios of a gear hub or gearbox, or the stages of a gearbox of one's own: one of the three.
 */
export interface Gearing {
  /**
   * The teeth of each ring, cog or pulley, in any order.
   */
  teeth?: number[];
  /**
   * Turns of what comes out for one turn of what goes in, for each gear.
   */
  ratios?: number[];
  /**
   * How many pairs of gears carry the load in each of the ratios.
   */
  meshes?: number[];
  /**
   * Stages that follow each other: every gear of one goes with every gear of the next; at most 64 gears in all.
   */
  stages?: GearStage[];
}

/**
 * Two shafts and what turns one by the other.
 */
export interface GearStage {
  /**
   * The teeth of the wheels that drive.
   */
  driving?: number[];
  /**
   * The teeth of the wheels that are driven.
   */
  driven?: number[];
  /**
   * Which of them go together.
   */
  combine?: Combine;
  /**
   * What links the shafts.
   */
  by?: By;
}
export const gearStageDefaults = { combine: "every", by: "gears" } satisfies Partial<GearStage>;

/**
 * What is done with a bike in the hand.
 */
export interface Hand {
  /**
   * Step that it is lifted up, front first. 0 is as is usual.
   */
  step_mm?: number;
  /**
   * Lean at which it is held. 0 is as is usual.
   */
  lean_deg?: number;
  /**
   * Slope that it is pushed up, rise over run. 0 is as is usual.
   */
  slope_percent?: number;
}

/**
 * The rough road that is ridden, and how.
 */
export interface RoughRoad {
  /**
   * Of ISO 8608, by its geometric mean.
   */
  class?: RoadClass;
  /**
   * Displacement spectral density at 0.1 cycle/m, 1e-6 m³; goes before the class.
   */
  roughness_cm3?: number | null;
  /**
   * How fast it is ridden.
   */
  speed_km_h?: number | null;
  /**
   * A single obstacle beside the road; an edge of 40 mm without it.
   */
  obstacle?: Obstacle | null;
  /**
   * As the rider's posture says without it.
   */
  rider?: RiderWay;
  /**
   * Length: the road is averaged over the tyre's contact. Point: it is not, and the tyre has no damping, as closed forms want it.
   */
  contact?: TyreContact;
}
export const roughRoadDefaults = { class: "C", speed_km_h: 20, contact: "length" } satisfies Partial<RoughRoad>;

export type RoadClass = "A" | "B" | "C" | "D" | "E";
export const roadClassValues = ["A", "B", "C", "D", "E"] as const satisfies readonly RoadClass[];

export type RiderWay = "seated" | "standing";
export const riderWayValues = ["seated", "standing"] as const satisfies readonly RiderWay[];

export type TyreContact = "length" | "point";
export const tyreContactValues = ["length", "point"] as const satisfies readonly TyreContact[];

export type ObstacleForm = "edge" | "step" | "hole";
export const obstacleFormValues = ["edge", "step", "hole"] as const satisfies readonly ObstacleForm[];

export type SpringWay = "kept" | "anew";
export const springWayValues = ["kept", "anew"] as const satisfies readonly SpringWay[];

/**
 * Something upright-sided that lies across a level road.
 */
export interface Obstacle {
  /**
   * An edge is ridden up and stays, a step is a bar that lies across, a hole is sunk in.
   */
  form: ObstacleForm;
  /**
   * Of a hole its depth.
   */
  height_mm: number;
  /**
   * Along the road; of an edge it means nothing.
   */
  length_mm: number;
}

/**
 * What a build is set up with that matters on a rough road, besides sag and travel.
 */
export interface Setup {
  /**
   * Of the front wheel.
   */
  front?: EndSetup | null;
  /**
   * Of the rear wheel.
   */
  rear?: EndSetup | null;
  /**
   * Kept as they were set, with the rider on and all supplies full, or set anew to the same sag in each state.
   */
  springs?: SpringWay;
}
export const setupDefaults = { springs: "kept" } satisfies Partial<Setup>;

/**
 * Tyre, spring and damper of one wheel; what is not there is typical.
 */
export interface EndSetup {
  /**
   * Of the tyre.
   */
  pressure_bar?: number | null;
  /**
   * It lies within ± this.
   */
  pressure_within_bar?: number | null;
  /**
   * The least pressure that the tyre's maker asks for.
   */
  tyre_least_bar?: number | null;
  /**
   * The most that the tyre's maker permits.
   */
  tyre_most_bar?: number | null;
  /**
   * The most that the rim's maker permits.
   */
  rim_most_bar?: number | null;
  /**
   * How the tyre gave way when somebody tried; goes before the pressure.
   */
  drop?: TyreDrop | null;
  /**
   * Rate of the spring, along the travel; goes before the sag.
   */
  spring_n_mm?: number | null;
  /**
   * It lies within ± this.
   */
  spring_within_n_mm?: number | null;
  /**
   * The sag lies within ± this.
   */
  sag_within_mm?: number | null;
  /**
   * Damping as a share of the critical one.
   */
  damping_share?: number | null;
  /**
   * It lies within ± this.
   */
  damping_within_share?: number | null;
  /**
   * Damping as measured along the travel; goes before the share.
   */
  damper_n_s_m?: number | null;
  /**
   * It lies within ± this.
   */
  damper_within_n_s_m?: number | null;
}

/**
 * A test of a tyre: the axle sank by so much when the load on the wheel grew by so much.
 */
export interface TyreDrop {
  /**
   * By which the load on the wheel grew.
   */
  load_g: number;
  /**
   * It lies within ± this.
   */
  load_within_g: number;
  /**
   * By which the axle sank.
   */
  drop_mm: number;
  /**
   * It lies within ± this.
   */
  drop_within_mm: number;
}

/**
 * Where a figure that is no mass comes from, best known first.
 */
export type KnownBasis = "measured" | "stated" | "typical" | "guessed";
export const knownBasisValues = ["measured", "stated", "typical", "guessed"] as const satisfies readonly KnownBasis[];

/**
 * What one rides on, smoothest first.
 */
export type Surface = "asphalt" | "rough-asphalt" | "gravel" | "track" | "sand";
export const surfaceValues = ["asphalt", "rough-asphalt", "gravel", "track", "sand"] as const satisfies readonly Surface[];

/**
 * How long a power is held.
 */
export type Hold = "day" | "hour";
export const holdValues = ["day", "hour"] as const satisfies readonly Hold[];

/**
 * How a gear is shown: by its development, or as the inches of a wheel that goes as far for a turn.
 */
export type GearUnit = "development" | "inches";
export const gearUnitValues = ["development", "inches"] as const satisfies readonly GearUnit[];

/**
 * What a stage of a drive loses power by: coefficient of friction of the pins; tension of the slack span, N; torques, N m; shares of the power; numbers of meshes; power, W.
 */
export type StageLossKind =
  | "chain-friction"
  | "chain-slack"
  | "pulley-torque"
  | "belt-share"
  | "belt-torque"
  | "gearbox-mesh"
  | "gearbox-meshes"
  | "gearbox-torque"
  | "hub-mesh"
  | "hub-meshes"
  | "hub-torque"
  | "crank-torque"
  | "other-share"
  | "other-power";
export const stageLossKindValues = ["chain-friction", "chain-slack", "pulley-torque", "belt-share", "belt-torque", "gearbox-mesh", "gearbox-meshes", "gearbox-torque", "hub-mesh", "hub-meshes", "hub-torque", "crank-torque", "other-share", "other-power"] as const satisfies readonly StageLossKind[];

/**
 * A figure that lies within plus or minus its half-width; the unit stands in the key that it is under.
 */
export interface Known {
  /**
   * The figure.
   */
  value: number;
  /**
   * It lies within plus or minus this.
   */
  half_width: number;
  /**
   * Where it comes from.
   */
  basis?: KnownBasis;
}
export const knownDefaults = { half_width: 0, basis: "guessed" } satisfies Partial<Known>;

/**
 * How a body that stands on bent legs and arms goes up and down by itself while what it stands on keeps still. What is not there is typical.
 */
export interface BodySpring {
  /**
   * Natural frequency: value from 0.5 to 20.
   */
  frequency_hz?: Known;
  /**
   * Damping as a share of the critical one: value from 0.01 to 2.
   */
  damping_share?: Known;
}

/**
 * What a rider holds and likes. What is not there is typical.
 */
export interface Effort {
  /**
   * Power held at the pedals: value from 1 to 2500.
   */
  power_w?: Known;
  /**
   * How long that is held.
   */
  power_for?: Hold;
  /**
   * The cadence liked: value from 5 to 250.
   */
  cadence_rpm?: Known;
  /**
   * Below it the rider walks.
   */
  least_cadence_rpm?: Known;
  /**
   * Above it the rider does not follow with the cranks.
   */
  highest_cadence_rpm?: Known;
  /**
   * Speed on foot with the bike: value from 0.1 to 3.
   */
  on_foot_m_s?: Known;
  /**
   * The same as documents said it once, without a half-width; on_foot_m_s goes before it. 0 is not stated.
   */
  walking_m_s?: number;
  /**
   * Above it the rider brakes. 0 is not stated.
   */
  top_speed_m_s?: number;
}
export const effortDefaults = { power_for: "day" } satisfies Partial<Effort>;

/**
 * What is climbed, and what acts from outside. What is not there is typical.
 */
export interface Road {
  /**
   * Rise over run: value from 0.1 to 50.
   */
  slope_percent?: Known;
  /**
   * Height to climb. 0 is not stated.
   */
  climb_m?: number;
  /**
   * What is ridden on.
   */
  surface?: Surface;
  /**
   * Against the rider positive: value from -25 to 25.
   */
  wind_m_s?: Known;
  /**
   * Height above the sea: value from -500 to 9000.
   */
  altitude_m?: Known;
  /**
   * Of the air: value from -60 to 60.
   */
  temperature_c?: Known;
  /**
   * Drag area of bike and rider: value from 0.05 to 5.
   */
  drag_area_m2?: Known;
  /**
   * Coefficient of rolling resistance on the surface: value from 0.0005 to 0.5.
   */
  rolling?: Known;
}
export const roadDefaults = { surface: "asphalt" } satisfies Partial<Road>;

/**
 * A quantity that a stage of a drive loses power by.
 */
export interface StageLoss {
  /**
   * What it is.
   */
  of: StageLossKind;
  /**
   * In the unit of what it is.
   */
  value: number;
  /**
   * It lies within plus or minus this.
   */
  half_width: number;
  /**
   * Where it comes from.
   */
  basis?: KnownBasis;
  /**
   * Free text.
   */
  note?: string;
}
export const stageLossDefaults = { half_width: 0, basis: "guessed" } satisfies Partial<StageLoss>;

/**
 * What is known of the losses of a drive. What is not there is typical.
 */
export interface DriveLosses {
  /**
   * Share of the power that the whole drive passes on, from 0.1 to 1; it takes the place of all stages.
   */
  efficiency?: Known;
  /**
   * Power at which that was found. 0 is not stated.
   */
  power_w?: number;
  /**
   * What is known of single stages.
   */
  stages?: StageLoss[];
}

/**
 * What makers permit the drive to take.
 */
export interface DriveLimits {
  /**
   * Teeth of the ring over those of the cog, at least. 0 is not stated.
   */
  least_ratio?: number;
  /**
   * Torque at the cranks, at most. 0 is not stated.
   */
  crank_torque_nm?: number;
  /**
   * Torque at the cog, at most. 0 is not stated.
   */
  hub_torque_nm?: number;
}

/**
 * A piece of a day's road.
 */
export interface Stretch {
  /**
   * Along the road.
   */
  length_m: number;
  /**
   * Rise over run, uphill positive.
   */
  slope_percent: number;
  /**
   * What is ridden on.
   */
  surface?: Surface;
}
export const stretchDefaults = { slope_percent: 0, surface: "asphalt" } satisfies Partial<Stretch>;

/**
 * A road of several stretches.
 */
export interface Day {
  /**
   * Names the day in this document. Given when it is not there.
   */
  id: string;
  /**
   * What the day is called.
   */
  name: string;
  /**
   * Free text.
   */
  notes?: string;
  /**
   * In the order of the way.
   */
  stretches: Stretch[];
}

/**
 * What was recognised of a maker's table of frame figures.
 */
export interface FrameTable {
  /**
   * The columns by their names, empty where they have none.
   */
  sizes: string[];
  /**
   * The column that is taken; -1 until one is chosen.
   */
  size: number;
  figures: FrameFigure[];
  /**
   * What follows from other figures, held against them.
   */
  checks: FrameCheck[];
  /**
   * Lines that gave no figure.
   */
  left: FrameLine[];
  /**
   * Of the frame with the figures taken.
   */
  problems: Problem[];
  /**
   * With the figures taken; absent until a size is chosen.
   */
  document?: Doc;
}

/**
 * A figure that was recognised.
 */
export interface FrameFigure {
  /**
   * Of a build.
   */
  field: string;
  /**
   * In the language of the session.
   */
  label: string;
  /**
   * As in the text; empty for what follows from the rest.
   */
  printed: string;
  unit: "mm" | "deg";
  /**
   * Of the build.
   */
  before: number;
  /**
   * What becomes of it.
   */
  value: number;
  /**
   * There is a value in the column chosen.
   */
  given: boolean;
  taken: boolean;
  /**
   * How it was read.
   */
  remark?: string;
}

/**
 * A figure of the text, held against what follows from the others.
 */
export interface FrameCheck {
  key: "wheelbase" | "trail" | "front_centre" | "bb_height" | "top_tube";
  agrees: boolean;
  /**
   * In the language of the session.
   */
  text: string;
}

/**
 * A line that gave no figure.
 */
export interface FrameLine {
  line: number;
  text: string;
  /**
   * In the language of the session.
   */
  why: string;
}

/**
 * What is read for which build.
 */
export interface FrameTableWanted {
  /**
   * Its id.
   */
  build: string;
  /**
   * Lines of a name and numbers, or a table.
   */
  text: string;
  /**
   * The column that is taken.
   */
  size?: number;
  /**
   * Fields that stay as they are.
   */
  skip?: string[];
}

/**
 * Gears are the gears of all builds.
 */
export interface GearsAnswer {
  /**
   * How the document wants a gear shown, one of document.GearUnits.
   */
  unit: string;
  /**
   * The rule by which gears are left out.
   */
  crossed_cogs: number;
  builds: GearedBuild[];
  /**
   * Of the second build compared minus the first; empty without a second.
   */
  difference: RoomChange[];
  /**
   * What to measure first for the difference in efficiency, in points of it.
   */
  first: MeasureFirst[];
  words?: string;
  caution: string;
}

/**
 * GearedBuild is the drive of one build.
 */
export interface GearedBuild {
  build: string;
  name: string;
  /**
   * False: the drive cannot be read off the parts, see Problems.
   */
  ok: boolean;
  problems: Problem[];
  /**
   * Ids of parts whose gearing is that of their entry of the catalogue.
   */
  typical: string[];
  /**
   * That efficiencies are told at.
   */
  power_w: number;
  cadence_rpm: number;
  /**
   * 0: not known.
   */
  roll_out_mm: number;
  roll_out_plus: number;
  roll_out_measured: boolean;
  range_percent: number;
  /**
   * Gears that differ by more than 2 %.
   */
  distinct: number;
  /**
   * Gears that the rule leaves.
   */
  positions: number;
  mean_step_percent: number;
  least_step_percent: number;
  most_step_percent: number;
  uneven_percent: number;
  double_shifts: number;
  /**
   * Mean.
   */
  efficiency: number;
  efficiency_plus: number;
  /**
   * "day": the gears that the day uses, by the work put into each; "all": all alike.
   */
  efficiency_over: string;
  /**
   * All, the lowest first.
   */
  gears: ToldGear[];
  overlaps: GearOverlap[];
  figures: RoomFigure[];
  /**
   * Over the same gears as the efficiency, the largest first.
   */
  losses: DriveLoss[];
  /**
   * What to measure first for the efficiency, in points of it.
   */
  first: MeasureFirst[];
  words?: string;
  /**
   * What may be said of the whole drive.
   */
  inputs: RideInput[];
}

/**
 * Gear is one way through a drive.
 */
export interface ToldGear {
  /**
   * Teeth.
   */
  ring: number;
  cog: number;
  /**
   * Gear of the gearbox at the cranks, from 1, lowest first; 0 without one.
   */
  front: number;
  /**
   * Gear of the hub, likewise.
   */
  rear: number;
  ratio: number;
  development_mm: number;
  development_plus: number;
  inches: number;
  /**
   * At the cadence liked.
   */
  speed_m_s: number;
  speed_plus: number;
  efficiency: number;
  efficiency_plus: number;
  /**
   * Left out by the rule.
   */
  crossed: boolean;
  /**
   * Its number in the order of shifting, from 1; 0: as good as another, or left out.
   */
  shift: number;
  /**
   * To the next in that order; none of the highest.
   */
  step_percent?: number;
  /**
   * More than one lever moves to the next.
   */
  double: boolean;
}

/**
 * GearOverlap is what two neighbouring rings have in common.
 */
export interface GearOverlap {
  /**
   * Teeth.
   */
  small: number;
  large: number;
  /**
   * Highest gear on the small ring over the lowest on the large one, less 100; below 0 is a gap.
   */
  percent: number;
  /**
   * On either ring that both reach.
   */
  gears: number;
}

/**
 * Loss is a quantity that a drive loses power by.
 */
export interface DriveLoss {
  key: string;
  label: string;
  unit: string;
  value: number;
  half_width: number;
  basis: string;
  typical: boolean;
  note?: string;
  /**
   * Of the power that is lost by it.
   */
  percent: number;
  percent_plus: number;
  /**
   * Where in the build it belongs, as a problem names it.
   */
  field: string;
  /**
   * With which one begins that somebody says.
   */
  said_basis: string;
}

/**
 * Measure is what is gained by measuring one of the figures that an answer rests on.
 */
export interface MeasureFirst {
  key: string;
  label: string;
  /**
   * Of the answer's variance.
   */
  share: number;
  /**
   * ± of the answer once this and all above it are known exactly, in its unit.
   */
  then_plus: number;
}

/**
 * Input is a figure that went into a reckoning, as it was taken.
 */
export interface RideInput {
  key: string;
  label: string;
  unit: string;
  value: number;
  half_width: number;
  basis: string;
  /**
   * Nobody said it: common practice, no source.
   */
  typical: boolean;
  /**
   * Where in the document it belongs, as a problem names it: keys and numbers in lists, with dots between. A field of no build and no rider is the document's. Empty where it cannot be said.
   */
  field?: string;
  /**
   * Id.
   */
  build?: string;
  /**
   * Id.
   */
  rider?: string;
  /**
   * With which one begins that somebody says.
   */
  said_basis?: string;
  /**
   * A number with neither ± nor basis.
   */
  bare?: boolean;
  /**
   * Of a choice: the option taken.
   */
  text?: string;
  /**
   * Of a choice; none is a figure.
   */
  options?: InputOption[];
}

/**
 * Option is something that may be chosen.
 */
export interface InputOption {
  value: string;
  label: string;
}

/**
 * A bike to begin with, and what else it could have been made of.
 */
export interface NewBike {
  frames: NewBikeOption[];
  /**
   * Id of the one that was chosen.
   */
  frame: string;
  sizes: NewBikeOption[];
  /**
   * Id of the one that was chosen.
   */
  size: string;
  /**
   * Diameters of the bead seats of the wheels that this size comes for, in mm, the usual one first.
   */
  wheels: number[];
  /**
   * The one that was chosen.
   */
  wheel: number;
  /**
   * In the order in which they are chosen.
   */
  areas: NewBikeArea[];
  /**
   * Lines of its list.
   */
  parts: number;
  /**
   * What it weighs.
   */
  total: Figure;
  geometry: Length[];
  /**
   * What to look at.
   */
  remarks: string[];
  /**
   * With that bike as its only build.
   */
  document: Doc;
}

/**
 * Something that can be chosen.
 */
export interface NewBikeOption {
  id: string;
  /**
   * In the language of the session.
   */
  name: string;
  /**
   * Says more.
   */
  text: string;
}

/**
 * An area with the sets that can be chosen for it.
 */
export interface NewBikeArea {
  area: "drivetrain" | "front-wheel" | "rear-wheel" | "brakes" | "cockpit" | "lighting" | "racks" | "mudguards";
  /**
   * Id of a set; empty for none.
   */
  chosen: string;
  /**
   * A bike can go without.
   */
  optional: boolean;
  sets: NamedSet[];
}

/**
 * A set by its name.
 */
export interface NamedSet {
  id: string;
  /**
   * In the language of the session.
   */
  name: string;
}

/**
 * What a bike is to be made of. What is left out, unknown, or does not go with the rest is chosen as is usual.
 */
export interface NewBikeChoice {
  /**
   * Id of a sort of frame.
   */
  frame?: string;
  /**
   * Id of a size.
   */
  size?: string;
  /**
   * Diameter of the bead seats of the wheels, in mm.
   */
  wheel?: number;
  /**
   * Ids of sets by area.
   */
  sets?: {
    [k: string]: string;
  };
}

/**
 * What is left to weigh of a build on a kitchen scale.
 */
export interface WeighPlan {
  /**
   * Its id.
   */
  build: string;
  /**
   * Of the build ready to ride, without a load; so are all masses.
   */
  total_g: number;
  /**
   * ±, of that.
   */
  plus_g: number;
  /**
   * ± of the total once everything is weighed.
   */
  least_g: number;
  /**
   * So much of the total is weighed.
   */
  weighed_g: number;
  /**
   * That of the total, 0 to 1.
   */
  weighed_share: number;
  /**
   * Share of the total's variance that is owed to what is not weighed, 0 to 1.
   */
  doubt_share: number;
  /**
   * Lines of the list.
   */
  parts: number;
  /**
   * What is not weighed yet, in the order of the list.
   */
  left: LeftToWeigh[];
  /**
   * Their ids, what narrows the total most first.
   */
  first: string[];
}

/**
 * A part that is not weighed yet.
 */
export interface LeftToWeigh {
  id: string;
  /**
   * Of all its pieces.
   */
  mass_g: number;
  /**
   * How far that may be off.
   */
  plus_g: number;
  /**
   * ± of the total once this part is weighed.
   */
  then_g: number;
}

/**
 * What a kitchen scale shows of a part.
 */
export interface OnScale {
  /**
   * Its id.
   */
  part: string;
  /**
   * Ids of the parts that lie on the scale with it.
   */
  with?: string[];
  /**
   * What the scale shows.
   */
  typed: string;
  /**
   * Of a bare number, as for parseMass.
   */
  unit: string;
  /**
   * What the scale reads to.
   */
  step_g: number;
  /**
   * Of the bowl or bag that is weighed with it; 0 for none, or for one that the scale takes off itself.
   */
  tare_g: number;
  /**
   * One piece is on the scale, where the line has several.
   */
  one: boolean;
}

/**
 * What a reading says of one part.
 */
export interface Share {
  /**
   * Its id.
   */
  part: string;
  /**
   * Of one piece.
   */
  mass_g: number;
  /**
   * ± of that: of the scale's step, and with a tare that of two readings.
   */
  half_width_g: number;
  joint?: Joint;
}

/**
 * What that says of the part.
 */
export interface WeighTaken {
  /**
   * Of all that lay on the scale, the part that was asked for first.
   */
  shares: Share[];
  basis: Basis;
  /**
   * Of what was on the scale, without the tare.
   */
  net_g: number;
  /**
   * ± of that.
   */
  plus_g: number;
  /**
   * It lies outside what the list said, both ± counted.
   */
  outside: boolean;
  /**
   * What was on the scale, by the list.
   */
  was_g: number;
  /**
   * ± of that.
   */
  was_plus_g: number;
  /**
   * It weighs under a fifth, or over five times, of what such a part does.
   */
  unusual?: "light" | "heavy";
  /**
   * And this is what one does.
   */
  usual_g?: number;
}

/**
 * Where the search for the best packing of a load stands.
 */
export interface Pack {
  /**
   * Its id.
   */
  build: string;
  /**
   * Its id.
   */
  load: string;
  /**
   * Whether the search can go on.
   */
  running: boolean;
  /**
   * Whether what was found is proven to be the best, within the tolerance, and to take the fewest moves of all that are as good.
   */
  done: boolean;
  /**
   * Whether the first of that is proven: only fewer moves are looked for.
   */
  proved: boolean;
  /**
   * Whether no packing that is as good, within the tolerance, moves fewer things. Without it a search that is done has given up looking.
   */
  fewest: boolean;
  /**
   * How many things the best packing so far moves from one bag to another: of goods that may be split each piece, of others all together.
   */
  moved: number;
  /**
   * Parts of the search that were looked at.
   */
  nodes: number;
  /**
   * Aim of the best packing so far; null while there is none.
   */
  incumbent: number | null;
  /**
   * No packing is better than that.
   */
  bound: number | null;
  /**
   * Between the two.
   */
  gap: number | null;
  /**
   * Done is when the gap is within this.
   */
  tolerance: number;
  /**
   * The best packing so far; null while there is none.
   */
  assignment: Assigned[] | null;
  /**
   * What that changes in the document, bag by bag, in an order that can be done: there is room for what arrives.
   */
  moves: PackingMove[];
  before: Terms;
  /**
   * Of the best packing so far; null while there is none.
   */
  after: Terms | null;
  /**
   * After minus before; null while there is no packing.
   */
  change: TermsChange | null;
  /**
   * Names of the bags that have no permitted load.
   */
  unrated: string[];
  /**
   * Why there is no packing.
   */
  shortage?: Shortage;
}

/**
 * By how much the terms differ.
 */
export interface TermsChange {
  aim: number;
  front_share: number;
  height_mm: number;
  aside_mm: number;
  radius_mm: number;
  steered_kg_m2: number;
}

/**
 * So many pieces of a good in a bag.
 */
export interface Assigned {
  /**
   * Good id.
   */
  good: string;
  quantity: number;
  /**
   * Bag id.
   */
  bag: string;
}

/**
 * What to take out of which bag, and where to put it.
 */
export interface PackingMove {
  /**
   * Good id.
   */
  good: string;
  name: string;
  quantity: number;
  /**
   * Bag id; nothing for what was not packed.
   */
  from: string;
  /**
   * Bag id; nothing for what is not packed any more.
   */
  to: string;
  /**
   * Set aside until there is room for it, without a bag to put it in; or, without a bag to take it from, taken from there.
   */
  aside?: boolean;
}

/**
 * What an aim judges, and what each of them costs.
 */
export interface Terms {
  /**
   * All costs together; less is better.
   */
  aim: number;
  /**
   * Share on the front wheel.
   */
  front_share: number;
  /**
   * Of the centre of mass.
   */
  height_mm: number;
  /**
   * To the left.
   */
  aside_mm: number;
  /**
   * Radius of gyration in pitch and yaw about the bike's own centre of mass.
   */
  radius_mm: number;
  /**
   * Moment of inertia about the steering axis of the bags and goods that turn with the bar.
   */
  steered_kg_m2: number;
  costs: Costs;
  /**
   * Every limit.
   */
  keeps: boolean;
  /**
   * The limit that it does not keep.
   */
  breaks?: string;
  /**
   * The limits that it keeps only within the doubt of the masses, in sentences.
   */
  perhaps?: string;
}

/**
 * What the terms of an aim cost.
 */
export interface Costs {
  front: number;
  low: number;
  balance: number;
  middle: number;
  steered: number;
}

/**
 * Why goods do not fit.
 */
export interface Shortage {
  /**
   * A sentence for people.
   */
  message: string;
  /**
   * Good ids.
   */
  goods: string[];
  /**
   * Bag ids.
   */
  bags: string[];
}

/**
 * What to pack; what is not there is that of the document's first side.
 */
export interface PackOptions {
  /**
   * Its id.
   */
  build?: string;
  /**
   * Its id.
   */
  load?: string;
  aim?: Aim;
  /**
   * How far from the best is good enough, in units of the aim.
   */
  tolerance?: number;
}

/**
 * What was found in a list of parts, as spreadsheets write them.
 */
export interface Table {
  /**
   * The headers, or a name for each column.
   */
  columns: string[];
  /**
   * Field to column, from 0, as used.
   */
  guess: {
    [k: string]: number;
  };
  /**
   * Whether the first row is one.
   */
  header: boolean;
  /**
   * It is no table, but a list as people write one down; its items count as lines.
   */
  note: boolean;
  /**
   * Between the cells; empty when there was nothing to separate.
   */
  separator: string;
  /**
   * That the list was in.
   */
  encoding: "UTF-8" | "UTF-16" | "Windows-1252";
  /**
   * That masses without a unit in their cell were read in.
   */
  mass_unit: ListMassUnit;
  /**
   * How that is known: the column says it, every mass has its own, the options say it, in it the parts weigh what such parts do, or nothing tells.
   */
  unit_by: "header" | "cells" | "asked" | "parts" | "usual";
  /**
   * Rows that are not empty, without the header.
   */
  rows: number;
  /**
   * The good rows, in their order; two of what goes one to each end.
   */
  parts: Part[];
  /**
   * Those of the parts, by index, of which neither the list nor the name says what and where they are.
   */
  unplaced: number[];
  /**
   * Of all parts.
   */
  total_g: number;
  /**
   * Of those that are not unplaced.
   */
  placed_g: number;
  /**
   * Rows of which it is open at which end of the bike they are.
   */
  ends: EndRow[];
  /**
   * Rows that look like sums of others.
   */
  sums: SumRow[];
  /**
   * Rows that cannot be read.
   */
  bad: BadRow[];
  /**
   * With the list as a whole.
   */
  problems: Problem[];
}

/**
 * A row that is no part.
 */
export interface BadRow {
  /**
   * Where it begins, from 1.
   */
  line: number;
  /**
   * As it stands, shortened.
   */
  text: string;
  /**
   * What is wrong with it.
   */
  why: string;
}

/**
 * A unit that the masses of a list may be in.
 */
export type ListMassUnit = "g" | "kg" | "lb" | "oz";
export const listMassUnitValues = ["g", "kg", "lb", "oz"] as const satisfies readonly ListMassUnit[];

/**
 * Where the pieces of a row go: one to each end of the bike, or all to one.
 */
export type End = "each" | "front" | "rear";
export const endValues = ["each", "front", "rear"] as const satisfies readonly End[];

/**
 * A row of something that a bike has at each end, where the list does not say which end is meant.
 */
export interface EndRow {
  /**
   * Where it begins, from 1.
   */
  line: number;
  /**
   * Of the parts.
   */
  name: string;
  /**
   * How many there are.
   */
  pieces: number;
  /**
   * How many of them go there.
   */
  front: number;
  /**
   * How many of them go there.
   */
  rear: number;
  /**
   * Where they go.
   */
  choice: End;
  /**
   * Whether they can go to both ends.
   */
  each: boolean;
}

/**
 * A row that looks like a sum of other rows.
 */
export interface SumRow {
  /**
   * Where it begins, from 1.
   */
  line: number;
  /**
   * What it is called; may be empty.
   */
  name: string;
  /**
   * Of all its pieces; 0 when it has none.
   */
  mass_g: number;
  /**
   * The first and the last line that it sums; empty when it is called a sum.
   */
  of: number[];
  /**
   * Whether it could be a part.
   */
  can: boolean;
  /**
   * Whether it is taken for one.
   */
  taken: boolean;
}

/**
 * What is known about a list; what is not there is found out.
 */
export interface CSVOptions {
  /**
   * Field to column, from 0.
   */
  columns?: {
    [k: string]: number;
  };
  /**
   * Of masses without a unit in cell or header; found out when absent.
   */
  mass_unit?: ListMassUnit;
  /**
   * Line of an endRow to where its pieces go.
   */
  ends?: {
    [k: string]: End;
  };
  /**
   * Lines of sumRows that are parts.
   */
  sums?: number[];
  /**
   * Every row is one part: no sums are looked for, and nothing goes to both ends.
   */
  as_is?: boolean;
  /**
   * Ids of parts that are in use.
   */
  taken?: string[];
}

/**
 * What there is to know of a photograph of a bike beside its points of colour. Places in it are px from its upper left corner.
 */
export interface Photograph {
  /**
   * What a build of the document calls it.
   */
  id: string;
  /**
   * Of the picture, px.
   */
  width: number;
  /**
   * Likewise.
   */
  height: number;
  /**
   * Each of another thing.
   */
  marks: PhotographMark[];
  /**
   * What gives the scale: the wheelbase, or the tread of the rear tyre, whose size the build says.
   */
  scale: "wheelbase" | "wheel";
  /**
   * As measured; 0 is that of the build's figures.
   */
  wheelbase_mm: number;
  /**
   * From the camera to the bike.
   */
  distance_m: number;
  /**
   * How far a mark may be off, each way, on the bike.
   */
  within_mm: number;
  /**
   * In a file of a document: a JPEG file in base64.
   */
  picture?: string;
}

/**
 * Where in the picture something is.
 */
export interface PhotographMark {
  of: Marked;
  /**
   * px.
   */
  x: number;
  /**
   * px, downwards.
   */
  y: number;
}

/**
 * The ends of both axles, the middle of the bottom bracket, where the steering axis leaves the head tube at both ends, the middle of the saddle's top, the tread of the rear tyre anywhere around.
 */
export type Marked = "rear_axle" | "front_axle" | "bottom_bracket" | "head_top" | "head_bottom" | "saddle" | "tread";
export const markedValues = ["rear_axle", "front_axle", "bottom_bracket", "head_top", "head_bottom", "saddle", "tread"] as const satisfies readonly Marked[];

/**
 * How large a picture is, and how large it is kept.
 */
export interface PictureSize {
  /**
   * px.
   */
  width: number;
  /**
   * px.
   */
  height: number;
  /**
   * How large it is kept, px.
   */
  keep: {
    width: number;
    height: number;
  };
}

/**
 * What a photograph says of the frame of a build, standing on level ground with its suspension at full length.
 */
export interface PhotographReading {
  /**
   * That the scale makes.
   */
  wheelbase_mm: number;
  /**
   * By what: a measured wheelbase, that of the build's figures, or the rear wheel.
   */
  scaled: "measured" | "figures" | "wheel";
  /**
   * What a px is on the bike.
   */
  pixel_mm: number;
  /**
   * Those that what is marked gives.
   */
  figures: PhotographFigure[];
  /**
   * Of the scale, where wheelbase and wheel are both known.
   */
  check: PhotographCheck | null;
}

/**
 * A figure that was read off a photograph.
 */
export interface PhotographFigure {
  /**
   * What the document calls it, or what the geometry of a report does.
   */
  key:
    | "frame.stack_mm"
    | "frame.reach_mm"
    | "frame.head_tube_mm"
    | "frame.head_angle_deg"
    | "frame.seat_angle_deg"
    | "frame.chainstay_mm"
    | "frame.bb_drop_mm"
    | "fork.length_mm"
    | "fork.offset_mm"
    | "saddle.height_mm"
    | "front_centre"
    | "wheelbase";
  /**
   * It can be taken into the document: its key is that of a figure there.
   */
  taken: boolean;
  /**
   * Of all that follows.
   */
  unit: "mm" | "deg";
  /**
   * As fine as it may be entered.
   */
  value: number;
  /**
   * ±, of that.
   */
  plus: number;
  /**
   * What the build has.
   */
  now: number;
  /**
   * The build's is outside of what was read.
   */
  differs: boolean;
}

/**
 * The scale by the wheelbase held against that by the rear wheel.
 */
export interface PhotographCheck {
  /**
   * By how much larger the wheelbase makes everything.
   */
  excess_percent: number;
  /**
   * ±, of that.
   */
  plus: number;
  /**
   * It is within that of nothing.
   */
  agrees: boolean;
}

/**
 * What a picture of the bike is to show.
 */
export interface View {
  /**
   * Build id.
   */
  build: string;
  /**
   * Id of the build behind it; empty for none.
   */
  ghost: string;
  /**
   * A side of the comparison in place of the build.
   */
  at?: "a" | "b";
  /**
   * A side of the comparison in place of the ghost.
   */
  ghost_at?: "a" | "b";
  /**
   * Where it is seen from.
   */
  side: "side" | "rear";
  dark: boolean;
  /**
   * Part id.
   */
  selected: string;
  dimensions: boolean;
  /**
   * What turns with the bar, trail and flop.
   */
  steering?: boolean;
  labels: boolean;
  /**
   * What the marks mean.
   */
  key: boolean;
  units: Units;
  /**
   * CSS pixels.
   */
  width?: number;
  /**
   * CSS pixels.
   */
  height?: number;
  /**
   * To lie behind the build, without its picture.
   */
  photograph?: Photograph;
  /**
   * Ids of builds to be drawn in a row, to one scale, in place of the build and the one behind it; of an SVG.
   */
  row?: string[];
  /**
   * Below the picture, beyond its height; of an SVG.
   */
  caption?: Caption;
  /**
   * How wide an SVG says it is; its width when absent.
   */
  pixels?: number;
}

/**
 * Of the figures in a picture.
 */
export interface Units {
  mass: MassUnit;
  length: LengthUnit;
}

/**
 * What stands below a picture that leaves the page.
 */
export interface Caption {
  title: string;
  /**
   * As people write it.
   */
  date: string;
  /**
   * The main ones, and how they differ from the ghost's.
   */
  figures: boolean;
  /**
   * The keys of those figures; the main ones when absent or empty.
   */
  pick?: string[];
  /**
   * How the figures were obtained.
   */
  sources: boolean;
  /**
   * The date to tell with the sources.
   */
  on: string;
}

/**
 * How a drawing that is not of a build alone is to look.
 */
export interface Drawing {
  /**
   * CSS pixels.
   */
  width: number;
  /**
   * CSS pixels.
   */
  height: number;
  dark: boolean;
  units: Units;
}

/**
 * What a pointer on the picture did.
 */
export interface PointerDid {
  type: "down" | "move" | "up" | "cancel" | "leave" | "wheel";
  /**
   * Of the pointer: fingers are told apart by it.
   */
  id?: number;
  /**
   * Of the picture, px.
   */
  x?: number;
  /**
   * Of the picture, px.
   */
  y?: number;
  /**
   * Of a press: 0 main, 1 middle, 2 secondary.
   */
  button?: number;
  /**
   * Of a wheel, px downwards.
   */
  delta?: number;
  /**
   * Of a wheel that stands for a pinch on a touch pad: the factor; 0 otherwise.
   */
  pinch?: number;
  /**
   * mouse, touch or pen.
   */
  kind?: string;
  /**
   * ms
   */
  time?: number;
}

/**
 * What that means; empty for nothing.
 */
export interface Intent {
  /**
   * The pointer came onto this part; empty for none.
   */
  hover?: string;
  /**
   * This part was chosen; empty for none.
   */
  select?: string;
  move?: Move;
  /**
   * A CSS cursor.
   */
  cursor?: string;
  /**
   * The picture changed by the event itself.
   */
  redraw?: true;
}

/**
 * A part is to be moved. The moves of one drag add up.
 */
export interface Move {
  /**
   * Part id.
   */
  part: string;
  /**
   * Forward, left, up; of the right one of a pair y is outward.
   */
  by_mm: Place;
  /**
   * The drag has ended.
   */
  done: boolean;
}

/**
 * What evaluating a document gives. Masses are grams, lengths millimetres, inertia kg m². Axes: x forward, y to the rider's left, z up; the origin is on the ground straight below the rear axle.
 */
export interface Report {
  format: "steelyard-report";
  version: 1;
  /**
   * The program's version.
   */
  program: string;
  /**
   * What is wrong with the document.
   */
  problems: Problem[];
  /**
   * In the document's order.
   */
  builds: BuildReport[];
  /**
   * What show.compare sets against each other, with what each carries; the first build when it names none.
   */
  sides: Side[];
  /**
   * The second build of show.compare minus the first; absent unless both could be weighed.
   */
  difference?: Difference;
}

/**
 * Forward, left, up, mm.
 *
 * @minItems 3
 * @maxItems 3
 */
export type Place = [number, number, number];

/**
 * What a figure is of.
 */
export type FigureKey =
  | "total"
  | "centre_x"
  | "centre_y"
  | "centre_z"
  | "front_load"
  | "rear_load"
  | "front_share"
  | "sprung"
  | "unsprung_front"
  | "unsprung_rear"
  | "effective_front"
  | "effective_rear"
  | "ratio_front"
  | "ratio_rear"
  | "rotating_front"
  | "rotating_rear"
  | "rim_front"
  | "rim_rear"
  | "inertia_roll"
  | "inertia_pitch"
  | "inertia_yaw"
  | "inertia_xz"
  | "gyration_roll"
  | "gyration_pitch"
  | "gyration_yaw";
export const figureKeyValues = ["total", "centre_x", "centre_y", "centre_z", "front_load", "rear_load", "front_share", "sprung", "unsprung_front", "unsprung_rear", "effective_front", "effective_rear", "ratio_front", "ratio_rear", "rotating_front", "rotating_rear", "rim_front", "rim_rear", "inertia_roll", "inertia_pitch", "inertia_yaw", "inertia_xz", "gyration_roll", "gyration_pitch", "gyration_yaw"] as const satisfies readonly FigureKey[];

/**
 * The unit of a figure.
 */
export type FigureUnit = "g" | "mm" | "kg_m2" | "ratio";
export const figureUnitValues = ["g", "mm", "kg_m2", "ratio"] as const satisfies readonly FigureUnit[];

/**
 * A group of parts, or the rider.
 */
export type MassGroup =
  "frame" | "suspension" | "wheels" | "drivetrain" | "brakes" | "cockpit" | "seat" | "electrics" | "racks" | "bags" | "carried" | "other" | "rider";
export const massGroupValues = ["frame", "suspension", "wheels", "drivetrain", "brakes", "cockpit", "seat", "electrics", "racks", "bags", "carried", "other", "rider"] as const satisfies readonly MassGroup[];

/**
 * undecided: the difference is smaller than its ±; same: no difference and no doubt.
 */
export type Verdict = "more" | "less" | "undecided" | "same";
export const verdictValues = ["more", "less", "undecided", "same"] as const satisfies readonly Verdict[];

/**
 * A load beside its limit.
 */
export type LimitVerdict = "ok" | "near" | "over";
export const limitVerdictValues = ["ok", "near", "over"] as const satisfies readonly LimitVerdict[];

/**
 * Something wrong with the document.
 */
export interface Problem {
  /**
   * error: no figure without it; warning: looked odd, taken as it is.
   */
  severity: "error" | "warning";
  /**
   * Build id.
   */
  build?: string;
  /**
   * Part id.
   */
  part?: string;
  /**
   * The rider, by its id.
   */
  rider?: string;
  /**
   * The load, by its id.
   */
  load?: string;
  /**
   * The bag, by its id in that load.
   */
  bag?: string;
  /**
   * The good, by its id in that load.
   */
  good?: string;
  /**
   * The weigh-in, by its id.
   */
  weigh_in?: string;
  /**
   * The day, by its id.
   */
  day?: string;
  /**
   * Key as written in the document, with dots.
   */
  field?: string;
  /**
   * A sentence for people.
   */
  message: string;
}

/**
 * One build, weighed.
 */
export interface BuildReport {
  id: string;
  name: string;
  /**
   * Whether the build has figures; false when its frame figures have an error.
   */
  weighed: boolean;
  /**
   * False: a rigid fork, the tyre is the only spring in front.
   */
  front_sprung: boolean;
  /**
   * False: a rigid rear, the tyre is the only spring there.
   */
  rear_sprung: boolean;
  /**
   * Exact, from the frame figures, in the pose that is weighed.
   */
  geometry: Length[];
  /**
   * A figure that does not exist, such as a ratio to nothing, is left out.
   */
  figures: Figure[];
  /**
   * Mass by group of parts, heaviest first.
   */
  groups: GroupMass[];
  /**
   * Mass by what it is fixed to, heaviest first.
   */
  carriers: CarrierMass[];
  /**
   * The parts list, in the document's order.
   */
  parts: PartReport[];
  /**
   * Mass of the build's own parts by group, whatever the state and without a load; heaviest first.
   */
  own: GroupMass[];
  /**
   * What to weigh first for a better total, most useful first.
   */
  weigh: Advice[];
  /**
   * The build in words.
   */
  summary: string;
  /**
   * What it carries: a load's id, or nothing.
   */
  load: string;
  /**
   * How much of that is on it: what figures, groups, carriers, weigh and summary are of.
   */
  state: State;
  /**
   * And how much is left of what is used up.
   */
  supplies: Supplies;
}

/**
 * A geometric figure.
 */
export interface Length {
  key: "wheelbase" | "front_centre" | "rear_centre" | "trail" | "bb_height" | "head_angle" | "seat_angle" | "front_radius" | "rear_radius" | "pitch";
  unit: "mm" | "deg";
  value: number;
}

/**
 * A figure with its doubt.
 */
export interface Figure {
  key: FigureKey;
  unit: FigureUnit;
  value: number;
  /**
   * The true figure lies within ± this about 19 times in 20.
   */
  plus: number;
}

/**
 * A line of the parts list, weighed and placed.
 */
export interface PartReport {
  id: string;
  /**
   * All pieces.
   */
  mass_g: number;
  /**
   * The true figure lies within ± this about 19 times in 20.
   */
  plus_g: number;
  /**
   * The middle of a pair.
   */
  place_mm: Place;
  group: "frame" | "suspension" | "wheels" | "drivetrain" | "brakes" | "cockpit" | "seat" | "electrics" | "racks" | "bags" | "carried" | "other";
  /**
   * Share counted as unsprung.
   */
  unsprung: number;
  /**
   * Share of the total's variance.
   */
  doubt: number;
  /**
   * False: left out, see problems.
   */
  ok: boolean;
  /**
   * Not on the bike in the state shown, and not in its figures.
   */
  off?: boolean;
}

/**
 * What weighing one part type on a scale that reads to 1 g would do.
 */
export interface Advice {
  /**
   * Part id; in build B where both have it.
   */
  part: string;
  /**
   * Build id.
   */
  build: string;
  name: string;
  /**
   * ± of the figure now.
   */
  now_g: number;
  /**
   * ± once this and everything above it is weighed.
   */
  then_g: number;
  /**
   * Whether a verdict then falls; differences only.
   */
  settles: boolean;
}

/**
 * Build B minus build A.
 */
export interface Difference {
  /**
   * Build id.
   */
  a: string;
  /**
   * Build id.
   */
  b: string;
  /**
   * Figures that both builds have.
   */
  figures: Change[];
  /**
   * Largest first.
   */
  groups: GroupChange[];
  /**
   * Largest first; what is the same in both is left out.
   */
  parts: PartChange[];
  /**
   * To settle the difference in total mass.
   */
  weigh: Advice[];
  /**
   * What moved the centre of mass, furthest first; together they are the whole movement.
   */
  moved: Mover[];
  /**
   * The difference in words.
   */
  summary: string;
  /**
   * Load ids, or nothing.
   */
  load_a: string;
  load_b: string;
  state_a: State;
  state_b: State;
}

/**
 * One figure in both builds.
 */
export interface Change {
  key: FigureKey;
  unit: FigureUnit;
  a: number;
  b: number;
  /**
   * b minus a.
   */
  delta: number;
  /**
   * ± of the difference; what both builds share has cancelled.
   */
  plus: number;
  verdict: Verdict;
}

/**
 * The difference in one group of parts.
 */
export interface GroupChange {
  key: MassGroup;
  a_g: number;
  b_g: number;
  delta_g: number;
  /**
   * The true figure lies within ± this about 19 times in 20.
   */
  plus_g: number;
}

/**
 * A part that is not the same in both builds.
 */
export interface PartChange {
  /**
   * changed: mass or type, and perhaps place; moved: place or carrier only.
   */
  what: "added" | "removed" | "changed" | "moved";
  /**
   * Part id in A.
   */
  a?: string;
  /**
   * Part id in B.
   */
  b?: string;
  name: string;
  group: MassGroup;
  delta_g: number;
  /**
   * The true figure lies within ± this about 19 times in 20.
   */
  plus_g: number;
  /**
   * For parts in both builds.
   */
  moved_mm: Place;
  /**
   * How far that is.
   */
  far_mm: number;
  /**
   * Its station and offset are the same; the bike's own figures moved it.
   */
  with_frame?: true;
  /**
   * How well its place is known in A, in mm either way; with within_b_mm, when they differ. A place that is exact is left out.
   */
  within_a_mm?: number;
  /**
   * Likewise in B.
   */
  within_b_mm?: number;
  /**
   * With carrier_b, when they differ.
   */
  carrier_a?: Carrier;
  carrier_b?: Carrier;
}

/**
 * By how much a part's change alone moved the centre of mass.
 */
export interface Mover {
  name: string;
  /**
   * Part id in A.
   */
  a?: string;
  /**
   * Part id in B.
   */
  b?: string;
  by_mm: Place;
}

/**
 * The mass of a group of parts.
 */
export interface GroupMass {
  key: MassGroup;
  mass_g: number;
  /**
   * The true figure lies within ± this about 19 times in 20.
   */
  plus_g: number;
  /**
   * Lines of the parts list.
   */
  count: number;
}

/**
 * The mass that a carrier holds.
 */
export interface CarrierMass {
  key: Carrier;
  mass_g: number;
  /**
   * The true figure lies within ± this about 19 times in 20.
   */
  plus_g: number;
  /**
   * Lines of the parts list.
   */
  count: number;
}

/**
 * A number with its doubt.
 */
export interface Value {
  value: number;
  plus: number;
}

/**
 * One side of the comparison: a build with what it carries. Everything from figures to summary is of the state shown.
 */
export interface Side {
  /**
   * Its id.
   */
  build: string;
  /**
   * Its id, or nothing.
   */
  load: string;
  /**
   * Who sits on it when ridden, or nothing.
   */
  rider: string;
  /**
   * Tells the sides apart.
   */
  name: string;
  /**
   * The one shown, or the fullest there is below it.
   */
  state: State;
  supplies: Supplies;
  /**
   * Whether what follows holds.
   */
  weighed: boolean;
  /**
   * As of a build.
   */
  figures: Figure[];
  /**
   * As of a build.
   */
  groups: GroupMass[];
  /**
   * As of a build.
   */
  carriers: CarrierMass[];
  /**
   * As of a build.
   */
  weigh: Advice[];
  summary: string;
  /**
   * Every state there is, at full, half and used-up supplies.
   */
  states: StateReport[];
  /**
   * Of the centre of mass, in the state shown.
   */
  path: Path[];
  /**
   * Bags and what is in them, at full supplies.
   */
  luggage_g: number;
  /**
   * Of the load, in its order.
   */
  bags: BagReport[];
  /**
   * Of the load, in its order.
   */
  goods: GoodReport[];
  body?: BodyReport;
  handling?: Handling;
  ratings?: Ratings;
}

/**
 * A state of the load.
 */
export interface StateReport {
  state: State;
  supplies: Supplies;
  /**
   * The main ones.
   */
  figures: Figure[];
}

/**
 * The way of the centre of mass while something is used up.
 */
export interface Path {
  supply: "all" | "water" | "food" | "fuel";
  /**
   * From all of it to nothing.
   */
  points: Stop[];
  /**
   * Mass that is used up from the first point to the last.
   */
  gone_g: number;
  moved_mm: Place;
  /**
   * How much larger the share of the front wheel is at the last point.
   */
  front_share_by: number;
}

/**
 * A point of a path.
 */
export interface Stop {
  /**
   * Share of the supply.
   */
  left: number;
  total_g: number;
  centre_mm: Place;
  front_share: number;
}

/**
 * A bag of the load with what is in it, at full supplies.
 */
export interface BagReport {
  id: string;
  /**
   * False: left out, see the problems.
   */
  ok: boolean;
  /**
   * Empty.
   */
  mass_g: number;
  plus_g: number;
  goods_g: number;
  goods_plus_g: number;
  /**
   * The bag with what is in it.
   */
  whole_g: number;
  whole_plus_g: number;
  pieces: number;
  /**
   * Of what is in it.
   */
  volume_l: number;
  place_mm: Place;
  headroom?: Headroom;
  room?: Headroom;
}

/**
 * A good of the load, at full supplies.
 */
export interface GoodReport {
  id: string;
  /**
   * False: left out, see the problems.
   */
  ok: boolean;
  /**
   * Nothing when it is not packed.
   */
  bag: string;
  /**
   * All pieces.
   */
  mass_g: number;
  plus_g: number;
  volume_l: number;
  place_mm: Place;
}

/**
 * The rider on the bike.
 */
export interface BodyReport {
  rider: string;
  posture: Posture;
  /**
   * Of the trunk over level; 90 is upright.
   */
  lean_deg: number;
  /**
   * With clothes and shoes.
   */
  mass_g: number;
  plus_g: number;
  centre_mm: Place;
  /**
   * Key of the words that say how this mass is counted.
   */
  note: string;
  /**
   * Head to foot.
   */
  segments: Segment[];
}

/**
 * A rigid piece of a body.
 */
export interface Segment {
  name: string;
  side: "left" | "right" | "";
  mass_g: number;
  from_mm: Place;
  to_mm: Place;
  /**
   * Its centre of mass.
   */
  place_mm: Place;
}

/**
 * What masses mean on the road, in the state shown when that has the load on it, in the fullest there is when not.
 */
export interface Handling {
  state: State;
  supplies: Supplies;
  /**
   * Bags and goods to that side of the middle.
   */
  left_g: number;
  right_g: number;
  /**
   * Lean that keeps the bike straight, to the right positive.
   */
  lean?: {
    key: "lean";
    unit: "deg";
    value: number;
    plus: number;
  };
  rebalance?: Rebalance;
  /**
   * By gradient.
   */
  braking: Braking[];
  climb?: Climb;
  /**
   * By gradient.
   */
  slopes: SlopeLoad[];
}

/**
 * What to move over for a bike that needs no lean.
 */
export interface Rebalance {
  mass_g: number;
  plus_g: number;
  from: "left" | "right";
  /**
   * Between the outermost bags of both sides.
   */
  apart_mm: number;
}

/**
 * What ends a braking: decelerations in g, at the grip of the climb.
 */
export interface Braking {
  /**
   * Rise over run, uphill positive.
   */
  gradient: number;
  /**
   * The rear wheel leaves the road.
   */
  lift: Value;
  /**
   * The tyres slip.
   */
  slip: Value;
  first: Value;
  /**
   * Whether slipping is first.
   */
  slips: boolean;
  /**
   * Whether that is beyond doubt.
   */
  decided: boolean;
}

/**
 * What ends a climb: gradients.
 */
export interface Climb {
  /**
   * Of the rear tyre on the road.
   */
  grip: number;
  /**
   * The front wheel leaves the road.
   */
  lift: Value;
  /**
   * The rear tyre slips; null when it never does.
   */
  slip: Value | null;
  first: Value;
  /**
   * Whether slipping is first.
   */
  slips: boolean;
  /**
   * Whether that is beyond doubt.
   */
  decided: boolean;
}

/**
 * What the wheels carry on a slope at steady speed, square to the road.
 */
export interface SlopeLoad {
  gradient: number;
  front_g: number;
  front_plus_g: number;
  rear_g: number;
  rear_plus_g: number;
}

/**
 * Loads against what makers permit, in the fullest state there is, at full supplies.
 */
export interface Ratings {
  state: State;
  /**
   * Whether one is counted.
   */
  rider: boolean;
  /**
   * One for each rating that is entered.
   */
  list: Headroom[];
}

/**
 * A load, or a volume, beside its limit.
 */
export interface Headroom {
  what:
    | "total"
    | "front-rack"
    | "rear-rack"
    | "fork-cage-left"
    | "fork-cage-right"
    | "down-tube-cage"
    | "front-tyre"
    | "rear-tyre"
    | "front-rim"
    | "rear-rim"
    | "bag"
    | "volume";
  bag?: string;
  name: string;
  unit: "g" | "l";
  load: number;
  plus: number;
  limit: number;
  /**
   * Below 0 the excess.
   */
  left: number;
  /**
   * Share of the limit.
   */
  used: number;
  verdict: LimitVerdict;
  /**
   * Of over: beyond doubt.
   */
  sure: boolean;
  /**
   * All of it as a sentence.
   */
  text: string;
}

/**
 * What a rough road does to the sides of a comparison.
 */
export interface RoadAnswer {
  road: RoadShown;
  sides: RoadSide[];
  /**
   * Of the second side minus the first; empty without a second.
   */
  difference: RoadChange[];
  /**
   * What of the difference is beyond doubt, a paragraph.
   */
  words?: string;
  /**
   * What the model leaves out, a paragraph.
   */
  left_out: string;
  caution: string;
}

/**
 * The road, and how it is ridden.
 */
export interface RoadShown {
  /**
   * Of ISO 8608; empty where the roughness was typed.
   */
  class: string;
  /**
   * Displacement spectral density at 0.1 cycle/m, 1e-6 m³.
   */
  roughness_cm3: number;
  speed_m_s: number;
  /**
   * Nobody said which road, or how fast.
   */
  typical: boolean;
  /**
   * In plain words.
   */
  label: string;
}

/**
 * What the road does to one side.
 */
export interface RoadSide {
  /**
   * Its id.
   */
  build: string;
  /**
   * Its id, empty for none.
   */
  load: string;
  name: string;
  state: State;
  /**
   * False: there is no such motion.
   */
  ok: boolean;
  /**
   * Why there is none.
   */
  why?: string;
  /**
   * What it means, a paragraph.
   */
  words?: string;
  /**
   * By field, for which there are no figures.
   */
  problems: Problem[];
  /**
   * The rider stands.
   */
  standing: boolean;
  set_state: State;
  settings: RoadSetting[];
  /**
   * What was taken of a rider who stands.
   */
  inputs: RideInput[];
  sketch?: RoadSketch;
  /**
   * In which tyres, springs and dampers can be said.
   */
  ways: RoadWays[];
  /**
   * By the makers of tyres and rims.
   */
  ratings: RoadRating[];
  /**
   * The slowest first.
   */
  modes: RoadMode[];
  /**
   * Share of the static load, root mean square.
   */
  tyre_load_rms_front?: number;
  tyre_load_rms_front_plus?: number;
  /**
   * Share of the static load, root mean square.
   */
  tyre_load_rms_rear?: number;
  tyre_load_rms_rear_plus?: number;
  /**
   * Root mean square, weighted by Wk of ISO 2631-1; at the pedals of a rider who stands.
   */
  saddle_wk_m_s2?: number;
  saddle_wk_m_s2_plus?: number;
  /**
   * Root mean square, fore-aft and vertical together, weighted by Wh of ISO 5349-1.
   */
  grips_wh_m_s2?: number;
  grips_wh_m_s2_plus?: number;
  /**
   * Along the steering axis, root mean square; absent of a rigid end.
   */
  travel_rms_front_mm?: number;
  travel_rms_front_mm_plus?: number;
  /**
   * At the axle, root mean square; absent of a rigid end.
   */
  travel_rms_rear_mm?: number;
  travel_rms_rear_mm_plus?: number;
  /**
   * All of them, rounded.
   */
  figures: RoomFigure[];
  /**
   * Where the model ends.
   */
  marks: RoadMark[];
  curves: RoadCurve;
}

/**
 * The bike in its pose from its right side, x forward and z up from the ground.
 */
export interface RoadSketch {
  /**
   * Rear and front: x and z of the axle, and the radius.
   *
   * @minItems 2
   * @maxItems 2
   */
  wheels_mm: [[number, number, number], [number, number, number]];
  lines: RoadLine[];
  /**
   * The middle of a rider's trunk; absent without a rider.
   *
   * @minItems 2
   * @maxItems 2
   */
  rider_mm?: [number, number];
}

/**
 * A line through points.
 */
export interface RoadLine {
  of: "frame" | "swingarm" | "fork" | "rider";
  points_mm: [number, number][];
}

/**
 * A value that was said of a bike, or taken for want of one. The fields are those of the build, in the same unit; what has none follows from the others.
 */
export interface RoadSetting {
  key: string;
  /**
   * In the language of the session.
   */
  label: string;
  unit: string;
  value: number;
  /**
   * Half-width.
   */
  plus: number;
  /**
   * Nobody said or measured it.
   */
  typical: boolean;
  /**
   * Where the value belongs in the build.
   */
  field?: string;
  /**
   * Where its half-width belongs.
   */
  plus_field?: string;
  /**
   * Fields to take out of the build for the typical value.
   */
  forget?: string[];
}

/**
 * The ways in which a thing of a bike can be said, such as its tyre by a pressure or by a test.
 */
export interface RoadWays {
  key: string;
  label: string;
  /**
   * The one in use.
   */
  way: string;
  ways: RoadWay[];
}

/**
 * One of them.
 */
export interface RoadWay {
  key: string;
  label: string;
  /**
   * What to write into the build for it; the motion stays about as it is.
   */
  write: RoadWrite[];
}

/**
 * A field of a build and what to write there.
 */
export interface RoadWrite {
  field: string;
  /**
   * Null takes the field out.
   */
  value: number | null;
}

/**
 * What a maker permits: a bound on what is set, no figure of the sum.
 */
export interface RoadRating {
  key: string;
  label: string;
  unit: string;
  /**
   * Where it belongs in the build.
   */
  field: string;
  /**
   * Null where nobody said.
   */
  value: number | null;
}

/**
 * A way in which the bike swings by itself.
 */
export interface RoadMode {
  key: "bounce" | "pitch" | "hop-front" | "hop-rear" | "body";
  label: string;
  /**
   * What moves.
   */
  words: string;
  /**
   * Of the undamped motion with the same pole.
   */
  frequency_hz: number;
  frequency_hz_plus: number;
  /**
   * Share of the critical one.
   */
  damping: number;
  damping_plus: number;
  shape: RoadShape;
}

/**
 * How far places go up in a mode, as real and imaginary part; the largest is 1. Travels are along the suspension.
 */
export interface RoadShape {
  /**
   * @minItems 2
   * @maxItems 2
   */
  frame_front: [number, number];
  /**
   * @minItems 2
   * @maxItems 2
   */
  frame_rear: [number, number];
  /**
   * @minItems 2
   * @maxItems 2
   */
  axle_front: [number, number];
  /**
   * @minItems 2
   * @maxItems 2
   */
  axle_rear: [number, number];
  /**
   * @minItems 2
   * @maxItems 2
   */
  rider: [number, number];
  /**
   * @minItems 2
   * @maxItems 2
   */
  fork_travel: [number, number];
  /**
   * @minItems 2
   * @maxItems 2
   */
  rear_travel: [number, number];
}

/**
 * Where a figure is at the end of what the model can say.
 */
export interface RoadMark {
  key: string;
  side: "front" | "rear" | "both";
  words: string;
  /**
   * SI.
   */
  value: number;
  /**
   * SI.
   */
  limit: number;
  /**
   * Keys of the figures that it bears on; none: on all.
   */
  figures: string[];
}

/**
 * A figure of both sides and its difference, with what it comes from.
 */
export interface RoadChange {
  key: string;
  label: string;
  unit: string;
  a: number;
  b: number;
  /**
   * b minus a.
   */
  delta: number;
  /**
   * ± of that, in which cancels what both have in common.
   */
  plus: number;
  verdict: Verdict;
  /**
   * Whether a body would tell: of accelerations.
   */
  felt?: "yes" | "no" | "undecided";
  causes?: RoadCause[];
}

/**
 * Something that differs and its part in the difference.
 */
export interface RoadCause {
  key: "part" | "springs" | "dampers" | "tyres" | "body" | "rest";
  label: string;
  /**
   * Id of the part in the first side.
   */
  a?: string;
  /**
   * Id of the part in the second side.
   */
  b?: string;
  /**
   * Its part in the difference, in the unit of the figure.
   */
  delta: number;
}

/**
 * Figures over speed.
 */
export interface RoadCurve {
  speeds_m_s: number[];
  figures: RoadFigure[];
}

/**
 * A figure at each of several speeds.
 */
export interface RoadFigure {
  key: string;
  label: string;
  unit: string;
  values: number[];
  plus: number[];
}

/**
 * What takes longer of a rough road: figures over speed, response, spectra, an obstacle.
 */
export interface RoadCurves {
  road: RoadShown;
  obstacle: ObstacleShown;
  sides: RoadCurveSide[];
  /**
   * Of the second side minus the first, over the speeds of the curves.
   */
  difference: RoadFigure[];
  /**
   * The differences at the obstacle.
   */
  over: RoomChange[];
  /**
   * What the side that does worse would need to do as well.
   */
  gains: RoadGain[];
  caution: string;
}

/**
 * A single obstacle.
 */
export interface ObstacleShown {
  form: string;
  label: string;
  height_mm: number;
  length_mm: number;
  typical: boolean;
  /**
   * That there are.
   */
  forms: ObstacleShape[];
}

/**
 * A form of an obstacle.
 */
export interface ObstacleShape {
  key: ObstacleForm;
  label: string;
  /**
   * That an obstacle has which takes it on.
   */
  length_mm: number;
}

/**
 * Curves of one side.
 */
export interface RoadCurveSide {
  build: string;
  load: string;
  name: string;
  ok: boolean;
  why?: string;
  curves: RoadCurve;
  response: RoadSpectrum;
  spectra: RoadSpectrum;
  over?: RoadOver;
}

/**
 * Figures over frequency.
 */
export interface RoadSpectrum {
  frequencies_hz: number[];
  figures: RoadSpectral[];
}

/**
 * A figure at each of several frequencies.
 */
export interface RoadSpectral {
  key: string;
  label: string;
  unit: string;
  values: number[];
}

/**
 * A ride over an obstacle.
 */
export interface RoadOver {
  ok: boolean;
  why?: string;
  problems: Problem[];
  figures: RoomFigure[];
  /**
   * How long the front tyre is off the ground.
   */
  off_front_s: number;
  off_rear_s: number;
  marks: RoadMark[];
  /**
   * Beside each are the traces; one of what the bike has not is empty.
   */
  times_s: number[];
  load_front_n: number[];
  load_rear_n: number[];
  saddle_m_s2: number[];
  rack_m_s2: number[];
  /**
   * How the road rises as the tyre feels it.
   */
  path_front_mm: number[];
  path_rear_mm: number[];
}

/**
 * What one side would need to do as well as the other in a figure.
 */
export interface RoadGain {
  /**
   * Of the figure.
   */
  key: string;
  build: string;
  load: string;
  lever: "pressure-front" | "pressure-rear" | "pressure-both" | "fork-load" | "sag-front" | "sag-rear";
  label: string;
  unit: string;
  /**
   * To be added: percent of today's pressure, g off the lower fork legs, mm of sag.
   */
  amount: number;
  words: string;
}

/**
 * A set of parts, as it is offered for a build.
 */
export interface SetLine {
  id: string;
  /**
   * The stretch of the bike that is changed as one.
   */
  area: "drivetrain" | "front-wheel" | "rear-wheel" | "brakes" | "cockpit" | "lighting" | "racks" | "mudguards";
  /**
   * In the language of the session.
   */
  name: string;
  /**
   * Of all its parts, as the catalogue knows them.
   */
  mass_g: number;
  /**
   * The build has what the set needs, and wheels of that size.
   */
  fits: boolean;
  /**
   * The build has it already.
   */
  on: boolean;
}

/**
 * What is to be changed.
 */
export interface Changing {
  /**
   * Its id.
   */
  build: string;
  /**
   * Its id.
   */
  set: string;
  /**
   * The name of a new build that the change is made to; the build itself stays as it is.
   */
  copy_as?: string;
  /**
   * Ids of parts that stay, though they would go.
   */
  keep?: string[];
  /**
   * Ids of parts that would stay, and go.
   */
  drop?: string[];
  /**
   * Places in comes of parts that do not come.
   */
  skip?: number[];
}

/**
 * A change, and the document after it.
 */
export interface Changed {
  /**
   * The id of the one that was changed.
   */
  build: string;
  goes: Going[];
  comes: Coming[];
  /**
   * Parts of the set's area that stay.
   */
  stays: Going[];
  /**
   * What does not go together.
   */
  remarks: string[];
  /**
   * What the build weighs without a load: a before the change, b after it. Absent where it cannot be weighed.
   */
  total?: Change;
  document: Doc;
}

/**
 * A part that goes or stays.
 */
export interface Going {
  id: string;
  name: string;
  /**
   * Of all pieces.
   */
  mass_g: number;
  basis: Basis;
  /**
   * It will be kept for later, since more is known of it than the catalogue says.
   */
  aside: boolean;
}

/**
 * A part that comes.
 */
export interface Coming {
  name: string;
  /**
   * Of all pieces.
   */
  mass_g: number;
  basis: Basis;
  /**
   * Where it was found: kept aside, in another build, in the catalogue.
   */
  origin: "aside" | "build" | "catalogue";
  /**
   * The name of that other build.
   */
  build?: string;
}

/**
 * What the builds of a document have in common, and what each lacks; and what the loads have in common.
 */
export interface Sharing {
  builds: SharingBuild[];
  loads: SharingLoad[];
}

export interface SharingBuild {
  id: string;
  /**
   * Those of which there is something to tell.
   */
  parts: SharedThing[];
  missing: MissingRole[];
}

export interface SharingLoad {
  id: string;
  /**
   * Those of which there is something to tell.
   */
  bags: SharedThing[];
  /**
   * Those of which there is something to tell.
   */
  goods: SharedThing[];
}

export interface SharedThing {
  id: string;
  /**
   * Ids of the other builds or loads in which it is the same.
   */
  also?: string[];
  better?: BetterKnown;
}

export interface BetterKnown {
  /**
   * The id of the build or load that knows it better.
   */
  in: string;
  /**
   * Of one piece.
   */
  mass_g: number;
  /**
   * The mass lies within ± this.
   */
  half_width_g: number;
  basis: Basis;
}

export interface MissingRole {
  /**
   * What build.without would hold.
   */
  role: string;
  /**
   * In the language of the session.
   */
  name: string;
}

/**
 * How the sides of a comparison steer and balance.
 */
export interface Steering {
  sides: SteeringSide[];
  /**
   * Of the second side minus the first; empty without a second.
   */
  difference: RoomChange[];
  /**
   * What is done with the bike in the hand.
   */
  inputs: RideInput[];
  /**
   * What of the difference is beyond doubt, a paragraph.
   */
  words?: string;
  caution: string;
}

/**
 * A figure of a side with its ±.
 */
export interface RoomFigure {
  key: string;
  /**
   * In the language of the session.
   */
  label: string;
  unit: string;
  value: number;
  /**
   * ± this, expanded with coverage factor 2.
   */
  plus: number;
}

/**
 * A figure of both sides and its difference.
 */
export interface RoomChange {
  key: string;
  /**
   * In the language of the session.
   */
  label: string;
  unit: string;
  a: number;
  b: number;
  /**
   * b minus a.
   */
  delta: number;
  /**
   * ± of that, in which cancels what both have in common.
   */
  plus: number;
  verdict: Verdict;
}

/**
 * How one side steers and balances.
 */
export interface SteeringSide {
  /**
   * Its id.
   */
  build: string;
  /**
   * Its id, empty for none.
   */
  load: string;
  name: string;
  state: State;
  /**
   * False: there is no equation of motion.
   */
  ok: boolean;
  /**
   * Why there is none.
   */
  why?: string;
  /**
   * What it means, a paragraph.
   */
  words?: string;
  /**
   * Above it the weave dies away by itself; absent where there is no such speed.
   */
  weave_m_s?: number;
  weave_plus?: number;
  /**
   * From it on the bike falls over slowly by itself; absent where there is no such speed.
   */
  capsize_m_s?: number;
  capsize_plus?: number;
  matrices?: Matrices;
  speeds: SteeringSpeed[];
  touring: TouringSpeed[];
  plain: RoomFigure[];
  /**
   * Without the rider.
   */
  hand: RoomFigure[];
  stand?: StandRest;
}

/**
 * Of the equation M q'' + v C1 q' + (g K0 + v² K2) q = 0, q = (lean, steer), in full precision.
 */
export interface Matrices {
  /**
   * Rows of two, lean before steer.
   *
   * @minItems 2
   * @maxItems 2
   */
  m: [[number, number], [number, number]];
  /**
   * Rows of two, lean before steer.
   *
   * @minItems 2
   * @maxItems 2
   */
  c1: [[number, number], [number, number]];
  /**
   * Rows of two, lean before steer.
   *
   * @minItems 2
   * @maxItems 2
   */
  k0: [[number, number], [number, number]];
  /**
   * Rows of two, lean before steer.
   *
   * @minItems 2
   * @maxItems 2
   */
  k2: [[number, number], [number, number]];
}

/**
 * A speed with its four eigenvalues.
 */
export interface SteeringSpeed {
  v_m_s: number;
  /**
   * Real and imaginary part, 1/s.
   *
   * @minItems 4
   * @maxItems 4
   */
  eigenvalues: [[number, number], [number, number], [number, number], [number, number]];
  /**
   * Of what grows fastest, or dies away slowest.
   */
  growth_1_s: number;
}

/**
 * What a disturbance does at a speed of touring.
 */
export interface TouringSpeed {
  key: string;
  label: string;
  v_m_s: number;
  /**
   * Of what grows fastest, or dies away slowest.
   */
  growth_1_s: number;
  growth_plus: number;
  /**
   * In which it doubles or halves; 0 where that is not decided.
   */
  time_s: number;
  verdict: Verdict;
  /**
   * Of the weave.
   */
  period_s?: number;
  period_plus?: number;
  /**
   * Of the weave, as a share of critical; below 0 it grows.
   */
  damping?: number;
  damping_plus?: number;
}

/**
 * How the bike rests on its stand, without the rider.
 */
export interface StandRest {
  /**
   * Its place was not typed.
   */
  typical: boolean;
  /**
   * It falls over on level ground.
   */
  over: boolean;
  figures: RoomFigure[];
  /**
   * Of its foot, ahead of the rear contact.
   */
  forward_mm: number;
  /**
   * Of its foot, beside the wheels.
   */
  out_mm: number;
  /**
   * Of the bike.
   */
  lean_deg: number;
}

/**
 * What it does to the steering of the sides to hang their bags elsewhere.
 */
export interface Placements {
  sides: PlacementSide[];
}

export interface PlacementSide {
  build: string;
  load: string;
  name: string;
  bags: BagPlaces[];
}

export interface BagPlaces {
  /**
   * Its id.
   */
  bag: string;
  name: string;
  /**
   * With what is in it.
   */
  mass_g: number;
  /**
   * Of the inertia about the steering axis that it makes now.
   */
  share: number;
  places: BagPlace[];
}

export interface BagPlace {
  key: "bar" | "fork" | "front-rack" | "rear-rack" | "frame";
  label: string;
  /**
   * Where a bag of the document would be.
   */
  station: string;
  carrier: Carrier;
  /**
   * It hangs there now.
   */
  here: boolean;
  /**
   * a is now, b is there.
   */
  figures: RoomChange[];
}

/**
 * Stretches are those of a day that a track gives, with its heights smoothed and its points thinned.
 */
export interface TrackStretches {
  stretches: Stretch[];
  length_m: number;
  ascent_m: number;
  /**
   * That were read.
   */
  points: number;
}

/**
 * Track is where a way leads: either points of distance along the road and height, m, or places of latitude and longitude, degrees, and height, m; or lines that somebody wrote, each of a length in km, a slope in per cent and, if it has one, a surface. It is not kept.
 */
export interface Track {
  points?: [number, number][];
  places?: [number, number, number][];
  /**
   * Of all stretches that have none of their own.
   */
  surface?: Surface;
  lines?: string;
}

/**
 * What comes out of a weigh-in: what the scale says of the bike, beside what the parts list says. Figures have the keys and units of a report.
 */
export interface Weighed {
  /**
   * Its id.
   */
  weigh_in: string;
  /**
   * Build id.
   */
  build: string;
  /**
   * Load id, or nothing.
   */
  load: string;
  state: State;
  problems: Problem[];
  /**
   * The scales of the weigh-in, and after them those that readings are of by a resolution alone.
   */
  scales: UsedScale[];
  stand: Stand;
  /**
   * What the scale should show.
   */
  expected: Expected[];
  /**
   * What the scale says; absent while there are not enough readings.
   */
  measured?: Measured;
  /**
   * What the parts list says.
   */
  paper?: OnPaper;
  /**
   * Whether the two agree.
   */
  agreement?: Agreement;
  /**
   * What would make them, best first.
   */
  explanations: Explanation[];
  /**
   * That in words.
   */
  explained: string;
  /**
   * Masses that meet list and readings best.
   */
  adjusted: Adjusted[];
  /**
   * How high to raise a wheel.
   */
  block?: Block;
}

/**
 * A scale, with what is taken for granted of it.
 */
export interface UsedScale {
  /**
   * Empty for one that is known by its resolution alone.
   */
  id: string;
  name: string;
  /**
   * Of its display.
   */
  step_g: number;
  /**
   * The share of a load that it may be off by.
   */
  calibration_share: number;
  /**
   * Its readings, from 0.
   */
  readings: number[];
}

/**
 * What wheelbase and radii may be off by on the scale, stated or taken for granted.
 */
export interface Stand {
  wheelbase_within_mm: number;
  radius_within_mm: number;
}

/**
 * The doubt that makes most of the plus-minus of a figure.
 */
export interface Limit {
  /**
   * Of the figure.
   */
  key: string;
  unit: string;
  doubt: "steps" | "placing" | "calibration" | "wheelbase" | "radii" | "level" | "block";
  /**
   * Of the figure's variance, 0 to 1.
   */
  share: number;
  /**
   * The figure's plus-minus.
   */
  plus: number;
  /**
   * What would be left of it without this doubt.
   */
  else: number;
}

/**
 * What the scale should show at a reading if the list is right.
 */
export interface Expected {
  /**
   * The reading, from 0.
   */
  line: number;
  mass_g: number;
  plus_g: number;
}

/**
 * What the scale says.
 */
export interface Measured {
  figures: Figure[];
  /**
   * Whether the readings tell the height of the centre of mass.
   */
  has_height: boolean;
  check: Check;
  readings: Residual[];
  /**
   * In words.
   */
  text: string;
  /**
   * The doubt that makes most of the plus-minus of each figure.
   */
  limits: Limit[];
}

/**
 * The readings among themselves.
 */
export interface Check {
  chi_square: number;
  /**
   * Degrees of freedom.
   */
  freedom: number;
  /**
   * How likely as much or more is by chance.
   */
  p: number;
  unlikely: boolean;
  /**
   * By which factor the doubt was widened for it.
   */
  widened: number;
}

/**
 * What is left of a reading.
 */
export interface Residual {
  /**
   * The reading, from 0.
   */
  line: number;
  by_g: number;
  /**
   * In units of its standard uncertainty.
   */
  score: number;
}

/**
 * What the parts list says.
 */
export interface OnPaper {
  figures: Figure[];
}

/**
 * Whether list and scale agree.
 */
export interface Agreement {
  chi_square: number;
  /**
   * Degrees of freedom.
   */
  freedom: number;
  /**
   * How likely as much or more is by chance.
   */
  p: number;
  agrees: boolean;
  /**
   * contradict: the readings contradict each other; the four after that: what explains a difference.
   */
  verdict: "agree" | "contradict" | "weights" | "missing" | "surplus" | "either" | "unexplained" | "no-paper";
  figures: Agreeing[];
  /**
   * In words.
   */
  text: string;
}

/**
 * A figure of both.
 */
export interface Agreeing {
  key: FigureKey;
  unit: FigureUnit;
  paper: number;
  paper_plus: number;
  measured: number;
  measured_plus: number;
  /**
   * Measured minus paper.
   */
  delta: number;
  /**
   * ± of the difference.
   */
  plus: number;
  verdict: "agree" | "more" | "less";
}

/**
 * What would make list and scale agree.
 */
export interface Explanation {
  /**
   * part: its mass is another; missing: a mass that is not on the list, or below 0 not on the bike.
   */
  what: "part" | "missing";
  /**
   * A line of the list, named as in a report.
   */
  part?: string;
  /**
   * Where a missing mass would be.
   */
  station?: string;
  name: string;
  by_g: number;
  plus_g: number;
  /**
   * As far as the half-width goes.
   */
  limit?: boolean;
  /**
   * How well a missing mass there fits.
   */
  p?: number;
}

/**
 * A mass that meets list and readings best.
 */
export interface Adjusted {
  list: "parts" | "bags" | "goods" | "riders";
  /**
   * Build or load id; nothing for a rider.
   */
  owner: string;
  id: string;
  name: string;
  /**
   * Of one piece.
   */
  mass_g: number;
  half_width_g: number;
  basis: Basis;
  was_g: number;
  was_half_width_g: number;
}

/**
 * How high to raise a wheel.
 */
export interface Block {
  height_mm: number;
  /**
   * Within which the height of the centre is then known.
   */
  plus_mm: number;
  enough: boolean;
}

/** What a document, its report, kinds and stations look like. */
export const contract = "eb4b51b7108d1a4b";
