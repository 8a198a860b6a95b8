package words

import (
	"math"
	"strconv"
	"strings"
)

// Number is a figure of the user's, written back without an exponent and without
// a tail of zeros.
type Number float64

// In writes the number with the decimal sign of a language.
func (n Number) In(w *Words) string {
	s := n.String()
	if w.Comma() {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

// Rounded is a figure written with so many decimals, see [Fixed].
type Rounded struct {
	Value    float64
	Decimals int
}

// Fixed is a figure with so many decimals.
func Fixed(v float64, decimals int) Rounded { return Rounded{v, decimals} }

// In writes the figure with the decimal sign of a language.
func (r Rounded) In(w *Words) string {
	s := strconv.FormatFloat(r.Value, 'f', r.Decimals, 64)
	if w.Comma() {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

// String writes the number with a decimal point.
func (n Number) String() string {
	if math.Abs(float64(n)) >= 1e15 {
		return strconv.FormatFloat(float64(n), 'g', 4, 64)
	}
	return strconv.FormatFloat(float64(n), 'f', -1, 64)
}
