// The words of the printed report in German.

import { offer } from "../../text/offer.ts";
import type { Words } from "./text.ts";

offer("de", {
  "report.how": "Wie die Werte zustande kamen",
  "report.sources": "Quellen",
  "report.page": "Bericht vom {date}",
} satisfies Record<keyof Words, string>);
