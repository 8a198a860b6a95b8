package scene

import (
	"math"
	"strconv"
	"strings"

	"steelyard/internal/units"
)

// noBreak is a space at which a line does not break.
const noBreak = "\u00a0"

func (u Units) format() units.Format { return units.Format{Comma: u.Comma} }

// mass writes a mass in kg in the user's unit.
func (u Units) mass(kg float64) string {
	places := 0
	switch u.Mass {
	case units.Kilogram:
		places = 2
	case units.PoundOunce:
		places = 1
	}
	return u.format().Mass(kg*1000, u.Mass, places)
}

// massWithin writes a mass and the ± to stand behind it.
func (u Units) massWithin(kg, plus float64) (value, within string) {
	value, within = u.format().MassWithin(kg*1000, plus*1000, u.Mass)
	if within != "" {
		within = "± " + within
	}
	return value, within
}

// length writes a length in m in the user's unit.
func (u Units) length(m float64) string {
	places := 0
	if u.Length == units.Inch {
		places = 1
	}
	return u.format().Length(m*1000, u.Length, places)
}

// round is length for a round one.
func (u Units) round(m float64) string { return u.format().Length(m*1000, u.Length, 0) }

// lengthWithin writes a length that is known within ±plus, with and without that,
// both without the unit.
func (u Units) lengthWithin(m, plus float64) (full, bare string) {
	value, within := u.format().LengthWithin(m*1000, plus*1000, u.Length)
	unit := noBreak + u.lengthName()
	bare = strings.TrimSuffix(value, unit)
	if within == "" {
		return bare, bare
	}
	return bare + " ± " + strings.TrimSuffix(within, unit), bare
}

func (u Units) lengthName() string {
	if u.Length == units.Inch {
		return units.Inch
	}
	return units.Millimetre
}

// number writes a plain number.
func (u Units) number(x float64, places int) string {
	if !units.Finite(x) {
		return "–"
	}
	s := strconv.FormatFloat(math.Abs(x), 'f', places, 64)
	if x < 0 && strings.Trim(s, "0.") != "" {
		s = "\u2212" + s
	}
	return u.format().Number(s)
}

// roundLength returns the longest of the lengths 1, 2, 5, 10, ... that is at
// most limit, m: in mm, or in inches up to a foot and in feet above.
func (u Units) roundLength(limit float64) float64 {
	unit := 0.001
	if u.Length == units.Inch {
		unit = units.MillimetresPerInch / 1000
		if limit >= 12*unit {
			unit *= 12
		}
	}
	if !(limit > 0) || math.IsInf(limit, 0) {
		return unit
	}
	ten := math.Pow(10, math.Floor(math.Log10(limit/unit)+1e-9))
	best := ten
	for _, s := range [...]float64{2, 5} {
		if s*ten*unit <= limit*(1+1e-9) {
			best = s * ten
		}
	}
	return best * unit
}
