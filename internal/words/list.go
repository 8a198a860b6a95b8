package words

import "strings"

// ListOf writes a choice of some values, each in quotes: "a", "b" or "c".
func ListOf[S ~string](values []S) string {
	var b strings.Builder
	for i, v := range values {
		switch {
		case i == 0:
		case i == len(values)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		b.WriteString(Quote(string(v)))
	}
	return b.String()
}
