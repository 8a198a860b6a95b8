package front

import (
	"runtime/debug"
	"sync"
	"syscall/js"
	"time"

	"steelyard/internal/bridge"
)

// session is what the program remembers for its page.
var session = new(bridge.Session)

// Stage is what the page shows on the canvas.
var Stage = &bridge.Stage{Session: session}

// Frames counts the frames drawn.
var Frames int

func init() {
	// The page's thread also collects the garbage. An evaluation leaves half a
	// megabyte of it and keeps little, so it is collected less often, for at most
	// some tens of megabytes.
	debug.SetGCPercent(400)

	shown := make(chan struct{})
	Stage.Redraw = sync.OnceFunc(func() { close(shown) })
	register()
	Tell("steelyardReady")

	// It waits for something to show, and then for the page to have painted.
	select {
	case <-shown:
	case <-time.After(5 * time.Second):
	}
	time.Sleep(20 * time.Millisecond)
}

// Tell calls a function of the frame's loader, when there is one.
func Tell(name string, args ...any) {
	if f := js.Global().Get(name); f.Truthy() {
		f.Invoke(args...)
	}
}
