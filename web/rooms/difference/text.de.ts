// The words of where the difference comes from in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "difference.short": "Unterschied",
  "diff.title": "Woher der Unterschied kommt",
  "diff.none": "Wählen Sie einen Aufbau B, um zu sehen, was sich ändert.",
  "diff.groups": "Nach Gruppen von Teilen",
  "diff.groups.caption": "Unterschied nach Gruppen von Teilen, B minus A",
  "diff.group": "Gruppe",
  "diff.mass": "B − A",
  "diff.parts": "Teil für Teil",
  "diff.parts.caption": "Teile, die nicht in beiden Aufbauten gleich sind",
  "diff.added": "nur in B",
  "diff.removed": "nur in A",
  "diff.changed": "Gewicht",
  "diff.moved": "Lage",
  "diff.moved.by": "um {by} versetzt",
  "diff.moved.frame": "mit dem Rahmen um {by} versetzt",
  "diff.carrier": "an anderem befestigt",
  "diff.within": "Ort auf {b} bekannt, in A auf {a}",
  "diff.same": "Jedes Teil ist in beiden Aufbauten gleich.",
  "diff.centre": "Was den Schwerpunkt verschoben hat",
  "diff.centre.caption": "Wie weit jede Änderung für sich den Schwerpunkt verschiebt",
  "diff.centre.none": "Nichts hat ihn verschoben.",
  "diff.left": "Links",
  "diff.weigh": "Diese zuerst wiegen",
  "diff.weigh.lead": "Um den Unterschied der Gesamtmassen, jetzt auf ±{now} bekannt, einzuengen:",
  "diff.weigh.step": "dann ±{plus}",
  "diff.weigh.settles": "entscheidet es",
  "diff.weigh.none": "Wiegen bringt nichts: jedes Teil, das zählt, ist gut bekannt.",
  "diff.weigh.build": "Um die Summe von Aufbau {letter}, jetzt auf ±{now} bekannt, einzuengen:",
  "diff.groups.same": "In beiden gleich: {groups}.",
  "diff.bars": "Balken nach rechts: B ist schwerer. Die dünne Linie ist der Bereich, in dem es wahrscheinlich liegt.",
} satisfies Record<keyof Words, string>);
