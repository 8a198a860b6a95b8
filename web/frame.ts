// The canvas's own document. It loads the program, tells the page how far it
// is, and carries what happens on the canvas to the program and its answers to
// the page. ebiten takes over the body of the document it runs in, which is
// why it has one of its own.
//
// For the page, on this window:
//
//   steelyardFrame   { state, loaded, total, problem }, also posted as the
//                    message { steelyardFrame: {...} } whenever it changes.
//                    state is "loading" (bytes so far and in all; total is 0
//                    when the host does not say), "ready" (steelyard can be
//                    called), "painted" (the first picture is on the canvas),
//                    "stopped" (the program ended: load the frame again) or
//                    "failed" (it could not start); problem says why. still
//                    is true when there is no canvas to paint on, for the
//                    reason that problem tells; then the page is to show
//                    steelyard.picture() over this frame.
//   steelyard        the program's functions, and what the page may set:
//     onintent(json)    after a pointer event that meant something
//     onkey(event)      a key pressed while the canvas has the focus; answer
//                       true when it was used
//     ondrop(files)     files dropped on the canvas
//     onstill()         the picture has changed, when still
//     ondrawn()         a frame is being drawn
//
// The frame loads itself again when the graphics context is lost: it is then
// "loading" once more, and the page shows its document again when it is ready.

import { programInside } from "./core/inside.ts";
import type { Intent, PointerDid } from "./model/types.ts";

interface Program {
  pointer(event: string): string;
  onintent?: (json: string) => void;
  onkey?: (event: KeyboardEvent) => boolean;
  ondrop?: (files: FileList) => void;
  onstill?: () => void;
  ondrawn?: () => void;
}

interface Status {
  state: "loading" | "ready" | "painted" | "stopped" | "failed";
  still: boolean;
  loaded: number;
  total: number;
  problem: string;
}

// What the program finds and calls on this window.
interface Here {
  steelyard?: Program; // put there by the program
  steelyardFrame: Status;
  steelyardReady: () => void;
  steelyardPainted: () => void;
  steelyardDrawn: () => void;
  steelyardTrouble: (problem: string) => void;
  steelyardStill: (why: string) => void;
  steelyardWake: () => void;
  steelyardFonts: () => Promise<unknown>; // settles when the page's fonts are there, or will not come
}
const here = window as unknown as Here;

// wasm_exec.js of the Go toolchain defines these.
declare class Go {
  importObject: WebAssembly.Imports;
  exit: (code: number) => void;
  run(instance: WebAssembly.Instance): Promise<void>;
}
declare const fs: { writeSync(file: number, bytes: Uint8Array): number };

const told: Status = { state: "loading", still: false, loaded: 0, total: 0, problem: "" };
here.steelyardFrame = told;

function tell(change: Partial<Status>): void {
  Object.assign(told, change);
  const origin = location.origin === "null" ? "*" : location.origin;
  window.parent.postMessage({ steelyardFrame: { ...told } }, origin);
}

const ended = (): boolean => told.state === "stopped" || told.state === "failed";

// What the program calls and waits for.
here.steelyardReady = () => tell({ state: "ready" });
here.steelyardPainted = () => tell({ state: "painted" });
here.steelyardDrawn = () => here.steelyard?.ondrawn?.();
here.steelyardTrouble = (problem) => tell({ problem });
here.steelyardStill = (why) => {
  if (told.still) here.steelyard?.onstill?.();
  else tell({ still: true, problem: why });
};

// Labels are set in the page's fonts, on a canvas of the page's document.
here.steelyardFonts = () =>
  Promise.race([
    Promise.all(["400 16px Go", "700 16px Go"].map((font) => window.parent.document.fonts.load(font))),
    new Promise((enough) => setTimeout(enough, 3000)),
  ]);

// ebiten asks for an animation frame for ever, to see whether there is
// something to draw. Hold the question back until there is: a page at rest
// then costs nothing.
const nextFrame = window.requestAnimationFrame.bind(window);
let asked: FrameRequestCallback | null = null;
let wanted = true;
window.requestAnimationFrame = (callback) => {
  if (wanted) {
    wanted = false;
    return nextFrame(callback);
  }
  asked = callback;
  return 0;
};
here.steelyardWake = () => {
  if (!asked) {
    wanted = true;
    return;
  }
  nextFrame(asked);
  asked = null;
};

// fit lays the body out in device pixels.
function fit(): void {
  const density = window.devicePixelRatio || 1;
  const { style } = document.documentElement;
  style.setProperty("--pixels-wide", `${Math.round(window.innerWidth * density)}px`);
  style.setProperty("--pixels-high", `${Math.round(window.innerHeight * density)}px`);
  style.setProperty("--shrink", String(1 / density));
}
// This listener comes before ebiten's, which then measures the body and paints;
// without a canvas to paint on that would end the program.
window.addEventListener("resize", (e) => {
  fit();
  if (told.still) e.stopImmediatePropagation();
});
fit();
function watchDensity(): void {
  const now = matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
  now.addEventListener(
    "change",
    () => {
      watchDensity();
      window.dispatchEvent(new Event("resize"));
    },
    { once: true },
  );
}
watchDensity();

const canvas = (): HTMLCanvasElement | null => document.querySelector("canvas");

// send gives one event to the program and its answer to the page.
function send(event: PointerDid): Intent {
  const program = here.steelyard;
  if (!program || ended()) return {};
  const json = program.pointer(JSON.stringify(event));
  if (json === "" || json === "{}") return {};
  const intent = JSON.parse(json) as Intent;
  const c = canvas();
  if (c && intent.cursor !== undefined) c.style.cursor = intent.cursor;
  program.onintent?.(json);
  return intent;
}

function pointer(type: PointerDid["type"], e: PointerEvent): Intent {
  return send({
    type,
    id: e.pointerId,
    x: e.clientX,
    y: e.clientY,
    button: Math.max(e.button, 0),
    kind: e.pointerType || "mouse",
    time: e.timeStamp,
  });
}

// The events are taken before they reach the canvas: ebiten would draw a frame
// for each, and keep keys from the browser that are not ours.
function take<K extends keyof WindowEventMap>(type: K, handle?: (e: WindowEventMap[K]) => void): void {
  window.addEventListener(
    type,
    (e) => {
      e.stopImmediatePropagation();
      handle?.(e);
    },
    { capture: true, passive: false },
  );
}

// held is whether the latest press got hold of something; a finger that holds
// nothing may scroll the page.
let held = false;
take("pointerdown", (e) => {
  canvas()?.setPointerCapture(e.pointerId);
  held = pointer("down", e).cursor === "grabbing";
});
take("pointermove", (e) => pointer("move", e));
take("pointerup", (e) => pointer("up", e));
take("pointercancel", (e) => pointer("cancel", e));
take("pointerleave");
document.documentElement.addEventListener("mouseleave", (e) => {
  send({ type: "leave", id: 1, x: e.clientX, y: e.clientY, button: 0, kind: "mouse", time: e.timeStamp });
});
// The wheel alone scrolls the page, over the picture as elsewhere.
take("wheel", (e) => {
  if (!e.ctrlKey && !e.metaKey) return;
  e.preventDefault();
  const delta = e.deltaY * ([1, 16, window.innerHeight][e.deltaMode] ?? 1);
  // A pinch on a touch pad comes as a wheel with the control key.
  // One click of a mouse's wheel is ten times that, and is left to the stage.
  const pinch = e.ctrlKey && Math.abs(delta) < 50 ? Math.exp(-delta / 100) : 0;
  send({ type: "wheel", id: 0, x: e.clientX, y: e.clientY, button: 0, delta, pinch, kind: "mouse", time: e.timeStamp });
});
take("touchstart", (e) => {
  if (e.cancelable && (held || e.touches.length > 1)) e.preventDefault();
});
for (const type of ["touchmove", "touchend", "mousedown", "mousemove", "mouseup", "keyup"] as const) take(type);
take("contextmenu", (e) => e.preventDefault());
take("keydown", (e) => {
  if (here.steelyard?.onkey?.(e) === true) e.preventDefault();
});
take("dragover", (e) => e.preventDefault());
take("drop", (e) => {
  e.preventDefault();
  if (e.dataTransfer?.files.length) here.steelyard?.ondrop?.(e.dataTransfer.files);
});

// inflate unpacks the program unless the host already did: some send .gz files
// as compressed pages.
async function inflate(body: ReadableStream<Uint8Array<ArrayBuffer>>): Promise<ReadableStream> {
  const reader = body.getReader();
  const first = await reader.read();
  const whole = new ReadableStream<Uint8Array<ArrayBuffer>>({
    start(out) {
      if (first.value) out.enqueue(first.value);
      if (first.done) out.close();
    },
    async pull(out) {
      const { done, value } = await reader.read();
      if (done) out.close();
      else out.enqueue(value);
    },
    cancel: (why) => reader.cancel(why),
  });
  const packed = first.value?.[0] === 0x1f && first.value[1] === 0x8b;
  return packed ? whole.pipeThrough(new DecompressionStream("gzip")) : whole;
}

function counted(): TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>> {
  let last = 0;
  return new TransformStream({
    transform(chunk, out) {
      told.loaded += chunk.byteLength;
      if (performance.now() - last > 50) {
        last = performance.now();
        tell({});
      }
      out.enqueue(chunk);
    },
    flush: () => tell({ total: told.loaded }),
  });
}

// said is what the program wrote last to its standard error. When it dies it
// says why, and then at length where.
let said = "\n";
const lastWords = (): string => {
  const from = Math.max(said.lastIndexOf("\npanic: "), said.lastIndexOf("\nfatal error: "));
  return (from < 0 ? said.slice(-2000) : said.slice(from, from + 2000)).trim();
};
function listen(): void {
  const write = fs.writeSync;
  const text = new TextDecoder();
  fs.writeSync = (file, bytes) => {
    said = (said + text.decode(bytes)).slice(-50_000);
    return write.call(fs, file, bytes);
  };
}

async function start(): Promise<void> {
  if (typeof DecompressionStream === "undefined" || !WebAssembly.instantiateStreaming) {
    throw new Error("This browser is too old for Steelyard: it cannot unpack the program. Use one from 2023 or later.");
  }
  const link = document.getElementById("program") as HTMLLinkElement;
  const response = link.hasAttribute("href") ? await fetch(link.href) : programInside();
  if (!response.ok || !response.body) {
    throw new Error(`The program could not be loaded: the host answered ${response.status}.`);
  }
  const encoded = response.headers.get("Content-Encoding");
  tell({ total: encoded ? 0 : Number(response.headers.get("Content-Length") ?? 0) });

  const bytes = await inflate(response.body.pipeThrough(counted()));
  const wasm = new Response(bytes, { headers: { "Content-Type": "application/wasm" } });
  listen();
  const go = new Go();
  let code = 0;
  go.exit = (c) => {
    code = c;
  };
  const { instance } = await WebAssembly.instantiateStreaming(wasm, go.importObject);
  await go.run(instance);
  tell({ state: "stopped", problem: lastWords() || `The program ended with code ${code}.` });
}

// A trap inside the program surfaces as an error of whoever called it; after
// one, nothing in there can be trusted. What it had still planned to do once it
// has ended fails, and means nothing.
window.addEventListener("error", (e) => {
  if (ended()) e.preventDefault();
  else if (e.error instanceof WebAssembly.RuntimeError) {
    tell({ state: "stopped", problem: `${e.message}\n${lastWords()}`.trim() });
  }
});

start().catch((e: unknown) => {
  const problem = e instanceof Error ? e.message : String(e);
  tell({ state: told.state === "loading" ? "failed" : "stopped", problem });
});
