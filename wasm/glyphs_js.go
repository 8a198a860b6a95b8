package main

import (
	"fmt"
	"image/color"
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
	text      string
	bold      bool
	px        float64
	ink, halo color.NRGBA // no halo is a transparent one
	rim       float64     // how wide the halo is, px
}

// line is a line of text with its halo, so that both are one draw.
type line struct {
	image            *ebiten.Image
	originX, originY int     // of the baseline's start in the image
	width            float64 // px of the screen
	used             int     // frame
}

func (l *glyphs) begin() { l.frame++ }

// end drops lines that are not in the picture any more.
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
	key := lineKey{text: label.Text, bold: label.Bold, px: math.Round(label.Size*density*8) / 8, ink: palette.Of(label.Ink)}
	if label.Halo {
		key.halo, key.rim = palette.Of(scene.Paper), 1.5*density
	}
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
	o := &ebiten.DrawImageOptions{Filter: ebiten.FilterLinear}
	o.GeoM.Translate(-float64(t.originX), -float64(t.originY))
	o.GeoM.Scale(press, 1)
	o.GeoM.Translate(start, 0)
	switch {
	case label.Angle != 0:
		o.GeoM.Rotate(label.Angle * math.Pi / 180)
		o.GeoM.Translate(x, y)
	case press != 1:
		o.GeoM.Translate(x, math.Round(y))
	default:
		// Upright text sits on whole pixels and stays as sharp as it was set.
		o.GeoM.Translate(math.Round(x+start)-start, math.Round(y))
	}
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

	// Room for the halo, and a pixel of air on all sides for the filter.
	air := int(math.Ceil(key.rim)) + 1
	t := &line{
		originX: int(math.Ceil(number("actualBoundingBoxLeft"))) + air,
		originY: int(math.Ceil(number("actualBoundingBoxAscent"))) + air,
		width:   number("width"),
	}
	w := min(max(t.originX+int(math.Ceil(number("actualBoundingBoxRight")))+air, 1), 4000)
	h := min(max(t.originY+int(math.Ceil(number("actualBoundingBoxDescent")))+air, 1), 1000)
	l.desk.Set("width", w) // which wipes it, and forgets the font
	l.desk.Set("height", h)
	l.context.Set("font", face)
	if key.rim > 0 {
		l.context.Set("lineJoin", "round")
		l.context.Set("lineWidth", 2*key.rim)
		l.context.Set("strokeStyle", css(key.halo))
		l.context.Call("strokeText", key.text, t.originX, t.originY)
	}
	l.context.Set("fillStyle", css(key.ink))
	l.context.Call("fillText", key.text, t.originX, t.originY)
	pixels := make([]byte, 4*w*h)
	data := l.context.Call("getImageData", 0, 0, w, h).Get("data")
	// An array of another window is no array to CopyBytesToGo.
	js.CopyBytesToGo(pixels, js.Global().Get("Uint8Array").New(data))
	for i := 0; i < len(pixels); i += 4 { // colours times alpha, as ebiten wants them
		a := uint16(pixels[i+3])
		for k := i; k < i+3; k++ {
			pixels[k] = byte((uint16(pixels[k])*a + 127) / 255)
		}
	}
	t.image = ebiten.NewImage(w, h)
	t.image.WritePixels(pixels)
	l.lines[key] = t
	return t
}

// css is an opaque colour in a style sheet's terms.
func css(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }
