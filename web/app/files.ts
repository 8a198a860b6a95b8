// Documents coming and going: files, the demo, links. Whatever comes in takes
// the place of the document as one step that can be undone.

import { core, CoreError } from "../core/core.ts";
import { readAddress } from "./address.ts";
import { arrival } from "./arrival.ts";
import { csvFormat, type, whole } from "./exports.ts";
import { photographs } from "./photographs.ts";
import { store } from "./state.ts";
import { openThere } from "./waiting.ts";
import { t } from "../text/index.ts";
import type { Doc, Opened, Photograph } from "../model/types.ts";

// Openers are the dialogs that files and links ask for; the page puts them in.
export const openers = {
  csv: (_name: string, _bytes: Uint8Array): void => {},
  bike: (): void => {},
  list: (): void => {},
  incoming: (_doc: Doc, _opened: Opened, _chapter: string): void => {},
  share: (_fragment: string): void => {},
  keys: (): void => {},
  publish: (): void => {},
  change: (_build: string): void => {},
  scale: (_build: string, _part = ""): void => {},
  photograph: (_file?: File): void => {},
};

const limit = 30_000_000; // bytes

// take puts a document in the place of the one that is open.
export function take(doc: Doc, label: string): void {
  store.seal();
  store.drafts.clear();
  store.open.clear();
  store.selected = "";
  store.active = "A";
  store.edit(label, () => doc);
}

export function because(e: unknown): string {
  return e instanceof Error ? e.message : String(e);
}

function undoable(text: string): void {
  store.tell(text, { label: t("undo"), run: () => store.undo() });
}

export async function startBlank(): Promise<void> {
  await arrival.of(t("do.new"));
  take(core.blank(), t("do.new"));
  undoable(t("file.started"));
}

export async function openDemo(): Promise<void> {
  await arrival.of(t("do.new"));
  take(core.demo(), t("do.new"));
  undoable(t("file.demoed"));
}

// opened opens a text; a program that cannot says why, as of a text that is none.
export function opened(text: string): Opened {
  try {
    return core.open(text);
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    return { document: null, problems: [e.problem] };
  }
}

// accept takes an opened document in, and says so.
export function accept(o: Opened, name: string): void {
  if (!o.document) {
    const why = o.problems.map((p) => p.message).join(" ") || "?";
    store.tell(t("file.unreadable", { name, why }), undefined, "error");
    return;
  }
  photographs.receive(o.photographs ?? []);
  take(o.document, t("do.open"));
  const title = o.document.title || t("file.untitled");
  undoable(o.problems.length ? t("file.warnings", { title, n: o.problems.length }) : t("file.opened", { title }));
}

const picture = /\.(jpe?g|jfif|png|webp|heic|heif|avif|gif|bmp|tiff?)$/i;

const isPicture = (file: File): boolean => picture.test(file.name) || file.type.startsWith("image/");

export async function openFile(file: File): Promise<void> {
  // However large a picture is: the core says what is too much.
  if (!isPicture(file) && file.size > limit) store.tell(t("file.toobig", { name: file.name }), undefined, "error");
  else await openThere(file, takeIn);
}

// takeIn takes in a file that the program can be asked about.
export async function takeIn(file: File): Promise<void> {
  if (isPicture(file)) {
    openers.photograph(file);
    return;
  }
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const text = new TextDecoder().decode(bytes);
    if (/\.(csv|tsv|txt)$/i.test(file.name) || (file.type === "text/csv" && !text.trimStart().startsWith("{"))) {
      openers.csv(file.name, bytes); // spreadsheets write in several encodings
      return;
    }
    accept(opened(text), file.name);
  } catch (e) {
    store.tell(t("file.unreadable", { name: file.name, why: because(e) }), undefined, "error");
  }
}

export function chooseFile(accept = ".json,.csv,.tsv,.txt,application/json,text/csv", open: (file: File) => unknown = openFile): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = typeof accept === "string" ? accept : ".json,.csv,.tsv,.txt,application/json,text/csv";
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file) void open(file);
  });
  input.click();
}

export function download(name: string, content: BlobPart, type: string): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const a = document.createElement("a");
  a.href = url;
  a.download = name;
  a.click();
  window.setTimeout(() => URL.revokeObjectURL(url), 10000);
}

export function fileName(title: string, ending: string): string {
  const base = title
    .normalize("NFC")
    .replace(/[\\/:*?"<>|\u0000-\u001f\u202a-\u202e\u2066-\u2069]+/g, " ")
    .replace(/\s+/g, " ")
    .replace(/^[ .]+|[ .]+$/g, "")
    .slice(0, 80);
  return (base || "steelyard") + ending;
}

// fileText is a document's file as the core lays it out. Where the calculator is
// gone, or cannot read what it should write, the work is saved all the same.
function fileText(doc: Doc, pictures: readonly Photograph[]): string {
  const text = JSON.stringify(doc);
  try {
    return core.fileText(text, pictures);
  } catch {
    return text;
  }
}

export function saveFile(doc: Doc | null = store.doc, pictures: readonly Photograph[] = []): void {
  if (!doc) return;
  const name = fileName(doc.title, ".steelyard.json");
  download(name, fileText(doc, pictures), "application/json");
  // Photographs go along when that is asked for.
  if (pictures.length || !doc.builds.some((b) => photographs.of(b))) store.tell(t("file.saved", { name }));
  else store.tell(t("file.saved.without", { name }), { label: t("file.save.photo"), run: () => void savePhotographs(doc) });
}

// savePhotographs saves a file that has the photographs of its builds in it.
export async function savePhotographs(doc: Doc | null = store.doc): Promise<void> {
  if (doc) saveFile(doc, await photographs.carried(doc));
}

export function saveText(name: string, text: string): void {
  download(name, text, "text/plain;charset=utf-8");
}

export function savePartsCSV(): void {
  const { doc, build } = store;
  if (!doc || !build) return;
  const name = fileName(build.name, ".csv");
  const format = csvFormat();
  download(name, whole({ parts: build.id }, format), type(format));
  store.tell(t("file.saved", { name }));
}

export function shareLink(): void {
  if (!store.doc) return;
  try {
    openers.share(core.encodeLink(store.text));
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    store.tell(e.message, { label: t("file.save.name"), run: () => saveFile() }, "error");
  }
}

// Where a link leads when others follow it: to the page's own address, unless
// that means something on this computer only.
export type Reach = "everywhere" | "this computer" | "nowhere";

export function reach(at: URL = new URL(location.href)): Reach {
  if (!/^https?:$/.test(at.protocol)) return "nowhere";
  return /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\])$/.test(at.hostname) ? "this computer" : "everywhere";
}

// published reads the address of a page on the web; null is no such address.
export function published(typed: string): URL | null {
  const text = typed.trim();
  if (!text) return null;
  try {
    const url = new URL(/^[a-z][a-z0-9+.-]*:\/\//i.test(text) ? text : `https://${text}`);
    if (!/^https?:$/.test(url.protocol) || !/[.:]|^localhost$/.test(url.hostname)) return null;
    url.hash = "";
    return url;
  } catch {
    return null;
  }
}

// fromLink reads the document that the address carries, if it does. It takes
// nothing in: the reader is asked first.
export function fromLink(): void {
  const { document: fragment, chapter } = readAddress(location.hash);
  if (!fragment) return;
  try {
    const o = core.decodeLink(fragment);
    if (o.document) openers.incoming(o.document, o, chapter);
    else store.tell(t("link.in.bad", { why: o.problems.map((p) => p.message).join(" ") || "?" }), undefined, "error");
  } catch (e) {
    if (!(e instanceof CoreError)) throw e;
    store.tell(t("link.in.bad", { why: e.message }), undefined, "error");
  }
}

// dropLink takes the document out of the address, so that a reload does not
// bring it back; the chapter that it is read at stays.
export function dropLink(chapter = ""): void {
  history.replaceState(history.state, "", location.pathname + location.search + (chapter && `#${chapter}`));
}

export async function copyText(text: string, done: string): Promise<void> {
  try {
    await navigator.clipboard.writeText(text);
    store.tell(done);
  } catch {
    // Where the clipboard is refused (no secure origin), the old way may do.
    const area = document.createElement("textarea");
    area.value = text;
    area.className = "unseen";
    document.body.append(area);
    area.select();
    const ok = document.execCommand("copy");
    area.remove();
    store.tell(ok ? done : t("table.copy.failed"), undefined, ok ? "note" : "error");
  }
}
