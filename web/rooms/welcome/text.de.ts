// The words of the first visit in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "welcome.title": "Wie Sie beginnen",
  "welcome.what":
    "Steelyard wiegt ein Rad auf dem Papier: was seine Teile zusammen wiegen und wie sicher das ist, wo die Masse sitzt, und was ein anderer Aufbau ändern würde.",
  "welcome.demo": "Das Beispiel ansehen",
  "welcome.bike": "Ein Rad beginnen",
  "welcome.list": "Liste mitbringen",
  "welcome.demoed": "Das ist ein Reiserad in drei Aufbauten. Ändern Sie, was Sie möchten: „Rückgängig“ nimmt es zurück.",
} satisfies Record<keyof Words, string>);
