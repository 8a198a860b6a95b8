// The words of climbing in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "climbing.title": "Bergauf",
  "climbing.gist": "Tempo, Gang und Zeit an einem Anstieg und über einen Tag, und was Gewicht und Verluste kosten.",
  "climbing.climb": "Der Anstieg",
  "climbing.time": "Zeit",
  "climbing.speed": "Geschwindigkeit",
  "climbing.gear": "Gang",
  "climbing.ingear": "{gear}, {rpm} je Minute",
  "climbing.walks": "zu Fuß",
  "climbing.steepest": "Steilste Steigung im kleinsten Gang",
  "climbing.lift": "Vorderrad hebt ab von",
  "climbing.slip": "Hinterreifen rutscht von",
  "climbing.kilogram": "Ein Kilogramm mehr kostet",
  "climbing.point": "Ein Punkt Wirkungsgrad weniger kostet",
  "climbing.difference": "Unterschied",
  "climbing.split": "Der Unterschied, geteilt",
  "climbing.weight": "Für das Gewicht",
  "climbing.losses": "Für Verluste und Gänge",
  "climbing.together": "Zusammen",
  "climbing.day": "Ein Tag",
  "climbing.noday": "Im Dokument ist kein Tag.",
  "climbing.dayis": "{length}, {ascent} bergauf.",
  "climbing.profile": "Höhe über der Strecke",
  "climbing.energy": "Energie an den Pedalen",
  "climbing.lost": "Davon im Antrieb verloren",
  "climbing.walked": "Zu Fuß",
  "climbing.inputs": "Womit das alles gerechnet ist",

  "do.road": "Straße",
  "do.effort": "was der Fahrer hält",
} satisfies Record<keyof Words, string>);
