// What somebody gives to the page before its program is there waits here, in the
// order in which it came, and is said to wait.

import { core } from "../core/core.ts";
import { store } from "./state.ts";

interface Waiting {
  name: string; // empty for what need not be told
  go: () => void;
}

class Arrival {
  private list: Waiting[] = [];

  // names are those of what waits.
  get names(): string[] {
    return this.list.map((w) => w.name).filter(Boolean);
  }

  // of waits until the program and the document are there; at once when they are.
  async of(name: string): Promise<void> {
    if (core.state !== "loading") return;
    const gone = new Promise<void>((go) => this.list.push({ name, go }));
    store.touch();
    await gone;
  }

  // now lets go on what waits: the program is there, or is known not to come.
  now(): void {
    const { list } = this;
    this.list = [];
    for (const { go } of list) go();
    store.touch();
  }
}

export const arrival = new Arrival();
