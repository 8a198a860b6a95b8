// The words of notices in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "keep.failed.long": "Dieser Browser bewahrt das Dokument nicht auf ({why}). Speichern Sie es als Datei, bevor Sie die Seite schließen.",
  "keep.conflict.long": "Das in diesem Browser aufbewahrte Dokument wurde in einem anderen Fenster geändert. Nichts wurde überschrieben.",
  "keep.replaced.save": "Das andere als Datei speichern",

  "core.dead": "Die Rechnung ist stehen geblieben ({why}). Ihr Dokument ist erhalten; die gezeigten Werte sind die letzten.",
  "core.restart": "Neu starten",
  "core.save": "Eine Kopie speichern",

  "problems.title.one": "Eines ist zu berichtigen",
  "problems.title.many": "{n} Dinge sind zu berichtigen",
  "problems.warn.one": "Ein Hinweis",
  "problems.warn.many": "{n} Hinweise",
  "problems.stay": "Die gezeigten Werte sind die letzten, die galten.",

  dismiss: "Ausblenden",

  "say.total": "{name}: {value}, {likely}.",
  "say.delta": "B minus A: {value}, {verdict}.",
} satisfies Record<keyof Words, string>);
