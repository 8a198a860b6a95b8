// What stands behind the # of the address: a chapter of the page, a document that
// came as a link, or both, the document first: #sy1.…&gears. A link to a document
// alone is as it always was.

export interface Address {
  document: string; // a link's fragment, for the core to read; empty for none
  chapter: string; // a room's name; empty for none
}

const shortest = 24; // characters of a document; what is shorter names a place on the page

export function readAddress(hash: string): Address {
  const [what = "", at = ""] = hash.replace(/^#/, "").split("&", 2);
  return what.length < shortest ? { document: "", chapter: what } : { document: what, chapter: at };
}

// writeAddress is a fragment without its #.
export function writeAddress({ document, chapter }: Address): string {
  return document && chapter ? `${document}&${chapter}` : document || chapter;
}
