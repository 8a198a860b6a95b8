package main

import (
	"syscall/js"

	"steelyard/wasm/front"
)

func main() {
	front.Stage.Redraw = redraw
	if fonts := js.Global().Get("steelyardFonts"); fonts.Truthy() {
		settle(fonts.Invoke())
	}
	if err := paint(&canvas{look: front.Stage.Draw, bare: front.Stage.Bare}); err != nil {
		// The page then shows the picture as SVG.
		front.Stage.Redraw = func() { front.Tell("steelyardStill", err.Error()) }
		front.Stage.Redraw()
	}
	// The functions stay, whatever became of the picture.
	select {}
}

// settle waits for a promise, however it ends.
func settle(promise js.Value) {
	done := make(chan struct{})
	end := js.FuncOf(func(js.Value, []js.Value) any { close(done); return nil })
	defer end.Release()
	promise.Call("then", end, end)
	<-done
}
