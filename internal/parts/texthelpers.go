package parts

import (
	"math"
	"strconv"
	"strings"
)

func blank(s string) bool { return strings.TrimSpace(s) == "" }

// number writes a figure without an exponent and without a tail of zeros.
func number(x float64) string {
	if math.Abs(x) >= 1e15 {
		return strconv.FormatFloat(x, 'g', 4, 64)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// list writes the values that a field may have.
func list[S ~string](values []S) string {
	var b strings.Builder
	for i, v := range values {
		switch {
		case i == 0:
		case i == len(values)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(quote(string(v)))
	}
	return b.String()
}

// quote puts a text of the user's into quotes, cut to a length that a message
// can bear.
func quote(s string) string { return `"` + short(s) + `"` }

// short cuts a text to 40 characters and makes one line of it.
func short(s string) string { return cut(s, 40) }

// cut makes one line of a text and leaves at most that many characters of it.
func cut(s string, most int) string {
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
