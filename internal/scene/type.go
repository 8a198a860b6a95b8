package scene

import (
	"strings"
	"unicode"
)

// ems is the unit of the tables of advances: parts of the em.
const ems = 2048

// advance is how far a rune moves on the line, in fractions of the em: as in the
// Go fonts, which have no kerning, so that a line is as wide as its runes
// together. What they lack is taken from another font by whoever paints; it gets
// about the room that it takes in most.
func advance(r rune, bold bool) float64 {
	for i := range advances {
		run := &advances[i]
		if r < run.from {
			break
		}
		if k := int(r - run.from); k < len(run.regular) {
			if bold {
				return float64(run.bold[k]) / ems
			}
			return float64(run.regular[k]) / ems
		}
	}
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case r >= 0x1f000 || unicode.In(r, unicode.Han, unicode.Hangul, unicode.Hiragana, unicode.Katakana):
		return 1
	}
	return 0.6
}

// textWidth is how wide a line is set at a size, px.
func textWidth(s string, size float64, bold bool) float64 {
	w := 0.
	for _, r := range s {
		w += advance(r, bold)
	}
	return w * size
}

// Of the Go fonts, in fractions of the em: how far capitals rise above the
// baseline and how deep letters hang below it.
const (
	capHeight = 0.722
	descent   = 0.21
)

// maxName is how many runes of a name are shown, and maxNarrow in a narrow
// picture.
const (
	maxName   = 28
	maxNarrow = 20
)

// Shorten returns a name on one line, without what has no shape of its own
// (control characters, marks that turn the direction of writing), and cut to
// at most most runes with an ellipsis.
func short(name string, most int) string {
	if len(name) <= most && plain(name) {
		return name
	}
	out := make([]rune, 0, most+1)
	gap := false
	for _, r := range name { // what is not UTF-8 comes as U+FFFD
		switch {
		case unicode.IsSpace(r) || unicode.IsControl(r):
			gap = len(out) > 0
			continue
		case unicode.Is(unicode.Cf, r):
			continue
		case gap:
			out = append(out, ' ')
			gap = false
		}
		out = append(out, r)
		if len(out) > most {
			return strings.TrimRight(string(out[:most-1]), " ") + "…"
		}
	}
	return string(out)
}

// plain says whether a name is ASCII on one clean line already.
func plain(name string) bool {
	before := byte(' ')
	for i := range len(name) {
		c := name[i]
		if c < ' ' || c > '~' || c == ' ' && before == ' ' {
			return false
		}
		before = c
	}
	return name == "" || before != ' '
}
