package ride

import (
	"math"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// System is a bike with all that it carries, on its two contact points.
//
// Without mass, or with a centre of mass that is not above the ground, or with
// both contacts at one place, figures that need them are not numbers.
type System struct {
	wheelbase float64

	total  mass.Figure
	ahead  mass.Figure // centre of mass ahead of the rear contact, m
	behind mass.Figure // and behind the front contact, m
	left   mass.Figure // and left of the middle, m
	height mass.Figure // and above the ground, m

	front  mass.Figure // load on the front wheel on the level, kg
	rear   mass.Figure
	moment mass.Figure // mass times height, kg m
}

// On puts items on the contact points of a posed bike.
func On(items []mass.Item, bike *geometry.Bike) *System {
	return Between(items, bike.RearContact.X, bike.FrontContact.X)
}

// Between puts items on a rear and a front contact point at these places along
// x, on the ground z = 0.
func Between(items []mass.Item, rear, front float64) *System {
	x, z := mass.Centre(items, nil, mass.X), mass.Centre(items, nil, mass.Z)
	s := &System{
		wheelbase: front - rear,
		total:     mass.Total(items, nil),
		ahead:     mass.Plus(x, exactly(-rear)),
		behind:    mass.Plus(exactly(front), mass.Times(-1, x)),
		left:      mass.Centre(items, nil, mass.Y),
		height:    z,
		front:     mass.Support(items, nil, front, rear),
		rear:      mass.Support(items, nil, rear, front),
	}
	s.moment = product(s.total, s.height)
	if !(s.height.Value > 0) {
		s.height = none
	}
	return s
}

// none is a figure that does not exist.
var none = mass.Figure{Value: math.NaN()}

// exactly is a number without doubt as a figure.
func exactly(v float64) mass.Figure { return mass.Figure{Value: v} }

// product is a b, with the gradient b ∇a + a ∇b.
func product(a, b mass.Figure) mass.Figure {
	f := mass.Plus(mass.Times(b.Value, a), mass.Times(a.Value, b))
	f.Value = a.Value * b.Value
	return f
}

// through is the value of a function of a with that slope at a.
func through(value, slope float64, a mass.Figure) mass.Figure {
	f := mass.Times(slope, a)
	f.Value = value
	return f
}

// onSlope returns the sine and cosine of the slope with this gradient.
func onSlope(gradient float64) (sin, cos float64) {
	return math.Sincos(math.Atan(gradient))
}
