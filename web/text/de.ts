// The words that several rooms share in German; see en.ts.

import { offer } from "./offer.ts";
import type { en } from "./en.ts";

offer("de", {
  "number.decimal": ",",

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
  "core.coming": "Das Programm, das rechnet, ist noch unterwegs. Versuchen Sie es gleich noch einmal.",
  "core.gone": "Das Programm, das rechnet, ist stehen geblieben.",
  "early.mark.demo": "Beispiel, mit der Seite gemacht",
  "early.mark.kept": "Stand {when}",
  "early.was": "berichtigt, zuvor: {value}",
  "field.waits": "Zählt, sobald das Programm da ist",
  "page.loading": "Die Rechnung wird geladen …",
  "page.caution": "Vorsicht",

  "builds.short": "Alle Aufbauten",
  "all.title": "Alle Aufbauten",
  "gears.short": "Gänge",
  "gears.title": "Gänge",
  "climbing.short": "Bergauf",
  "climbing.title": "Bergauf",
  "rough.short": "Schlechte Straße",
  "rough.title": "Schlechte Straße",
  "steering.short": "Lenken",
  "steering.title": "Lenken und Gleichgewicht",
  "load.short": "Ladung",
  "load.title": "Ladung und Fahrer",
  "limits.short": "Grenzen",
  "limits.title": "Was es erlaubt",
  "packing.short": "Packen",
  "packing.title": "Packen",
  "weighin.short": "Wägung",
  "weighin.title": "Wägung",
  "parts.short": "Teile",
  "parts.title": "Die Teile von Aufbau {letter}",
  "frame.short": "Rahmen",
  "frame.title": "Der Rahmen von Aufbau {letter}",

  "file.untitled": "Ohne Titel",
  "file.save.name": "Als Datei speichern",
  "file.opened": "„{title}“ geöffnet.",
  "file.started": "Ein leeres Dokument begonnen.",
  "file.demoed": "Das Beispiel geöffnet.",
  "file.saved": "{name} gespeichert.",
  "file.saved.without": "{name} gespeichert, ohne das Foto.",
  "file.save.photo": "Mit dem Foto speichern",
  "photo.undecoded": "Ihr Browser kann dieses Bild nicht lesen: Es ist beschädigt oder von einer Art, die er nicht kennt.",
  "do.photo": "ein Foto hinter die Zeichnung legen",
  "do.photo.remove": "das Foto wegnehmen",
  "file.unreadable": "„{name}“ ließ sich nicht öffnen: {why}",
  "file.toobig": "„{name}“ ist größer als 30 MB und wurde nicht geöffnet.",
  "file.warnings": "„{title}“ mit {n} Hinweisen geöffnet, siehe oben.",

  "keep.theirs": "Das andere nehmen",
  "keep.mine": "Dieses behalten",
  "keep.broken": "Das in diesem Browser aufbewahrte Dokument ließ sich nicht lesen ({why}). Es wurde beiseitegelegt; statt seiner steht hier das Beispiel.",
  "keep.broken.save": "Das Aufbewahrte speichern",
  "keep.odd": "es ist kein Dokument",
  "keep.other": "das Dokument des anderen Fensters",
  "keep.replaced": "Dieses Dokument wird anstelle des anderen Fensters aufbewahrt.",
  "keep.beside": "Ein Fenster wurde geschlossen, bevor sein Dokument und das eines anderen zusammengeführt waren. Sein Dokument wurde neben diesem aufbewahrt.",
  "keep.beside.name": "das daneben aufbewahrte Dokument",
  "keep.beside.open": "Öffnen",

  "error.page": "In der Seite ist etwas schiefgegangen ({why}). Ihr Dokument ist erhalten.",
  "error.reload": "Seite neu laden",

  "problems.go": "Zum Feld",
  "problems.more": "und {n} weitere",

  undone: "Rückgängig gemacht: {what}",

  redone: "Wiederholt: {what}",

  undo: "Rückgängig",

  close: "Schließen",

  cancel: "Abbrechen",

  "do.edit": "{field} von {part}",
  "do.add": "{part} hinzufügen",
  "do.delete": "{part} löschen",
  "do.duplicate": "{part} verdoppeln",
  "do.handover": "{part} nach {build}",
  "do.nudge": "Lage von {part}",
  "do.compare": "verglichene Aufbauten",
  "do.open": "ein Dokument öffnen",
  "do.new": "neues Dokument",

  "builds.menu": "…",
  "builds.unweighed": "kann noch nicht gewogen werden",

  likely: "wahrscheinlich zwischen {low} und {high} {unit}",
  "likely.by": "wahrscheinlich um {low} bis {high} {unit}",
  "likely.either": "irgendwo von {less} {unit} leichter bis {more} {unit} schwerer",
  "likely.exact": "genau",
  "likely.explain":
    "Kein Gewicht eines Teils ist genau bekannt, also auch keine Summe. „Wahrscheinlich zwischen“ und ± sagen, wie weit ein Wert danebenliegen kann: in etwa 19 von 20 Fällen liegt die Wahrheit darin. Wiegen Sie die Teile, auf die es ankommt, und der Bereich wird enger.",
  "likely.explain.title": "Was heißt ±?",
  "likely.explain.diff":
    "Was beide Aufbauten gemeinsam haben, ist in beiden um gleich viel falsch und fällt aus dem Unterschied heraus: er ist oft viel genauer bekannt als jede der Summen. Schließt sein Bereich die Null ein, können die Werte nicht entscheiden, und die Seite sagt es.",

  "delta.heavier": "B ist schwerer",
  "delta.lighter": "B ist leichter",
  "delta.same": "beide wiegen gleich viel",
  "delta.undecided": "unentschieden: beides ist möglich",

  "table.figure": "Wert",
  "table.diff": "B − A",
  "table.copy": "Diese Tabelle kopieren",
  "table.copy.short": "Kopieren",
  "table.copy.md": "als Markdown",
  "table.copy.csv": "als CSV",
  "table.copied": "Die Tabelle ist in der Zwischenablage.",
  "table.copy.failed": "Der Browser hat das Kopieren nicht erlaubt.",

  "figure.total": "Gesamtmasse",
  "figure.centre_x": "Vor der Hinterachse",
  "figure.centre_y": "Links der Mitte",
  "figure.centre_z": "Über dem Boden",
  "figure.front_load": "Vorderrad",
  "figure.rear_load": "Hinterrad",
  "figure.front_share": "Anteil vorn",
  "figure.sprung": "Gefedert",
  "figure.unsprung_front": "Ungefedert vorn",
  "figure.unsprung_rear": "Ungefedert hinten",
  "figure.effective_front": "Wirksam vorn",
  "figure.effective_rear": "Wirksam hinten",
  "figure.ratio_front": "Verhältnis vorn",
  "figure.ratio_rear": "Verhältnis hinten",
  "figure.rotating_front": "Vorn, alles Drehende",
  "figure.rotating_rear": "Hinten, alles Drehende",
  "figure.rim_front": "Vorn, wie am Reifen",
  "figure.rim_rear": "Hinten, wie am Reifen",
  "figure.inertia_roll": "Trägheit, Rollen",
  "figure.inertia_pitch": "Trägheit, Nicken",
  "figure.inertia_yaw": "Trägheit, Gieren",
  "figure.inertia_xz": "Trägheit, Rollen mit Gieren",
  "figure.gyration_roll": "Radius, Rollen",
  "figure.gyration_pitch": "Radius, Nicken",
  "figure.gyration_yaw": "Radius, Gieren",

  "verdict.g.more": "schwerer",
  "verdict.g.less": "leichter",
  "verdict.more": "mehr",
  "verdict.less": "weniger",
  "verdict.same": "gleich",
  "verdict.undecided": "offen",
  "verdict.centre_x.more": "vorn",
  "verdict.centre_x.less": "hinten",
  "verdict.centre_y.more": "links",
  "verdict.centre_y.less": "rechts",
  "verdict.centre_z.more": "höher",
  "verdict.centre_z.less": "tiefer",

  "picture.show": "Gezeigter Aufbau",

  "diff.part": "Teil",
  "diff.what": "Änderung",
  "diff.all": "Alle {n} zeigen",
  "diff.fewer": "Weniger zeigen",
  "diff.forward": "Vorn",
  "diff.up": "Hoch",

  "parts.name": "Teil",
  "parts.quantity.short": "Anz.",
  "parts.mass.short": "Je",
  "parts.basis": "Bekannt durch",
  "parts.station": "Wo",
  "parts.carrier": "Befestigt an",
  "parts.details.short": "Einzelheiten",
  "parts.left": "aus den Werten ausgelassen",
  "parts.unsprung": "ungefedert",
  "parts.halfsprung": "halb ungefedert",
  "parts.sprung": "gefedert",
  "parts.deleted": "{part} gelöscht.",

  "basis.weighed.short": "gewogen",
  "basis.stated.short": "Hersteller",
  "basis.typical.short": "üblich",
  "basis.guessed.short": "geschätzt",

  "part.offset": "Von der Stelle",
  "part.forward": "nach vorn",
  "part.left": "nach links",
  "part.up": "nach oben",
  "part.delete": "Löschen",
  "part.handedover": "{part} nach {build} verschoben.",

  "add.results.one": "Ein Teil gefunden.",
  "add.results.many": "{n} Teile gefunden.",
  "add.list": "{n} Teile als Liste ansehen",
  "add.none": "Nichts dergleichen im Katalog.",
  "add.early": "Was passt, wird gesucht, sobald das Programm da ist. Die Eingabetaste bewahrt dies bis dahin auf.",
  "add.waits": "Wartet auf das Programm: {list}",
  "add.own": "„{name}“ als eigenes Teil hinzufügen",
  "add.own.mass": "„{name}“ mit {mass} hinzufügen",

  "field.number": "Hier gehört eine Zahl hin, etwa 12,5 oder 12.5.",
  "field.whole": "Hier gehört eine ganze Zahl hin.",
  "field.other": "Im anderen Aufbau",

  "frame.notes": "Notizen",

  "link.in.bad": "Der Link ließ sich nicht lesen: {why}",

  "unit.l": "l",
  "unit.g0": "g",

  "do.load": "Ladung von {letter}",
  "do.state": "gezeigter Zustand",
  "do.newload": "neue Ladung",

  "carry.supplies": "Vorräte",

  "state.bare": "nackt",
  "state.ready": "fahrbereit",
  "state.loaded": "beladen",
  "state.ridden": "mit Fahrer",

  "supplies.full": "voll",
  "supplies.half": "halb",
  "supplies.empty": "verbraucht",

  "load.new.name": "Unbenannte Ladung",

  "bag.own": "„{name}“ als eigene Tasche hinzufügen",

  "good.own": "„{name}“ als etwas Eigenes hinzufügen",

  "bag.volume": "Volumen",

  "limits.caution": "Werte vom Papier, auf fester Straße. Die Angaben der Hersteller, die Vorschriften am Ort und eine gelernte Fachkraft entscheiden.",

  "ratings.verdict.ok": "innerhalb",
  "ratings.verdict.near": "kann darüber sein",
  "ratings.verdict.over": "darüber",

  "about.sources.parts":
    "Massen: was Sie gewogen haben, was ein Hersteller angibt, oder eigene übliche Werte, jeder mit der Halbbreite, in der wirkliche Teile seiner Art liegen.",
  "about.sources.plus":
    "±: JCGM 100:2008, Leitfaden zur Angabe der Unsicherheit beim Messen, mit Erweiterungsfaktor 2 (etwa 19 von 20 Fällen), und nie mehr als alle Halbbreiten in voller Höhe zusammengezählt.",
  "about.sources.axes": "Achsen: ISO 8855. Radgrößen: ISO 5775.",
  "about.sources.body": "Der Körper des Fahrers: Drillis und Contini (1966) für Längen, de Leva (1996) für Massen und ihre Lage.",

  "offline.incomplete": "nicht jede Datei ließ sich holen",
  "offline.unkept":
    "Die neue Version wurde nicht geladen: Ihr Dokument ist nicht in diesem Browser aufbewahrt. Speichern Sie es erst als Datei und laden Sie dann die Seite neu.",

  language: "Sprache",
  "language.failed": "Die Texte dieser Sprache ließen sich nicht laden ({why}). Die Seite bleibt, wie sie ist.",

  "do.edit.builds": "{field} von {part} in {n} Aufbauten",
  "do.edit.loads": "{field} von {part} in {n} Ladungen",
  "do.apart": "{part} von {build} für sich",

  "scale.open": "An der Waage",
  "scale.open.name": "Die Teile eins nach dem anderen auf einer Küchenwaage wiegen",
  "shared.builds": "in {n} Aufbauten",
  "shared.loads": "in {n} Ladungen",
  "shared.better": "{name} kennt es genauer: {mass}, {basis}.",
  "shared.take": "Hier übernehmen",
  "shared.take.name": "Hier übernehmen: {mass} für {name}",
  "shared.note.builds": "Auch in: {names}. Masse, ±, Grundlage, Name und Notiz werden für alle einmal eingegeben.",
  "shared.note.loads": "Auch in: {names}. Masse, ±, Grundlage und Name werden für alle einmal eingegeben.",
  "shared.apart": "Nur hier",
  "shared.apart.done": "{part} steht jetzt für sich: Was Sie eingeben, gilt nur hier.",

  "change.open": "Antrieb, Räder … wechseln",

  "table.copy.semicolon": "als CSV, Dezimalkomma",

  "report.together": "Zusammen",

  "rooms.figure": "Wert",
  "rooms.difference": "Unterschied",
  "rooms.verdict": "Urteil",
  "rooms.working": "Wird berechnet …",
  "rooms.first": "Messen Sie zuerst: {list}.",

  "chart.save": "Diagramm sichern",
  "chart.save.name": "Als SVG sichern: {label}",
  "chart.failed": "Das Diagramm lässt sich nicht sichern: {why}",

  "known.value": "Wert",
  "known.half": "± von {of}",
  "known.from": "Bekannt durch",
  "known.basis": "Bekannt durch, {of}",
  "known.typical": "üblich",
  "known.forget": "Wieder üblich",
  "known.note": "Notiz zu {of}",
  "known.noted": "Notiz",
  "known.reckoned": "gerechnet",
  "known.boundless": "angegeben, ± typisch",
  "known.unstated": "nicht angegeben",
  "known.remove": "Entfernen",
} satisfies Record<keyof typeof en, string>);
