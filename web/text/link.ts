// What can be told of a link to a document without reading it: that it is one, and
// what it is called, which stands before the document (internal/document/link.go).

const link = /^#?(?:([^=&]*)=)?sy\d+\./;

export const carriesDocument = (hash: string): boolean => link.test(hash);

// calledIn is what a link says that it holds, empty where it says nothing. Anybody
// may have written that.
export function calledIn(hash: string): string {
  const said = link.exec(hash)?.[1]?.replaceAll("_", " ") ?? "";
  try {
    return decodeURIComponent(said).trim();
  } catch {
    return "";
  }
}
