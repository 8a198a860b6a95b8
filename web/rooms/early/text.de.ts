// The words of the page before its program is there, in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "early.title": "Bevor das Programm da ist",
  "early.demo": "Beispiel, ausgerechnet, als die Seite gemacht wurde.",
  "early.kept": "Die letzten Werte, aus diesem Browser, {when}.",
  "early.edited": "Was danach geändert wurde, ist darin noch nicht enthalten.",
  "early.anew": "Das Programm ist unterwegs: Was Sie öffnen, einfügen oder tippen, zählt, sobald es da ist.",
  "early.coming": "Das Programm, das die Werte ausrechnet, ist unterwegs.",
  "early.waits": "Wartet auf das Programm: {list}.",
  "early.link": "Die Adresse enthält ein Dokument, das jemand teilt. Sie werden danach gefragt, sobald das Programm es lesen kann.",
  "early.link.called":
    "Die Adresse enthält ein Dokument, das jemand teilt, mit dem Namen „{name}“. Sie werden danach gefragt, sobald das Programm es lesen kann.",
  "early.same": "Das Programm hat neu gerechnet und dasselbe gefunden.",
  "early.corrected.one": "Das Programm hat neu gerechnet: Ein Wert ist berichtigt und markiert.",
  "early.corrected.many": "Das Programm hat neu gerechnet: {n} Werte sind berichtigt und markiert.",
} satisfies Record<keyof Words, string>);
