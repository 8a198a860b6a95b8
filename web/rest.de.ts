// The German words besides those of the first screen, and all that the core says. A
// key that English has and German lacks fails the type check; a text that fills in
// something else fails a browser test. So does an entry of the catalogue without a
// German name. It is a script of its own too, that shares no piece with the other,
// so that neither waits for a third.

import "every:rooms/*/text.de.ts";
import type english from "../data/words/en.json";
import entries from "../data/words/entries.de.json";
import words from "../data/words/de.json";
import { offer, whole } from "./text/offer.ts";

offer("de", {}, { ...(words satisfies Record<keyof typeof english, string>), ...entries });
whole("de");
