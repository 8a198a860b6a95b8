package scene

import (
	"fmt"
	"image/color"
)

// Ink names the role that a colour plays; a Palette turns it into a colour.
type Ink uint8

// The inks.
const (
	None      Ink = iota
	Paper         // what everything is painted on
	Text          // words and figures
	Quiet         // second-rank words, and leader lines
	Outline       // the bike's edges
	Hair          // spokes, shading, the ground's ticks: may be missed without loss
	Tyre          // the body of a tyre
	Tube          // the body of a sprung tube
	Metal         // the body of rims, cranks, stanchions
	Plain         // the body of what is unsprung, as blank as the paper
	Flesh         // the body of the rider
	Sprung        // markers of parts that the suspension carries
	Unsprung      // markers of parts that the suspension follows
	Rider         // markers of the rider
	Luggage       // markers of bags and what is carried
	Centre        // the centre of mass
	Load          // axle loads
	Dimension     // dimension lines and their figures
	Ghost         // the other build
	Select        // what is chosen or pointed at
	inkCount
)

// InkNames are the inks' names, for style sheets and for SVG.
var InkNames = [inkCount]string{
	"none", "paper", "text", "quiet", "outline", "hair", "tyre", "tube", "metal", "plain", "flesh",
	"sprung", "unsprung", "rider", "luggage", "centre", "load", "dimension", "ghost", "select",
}

// Body reports whether an ink fills what has a body: over a photograph it is thin,
// so that what lies behind can be seen.
func (k Ink) Body() bool { return k >= Tyre && k <= Flesh }

// String returns the ink's name.
func (k Ink) String() string {
	if k < inkCount {
		return InkNames[k]
	}
	return fmt.Sprintf("ink %d", uint8(k))
}

// Palette gives each ink its colour. All colours are opaque.
type Palette [inkCount]color.NRGBA

// Of returns the colour of an ink; None and what is not an ink are transparent.
func (p *Palette) Of(k Ink) color.NRGBA {
	if k == None || k >= inkCount {
		return color.NRGBA{}
	}
	return p[k]
}

// CSS returns an ink's colour as #rrggbb, "none" for None.
func (p *Palette) CSS(k Ink) string {
	if k == None || k >= inkCount {
		return "none"
	}
	c := p[k]
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

// hex makes an opaque colour of 0xrrggbb.
func hex(v uint32) color.NRGBA {
	return color.NRGBA{uint8(v >> 16), uint8(v >> 8), uint8(v), 0xff}
}

// Light is ink on warm paper, and Dark the same print by night. The four marker
// colours of each stay apart for people with any of the three kinds of
// colour-blindness, and every ink but Hair, Tyre, Tube, Metal, Plain and Flesh
// stands out from the paper (see the tests).
var (
	Light = Palette{
		Paper:     hex(0xf6f2e9),
		Text:      hex(0x1f1d1a),
		Quiet:     hex(0x635d53),
		Outline:   hex(0x2b2825),
		Hair:      hex(0xb3aa9b),
		Tyre:      hex(0xd9d2c4),
		Tube:      hex(0xcfdbe2),
		Metal:     hex(0xebe5d9),
		Plain:     hex(0xf6f2e9),
		Flesh:     hex(0xf0e6e3),
		Sprung:    hex(0x2368a6),
		Unsprung:  hex(0xc4480e),
		Rider:     hex(0x741d57),
		Luggage:   hex(0x4a300a),
		Centre:    hex(0x1f1d1a),
		Load:      hex(0x1f1d1a),
		Dimension: hex(0x3c5a45),
		Ghost:     hex(0x6b5f94),
		Select:    hex(0xb0005a),
	}
	Dark = Palette{
		Paper:     hex(0x171a1c),
		Text:      hex(0xf0ece3),
		Quiet:     hex(0xa8a296),
		Outline:   hex(0xd8d2c6),
		Hair:      hex(0x55585a),
		Tyre:      hex(0x33373a),
		Tube:      hex(0x2b4152),
		Metal:     hex(0x24292c),
		Plain:     hex(0x171a1c),
		Flesh:     hex(0x221e24),
		Sprung:    hex(0x62b0f2),
		Unsprung:  hex(0xea7d45),
		Rider:     hex(0xa881a0),
		Luggage:   hex(0xeede94),
		Centre:    hex(0xf0ece3),
		Load:      hex(0xf0ece3),
		Dimension: hex(0x8fc0a0),
		Ghost:     hex(0xa79fd0),
		Select:    hex(0xff7ab8),
	}
)
