// The words of About and of working offline in German; see ../about.ts.

import type { about as english } from "../about.ts";

export const about: Record<keyof typeof english, string> = {
  "about.open": "Über",
  "about.title": "Über Steelyard",
  "about.what":
    "Steelyard wiegt ein Fahrrad auf dem Papier. Es zählt einen Aufbau Teil für Teil zusammen, setzt jedes Teil an seinen Ort und sagt, was das Ganze wiegt und wie sicher das ist, wo der Schwerpunkt liegt, was die Federung tragen und was sie mitbewegen muss, und was sich zwischen zwei Aufbauten ändert.",
  "about.version": "Version {version}. Alles wird auf diesem Gerät gerechnet; nichts, was Sie eingeben, verlässt es.",
  "about.caution": "Vorsicht",
  "about.caution.text":
    "Steelyard vergleicht Aufbauten; es sagt nicht, dass einer sicher ist. Über zulässige Lasten, Bremsen und Fahrverhalten entscheiden die Angaben der Hersteller, die Verkehrsvorschriften am Ort und eine gelernte Fachkraft.",
  "about.sources": "Woher die Werte kommen",
  "about.sources.parts":
    "Massen: was Sie gewogen haben, was ein Hersteller angibt, oder eigene übliche Werte, jeder mit der Halbbreite, in der wirkliche Teile seiner Art liegen.",
  "about.sources.plus":
    "±: JCGM 100:2008, Leitfaden zur Angabe der Unsicherheit beim Messen, mit Erweiterungsfaktor 2 (etwa 19 von 20 Fällen), und nie mehr als alle Halbbreiten in voller Höhe zusammengezählt.",
  "about.sources.axes": "Achsen: ISO 8855. Radgrößen: ISO 5775.",
  "about.sources.body": "Der Körper des Fahrers: Drillis und Contini (1966) für Längen, de Leva (1996) für Massen und ihre Lage.",
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
  "offline.incomplete": "nicht jede Datei ließ sich holen",
  "offline.unkept":
    "Die neue Version wurde nicht geladen: Ihr Dokument ist nicht in diesem Browser aufbewahrt. Speichern Sie es erst als Datei und laden Sie dann die Seite neu.",
};
