// The words of the frame in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "frame.lead": "Wie Hersteller ihn angeben: auf ebenem Boden, Federung ganz ausgefahren.",
  "frame.frame": "Rahmen",
  "frame.fork": "Gabel",
  "frame.rear": "Hinterradfederung",
  "frame.wheels": "Laufräder",
  "frame.cockpit": "Vorbau und Lenker",
  "frame.saddle": "Sattel",
  "frame.cranks": "Kurbeln",
  "frame.rigid": "0 Federweg ist starr",
  "frame.worked": "Was daraus folgt",
  "frame.worked.caption": "Geometrie im angegebenen Negativfederweg",
  "frame.paste": "Tabelle des Herstellers einfügen…",
  "frame.f.stack_mm": "Stack",
  "frame.f.reach_mm": "Reach",
  "frame.f.head_tube_mm": "Steuerrohr",
  "frame.f.head_angle_deg": "Lenkwinkel",
  "frame.f.seat_tube_mm": "Sitzrohr",
  "frame.f.seat_angle_deg": "Sitzwinkel",
  "frame.f.chainstay_mm": "Kettenstrebe",
  "frame.f.bb_drop_mm": "Tretlagerabsenkung",

  "fork.f.length_mm": "Länge, Krone bis Achse",
  "fork.f.offset_mm": "Gabelvorbiegung",
  "fork.f.travel_mm": "Federweg",
  "fork.f.sag_mm": "Negativfederweg",

  "rear.f.travel_mm": "Federweg an der Achse",
  "rear.f.sag_mm": "Negativfederweg an der Achse",
  "rear.f.pivot_forward_mm": "Drehpunkt, vor dem Tretlager",
  "rear.f.pivot_up_mm": "Drehpunkt, darüber",
  "rear.f.shock_frame_mm.0": "Dämpfer am Rahmen, davor",
  "rear.f.shock_frame_mm.1": "Dämpfer am Rahmen, darüber",
  "rear.f.shock_swing_mm.0": "Dämpfer an der Schwinge, davor",
  "rear.f.shock_swing_mm.1": "Dämpfer an der Schwinge, darüber",

  "wheels.f.front.bead_seat_mm": "Felgenschulter vorn",
  "wheels.f.front.tyre_mm": "Reifen vorn",
  "wheels.f.rear.bead_seat_mm": "Felgenschulter hinten",
  "wheels.f.rear.tyre_mm": "Reifen hinten",

  "cockpit.f.spacers_mm": "Distanzringe",
  "cockpit.f.stem_mm": "Vorbaulänge",
  "cockpit.f.stem_angle_deg": "Vorbauwinkel",
  "cockpit.f.bar_width_mm": "Lenkerbreite",
  "cockpit.f.bar_rise_mm": "Lenkererhöhung",
  "cockpit.f.bar_back_mm": "Griffe hinter der Klemmung",

  "saddle.f.height_mm": "Höhe entlang des Sitzrohrs",
  "saddle.f.setback_mm": "Hinter der Sitzrohrlinie",

  "cranks.f.length_mm": "Kurbellänge",
  "cranks.f.width_mm": "Breite an den Pedalen",

  "do.frametable": "Rahmenmaße von {build}",
  "frametable.title": "Rahmenmaße für {build}",
  "frametable.text": "Was die Tabelle des Herstellers sagt",
  "frametable.hint":
    "Fügen Sie Zeilen wie „Stack 620 mm“ ein oder eine ganze Tabelle mit mehreren Größen, englisch oder deutsch, in mm, cm oder Zoll. Nichts ändert sich, bevor Sie es sagen.",
  "frametable.size": "Größe",
  "frametable.column": "Spalte {n}",
  "frametable.figures": "Erkannt",
  "frametable.becomes": "wird",
  "frametable.left": "Nicht verwendet",
  "frametable.none": "Es wurde kein Maß eines Rahmens erkannt.",
  "frametable.choose": "Wählen Sie Ihre Größe.",
  "frametable.sum.one": "Ein Maß wird übernommen.",
  "frametable.sum.many": "{n} Maße werden übernommen.",
  "frametable.take": "Diese Maße nehmen",
  "frametable.done.one": "Ein Maß von {build} ist jetzt wie in der Tabelle.",
  "frametable.done.many": "{n} Maße von {build} sind jetzt wie in der Tabelle.",
} satisfies Record<keyof Words, string>);
