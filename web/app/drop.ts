// Files dragged onto the page, or dropped on the canvas.

import { core } from "../core/core.ts";
import { openFile } from "./files.ts";

export function watchDrops(): void {
  const root = document.documentElement;
  let depth = 0;
  const files = (e: DragEvent) => e.dataTransfer?.types.includes("Files") ?? false;
  const shade = (on: boolean) => root.toggleAttribute("data-dropping", on);

  addEventListener("dragenter", (e) => {
    if (!files(e)) return;
    depth++;
    shade(true);
  });
  addEventListener("dragleave", (e) => {
    if (!files(e)) return;
    depth = Math.max(0, depth - 1);
    if (!depth) shade(false);
  });
  addEventListener("dragover", (e) => {
    if (files(e)) e.preventDefault();
  });
  addEventListener("drop", (e) => {
    depth = 0;
    shade(false);
    if (!files(e)) return;
    e.preventDefault();
    take(e.dataTransfer?.files);
  });
  core.ondrop = (list) => {
    depth = 0;
    shade(false);
    take(list);
  };
}

// take opens the first file: the page holds one document.
function take(list: FileList | undefined): void {
  const file = list?.[0];
  if (file) void openFile(file);
}
