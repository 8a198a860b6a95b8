// The words of the printed report in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "report.nothing": "Noch lässt sich nichts drucken: Das Programm, das die Werte ausrechnet, ist unterwegs.",
  "report.demo": "Gedruckt, bevor das Programm da war: die Werte des Beispiels, ausgerechnet, als die Seite gemacht wurde.",
  "report.kept": "Gedruckt, bevor das Programm da war: die letzten in diesem Browser aufbewahrten Werte, {when}, nicht neu gerechnet.",
  "report.how": "Wie die Werte zustande kamen",
  "report.sources": "Quellen",
  "report.page": "Bericht vom {date}",
} satisfies Record<keyof Words, string>);
