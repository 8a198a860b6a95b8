// The service worker keeps one version of the site, whole, and answers for the
// host from it: the page opens without a network. A version is the hash of all
// its files. The files of a new one are fetched beside the old; the new one
// takes over when the reader says so, or when no window shows the old any more.
//
// internal/site writes the list of files, each with its SHA-256, and the version
// into this script, so that the script changes when any of them does.

declare const FILES: Record<string, string>; // hex digits by path
declare const VERSION: string;

// What is needed of the worker's global scope; the page's types have none of it.
interface Waiting extends Event {
  waitUntil(done: Promise<unknown>): void;
}
interface Asked extends Waiting {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Scope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: "install" | "activate", listener: (e: Waiting) => void): void;
  addEventListener(type: "fetch", listener: (e: Asked) => void): void;
  addEventListener(type: "message", listener: (e: MessageEvent<unknown>) => void): void;
}
const worker = globalThis as unknown as Scope;

// Other sites may live on the same host, in other folders.
const { scope } = worker.registration;
const ours = `steelyard ${scope} `;
const name = ours + VERSION;

const short = (hash: string): string => hash.slice(0, 8); // as pages link it
const piece = /-[0-9A-Z]{8}\.js$/; // of a script: esbuild has put the hash into its name
const address = (path: string, hash: string): string => new URL(piece.test(path) ? path : `${path}?v=${short(hash)}`, scope).href;

async function digest(bytes: ArrayBuffer): Promise<string> {
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(sum, (b) => b.toString(16).padStart(2, "0")).join("");
}

// get fetches a file and returns it when it is the one of this version. While a
// host is half-way from one version to the next, it is not.
async function get(url: string, path: string, hash: string, cache: RequestCache): Promise<Response | null> {
  const answer = await fetch(url, { cache, credentials: "same-origin" });
  if (!answer.ok) throw new Error(`${path}: the host answered ${answer.status}`);
  const bytes = await answer.arrayBuffer();
  const head = new Uint8Array(bytes, 0, Math.min(2, bytes.byteLength));
  // Some hosts send .gz files as compressed pages; the browser has inflated it.
  const inflated = path.endsWith(".gz") && !(head[0] === 0x1f && head[1] === 0x8b);
  if (!inflated && (await digest(bytes)) !== hash) return null;
  // Made anew: without the marks of a redirection and of the transfer's packing.
  const headers = new Headers(answer.headers);
  headers.delete("Content-Encoding");
  headers.set("Content-Length", String(bytes.byteLength));
  return new Response(bytes, { headers });
}

async function fill(): Promise<void> {
  const cache = await caches.open(name);
  const older = await Promise.all((await caches.keys()).filter((k) => k.startsWith(ours) && k !== name).map((k) => caches.open(k)));
  await Promise.all(
    Object.entries(FILES).map(async ([path, hash]) => {
      const url = address(path, hash);
      if (await cache.match(url)) return;
      for (const other of older) {
        const same = await other.match(url);
        if (same) return cache.put(url, same);
      }
      const answer = (await get(url, path, hash, "default")) ?? (await get(url, path, hash, "reload"));
      if (!answer) throw new Error(`${path} is not that of version ${VERSION}`);
      return cache.put(url, answer);
    }),
  );
}

// answer gives what is kept for a path. A window that still shows another
// version asks the host first for that version's file.
async function answer(request: Request, path: string, hash: string): Promise<Response> {
  const cache = await caches.open(name);
  const asked = new URL(request.url).searchParams.get("v");
  const kept = () => cache.match(address(path, hash));
  if (asked !== null && asked !== short(hash)) {
    try {
      const fresh = await fetch(request);
      if (fresh.ok) return fresh;
    } catch {
      // Without a network, what is kept has to do.
    }
  }
  return (await kept()) ?? fetch(request);
}

worker.addEventListener("install", (e) => e.waitUntil(fill()));

worker.addEventListener("activate", (e) => {
  const clear = async () => {
    for (const k of await caches.keys()) if (k.startsWith(ours) && k !== name) await caches.delete(k);
    await worker.clients.claim();
  };
  e.waitUntil(clear());
});

worker.addEventListener("fetch", (e) => {
  const { request } = e;
  const url = new URL(request.url);
  if (request.method !== "GET" || !(url.origin + url.pathname).startsWith(scope)) return;
  const path = decodeURIComponent(url.pathname.slice(new URL(scope).pathname.length)) || "index.html";
  const hash = Object.hasOwn(FILES, path) ? FILES[path] : undefined;
  if (hash !== undefined) e.respondWith(answer(request, path, hash));
});

worker.addEventListener("message", (e) => {
  if (e.data === "take over") void worker.skipWaiting();
});

export {};
