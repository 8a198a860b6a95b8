package scene

import (
	"math"
	"strconv"
)

// Conversions, exact by definition (international avoirdupois pound and inch).
const (
	poundKG = 0.45359237
	inchMM  = 25.4
)

// minus and noBreak are what numbers are set with.
const (
	minus   = "\u2212"
	noBreak = "\u00a0"
)

// decimal writes a number with so many places, thousands apart from 10 000 on.
func decimal(x float64, places int) string {
	if !finite(x) {
		return "–"
	}
	s := strconv.FormatFloat(math.Abs(x), 'f', places, 64)
	whole := len(s)
	if places > 0 {
		whole -= places + 1
	}
	if whole > 4 {
		for i := whole - 3; i > 0; i -= 3 {
			s = s[:i] + noBreak + s[i:]
		}
	}
	if x < 0 && s != strconv.FormatFloat(0, 'f', places, 64) {
		s = minus + s
	}
	return s
}

// mass writes a mass in kg in the user's unit.
func (u Units) mass(kg float64) string {
	switch u.Mass {
	case "kg":
		return decimal(kg, 2) + noBreak + "kg"
	case "lb_oz":
		return pounds(kg)
	default:
		return decimal(kg*1000, 0) + noBreak + "g"
	}
}

// plusMass writes a ± to stand behind mass, without the unit where that is
// plain.
func (u Units) plusMass(kg float64) string {
	switch u.Mass {
	case "kg":
		return "± " + decimal(kg, 2)
	case "lb_oz":
		return "± " + pounds(kg)
	default:
		return "± " + decimal(kg*1000, 0)
	}
}

func pounds(kg float64) string {
	if !finite(kg) {
		return decimal(kg, 0)
	}
	tenths := math.Round(math.Abs(kg) / poundKG * 160) // of an ounce
	lb := math.Floor(tenths / 160)
	oz := (tenths - 160*lb) / 10
	s := decimal(oz, 1) + noBreak + "oz"
	if lb > 0 {
		s = decimal(lb, 0) + noBreak + "lb" + noBreak + s
	}
	if kg < 0 && tenths > 0 {
		s = minus + s
	}
	return s
}

// length writes a length in m in the user's unit, bare for a figure on a
// dimension line.
func (u Units) length(m float64) string { return u.bare(m) + noBreak + u.lengthName() }

func (u Units) bare(m float64) string {
	if u.Length == "in" {
		return decimal(m*1000/inchMM, 1)
	}
	return decimal(m*1000, 0)
}

func (u Units) lengthName() string {
	if u.Length == "in" {
		return "in"
	}
	return "mm"
}

// roundLength returns the longest length of a 1-2-5 row (inches: 1-2-6-12 and
// so on) that is at most limit, m.
func (u Units) roundLength(limit float64) float64 {
	unit := 0.001
	steps := []float64{1, 2, 5}
	if u.Length == "in" {
		unit = inchMM / 1000
		if limit >= 12*unit { // whole feet above one foot
			unit *= 12
		}
	}
	if !(limit > 0) || math.IsInf(limit, 0) {
		return unit
	}
	ten := math.Pow(10, math.Floor(math.Log10(limit/unit)))
	best := ten
	for _, s := range steps {
		if s*ten*unit <= limit*(1+1e-9) {
			best = s * ten
		}
	}
	return best * unit
}
