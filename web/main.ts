// The page starts here: the theme first, then the core, then the document that
// was kept, the one that the address carries, or the demo.

import "./app/language.ts";
import "every:rooms/*/text.ts";
import "./rooms/change/change.ts";
import "./rooms/contents/contents.ts";
import "./rooms/dialogs/dialogs.ts";
import "./rooms/masthead/masthead.ts";
import "./rooms/notices/notices.ts";
import "./rooms/publish/publish.ts";
import "./rooms/scale/scale.ts";
import "./rooms/strip/strip.ts";
import "./rooms/welcome/welcome.ts";
import { rooms } from "./rooms/rooms.ts";
import { layOut } from "./elements/room.ts";
import { begin, watchHistory } from "./elements/way.ts";
import { watchCanvas } from "./rooms/picture/picture.ts";
import { core } from "./core/core.ts";
import { watchDrops } from "./app/drop.ts";
import { accept, because, fromLink, opened, openers, saveText } from "./app/files.ts";
import { offline } from "./offline/offline.ts";
import { watchPrinting } from "./rooms/print/printReport.ts";
import { listen } from "./shortcuts.ts";
import { store } from "./app/state.ts";
import type { Found } from "./io/storage.ts";
import { brief, t } from "./text/index.ts";
import { followTheme } from "./app/theme.ts";

layOut(rooms, document.getElementById("opening")!, document.getElementById("sheet")!);
followTheme();
listen();
watchHistory();
watchDrops();

// Whatever goes wrong is said, and the page stays.
function trouble(why: string): void {
  store.tell(t("error.page", { why }), { label: t("error.reload"), run: () => location.reload() }, "error");
}
addEventListener("error", (e) => {
  if (e.message && !/ResizeObserver loop/.test(e.message)) trouble(e.message);
});
addEventListener("unhandledrejection", (e) => trouble(because(e.reason)));

const frame = document.getElementById("canvas") as HTMLIFrameElement;
watchCanvas(frame);
watchPrinting();
core.attach(frame);
offline.start(frame.hasAttribute("srcdoc"));

const kept = store.storage.load();
let started = false;

async function start(): Promise<void> {
  const found = await kept;
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
}

// fromAddress goes on at the scale where its address says so.
function fromAddress(): void {
  if (location.hash === "#scale") openers.scale(store.activeID);
}

// takeUp starts with what was kept, or with the demo; what cannot be read is
// set aside.
async function takeUp(found: Found): Promise<void> {
  const { text, odd } = found;
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
  if (core.state === "ready") start().catch((e: unknown) => trouble(because(e)));
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
