package main

import (
	"log"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

type game struct{ told bool }

func (*game) Update() error { return nil }

// Draw tells the frame's loader that the first frame is there.
func (g *game) Draw(*ebiten.Image) {
	if g.told {
		return
	}
	g.told = true
	if f := js.Global().Get("steelyardPainted"); f.Truthy() {
		f.Invoke()
	}
}

func (*game) Layout(w, h int) (int, int) { return max(w, 1), max(h, 1) }

func main() {
	//lint:ignore SA1019 no other mode draws on request only
	ebiten.SetFPSMode(ebiten.FPSModeVsyncOffMinimum)
	if err := ebiten.RunGame(&game{}); err != nil {
		log.Fatal(err)
	}
}
