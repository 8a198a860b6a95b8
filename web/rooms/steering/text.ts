// The words of steering and balance.

import { say } from "../../text/index.ts";

const en = {
  "rooms.side": "Side",

  "placements.title": "Where to hang the bags",
  "placements.caption": "Figures of steering with each bag at each place; the signs say how they differ from where it hangs now",
  "placements.bag": "Bag and place",
  "placements.of": "{name}, {mass}; {share} of the inertia about the steering axis",
  "placements.here": "(here now)",
  "placements.copies": "Try as loads",
  "placements.copied": "Made a copy of the load for each place of “{name}”.",
  "placements.none": "Nothing is hung on the bike in the state that is shown; weigh it loaded to compare places.",
  "placements.most": "Of the bags “{name}” weighs most on the steering: it makes {share} of the inertia about the steering axis.",
  "placements.drawn": "Figure drawn for the places",
  "placements.chart": "{figure}: the change from now, with each bag at each place",
  "placements.help":
    "One bag moves, with what is in it; all others stay. ± is of the difference from now. Racks and mounts that a place would need are not added.",

  "do.placements": "copies of the load with “{name}” elsewhere",

  "steering.gist": "How it steers and balances, and what it is to lift, hold and park.",
  "steering.of": "Of the bike {states}; the rider is fixed to the frame, hands off the bar.",
  "steering.of.bare": "Of the bike {states}, without a rider. Weigh it with rider to see how it steers on a tour.",
  "steering.plain": "In plain figures",
  "steering.plain.help":
    "Forces are those of one hand at the grip. Flop is how far the front sinks as the bar turns; a hand holds back what would turn further by itself, a figure below 0 turns back by itself.",
  "steering.balance": "Balance by speed",
  "steering.weave": "Weave dies from",
  "steering.capsize": "Slow fall from",
  "steering.none": "no such speed",
  "steering.weaves": "weave of {period}, {damping} damped",
  "steering.chart": "What grows fastest, over speed: above 0 a disturbance grows",
  "steering.touring": "What a disturbance does if nobody steers",
  "steering.speed": "Speed",
  "steering.more": "doubles in {time}",
  "steering.less": "halves in {time}",
  "steering.balance.help":
    "Between the two speeds the bike balances by itself. A loaded bike often has no such range, and is ridden all the same: the rider steers. Linear bicycle of Meijaard, Papadopoulos, Ruina and Schwab (2007).",
  "steering.hand": "In the hand",
  "steering.hand.help": "Without the rider. Lift with a straight back and help for a loaded bike; a stand on soft ground holds less.",
  "steering.over": "{letter}: the bike falls over its stand on level ground.",
  "steering.stand.typical": "The stand’s foot and lean are typical: measure them for better figures.",
  "steering.stand.forward_mm": "Foot of the stand ahead of the rear axle, mm",
  "steering.stand.out_mm": "Foot of the stand beside the wheels, mm",
  "steering.stand.lean_deg": "Lean on the stand, degrees",

  "do.stand": "stand",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
