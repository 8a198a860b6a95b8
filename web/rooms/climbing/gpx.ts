// The track of a GPX file: places with their heights, read by the browser's own XML
// parser. Names and times in it are not looked at.

import type { Key } from "../../text/index.ts";

// mostBytes is how large a file is read: a day of a receiver that writes a point a
// second, with much beside.
export const mostBytes = 20 * 2 ** 20;

export type Place = [latitude: number, longitude: number, height: number];

// Nodes are what is asked of a document, so that a test may stand in for a browser.
export interface Nodes {
  getElementsByTagNameNS(namespace: string, name: string): ArrayLike<Point>;
}

export interface Point extends Nodes {
  getAttribute(name: string): string | null;
  readonly textContent: string | null;
}

const browser = (text: string): Nodes => new DOMParser().parseFromString(text, "application/xml") as unknown as Nodes;

// figure reads a number; what is empty or none is NaN.
const figure = (text: string | null | undefined) => (text?.trim() ? Number(text) : NaN);

// readTrack gives the places of a file's track, or of its route where it has no
// track; else the text that says why there is none. A file that brings a document
// type is refused unread, for that is where entities are made, and tracks have none.
export function readTrack(text: string, parse: (text: string) => Nodes = browser): { places: Place[] } | { why: Key } {
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text)) return { why: "climbing.gpx.entities" };
  if (!/<(?:\w+:)?gpx[\s>]/.test(text)) return { why: "climbing.gpx.none" };
  // Half a file is seen at once; the parser would fill the console about it.
  if (!/<\/(?:\w+:)?gpx\s*>/.test(text) && !/<(?:\w+:)?gpx(?:\s[^<>]*)?\/>/.test(text)) return { why: "climbing.gpx.broken" };
  const file = parse(text);
  if (file.getElementsByTagNameNS("*", "parsererror").length) return { why: "climbing.gpx.broken" };
  let points = Array.from(file.getElementsByTagNameNS("*", "trkpt"));
  if (!points.length) points = Array.from(file.getElementsByTagNameNS("*", "rtept"));
  if (!points.length) return { why: "climbing.gpx.notrack" };
  const places: Place[] = [];
  let flat = 0; // that are places, but have no height
  for (const p of points) {
    const latitude = figure(p.getAttribute("lat"));
    const longitude = figure(p.getAttribute("lon"));
    if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 360)) continue;
    const height = figure(p.getElementsByTagNameNS("*", "ele")[0]?.textContent);
    if (Number.isFinite(height)) places.push([latitude, longitude, height]);
    else flat++;
  }
  if (places.length > 1) return { places };
  return { why: flat > 1 ? "climbing.gpx.flat" : "climbing.gpx.few" };
}

// textOf decodes a file by its byte order mark, else as UTF-8.
export function textOf(bytes: Uint8Array): string {
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "utf-8";
  return new TextDecoder(wide).decode(bytes);
}

// nameOf is what a day is called that comes of a file.
export const nameOf = (file: string): string => file.replace(/\.(gpx|xml)$/i, "").trim();
