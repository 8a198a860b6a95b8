// A chart that leaves the page: the SVG that is seen, with what style sheets say of
// it written into it, and its letters.

import { html, type TemplateResult } from "lit";
import { because, download, fileName } from "../app/files.ts";
import { store } from "../app/state.ts";
import { lettered } from "../io/picturefile.ts";
import { t } from "../text/index.ts";

const space = "http://www.w3.org/2000/svg";
const margin = 14; // px of paper round a chart

// looks are what style sheets may say of a mark, with what goes without saying.
const looks: readonly (readonly [string, string])[] = [
  ["fill", "rgb(0, 0, 0)"],
  ["fill-opacity", "1"],
  ["stroke", "none"],
  ["stroke-width", "1px"],
  ["stroke-dasharray", "none"],
  ["stroke-linecap", "butt"],
  ["opacity", "1"],
];
const letters = ["font-family", "font-size", "font-weight"] as const;

// inked writes the looks of an element, as it is drawn, into its copy.
function inked(drawn: Element, copy: Element): void {
  const style = getComputedStyle(drawn);
  for (const [name, usual] of looks) {
    const value = style.getPropertyValue(name);
    if (value && value !== usual) copy.setAttribute(name, value);
  }
  if (drawn.localName === "text") for (const name of letters) copy.setAttribute(name, style.getPropertyValue(name));
  copy.removeAttribute("class");
  for (let i = 0; i < drawn.children.length; i++) inked(drawn.children[i]!, copy.children[i]!);
}

const entry = { wide: 130, high: 20 }; // px

// entries adds what a chart's hatchings mean below it, and returns how high that
// is. On the page it is a list.
function entries(chart: SVGSVGElement, key: ArrayLike<Element>, box: DOMRect): number {
  if (!key.length) return 0;
  const across = Math.max(Math.floor(box.width / entry.wide), 1);
  for (let i = 0; i < key.length; i++) {
    const [x, y] = [(i % across) * entry.wide, box.height + 10 + Math.floor(i / across) * entry.high];
    const sign = key[i]!.querySelector("svg")!;
    const g = document.createElementNS(space, "g");
    g.setAttribute("transform", `translate(${x} ${y})`);
    for (const mark of sign.children) {
      const copy = mark.cloneNode(true) as Element;
      inked(mark, copy);
      g.append(copy);
    }
    const text = document.createElementNS(space, "text");
    text.textContent = key[i]!.textContent!.trim();
    for (const [name, value] of Object.entries({
      x: 28,
      y: 10,
      "font-size": "11px",
      "font-family": getComputedStyle(key[i]!).fontFamily,
      fill: getComputedStyle(key[i]!).color,
    })) {
      text.setAttribute(name, String(value));
    }
    g.append(text);
    chart.append(g);
  }
  return 10 + Math.ceil(key.length / across) * entry.high;
}

// standalone makes a file's text of a chart on the page, on the page's paper.
export function standalone(drawn: SVGSVGElement): string {
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  inked(drawn, copy);
  const walk = document.createTreeWalker(copy, NodeFilter.SHOW_COMMENT);
  const marks: Node[] = [];
  while (walk.nextNode()) marks.push(walk.currentNode);
  for (const m of marks) m.parentNode?.removeChild(m);
  for (const name of ["fill", "stroke", "aria-label", "role"]) copy.removeAttribute(name);
  const box = drawn.viewBox.baseVal;
  const key = drawn.parentElement?.querySelectorAll("li") ?? [];
  const keys = entries(copy, key, box);
  const [wide, high] = [box.width + 2 * margin, box.height + keys + 2 * margin];
  copy.setAttribute("xmlns", space);
  copy.setAttribute("viewBox", `${-margin} ${-margin} ${wide} ${high}`);
  copy.setAttribute("width", String(wide));
  copy.setAttribute("height", String(high));
  const title = document.createElementNS(space, "title");
  title.textContent = drawn.getAttribute("aria-label");
  const paper = document.createElementNS(space, "rect");
  for (const [name, value] of Object.entries({ x: -margin, y: -margin, width: wide, height: high, fill: getComputedStyle(document.body).backgroundColor })) {
    paper.setAttribute(name, String(value));
  }
  copy.prepend(title, paper);
  return new XMLSerializer().serializeToString(copy);
}

async function save(e: Event, label: string): Promise<void> {
  const drawn = (e.currentTarget as Element).closest(".charted")?.querySelector<SVGSVGElement>("svg");
  if (!drawn) return;
  const name = fileName([store.doc?.title, label].filter(Boolean).join(", "), ".svg");
  try {
    download(name, await lettered(standalone(drawn)), "image/svg+xml;charset=utf-8");
    store.tell(t("file.saved", { name }));
  } catch (error) {
    store.tell(t("chart.failed", { why: because(error) }), undefined, "error");
  }
}

// charted puts a press under a chart that saves it as a file.
export function charted(label: string, drawn: TemplateResult): TemplateResult {
  return html`<div class="charted">
    ${drawn}
    <button type="button" class="plain" title=${t("chart.save.name", { label })} @click=${(e: Event) => void save(e, label)}>${t("chart.save")}</button>
  </div>`;
}
