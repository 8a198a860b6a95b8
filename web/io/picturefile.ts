// The picture as a file: an SVG that carries its letters, and the same drawn to a
// PNG. What a person sees beforehand, and what is saved, is one and the same
// text.

import { core } from "../core/core.ts";
import { glyphsOf } from "./fontSubset.ts";
import { base64 } from "./photofile.ts";
import type { View } from "../model/types.ts";

// fontURL finds the page's own rule for a weight of the Go font. Its address is
// a file of the site, or in the one file the font itself.
function fontURL(weight: "400" | "700"): URL | null {
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (!(rule instanceof CSSFontFaceRule)) continue;
      const s = rule.style;
      const own = s.getPropertyValue("font-weight") || "400";
      if (s.getPropertyValue("font-family").replace(/["']/g, "") !== "Go" || s.getPropertyValue("font-style") === "italic") continue;
      const url = /url\(["']?([^"')]+)/.exec(s.getPropertyValue("src"));
      if (url && (own === weight || (own === "normal" && weight === "400"))) return new URL(url[1]!, sheet.href ?? document.baseURI);
    }
  }
  return null;
}

const fonts = new Map<string, Promise<ArrayBuffer | null>>();

// font gets a font once. The one file may fetch nothing, but has it in itself.
function font(weight: "400" | "700"): Promise<ArrayBuffer | null> {
  let f = fonts.get(weight);
  if (!f) {
    f = (async () => {
      const url = fontURL(weight);
      if (!url) return null;
      if (url.protocol === "data:") return Uint8Array.from(atob(url.href.slice(url.href.indexOf(",") + 1)), (c) => c.charCodeAt(0)).buffer;
      const answer = await fetch(url);
      return answer.ok ? answer.arrayBuffer() : null;
    })().catch(() => null);
    f.then((b) => b || fonts.delete(weight)); // without it the next may have more luck
    fonts.set(weight, f);
  }
  return f;
}

// drawSVG draws a picture with its letters inside.
export const drawSVG = async (document: string, view: View): Promise<string> => lettered(core.svg(document, view));

// lettered puts its letters into an SVG. Where the fonts cannot be had, the text
// names fonts that are much alike.
export async function lettered(svg: string): Promise<string> {
  const drawn = new DOMParser().parseFromString(svg, "image/svg+xml");
  const faces = await Promise.all(
    (["400", "700"] as const).map(async (weight) => {
      const text = [...drawn.querySelectorAll("text")]
        .filter((e) => (e.getAttribute("font-weight") === "700") === (weight === "700"))
        .map((e) => e.textContent);
      const ttf = text.length ? await font(weight) : null;
      return ttf ? `@font-face{font-family:Go;font-weight:${weight};src:url(data:font/ttf;base64,${base64(glyphsOf(ttf, text.join("")))})}` : "";
    }),
  );
  const css = faces.join("");
  if (!css) return svg;
  const after = svg.includes("</desc>") ? "</desc>" : "</title>";
  const end = svg.indexOf(after) + after.length;
  return `${svg.slice(0, end)}\n<style>/* Letters: Go fonts, © 2016 Bigelow &amp; Holmes Inc., BSD licence. */${css}</style>${svg.slice(end)}`;
}

const frame = (): Promise<unknown> => new Promise((done) => setTimeout(done, 30));

// drawPNG draws an SVG to a PNG of so many pixels across; null when the browser
// has no room for a canvas of that size.
export async function drawPNG(svg: string, pixels: number): Promise<Blob | null> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = pixels;
  canvas.height = Math.round((pixels * image.naturalHeight) / image.naturalWidth);
  const paint = canvas.getContext("2d");
  if (!paint) return null;
  paint.drawImage(image, 0, 0, canvas.width, canvas.height);
  await frame(); // some browsers have the letters only now
  paint.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/png"));
  canvas.width = canvas.height = 0; // large ones are given back at once
  return blob;
}
