// The words of the frame.

import { say } from "../../text/index.ts";

const en = {
  "frame.lead": "As makers print them: on level ground, suspension at full length.",
  "frame.frame": "Frame",
  "frame.fork": "Fork",
  "frame.rear": "Rear suspension",
  "frame.wheels": "Wheels",
  "frame.cockpit": "Stem and bar",
  "frame.saddle": "Saddle",
  "frame.cranks": "Cranks",
  "frame.rigid": "0 travel is rigid",
  "frame.worked": "What follows from it",
  "frame.worked.caption": "Geometry with the suspension at the stated sag",
  "frame.paste": "Paste a maker’s table…",
  "frame.f.stack_mm": "Stack",
  "frame.f.reach_mm": "Reach",
  "frame.f.head_tube_mm": "Head tube",
  "frame.f.head_angle_deg": "Head-tube angle",
  "frame.f.seat_tube_mm": "Seat tube",
  "frame.f.seat_angle_deg": "Seat-tube angle",
  "frame.f.chainstay_mm": "Chainstay",
  "frame.f.bb_drop_mm": "Bottom-bracket drop",

  "fork.f.length_mm": "Length, crown to axle",
  "fork.f.offset_mm": "Offset",
  "fork.f.travel_mm": "Travel",
  "fork.f.sag_mm": "Sag",

  "rear.f.travel_mm": "Travel at the axle",
  "rear.f.sag_mm": "Sag at the axle",
  "rear.f.pivot_forward_mm": "Pivot, ahead of bottom bracket",
  "rear.f.pivot_up_mm": "Pivot, above it",
  "rear.f.shock_frame_mm.0": "Shock on frame, ahead",
  "rear.f.shock_frame_mm.1": "Shock on frame, above",
  "rear.f.shock_swing_mm.0": "Shock on swingarm, ahead",
  "rear.f.shock_swing_mm.1": "Shock on swingarm, above",

  "wheels.f.front.bead_seat_mm": "Front bead seat",
  "wheels.f.front.tyre_mm": "Front tyre",
  "wheels.f.rear.bead_seat_mm": "Rear bead seat",
  "wheels.f.rear.tyre_mm": "Rear tyre",

  "cockpit.f.spacers_mm": "Spacers",
  "cockpit.f.stem_mm": "Stem length",
  "cockpit.f.stem_angle_deg": "Stem angle",
  "cockpit.f.bar_width_mm": "Bar width",
  "cockpit.f.bar_rise_mm": "Bar rise",
  "cockpit.f.bar_back_mm": "Grips behind clamp",

  "saddle.f.height_mm": "Height along seat tube",
  "saddle.f.setback_mm": "Behind seat-tube line",

  "cranks.f.length_mm": "Crank length",
  "cranks.f.width_mm": "Width at the pedals",

  "do.frametable": "frame figures of {build}",
  "frametable.title": "Frame figures for {build}",
  "frametable.text": "What the maker’s table says",
  "frametable.hint":
    "Paste lines such as “Stack 620 mm”, or a whole table with several sizes, in English or German, in mm, cm or inches. Nothing changes until you say so.",
  "frametable.size": "Size",
  "frametable.column": "Column {n}",
  "frametable.figures": "Recognised",
  "frametable.becomes": "becomes",
  "frametable.left": "Not used",
  "frametable.none": "No figure of a frame was recognised.",
  "frametable.choose": "Choose your size.",
  "frametable.sum.one": "One figure will be taken.",
  "frametable.sum.many": "{n} figures will be taken.",
  "frametable.take": "Take these figures",
  "frametable.done.one": "One figure of {build} is as in the table.",
  "frametable.done.many": "{n} figures of {build} are as in the table.",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
