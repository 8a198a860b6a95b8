package main

import (
	"image"
	"math"

	"github.com/hajimehoshi/ebiten/v2"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"steelyard/internal/scene"
)

// letters draws labels. Each line of text is set once at the size it has on
// the screen and kept as an image while it is in use.
type letters struct {
	fonts [2]*opentype.Font // regular, bold
	faces map[faceKey]font.Face
	lines map[lineKey]*line
	frame int
}

type faceKey struct {
	bold bool
	px   float64
}

type lineKey struct {
	faceKey
	text string
}

// line is a line of text, white.
type line struct {
	image  *ebiten.Image
	origin image.Point // of the baseline's start in the image
	width  float64     // as set, px of the screen
	used   int         // frame
}

func (l *letters) begin() { l.frame++ }

// end lets go of lines that have long been out of the picture.
func (l *letters) end() {
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

func (l *letters) draw(screen *ebiten.Image, label *scene.Label, palette *scene.Palette, density float64) {
	key := lineKey{faceKey{label.Bold, math.Round(label.Size*density*8) / 8}, label.Text}
	x, y := label.X*density, label.Y*density
	size := screen.Bounds().Size()
	reach := (label.Width + 2*label.Size) * density
	if label.Text == "" || !(key.px >= 1 && key.px <= 400) ||
		!(x > -reach && x < float64(size.X)+reach && y > -reach && y < float64(size.Y)+reach) {
		return
	}
	t := l.line(key)
	if t == nil {
		return
	}
	t.used = l.frame

	// The scene made room for Width; a face that is wider is pressed together.
	press := 1.
	if room := label.Width * density; room > 0 && t.width > room*1.01 {
		press = room / t.width
	}
	start := -t.width * press * float64(label.Align+1) / 2
	place := func(dx, dy float64) *ebiten.DrawImageOptions {
		o := &ebiten.DrawImageOptions{Filter: ebiten.FilterLinear}
		o.GeoM.Translate(-float64(t.origin.X), -float64(t.origin.Y))
		o.GeoM.Scale(press, 1)
		o.GeoM.Translate(start, 0)
		if label.Angle != 0 {
			o.GeoM.Rotate(label.Angle * math.Pi / 180)
			o.GeoM.Translate(x+dx, y+dy)
			return o
		}
		// Upright text sits on whole pixels and stays as sharp as it was set.
		if press == 1 {
			o.GeoM.Translate(math.Round(x+start)-start+dx, math.Round(y)+dy)
		} else {
			o.GeoM.Translate(x+dx, math.Round(y)+dy)
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
func (l *letters) line(key lineKey) *line {
	if t, ok := l.lines[key]; ok {
		return t
	}
	face := l.face(key.faceKey)
	if face == nil {
		return nil
	}
	bounds, advance := font.BoundString(face, key.text)
	// A pixel of air on all sides, for the filter.
	x0, y0 := bounds.Min.X.Floor()-1, bounds.Min.Y.Floor()-1
	w, h := bounds.Max.X.Ceil()+1-x0, bounds.Max.Y.Ceil()+1-y0
	t := &line{origin: image.Pt(-x0, -y0), width: float64(advance) / 64, used: l.frame}
	if w < 1 || h < 1 {
		w, h = 1, 1
	}
	w, h = min(w, 4000), min(h, 2000)
	set := image.NewRGBA(image.Rect(0, 0, w, h))
	d := font.Drawer{Dst: set, Src: image.White, Face: face, Dot: fixed.P(-x0, -y0)}
	d.DrawString(key.text)
	t.image = ebiten.NewImage(w, h)
	t.image.WritePixels(set.Pix)
	if l.lines == nil {
		l.lines = map[lineKey]*line{}
	}
	l.lines[key] = t
	return t
}

func (l *letters) face(key faceKey) font.Face {
	if f, ok := l.faces[key]; ok {
		return f
	}
	which, ttf := 0, goregular.TTF
	if key.bold {
		which, ttf = 1, gobold.TTF
	}
	if l.fonts[which] == nil {
		f, err := opentype.Parse(ttf)
		if err != nil {
			tell("steelyardTrouble", "The font cannot be read: "+err.Error())
			return nil
		}
		l.fonts[which] = f
	}
	face, err := opentype.NewFace(l.fonts[which], &opentype.FaceOptions{Size: key.px, DPI: 72})
	if err != nil {
		tell("steelyardTrouble", "The font cannot be set: "+err.Error())
		return nil
	}
	if l.faces == nil || len(l.faces) > 64 {
		l.faces = map[faceKey]font.Face{}
	}
	l.faces[key] = face
	return face
}
