// The page starts here: the theme first, then the core, then the document that
// was kept, the one that the address carries, or the demo.

import "./app/language.ts";
import "./rooms/balance/text.ts";
import "./rooms/contents/text.ts";
import "./rooms/difference/text.ts";
import "./rooms/early/text.ts";
import "./rooms/masthead/text.ts";
import "./rooms/notices/text.ts";
import "./rooms/picture/text.ts";
import "./rooms/welcome/text.ts";
import "./rooms/contents/contents.ts";
import "./rooms/early/early.ts";
import "./rooms/masthead/masthead.ts";
import "./rooms/notices/notices.ts";
import "./rooms/strip/strip.ts";
import "./rooms/welcome/welcome.ts";
import { rooms } from "./rooms/rooms.ts";
import { firstShown } from "./elements/element.ts";
import { narrow } from "./elements/narrow.ts";
import { layOut } from "./elements/room.ts";
import { begin, watchHistory } from "./elements/way.ts";
import { watchCanvas } from "./rooms/picture/picture.ts";
import { core, CoreError } from "./core/core.ts";
import { watchDrops } from "./app/drop.ts";
import { arrival } from "./app/arrival.ts";
import { accept, because, fromLink, opened, openers, saveText, takeIn } from "./app/files.ts";
import { takeUpLeft } from "./app/waiting.ts";
import { photographs } from "./app/photographs.ts";
import { offline } from "./offline/offline.ts";
import { listen } from "./shortcuts.ts";
import { speaker } from "./app/language.ts";
import { store } from "./app/state.ts";
import { first } from "./io/first.ts";
import type { Found } from "./io/storage.ts";
import type { Doc, Kind, Report, Station } from "./model/types.ts";
import { carriesDocument } from "./text/link.ts";
import { brief, t } from "./text/index.ts";
import { followTheme } from "./app/theme.ts";

layOut(rooms, document.getElementById("opening")!, document.getElementById("sheet")!);
followTheme();
listen();
watchHistory();
watchDrops();

// Whatever goes wrong is said, and the page stays.
function trouble(why: string): void {
  if (core.state === "loading" && why === t("core.coming")) {
    store.tell(why);
    return;
  }
  store.tell(t("error.page", { why }), { label: t("error.reload"), run: () => location.reload() }, "error");
}
addEventListener("error", (e) => {
  if (e.message && !/ResizeObserver loop/.test(e.message)) trouble(e.error instanceof CoreError ? e.error.message : e.message);
});
addEventListener("unhandledrejection", (e) => trouble(because(e.reason)));

const frame = document.getElementById("canvas") as HTMLIFrameElement;
watchCanvas(frame);
core.attach(frame);
offline.start(frame.dataset.srcdoc !== undefined);

const kept = store.storage.load();
const left = takeUpLeft(takeIn).catch(() => {}); // it lies there still
let started = false;

// parsed is a document as this page has written it.
function parsed(text: string): Doc | null {
  try {
    return JSON.parse(text) as Doc;
  } catch {
    return null; // the program will say what is wrong with it
  }
}

// before shows what is known of the document without the program: what it reckoned
// of it last, or when the page was made.
async function before(): Promise<void> {
  const found = await kept;
  if (found.text !== null) {
    const { seen } = found;
    const doc = seen && found.plain ? parsed(found.text) : null;
    if (!seen || !doc) return;
    store.kinds = seen.kinds as Kind[];
    store.stations = seen.stations as Station[];
    for (const [key, d] of found.drafts) store.drafts.set(key, d);
    const { at, language, picture } = seen;
    store.show(doc, seen.report as Report, { of: "kept", at, current: found.current, language, picture });
  } else if (found.odd === undefined && !carriesDocument(location.hash)) {
    const language = speaker.wanted;
    const f = await first(language);
    if (!f || core.state !== "loading") return;
    store.kinds = f.kinds;
    store.stations = f.stations;
    const wide = narrow.matches ? innerWidth : innerWidth / 2; // about the plate's, before anything is laid out
    const { svg } = f.pictures.reduce((a, b) => (Math.abs(b.width - wide) < Math.abs(a.width - wide) ? b : a));
    store.greet();
    store.show(f.document, f.report, { of: "demo", at: 0, current: true, language, picture: svg });
  }
  if (store.early) store.storage.begin();
}

// The program takes the link and the processor for a while: what can be shown
// without it comes first, and is painted, unless that takes long.
const patience = 4000; // ms

// The page is not seen (styles/sheet.css) before it is known what is on it, so that
// nothing on it moves, unless that takes long.
function settle(): void {
  document.documentElement.dataset.settled = "";
  store.touch();
}
setTimeout(settle, 2500);
const shown = before()
  .catch((e: unknown) => trouble(because(e)))
  .then(() => {
    settle();
    return store.early && firstShown();
  });
const sight = Promise.race([shown, new Promise((enough) => setTimeout(enough, patience))]);
// The chapters and dialogs come then, first of all: against the program they are
// small. Without them the page has its first screen.
const rest = sight
  .then(() => speaker.complete())
  .then(() => import("./later.ts"))
  .then(
    () => store.touch(),
    (e: unknown) => trouble(because(e)),
  );
// A dialog that is asked for before opens when it is there.
const dialogs = openers as Record<string, (...given: never[]) => void>;
for (const name of Object.keys(dialogs)) {
  const wait = (...given: never[]) => void rest.then(() => dialogs[name] !== wait && dialogs[name]?.(...given));
  dialogs[name] = wait;
}
void Promise.all([sight, left]).then(() => {
  const { src, srcdoc } = frame.dataset;
  if (srcdoc !== undefined) frame.srcdoc = srcdoc;
  else frame.src = src!;
});

async function start(): Promise<void> {
  const found = await kept;
  await rest;
  store.kinds = core.kinds();
  store.stations = core.stations();
  // What can be searched for comes after the first figures: nobody has typed yet.
  setTimeout(() => store.learn(), 150);
  if (started) {
    store.evaluate();
    return;
  }
  started = true;
  await takeUp(found);
  store.storage.begin();
  const { beside } = found;
  if (beside !== null) {
    const open = () => {
      accept(opened(beside), t("keep.beside.name"));
      void store.storage.forgetBeside().catch(() => {});
    };
    store.tell(t("keep.beside"), { label: t("keep.beside.open"), run: open }, "error");
  }
  fromLink();
  fromAddress();
  begin();
  void photographs.tidy().catch(() => {}); // where nothing is kept there is nothing to forget
}

// fromAddress goes on at the scale where its address says so.
function fromAddress(): void {
  if (location.hash === "#scale") openers.scale(store.activeID);
}

// takeUp starts with what was kept, or with the demo, unless that is shown already
// and only to be reckoned; what cannot be read is set aside.
async function takeUp(found: Found): Promise<void> {
  const { text, odd } = found;
  const { early } = store;
  // The demo is in the language that is spoken by now, unless it was edited.
  if (early && (early.of === "kept" || early.language === speaker.code || store.undoable !== null)) {
    store.evaluate();
    return;
  }
  if (text === null && odd === undefined) {
    store.start(core.demo());
    store.greet();
    return;
  }
  const o = text === null ? { document: null, problems: [] } : opened(text);
  if (o.document) {
    for (const [key, d] of found.drafts) store.drafts.set(key, d);
    store.start(o.document);
    return;
  }
  const what = text ?? odd;
  await store.storage.setAside(what).catch(() => {});
  store.start(core.demo());
  const why = o.problems.map((p) => p.message).join(" ") || t("keep.odd");
  const save = () => saveText("steelyard-kept.txt", typeof what === "string" ? what : (JSON.stringify(what, null, 2) ?? String(what)));
  store.tell(t("keep.broken", { why }), { label: t("keep.broken.save"), run: save }, "error");
}

store.addEventListener("change", () => {
  const title = store.doc?.title;
  document.title = title ? `${brief(title)} – ${t("page.name")}` : t("page.name");
});

function ready(): void {
  if (core.state === "ready") {
    start()
      .catch((e: unknown) => trouble(because(e)))
      .finally(() => arrival.now());
  } else if (core.state === "dead") arrival.now();
  store.touch();
}
core.addEventListener("state", ready);
core.addEventListener("progress", () => store.touch());
core.addEventListener("drawing", () => store.touch());
store.storage.addEventListener("state", () => store.touch());
addEventListener("hashchange", () => {
  if (started && core.state === "ready") {
    fromLink();
    fromAddress();
  }
});
ready();
