import assert from "node:assert/strict";
import { test } from "node:test";
import { nameOf, readTrack, textOf, type Nodes, type Point } from "./gpx.ts";

// parse stands in for the browser's parser, for points as these tests write them.
function parse(text: string): Nodes {
  const nodes = (s: string): Nodes => ({
    getElementsByTagNameNS: (_: string, name: string): Point[] =>
      [...s.matchAll(new RegExp(`<${name}([^>]*?)(?:/>|>([\\s\\S]*?)</${name}>)`, "g"))].map(([, attributes = "", inner = ""]) => ({
        ...nodes(inner),
        getAttribute: (a: string) => new RegExp(`${a}="([^"]*)"`).exec(attributes)?.[1] ?? null,
        textContent: inner,
      })),
  });
  return nodes(text);
}

const read = (inner: string) => readTrack(`<gpx version="1.1">${inner}</gpx>`, parse);
const point = (lat: string, lon: string, ele?: string) => `<trkpt lat="${lat}" lon="${lon}">${ele === undefined ? "" : `<ele>${ele}</ele>`}</trkpt>`;

test("the places of a track, with or without times", () => {
  const inner = `<trk><trkseg><trkpt lat="47" lon="8.5"><ele> 500.5 </ele><time>2020-01-01T00:00:00Z</time></trkpt>${point("47.01", "-8", "-3")}</trkseg></trk>`;
  assert.deepEqual(read(inner), {
    places: [
      [47, 8.5, 500.5],
      [47.01, -8, -3],
    ],
  });
});

test("what is no place or has no height is left out, and never taken for nought", () => {
  const inner = [
    point("NaN", "8", "1"),
    point("", "8", "1"),
    point("91", "8", "1"),
    point("47", "8", "NaN"),
    point("47", "8"),
    point("47", "8", ""),
    point("1", "2", "3"),
    point("2", "3", "Infinity"),
    point("4", "5", "6"),
  ].join("");
  assert.deepEqual(read(inner), {
    places: [
      [1, 2, 3],
      [4, 5, 6],
    ],
  });
});

test("a route stands in for a track", () => {
  assert.deepEqual(read(`<rte><rtept lat="1" lon="2"><ele>3</ele></rtept><rtept lat="1" lon="3"><ele>4</ele></rtept></rte>`), {
    places: [
      [1, 2, 3],
      [1, 3, 4],
    ],
  });
});

test("each file that gives no track says why", () => {
  const why = (text: string) => readTrack(text, parse);
  assert.deepEqual(why("a picture"), { why: "climbing.gpx.none" });
  assert.deepEqual(why("<kml></kml>"), { why: "climbing.gpx.none" });
  assert.deepEqual(why(`<!DOCTYPE gpx [<!ENTITY a "aaaa">]><gpx>${point("1", "2", "3")}${point("2", "2", "3")}</gpx>`), { why: "climbing.gpx.entities" });
  assert.deepEqual(read("<parsererror>line 1</parsererror>"), { why: "climbing.gpx.broken" });
  assert.deepEqual(read("<wpt lat='1' lon='2'/>"), { why: "climbing.gpx.notrack" });
  assert.deepEqual(read(point("1", "2") + point("2", "2")), { why: "climbing.gpx.flat" });
  assert.deepEqual(read(point("1", "2", "3")), { why: "climbing.gpx.few" });
});

test("a document type is found before anything is parsed", () => {
  const never = () => assert.fail("parsed");
  assert.deepEqual(readTrack("<!doctype gpx><gpx></gpx>", never), { why: "climbing.gpx.entities" });
});

test("files are decoded by their mark", () => {
  assert.equal(textOf(new Uint8Array([0xff, 0xfe, 0x3c, 0, 0x67, 0])).replace("\ufeff", ""), "<g");
  assert.equal(textOf(new Uint8Array([0xfe, 0xff, 0, 0x3c])).replace("\ufeff", ""), "<");
  assert.equal(textOf(new TextEncoder().encode("<gpx>é")), "<gpx>é");
});

test("a day is called as its file", () => assert.equal(nameOf("Over the pass.GPX"), "Over the pass"));
