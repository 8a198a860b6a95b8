// The words of changing a set of parts in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "do.change": "{build} umbauen: {set}",
  "do.change.new": "neuer Aufbau {name}",

  "change.title": "{build} umbauen",
  "change.area": "Was gewechselt wird",
  "change.choose": "Wechseln zu",
  "change.hint": "Wählen Sie einen Satz, um zu sehen, was geht, kommt und bleibt. Nichts ändert sich, bevor Sie es sagen.",
  "change.on": "schon daran",
  "change.unfit.one": "Noch einer, für ein anderes Rad",
  "change.unfit.many": "{n} weitere, für andere Räder",
  "change.goes": "Geht",
  "change.comes": "Kommt",
  "change.stays": "Bleibt",
  "change.remarks": "Bitte ansehen",
  "change.aside.one": "Eines davon wird für später aufgehoben: Es ist genauer bekannt, als der Katalog sagt.",
  "change.aside.many": "{n} davon werden für später aufgehoben: Sie sind genauer bekannt, als der Katalog sagt.",
  "change.from.aside": "war aufgehoben",
  "change.from.build": "aus {build}",
  "change.nothing": "Dieser Satz ist schon ganz an diesem Aufbau.",
  "change.total": "Jetzt {before}, danach {after}:",
  "change.caution": "Was zusammenpasst, ist allgemeine Praxis. Es entscheiden die Anleitungen der Hersteller, örtliche Vorschriften und eine Fachwerkstatt.",
  "change.newname": "Name, falls es ein neuer Aufbau wird",
  "change.name": "{build}: {set}",
  "change.this": "Diesen Aufbau umbauen",
  "change.new": "Einen neuen Aufbau daraus machen",
  "change.done": "{build} hat jetzt: {set}.",
  "change.made": "Den Aufbau „{name}“ gemacht; er ist Aufbau B.",
} satisfies Record<keyof Words, string>);
