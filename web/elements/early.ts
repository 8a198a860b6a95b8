// How figures are marked that the program has not reckoned now.

import { html, nothing, type TemplateResult } from "lit";
import { store } from "../app/state.ts";
import { spot } from "../app/corrections.ts";
import { speaker } from "../app/language.ts";
import { t } from "../text/index.ts";
import { plain, write, type Scale } from "../model/units.ts";

// when tells a time of the day, with the day when that is not today.
export function when(at: number, now = Date.now()): string {
  const day = new Date(at).toDateString() === new Date(now).toDateString() ? {} : ({ dateStyle: "medium" } as const);
  return new Intl.DateTimeFormat(speaker.code, { ...day, timeStyle: "short" }).format(at);
}

// earlyMark says of figures whose they are and of when, in a word or two; nothing
// once the program has reckoned.
export function earlyMark(): TemplateResult | typeof nothing {
  const { early } = store;
  if (!early) return nothing;
  return html`<span class="early-mark">${early.of === "demo" ? t("early.mark.demo") : t("early.mark.kept", { when: when(early.at) })}</span>`;
}

// amended marks a figure that was shown otherwise before the program was there, and
// says how.
export function amended(of: Parameters<typeof spot>[0], key: string, s: Scale, signed = false): TemplateResult | typeof nothing {
  const was = store.corrected.get(spot(of, key));
  if (!was) return nothing;
  const text = t("early.was", { value: plain(write(was.value, was.plus, s, signed)) });
  return html`<span class="amended" title=${text}><span class="unseen">(${text})</span></span>`;
}
