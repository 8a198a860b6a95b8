// The words of a bike to begin with in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "newbike.title": "Ein neues Rad",
  "newbike.frame": "Rahmen",
  "newbike.size": "Größe",
  "newbike.wheel": "Laufräder, Durchmesser der Felgenschulter",
  "newbike.wheel.622": "28 oder 29 Zoll",
  "newbike.wheel.584": "27½ Zoll",
  "newbike.wheel.559": "26 Zoll",
  "newbike.sets": "Was daran kommt",
  "newbike.none": "Ohne",
  "newbike.ours":
    "Die Maße des Rahmens und alle Gewichte sind typische Werte von uns. Tippen Sie die Ihres Rahmens im Kapitel Rahmen darüber, oder fügen Sie dort die Tabelle seines Herstellers ein.",
  "newbike.parts": "{n} Teile",
  "newbike.stack": "Stack",
  "newbike.reach": "Reach",
  "newbike.make": "Dieses Rad nehmen",
  "newbike.made": "Ein Rad aus {n} Teilen gemacht. Seine Maße sind typische: Das Kapitel Rahmen nimmt die Ihres Rades.",
} satisfies Record<keyof Words, string>);
