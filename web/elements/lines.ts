// Ways to the lines of a load: from the picture, from a table, from a problem.

import { workOn } from "../app/activeLoad.ts";
import { lineID, loadLine, splitLine } from "../app/loadlines.ts";
import { store } from "../app/state.ts";
import type { Problem } from "../model/types.ts";
import { domID } from "./element.ts";
import { unfold, type Fold } from "./section.ts";

// revealLine opens a line of the load that the side looked at carries, and goes
// to its name or its mass; false when the id is a part's.
export function revealLine(line: string, to: "name" | "mass_g" = "name"): boolean {
  const what = splitLine(line);
  if (!what) return false;
  store.select(line);
  const load = loadLine(line)?.load ?? "";
  if (load) workOn(load);
  if (to === "mass_g" && what.kind === "bag") store.open.add(line); // its mass stands in the details
  unfold("load", domID("f", what.kind === "rider" ? `rider/${what.id}/${to}` : `load/${load}/${what.kind}/${what.id}/${to}`));
  return true;
}

// goTo leads to the field beside the builds where a problem can be put right;
// false when it is a build's.
export function goTo(p: Problem): boolean {
  const way = wayTo(p);
  if (!way) return false;
  if (p.load) workOn(p.load);
  const line = p.bag ? lineID("bag", p.bag) : p.good ? lineID("good", p.good) : "";
  if (line) {
    store.open.add(line);
    store.select(line);
  }
  unfold(way.fold, domID("f", way.key));
  return true;
}

function wayTo(p: Problem): { fold: Fold; key: string } | null {
  const { field = "" } = p;
  if (p.weigh_in) return { fold: "weighin", key: `weigh/${p.weigh_in}/${field}` };
  if (p.bag)
    return {
      fold: "load",
      key: `load/${p.load}/bag/${p.bag}/${field.startsWith("offset_mm") || field.startsWith("size_mm") ? `${field.split(".")[0]}.0` : field}`,
    };
  if (p.good) return { fold: "load", key: `load/${p.load}/good/${p.good}/${field}` };
  // Where a body does not fit, it is often the bike that is to be changed.
  if (p.rider && !field.includes(".") && field !== "frame") return { fold: "load", key: `rider/${p.rider}/${field}` };
  if (p.rider) return null;
  if (p.load) return { fold: "load", key: field === "rider" ? "rider-of" : field };
  if (field.startsWith("show.packing.")) return { fold: "packing", key: field.replaceAll(".", "/") };
  if (field === "show.grip") return { fold: "limits", key: "show/grip" };
  if (p.build && field.startsWith("ratings.")) {
    const what = store.doc?.builds.find((b) => b.id === p.build)?.ratings?.[Number(field.split(".")[1])]?.what;
    return { fold: "limits", key: `${p.build}/ratings/${what}` };
  }
  return null;
}
