package ride

import (
	"math"

	"steelyard/internal/mass"
)

// Braking is what ends a braking in a straight line, with the better of both
// brakes: decelerations in g.
type Braking struct {
	Lift mass.Figure // the rear wheel leaves the road
	Slip mass.Figure // the tyres slip

	// First is the smaller of the two, and Slips says which it is. When they
	// lie too close together for what is known of the masses, Decided is false.
	First   mass.Figure
	Slips   bool
	Decided bool
}

// Braking returns the largest decelerations on a road of this gradient, when
// the tyres have a coefficient of grip µ. With b the distance of the centre of
// mass behind the front contact, h its height and α the slope, moments about the
// front contact say that the rear wheel leaves the road at
//
//	d = (b/h) cos α + sin α
//
// (J. S. Riel, Maximal Braking on a Standard Bicycle, 2005, equations 3 and 6),
// which for gentle slopes is the level value plus the gradient. However the
// brakes share the work, the tyres together cannot hold more than µ times what
// presses them against the road, so that they slip at
//
//	d = µ cos α + sin α
//
// The two come together at µ = b/h whatever the slope: with less grip than that
// the tyres slip first, with more the wheel lifts first. Both are decelerations
// of the bike; on a descent so steep that one is below 0, to hold the speed is
// already too much.
//
// Items are those that the system was made of.
func (s *System) Braking(items []mass.Item, gradient, grip float64) Braking {
	sin, cos := onSlope(gradient)
	share := mass.Ratio(s.behind, s.height)
	b := Braking{
		Lift: mass.Plus(mass.Times(cos, share), exactly(sin)),
		Slip: exactly(grip*cos + sin),
	}
	b.First, b.Slips = b.Lift, grip < share.Value
	if b.Slips {
		b.First = b.Slip
	}
	_, plus := mass.Uncertainty(items, share)
	b.Decided = math.Abs(share.Value-grip) > plus
	return b
}
