// The words of the contents in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "contents.title": "Inhalt",
} satisfies Record<keyof Words, string>);
