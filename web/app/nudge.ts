// Moving a part from where it is: by a drag on the canvas, by arrow keys, by
// buttons. A step of one gesture joins the one before.

import { editPart } from "./edit.ts";
import { nudgeBag, splitLine } from "./loadlines.ts";
import { store } from "./state.ts";
import { t } from "../text/index.ts";
import type { Part, Vec3 } from "../model/types.ts";

export const small = 5; // mm
export const large = 50;

const tenth = (v: number) => Math.round(v * 10) / 10;

function shifted(p: Part, by: Vec3): Part {
  const add = (v: Vec3): Vec3 => [tenth(v[0] + by[0]), tenth(v[1] + by[1]), tenth(v[2] + by[2])];
  return p.at_mm ? { ...p, at_mm: add(p.at_mm) } : { ...p, offset_mm: add(p.offset_mm) };
}

export function nudge(part: string, by: Vec3): void {
  if (splitLine(part)) {
    nudgeBag(part, by);
    return;
  }
  const p = store.part(part);
  if (!p || !by.some((v) => v !== 0)) return;
  store.edit(t("do.nudge", { part: p.name }), (d) => editPart(d, store.activeID, part, (q) => shifted(q, by)), `nudge/${part}`);
}

// arrow gives the way that an arrow key points at in the present view.
export function arrow(key: string, much: boolean): Vec3 | null {
  const d = much ? large : small;
  const rear = store.look.side === "rear";
  switch (key) {
    case "ArrowUp":
      return [0, 0, d];
    case "ArrowDown":
      return [0, 0, -d];
    case "ArrowRight":
      return rear ? [0, -d, 0] : [d, 0, 0];
    case "ArrowLeft":
      return rear ? [0, d, 0] : [-d, 0, 0];
    default:
      return null;
  }
}
