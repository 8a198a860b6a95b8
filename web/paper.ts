// What the canvas shows does not reach the printer: for paper the same scene is
// put into the page as SVG, drawn by the core, light and with the whole bike.

import { core } from "./core.ts";
import { store } from "./state.ts";

const wide = 1000; // px of the drawing, scaled to the paper
const high = 620;

export function watchPrinting(plate: HTMLElement): void {
  const box = document.createElement("div");
  box.id = "printed";
  plate.append(box);
  addEventListener("beforeprint", () => {
    const { doc, look } = store;
    if (!doc || core.state !== "ready") return;
    const text = core.svg(JSON.stringify(doc), {
      build: store.activeID,
      ghost: look.ghost ? store.otherID : "",
      at: store.letter === "B" ? "b" : "a",
      ...(look.ghost && store.ids.B ? { ghost_at: store.letter === "B" ? "a" : "b" } : {}),
      side: look.side,
      dark: false,
      selected: "",
      dimensions: look.dimensions,
      labels: look.labels,
      key: true,
      units: { mass: doc.show.mass, length: doc.show.length },
      width: wide,
      height: high,
    });
    const drawn = new DOMParser().parseFromString(text, "image/svg+xml").documentElement;
    if (drawn.localName === "svg") box.replaceChildren(document.importNode(drawn, true));
  });
  addEventListener("afterprint", () => box.replaceChildren());
}
