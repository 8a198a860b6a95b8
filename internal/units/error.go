package units

import (
	"strings"
	"unicode/utf8"

	"steelyard/internal/words"
)

// Reason is why a text is refused.
type Reason int

// The reasons.
const (
	Empty       Reason = iota + 1 // nothing is written
	TooLong                       // longer than any number that a person writes
	NotANumber                    // no number, or more than one
	Ambiguous                     // two numbers are possible, such as 1.234 g
	Negative                      // below 0 where only more can be
	UnknownUnit                   // a word that is no unit of this quantity
	MissingUnit                   // the number alone could mean two units
	Mixed                         // units that do not go together, such as 2.5 lb 3 oz
	TooLarge                      // beyond anything that this program weighs or measures
)

// Error says why a text is no mass or length, and what would be one.
type Error struct {
	Text   string // what was read, shortened
	Reason Reason
	Wrong  words.Message // what is wrong, to stand after the text: "is a length"
	Right  words.Message // what would be right: "write a mass like 350 g"
}

// In gives a piece of a sentence, without a full stop, in a language.
func (e *Error) In(w *words.Words) string {
	if e.Reason == Empty {
		return words.Tell("units.error.empty", "wrong", e.Wrong, "right", e.Right).In(w)
	}
	return words.Tell("units.error", "text", e.Text, "wrong", e.Wrong, "right", e.Right).In(w)
}

// Error is In in English.
func (e *Error) Error() string { return e.In(nil) }

// shorten keeps the start of a text for a message, and marks what in it cannot be
// printed.
func shorten(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == utf8.RuneError {
			return '·'
		}
		return r
	}, words.ShortenTo(text, 24))
}
