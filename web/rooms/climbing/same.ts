// Which inputs two sides of a climb have in common.

import type { ClimbSide, RideInput } from "../../model/types.ts";

// same are inputs of two sides that one says once.
export const same = (a: RideInput, b: RideInput): boolean => a.key === b.key && (a.rider ?? "") === (b.rider ?? "");

// ownInputs are those of a second side that are not said with the first.
export const ownInputs = (first: ClimbSide, second: ClimbSide): RideInput[] => second.inputs.filter((i) => !first.inputs.some((x) => same(i, x)));
