// Package svg writes a scene as an SVG document, to be printed or put into an
// article. It holds no layout of its own: what the canvas shows is what the
// file shows.
package svg

import (
	"bufio"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"steelyard/internal/scene"
)

// Options are how a scene is written. The zero Options are good.
type Options struct {
	Clear  bool    // without a background
	Pixels float64 // how wide the document says it is; 0 is as wide as the scene was laid out
	Named  bool    // colours by the names of the inks, var(--sprung), for a page that has them in its style
}

// Fonts is the list of font families that texts ask for. Widths are held by
// textLength whichever is found.
const Fonts = `Go, 'Helvetica Neue', Helvetica, Arial, 'Liberation Sans', sans-serif`

// Write writes a scene in the colours of a palette.
func Write(w io.Writer, s *scene.Scene, p scene.Palette, o Options) error {
	b := bufio.NewWriter(w)
	e := &encoder{w: b, p: &p, named: o.Named}
	e.scene(s, o)
	return b.Flush()
}

// encoder appends to buf and empties it into w mark by mark; bufio keeps the
// first error.
type encoder struct {
	w     *bufio.Writer
	p     *scene.Palette
	named bool
	buf   []byte
}

func (e *encoder) raw(s string) { e.buf = append(e.buf, s...) }

// ink appends a colour.
func (e *encoder) ink(k scene.Ink) {
	if !e.named || k == scene.None {
		e.raw(e.p.CSS(k))
		return
	}
	e.raw("var(--")
	e.raw(k.String())
	e.raw(")")
}

// num appends a number with at most two decimals; what is not finite is 0, for
// a document that cannot be read is worse than a mark in the wrong place.
func (e *encoder) num(x float64) {
	if x != x || x > 1e9 || x < -1e9 {
		x = 0
	}
	n := len(e.buf)
	e.buf = strconv.AppendFloat(e.buf, x, 'f', 2, 64)
	t := e.buf
	for t[len(t)-1] == '0' {
		t = t[:len(t)-1]
	}
	if t[len(t)-1] == '.' {
		t = t[:len(t)-1]
	}
	if string(t[n:]) == "-0" {
		t = append(t[:n], '0')
	}
	e.buf = t
}

func (e *encoder) pair(x, y float64) {
	e.num(x)
	e.buf = append(e.buf, ' ')
	e.num(y)
}

// attr appends name="number".
func (e *encoder) attr(name string, x float64) {
	e.raw(" ")
	e.raw(name)
	e.raw(`="`)
	e.num(x)
	e.raw(`"`)
}

// text appends s with what XML gives a meaning escaped, and without what XML
// 1.0 cannot hold.
func (e *encoder) text(s string) {
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == '&':
			e.raw("&amp;")
		case r == '<':
			e.raw("&lt;")
		case r == '>':
			e.raw("&gt;")
		case r == '"':
			e.raw("&quot;")
		case r == '\'':
			e.raw("&#39;")
		case r == utf8.RuneError && n == 1, r < 0x20 && r != '\t' && r != '\n', r == 0xfffe, r == 0xffff:
			e.raw("\ufffd")
		default:
			e.raw(s[i : i+n])
		}
		i += n
	}
}

func (e *encoder) flush() {
	e.w.Write(e.buf) //nolint:errcheck // bufio keeps it for Flush
	e.buf = e.buf[:0]
}

func (e *encoder) scene(s *scene.Scene, o Options) {
	e.raw(`<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="0 0 `)
	e.pair(s.Width, s.Height)
	e.raw(`"`)
	scale := 1.0
	if o.Pixels > 0 && s.Width > 0 {
		scale = o.Pixels / s.Width
	}
	e.attr("width", scale*s.Width)
	e.attr("height", scale*s.Height)
	e.raw(" stroke-linejoin=\"round\" stroke-linecap=\"round\">\n<title>")
	e.text(s.Title)
	e.raw("</title>\n<desc>")
	e.text(s.Desc)
	e.raw("</desc>\n")
	if !o.Clear {
		e.raw(`<rect width="100%" height="100%" fill="`)
		e.ink(scene.Paper)
		e.raw("\"/>\n")
	}
	e.raw("<g fill=\"none\">\n")
	for i := range s.Marks {
		e.mark(&s.Marks[i])
		e.flush()
	}
	e.raw("</g>\n<g font-family=\"")
	e.raw(Fonts)
	e.raw("\">\n")
	for i := range s.Labels {
		e.label(&s.Labels[i])
		e.flush()
	}
	e.raw("</g>\n</svg>\n")
	e.flush()
}

func (e *encoder) mark(m *scene.Mark) {
	if len(m.Path) == 1 && m.Path[0].Op == scene.Circle {
		c := &m.Path[0]
		e.raw("<circle")
		e.attr("cx", c.X)
		e.attr("cy", c.Y)
		e.attr("r", c.R)
	} else {
		e.raw(`<path d="`)
		e.path(m.Path)
		e.raw(`"`)
	}
	if m.Fill != scene.None {
		e.raw(` fill="`)
		e.ink(m.Fill)
		e.raw(`"`)
	}
	if m.Stroke != scene.None && m.Width > 0 {
		e.raw(` stroke="`)
		e.ink(m.Stroke)
		e.raw(`"`)
		e.attr("stroke-width", m.Width)
		if m.Butt {
			e.raw(` stroke-linecap="butt"`)
		}
		if len(m.Dash) > 0 {
			e.raw(` stroke-dasharray="`)
			for i, d := range m.Dash {
				if i > 0 {
					e.raw(" ")
				}
				e.num(d)
			}
			e.raw(`"`)
		}
	}
	e.raw("/>\n")
}

func (e *encoder) path(path []scene.Seg) {
	for i := range path {
		g := &path[i]
		switch g.Op {
		case scene.Move:
			e.raw("M")
			e.pair(g.X, g.Y)
		case scene.Line:
			e.raw("L")
			e.pair(g.X, g.Y)
		case scene.Cubic:
			e.raw("C")
			e.pair(g.X1, g.Y1)
			e.raw(" ")
			e.pair(g.X2, g.Y2)
			e.raw(" ")
			e.pair(g.X, g.Y)
		case scene.Circle:
			e.raw("M")
			e.pair(g.X+g.R, g.Y)
			for _, x := range [2]float64{-2 * g.R, 2 * g.R} {
				e.raw("a")
				e.pair(g.R, g.R)
				e.raw(" 0 0 1 ")
				e.pair(x, 0)
			}
			e.raw("z")
		case scene.Close:
			e.raw("Z")
		}
	}
}

func (e *encoder) label(l *scene.Label) {
	if strings.TrimSpace(l.Text) == "" {
		return
	}
	e.raw("<text")
	e.attr("x", l.X)
	e.attr("y", l.Y)
	e.attr("font-size", l.Size)
	if l.Bold {
		e.raw(` font-weight="700"`)
	}
	switch {
	case l.Align == 0:
		e.raw(` text-anchor="middle"`)
	case l.Align > 0:
		e.raw(` text-anchor="end"`)
	}
	if l.Width > 0 {
		e.attr("textLength", l.Width)
	}
	if l.Angle != 0 {
		e.raw(` transform="rotate(`)
		e.num(l.Angle)
		e.raw(" ")
		e.pair(l.X, l.Y)
		e.raw(`)"`)
	}
	if l.Halo {
		e.raw(` paint-order="stroke" stroke-width="3" stroke="`)
		e.ink(scene.Paper)
		e.raw(`"`)
	}
	e.raw(` fill="`)
	e.ink(l.Ink)
	e.raw(`">`)
	e.text(l.Text)
	e.raw("</text>\n")
}
