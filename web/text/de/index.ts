// German, a script of its own that the page fetches when somebody wants it. A
// key that English has and German lacks fails the type check; a text that fills
// in something else fails the tests of data/. So does an entry of the catalogue
// without a German name.

import type english from "../../../data/words/en.json";
import entries from "../../../data/words/entries.de.json";
import words from "../../../data/words/de.json";
import { offer, type Key } from "../offer.ts";
import { about } from "./about.ts";
import { access } from "./access.ts";
import { change } from "./change.ts";
import { load } from "./load.ts";
import { page } from "./page.ts";
import { publish } from "./publish.ts";
import { rooms } from "./rooms.ts";

const texts: Record<Key, string> = { ...page, ...load, ...about, ...access, ...change, ...publish, ...rooms };

offer("de", { texts, words: { ...(words satisfies Record<keyof typeof english, string>), ...entries } });
