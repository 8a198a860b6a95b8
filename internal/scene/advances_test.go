package scene

import (
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// The tables of advances are those of the Go fonts.
func TestAdvances(t *testing.T) {
	for name, c := range map[string]struct {
		ttf  []byte
		bold bool
	}{"regular": {goregular.TTF, false}, "bold": {gobold.TTF, true}} {
		f, err := sfnt.Parse(c.ttf)
		if err != nil {
			t.Fatal(err)
		}
		var buf sfnt.Buffer
		had := 0
		for r := rune(0x20); r < 0x3000; r++ {
			g, err := f.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			if g == 0 {
				continue
			}
			a, err := f.GlyphAdvance(&buf, g, fixed.I(ems), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			had++
			if got, want := advance(r, c.bold), float64(a)/64/ems; got != want {
				t.Errorf("%s: %U is %v em wide, want %v", name, r, got, want)
			}
		}
		if had < 500 {
			t.Errorf("%s: only %d runes compared", name, had)
		}
	}
}

// What the fonts lack is as wide as browsers' fonts have it, or nearly.
func TestAdvancesOfOtherScripts(t *testing.T) {
	for r, want := range map[rune]float64{'自': 1, 'の': 1, '한': 1, '́': 0, 'ا': 0.6} {
		if got := advance(r, false); got != want {
			t.Errorf("%U is %v em wide, want %v", r, got, want)
		}
	}
}
