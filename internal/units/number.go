package units

import (
	"strconv"
	"strings"
)

// marks are the characters that may stand inside a number beside its digits.
const marks = " .,'"

// Number is a number as written, before it is known what its marks mean.
type number struct {
	run              string // digits and marks, without spaces at its ends
	numerator, denom string // of a fraction after the run, or alone
}

// DecimalMark returns the mark that a number in text proves to be its decimal
// sign, '.' or ',', or 0 where the text leaves it open (1.234), has none, or is
// no number. One such text in a column of a table settles the others: see
// [ParseMassMarked].
func DecimalMark(text string) rune {
	if len(text) > maxText {
		return 0
	}
	for _, run := range strings.FieldsFunc(clean(text), func(r rune) bool {
		return !isDigit(r) && !strings.ContainsRune(marks, r)
	}) {
		run = strings.Trim(run, " ")
		if _, ok := value(run, 0); !ok || !strings.ContainsAny(run, ".,") {
			continue
		}
		if m := decimalMark(run); m != '?' {
			return m
		}
	}
	return 0
}

// decimalMark finds the decimal mark of a run: '.' or ',', 0 when all its marks
// set thousands apart or it has none, '?' when a single mark may be either. A
// run without a decimal mark of its own, such as 1.234.567, still proves that
// its mark is not the decimal one, but that is for value to use.
func decimalMark(run string) rune {
	point, comma := strings.Count(run, "."), strings.Count(run, ",")
	switch {
	case point == 0 && comma == 0:
		return 0
	case point > 0 && comma > 0:
		// The thousands come first.
		return rune(run[strings.LastIndexAny(run, ".,")])
	case point+comma > 1:
		return 0
	}
	at := strings.IndexAny(run, ".,")
	before, after := run[:at], run[at+1:]
	if strings.ContainsAny(before, " '") || len(after) != 3 || len(before) == 0 || len(before) > 3 || before[0] == '0' {
		return rune(run[at])
	}
	return '?'
}

// value reads a run with a known decimal mark, or 0 to find it; a mark that may
// be either is then taken as decimal. It says false where the marks do not
// stand where marks stand.
func value(run string, decimal rune) (float64, bool) {
	if decimal == 0 {
		if decimal = decimalMark(run); decimal == '?' {
			decimal = rune(run[strings.IndexAny(run, ".,")])
		}
	}
	whole, part := run, ""
	if decimal != 0 {
		var cut bool
		if whole, part, cut = strings.Cut(run, string(decimal)); cut && strings.Trim(part, digits) != "" {
			return 0, false
		}
	}
	if at := strings.IndexAny(whole, marks); at >= 0 {
		groups := strings.Split(whole, whole[at:at+1])
		for i, g := range groups {
			if strings.Trim(g, digits) != "" || len(g) > 3 || i > 0 && len(g) < 3 {
				return 0, false
			}
		}
		if g := groups[0]; g == "" || g[0] == '0' {
			return 0, false
		}
		whole = strings.Join(groups, "")
	}
	if whole == "" && part == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(whole+"."+part, 64)
	return v, err == nil
}

const digits = "0123456789"

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// clean brings the many characters of one meaning to one, in lower case. A
// fraction in one character gets its space: 1⅛ is 1 1/8.
func clean(text string) string { return strings.TrimSpace(strings.ToLower(characters.Replace(text))) }

var characters = strings.NewReplacer(
	// Spaces: tab, no-break, en, em, thirds, quarters, sixths, figure,
	// punctuation, thin, hair, narrow no-break, mathematical, wide.
	"\t", " ", "\u00a0", " ", "\u2002", " ", "\u2003", " ", "\u2004", " ", "\u2005", " ", "\u2006", " ",
	"\u2007", " ", "\u2008", " ", "\u2009", " ", "\u200a", " ", "\u202f", " ", "\u205f", " ", "\u3000", " ",
	// Minus: the sign itself, hyphens, en dash, small and full width.
	"\u2212", "-", "\u2010", "-", "\u2011", "-", "\u2013", "-", "\ufe63", "-", "\uff0d", "-",
	"\u2044", "/", "\u2215", "/",
	// Feet and inches, straight, prime and curly.
	"''", `"`, "\u2033", `"`, "\u201c", `"`, "\u201d", `"`, "\u2032\u2032", `"`, "\u2019\u2019", `"`,
	"\u2032", "'", "\u2018", "'", "\u2019", "'",
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)
