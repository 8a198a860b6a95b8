package ride

import (
	"math"

	"steelyard/internal/mass"
)

// Lean is the angle, rad, by which the bike must lean to run straight when its
// centre of mass is y left of the middle plane at a height z: atan(y/z) brings
// it over the line of the contact points. It is a roll in the sense of
// ISO 8855: positive leans to the right, against a load on the left. Tyres are
// taken to be thin; on wide ones the contact moves over and the bike leans a
// little further.
func (s *System) Lean() mass.Figure {
	t := mass.Ratio(s.left, s.height)
	return through(math.Atan(t.Value), 1/(1+t.Value*t.Value), t)
}

// Rebalance is the mass, kg, to move from the left side to the right, over a
// distance apart in m, that brings the centre of mass into the middle plane: m
// y/apart. A value below 0 is to move from the right to the left.
func (s *System) Rebalance(apart float64) mass.Figure {
	return mass.Times(1/apart, product(s.total, s.left))
}
