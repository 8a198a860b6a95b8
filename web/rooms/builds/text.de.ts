// The words of all builds side by side in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "do.table": "Aufbauten für die Tabelle gewählt",
  "do.base": "Bezug gewählt",

  "all.gist": "{n} Aufbauten nebeneinander.",
  "all.gist.one": "Bisher ein Aufbau. Kopieren Sie ihn und ändern Sie die Kopie, um beide nebeneinander zu sehen.",
  "all.gist.open": "Der leichteste von {n}: offen.",
  "all.gist.best": "Der leichteste von {n}: {name}, {mass}.",
  "all.lead": "Jeder Wert jedes Aufbaus, und darunter, wie er vom Bezug abweicht.",
  "all.state": "Alle gleich gewogen: {state}.",
  "all.caption": "Werte aller Aufbauten, gegen den Bezug gestellt",
  "all.ticks": "Aufbauten in der Tabelle",
  "all.chart": "Woraus die Masse besteht",
  "all.chart.label": "Gestapelte Balken: die Masse von {n} Aufbauten nach Gruppen, mit dem ± der Summe. Die Tabelle darunter sagt dasselbe.",
  "all.chart.note": "Der Strich durch das Ende eines Balkens zeigt, wo die Summe wahrscheinlich liegt.",
  "all.figures": "Werte",
  "all.base": "Bezug",
  "all.base.name": "Bezug: alle gegen {name} stellen",
  "all.sort": "die Aufbauten danach ordnen",
  "all.best": "am besten",
  "all.note": "Der Name eines Werts ordnet die Aufbauten danach.",
  "all.best.note": "Am besten heißt nur, was gegen jeden anderen Aufbau entschieden ist.",
  "all.parts": "Teile aller Aufbauten",
  "all.parts.same": "alle gleich:",
  "all.parts.moved": "verschieden",
  "all.parts.note": "Was jeder Aufbau hat, so viele und so schwere, steht einmal. ± ist, um wie viel alle Stücke zusammen daneben liegen können.",
} satisfies Record<keyof Words, string>);
