// The words of the picture.

import { say } from "../../text/index.ts";

const en = {
  "picture.short": "Picture",
  "picture.tools": "How it is drawn",
  "builds.a": "Build A",
  "builds.b": "Build B",

  "picture.title": "The picture",
  "picture.frame": "Picture of {build}, drawn to scale",
  "picture.view": "Seen from",
  "picture.side": "Side",
  "picture.rear": "Rear",
  "picture.labels": "Names",
  "picture.dimensions": "Dimensions",
  "picture.steering": "Steering",
  "picture.key": "Key",
  "picture.ghost": "Other build",
  "picture.photograph": "Photograph…",
  "picture.strength": "How strong the photograph is",
  "picture.zoom": "Zoom",
  "picture.in": "Nearer",
  "picture.out": "Farther",
  "picture.fit": "Fit",
  "picture.words": "In words",
  "picture.hint": "Click a marker to choose a part; drag it to move the part.",
  "picture.keys":
    "Arrow keys move the chosen part, with Shift by ten times as much. Page Up and Page Down choose the part before and after. Plus and minus, Ctrl with the wheel, or two fingers zoom; 0 fits.",
  "picture.at": "{x} forward, {y} left, {z} up, {unit}",
  "picture.tolist": "Edit in the list",
  "picture.deselect": "Deselect",

  "nudge.title": "Move it",
  "nudge.back": "Back",
  "nudge.forward": "Forward",
  "nudge.up": "Up",
  "nudge.down": "Down",
  "nudge.left": "Left",
  "nudge.right": "Right",
  "nudge.by": "by {mm} mm",

  "markers.title": "The markers in a table",
  "markers.summary": "What the picture shows",
  "markers.view.side": "{build} from its right side, to scale, front wheel to the right.",
  "markers.view.rear": "{build} from behind, to scale, its left side to the left.",
  "markers.total": "Total: {value}.",
  "markers.centre": "Centre of mass: {x} ahead of the rear axle, {y}, {z} above the ground.",
  "markers.axles": "On the front wheel {front}, {share} of the total; on the rear wheel {rear}.",
  "markers.heaviest": "Heaviest: {list}.",
  "markers.ghost": "Drawn behind it is {build}.",
  "markers.noghost": "The other build is not drawn.",
  "markers.shift": "From its centre of mass to this one it is {list}.",
  "markers.still": "Its centre of mass is in the same place.",
  "markers.forward": "{length} forward",
  "markers.back": "{length} back",
  "markers.left": "{length} to the left",
  "markers.right": "{length} to the right",
  "markers.up": "{length} up",
  "markers.down": "{length} down",
  "markers.middle": "in the middle",
  "markers.left.of": "{length} left of the middle",
  "markers.right.of": "{length} right of the middle",
  "markers.chosen": "Chosen: {part}.",
  "markers.none": "Nothing has a place in the picture yet.",
  "markers.caption": "Markers of {build}, heaviest first. Places are measured from the ground under the rear axle, in {unit}.",
  "markers.part": "Part",
  "markers.mass": "Mass, {unit}",
  "markers.x": "Forward",
  "markers.y": "Left",
  "markers.z": "Up",
  "markers.carrier": "Fixed to",
  "markers.sprung": "Springs",
  "markers.bag": "bag",
  "markers.rider": "rider",
  "markers.choose": "Choose {part}",
  "markers.more": "Show all {n}",
  "markers.fewer": "Show the heaviest",

  "publish.open.picture": "Publish…",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
