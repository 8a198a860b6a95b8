// German, a script of its own that the page fetches when somebody wants it. A
// key that English has and German lacks fails the type check; a text that fills
// in something else fails a browser test. So does an entry of the catalogue
// without a German name.

import "./text/de.ts";
import "every:rooms/*/text.de.ts";
import type english from "../data/words/en.json";
import entries from "../data/words/entries.de.json";
import words from "../data/words/de.json";
import { offer } from "./text/offer.ts";

offer("de", {}, { ...(words satisfies Record<keyof typeof english, string>), ...entries });
