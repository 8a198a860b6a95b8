// Keeping the document in the browser. One record in IndexedDB holds the text;
// each save checks, in its transaction, that no other window has saved since,
// so that two windows on one document do not overwrite each other unasked. What
// is still unsaved when the page goes away is put into localStorage, which can
// be written at once, and taken up at the next start.

export interface Kept {
  text: string;
  rev: number;
  by: string; // the window that wrote it
  at: number; // ms since 1970
}

export type Keeping = "kept" | "pending" | "conflict" | "failed";

const database = "steelyard";
const table = "documents";
const record = "current";
const unreadable = "unreadable";
const journal = "steelyard.journal";
const journalLimit = 2_000_000; // characters; browsers refuse about 5 million

function request<T>(r: IDBRequest<T>): Promise<T> {
  return new Promise((yes, no) => {
    r.onsuccess = () => yes(r.result);
    r.onerror = () => no(r.error ?? new Error("storage refused"));
  });
}

function openDatabase(): Promise<IDBDatabase> {
  const r = indexedDB.open(database, 1);
  r.onupgradeneeded = () => r.result.createObjectStore(table);
  return request(r);
}

export class Storage extends EventTarget {
  state: Keeping = "kept";
  why = "";
  private readonly me = crypto.randomUUID?.() ?? String(Math.random());
  private db: Promise<IDBDatabase> | null = null;
  private rev = 0;
  private pending: (() => string) | null = null;
  private timer = 0;
  private writing: Promise<void> = Promise.resolve();

  constructor() {
    super();
    const flush = () => this.journal();
    addEventListener("pagehide", flush);
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState === "hidden") flush();
    });
  }

  private become(state: Keeping, why = ""): void {
    this.state = state;
    this.why = why;
    this.dispatchEvent(new Event("state"));
  }

  private database(): Promise<IDBDatabase> {
    this.db ??= openDatabase().catch((e: unknown) => {
      this.db = null;
      throw e;
    });
    return this.db;
  }

  private async read(): Promise<Kept | undefined> {
    const db = await this.database();
    return request<Kept | undefined>(db.transaction(table).objectStore(table).get(record));
  }

  // load gives the text that was kept last, or nothing.
  async load(): Promise<string | null> {
    let kept: Kept | undefined;
    try {
      kept = await this.read();
    } catch (e) {
      this.become("failed", String(e));
    }
    this.rev = kept?.rev ?? 0;
    try {
      const s = localStorage.getItem(journal);
      if (s) {
        localStorage.removeItem(journal);
        const j = JSON.parse(s) as Kept;
        if (typeof j.text === "string" && j.at > (kept?.at ?? 0) && j.rev >= this.rev) {
          this.save(() => j.text);
          return j.text;
        }
      }
    } catch {
      // A journal that cannot be read holds nothing that is not in the record.
    }
    return kept?.text ?? null;
  }

  // setAside keeps a text that could not be opened, so that nothing is lost
  // when the next save takes its place.
  async setAside(text: string): Promise<void> {
    const db = await this.database();
    await request(db.transaction(table, "readwrite").objectStore(table).put(text, unreadable));
  }

  // save keeps what text gives, soon. It is called once, when the time comes.
  save(text: () => string): void {
    this.pending = text;
    if (this.state === "conflict") return;
    if (this.state !== "failed") this.become("pending");
    window.clearTimeout(this.timer);
    this.timer = window.setTimeout(() => void this.write(false), 400);
  }

  private write(force: boolean): Promise<void> {
    this.writing = this.writing.then(async () => {
      const make = this.pending;
      if (!make) return;
      try {
        const text = make();
        const db = await this.database();
        const store = db.transaction(table, "readwrite").objectStore(table);
        const now = await request<Kept | undefined>(store.get(record));
        if (!force && now && now.rev !== this.rev && now.by !== this.me) {
          this.become("conflict");
          return;
        }
        if (now?.text === text) {
          // Nothing new: another window need not be told that it is behind.
          this.rev = now.rev;
          if (this.pending === make) this.pending = null;
          this.become("kept");
          return;
        }
        const next: Kept = { text, rev: Math.max(now?.rev ?? 0, this.rev) + 1, by: this.me, at: Date.now() };
        await request(store.put(next, record));
        this.rev = next.rev;
        if (this.pending === make) this.pending = null;
        this.become(this.pending ? "pending" : "kept");
        try {
          localStorage.removeItem(journal);
        } catch {
          // Blocked storage held no journal either.
        }
      } catch (e) {
        this.become("failed", e instanceof Error ? e.message : String(e));
      }
    });
    return this.writing;
  }

  private journal(): void {
    if (!this.pending || this.state === "conflict") return;
    try {
      const text = this.pending();
      if (text.length > journalLimit) return;
      localStorage.setItem(journal, JSON.stringify({ text, rev: this.rev, by: this.me, at: Date.now() } satisfies Kept));
    } catch {
      // The page is going away; the last regular save stands.
    }
    void this.write(false);
  }

  // keepMine overwrites what another window has kept.
  async keepMine(text: () => string): Promise<void> {
    this.pending = text;
    await this.write(true);
  }

  // takeTheirs gives what another window has kept, and follows it from here.
  async takeTheirs(): Promise<string | null> {
    const kept = await this.read();
    this.pending = null;
    this.rev = kept?.rev ?? this.rev;
    this.become("kept");
    return kept?.text ?? null;
  }
}

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
