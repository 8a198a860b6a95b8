// The words of weighing at a kitchen scale.

import { say } from "../../text/index.ts";

const en = {
  "scale.title": "At the scale: {build}",
  "scale.total": "Total",
  "scale.done": "{share} % of it weighed, {n} of {of} parts",
  "scale.least": "all weighed: ±{plus}",
  "scale.bar": "Weighed so far",
  "scale.order": "Next comes",
  "scale.order.first": "what narrows most",
  "scale.order.list": "the list's next",
  "scale.find": "Another part",
  "scale.find.placeholder": "type its name",
  "scale.gain": "Weighing it takes the total from ±{plus} to ±{less}.",
  "scale.again": "It is weighed already; what you type takes the place of that.",
  "scale.also": "in {n} builds",
  "scale.all": "All {n} together",
  "scale.one": "One of them",
  "scale.pieces": "What is on the scale",
  "scale.together": "Several parts together…",
  "scale.together.one": "On the scale with one other part",
  "scale.together.many": "On the scale with {n} other parts",
  "scale.together.help":
    "Small parts may lie on the scale at once. They share its reading in proportion to what the list says of each; what the scale is off by stays one error of them all.",
  "scale.do.together": "weigh {n} parts together",
  "scale.took.together": "{n} parts together: {mass}, weighed.",
  "scale.shows": "The scale shows",
  "scale.shows.of": "The scale shows, for {part}",
  "scale.unit": "in {unit}",
  "scale.take": "Take it",
  "scale.skip": "Skip",
  "scale.undo": "Undo",
  "scale.close": "Done",
  "scale.field": "Weight",
  "scale.took": "{part}: {mass}, weighed.",
  "scale.took.builds": "{part}: {mass}, weighed in {n} builds.",
  "scale.outside": "The list said {was}.",
  "scale.light": "That is under a fifth of {usual}, which is usual.",
  "scale.heavy": "That is over five times {usual}, which is usual.",
  "scale.skipped": "Skipped {part}.",
  "scale.undone": "Taken back: {part}.",
  "scale.next": "Next: {part}.",
  "scale.empty": "Type what the scale shows, or skip this part.",
  "scale.step": "Scale's step",
  "scale.tare": "Tare (bowl, bag)",
  "scale.tare.help": "Taken off every reading. Leave 0 where the scale does that itself.",
  "scale.end": "Everything is weighed.",
  "scale.end.skipped.one": "One part is left: it was skipped.",
  "scale.end.skipped.many": "{n} parts are left: they were skipped.",
  "scale.resume.one": "Take up the skipped one",
  "scale.resume.many": "Take up the {n} skipped",
} as const;

say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
