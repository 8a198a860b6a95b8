package units

import (
	"math"
	"strconv"
	"strings"
)

// The characters that numbers are set with: a true minus, and a space that does
// not break a number from its unit or from its thousands.
const (
	minus   = "\u2212"
	noBreak = "\u00a0"
	nothing = "–" // stands for what is no number
)

// Format says how numbers are written: with a decimal point, or with a comma.
// Reading takes both, whatever the format.
type Format struct {
	Comma bool
}

// Number puts the decimal sign into a number as strconv writes it.
func (f Format) Number(s string) string {
	if f.Comma {
		return strings.Replace(s, ".", ",", 1)
	}
	return s
}

// Mass writes a mass of g grams in a unit, "g", "kg", "lb", "oz" or
// "lb_oz", with so many decimals; -1 rounds to tens, and so on. With "lb_oz"
// the decimals are the ounces', and a mass below one pound is in ounces alone.
// More decimals than make sense in a unit, two of a gram, are left off. An
// unknown unit writes grams, and what is no number a dash.
//
// From 10 000 on, thousands are set apart; these spaces and the one before the
// unit do not break. [ParseMass] reads back all that is not negative: grams have
// no third decimal that it could take for thousands.
func (f Format) Mass(g float64, unit string, decimals int) string {
	if unit == PoundOunce {
		return poundsAndOunces(g, decimals, f)
	}
	return masses.unitOr(unit, Gram).format(g, decimals, f)
}

// Length is [Format.Mass] for a length of mm millimetres, in "mm", "cm",
// "m", "in" or "ft"; an unknown unit writes millimetres.
func (f Format) Length(mm float64, unit string, decimals int) string {
	return lengths.unitOr(unit, Millimetre).format(mm, decimals, f)
}

// MassWithin writes a mass that is known within ±plus grams, and the plus
// beside it, such as "12 340 g" and "120 g", rounded by [Decimals]. A
// mass known exactly, or better than can be written, has an empty plus and is
// written as short as it can be.
func (f Format) MassWithin(g, plus float64, unit string) (value, within string) {
	if unit == PoundOunce {
		return masses.unit(Ounce).within(g, plus, f, poundsAndOunces)
	}
	u := masses.unitOr(unit, Gram)
	return u.within(g, plus, f, u.format)
}

// LengthWithin is [Format.MassWithin] for a length.
func (f Format) LengthWithin(mm, plus float64, unit string) (value, within string) {
	u := lengths.unitOr(unit, Millimetre)
	return u.within(mm, plus, f, u.format)
}

func (q *quantity) unitOr(name, fallback string) *unit {
	if u := q.unit(name); u != nil {
		return u
	}
	return q.unit(fallback)
}

// within writes a value and its plus with write.
func (u *unit) within(v, plus float64, f Format, write func(float64, int, Format) string) (value, within string) {
	plus = math.Abs(plus)
	if !Finite(plus) {
		return write(v, Shortest(v/u.size, u.finest), f), nothing
	}
	d, told := Decimals(plus/u.size, u.finest)
	if !told {
		return write(v, Shortest(v/u.size, u.finest), f), ""
	}
	return write(v, d, f), write(plus, d, f)
}

// format writes v, in grams or millimetres, in the unit.
func (u *unit) format(v float64, decimals int, f Format) string {
	if !Finite(v) {
		return nothing
	}
	return decimal(v/u.size, min(max(decimals, coarsest), u.finest), f) + noBreak + u.name
}

// poundsAndOunces writes a mass in both, rounded as a whole, so that 15.96 oz
// with one decimal is 1 lb 0.0 oz. Whole ounces are the coarsest, since tens of
// ounces are no round number of pounds.
func poundsAndOunces(g float64, decimals int, f Format) string {
	if !Finite(g) {
		return nothing
	}
	d := min(max(decimals, 0), masses.unit(Ounce).finest)
	pound := 16 * math.Pow10(d) // in the last place of the ounces
	n := math.Round(math.Abs(g) / GramsPerOunce * math.Pow10(d))
	if n >= 1<<53 {
		return masses.unit(Pound).format(g, 0, f) // the ounces are lost in rounding
	}
	lb := math.Floor(n / pound)
	s := decimal((n-lb*pound)/math.Pow10(d), d, f) + noBreak + Ounce
	if lb > 0 {
		s = decimal(lb, 0, f) + noBreak + Pound + noBreak + s
	}
	if g < 0 && n > 0 {
		s = minus + s
	}
	return s
}

// decimal writes a number with so many decimals, thousands apart from 10 000
// on. A number that rounds to 0 has no sign.
func decimal(x float64, decimals int, f Format) string {
	if decimals < 0 {
		// Dividing by a whole power of ten rounds once; FormatFloat has the rest.
		ten := math.Pow10(-decimals)
		x, decimals = math.Round(x/ten)*ten, 0
	}
	s := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	zero := true
	for i := range len(s) {
		if s[i] != '0' && s[i] != '.' {
			zero = false
			break
		}
	}
	whole := len(s)
	if decimals > 0 {
		whole -= decimals + 1
	}
	if whole > 4 {
		for i := whole - 3; i > 0; i -= 3 {
			s = s[:i] + noBreak + s[i:]
		}
	}
	if s = f.Number(s); x < 0 && !zero {
		s = minus + s
	}
	return s
}
