// Keeping the document in the browser. One record in IndexedDB holds the text;
// each save checks, in its transaction, that no other window has saved since,
// so that two windows on one document do not overwrite each other unasked. A
// save is due soon after an edit, however fast the next ones follow: a page that
// dies takes less than a second of work along. What is still unsaved when the
// page goes away is put into localStorage, which can be written at once, and
// taken up at the next start.

import { ahead, besideRecord, done, inTime, openDatabase, readRecords, record, request, seenRecord, table } from "./database.ts";

// Draft is what is being typed into a field, as long as it differs from what
// the document holds.
export interface Draft {
  text: string;
  why: string; // what is wrong with it
  base: string; // what the field held before
}

export type Drafts = [key: string, draft: Draft][];

// Held is what there is to keep: the document, and what is typed into fields
// and makes no sense yet.
export interface Held {
  text: string;
  drafts?: Drafts;
}

export interface Kept extends Held {
  rev: number;
  by: string; // the window that wrote it
  at: number; // ms since 1970
  made?: string; // the contract by which it is written: who knows that one needs no reader
}

// Sight is what the page showed of a document: its report, the picture, and what
// else takes the program to know.
export interface Sight {
  report: unknown;
  kinds: unknown;
  stations: unknown;
  picture: string; // SVG
  language: string;
}

// Seen is a sight of what is kept.
export interface Seen extends Sight {
  made: string; // the contract of the report
  rev: number; // of the record that it is a sight of
  at: number; // ms since 1970
}

// Found is what a start finds. Odd is what was kept and is no record of ours;
// beside is what another window held when it and this one had parted ways.
export interface Found {
  text: string | null;
  drafts: Drafts;
  odd: unknown;
  beside: string | null;
  plain: boolean; // the text is as this page writes it
  seen: Seen | null; // what a page of this contract showed of the record
  current: boolean; // seen is of this very text
}

export type Keeping = "kept" | "pending" | "conflict" | "failed";

const seenMark = "seen"; // preference, since it can be asked at once
const unreadable = "unreadable"; // the beginning of the keys of what was set aside
const mostAside = 5;
const journal = "steelyard.journal";
const journalLimit = 2_000_000; // characters; browsers refuse about 5 million

const pause = 300; // ms without an edit, after which it is kept
const longest = 600; // ms after which it is kept in any case

function because(e: unknown): string {
  if (!(e instanceof Error)) return String(e);
  return e.message || e.name;
}

function isKept(v: unknown): v is Kept {
  const k = v as Partial<Kept> | null | undefined;
  return typeof k === "object" && k !== null && typeof k.text === "string" && Number.isSafeInteger(k.rev) && typeof k.by === "string" && Number.isFinite(k.at);
}

function isSeen(v: unknown): v is Seen {
  const s = v as Partial<Seen> | null | undefined;
  return (
    typeof s === "object" &&
    s !== null &&
    [s.made, s.picture, s.language].every((x) => typeof x === "string") &&
    [s.report, s.kinds, s.stations].every((x) => typeof x === "object" && x !== null) &&
    Number.isSafeInteger(s.rev) &&
    Number.isFinite(s.at)
  );
}

// whole gives the drafts of a record that are drafts indeed.
function whole(drafts: unknown): Drafts {
  if (!Array.isArray(drafts)) return [];
  return (drafts as unknown[]).filter((d): d is Drafts[number] => {
    if (!Array.isArray(d) || typeof d[0] !== "string") return false;
    const v = d[1] as Partial<Draft> | null | undefined;
    return [v?.text, v?.why, v?.base].every((s) => typeof s === "string");
  });
}

function sorted(v: unknown): unknown {
  if (Array.isArray(v)) return v.map(sorted);
  if (typeof v !== "object" || v === null) return v;
  return Object.fromEntries(
    Object.entries(v)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, w]) => [k, sorted(w)]),
  );
}

// same says whether two texts are one document, in whatever order its keys are.
function same(a: string, b: string): boolean {
  if (a === b) return true;
  try {
    return JSON.stringify(sorted(JSON.parse(a))) === JSON.stringify(sorted(JSON.parse(b)));
  } catch {
    return false;
  }
}

export class Storage extends EventTarget {
  state: Keeping = "kept";
  why = "";
  private readonly me = crypto.randomUUID?.() ?? String(Math.random());
  private db: Promise<IDBDatabase> | null = null;
  private rev = 0;
  private unsaved = 0; // edits since the last save, by count
  private since = 0; // when the first of them was
  private noted = 0; // when late noted them last
  private begun = false;
  private queued = false;
  private timer = 0;
  private writing: Promise<void> = Promise.resolve();

  // made names the contract by which the page writes documents and reports.
  constructor(
    private readonly held: () => Held,
    private readonly made = "",
  ) {
    super();
    addEventListener("pagehide", () => this.leave());
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") this.leave();
      else void this.look();
    });
    addEventListener("focus", () => void this.look());
    // What is kept nowhere goes with the page.
    addEventListener("beforeunload", (e) => {
      if (this.unsaved && (this.state === "failed" || this.state === "conflict")) e.preventDefault();
    });
  }

  private become(state: Keeping, why = ""): void {
    this.state = state;
    this.why = why;
    this.dispatchEvent(new Event("state"));
  }

  private database(): Promise<IDBDatabase> {
    this.db ??= inTime(openDatabase()).then(
      (db) => {
        const gone = () => {
          this.db = null;
        };
        db.onclose = gone; // the reader has cleared the site's data
        db.onversionchange = () => {
          db.close();
          gone();
        };
        return db;
      },
      (e: unknown) => {
        this.db = null;
        throw e;
      },
    );
    return this.db;
  }

  private async table(mode: IDBTransactionMode): Promise<IDBObjectStore> {
    const db = await this.database();
    try {
      return db.transaction(table, mode).objectStore(table);
    } catch (e) {
      this.db = null; // opened anew next time
      throw e;
    }
  }

  private async read(key: string): Promise<unknown> {
    const store = await this.table("readonly");
    return inTime(request<unknown>(store.get(key)));
  }

  // load gives what was kept last.
  async load(): Promise<Found> {
    const found: Found = { text: null, drafts: [], odd: undefined, beside: null, plain: false, seen: null, current: false };
    let at = 0;
    try {
      const { kept, beside, seen } = (await ahead()) ?? (await readRecords(await this.database()));
      if (isKept(kept)) {
        found.text = kept.text;
        found.drafts = whole(kept.drafts);
        found.plain = this.made !== "" && kept.made === this.made;
        this.rev = kept.rev;
        at = kept.at;
        if (isSeen(seen) && seen.made === this.made) {
          found.seen = seen;
          found.current = seen.rev === kept.rev;
          found.plain ||= found.current;
        }
      } else found.odd = kept;
      if (isKept(beside) && !same(beside.text, found.text ?? "")) found.beside = beside.text;
    } catch (e) {
      this.become("failed", because(e));
    }
    try {
      const s = localStorage.getItem(journal);
      if (s) {
        const j: unknown = JSON.parse(s);
        if (isKept(j) && j.at > at && j.rev >= this.rev) {
          found.current &&= found.text === j.text;
          found.text = j.text;
          found.plain = this.made !== "" && j.made === this.made;
          found.drafts = whole(j.drafts);
          found.odd = undefined;
          this.touched();
        } else localStorage.removeItem(journal);
      }
    } catch {
      // A journal that cannot be read holds nothing that is not in the record.
    }
    return found;
  }

  // begin is told when the page holds what load has found: what came out of the
  // journal is kept from then on.
  begin(): void {
    this.begun = true;
    if (this.unsaved) this.save();
  }

  // setAside keeps what could not be opened, so that nothing is lost when the
  // next save takes its place.
  async setAside(what: unknown): Promise<void> {
    const store = await this.table("readwrite");
    const end = done(store.transaction);
    const range = IDBKeyRange.bound(unreadable, `${unreadable}~`);
    const [old, keys] = await Promise.all([request<unknown[]>(store.getAll(range)), request(store.getAllKeys(range))]);
    if (!old.some((o) => JSON.stringify(o) === JSON.stringify(what))) {
      store.put(what, `${unreadable} ${new Date().toISOString()}`);
      for (const k of keys.slice(0, Math.max(0, keys.length + 1 - mostAside))) store.delete(k);
    }
    await end;
  }

  // put keeps something of its own beside the document, in a record that edits leave
  // alone; get gives it back, drop forgets it.
  async put(name: string, what: unknown): Promise<void> {
    const store = await this.table("readwrite");
    const end = done(store.transaction);
    store.put(what, name);
    await inTime(end);
  }

  async get(name: string): Promise<unknown> {
    return this.read(name);
  }

  async drop(name: string): Promise<void> {
    const store = await this.table("readwrite");
    const end = done(store.transaction);
    store.delete(name);
    await end;
  }

  // names are those that begin so.
  async names(prefix: string): Promise<string[]> {
    const store = await this.table("readonly");
    return (await inTime(request(store.getAllKeys(IDBKeyRange.bound(prefix, `${prefix}~`))))).map(String);
  }

  private touched(): void {
    if (!this.unsaved++) this.since = performance.now();
  }

  // save keeps what there is to keep, soon.
  save(): void {
    this.touched();
    if (this.state !== "failed" && this.state !== "conflict") this.become("pending");
    const left = longest - (performance.now() - this.since);
    window.clearTimeout(this.timer);
    if (left < 0) this.late();
    this.timer = window.setTimeout(() => this.writeSoon(), this.state === "failed" ? pause : Math.max(0, Math.min(pause, left)));
  }

  // late notes what a write should have kept by now. A page that is busy with one
  // key after the other comes to no timer and hears no answer of the storage.
  private late(): void {
    const now = performance.now();
    if (this.state === "conflict" || now - this.noted < longest) return;
    this.noted = now;
    this.noteHeld();
  }

  // One write may wait for the one that runs, which may take as long as the
  // browser likes.
  private writeSoon(): void {
    if (this.queued) return;
    this.queued = true;
    void this.writing.then(() => {
      this.queued = false;
      return this.write(false);
    });
  }

  // write gives what it has overwritten when that was another window's.
  private write(force: boolean): Promise<string | null> {
    const write = this.writing.then(async () => {
      window.clearTimeout(this.timer);
      if (!this.unsaved && !force) return null;
      const counted = this.unsaved;
      this.since = performance.now();
      const { text, drafts = [] } = this.held();
      const mine = { text, ...(drafts.length ? { drafts } : {}), by: this.me, at: Date.now(), ...(this.made ? { made: this.made } : {}) };
      const settled = () => {
        this.unsaved -= counted;
        this.become(this.unsaved ? "pending" : "kept");
        try {
          localStorage.removeItem(journal);
        } catch {
          // Blocked storage held no journal either.
        }
      };
      try {
        const store = await this.table("readwrite");
        const end = done(store.transaction);
        const got = await inTime(request<unknown>(store.get(record)));
        const now = isKept(got) ? got : undefined;
        const theirs = now !== undefined && now.by !== this.me;
        const behind = theirs && now.rev !== this.rev;
        if (
          now &&
          JSON.stringify(now.drafts ?? []) === JSON.stringify(drafts) &&
          (now.made ?? "") === this.made &&
          (now.text === text || (theirs && same(now.text, text)))
        ) {
          // Nothing new: another window need not be told that it is behind.
          store.delete(besideRecord);
          await end;
          this.rev = now.rev;
          settled();
          return null;
        }
        if (behind && !force) {
          // The page may die before the reader has chosen.
          store.put({ ...mine, rev: this.rev } satisfies Kept, besideRecord);
          this.become("conflict");
          await end;
          return null;
        }
        const rev = Math.max(now?.rev ?? 0, this.rev) + 1;
        store.put({ ...mine, rev } satisfies Kept, record);
        if (force || this.state === "conflict") store.delete(besideRecord);
        await inTime(end);
        this.rev = rev;
        settled();
        return behind ? now.text : null;
      } catch (e) {
        this.note({ ...mine, rev: this.rev });
        this.become("failed", because(e));
        return null;
      }
    });
    this.writing = write.then(() => {});
    return write;
  }

  // look notices when another window has kept something since, before the
  // reader goes on with what is older.
  private async look(): Promise<void> {
    if (!this.begun || this.state !== "kept") return;
    try {
      const now = await this.read(record);
      if (this.state !== "kept" || !isKept(now) || now.by === this.me || now.rev === this.rev) return;
      if (same(now.text, this.held().text)) this.rev = now.rev;
      else this.become("conflict");
    } catch {
      // Whether anything can be kept is told when there is something to keep.
    }
  }

  private note(kept: Kept): void {
    try {
      if (kept.text.length <= journalLimit) localStorage.setItem(journal, JSON.stringify(kept));
    } catch {
      // The last regular save stands.
    }
  }

  private noteHeld(): void {
    this.note({ ...this.held(), rev: this.rev, by: this.me, at: Date.now(), ...(this.made ? { made: this.made } : {}) });
  }

  private leave(): void {
    if (!this.unsaved) return;
    if (this.state !== "conflict") this.noteHeld();
    void this.write(false);
  }

  // keepMine overwrites what another window has kept, and gives what that was.
  keepMine(): Promise<string | null> {
    return this.write(true);
  }

  // theirs gives what another window has kept.
  async theirs(): Promise<Kept | null> {
    const kept = await this.read(record);
    return isKept(kept) ? kept : null;
  }

  // follow goes on from what another window has kept.
  follow(kept: Kept): void {
    this.unsaved = 0;
    this.rev = kept.rev;
    this.become("kept");
  }

  // remember keeps what the page shows of the record, when the record is what the
  // page holds: says whether it was kept.
  async remember(sight: () => Sight): Promise<boolean> {
    if (!this.rev || this.unsaved || this.state !== "kept") return false;
    try {
      const seen: Seen = { ...sight(), made: this.made, rev: this.rev, at: Date.now() };
      const store = await this.table("readwrite");
      const end = done(store.transaction);
      const now = await request<unknown>(store.get(record));
      // Another window may have kept something else since, or an older page what
      // is not written as it is now.
      const mine = isKept(now) && now.rev === seen.rev && (now.made === this.made || same(now.text, this.held().text));
      if (mine) store.put(seen, seenRecord);
      await end;
      if (mine) writePreference(seenMark, "yes");
      return mine;
    } catch {
      return false; // nothing can be kept, or the program is just starting anew: the next start then waits for it
    }
  }

  // forgetBeside drops what another window held, once the reader has it.
  async forgetBeside(): Promise<void> {
    const store = await this.table("readwrite");
    await request(store.delete(besideRecord));
  }
}

// Pace is how soon and how often what is shown is remembered.
export interface Pace {
  quiet: number; // ms without a change before
  seldom: number; // ms between one and the next
}
const unhurried: Pace = { quiet: 3000, seldom: 20_000 };
const most = 3_000_000; // characters of a document, above which it would take too long

// Memory remembers what the page shows, for the next start to show at once: once
// nothing has changed for a while, seldom, and never while somebody types. When the
// page is put away it need not wait.
export class Memory {
  private moved = 0; // when something changed last
  private kept = Number.NEGATIVE_INFINITY; // when something was remembered
  private last: unknown; // what that was
  private timer: ReturnType<typeof setTimeout> | undefined;

  // shown is what the page shows, by something that is another when the figures
  // are; null while there is nothing that is worth it.
  constructor(
    private readonly storage: Storage,
    private readonly shown: () => { of: unknown; size: number; sight: () => Sight } | null,
    private readonly pace = unhurried,
  ) {
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden" && this.timer !== undefined) void this.remember();
    });
  }

  changed(): void {
    this.moved = performance.now();
    this.timer ??= setTimeout(() => this.look(), this.pace.quiet);
  }

  private look(): void {
    const { quiet, seldom } = this.pace;
    const wait = Math.max(this.moved + quiet, this.kept + seldom) - performance.now();
    if (wait > 0) this.timer = setTimeout(() => this.look(), wait);
    else if ("requestIdleCallback" in globalThis) requestIdleCallback(() => void this.remember(), { timeout: 2000 });
    else void this.remember();
  }

  private async remember(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    const shown = this.shown();
    if (!shown || shown.of === this.last || shown.size > most) return;
    if (!(await this.storage.remember(shown.sight))) return;
    this.kept = performance.now();
    this.last = shown.of;
  }
}

// hasSeen says whether there is something to show of a document of the reader's own.
export const hasSeen = (): boolean => readPreference(seenMark) !== "";

// Preferences are small and personal: they are not part of a document.
export function readPreference(name: string): string {
  try {
    return localStorage.getItem(`steelyard.${name}`) ?? "";
  } catch {
    return "";
  }
}

export function writePreference(name: string, value: string): void {
  try {
    localStorage.setItem(`steelyard.${name}`, value);
  } catch {
    // A browser that keeps nothing forgets the preference; nothing else is lost.
  }
}
