package units

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// TrailingMass takes a mass off the end of a text: "bell 42 g" is a bell of 42
// grams, and "bag 2 lb 3 oz" a bag. A bare number is in the unit. Where there is
// no mass at the end, or nothing before it, it returns the whole text and false.
func TrailingMass(text, unit string) (name string, grams float64, ok bool) {
	text = strings.TrimSpace(text)
	for i, r := range text {
		if i == 0 || !unicode.IsSpace(r) {
			continue
		}
		rest := text[i+utf8.RuneLen(r):]
		if !massLike(rest) {
			continue
		}
		grams, err := ParseMass(rest, unit)
		if err != nil {
			break
		}
		return strings.TrimSpace(text[:i]), grams, true
	}
	return text, 0, false
}

// massLike reports whether a text is a number, perhaps with a unit of mass, and
// perhaps with ounces after that.
func massLike(s string) bool {
	rest, ok := cutFigure(s)
	if !ok {
		return false
	}
	for _, u := range []string{"kg", "g", "lbs", "lb", "oz"} {
		if len(rest) >= len(u) && strings.EqualFold(rest[:len(u)], u) {
			rest = strings.TrimSpace(rest[len(u):])
			break
		}
	}
	if rest == "" {
		return true
	}
	rest, ok = cutFigure(rest)
	return ok && strings.EqualFold(rest, "oz")
}

// cutFigure takes a number off the front, and the space after it.
func cutFigure(s string) (rest string, ok bool) {
	if s == "" || s[0] < '0' || s[0] > '9' {
		return s, false
	}
	return strings.TrimSpace(strings.TrimLeft(s, "0123456789.,")), true
}
