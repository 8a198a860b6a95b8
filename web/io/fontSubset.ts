// The page's letters for a picture that goes elsewhere: of a TrueType font only
// those that a text needs, so that an SVG can carry them. Glyphs keep their
// numbers; the outlines of the others are left out, and all instructions.
// OpenType 1.9, chapters cmap, glyf, head, loca, post.

const kept = ["OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"];

// glyphOf gives a character's glyph, by a table of format 4; 0 when there is none.
function glyphOf(cmap: DataView): (code: number) => number {
  for (let i = 0, n = cmap.getUint16(2); i < n; i++) {
    const at = cmap.getUint32(4 + 8 * i + 4);
    if (cmap.getUint16(at) !== 4) continue;
    const twice = cmap.getUint16(at + 6);
    const [ends, starts] = [at + 14, at + 16 + twice];
    return (code) => {
      for (let k = 0; k < twice; k += 2) {
        if (cmap.getUint16(ends + k) < code) continue;
        const start = cmap.getUint16(starts + k);
        if (start > code) return 0;
        const delta = cmap.getUint16(starts + twice + k);
        const range = starts + 2 * twice + k;
        const offset = cmap.getUint16(range);
        if (!offset) return (code + delta) & 0xffff;
        const g = cmap.getUint16(range + offset + 2 * (code - start));
        return g && (g + delta) & 0xffff;
      }
      return 0;
    };
  }
  return () => 0;
}

// bare is a glyph's outline without instructions, and the glyphs it is made of.
function bare(glyph: Uint8Array): { outline: Uint8Array; parts: number[] } {
  const v = new DataView(glyph.buffer, glyph.byteOffset, glyph.byteLength);
  const contours = v.getInt16(0);
  if (contours >= 0) {
    const at = 10 + 2 * contours;
    const outline = new Uint8Array(glyph.length - v.getUint16(at));
    outline.set(glyph.subarray(0, at)); // and an instruction length of 0
    outline.set(glyph.subarray(at + 2 + v.getUint16(at)), at + 2);
    return { outline, parts: [] };
  }
  const outline = glyph.slice();
  const parts: number[] = [];
  let at = 10;
  for (let flags = 0x20; flags & 0x20; ) {
    flags = v.getUint16(at);
    parts.push(v.getUint16(at + 2));
    outline[at] = (flags & ~0x100) >> 8; // no instructions follow
    at += 4 + (flags & 1 ? 4 : 2) + (flags & 8 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0);
  }
  return { outline: outline.subarray(0, at), parts };
}

function sum(bytes: Uint8Array): number {
  const v = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let s = 0;
  for (let i = 0; i < bytes.length; i += 4) s = (s + v.getUint32(i)) >>> 0;
  return s;
}

const padded = (n: number): number => (n + 3) & ~3;

// glyphsOf cuts a font down to what a text needs of it.
export function glyphsOf(font: ArrayBuffer, text: string): Uint8Array {
  const v = new DataView(font);
  const tables = new Map<string, Uint8Array>();
  for (let i = 0, n = v.getUint16(4); i < n; i++) {
    const at = 12 + 16 * i;
    const tag = String.fromCharCode(...new Uint8Array(font, at, 4));
    if (kept.includes(tag)) tables.set(tag, new Uint8Array(font, v.getUint32(at + 8), v.getUint32(at + 12)));
  }
  const view = (tag: string) => {
    const t = tables.get(tag)!;
    return new DataView(t.buffer, t.byteOffset, t.byteLength);
  };
  const head = view("head");
  const count = view("maxp").getUint16(4);
  const loca = view("loca");
  const long = head.getInt16(50) === 1;
  const place = (g: number) => (long ? loca.getUint32(4 * g) : 2 * loca.getUint16(2 * g));
  const outlines = new Map<number, Uint8Array>();
  const take = (g: number): void => {
    const [from, to] = [place(g), place(g + 1)];
    if (outlines.has(g) || g >= count || to <= from) return;
    const { outline, parts } = bare(tables.get("glyf")!.subarray(from, to));
    outlines.set(g, outline);
    parts.forEach(take);
  };
  take(0);
  const glyph = glyphOf(view("cmap"));
  for (const c of new Set(text)) take(glyph(c.codePointAt(0)!));

  const where = new DataView(new ArrayBuffer(4 * (count + 1)));
  let size = 0;
  for (let g = 0; g <= count; g++) {
    where.setUint32(4 * g, size);
    size += padded(outlines.get(g)?.length ?? 0);
  }
  const glyf = new Uint8Array(size);
  for (const [g, outline] of outlines) glyf.set(outline, where.getUint32(4 * g));
  const newHead = tables.get("head")!.slice();
  const h = new DataView(newHead.buffer);
  h.setUint32(8, 0);
  h.setInt16(50, 1); // long places
  const post = tables.get("post")!.slice(0, 32);
  new DataView(post.buffer).setUint32(0, 0x00030000); // no names of glyphs
  tables.set("glyf", glyf).set("loca", new Uint8Array(where.buffer)).set("head", newHead).set("post", post);

  const tags = [...tables.keys()].sort();
  const whole = 12 + 16 * tags.length + tags.reduce((n, t) => n + padded(tables.get(t)!.length), 0);
  const out = new Uint8Array(whole);
  const o = new DataView(out.buffer);
  const power = Math.floor(Math.log2(tags.length));
  o.setUint32(0, 0x00010000);
  o.setUint16(4, tags.length);
  o.setUint16(6, 16 << power);
  o.setUint16(8, power);
  o.setUint16(10, 16 * tags.length - (16 << power));
  let at = 12 + 16 * tags.length;
  tags.forEach((tag, i) => {
    const t = tables.get(tag)!;
    out.set(t, at);
    for (let k = 0; k < 4; k++) out[12 + 16 * i + k] = tag.charCodeAt(k);
    o.setUint32(16 + 16 * i, sum(out.subarray(at, at + padded(t.length))));
    o.setUint32(20 + 16 * i, at);
    o.setUint32(24 + 16 * i, t.length);
    if (tag === "head") h.setUint32(8, at); // to be found again
    at += padded(t.length);
  });
  o.setUint32(h.getUint32(8) + 8, (0xb1b0afba - sum(out)) >>> 0);
  return out;
}
