package main

import (
	"fmt"
	"image/color"
	"runtime/debug"
	"slices"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"

	"steelyard/internal/mesh"
	"steelyard/internal/scene"
	"steelyard/wasm/front"
)

// canvas is the game that ebiten runs: it paints what look returns whenever a
// frame was asked for; the scene may be nil, the palette not.
type canvas struct {
	look func(width, height float64) (*scene.Scene, *scene.Palette)
	bare func() bool // without paper: the page lays a photograph behind the canvas

	density float64 // canvas pixels to the CSS pixel
	mesh    mesh.Mesh
	corners []ebiten.Vertex
	white   *ebiten.Image
	glyphs  glyphs
	failed  bool // the latest frame
}

// paint opens the canvas and stays until it is gone.
func paint(c *canvas) error {
	if e := js.Global().Get("document").Call("querySelector", "canvas"); e.Truthy() {
		// The canvas is a stop for the keyboard where it stands in the page; ebiten
		// would put it before all others. The page gives it its name.
		e.Call("setAttribute", "tabindex", "0")
	}
	//lint:ignore SA1019 no other mode draws on request only
	ebiten.SetFPSMode(ebiten.FPSModeVsyncOffMinimum)
	// The loader lays the body out in device pixels: see web/frame.html.
	return ebiten.RunGameWithOptions(c, &ebiten.RunGameOptions{DisableHiDPI: true, ScreenTransparent: true})
}

// redraw asks for a frame.
func redraw() {
	//lint:ignore SA1019 no other mode draws on request only
	ebiten.ScheduleFrame()
	front.Tell("steelyardWake")
}

// Layout makes one pixel of the picture one of the screen.
func (c *canvas) Layout(w, h int) (int, int) {
	c.density = js.Global().Get("devicePixelRatio").Float()
	if !(c.density > 0) {
		c.density = 1
	}
	return max(w, 1), max(h, 1)
}

// Update has nothing to do: events come through the bridge.
func (*canvas) Update() error { return nil }

// Draw paints the scene. A panic in here is reported, and leaves the canvas blank
// and the program alive.
func (c *canvas) Draw(screen *ebiten.Image) {
	front.Frames++
	defer func() {
		if r := recover(); r != nil {
			if !c.failed {
				front.Tell("steelyardTrouble", fmt.Sprintf("The picture cannot be drawn: %v\n%s", r, debug.Stack()))
			}
			c.failed = true
			return
		}
		c.failed = false
		if front.Frames == 1 {
			front.Tell("steelyardPainted")
		}
	}()
	b := screen.Bounds()
	s, palette := c.look(float64(b.Dx())/c.density, float64(b.Dy())/c.density)
	if !c.bare() {
		screen.Fill(palette.Of(scene.Paper))
	}
	front.Tell("steelyardDrawn") // the camera may have moved
	if s == nil {
		return
	}
	c.marks(screen, s, palette)
	c.glyphs.begin()
	for i := range s.Labels {
		c.glyphs.draw(screen, &s.Labels[i], palette, c.density)
	}
	c.glyphs.end()
}

// marks paints all marks of a scene in one go.
func (c *canvas) marks(screen *ebiten.Image, s *scene.Scene, palette *scene.Palette) {
	c.mesh.Reset()
	c.mesh.Scene(s, c.density)
	if len(c.mesh.Indices) == 0 {
		return
	}
	if c.white == nil {
		c.white = ebiten.NewImage(3, 3)
		c.white.Fill(color.White)
	}
	thin := float32(1)
	if c.bare() {
		thin = 0.3
	}
	c.corners = slices.Grow(c.corners[:0], len(c.mesh.Vertices))
	for _, v := range c.mesh.Vertices {
		k := palette.Of(v.Ink)
		cover := v.Cover
		if v.Ink.Body() {
			cover *= thin
		}
		const full = 255
		c.corners = append(c.corners, ebiten.Vertex{
			DstX: v.X, DstY: v.Y, SrcX: 1.5, SrcY: 1.5,
			ColorR: float32(k.R) / full, ColorG: float32(k.G) / full, ColorB: float32(k.B) / full, ColorA: cover,
		})
	}
	screen.DrawTriangles32(c.corners, c.mesh.Indices, c.white, nil)
}
