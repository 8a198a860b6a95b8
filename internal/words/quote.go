package words

import "strings"

// most is how many characters of a user's text a sentence can bear.
const most = 40

// Shorten cuts a text of the user's to what a sentence can bear, and makes one
// line of it.
func Shorten(s string) string { return ShortenTo(s, most) }

// ShortenName shortens the name of something of the user's: a sentence that is
// about it bears more of it.
func ShortenName(s string) string { return ShortenTo(s, 2*most) }

// ShortenTo makes one line of a text, valid UTF-8, and leaves at most so many
// characters of it, with an ellipsis where it was cut.
func ShortenTo(s string, most int) string {
	s = strings.Join(strings.Fields(s[:min(len(s), 8*most)]), " ")
	if n := 0; len(s) > most {
		for i := range s {
			if n == most {
				return strings.ToValidUTF8(s[:i], "�") + "…"
			}
			n++
		}
	}
	return strings.ToValidUTF8(s, "�")
}

// Blank reports whether there is nothing to read in a text.
func Blank(s string) bool { return strings.TrimSpace(s) == "" }
