// A picture of the core, which is SVG as text, as an element of this document.

export function svgElement(text: string): Element | null {
  if (text === "") return null; // what a browser says of a text that is no XML has styles of its own
  const drawn = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
  return drawn.localName === "svg" ? document.importNode(drawn, true) : null;
}
