// The words of limits and ratings.

import { say } from "../../text/index.ts";

const en = {
  "limits.short": "Limits",
  "do.grip": "grip",
  "do.rating": "rating: {what}",

  "limits.title": "What it permits",
  "limits.gist": "Braking, climbing, axle loads on slopes, and loads against makers’ ratings.",
  "limits.gist.side": "{letter} brakes to {brake} ({braked}) and climbs to {climb} ({climbed})",
  "limits.gist.none": "no rating exceeded",
  "limits.gist.over": "over its rating: {what}",
  "limits.gist.near": "may be over its rating: {what}",
  "limits.none": "Nothing can be said before a build has a centre of mass above the ground.",
  "limits.of": "Of the bike {states}.",
  "limits.road": "Braking and climbing",
  "limits.road.caption": "How hard it can brake and how steeply it can climb",
  "limits.limit": "Limit",
  "limits.brake": "Braking on the level, until the rear wheel lifts",
  "limits.brake.slip": "Braking on the level, until the tyres slip",
  "limits.lift": "Climb, until the front wheel lifts",
  "limits.slip": "Climb, until the rear tyre slips",
  "limits.slip.never": "never",
  "limits.first.lift": "front wheel lifts",
  "limits.first.slip": "rear tyre slips",
  "limits.first.undecided": "undecided",
  "limits.first.brake.lift": "rear wheel lifts",
  "limits.first.brake.slip": "tyres slip",
  "limits.first.brake": "Braking: comes first",
  "limits.first": "Climb: comes first",
  "limits.grip": "Grip of the tyres",
  // The coefficients are from memory.
  "limits.grip.help": "Coefficient of grip: about 0.8 on dry asphalt, 0.6 on gravel, 0.3 on wet earth.",
  "limits.gradient": "Slope",
  "limits.braking": "Braking on slopes",
  "limits.braking.caption": "Largest deceleration before the rear wheel lifts or the tyres slip, by slope",
  "limits.braking.axis": "g",
  "limits.slopes": "Axle loads on slopes",
  "limits.slopes.caption": "Load on each wheel by slope, at steady speed",
  "limits.slopes.label": "Chart of the load on each wheel by slope; the table below it says the same.",
  "limits.braking.label": "Chart of the braking limit by slope; the table below it says the same.",
  "limits.front": "front",
  "limits.rear": "rear",
  "limits.down": "downhill",
  "limits.up": "uphill",
  "limits.table": "The same as a table",

  "ratings.title": "Loads against ratings",
  "ratings.none": "No rating is entered and no bag has a permitted load: nothing to hold the loads against.",
  "ratings.bags": "What is in the bags",
  "ratings.caption": "Loads against makers’ ratings",
  "ratings.what": "Rated part",
  "ratings.load": "Load",
  "ratings.limit": "Limit",
  "ratings.left": "Left",
  "ratings.over": "{mass} over",
  "ratings.used.head": "Used, as a bar",
  "ratings.norider": "Without a rider: nobody rides this load yet.",
  "ratings.enter": "Makers’ ratings",
  "ratings.enter.caption": "Permitted loads as the makers state them",
  "ratings.enter.help": "As printed by the makers; leave empty what is not stated.",

  "rating.total": "Whole bike, all told",
  "rating.front-rack": "Front rack",
  "rating.rear-rack": "Rear rack",
  "rating.fork-cage-left": "Cargo cage, left fork leg",
  "rating.fork-cage-right": "Cargo cage, right fork leg",
  "rating.down-tube-cage": "Cargo cage under the down tube",
  "rating.front-tyre": "Front tyre",
  "rating.rear-tyre": "Rear tyre",
  "rating.front-rim": "Front rim",
  "rating.rear-rim": "Rear rim",

  "clearance.title": "Room for it",
  "clearance.between": "From what to what",
  "clearance.pose": "As posed",
  "clearance.least": "At least",
  "clearance.room": "room",
  "clearance.open": "undecided",
} as const;
say(en);

export type Words = typeof en;
declare module "../../text/index.ts" {
  interface Texts extends Words {}
}
