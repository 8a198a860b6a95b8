package main

import (
	"syscall/js"
	"time"

	"steelyard/internal/bridge"
)

func main() {
	stage := &bridge.Stage{Redraw: redraw}
	register(stage)
	tell("steelyardReady")
	// Let the page show its first totals before the canvas claims the thread.
	time.Sleep(time.Millisecond)
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
