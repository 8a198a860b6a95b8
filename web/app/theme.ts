// Light or dark: the reader's choice, else the system's.

import { store } from "./state.ts";

export function followTheme(): void {
  const system = matchMedia("(prefers-color-scheme: dark)");
  const set = () => {
    const { theme } = store.look;
    const now = theme === "auto" ? (system.matches ? "dark" : "light") : theme;
    if (document.documentElement.dataset.theme === now) return;
    document.documentElement.dataset.theme = now;
    store.touch();
  };
  system.addEventListener("change", set);
  store.addEventListener("change", set);
  set();
}
