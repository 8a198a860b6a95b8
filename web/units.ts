// How figures are written. A report speaks grams and millimetres; the document
// says in which units they are shown. Decimals follow the doubt: a figure is
// not written finer than it is known.

import { t } from "./text/index.ts";
import type { LengthUnit, MassUnit, Show, Vec3 } from "./model/types.ts";

const gramsPerPound = 453.59237;
const gramsPerOunce = gramsPerPound / 16;
const mmPerInch = 25.4;

// Written is a number ready to be set: the part before the decimal sign, the
// sign with what follows it, and the unit.
export interface Written {
  whole: string;
  rest: string;
  plus: string; // what stands after ±, empty for an exact figure
  unit: string;
}

const narrow = "\u202f";
export const minus = "\u2212";

// decimal writes a number with a fixed number of decimals, thousands set apart.
export function decimal(v: number, decimals: number): string {
  if (!Number.isFinite(v)) return "–";
  const s = Math.abs(v).toFixed(decimals);
  const [w = "0", f] = s.split(".");
  const grouped = w.length > 4 ? w.replace(/\B(?=(\d{3})+$)/g, narrow) : w;
  const out = f === undefined ? grouped : grouped + t("number.decimal") + f;
  return v < 0 && Number(s) !== 0 ? minus + out : out;
}

export function signed(v: number, decimals: number): string {
  const s = decimal(v, decimals);
  if (s.startsWith(minus) || !Number.isFinite(v)) return s;
  return Number(Math.abs(v).toFixed(decimals)) === 0 ? s : "+" + s;
}

export interface Scale {
  unit: string;
  per: number; // of the report's unit in one of this
  decimals: number; // usual
  fine: number; // when the doubt is less than one of the last usual decimal
}

const same = (unit: string, decimals: number, fine: number): Scale => ({ unit, per: 1, decimals, fine });

// figureScale is how a figure of the balance is shown.
export function figureScale(unit: string, show: Show, key = ""): Scale {
  switch (unit) {
    case "g":
      if (show.mass === "g") return same(t("unit.g"), 0, 0);
      if (show.mass === "kg") return { unit: t("unit.kg"), per: 1000, decimals: 2, fine: 3 };
      return { unit: t("unit.lb"), per: gramsPerPound, decimals: 2, fine: 3 };
    case "mm":
      if (show.length === "in") return { unit: t("unit.in"), per: mmPerInch, decimals: 1, fine: 2 };
      return same(t("unit.mm"), 0, 1);
    case "deg":
      return same(t("unit.deg"), 1, 1);
    case "kg_m2":
      return same(t("unit.kg_m2"), 2, 3);
    case "ratio":
      if (key.endsWith("share")) return { unit: t("unit.percent"), per: 0.01, decimals: 1, fine: 1 };
      return same("", 2, 2);
    default:
      return same(unit, 2, 2);
  }
}

// partScale is how one part's mass is shown: small things in small units.
export function partScale(show: Show): Scale {
  if (show.mass === "lb_oz") return { unit: t("unit.oz"), per: gramsPerOunce, decimals: 1, fine: 2 };
  return same(t("unit.g"), 0, 1);
}

function pick(s: Scale, plus: number): number {
  const p = Math.abs(plus) / s.per;
  return p > 0 && p < 0.95 * 10 ** -s.decimals ? s.fine : s.decimals;
}

export function write(v: number, plus: number, s: Scale, sign = false): Written {
  const d = pick(s, plus);
  const text = sign ? signed(v / s.per, d) : decimal(v / s.per, d);
  const dot = text.indexOf(t("number.decimal"));
  return {
    whole: dot < 0 ? text : text.slice(0, dot),
    rest: dot < 0 ? "" : text.slice(dot),
    plus: plus > 0 ? decimal(plus / s.per, d) : "",
    unit: s.unit,
  };
}

// plain joins what write gives, for sentences and copied tables.
export function plain(w: Written, doubt = true): string {
  const n = w.whole + w.rest + (doubt && w.plus ? ` ±${w.plus}` : "");
  return w.unit ? `${n}\u00a0${w.unit}` : n;
}

export function massText(g: number, show: Show): string {
  return plain(write(g, 0, figureScale("g", show)));
}

// between gives the two ends of where a figure likely lies, each with as few
// decimals as tell them apart.
export function between(v: number, plus: number, s: Scale): { low: string; high: string; unit: string } {
  let d = pick(s, plus);
  while (d > 0 && plus / s.per >= 3 * 10 ** (1 - d)) d--;
  return { low: decimal((v - plus) / s.per, d), high: decimal((v + plus) / s.per, d), unit: s.unit };
}

// In a field, masses and lengths stand in these units; other units may be
// typed. The core reads what was typed.
export function massField(show: Show): { unit: string; parse: string; text: (g: number) => string } {
  if (show.mass === "lb_oz") return { unit: t("unit.oz"), parse: "oz", text: (g) => trim(g / gramsPerOunce, 2) };
  return { unit: t("unit.g"), parse: "g", text: (g) => trim(g, 1) };
}

// heavyField is massField for what is weighed whole: a rider, a loaded rack.
export function heavyField(show: Show): { unit: string; parse: string; text: (g: number) => string } {
  if (show.mass === "lb_oz") return { unit: t("unit.lb"), parse: "lb", text: (g) => trim(g / gramsPerPound, 2) };
  if (show.mass === "kg") return { unit: t("unit.kg"), parse: "kg", text: (g) => trim(g / 1000, 3) };
  return massField(show);
}

export function lengthField(show: Show): { unit: string; parse: string; text: (mm: number) => string } {
  if (show.length === "in") return { unit: t("unit.in"), parse: "in", text: (mm) => trim(mm / mmPerInch, 2) };
  return { unit: t("unit.mm"), parse: "mm", text: (mm) => trim(mm, 1) };
}

// trim writes at most so many decimals and no trailing noughts.
export function trim(v: number, decimals: number): string {
  if (!Number.isFinite(v)) return "";
  const r = Number(v.toFixed(decimals));
  const s = String(Math.abs(r)).replace(".", t("number.decimal"));
  return r < 0 ? minus + s : s;
}

export function placeText(p: Vec3, show: Show): [string, string, string] {
  const s = figureScale("mm", show);
  const d = show.length === "in" ? 1 : 0;
  return [decimal(p[0] / s.per, d), decimal(p[1] / s.per, d), decimal(p[2] / s.per, d)];
}

// readNumber reads a bare number as people type it: decimal comma or point,
// the typographer's minus. NaN is for anything else.
export function readNumber(text: string): number {
  const s = text.trim().replace(/\u2212/g, "-").replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(s) ? Number(s) : NaN;
}

export function asMassUnit(s: string): MassUnit {
  return s === "g" || s === "lb_oz" ? s : "kg";
}

export function asLengthUnit(s: string): LengthUnit {
  return s === "in" ? "in" : "mm";
}
