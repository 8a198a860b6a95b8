// The words of the photograph behind the drawing.

import { say } from "../../text/index.ts";

const en = {
  "photo.title": "A photograph behind {build}",
  "photo.lead":
    "Lay a photograph of your own bike behind the drawing: it shows where parts sit, and whether the figures of the frame are right. They can be read off it, too.",
  "photo.how":
    "Stand the bike upright on level ground, without a rider. Take it from the side, square on, from 5 m or farther rather than close, with the camera level at the height of the frame.",
  "photo.private":
    "The picture stays in this browser, at most 2400 points long, and without what the camera noted of place and time. A link never carries it, a file only if you ask for it.",
  "photo.elsewhere": "This build has a photograph, but in another browser: it is not here.",
  "photo.choose": "Choose a picture…",
  "photo.another": "Another picture…",
  "photo.save": "Save a file with the picture ({mb} MB)",
  "photo.remove": "Take the picture away",
  "photo.removed": "The photograph is taken away. This browser forgets it when the page is opened next.",
  "photo.close": "Done",
  "photo.busy": "Reading {name}…",
  "photo.unkept": "This browser keeps no pictures here: this one is gone when the page is closed. Save a file with it.",

  "photo.area": "Set the mark: {mark}",
  "photo.alt": "The photograph",
  "photo.keys":
    "Arrow keys move the mark, with Shift ten times as far. Page Up and Page Down choose the mark before and after, Delete takes it away. Ctrl or Command with Z takes the last change of a mark back, with Shift as well makes it again.",
  "photo.redo": "Redo",
  "photo.nudge": "Move the mark",
  "photo.left": "Left",
  "photo.right": "Right",
  "photo.up": "Up",
  "photo.down": "Down",
  "photo.unset": "Take the mark away",
  "photo.marks": "Marks",
  "photo.open": "open",
  "photo.at": "at {x}, {y}",
  "photo.mark.rear_axle": "Rear axle",
  "photo.mark.front_axle": "Front axle",
  "photo.mark.bottom_bracket": "Bottom bracket",
  "photo.mark.head_top": "Head tube, top",
  "photo.mark.head_bottom": "Head tube, bottom",
  "photo.mark.saddle": "Saddle",
  "photo.mark.tread": "Rear tyre",
  "photo.where.rear_axle": "The end of the axle, in the middle of the rear wheel.",
  "photo.where.front_axle": "The end of the axle, in the middle of the front wheel.",
  "photo.where.bottom_bracket": "The middle of the crank's axle.",
  "photo.where.head_top": "The middle of the tube at its upper end, without bearing and spacers.",
  "photo.where.head_bottom": "The middle of the tube at its lower end.",
  "photo.where.saddle": "The top of the saddle, half way along.",
  "photo.where.tread": "The outermost edge of the tyre, anywhere but on the ground: gives the scale, or checks it.",

  "photo.scale": "Scale",
  "photo.by": "Scale from",
  "photo.by.wheelbase": "the wheelbase",
  "photo.by.wheel": "the rear wheel",
  "photo.wheelbase": "Your wheelbase",
  "photo.distance": "Camera away by",
  "photo.within": "Marks within ±",

  "photo.figures": "What the photograph says",
  "photo.scaled.measured": "To the scale of your wheelbase, {wheelbase}.",
  "photo.scaled.figures": "To the scale of the wheelbase that the figures give, {wheelbase}: measure yours, and all is more certain.",
  "photo.scaled.wheel": "To the scale of the rear wheel, which makes the wheelbase {wheelbase}.",
  "photo.check.agrees": "Wheelbase and rear wheel agree: they are {excess} % apart, and ±{plus} % would be no wonder.",
  "photo.check.differs":
    "Wheelbase and rear wheel do not agree: they are {excess} % apart, and no more than ±{plus} % were to be expected. Look again at both, at the marks, and at the size of the tyre.",
  "photo.more": "Set more marks to read figures.",
  "photo.read": "Read",
  "photo.now": "Now",
  "photo.same": "within what was read",
  "photo.stands":
    "Of a bike that stands on level ground with its springs at full length. The ± is from the marks, from a camera up to 5° askew, from its lens, and from how far each mark is out to the side. A maker's figure is better than these where it is known: what agrees is not ticked. The drawing stands at its sag, lower than that.",
  "photo.take.one": "Take 1 figure",
  "photo.take.many": "Take {n} figures",
  "photo.take.none": "Nothing is ticked",
  "photo.taken.one": "1 figure taken from the photograph.",
  "photo.taken.many": "{n} figures taken from the photograph.",
  "do.photo.figures": "figures from the photograph",

  "photo.f.frame.stack_mm": "Stack",
  "photo.f.frame.reach_mm": "Reach",
  "photo.f.frame.head_tube_mm": "Head tube length",
  "photo.f.frame.head_angle_deg": "Head angle",
  "photo.f.frame.seat_angle_deg": "Seat angle",
  "photo.f.frame.chainstay_mm": "Chainstay length",
  "photo.f.frame.bb_drop_mm": "Bottom bracket drop",
  "photo.f.fork.length_mm": "Fork length",
  "photo.f.fork.offset_mm": "Fork offset",
  "photo.f.saddle.height_mm": "Saddle height",
  "photo.f.front_centre": "Front centre",
  "photo.f.wheelbase": "Wheelbase",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
