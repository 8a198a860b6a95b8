package scene

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Regular and Bold are the fonts that labels are measured with and that a
// painter should use: the Go fonts, as TrueType.
var (
	Regular = goregular.TTF
	Bold    = gobold.TTF
)

// metrics holds the advances of a font, by rune, in fractions of the em. The
// fonts have no kerning, so that a line is as wide as its runes together.
type metrics struct {
	ttf  []byte
	once sync.Once
	low  [0x180]float32 // Latin, filled at once

	mu   sync.Mutex
	font *sfnt.Font
	buf  sfnt.Buffer
	more map[rune]float32
}

var (
	regular = metrics{ttf: Regular}
	bold    = metrics{ttf: Bold}
)

// ems is the size that glyphs are measured at, so that 26.6 numbers lose
// nothing.
const ems = 2048

func (m *metrics) load() {
	f, err := sfnt.Parse(m.ttf)
	if err != nil {
		panic(err) // the font is part of the program
	}
	m.font, m.more = f, make(map[rune]float32)
	for r := range m.low {
		m.low[r] = m.glyph(rune(r))
	}
}

func (m *metrics) glyph(r rune) float32 {
	g, err := m.font.GlyphIndex(&m.buf, r)
	if err != nil {
		return 0
	}
	a, err := m.font.GlyphAdvance(&m.buf, g, fixed.I(ems), font.HintingNone)
	if err != nil {
		return 0
	}
	return float32(a) / 64 / ems
}

func (m *metrics) advance(r rune) float32 {
	m.once.Do(m.load)
	if r >= 0 && int(r) < len(m.low) {
		return m.low[r]
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	a, ok := m.more[r]
	if !ok {
		if len(m.more) > 4096 {
			clear(m.more)
		}
		a = m.glyph(r)
		m.more[r] = a
	}
	return a
}

// textWidth is how wide a line is set at a size, px.
func textWidth(s string, size float64, isBold bool) float64 {
	m := &regular
	if isBold {
		m = &bold
	}
	w := float32(0)
	for _, r := range s {
		w += m.advance(r)
	}
	return float64(w) * size
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

// short returns a name on one line, without what has no shape of its own
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
