package spelling

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// plainLetters folds the letters of the neighbouring languages that people type
// with and without their marks.
var plainLetters = strings.NewReplacer(
	"ä", "a", "à", "a", "â", "a", "á", "a", "å", "a", "ã", "a",
	"ö", "o", "ô", "o", "ó", "o", "ò", "o", "ø", "o", "õ", "o",
	"ü", "u", "ù", "u", "û", "u", "ú", "u",
	"é", "e", "è", "e", "ê", "e", "ë", "e", "í", "i", "î", "i", "ï", "i",
	"ç", "c", "ñ", "n", "ß", "ss", "œ", "oe", "æ", "ae",
)

// Fold writes a text in lower case and without marks on its letters, so that
// it can be compared.
func Fold(s string) string {
	s = strings.ToLower(s)
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return plainLetters.Replace(s)
		}
	}
	return s
}

// Words splits a text into folded words of letters and digits. A point or
// comma between digits belongs to the number and is written as a point.
func Words(s string) []string {
	rest := []rune(Fold(s))
	var words []string
	var word strings.Builder
	for i, r := range rest {
		digitAround := i > 0 && i+1 < len(rest) && unicode.IsDigit(rest[i-1]) && unicode.IsDigit(rest[i+1])
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r):
			word.WriteRune(r)
		case (r == '.' || r == ',') && digitAround:
			word.WriteByte('.')
		case word.Len() > 0:
			words = append(words, word.String())
			word.Reset()
		}
	}
	if word.Len() > 0 {
		words = append(words, word.String())
	}
	return words
}

// Distance returns how many letters must be added, taken out, changed or
// swapped with their neighbour to make b of a (the optimal string alignment
// distance), or limit+1 when it is more than limit. Letters are bytes: the
// words compared here are plain ASCII, others only look a little further apart.
func Distance(a, b string, limit int) int {
	if len(a) > len(b)+limit || len(b) > len(a)+limit {
		return limit + 1
	}
	// Rows i-2, i-1 and i of the table of distances between a[:i] and b[:j].
	var space [3][32]int
	rows := [3][]int{space[0][:], space[1][:], space[2][:]}
	if len(b) >= len(space[0]) {
		for i := range rows {
			rows[i] = make([]int, len(b)+1)
		}
	}
	before, last, row := rows[0], rows[1], rows[2]
	for j := range len(b) + 1 {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			d := min(last[j]+1, row[j-1]+1, last[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, before[j-2]+1)
			}
			row[j] = d
			least = min(least, d)
		}
		if least > limit {
			return limit + 1
		}
		before, last, row = last, row, before
	}
	return min(last[len(b)], limit+1)
}

// Nearest returns the name that [Distance] has fewest changes for, the first of
// several. The names are in lower case.
func Nearest(s string, names []string) string {
	s = strings.ToLower(strings.TrimSpace(s))
	best, least := "", 1<<30
	for _, name := range names {
		if d := Distance(s, name, least-1); d < least {
			best, least = name, d
		}
	}
	return best
}
