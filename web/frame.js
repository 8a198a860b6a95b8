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
//                    "failed" (it could not start); problem says why.
//   steelyard        the program's functions, and what the page may set:
//     onintent(json)    after a pointer event that meant something
//     onkey(event)      a key pressed while the canvas has the focus; answer
//                       true when it was used
//     ondrop(files)     files dropped on the canvas
//
// The frame loads itself again when the graphics context is lost: it is then
// "loading" once more, and the page shows its document again when it is ready.

const status = { state: "loading", loaded: 0, total: 0, problem: "" };
window.steelyardFrame = status;

function tell(change) {
  Object.assign(status, change);
  const origin = location.origin === "null" ? "*" : location.origin;
  window.parent.postMessage({ steelyardFrame: { ...status } }, origin);
}

const ended = () => status.state === "stopped" || status.state === "failed";

// What the program calls.
window.steelyardReady = () => tell({ state: "ready" });
window.steelyardPainted = () => tell({ state: "painted" });
window.steelyardTrouble = (problem) => tell({ problem });

// ebiten asks for an animation frame for ever, to see whether there is
// something to draw. Hold the question back until there is: a page at rest
// then costs nothing.
const nextFrame = window.requestAnimationFrame.bind(window);
let asked = null;
let wanted = true;
window.requestAnimationFrame = (callback) => {
  if (wanted) {
    wanted = false;
    return nextFrame(callback);
  }
  asked = callback;
  return 0;
};
window.steelyardWake = () => {
  wanted = true;
  if (asked) {
    const callback = asked;
    asked = null;
    wanted = false;
    nextFrame(callback);
  }
};

// fit lays the body out in device pixels.
function fit() {
  const density = window.devicePixelRatio || 1;
  const style = document.documentElement.style;
  style.setProperty("--pixels-wide", `${Math.round(window.innerWidth * density)}px`);
  style.setProperty("--pixels-high", `${Math.round(window.innerHeight * density)}px`);
  style.setProperty("--shrink", String(1 / density));
}
// This listener comes before ebiten's, which then measures the body.
window.addEventListener("resize", fit);
fit();
function watchDensity() {
  matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`).addEventListener("change", () => {
    watchDensity();
    window.dispatchEvent(new Event("resize"));
  }, { once: true });
}
watchDensity();

// send gives one event to the program and its answer to the page.
function send(event) {
  const program = window.steelyard;
  if (!program || ended()) return {};
  const json = program.pointer(JSON.stringify(event));
  if (!json) return {};
  const intent = JSON.parse(json);
  if (intent.cursor !== undefined) canvas().style.cursor = intent.cursor;
  program.onintent?.(json);
  return intent;
}

const canvas = () => document.querySelector("canvas");

function pointer(type, e, more) {
  return send({
    type,
    id: e.pointerId ?? 0,
    x: e.clientX,
    y: e.clientY,
    button: Math.max(e.button, 0),
    kind: e.pointerType || "mouse",
    time: e.timeStamp,
    ...more,
  });
}

// The events are taken before they reach the canvas: ebiten would draw a frame
// for each, and keep keys from the browser that are not ours.
function take(type, handle) {
  window.addEventListener(type, (e) => {
    e.stopImmediatePropagation();
    handle?.(e);
  }, { capture: true, passive: false });
}

// held is what the latest press got hold of; a finger that holds nothing may
// scroll the page.
let held = false;
take("pointerdown", (e) => {
  canvas().setPointerCapture(e.pointerId);
  held = pointer("down", e).cursor === "grabbing";
});
take("pointermove", (e) => pointer("move", e));
take("pointerup", (e) => pointer("up", e));
take("pointercancel", (e) => pointer("cancel", e));
take("pointerleave");
document.documentElement.addEventListener("mouseleave", (e) => pointer("leave", e));
take("wheel", (e) => {
  e.preventDefault();
  const unit = [1, 16, window.innerHeight][e.deltaMode] ?? 1;
  pointer("wheel", e, { id: 0, kind: "mouse", delta: e.deltaY * unit, pinch: e.ctrlKey ? Math.exp(-e.deltaY * unit / 100) : 0 });
});
take("touchstart", (e) => {
  if (e.cancelable && (held || e.touches.length > 1)) e.preventDefault();
});
for (const type of ["touchmove", "touchend", "mousedown", "mousemove", "mouseup", "keyup"]) take(type);
take("contextmenu", (e) => e.preventDefault());
take("keydown", (e) => {
  if (window.steelyard?.onkey?.(e) === true) e.preventDefault();
});
take("dragover", (e) => e.preventDefault());
take("drop", (e) => {
  e.preventDefault();
  if (e.dataTransfer?.files.length) window.steelyard?.ondrop?.(e.dataTransfer.files);
});

// inflate unpacks the program unless the host already did: some send .gz files
// as compressed pages.
async function inflate(body) {
  const reader = body.getReader();
  const first = await reader.read();
  const rest = new ReadableStream({
    start(out) {
      if (first.value) out.enqueue(first.value);
    },
    async pull(out) {
      const { done, value } = await reader.read();
      if (done) out.close();
      else out.enqueue(value);
    },
    cancel: (why) => reader.cancel(why),
  });
  const packed = first.value?.[0] === 0x1f && first.value?.[1] === 0x8b;
  return packed ? rest.pipeThrough(new DecompressionStream("gzip")) : rest;
}

function counted() {
  let told = 0;
  return new TransformStream({
    transform(chunk, out) {
      status.loaded += chunk.byteLength;
      if (performance.now() - told > 50) {
        told = performance.now();
        tell({});
      }
      out.enqueue(chunk);
    },
    flush: () => tell({ total: status.loaded }),
  });
}

// said is the end of what the program wrote to its standard error: it says why
// when it dies.
let said = "";
function listen() {
  const write = globalThis.fs.writeSync;
  globalThis.fs.writeSync = (fd, bytes) => {
    said = (said + new TextDecoder().decode(bytes)).slice(-2000);
    return write.call(globalThis.fs, fd, bytes);
  };
}

async function start() {
  if (typeof DecompressionStream === "undefined" || !WebAssembly.instantiateStreaming) {
    throw new Error("This browser is too old for Steelyard: it lacks DecompressionStream. Use one from 2023 or later.");
  }
  const response = await fetch(document.getElementById("program").href);
  if (!response.ok) throw new Error(`The program could not be loaded: the host answered ${response.status}.`);
  const encoded = response.headers.get("Content-Encoding");
  tell({ total: encoded ? 0 : Number(response.headers.get("Content-Length") ?? 0) });

  const bytes = await inflate(response.body.pipeThrough(counted()));
  const wasm = new Response(bytes, { headers: { "Content-Type": "application/wasm" } });
  listen();
  const go = new Go();
  let code = 0;
  go.exit = (c) => { code = c; };
  const { instance } = await WebAssembly.instantiateStreaming(wasm, go.importObject);
  await go.run(instance);
  tell({ state: "stopped", problem: said.trim() || `The program ended with code ${code}.` });
}

// A trap inside the program surfaces as an error of whoever called it; after
// one, nothing in there can be trusted.
window.addEventListener("error", (e) => {
  if (e.error instanceof WebAssembly.RuntimeError && !ended()) {
    tell({ state: "stopped", problem: `${e.message}\n${said}`.trim() });
  }
});

start().catch((e) => {
  tell({ state: status.state === "loading" ? "failed" : "stopped", problem: String(e?.message ?? e) });
});
