package main

import (
	"fmt"
	"math"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"

	"steelyard/internal/scene"
)

// glyphs draws labels. The browser sets each line of text once, at the size it
// has on the screen, on a canvas of the page around the frame: that has the Go
// fonts loaded already, and the browser knows others for the scripts that those
// lack. The line is kept as an image while it is in use.
type glyphs struct {
	lines map[lineKey]*line
	frame int

	desk    js.Value // a canvas to set lines on
	context js.Value
}

type lineKey struct {
	text string
	bold bool
	px   float64
}

// line is a line of text, white.
type line struct {
	image            *ebiten.Image
	originX, originY int     // of the baseline's start in the image
	width            float64 // px of the screen
	used             int     // frame
}

func (l *glyphs) begin() { l.frame++ }

// end lets go of lines that are out of the picture.
func (l *glyphs) end() {
	if len(l.lines) < 400 {
		return
	}
	for k, v := range l.lines {
		if v.used < l.frame {
			v.image.Deallocate()
			delete(l.lines, k)
		}
	}
}

func (l *glyphs) draw(screen *ebiten.Image, label *scene.Label, palette *scene.Palette, density float64) {
	key := lineKey{label.Text, label.Bold, math.Round(label.Size*density*8) / 8}
	x, y := label.X*density, label.Y*density
	size := screen.Bounds().Size()
	reach := (label.Width + 2*label.Size) * density
	if label.Text == "" || !(key.px >= 1 && key.px <= 400) ||
		!(x > -reach && x < float64(size.X)+reach && y > -reach && y < float64(size.Y)+reach) {
		return
	}
	t := l.line(key)
	t.used = l.frame

	// The scene made room for Width; a face that is wider is pressed together.
	press := 1.
	if room := label.Width * density; room > 0 && t.width > room*1.02 {
		press = room / t.width
	}
	start := -t.width * press * float64(label.Align+1) / 2
	place := func(dx, dy float64) *ebiten.DrawImageOptions {
		o := &ebiten.DrawImageOptions{Filter: ebiten.FilterLinear}
		o.GeoM.Translate(-float64(t.originX), -float64(t.originY))
		o.GeoM.Scale(press, 1)
		o.GeoM.Translate(start, 0)
		switch {
		case label.Angle != 0:
			o.GeoM.Rotate(label.Angle * math.Pi / 180)
			o.GeoM.Translate(x+dx, y+dy)
		case press != 1:
			o.GeoM.Translate(x+dx, math.Round(y)+dy)
		default:
			// Upright text sits on whole pixels and stays as sharp as it was set.
			o.GeoM.Translate(math.Round(x+start)-start+dx, math.Round(y)+dy)
		}
		return o
	}
	if label.Halo {
		r := 1.5 * density
		for i := range 12 {
			s, c := math.Sincos(2 * math.Pi * float64(i) / 12)
			o := place(r*c, r*s)
			o.ColorScale.ScaleWithColor(palette.Of(scene.Paper))
			screen.DrawImage(t.image, o)
		}
	}
	o := place(0, 0)
	o.ColorScale.ScaleWithColor(palette.Of(label.Ink))
	screen.DrawImage(t.image, o)
}

// line sets a line of text, or finds it set.
func (l *glyphs) line(key lineKey) *line {
	if t, ok := l.lines[key]; ok {
		return t
	}
	if l.lines == nil {
		l.lines = map[lineKey]*line{}
		l.desk = js.Global().Get("parent").Get("document").Call("createElement", "canvas")
		l.context = l.desk.Call("getContext", "2d", map[string]any{"willReadFrequently": true})
	}
	weight := 400
	if key.bold {
		weight = 700
	}
	face := fmt.Sprintf("%d %gpx Go, 'Helvetica Neue', Helvetica, Arial, 'Liberation Sans', sans-serif", weight, key.px)
	l.context.Set("font", face)
	m := l.context.Call("measureText", key.text)
	number := func(name string) float64 { return m.Get(name).Float() }

	// A pixel of air on all sides, for the filter.
	t := &line{
		originX: int(math.Ceil(number("actualBoundingBoxLeft"))) + 1,
		originY: int(math.Ceil(number("actualBoundingBoxAscent"))) + 1,
		width:   number("width"),
	}
	w := min(max(t.originX+int(math.Ceil(number("actualBoundingBoxRight")))+1, 1), 4000)
	h := min(max(t.originY+int(math.Ceil(number("actualBoundingBoxDescent")))+1, 1), 1000)
	l.desk.Set("width", w) // which wipes it, and forgets the font
	l.desk.Set("height", h)
	l.context.Set("font", face)
	l.context.Set("fillStyle", "#fff")
	l.context.Call("fillText", key.text, t.originX, t.originY)
	pixels := make([]byte, 4*w*h)
	data := l.context.Call("getImageData", 0, 0, w, h).Get("data")
	// An array of another window is no array to CopyBytesToGo.
	js.CopyBytesToGo(pixels, js.Global().Get("Uint8Array").New(data))
	for i := 0; i < len(pixels); i += 4 { // colours times alpha, as ebiten wants them
		a := pixels[i+3]
		pixels[i], pixels[i+1], pixels[i+2] = a, a, a
	}
	t.image = ebiten.NewImage(w, h)
	t.image.WritePixels(pixels)
	l.lines[key] = t
	return t
}
