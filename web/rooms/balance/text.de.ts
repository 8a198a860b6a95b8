// The words of the balance in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "balance.short": "Vergleich",
  "do.swap": "Aufbauten tauschen",
  "do.copy": "{build} kopieren",
  "do.newbuild": "neuer Aufbau",
  "do.rename": "Name eines Aufbaus",
  "do.deletebuild": "{build} löschen",

  "builds.title": "Der Vergleich",
  "builds.none": "keiner",
  "builds.choose": "Aufbau {letter} wählen",
  "builds.menu.name": "Mehr zu Aufbau {letter}",
  "builds.rename": "Umbenennen",
  "builds.name": "Name des Aufbaus",
  "builds.copy": "Kopieren",
  "builds.copysuffix": ", Kopie",
  "builds.delete": "Löschen",
  "builds.new": "Neuer leerer Aufbau",
  "builds.newname": "Neuer Aufbau",
  "builds.swap": "A und B tauschen",
  "builds.deleted": "Den Aufbau „{name}“ gelöscht.",
  "builds.copied": "„{name}“ kopiert; die Kopie ist Aufbau B.",
  "builds.first": "Das erste Teil hinzufügen",
  "builds.nob": "Noch nichts, womit zu vergleichen wäre.",
  "builds.nob.copy": "Aufbau A kopieren und die Kopie ändern",
  "builds.stale": "von vor dem Fehler",

  "delta.label": "B minus A",

  "beam.label": "Skala des Unterschieds: {value}, {likely}",
  "beam.lighter": "B leichter",
  "beam.heavier": "B schwerer",

  "table.fold": "Alle Zahlen, und was ± heißt",
  "table.caption": "Werte beider Aufbauten und ihr Unterschied",
  "table.verdict": "Urteil",
  "table.more": "Mehr Werte: drehende Masse, Trägheit",
  "table.less": "Weniger Werte",

  "rows.place": "Schwerpunkt",
  "rows.axles": "Radlasten",
  "rows.springs": "Gefedert und ungefedert",
  "rows.spin": "Drehende Masse",
  "rows.turn": "Widerstand gegen Drehen",

  "carry.with": "mit",
  "carry.choose": "Ladung von {letter}",
  "carry.none": "nichts",
  "carry.state": "Gewogen",
  "carry.add": "Fahrer und Ladung hinzufügen",
  "carry.none.why": "Wählen Sie erst eine Ladung für A oder B.",
  "carry.norider.why": "Keine der Ladungen hat einen Fahrer.",
  "carry.misfit.why": "Der Fahrer passt nicht auf das Rad: „Ladung und Fahrer“ sagt, warum.",
  "carry.fallen": "gewogen {state}",

  "state.bare.help": "Ohne Taschen, Mitgeführtes und Schlösser",
  "state.ready.help": "Alle Teile des Aufbaus, nichts von der Ladung",
  "state.loaded.help": "Mit den Taschen der Ladung und ihrem Inhalt",
  "state.ridden.help": "Auch mit dem Fahrer im Sattel",

  "report.figures": "Werte",
} satisfies Record<keyof Words, string>);
