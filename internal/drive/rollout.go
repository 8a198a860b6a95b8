package drive

import (
	"math"

	"steelyard/internal/mass"
)

// Wheel is what the roll-out of a wheel is reckoned from, m.
type Wheel struct {
	Radius     Quantity // of the tyre, unloaded
	Deflection Quantity // by which the load presses it in
}

// Share of a tyre's height by which it drops under its load: a handbook's rule
// says 15 % (Berto; memory); on bad roads less pressure is usual (common practice, no source).
const (
	Drop       = 0.15
	DropWithin = 0.07
)

// WheelOf returns the wheel of a bead seat diameter and a tyre's width, mm, with
// typical doubts: 3 mm in the radius, for tyres seldom measure what they say
// (common practice, no source). Name is the tyre's: wheels of one name err alike.
func WheelOf(beadSeat, tyre float64, name string) Wheel {
	height := tyre / 1000
	return Wheel{
		Radius:     Quantity{beadSeat/2000 + height, 0.003, Typical, "radius " + name},
		Deflection: Quantity{Drop * height, DropWithin * height, Typical, "deflection " + name},
	}
}

// Deflection is by how much a tyre is pressed in, m, under a load in N with a
// pressure in Pa: the membrane estimate load / (2π p √(R r)) of a torus on a
// plane, R the wheel's radius and r half the tyre's width, m. The casing makes
// a real tyre softer there and stiffer elsewhere: take it within a quarter.
func Deflection(load, pressure, radius, halfWidth float64) float64 {
	if pressure <= 0 || radius <= 0 || halfWidth <= 0 || load <= 0 {
		return 0
	}
	return min(load/(2*math.Pi*pressure*math.Sqrt(radius*halfWidth)), 2*halfWidth)
}

// Third is the share of the deflection by which the rolled radius is less than
// the unloaded one; it lies within ThirdWithin (common practice, no source: a
// measured roll-out is better).
const (
	Third       = 1.0 / 3
	ThirdWithin = 1.0 / 6
)

// RollOut is the way of a wheel for one turn, m: 2π (R - d/3).
func (w Wheel) RollOut() Figure {
	b := new(mass.Budget)
	w.Radius.Charge(b, 2*math.Pi)
	w.Deflection.Charge(b, -2*math.Pi*Third)
	Quantity{Third, ThirdWithin, Typical, "rolled radius"}.Charge(b, -2*math.Pi*w.Deflection.Value)
	return Figure{2 * math.Pi * (w.Radius.Value - Third*w.Deflection.Value), b}
}

// MeasuredRollOut is a roll-out that somebody measured, m.
func MeasuredRollOut(q Quantity) Figure {
	b := new(mass.Budget)
	q.Charge(b, 1)
	return Figure{q.Value, b}
}
