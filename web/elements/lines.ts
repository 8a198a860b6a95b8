// Ways to the lines of a list and to fields: from the picture, from a table, from a
// problem.

import { workOn } from "../app/activeLoad.ts";
import { lineID, loadLine, splitLine } from "../app/loadlines.ts";
import { store } from "../app/state.ts";
import type { Problem } from "../model/types.ts";
import { domID } from "./element.ts";
import { unfold } from "./section.ts";

// revealLine opens a line of the load that the side looked at carries, and goes
// to its name or its mass; false when the id is a part's.
function revealLine(line: string, to: "name" | "mass_g" = "name"): boolean {
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
function goTo(p: Problem): boolean {
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

function wayTo(p: Problem): { fold: string; key: string } | null {
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

// go leads to the field where a problem can be put right.
export function go(p: Problem): void {
  if (goTo(p)) return;
  if (p.build) store.activateBuild(p.build);
  if (p.part) {
    store.open.add(p.part);
    store.select(p.part);
  }
  store.touch();
  setTimeout(() => {
    const stem = domID("f", [p.build, p.part, p.field].filter(Boolean).join("/"));
    const hit =
      document.getElementById(stem) ??
      document.querySelector<HTMLElement>(`[id^="${stem}_"]:is(input,select,textarea)`) ??
      document.getElementById(domID("row", p.part ?? "")) ??
      document.getElementById(p.part ? "parts" : "frame");
    hit?.scrollIntoView({ block: "center" });
    hit?.focus();
  }, 80);
}

// reveal opens a part's details in the list and goes to one of its fields.
export function reveal(id: string, to: "name" | "mass_g" = "name"): void {
  if (revealLine(id, to)) return;
  store.select(id);
  store.open.add(id);
  store.touch();
  setTimeout(() => {
    const row = document.getElementById(domID("row", id));
    row?.scrollIntoView({ block: "center" });
    document.getElementById(domID("f", `${store.activeID}/${id}/${to}`))?.focus({ preventScroll: true });
  }, 80);
}
