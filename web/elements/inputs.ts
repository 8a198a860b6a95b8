// Inputs that the core names, as lines of a table in which each can be said where
// the core tells that it belongs.

import { problemIn, setAt, valueAt, type Place } from "../app/fields.ts";
import { store } from "../app/state.ts";
import { t, word } from "../text/index.ts";
import { knownBasisValues, type DriveLoss, type Known, type Problem, type RideInput, type StageLoss } from "../model/types.ts";
import { trim } from "../model/units.ts";
import { unitText } from "./comparison.ts";
import type { Reckoned } from "./known.ts";

// A share is shown in per cent.
const per = (unit: string) => (unit === "share" ? 100 : 1);

const sign = (unit: string) => (unit === "share" ? t("unit.percent") : unitText(unit));

// stepOf is a step of the arrow keys that is not coarse beside the ±, and a power
// of ten.
const stepOf = (value: number, half: number) => 10 ** Math.min(Math.floor(Math.log10(half || Math.abs(value) / 10 || 1)), 0);

const unsaid: Record<string, () => string> = {
  reckoned: () => t("known.reckoned"),
  unstated: () => t("known.unstated"),
  boundless: () => t("known.boundless"),
};

// line is what inputs and losses have in common: a figure with ± and basis.
function line(key: string, label: string, unit: string, place: Place, typical: Known, from: string, extra: object, problems: readonly Problem[]): Reckoned {
  const own = valueAt(store.doc!, place) as Known | undefined;
  const now = own ?? typical;
  const k = per(unit);
  const set = ({ value, half, basis }: { value?: number; half?: number; basis?: string }) =>
    store.edit(
      label,
      (d) => {
        const old = (valueAt(d, place) as (Known & Partial<StageLoss>) | undefined) ?? typical;
        // Of a list that has changed since the core told of it nothing is taken.
        if ("of" in extra && "of" in old && old.of !== extra.of) return d;
        return setAt(d, place, {
          ...extra,
          ...old,
          ...(value === undefined ? {} : { value: value / k }),
          ...(half === undefined ? {} : { half_width: half / k }),
          ...(basis === undefined ? {} : { basis }),
        });
      },
      key,
    );
  const half = now.half_width ?? 0;
  return {
    key,
    label,
    unit: sign(unit),
    value: now.value * k,
    half: half * k,
    step: stepOf(now.value * k, half * k),
    typical: own === undefined,
    basis: now.basis ?? "",
    bases: knownBasisValues,
    problem: problemIn([...store.problems, ...problems], place),
    ...(unsaid[from] ? { from: unsaid[from]() } : {}),
    set,
    forget: () => store.edit(label, (d) => setAt(d, place, undefined)),
  };
}

// inputLine is a line for an input; problems are those of the answer that it comes
// from.
export function inputLine(i: RideInput, within: string, problems: readonly Problem[] = []): Reckoned {
  const told: Reckoned = {
    key: `${within}/${i.key}`,
    label: i.label,
    unit: sign(i.unit),
    value: i.value * per(i.unit),
    half: i.half_width * per(i.unit),
    typical: i.typical,
    basis: i.basis,
    ...(i.options ? { options: i.options, chosen: i.text ?? "" } : {}),
  };
  if (!i.field) return told;
  const place: Place = { field: i.field, ...(i.build ? { build: i.build } : {}), ...(i.rider ? { rider: i.rider } : {}) };
  const key = `${within}/${i.build ?? i.rider ?? ""}/${i.field}`;
  if (!i.options && !i.bare)
    return line(
      key,
      i.label,
      i.unit,
      place,
      { value: i.value, half_width: i.half_width, basis: i.said_basis as NonNullable<Known["basis"]> },
      i.basis,
      {},
      problems,
    );
  const own = valueAt(store.doc!, place);
  const put = (v: unknown) => store.edit(i.label, (d) => setAt(d, place, v), key);
  return {
    ...told,
    key,
    typical: own === undefined,
    basis: "",
    problem: problemIn([...store.problems, ...problems], place),
    ...(unsaid[i.basis] ? { from: unsaid[i.basis]!() } : {}),
    ...(i.options
      ? { chosen: (own as string | undefined) ?? i.text ?? "", choose: put }
      : {
          bare: true,
          open: true,
          value: ((own as number | undefined) ?? i.value) * per(i.unit),
          step: stepOf(i.value, 0),
          set: ({ value }) => put(value ? value / per(i.unit) : undefined),
        }),
    forget: () => put(undefined),
  };
}

// saidInput is an input as a line of text, with its ± and where it is known from.
export function saidInput(i: RideInput): string {
  const k = per(i.unit);
  if (i.options) return `${i.label}: ${i.options.find((o) => o.value === i.text)?.label ?? i.text ?? ""}`;
  const from = unsaid[i.basis]?.() ?? (i.typical ? t("known.typical") : i.basis ? word("basis", i.basis).toLowerCase() : "");
  const value = [trim(i.value * k, 4), i.half_width ? `± ${trim(i.half_width * k, 4)}` : "", sign(i.unit)].filter(Boolean).join(" ");
  return `${i.label}: ${value}${from ? ` (${from})` : ""}`;
}

// lossLine is a line for a loss of a build's drive.
export function lossLine(l: DriveLoss, build: string): Reckoned {
  const place: Place = { build, field: l.field };
  const stage = l.field.startsWith("losses.stages.");
  const other = l.key.startsWith("other-");
  // All that nobody said have the same place, behind those that somebody said.
  const key = other ? `${build}/${l.field}` : `${build}/losses/${l.key}`;
  const out = line(
    key,
    l.label,
    l.unit,
    place,
    { value: l.value, half_width: l.half_width, basis: l.said_basis as NonNullable<Known["basis"]> },
    l.basis,
    stage ? { of: l.key } : {},
    [],
  );
  const { note } = (valueAt(store.doc!, place) ?? {}) as Partial<StageLoss>;
  return {
    ...out,
    ...(note ? { note } : {}),
    ...(other ? { forgetting: t("known.remove") } : {}),
    ...(stage ? { annotate: (text) => store.edit(l.label, (d) => setAt(d, { ...place, field: `${l.field}.note` }, text || undefined), `${key}/note`) } : {}),
  };
}
