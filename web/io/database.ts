// The table in the browser's storage, and the records in which a document is kept.
// early.ts asks for them before the page's own script has come.

const database = "steelyard";
export const table = "documents";
export const record = "current";
export const besideRecord = "beside";
export const seenRecord = "seen";

const patience = 15_000; // ms; a browser that has not answered by then, however busy, keeps nothing

export function request<T>(r: IDBRequest<T>): Promise<T> {
  return new Promise((yes, no) => {
    r.onsuccess = () => yes(r.result);
    r.onerror = () => no(r.error ?? new Error("storage refused"));
  });
}

// done waits until a transaction is on the disk: a full one is noticed only
// then.
export function done(tx: IDBTransaction): Promise<void> {
  const end = new Promise<void>((yes, no) => {
    tx.oncomplete = () => yes();
    tx.onabort = () => no(tx.error ?? new Error("storage refused"));
  });
  end.catch(() => {}); // a request that failed has told already
  return end;
}

function openAt(version?: number): Promise<IDBDatabase> {
  const r = indexedDB.open(database, version);
  r.onupgradeneeded = () => {
    if (!r.result.objectStoreNames.contains(table)) r.result.createObjectStore(table);
  };
  return new Promise((yes, no) => {
    r.onsuccess = () => yes(r.result);
    r.onerror = () => no(r.error ?? new Error("storage refused"));
    r.onblocked = () => no(new Error("another window holds the storage"));
  });
}

// openDatabase opens it as it is, and mends one that lacks the table.
export async function openDatabase(): Promise<IDBDatabase> {
  const db = await openAt();
  if (db.objectStoreNames.contains(table)) return db;
  db.close();
  return openAt(db.version + 1);
}

export function inTime<T>(wanted: Promise<T>): Promise<T> {
  return new Promise((yes, no) => {
    const timer = setTimeout(() => no(new Error("the browser's storage does not answer")), patience);
    wanted.then(yes, no).finally(() => clearTimeout(timer));
  });
}

// Records are what lies there, of whatever kind; undefined is nothing.
export interface Records {
  kept: unknown;
  beside: unknown;
  seen: unknown;
}

export async function readRecords(db: IDBDatabase): Promise<Records> {
  const store = db.transaction(table, "readonly").objectStore(table);
  const [kept, beside, seen] = await inTime(Promise.all([record, besideRecord, seenRecord].map((key) => request<unknown>(store.get(key)))));
  return { kept, beside, seen };
}

const asked = globalThis as { steelyardKept?: Promise<Records | null> };

// askAhead has the records read now.
export function askAhead(): void {
  asked.steelyardKept = inTime(openDatabase())
    .then((db) => readRecords(db).finally(() => db.close()))
    .catch(() => null);
}

// ahead gives them, once; null where nobody has asked, or there was no answer.
export async function ahead(): Promise<Records | null> {
  const { steelyardKept } = asked;
  delete asked.steelyardKept;
  return (await steelyardKept) ?? null;
}
