// The words of the gears in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "gears.title": "Gänge",
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
  "gears.speed": "km/h bei {rpm}",
  "gears.efficiency": "Wirkungsgrad, %",
  "gears.double": "mehr als ein Hebel bewegt sich",
  "gears.unread": "Der Antrieb lässt sich nicht von den Teilen ablesen.",
  "gears.typical": "Zähne oder Übersetzungen mancher Teile sind die des typischen Eintrags im Katalog.",
  "gears.losses": "Was der Antrieb verliert",
  "gears.loss": "Wodurch",
  "gears.reckoned": "gerechnet mit",
  "gears.basis": "bekannt durch",
  "gears.losses.help": "In Prozent von {watts} W bei {rpm} Umdrehungen je Minute.",

  "do.gearunit": "Anzeige der Gänge",
} satisfies Record<keyof Words, string>);
