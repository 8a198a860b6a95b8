package main

import (
	"runtime/debug"
	"sync"
	"syscall/js"
	"time"

	"steelyard/internal/bridge"
)

func main() {
	// The page's thread also collects the garbage, and an evaluation leaves half
	// a megabyte of it beside a few that stay: collect less often, for at most
	// some tens of megabytes.
	debug.SetGCPercent(400)

	shown := make(chan struct{})
	stage := &bridge.Stage{Redraw: sync.OnceFunc(func() { close(shown) })}
	register(stage)
	tell("steelyardReady")

	// Figures come first: opening the canvas claims the page's thread for a
	// while. So wait for something to show, and for the page to have painted.
	select {
	case <-shown:
	case <-time.After(5 * time.Second):
	}
	stage.Redraw = redraw
	time.Sleep(20 * time.Millisecond)
	if letters := js.Global().Get("steelyardLetters"); letters.Truthy() {
		settle(letters.Invoke())
	}

	if err := paint(&canvas{look: stage.Draw}); err != nil {
		tell("steelyardTrouble", "The picture cannot be drawn: "+err.Error())
	}
	// The functions stay, whatever became of the picture.
	select {}
}

// tell calls a function of the frame's loader, when there is one.
func tell(name string, args ...any) {
	if f := js.Global().Get(name); f.Truthy() {
		f.Invoke(args...)
	}
}

// settle waits for a promise, however it ends.
func settle(promise js.Value) {
	done := make(chan struct{})
	end := js.FuncOf(func(js.Value, []js.Value) any { close(done); return nil })
	defer end.Release()
	promise.Call("then", end, end)
	<-done
}
