// How figures are written. A report speaks grams and millimetres; the document
// says in which units they are shown. Decimals follow the doubt by the core's
// rule, units.Decimals, which is here as the table that it was made into: asking
// for each of hundreds of figures would make every edit slower.

import rounding from "./rounding.json";
import { t } from "../text/index.ts";
import type { LengthUnit, MassUnit, Show, Vec3 } from "./types.ts";

const size = rounding.units;

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

// rounded writes a number with so many decimals; -1 is tens.
function rounded(v: number, decimals: number): string {
  const ten = 10 ** -decimals;
  return decimals < 0 ? (Math.round(v / ten) * ten).toFixed(0) : v.toFixed(decimals);
}

// decimal writes a number with a fixed number of decimals, thousands set apart.
export function decimal(v: number, decimals: number): string {
  if (!Number.isFinite(v)) return "–";
  const s = rounded(Math.abs(v), decimals);
  const [w = "0", f] = s.split(".");
  const grouped = w.length > 4 ? w.replace(/\B(?=(\d{3})+$)/g, narrow) : w;
  const out = f === undefined ? grouped : grouped + t("number.decimal") + f;
  return v < 0 && Number(s) !== 0 ? minus + out : out;
}

export function signed(v: number, decimals: number): string {
  const s = decimal(v, decimals);
  if (s.startsWith(minus) || !Number.isFinite(v)) return s;
  return Number(rounded(Math.abs(v), decimals)) === 0 ? s : `+${s}`;
}

export interface Scale {
  unit: string;
  per: number; // of the report's unit in one of this
  decimals: number; // of what is written without its doubt
  most: number; // decimals
}

// plainScale is of what is neither a mass nor a length.
export const plainScale = (unit: string, decimals: number): Scale => ({ unit, per: 1, decimals, most: rounding.most });

const scaleOf = (name: keyof typeof size, decimals: number): Scale => ({
  unit: t(`unit.${name as "g"}`),
  per: size[name].per,
  decimals,
  most: size[name].most,
});

// figureScale is how a figure of the balance is shown.
export function figureScale(unit: string, show: Show, key = ""): Scale {
  switch (unit) {
    case "g":
      if (show.mass === "g") return scaleOf("g", 0);
      return scaleOf(show.mass === "kg" ? "kg" : "lb", 2);
    case "mm":
      return show.length === "in" ? scaleOf("in", 1) : scaleOf("mm", 0);
    case "deg":
      return plainScale(t("unit.deg"), 1);
    case "kg_m2":
      return plainScale(t("unit.kg_m2"), 2);
    case "ratio":
      if (key.endsWith("share")) return { unit: t("unit.percent"), per: 0.01, decimals: 1, most: rounding.most - 2 };
      return plainScale("", 2);
    default:
      return plainScale(unit, 2);
  }
}

// partScale is how one part's mass is shown: small things in small units.
export function partScale(show: Show): Scale {
  return show.mass === "lb_oz" ? scaleOf("oz", 1) : scaleOf("g", 0);
}

// places looks up how many decimals a figure with a doubt is written with, in
// the unit that is shown; null for one that is exact as far as can be told.
function places(plus: number, s: Scale): number | null {
  const p = Math.abs(plus) / s.per;
  const d = Math.min(rounding.steps.find((step) => p >= step.least)?.decimals ?? s.most, s.most);
  return p * 10 ** d >= 0.5 ? d : null;
}

// shortest gives the fewest decimals that write an exact figure.
function shortest(v: number, s: Scale): number {
  return (/\.(\d*[1-9])0*$/.exec((v / s.per).toFixed(s.most))?.[1] ?? "").length;
}

// write writes a figure and its doubt by the rule.
export function write(v: number, plus: number, s: Scale, sign = false): Written {
  const d = places(plus, s);
  return set(v, d ?? shortest(v, s), s, sign, d === null ? "" : decimal(plus / s.per, d));
}

// alone writes a figure as it stands beside its doubt, without that.
export function alone(v: number, plus: number, s: Scale, sign = false): Written {
  return { ...write(v, plus, s, sign), plus: "" };
}

// rough writes a figure whose doubt is not told.
export function rough(v: number, s: Scale, sign = false): Written {
  return set(v, s.decimals, s, sign, "");
}

function set(v: number, d: number, s: Scale, sign: boolean, plus: string): Written {
  const text = sign ? signed(v / s.per, d) : decimal(v / s.per, d);
  const dot = text.indexOf(t("number.decimal"));
  return { whole: dot < 0 ? text : text.slice(0, dot), rest: dot < 0 ? "" : text.slice(dot), plus, unit: s.unit };
}

// plain joins what write gives, for sentences and copied tables.
export function plain(w: Written, doubt = true): string {
  const n = w.whole + w.rest + (doubt && w.plus ? ` ±${w.plus}` : "");
  return w.unit ? `${n}\u00a0${w.unit}` : n;
}

export function massText(g: number, show: Show): string {
  return plain(rough(g, figureScale("g", show)));
}

// between gives the two ends of where a figure likely lies, as fine as the
// figure itself.
export function between(v: number, plus: number, s: Scale): { low: string; high: string; unit: string } {
  const d = places(plus, s) ?? s.decimals;
  return { low: decimal((v - plus) / s.per, d), high: decimal((v + plus) / s.per, d), unit: s.unit };
}

// In a field, masses and lengths stand in these units; other units may be
// typed. The core reads what was typed.
export function massField(show: Show): { unit: string; parse: string; text: (g: number) => string } {
  if (show.mass === "lb_oz") return { unit: t("unit.oz"), parse: "oz", text: (g) => trim(g / size.oz.per, 2) };
  return { unit: t("unit.g"), parse: "g", text: (g) => trim(g, 1) };
}

// heavyField is massField for what is weighed whole: a rider, a loaded rack.
export function heavyField(show: Show): { unit: string; parse: string; text: (g: number) => string } {
  if (show.mass === "lb_oz") return { unit: t("unit.lb"), parse: "lb", text: (g) => trim(g / size.lb.per, 2) };
  if (show.mass === "kg") return { unit: t("unit.kg"), parse: "kg", text: (g) => trim(g / size.kg.per, 3) };
  return massField(show);
}

export function lengthField(show: Show): { unit: string; parse: string; text: (mm: number) => string } {
  if (show.length === "in") return { unit: t("unit.in"), parse: "in", text: (mm) => trim(mm / size.in.per, 2) };
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
  const s = text
    .trim()
    .replace(/\u2212/g, "-")
    .replace(",", ".");
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(s) ? Number(s) : NaN;
}

export function asMassUnit(s: string): MassUnit {
  return s === "g" || s === "lb_oz" ? s : "kg";
}

export function asLengthUnit(s: string): LengthUnit {
  return s === "in" ? "in" : "mm";
}
