// The words of the masthead and About.

import { say } from "../../text/index.ts";

const en = {
  "page.skip": "Skip to the balance",

  "file.title": "Title of the document",
  "file.group": "Document",
  "file.new": "New",
  "file.commands": "Commands",
  "file.bike": "A bike: frame, size and sets",
  "file.list": "Build from a list",
  "file.blank": "Blank document",
  "file.demo": "Demo: a travel bike in three builds",
  "file.open": "Open…",
  "file.open.name": "Open a document or a CSV parts list",
  "file.save": "Save",
  "file.share": "Share link",
  "file.print": "Print",
  "file.undo": "Undo",
  "file.undo.name": "Undo: {what}",
  "file.redo": "Redo",
  "file.redo.name": "Redo: {what}",
  "file.keys": "Keys",

  "show.group": "Display",
  "show.mass": "Masses in",
  "show.mass.g": "g",
  "show.mass.kg": "kg",
  "show.mass.lb_oz": "lb, oz",
  "show.length": "Lengths in",
  "show.length.mm": "mm",
  "show.length.in": "in",
  "show.theme": "Paper",
  "show.theme.auto": "Auto",
  "show.theme.light": "Light",
  "show.theme.dark": "Dark",

  "keep.kept": "Kept in this browser",
  "keep.pending": "Keeping…",
  "keep.conflict": "Changed in another window",
  "keep.failed": "Not kept in this browser",

  "do.title": "title",
  "do.units": "units",

  "about.open": "About",
  "about.title": "About Steelyard",
  "about.what":
    "Steelyard weighs a bike on paper. It adds up a build part by part, puts every part where it sits, and says what the whole weighs and how sure that is, where its centre of mass lies, what the suspension must carry and what it must follow, and what changes between two builds.",
  "about.version": "Version {version}. Everything is worked out on this device; nothing that you enter leaves it.",
  "about.caution": "Caution",
  "about.caution.text":
    "Steelyard compares builds; it does not say that one is safe. Permitted loads, brakes and handling are for the makers’ ratings, the rules of the road where you ride, and a qualified mechanic to decide.",
  "about.sources": "Where the figures come from",
  "about.offline": "Without a network",
  "about.notices": "Licences of what Steelyard is made of",
  "about.notices.getting": "Getting them…",
  "about.notices.failed": "They could not be loaded ({why}). They are also in the file notices.txt beside this page.",
  "about.notices.file": "as a file of its own",

  "offline.getting": "Getting ready for offline use…",
  "offline.ready": "Works offline",
  "offline.away": "Offline, all works",
  "offline.file": "Works offline: one file",
  "offline.failed": "Not ready for offline use",
  "offline.off": "",
  "offline.newer": "New version: load it",
  "offline.newer.name": "A new version is ready. Load it; your work is kept.",
  "offline.getting.long": "The page is being kept in this browser, so that it opens without a network.",
  "offline.ready.long": "The page is kept in this browser and opens without a network. A new version is fetched when there is one, and taken when you say so.",
  "offline.file.long": "All of Steelyard is in this one file. It needs no network and no server.",
  "offline.failed.long": "This browser has not kept the page ({why}). It works now; without a network it may not open again.",
  "offline.off.long": "This browser, or the address the page came from, does not let a page be kept. It works now; without a network it may not open again.",

  "language.auto": "Auto",

  "publish.open": "Publish…",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
