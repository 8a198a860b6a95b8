// The words of the masthead and About in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "page.skip": "Zum Vergleich springen",

  "file.title": "Titel des Dokuments",
  "file.group": "Dokument",
  "file.new": "Neu",
  "file.commands": "Befehle",
  "file.bike": "Ein Rad: Rahmen, Größe und Sätze",
  "file.list": "Aufbau aus einer Liste",
  "file.blank": "Leeres Dokument",
  "file.demo": "Beispiel: ein Reiserad in drei Aufbauten",
  "file.open": "Öffnen …",
  "file.open.name": "Ein Dokument oder eine Teileliste (CSV) öffnen",
  "file.save": "Speichern",
  "file.share": "Link teilen",
  "file.print": "Drucken",
  "file.undo": "Rückgängig",
  "file.undo.name": "Rückgängig: {what}",
  "file.redo": "Wiederholen",
  "file.redo.name": "Wiederholen: {what}",
  "file.keys": "Tasten",

  "show.group": "Anzeige",
  "show.mass": "Massen in",
  "show.mass.g": "g",
  "show.mass.kg": "kg",
  "show.mass.lb_oz": "lb, oz",
  "show.length": "Längen in",
  "show.length.mm": "mm",
  "show.length.in": "in",
  "show.theme": "Papier",
  "show.theme.auto": "Auto",
  "show.theme.light": "Hell",
  "show.theme.dark": "Dunkel",

  "keep.kept": "In diesem Browser aufbewahrt",
  "keep.pending": "Wird aufbewahrt …",
  "keep.conflict": "In einem anderen Fenster geändert",
  "keep.failed": "Nicht in diesem Browser aufbewahrt",

  "do.title": "Titel",
  "do.units": "Einheiten",

  "about.open": "Über",
  "about.title": "Über Steelyard",
  "about.what":
    "Steelyard wiegt ein Fahrrad auf dem Papier. Es zählt einen Aufbau Teil für Teil zusammen, setzt jedes Teil an seinen Ort und sagt, was das Ganze wiegt und wie sicher das ist, wo der Schwerpunkt liegt, was die Federung tragen und was sie mitbewegen muss, und was sich zwischen zwei Aufbauten ändert.",
  "about.version": "Version {version}. Alles wird auf diesem Gerät gerechnet; nichts, was Sie eingeben, verlässt es.",
  "about.caution": "Vorsicht",
  "about.caution.text":
    "Steelyard vergleicht Aufbauten; es sagt nicht, dass einer sicher ist. Über zulässige Lasten, Bremsen und Fahrverhalten entscheiden die Angaben der Hersteller, die Verkehrsvorschriften am Ort und eine gelernte Fachkraft.",
  "about.sources": "Woher die Werte kommen",
  "about.offline": "Ohne Netz",
  "about.notices": "Lizenzen dessen, woraus Steelyard besteht",
  "about.notices.getting": "Werden geholt …",
  "about.notices.failed": "Sie ließen sich nicht laden ({why}). Sie stehen auch in der Datei notices.txt neben dieser Seite.",
  "about.notices.file": "als eigene Datei",

  "offline.getting": "Wird für den Betrieb ohne Netz vorbereitet …",
  "offline.ready": "Läuft ohne Netz",
  "offline.away": "Ohne Netz, alles geht",
  "offline.file": "Läuft ohne Netz: eine Datei",
  "offline.failed": "Nicht für den Betrieb ohne Netz bereit",
  "offline.off": "",
  "offline.newer": "Neue Version: laden",
  "offline.newer.name": "Eine neue Version ist da. Laden Sie sie; Ihre Arbeit bleibt.",
  "offline.getting.long": "Die Seite wird in diesem Browser aufbewahrt, damit sie sich ohne Netz öffnet.",
  "offline.ready.long":
    "Die Seite ist in diesem Browser aufbewahrt und öffnet sich ohne Netz. Eine neue Version wird geholt, wenn es eine gibt, und genommen, wenn Sie es sagen.",
  "offline.file.long": "Ganz Steelyard ist in dieser einen Datei. Sie braucht kein Netz und keinen Server.",
  "offline.failed.long": "Dieser Browser hat die Seite nicht aufbewahrt ({why}). Jetzt läuft sie; ohne Netz öffnet sie sich vielleicht nicht wieder.",
  "offline.off.long":
    "Dieser Browser, oder die Adresse, von der die Seite kam, erlaubt es nicht, eine Seite aufzubewahren. Jetzt läuft sie; ohne Netz öffnet sie sich vielleicht nicht wieder.",

  "language.auto": "Auto",

  "publish.open": "Veröffentlichen…",
} satisfies Record<keyof Words, string>);
