// Whether the page works without a network, and whether a new version waits.
// The service worker, sw.ts, keeps the site; this is the page's end of it. A new
// version never takes over by itself while a page is open: the reader says when,
// and work that is not kept anywhere holds it up.

import { core } from "../core/core.ts";
import { saveFile } from "../app/files.ts";
import { store } from "../app/state.ts";
import { t } from "../text/index.ts";

// "off" is a browser or host without service workers; "file" is the page in one
// file, which needs no host anyway.
export type Offline = "off" | "getting" | "ready" | "failed" | "file";

const hour = 3_600_000; // ms between looks for a new version

class Keeper {
  state: Offline = "off";
  why = "";
  newer = false; // a new version is ready
  private waiting: ServiceWorker | null = null;
  private asked = false;
  private looked = Date.now();

  get away(): boolean {
    return !navigator.onLine;
  }

  start(oneFile: boolean): void {
    for (const type of ["online", "offline"]) addEventListener(type, () => store.touch());
    if (oneFile) {
      this.become("file");
      return;
    }
    if (!("serviceWorker" in navigator) || !isSecureContext) return;
    // The site is fetched once more for keeping; what the reader waits for comes
    // first.
    const go = () => {
      if (core.state !== "ready") return;
      core.removeEventListener("state", go);
      setTimeout(() => this.register().catch((e: unknown) => this.fail(e)), 1000);
    };
    core.addEventListener("state", go);
    go();
  }

  private become(state: Offline): void {
    this.state = state;
    store.touch();
  }

  private fail(e: unknown): void {
    this.why = e instanceof Error ? e.message : String(e);
    this.become("failed");
  }

  private async register(): Promise<void> {
    const { serviceWorker } = navigator;
    let controlled = serviceWorker.controller !== null;
    serviceWorker.addEventListener("controllerchange", () => {
      if (this.asked) location.reload();
      else if (controlled) {
        // Another window has let the new version in.
        this.waiting = null;
        this.offer();
      }
      controlled = true;
    });
    const registration = await serviceWorker.register("sw.js", { updateViaCache: "none" });
    this.become(registration.active ? "ready" : "getting");
    if (registration.waiting) this.offer(registration.waiting);
    this.follow(registration, registration.installing);
    registration.addEventListener("updatefound", () => this.follow(registration, registration.installing));
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState !== "visible" || Date.now() - this.looked < hour) return;
      this.looked = Date.now();
      registration.update().catch(() => {}); // no network: later will do
    });
  }

  private follow(registration: ServiceWorkerRegistration, fresh: ServiceWorker | null): void {
    if (!fresh) return;
    const look = () => {
      if (fresh.state === "installed" && registration.active) this.offer(fresh);
      else if (fresh.state === "activated") this.become("ready");
      else if (fresh.state === "redundant" && !registration.active) this.fail(t("offline.incomplete"));
    };
    fresh.addEventListener("statechange", look);
    look();
  }

  private offer(waiting?: ServiceWorker): void {
    if (waiting) this.waiting = waiting;
    this.newer = true;
    store.touch();
  }

  // renew goes over to the new version once the work is kept.
  async renew(): Promise<void> {
    const { storage } = store;
    while (storage.state === "pending") {
      await new Promise((changed) => storage.addEventListener("state", changed, { once: true }));
    }
    if (storage.state !== "kept") {
      store.tell(t("offline.unkept"), { label: t("file.save.name"), run: () => saveFile() }, "error");
      return;
    }
    if (this.waiting?.state === "installed") {
      this.asked = true;
      this.waiting.postMessage("take over");
    } else location.reload();
  }
}

export const offline = new Keeper();
