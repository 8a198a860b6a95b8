// The drawing on paper.

import { html, nothing, type TemplateResult } from "lit";
import { core } from "../../core/core.ts";
import { store } from "../../app/state.ts";
import { svgElement } from "../../io/svg.ts";

const wide = 1000; // px of the drawing, scaled to the paper
const high = 560;

export function printPicture(): TemplateResult {
  return html`<figure>${picture()}</figure>`;
}

// picture is the same drawing as the canvas's, light and with the whole bike.
function picture(): Node | typeof nothing {
  const { look, letter, doc, early } = store;
  if (early) return svgElement(early.picture) ?? nothing;
  const text = core.svg(store.text, {
    build: store.activeID,
    ghost: look.ghost ? store.otherID : "",
    at: letter === "B" ? "b" : "a",
    ...(look.ghost && store.ids.B ? { ghost_at: letter === "B" ? "a" : "b" } : {}),
    side: look.side,
    dark: false,
    selected: "",
    dimensions: look.dimensions,
    steering: look.steering,
    labels: look.labels,
    key: true,
    units: { mass: doc!.show.mass, length: doc!.show.length },
    width: wide,
    height: high,
  });
  return svgElement(text) ?? nothing;
}
