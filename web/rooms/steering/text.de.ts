// The words of steering and balance in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "rooms.side": "Seite",

  "placements.title": "Wohin mit den Taschen",
  "placements.caption": "Werte der Lenkung mit jeder Tasche an jedem Ort; die Zeichen sagen, wie sie sich von jetzt unterscheiden",
  "placements.bag": "Tasche und Ort",
  "placements.of": "{name}, {mass}; {share} der Trägheit um die Lenkachse",
  "placements.here": "(jetzt hier)",
  "placements.copies": "Als Ladungen probieren",
  "placements.copied": "Für jeden Ort von „{name}“ wurde eine Kopie der Ladung angelegt.",
  "placements.none": "Im gezeigten Zustand hängt nichts am Rad; wiegen Sie es beladen, um Orte zu vergleichen.",
  "placements.most": "Von den Taschen lastet „{name}“ am meisten auf der Lenkung: Sie macht {share} der Trägheit um die Lenkachse aus.",
  "placements.drawn": "Für die Orte gezeichnete Größe",
  "placements.chart": "{figure}: die Änderung gegen jetzt, mit jeder Tasche an jedem Ort",
  "placements.help":
    "Eine Tasche zieht um, mit Inhalt; alle anderen bleiben. ± gilt für den Unterschied zu jetzt. Träger und Halter, die ein Ort bräuchte, kommen nicht hinzu.",

  "do.placements": "Kopien der Ladung mit „{name}“ anderswo",

  "steering.gist": "Wie es lenkt und sich hält, und wie es sich heben, halten und abstellen lässt.",
  "steering.of": "Das Rad {states}; der Fahrer ist fest mit dem Rahmen verbunden, ohne Hände am Lenker.",
  "steering.of.bare": "Das Rad {states}, ohne Fahrer. Wie es auf der Reise lenkt, zeigt es mit Fahrer gewogen.",
  "steering.plain": "In einfachen Werten",
  "steering.plain.help":
    "Kräfte sind die einer Hand am Griff. Flop ist, wie weit die Front beim Einschlagen sinkt; eine Hand hält zurück, was sich von selbst weiter drehen würde, ein Wert unter 0 dreht von selbst zurück.",
  "steering.balance": "Gleichgewicht über der Geschwindigkeit",
  "steering.weave": "Pendeln klingt ab von",
  "steering.capsize": "Langsames Kippen von",
  "steering.none": "keine solche Geschwindigkeit",
  "steering.weaves": "Pendeln mit {period}, Dämpfung {damping}",
  "steering.chart": "Was am schnellsten wächst, über der Geschwindigkeit: über 0 wächst eine Störung",
  "steering.touring": "Was eine Störung tut, wenn niemand lenkt",
  "steering.speed": "Geschwindigkeit",
  "steering.more": "verdoppelt sich in {time}",
  "steering.less": "halbiert sich in {time}",
  "steering.balance.help":
    "Zwischen den beiden Geschwindigkeiten hält sich das Rad von selbst. Ein beladenes Rad hat oft keinen solchen Bereich und wird trotzdem gefahren: Der Fahrer lenkt. Lineares Fahrrad nach Meijaard, Papadopoulos, Ruina und Schwab (2007).",
  "steering.hand": "In der Hand",
  "steering.hand.help": "Ohne den Fahrer. Heben Sie ein beladenes Rad mit geradem Rücken und mit Hilfe; auf weichem Boden hält ein Ständer weniger.",
  "steering.over": "{letter}: Das Rad fällt auf ebenem Boden über seinen Ständer.",
  "steering.stand.typical": "Fuß und Neigung des Ständers sind typische Werte: Messen Sie sie für bessere Werte.",
  "steering.stand.forward_mm": "Fuß des Ständers vor der Hinterachse, mm",
  "steering.stand.out_mm": "Fuß des Ständers neben den Rädern, mm",
  "steering.stand.lean_deg": "Neigung auf dem Ständer, Grad",

  "do.stand": "Ständer",
} satisfies Record<keyof Words, string>);
