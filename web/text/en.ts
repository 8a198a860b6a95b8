// The words that several rooms share, and those of elements, app and io, in
// English. A key is "where.what"; {name} is filled in.

export const en = {
  "number.decimal": ".",

  "unit.g": "g",
  "unit.kg": "kg",
  "unit.lb": "lb",
  "unit.oz": "oz",
  "unit.mm": "mm",
  "unit.in": "in",
  "unit.deg": "°",
  "unit.kg_m2": "kg m²",
  "unit.percent": "%",

  "page.name": "Steelyard",
  "core.coming": "The program that reckons is still on its way. Try again in a moment.",
  "core.gone": "The program that reckons has stopped.",
  "early.mark.demo": "demo, as made with the page",
  "early.mark.kept": "as of {when}",
  "early.was": "corrected, before: {value}",
  "field.waits": "Counted as soon as the program is there",
  "page.loading": "Getting the calculator ready…",
  "page.caution": "Caution",

  // The chapters: their names in the contents, and their headings.
  "builds.short": "All builds",
  "all.title": "All builds",
  "gears.short": "Gears",
  "gears.title": "Gears",
  "climbing.short": "Climbing",
  "climbing.title": "Climbing",
  "rough.short": "Rough road",
  "rough.title": "Rough road",
  "steering.short": "Steering",
  "steering.title": "Steering and balance",
  "load.short": "Load",
  "load.title": "Load and rider",
  "limits.short": "Limits",
  "limits.title": "What it permits",
  "packing.short": "Packing",
  "packing.title": "Packing",
  "weighin.short": "Weigh-in",
  "weighin.title": "Weigh-in",
  "parts.short": "Parts",
  "parts.title": "The parts of build {letter}",
  "frame.short": "Frame",
  "frame.title": "The frame of build {letter}",

  "file.untitled": "Untitled",
  "file.save.name": "Save as a file",
  "file.opened": "Opened “{title}”.",
  "file.started": "Started a blank document.",
  "file.demoed": "Opened the demo.",
  "file.saved": "Saved {name}.",
  "file.saved.without": "Saved {name}, without the photograph.",
  "file.save.photo": "Save it with the photograph",
  "photo.undecoded": "Your browser cannot read this picture: it is broken, or of a sort that it does not know.",
  "do.photo": "put a photograph behind the drawing",
  "do.photo.remove": "take the photograph away",
  "file.unreadable": "“{name}” could not be opened: {why}",
  "file.toobig": "“{name}” is larger than 30 MB and was not opened.",
  "file.warnings": "Opened “{title}” with {n} remarks, see above.",

  "keep.theirs": "Use the other one",
  "keep.mine": "Keep this one",
  "keep.broken": "The document kept in this browser could not be read ({why}). It was set aside; the demo is shown instead.",
  "keep.broken.save": "Save what was kept",
  "keep.odd": "it is no document",
  "keep.other": "the other window’s document",
  "keep.replaced": "This document is kept in place of the other window’s.",
  "keep.beside": "A window was closed before its document and another window’s were brought together. Its document was kept beside this one.",
  "keep.beside.name": "the document kept beside this one",
  "keep.beside.open": "Open it",

  "error.page": "Something went wrong in the page ({why}). Your document is kept.",
  "error.reload": "Load the page again",

  "problems.go": "Go to the field",
  "problems.more": "and {n} more",

  undone: "Undone: {what}",

  redone: "Done again: {what}",

  undo: "Undo",

  close: "Close",

  cancel: "Cancel",

  "do.edit": "{field} of {part}",
  "do.add": "add {part}",
  "do.delete": "delete {part}",
  "do.duplicate": "duplicate {part}",
  "do.handover": "move {part} to {build}",
  "do.nudge": "place of {part}",
  "do.compare": "builds compared",
  "do.open": "open a document",
  "do.new": "new document",

  "builds.menu": "…",
  "builds.unweighed": "cannot be weighed yet",

  likely: "likely between {low} and {high} {unit}",
  "likely.by": "likely by {low} to {high} {unit}",
  "likely.either": "anything from {less} {unit} lighter to {more} {unit} heavier",
  "likely.exact": "exact",
  "likely.explain":
    "No part’s weight is known exactly, so no total is. “Likely between” and ± say how far off a figure may be: about 19 times in 20 the truth lies within. Weigh the parts that matter and the range narrows.",
  "likely.explain.title": "What does ± mean?",
  "likely.explain.diff":
    "What both builds share is wrong by the same amount in both, so it drops out of the difference: that is often known far better than either total. When the range of a difference takes in nought, the figures cannot decide, and the page says so.",

  "delta.heavier": "B is heavier",
  "delta.lighter": "B is lighter",
  "delta.same": "both weigh the same",
  "delta.undecided": "undecided: it may be either",

  "table.figure": "Figure",
  "table.diff": "B − A",
  "table.copy": "Copy this table",
  "table.copy.short": "Copy",
  "table.copy.md": "as Markdown",
  "table.copy.csv": "as CSV",
  "table.copied": "The table is on the clipboard.",
  "table.copy.failed": "The browser did not allow copying.",

  "figure.total": "Total mass",
  "figure.centre_x": "Ahead of rear axle",
  "figure.centre_y": "Left of the middle",
  "figure.centre_z": "Above ground",
  "figure.front_load": "Front wheel",
  "figure.rear_load": "Rear wheel",
  "figure.front_share": "Front share",
  "figure.sprung": "Sprung",
  "figure.unsprung_front": "Front unsprung, tally",
  "figure.unsprung_rear": "Rear unsprung, tally",
  "figure.effective_front": "Front, effective",
  "figure.effective_rear": "Rear, effective",
  "figure.ratio_front": "Front ratio",
  "figure.ratio_rear": "Rear ratio",
  "figure.rotating_front": "Front, all that spins",
  "figure.rotating_rear": "Rear, all that spins",
  "figure.rim_front": "Front, as at the tyre",
  "figure.rim_rear": "Rear, as at the tyre",
  "figure.inertia_roll": "Inertia, roll",
  "figure.inertia_pitch": "Inertia, pitch",
  "figure.inertia_yaw": "Inertia, yaw",
  "figure.inertia_xz": "Inertia, roll with yaw",
  "figure.gyration_roll": "Gyration, roll",
  "figure.gyration_pitch": "Gyration, pitch",
  "figure.gyration_yaw": "Gyration, yaw",

  "verdict.g.more": "heavier",
  "verdict.g.less": "lighter",
  "verdict.more": "more",
  "verdict.less": "less",
  "verdict.same": "same",
  "verdict.undecided": "undecided",
  "verdict.centre_x.more": "forward",
  "verdict.centre_x.less": "back",
  "verdict.centre_y.more": "left",
  "verdict.centre_y.less": "right",
  "verdict.centre_z.more": "higher",
  "verdict.centre_z.less": "lower",

  "picture.show": "Build shown",

  "diff.part": "Part",
  "diff.what": "Change",
  "diff.all": "Show all {n}",
  "diff.fewer": "Show fewer",
  "diff.forward": "Forward",
  "diff.up": "Up",

  "parts.name": "Part",
  "parts.quantity.short": "No.",
  "parts.mass.short": "Each",
  "parts.basis": "Known from",
  "parts.station": "Where",
  "parts.carrier": "Fixed to",
  "parts.details.short": "Details",
  "parts.left": "left out of the figures",
  "parts.unsprung": "unsprung",
  "parts.halfsprung": "half unsprung",
  "parts.sprung": "sprung",
  "parts.deleted": "Deleted {part}.",

  "basis.weighed.short": "weighed",
  "basis.stated.short": "maker says",
  "basis.typical.short": "typical",
  "basis.guessed.short": "guessed",

  "part.offset": "From the station",
  "part.forward": "forward",
  "part.left": "left",
  "part.up": "up",
  "part.delete": "Delete",
  "part.handedover": "Moved {part} to {build}.",

  "add.results.one": "One part found.",
  "add.results.many": "{n} parts found.",
  "add.list": "Look at {n} parts as a list",
  "add.none": "Nothing in the catalogue like this.",
  "add.early": "What fits is looked for once the program is there. Enter keeps this until then.",
  "add.waits": "Waits for the program: {list}",
  "add.own": "Add “{name}” as a part of your own",
  "add.own.mass": "Add “{name}” at {mass}",

  "field.number": "This should be a number, such as 12.5 or 12,5.",
  "field.whole": "This should be a whole number.",
  "field.other": "In the other build",

  "frame.notes": "Notes",

  "link.in.bad": "The link could not be read: {why}",

  "unit.l": "l",
  "unit.g0": "g", // of acceleration

  "do.load": "load of {letter}",
  "do.state": "state shown",
  "do.newload": "new load",

  "carry.supplies": "Supplies",

  "state.bare": "bare",
  "state.ready": "ready to ride",
  "state.loaded": "loaded",
  "state.ridden": "with rider",

  "supplies.full": "full",
  "supplies.half": "half",
  "supplies.empty": "used up",

  "load.new.name": "Unnamed load",

  "bag.own": "Add “{name}” as a bag of your own",

  "good.own": "Add “{name}” as something of your own",

  "bag.volume": "Volume",

  "limits.caution": "Paper figures on a firm road. Makers’ ratings, local rules and a qualified mechanic decide.",

  "ratings.verdict.ok": "within",
  "ratings.verdict.near": "may be over",
  "ratings.verdict.over": "over",

  "about.sources.parts":
    "Masses: what you weighed, what a maker states, or typical values of our own, each with the half-width within which real parts of its sort lie.",
  "about.sources.plus":
    "±: JCGM 100:2008, Guide to the expression of uncertainty in measurement, with coverage factor 2 (about 19 times in 20), and never more than all half-widths added up in full.",
  "about.sources.axes": "Axes: ISO 8855. Wheel sizes: ISO 5775.",
  "about.sources.body": "The rider’s body: Drillis and Contini (1966) for lengths, de Leva (1996) for masses and their places.",

  "offline.incomplete": "not every file could be fetched",
  "offline.unkept": "The new version was not loaded: your document is not kept in this browser. Save it as a file first, then load the page again.",

  language: "Language",
  "language.failed": "The texts of this language could not be loaded ({why}). The page stays as it is.",

  "do.edit.builds": "{field} of {part} in {n} builds",
  "do.edit.loads": "{field} of {part} in {n} loads",
  "do.apart": "{part} of {build} on its own",

  "scale.open": "At the scale",
  "scale.open.name": "Weigh the parts one by one on a kitchen scale",
  "shared.builds": "in {n} builds",
  "shared.loads": "in {n} loads",
  "shared.better": "{name} knows it better: {mass}, {basis}.",
  "shared.take": "Use it here",
  "shared.take.name": "Use it here: {mass} for {name}",
  "shared.note.builds": "Also in: {names}. Mass, ±, basis, name and note are entered once for all of them.",
  "shared.note.loads": "Also in: {names}. Mass, ±, basis and name are entered once for all of them.",
  "shared.apart": "Only here",
  "shared.apart.done": "{part} is now a thing of its own: what you enter counts only here.",

  "change.open": "Change drivetrain, wheels…",

  "table.copy.semicolon": "as CSV, decimal comma",

  "report.together": "Together",

  "rooms.figure": "Figure",
  "rooms.difference": "Difference",
  "rooms.verdict": "Verdict",
  "rooms.working": "Working it out…",
  "rooms.first": "Measure first: {list}.",

  "chart.save": "Save chart",
  "chart.save.name": "Save as SVG: {label}",
  "chart.failed": "The chart cannot be saved: {why}",

  "known.value": "Value",
  "known.half": "± of {of}",
  "known.from": "Known from",
  "known.basis": "Known from, {of}",
  "known.typical": "typical",
  "known.forget": "Typical again",
  "known.note": "Note on {of}",
  "known.noted": "note",
  "known.reckoned": "reckoned",
  "known.boundless": "stated, ± typical",
  "known.unstated": "not stated",
  "known.remove": "Remove",
} as const;
