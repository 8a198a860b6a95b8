// The words of the gears in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "gears.gist": "Wie weit die Gänge reichen, wie gleichmäßig sie sind und was der Antrieb verliert.",
  "gears.chart": "Gänge aller Aufbauten nach Entfaltung, auf einer Skala gleicher Sprünge",
  "gears.inches": "Zoll",
  "gears.metres": "m je Umdrehung",
  "gears.as.development": "Entfaltung",
  "gears.as.inches": "Zoll",
  "gears.figures": "Umfang und Sprünge",
  "gears.help": "Entfaltung ist der Weg einer Kurbelumdrehung auf dem belasteten Rad. Gänge, die sich um weniger als 2 % unterscheiden, zählen einmal.",
  "gears.table": "Gänge in der Reihenfolge des Schaltens",
  "gears.gear": "Gang",
  "gears.step": "Sprung, %",
  "gears.speeds": "{low} bis {high} km/h bei {rpm} U/min",
  "gears.speed": "km/h bei {rpm}",
  "gears.efficiency": "Wirkungsgrad, %",
  "gears.double": "mehr als ein Hebel bewegt sich",
  "gears.unread": "Der Antrieb lässt sich nicht von den Teilen ablesen.",
  "gears.typical": "Zähne oder Übersetzungen mancher Teile sind die des typischen Eintrags im Katalog.",
  "gears.losses": "Was der Antrieb verliert",
  "gears.lost": "verloren, %",
  "gears.losses.help": "In Prozent von {watts} W bei {rpm} U/min.",

  "gears.add.other-share": "Verlorenen Anteil hinzufügen",
  "gears.add.other-power": "Verlorene Leistung hinzufügen",
  "gears.whole": "Gemessen und erlaubt",
  "gears.whole.help":
    "Ein gemessener Wirkungsgrad tritt an die Stelle aller Verluste darüber, ein gemessener Abrollweg an die der Maße des Reifens. Auf eine Grenze wird nur geachtet, wenn sie eingetragen ist.",
  "gears.crossed": "Ritzel, die äußere Blätter auslassen",
  "gears.crossed.help": "So viele der größten Ritzel werden auf dem größten Blatt nicht gefahren und so viele der kleinsten auf dem kleinsten; 0 fährt alle.",

  "do.gearunit": "Anzeige der Gänge",
} satisfies Record<keyof Words, string>);
