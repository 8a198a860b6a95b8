package main

import (
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

// frames counts the frames drawn.
var frames int

type canvas struct{}

func (*canvas) Update() error { return nil }

func (*canvas) Draw(*ebiten.Image) {
	frames++
	if frames == 1 {
		tell("steelyardPainted")
	}
}

func (*canvas) Layout(w, h int) (int, int) { return max(w, 1), max(h, 1) }

// paint opens the canvas and stays until it is gone.
func paint() error {
	if c := js.Global().Get("document").Call("querySelector", "canvas"); c.Truthy() {
		c.Call("setAttribute", "aria-hidden", "true")
		c.Call("setAttribute", "tabindex", "-1")
	}
	ebiten.SetFPSMode(ebiten.FPSModeVsyncOffMinimum)
	// The loader lays the body out in device pixels: see web/frame.html.
	return ebiten.RunGameWithOptions(&canvas{}, &ebiten.RunGameOptions{DisableHiDPI: true})
}
