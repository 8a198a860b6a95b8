// Command wasm is Steelyard in the browser: it puts the bridge's functions on
// its frame's window as `steelyard` (package front), and paints scenes on the
// canvas. It does no arithmetic beyond painting; whatever can be told natively lives in
// internal/bridge and below, where it is tested without a browser.
//
// Beside the bridge's functions, the object has frames(), the number of frames
// drawn so far, for tests that nothing is drawn while nothing changes.
//
// The frame's loader, web/frame.ts, carries pointer events here and answers
// back, and says what this program calls on its window: steelyardReady,
// steelyardPainted, steelyardDrawn, steelyardTrouble, steelyardStill, steelyardWake and
// steelyardFonts.
package main
