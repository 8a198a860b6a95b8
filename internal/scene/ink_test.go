package scene

import (
	"image/color"
	"math"
	"testing"
)

// linear is a channel of sRGB without its transfer function (IEC 61966-2-1).
func linear(c uint8) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func rgb(c color.NRGBA) [3]float64 { return [3]float64{linear(c.R), linear(c.G), linear(c.B)} }

// contrast is the contrast ratio of WCAG 2.2.
func contrast(a, b color.NRGBA) float64 {
	l := func(c color.NRGBA) float64 {
		v := rgb(c)
		return 0.2126*v[0] + 0.7152*v[1] + 0.0722*v[2] + 0.05
	}
	x, y := l(a), l(b)
	return max(x, y) / min(x, y)
}

var palettes = map[string]*Palette{"light": &Light, "dark": &Dark}

// WCAG 2.2: text needs 4.5:1 (success criterion 1.4.3), what must be seen to
// understand the picture 3:1 (1.4.11).
func TestContrast(t *testing.T) {
	if got := contrast(hex(0x000000), hex(0xffffff)); math.Abs(got-21) > 1e-9 {
		t.Fatalf("black on white: %v, want 21 (WCAG 2.2)", got)
	}
	need := map[Ink]float64{
		Text: 4.5, Quiet: 4.5, Dimension: 4.5, Ghost: 4.5,
		Outline: 3, Sprung: 3, Unsprung: 3, Rider: 3, Luggage: 3, Centre: 3, Load: 3, Select: 3,
	}
	for name, p := range palettes {
		for ink, least := range need {
			if got := contrast(p.Of(ink), p.Of(Paper)); got < least {
				t.Errorf("%s: %v on paper is %.2f:1, want at least %v:1", name, ink, got, least)
			}
		}
		// The bike's edges stand out from the bodies that they enclose, and so do
		// the markers that lie upon these.
		for _, body := range []Ink{Tyre, Tube, Metal, Plain, Flesh} {
			for _, ink := range []Ink{Outline, Sprung, Unsprung, Luggage, Rider} {
				if got := contrast(p.Of(ink), p.Of(body)); got < 2.9 {
					t.Errorf("%s: %v on %v is %.2f:1, want at least 2.9:1", name, ink, body, got)
				}
			}
		}
	}
}

// Dichromacy as a matrix on linear RGB: Machado, Oliveira and Fernandes (2009),
// A physiologically-based model for simulation of color vision deficiency, IEEE
// TVCG 15(6), severity 1.0.
var visions = map[string][3][3]float64{
	"full colour vision": {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protanopia":         {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia":       {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":         {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
}

// lab is CIE L*a*b* of linear sRGB, white point D65.
func lab(v [3]float64) [3]float64 {
	x := (0.4124*v[0] + 0.3576*v[1] + 0.1805*v[2]) / 0.9505
	y := 0.2126*v[0] + 0.7152*v[1] + 0.0722*v[2]
	z := (0.0193*v[0] + 0.1192*v[1] + 0.9505*v[2]) / 1.089
	f := func(t float64) float64 {
		if t > 216./24389 {
			return math.Cbrt(t)
		}
		return (24389./27*t + 16) / 116
	}
	return [3]float64{116*f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))}
}

// The four sorts of markers differ by at least 20 of CIE 1976 ΔE whatever the
// colour vision: about ten times what can just be told apart side by side.
func TestMarkersWithColourBlindness(t *testing.T) {
	const least = 20
	inks := []Ink{Sprung, Unsprung, Rider, Luggage}
	for name, p := range palettes {
		for vision, m := range visions {
			see := func(k Ink) [3]float64 {
				c, out := rgb(p.Of(k)), [3]float64{}
				for i, row := range m {
					out[i] = sane(row[0]*c[0]+row[1]*c[1]+row[2]*c[2], 0, 1)
				}
				return lab(out)
			}
			for i, a := range inks {
				for _, b := range inks[:i] {
					u, v := see(a), see(b)
					d := math.Sqrt((u[0]-v[0])*(u[0]-v[0]) + (u[1]-v[1])*(u[1]-v[1]) + (u[2]-v[2])*(u[2]-v[2]))
					if d < least {
						t.Errorf("%s, %s: %v and %v are %.1f apart, want at least %d", name, vision, a, b, d, least)
					}
				}
			}
		}
	}
}

func TestPaletteCSS(t *testing.T) {
	if got := Light.CSS(Paper); got != "#f6f2e9" {
		t.Errorf("paper is %s", got)
	}
	if got := Light.CSS(None); got != "none" {
		t.Errorf("no ink is %s", got)
	}
	if got := Light.CSS(inkCount + 3); got != "none" {
		t.Errorf("what is not an ink is %s", got)
	}
	seen := map[string]bool{}
	for k := range inkCount {
		if n := k.String(); n == "" || seen[n] {
			t.Errorf("ink %d has the name %q", k, n)
		} else {
			seen[n] = true
		}
		for name, p := range palettes {
			if k != None && p[k].A != 0xff {
				t.Errorf("%s: %v has no colour", name, k)
			}
		}
	}
}
