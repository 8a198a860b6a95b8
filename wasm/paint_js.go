package main

import (
	"fmt"
	"image/color"
	"math"
	"runtime/debug"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
	"github.com/hajimehoshi/ebiten/v2/vector"

	"steelyard/internal/scene"
)

// frames counts the frames drawn.
var frames int

// canvas is the game that ebiten runs: it paints what look returns whenever a
// frame was asked for.
type canvas struct {
	look func(width, height float64) (*scene.Scene, *scene.Palette)

	density float64 // canvas pixels to the CSS pixel
	letters letters
	path    vector.Path
	failed  bool // the latest frame
}

// paint opens the canvas and stays until it is gone.
func paint(c *canvas) error {
	if e := js.Global().Get("document").Call("querySelector", "canvas"); e.Truthy() {
		// The HTML around the frame tells what the canvas shows.
		e.Call("setAttribute", "aria-hidden", "true")
		e.Call("setAttribute", "tabindex", "-1")
	}
	ebiten.SetFPSMode(ebiten.FPSModeVsyncOffMinimum)
	// The loader lays the body out in device pixels: see web/frame.html.
	return ebiten.RunGameWithOptions(c, &ebiten.RunGameOptions{DisableHiDPI: true})
}

// redraw asks for a frame.
func redraw() {
	ebiten.ScheduleFrame()
	tell("steelyardWake")
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

// Draw paints the scene. A panic in here is told and leaves the canvas blank
// and the program alive.
func (c *canvas) Draw(screen *ebiten.Image) {
	frames++
	defer func() {
		if r := recover(); r != nil {
			if !c.failed {
				tell("steelyardTrouble", fmt.Sprintf("The picture cannot be drawn: %v\n%s", r, debug.Stack()))
			}
			c.failed = true
			return
		}
		c.failed = false
		if frames == 1 {
			tell("steelyardPainted")
		}
	}()
	b := screen.Bounds()
	s, palette := c.look(float64(b.Dx())/c.density, float64(b.Dy())/c.density)
	if s == nil {
		return
	}
	screen.Fill(palette.Of(scene.Paper))
	for i := range s.Marks {
		c.mark(screen, &s.Marks[i], s, palette)
	}
	c.letters.begin()
	for i := range s.Labels {
		c.letters.draw(screen, &s.Labels[i], palette, c.density)
	}
	c.letters.end()
}

func (c *canvas) mark(screen *ebiten.Image, m *scene.Mark, s *scene.Scene, palette *scene.Palette) {
	if !inSight(m.Path, s.Width, s.Height, m.Width) {
		return
	}
	if m.Fill != scene.None {
		c.trace(m.Path)
		vector.FillPath(screen, &c.path, nil, options(palette.Of(m.Fill)))
	}
	if m.Stroke != scene.None && m.Width > 0 {
		path := m.Path
		if len(m.Dash) > 0 {
			if cut := dashes(m.Path, m.Dash, s.Width, s.Height, m.Width); cut != nil {
				path = cut
			}
		}
		c.trace(path)
		pen := &vector.StrokeOptions{
			Width:    float32(m.Width * c.density),
			LineJoin: vector.LineJoinRound,
			LineCap:  vector.LineCapRound,
		}
		if m.Butt {
			pen.LineCap = vector.LineCapButt
		}
		vector.StrokePath(screen, &c.path, pen, options(palette.Of(m.Stroke)))
	}
}

func options(k color.NRGBA) *vector.DrawPathOptions {
	o := &vector.DrawPathOptions{AntiAlias: true}
	o.ColorScale.ScaleWithColor(k)
	return o
}

// trace makes ebiten's path of a scene's.
func (c *canvas) trace(path []scene.Seg) {
	c.path.Reset()
	at := func(x float64) float32 { return float32(x * c.density) }
	for i := range path {
		g := &path[i]
		switch g.Op {
		case scene.Move:
			c.path.MoveTo(at(g.X), at(g.Y))
		case scene.Line:
			c.path.LineTo(at(g.X), at(g.Y))
		case scene.Cubic:
			c.path.CubicTo(at(g.X1), at(g.Y1), at(g.X2), at(g.Y2), at(g.X), at(g.Y))
		case scene.Circle:
			c.path.MoveTo(at(g.X+g.R), at(g.Y))
			c.path.Arc(at(g.X), at(g.Y), at(g.R), 0, 2*math.Pi, vector.Clockwise)
			c.path.Close()
		case scene.Close:
			c.path.Close()
		}
	}
}
