// The page's keyboard. Undo and redo are the document's wherever the focus is;
// bare keys count only where nobody is typing.

import { chooseFile, openers, saveFile } from "./app/files.ts";
import { deletePart } from "./elements/partActs.ts";
import { store } from "./app/state.ts";

function typing(e: Event): boolean {
  const el = e.target instanceof Element ? e.target : null;
  return el?.closest("input, textarea, select, [contenteditable]") !== null && el !== null;
}

export function listen(): void {
  document.addEventListener("keydown", (e) => {
    if (document.querySelector("dialog[open]")) return;
    const mod = e.ctrlKey || e.metaKey;
    const key = e.key.toLowerCase();
    if (mod && !e.altKey) {
      if (key === "z") {
        e.preventDefault();
        if (e.shiftKey) store.redo();
        else store.undo();
      } else if (key === "y") {
        e.preventDefault();
        store.redo();
      } else if (key === "s" && !e.shiftKey) {
        e.preventDefault();
        saveFile();
      } else if (key === "o" && !e.shiftKey) {
        e.preventDefault();
        chooseFile();
      }
      return;
    }
    // A list to choose from takes letters and digits, and no others.
    const choosing = e.target instanceof HTMLSelectElement;
    if (typing(e) && !choosing) return;
    if (e.key === "?") {
      e.preventDefault();
      openers.keys();
    } else if (e.key === "/") {
      e.preventDefault();
      document.getElementById("add")?.focus();
    } else if (choosing) {
      return;
    } else if ((e.key === "Delete" || e.key === "Backspace") && store.selected) {
      e.preventDefault();
      deletePart(store.selected);
    } else if (e.key === "Escape" && store.selected) {
      e.preventDefault();
      store.select("");
    }
  });
}
