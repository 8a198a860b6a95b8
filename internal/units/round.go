package units

import (
	"math"
	"strconv"
)

// Finite reports whether v can be written: it is a number, and not an infinite
// one.
func Finite(v float64) bool { return math.Abs(v) <= math.MaxFloat64 }

// coarsest is the coarsest place that is rounded to, in decimals.
const coarsest = -9

// Decimals is the one rule by which a figure and its ± are rounded: how many
// decimals both are written with when the figure is known within ±plus, -1 for
// tens and so on. The plus keeps two significant digits, after rounding, and
// both end at the same place (JCGM 100:2008, 7.2.6); nothing is written finer
// than with most decimals. It is false for a plus that would be written as 0:
// such a figure is exact, as far as can be told, and is written as short as it
// can be.
func Decimals(plus float64, most int) (int, bool) {
	if !Finite(plus) {
		return 0, false
	}
	plus = math.Abs(plus)
	d := min(max(place(plus), coarsest), most)
	return d, math.Round(plus*math.Pow10(d)) != 0
}

// place returns the decimals that leave two significant digits of x, after
// rounding: 1 for 9.94, and 0 for 9.96, which is 10.
func place(x float64) int {
	if x == 0 {
		return math.MaxInt
	}
	s := strconv.FormatFloat(x, 'e', 1, 64) // d.de±dd
	exp, _ := strconv.Atoi(s[4:])
	return 1 - exp
}

// Shortest returns the fewest decimals, up to most, that write the same number
// as the most do.
func Shortest(x float64, most int) int {
	if !Finite(x) {
		return 0
	}
	d := most
	for s := strconv.FormatFloat(x, 'f', d, 64); d > 0 && s[len(s)-1] == '0'; d-- {
		s = s[:len(s)-1]
	}
	return d
}

// MostDecimals are those of a figure that is neither a mass nor a length.
const MostDecimals = 4
