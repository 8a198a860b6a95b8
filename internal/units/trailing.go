package units

import (
	"strings"
	"unicode"
)

// Written is a mass in a text, and what is beside it.
type Written struct {
	Name   string
	Grams  float64
	Within float64 // half-width, g; 0 where nothing is said of it
	About  bool    // a word before it says that it is rough
}

// CutMass takes a mass out of a text: "bell 42 g" is a bell of 42 grams, "bag
// 2 lb 3 oz" a bag, and "saddle 512 ± 5 g" a saddle that is known within 5 grams.
// Only a number with a unit is a mass. Of several the last counts. Where there is
// none, or nothing beside it, the name is the whole text, and ok false.
//
// A space parts a size from the mass behind it, "cassette 11 450 g", and sets
// thousands apart only where it does not break.
func CutMass(text string) (w Written, ok bool) {
	none := Written{Name: strings.TrimSpace(text)}
	pieces := cutPieces(text)
	first, end, grams := lastMass(pieces)
	w.Grams = grams
	if end == 0 {
		return none, false
	}
	if first > 0 && isWithin(pieces[first-1].text) {
		// What is before the sign has a unit of its own, or the same one.
		if first == 1 {
			return none, false
		}
		from, to, m := lastMass(pieces[:first-1])
		if to != first-1 {
			unit := strings.TrimLeft(join(pieces[first:end]), digits+"., ")
			var err error
			if m, err = ParseMass(pieces[first-2].text+" "+unit, PoundOunce); err != nil {
				return none, false
			}
			from = first - 2
		}
		first, w.Grams, w.Within = from, m, grams
	}
	if first > 0 && isAbout(pieces[first-1].text) {
		first--
		w.About = true
	}
	before := strings.TrimRightFunc(join(pieces[:first]), joining)
	after := strings.TrimLeftFunc(join(pieces[end:]), joining)
	if w.Name = strings.TrimSpace(before + " " + after); w.Name == "" {
		return none, false
	}
	return w, true
}

// isAbout reports whether a word says that the figure behind it is rough.
func isAbout(s string) bool {
	switch strings.TrimSuffix(strings.ToLower(s), ".") {
	case "~", "≈", "ca", "circa", "about", "approx", "roughly", "etwa", "rund", "ungefähr", "env", "environ":
		return true
	}
	return false
}

// piece is a run of a text without spaces.
type piece struct {
	text   string
	before string // the space before it
}

// cutPieces cuts a text at its spaces, and round the signs of a doubt and of brackets.
func cutPieces(text string) []piece {
	text = strings.NewReplacer("+/-", " ± ", "±", " ± ", "(", " ( ", ")", " ) ", "~", " ~ ", "≈", " ≈ ").Replace(text)
	var pieces []piece
	for text != "" {
		at := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsSpace(r) })
		if at < 0 {
			break
		}
		end := strings.IndexFunc(text[at:], unicode.IsSpace)
		if end < 0 {
			end = len(text) - at
		}
		pieces = append(pieces, piece{text: text[at : at+end], before: text[:at]})
		text = text[at+end:]
	}
	return pieces
}

// lastMass finds the last mass with a unit among pieces: those from first up to
// end, which is 0 when there is none.
func lastMass(pieces []piece) (first, end int, grams float64) {
	for first = len(pieces) - 1; first >= 0; first-- {
		if !isDigit(rune(pieces[first].text[0])) {
			continue
		}
		end = 0
		for n := 1; n <= 2 && first+n <= len(pieces); n++ {
			if g, err := readPieces(pieces[first : first+n]); err == nil {
				end, grams = first+n, g
				break
			}
		}
		if end == 0 {
			continue
		}
		for first > 0 {
			more := 0
			switch last := pieces[first-1].text; {
			case isDigit(rune(last[0])) && !isDigit(rune(last[len(last)-1])):
				more = 1 // 2lb 3oz
			case first > 1 && isDigit(rune(pieces[first-2].text[0])) && !strings.ContainsAny(last, digits):
				more = 2 // 2 lb 3 oz
			case pieces[first].before == noBreak || pieces[first].before == "\u202f" || pieces[first].before == "\u2009":
				more = 1 // 1 200 g
			}
			if more == 0 {
				break
			}
			g, err := readPieces(pieces[first-more : end])
			if err != nil {
				break
			}
			first, grams = first-more, g
		}
		return first, end, grams
	}
	return 0, 0, 0
}

// readPieces reads pieces as one mass, every number with its unit.
func readPieces(pieces []piece) (float64, error) {
	return ParseMass(strings.TrimRight(join(pieces), ",;:)"), PoundOunce)
}

func join(pieces []piece) string {
	var s strings.Builder
	for i, p := range pieces {
		if i > 0 {
			s.WriteByte(' ')
		}
		s.WriteString(p.text)
	}
	return s.String()
}

func isWithin(s string) bool { return s == "±" || s == "+-" }

// joining reports whether a character only joins a name to its mass.
func joining(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(":=,;()–—-→", r) }
