package static

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"strconv"
	"strings"

	"golang.org/x/image/vector"
)

// Icons for those who install the site are drawn from web/icon.svg, so that
// there is one drawing. Only what that drawing needs of SVG is understood, and
// anything else is an error: rect, circle, path and g; M, L, H, V and Z in
// paths; plain colours; strokes with round ends and joints.

// icons are the sizes in px, by file name. A maskable icon fills its square,
// since the system cuts it to a shape of its own, and keeps what matters within
// the middle circle of four fifths of its width (W3C, Web Application Manifest).
var icons = map[string]struct {
	size     int
	maskable bool
}{
	"icons/icon-192.png":          {192, false},
	"icons/icon-512.png":          {512, false},
	"icons/icon-maskable-512.png": {512, true},
	"icons/icon-180.png":          {180, true}, // for systems that round the corners themselves
}

// maskableShrink brings all of the drawing but its ground into the middle circle.
const maskableShrink = 0.64

// addIcons draws all of them.
func (s site) addIcons(svg []byte) error {
	for name, icon := range icons {
		data, err := drawIcon(svg, icon.size, icon.maskable)
		if err != nil {
			return fmt.Errorf("%s from icon.svg: %w", name, err)
		}
		s[name] = data
	}
	return nil
}

// element is any element of the drawing.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Children []element  `xml:",any"`
}

func (e *element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func drawIcon(svg []byte, size int, maskable bool) ([]byte, error) {
	var root element
	if err := xml.Unmarshal(svg, &root); err != nil {
		return nil, err
	}
	box := strings.Fields(root.attr("viewBox"))
	if len(box) != 4 || box[0] != "0" || box[1] != "0" || box[2] != box[3] {
		return nil, fmt.Errorf("viewBox %q; right would be a square from 0 0", root.attr("viewBox"))
	}
	side, err := strconv.ParseFloat(box[2], 64)
	if err != nil || !(side > 0) {
		return nil, fmt.Errorf("viewBox %q", root.attr("viewBox"))
	}
	b := brush{
		to:    image.NewNRGBA(image.Rect(0, 0, size, size)),
		scale: float64(size) / side,
	}
	if maskable {
		b.scale *= maskableShrink
		b.shift = float64(size) * (1 - maskableShrink) / 2
		b.bleed = true
	}
	if err := b.draw(root.Children, style{}); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, b.to); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

type style struct{ fill, stroke, width string }

type brush struct {
	to           *image.NRGBA
	scale, shift float64
	bleed        bool // a rect is the ground, and fills everything
}

type point struct{ x, y float64 }

// draw paints elements in their order, with what they inherit.
func (b *brush) draw(elements []element, inherited style) error {
	for i := range elements {
		e := &elements[i]
		st := inherited
		for name, to := range map[string]*string{"fill": &st.fill, "stroke": &st.stroke, "stroke-width": &st.width} {
			if v := e.attr(name); v != "" {
				*to = v
			}
		}
		number := func(name string) float64 {
			v, _ := strconv.ParseFloat(e.attr(name), 64)
			return v
		}
		var err error
		switch e.XMLName.Local {
		case "g":
			err = b.draw(e.Children, st)
		case "rect":
			err = b.rect(number("width"), number("height"), number("rx"), st)
		case "circle":
			err = b.circle(point{number("cx"), number("cy")}, number("r"), st)
		case "path":
			var lines [][]point
			if lines, err = polylines(e.attr("d")); err == nil {
				err = b.path(lines, st)
			}
		default:
			err = fmt.Errorf("<%s> is not understood", e.XMLName.Local)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// paint fills what shape adds to the rasterizer.
func (b *brush) paint(ink string, shape func(z *vector.Rasterizer)) error {
	if ink == "" || ink == "none" {
		return nil
	}
	rgb, err := strconv.ParseUint(strings.TrimPrefix(ink, "#"), 16, 32)
	if err != nil || len(ink) != 7 {
		return fmt.Errorf("colour %q; right would be #rrggbb", ink)
	}
	z := vector.NewRasterizer(b.to.Rect.Dx(), b.to.Rect.Dy())
	shape(z)
	z.Draw(b.to, b.to.Rect, image.NewUniform(color.NRGBA{uint8(rgb >> 16), uint8(rgb >> 8), uint8(rgb), 255}), image.Point{})
	return nil
}

func (b *brush) at(p point) (x, y float32) {
	return float32(p.x*b.scale + b.shift), float32(p.y*b.scale + b.shift)
}

// ring adds a circle; all circles and bars run the same way round, so that
// where they overlap they add up, unless one is asked to run backwards.
func (b *brush) ring(z *vector.Rasterizer, c point, r float64, backwards bool) {
	const k = 0.5522847498 // a cubic's handles for a quarter of a circle
	turn := -1.
	if backwards {
		turn = 1
	}
	x, y := b.at(point{c.x + r, c.y})
	z.MoveTo(x, y)
	u, v := point{r, 0}, point{0, turn * r}
	for range 4 {
		x1, y1 := b.at(point{c.x + u.x + k*v.x, c.y + u.y + k*v.y})
		x2, y2 := b.at(point{c.x + v.x + k*u.x, c.y + v.y + k*u.y})
		x3, y3 := b.at(point{c.x + v.x, c.y + v.y})
		z.CubeTo(x1, y1, x2, y2, x3, y3)
		u, v = v, point{-u.x, -u.y}
	}
	z.ClosePath()
}

func (b *brush) rect(w, h, r float64, st style) error {
	return b.paint(st.fill, func(z *vector.Rasterizer) {
		if b.bleed {
			n := float32(b.to.Rect.Dx())
			z.MoveTo(0, 0)
			z.LineTo(0, n)
			z.LineTo(n, n)
			z.LineTo(n, 0)
			z.ClosePath()
			return
		}
		b.bar(z, point{r, h / 2}, point{w - r, h / 2}, h/2)
		b.bar(z, point{w / 2, r}, point{w / 2, h - r}, w/2)
		for _, c := range []point{{r, r}, {w - r, r}, {r, h - r}, {w - r, h - r}} {
			b.ring(z, c, r, false)
		}
	})
}

// bar adds the rectangle along a line.
func (b *brush) bar(z *vector.Rasterizer, p, q point, half float64) {
	l := math.Hypot(q.x-p.x, q.y-p.y)
	if l == 0 {
		return
	}
	n := point{-(q.y - p.y) / l * half, (q.x - p.x) / l * half}
	for i, c := range []point{{p.x + n.x, p.y + n.y}, {q.x + n.x, q.y + n.y}, {q.x - n.x, q.y - n.y}, {p.x - n.x, p.y - n.y}} {
		x, y := b.at(c)
		if i == 0 {
			z.MoveTo(x, y)
		} else {
			z.LineTo(x, y)
		}
	}
	z.ClosePath()
}

func (b *brush) circle(c point, r float64, st style) error {
	if err := b.paint(st.fill, func(z *vector.Rasterizer) { b.ring(z, c, r, false) }); err != nil {
		return err
	}
	width, _ := strconv.ParseFloat(st.width, 64)
	return b.paint(st.stroke, func(z *vector.Rasterizer) {
		b.ring(z, c, r+width/2, false)
		b.ring(z, c, r-width/2, true)
	})
}

func (b *brush) path(lines [][]point, st style) error {
	err := b.paint(st.fill, func(z *vector.Rasterizer) {
		for _, line := range lines {
			for i, p := range line {
				x, y := b.at(p)
				if i == 0 {
					z.MoveTo(x, y)
				} else {
					z.LineTo(x, y)
				}
			}
			z.ClosePath()
		}
	})
	if err != nil {
		return err
	}
	width, _ := strconv.ParseFloat(st.width, 64)
	return b.paint(st.stroke, func(z *vector.Rasterizer) {
		for _, line := range lines {
			for i, p := range line {
				b.ring(z, p, width/2, false)
				if i > 0 {
					b.bar(z, line[i-1], p, width/2)
				}
			}
		}
	})
}

// polylines reads a path of straight lines.
func polylines(d string) (lines [][]point, err error) {
	var line []point
	var at point
	var command byte
	rest := d
	next := func() (v float64) {
		rest = strings.TrimLeft(rest, " ,")
		n := 0
		for n < len(rest) && (rest[n] == '.' || rest[n] >= '0' && rest[n] <= '9' || n == 0 && rest[n] == '-') {
			n++
		}
		var e error
		if v, e = strconv.ParseFloat(rest[:n], 64); e != nil && err == nil {
			err = fmt.Errorf("path %q: a number is missing before %q", d, rest)
		}
		rest = rest[n:]
		return v
	}
	for err == nil {
		rest = strings.TrimLeft(rest, " ,")
		if rest == "" {
			break
		}
		if c := rest[0]; c >= 'A' && c != '-' {
			command, rest = c, rest[1:]
		}
		from := point{}
		if command >= 'a' {
			from = at
		}
		switch command {
		case 'M', 'm':
			at = point{from.x + next(), from.y + next()}
			if len(line) > 0 {
				lines = append(lines, line)
			}
			line = []point{at}
			command-- // further pairs are lines, and L comes before M
			continue
		case 'L', 'l':
			at = point{from.x + next(), from.y + next()}
		case 'H', 'h':
			at.x = from.x + next()
		case 'V', 'v':
			at.y = from.y + next()
		case 'Z', 'z':
			if len(line) > 0 {
				at = line[0]
			}
		default:
			return nil, fmt.Errorf("path %q: %q is not understood", d, command)
		}
		line = append(line, at)
		if command == 'Z' || command == 'z' {
			command = 0
		}
	}
	if len(line) > 0 {
		lines = append(lines, line)
	}
	return lines, err
}
