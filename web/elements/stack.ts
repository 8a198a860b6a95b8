// Stacked bars: what a whole is made of, one bar for each of several, with the
// doubt of the whole as a whisker at its end. Drawn as in a printed handbook:
// hairlines and hatchings, so that no colour is needed to tell the pieces apart.
// It is for the eye; a table beside it says the same.

import { html, nothing, svg, type TemplateResult } from "lit";
import { decimal } from "../model/units.ts";
import { charted } from "./chartFile.ts";
import { step } from "./deltaScale.ts";

// Piece is a part of a whole. Its tone says in which ink and hatching it is
// drawn, see tones.
export interface Piece {
  key: string;
  value: number;
}

export interface Stack {
  name: string;
  marked: boolean; // the one that the others are set against
  pieces: Piece[];
  whole: number;
  plus: number;
  said: string; // the whole as it is written
}

export interface StackSpec {
  id: string; // begins the ids of its hatchings: what is not shown fills nothing
  label: string;
  wide: number; // px
  unit: string;
  stacks: Stack[];
  names: ReadonlyMap<string, string>; // of the pieces, by key, in their order
}

const barHigh = 20;
const rowHigh = 48;
const foot = 30;
const side = 2;

// hatch is how a piece is filled: ink, and strokes of a tile of the given size.
interface Hatch {
  ink: "text" | "rider" | "luggage";
  wash: number; // strength of the even tone beneath
  size: number;
  path: string;
  turn: number; // degrees
}

const line = (size: number) => `M0 ${size / 2}H${size}`;
const hatch = (wash: number, size = 0, turn = 0, path = line(size), ink: Hatch["ink"] = "text"): Hatch => ({ ink, wash, size, path, turn });

// What the bike is made of is in the ink of the text; rider and luggage have the
// inks that they have in the picture.
const hatches: Record<string, Hatch> = {
  frame: hatch(0.1),
  suspension: hatch(0.04, 5, -45),
  wheels: hatch(0.55),
  drivetrain: hatch(0.06, 4, 45, "M0 2H4M2 0V4"),
  brakes: hatch(0, 4, 90),
  cockpit: hatch(0, 4, 0),
  seat: hatch(0.3),
  racks: hatch(0, 5, 45),
  electrics: hatch(0.04, 5, 0, "M2.5 2.5h.01"),
  other: hatch(0),
  bags: hatch(0.12, 6, -45, line(6), "luggage"),
  carried: hatch(0.3, 6, 45, line(6), "luggage"),
  rider: hatch(0.3, 0, 0, "", "rider"),
};

const hatchOf = (key: string): Hatch => hatches[key] ?? hatches.other!;
const idOf = (id: string, key: string): string => `${id}-${key.replace(/[^a-z]/g, "")}`;

function pattern(id: string, key: string): TemplateResult | typeof nothing {
  const h = hatchOf(key);
  if (!h.size) return nothing;
  return svg`<pattern id=${idOf(id, key)} class="ink-${h.ink} ${key}" width=${h.size} height=${h.size} patternUnits="userSpaceOnUse" patternTransform="rotate(${h.turn})">
    <path d=${h.path} />
  </pattern>`;
}

function piece(id: string, key: string, x: number, y: number, w: number, high: number): TemplateResult {
  const h = hatchOf(key);
  const box = (fill: string, cls: string, strength?: number) =>
    svg`<rect class=${cls} x=${x.toFixed(1)} y=${y} width=${w.toFixed(1)} height=${high} fill=${fill || nothing} fill-opacity=${strength ?? nothing} />`;
  return svg`<g class="piece ink-${h.ink}">${box("", "paper")}${h.wash ? box("", "wash", h.wash) : nothing}${h.size ? box(`url(#${idOf(id, key)})`, "hatched") : nothing}${box("none", "edge")}</g>`;
}

const letter = 5.6; // px, about the width of a letter of the smallest type

export function stacks(s: StackSpec): TemplateResult | typeof nothing {
  if (!s.stacks.length) return nothing;
  const most = Math.max(...s.stacks.map((b) => b.whole + b.plus), 1e-9);
  const mark = step(most, s.wide < 500 ? 4 : 8);
  const reach = Math.max(most, mark);
  const px = (v: number) => side + (v / reach) * (s.wide - 2 * side);
  const high = s.stacks.length * rowHigh + foot;
  const base = high - foot + 4;
  const decimals = Math.max(0, -Math.floor(Math.log10(mark) + 1e-9));
  const ticks = [];
  for (let i = 0; i * mark <= reach * (1 + 1e-9); i++) {
    const x = px(i * mark);
    const text = decimal(i * mark, decimals);
    ticks.push(svg`<path class=${i ? "grid" : "axis"} d="M${x.toFixed(1)} 20V${base}" /><path class="tick" d="M${x.toFixed(1)} ${base}v5" />
      <text class="at" x=${x.toFixed(1)} y=${base + 17} text-anchor=${i === 0 ? "start" : x > s.wide - 20 ? "end" : "middle"}>${i === 0 ? `0 ${s.unit}` : text}</text>`);
  }
  const bar = (b: Stack, row: number) => {
    const y = row * rowHigh + 22;
    let at = 0;
    const drawn = b.pieces.map((p) => {
      const x = px(at);
      at += p.value;
      const w = px(at) - x;
      const name = s.names.get(p.key) ?? p.key;
      return svg`${piece(s.id, p.key, x, y, w, barHigh)}${
        w > name.length * letter + 8
          ? svg`<text class="in" x=${(x + w / 2).toFixed(1)} y=${y + barHigh / 2 + 3.8} text-anchor="middle">${name}</text>`
          : nothing
      }`;
    });
    const [low, whole, top] = [px(b.whole - b.plus), px(b.whole), px(b.whole + b.plus)];
    const mid = y + barHigh / 2;
    return svg`<text class="name ${b.marked ? "marked" : ""}" x="0" y=${y - 6}>${b.name}</text>
      <text class="whole" x=${s.wide} y=${y - 6} text-anchor="end">${b.said}</text>
      ${drawn}
      <path class="end" d="M${whole.toFixed(1)} ${y - 2}v${barHigh + 4}" />
      ${b.plus > 0 ? svg`<path class="whisker" d="M${low.toFixed(1)} ${mid}H${top.toFixed(1)}M${low.toFixed(1)} ${mid - 4}v8M${top.toFixed(1)} ${mid - 4}v8" />` : nothing}`;
  };
  return charted(
    s.label,
    html`<svg class="stacks" viewBox="0 0 ${s.wide} ${high}" role="img" aria-label=${s.label}>
      <defs>${[...s.names.keys()].map((key) => pattern(s.id, key))}</defs>
      ${ticks} <path class="axis" d="M${side} ${base}H${s.wide - side}" />
      ${s.stacks.map(bar)}
    </svg>
    <ul class="stackkey">
      ${[...s.names].map(
        ([key, name]) =>
          html`<li>
            <svg class="stacks" viewBox="0 0 22 12" width="22" height="12" aria-hidden="true" focusable="false">${piece(s.id, key, 0.5, 0.5, 21, 11)}</svg>
            ${name}
          </li>`,
      )}
    </ul>`,
  );
}
