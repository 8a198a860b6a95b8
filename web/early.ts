// This comes before the page's own script, and is small: it asks for what that will
// want first, so that both are on the way at once. It shows nothing.

import { askAhead } from "./io/database.ts";
import { first } from "./io/first.ts";
import { hasSeen, readPreference } from "./io/storage.ts";
import { carriesDocument } from "./text/link.ts";
import { scriptOf, wanted } from "./text/wanted.ts";

askAhead();
const code = wanted(readPreference("language"), navigator.languages);
const texts = scriptOf(code);
if (texts) {
  const link = document.createElement("link");
  link.rel = "modulepreload";
  link.href = texts;
  document.head.append(link);
}
// A page whose own script does not come is seen all the same.
setTimeout(() => (document.documentElement.dataset.settled ??= ""), 8000);
// Who has a document here, or brings one in the address, is not shown the demo.
if (!hasSeen() && !carriesDocument(location.hash)) void first(code);
