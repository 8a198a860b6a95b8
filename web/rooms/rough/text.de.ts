// The words of rough road in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "rough.title": "Schlechte Straße",
  "rough.gist": "Wie die Räder einer schlechten Straße folgen, was der Fahrer spürt und welches Teil den Unterschied macht.",
  "rough.road": "Straße",
  "rough.class.A": "A, glatter Asphalt",
  "rough.class.B": "B, abgenutzter Asphalt",
  "rough.class.C": "C, brüchiger Asphalt oder guter Schotter",
  "rough.class.D": "D, grober Schotter",
  "rough.class.E": "E, eine schlechte Piste",
  "rough.speed": "Geschwindigkeit, km/h",
  "rough.rider": "Fahrer",
  "rough.rider.posture": "wie die Haltung sagt",
  "rough.rider.seated": "im Sitzen",
  "rough.rider.standing": "im Stehen",
  "rough.figures": "Auf dieser Straße",
  "rough.causes": "Was den Unterschied macht: {name}",
  "rough.chart": "Dynamische Last des Hinterreifens über der Geschwindigkeit, beide Aufbauten mit ihrem Zweifel",
  "rough.modes": "Was schwingt, und wie schnell",
  "rough.mode": "Bewegung",
  "rough.damping": "Dämpfung",
  "rough.settings": "Reifen, Federn und Dämpfer, mit denen gerechnet ist",

  "do.rough": "schlechte Straße",
} satisfies Record<keyof Words, string>);
