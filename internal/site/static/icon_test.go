package static

import (
	"bytes"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

func TestIconsShowTheDrawing(t *testing.T) {
	root, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	svg, err := os.ReadFile(filepath.Join(root, "web", "icon.svg"))
	if err != nil {
		t.Fatal(err)
	}
	s := site{}
	if err := s.addIcons(svg); err != nil {
		t.Fatal(err)
	}
	paper := color.NRGBA{0xf6, 0xf2, 0xe9, 255}
	for name, icon := range icons {
		img, err := png.Decode(bytes.NewReader(s[name]))
		if err != nil {
			t.Fatal(err)
		}
		if img.Bounds().Dx() != icon.size || img.Bounds().Dy() != icon.size {
			t.Errorf("%s is %v", name, img.Bounds())
		}
		at := func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA) }
		if corner := at(0, 0); icon.maskable && corner != paper || !icon.maskable && corner.A != 0 {
			t.Errorf("%s has the corner %v", name, corner)
		}
		// The weight's middle and the pan's, seen in the drawing at 46 40 and 11 41.
		place := func(x, y float64) (int, int) {
			size, shrink := float64(icon.size), 1.
			if icon.maskable {
				shrink = maskableShrink
			}
			to := func(v float64) int { return int(v/64*size*shrink + size*(1-shrink)/2) }
			return to(x), to(y)
		}
		if got := at(place(46, 40)); got != (color.NRGBA{0xb0, 0x00, 0x5a, 255}) {
			t.Errorf("%s: the weight is %v", name, got)
		}
		if got := at(place(11, 41)); got != paper {
			t.Errorf("%s: the load's ring is filled with %v", name, got)
		}
		// Well within the strokes, which are 3 wide: the ring's middle, and the
		// rod's two edges.
		for _, p := range [][2]float64{{11, 33.5}, {10.2, 30}, {11.8, 30}} {
			if got := at(place(p[0], p[1])); got != (color.NRGBA{0x1f, 0x1d, 0x1a, 255}) {
				t.Errorf("%s: %v, on the load's ring or rod, is %v", name, p, got)
			}
		}
		if icon.maskable { // nothing but paper outside the middle circle
			r := 0.4 * float64(icon.size)
			for y := range icon.size {
				for x := range icon.size {
					dx, dy := float64(x)-float64(icon.size)/2, float64(y)-float64(icon.size)/2
					if dx*dx+dy*dy > (r+1)*(r+1) && at(x, y) != paper {
						t.Fatalf("%s: %d %d, outside the safe circle, is %v", name, x, y, at(x, y))
					}
				}
			}
		}
	}
}

func TestIconRefusesWhatItCannotDraw(t *testing.T) {
	for _, svg := range []string{
		`<svg`, `<svg/>`, `<svg viewBox="0 0 64 64"/>`, `<svg viewBox="0 0 64 32"/>`,
		`<svg viewBox="0 0 64 64"><text>x</text></svg>`,
		`<svg viewBox="0 0 64 64"><path fill="#000000" d="M0"/></svg>`,
		`<svg viewBox="0 0 64 64"><circle fill="#12345" r="3"/></svg>`,
	} {
		if data, err := drawIcon([]byte(svg), 64, false); err == nil {
			t.Errorf("%s gave %d bytes", svg, len(data))
		}
	}
}
