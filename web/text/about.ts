// Words of About and of working offline, in English; see en.ts.

export const about = {
  "about.open": "About",
  "about.title": "About Steelyard",
  "about.what":
    "Steelyard weighs a bike on paper. It adds up a build part by part, puts every part where it sits, and says what the whole weighs and how sure that is, where its centre of mass lies, what the suspension must carry and what it must follow, and what changes between two builds.",
  "about.version": "Version {version}. Everything is worked out on this device; nothing that you enter leaves it.",
  "about.caution": "Caution",
  "about.caution.text":
    "Steelyard compares builds; it does not say that one is safe. Permitted loads, brakes and handling are for the makers’ ratings, the rules of the road where you ride, and a qualified mechanic to decide.",
  "about.sources": "Where the figures come from",
  "about.sources.parts":
    "Masses: what you weighed, what a maker states, or typical values of our own, each with the half-width within which real parts of its sort lie.",
  "about.sources.plus":
    "±: JCGM 100:2008, Guide to the expression of uncertainty in measurement, with coverage factor 2 (about 19 times in 20), and never more than all half-widths added up in full.",
  "about.sources.axes": "Axes: ISO 8855. Wheel sizes: ISO 5775.",
  "about.sources.body": "The rider’s body: Drillis and Contini (1966) for lengths, de Leva (1996) for masses and their places.",
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
  "offline.incomplete": "not every file could be fetched",
  "offline.unkept": "The new version was not loaded: your document is not kept in this browser. Save it as a file first, then load the page again.",
} as const;
