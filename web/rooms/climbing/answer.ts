// What the core says of a climb and a day, asked while somebody looks.

import { core } from "../../core/core.ts";
import { Answer } from "../../elements/answer.ts";

export const answer = new Answer((document) => core.climb(document));

// duration writes seconds as hours, minutes and seconds: 1:05:09.
export function duration(seconds: number, sign = false): string {
  const s = Math.round(Math.abs(seconds));
  const two = (n: number) => String(n).padStart(2, "0");
  const text = s >= 3600 ? `${Math.floor(s / 3600)}:${two(Math.floor(s / 60) % 60)}:${two(s % 60)}` : `${Math.floor(s / 60)}:${two(s % 60)}`;
  return (s && seconds < 0 ? "\u2212" : s && sign ? "+" : "") + text;
}
