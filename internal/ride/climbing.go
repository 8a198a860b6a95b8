package ride

import (
	"math"

	"steelyard/internal/mass"
)

// Climbing is what ends a climb at steady speed on the rear wheel's drive.
type Climbing struct {
	Lift mass.Figure // gradient at which the front wheel leaves the road
	Slip mass.Figure // gradient at which the rear tyre slips; infinite when it never does

	// First is the smaller of the two, and Slips says which it is. When they
	// lie too close together for what is known of the masses, Decided is false.
	First   mass.Figure
	Slips   bool
	Decided bool
}

// Climbing returns the steepest gradients that can be climbed at steady speed
// when the rear tyre has a coefficient of grip µ. With a the distance of the
// centre of mass ahead of the rear contact, b behind the front one, h its
// height and w the wheelbase, the loads square to the road are
//
//	front: m g (a cos α - h sin α)/w    rear: m g (b cos α + h sin α)/w
//
// The front wheel lifts where its load ends, at tan α = a/h. The rear tyre must
// push m g sin α and slips where that is µ times its load, at
//
//	tan α = µ b/(w - µ h)
//
// It never does when µ h ≥ w. The two come together at µ = a/h: with less grip
// than that the tyre slips first, with more the wheel lifts first.
//
// Items are those that the system was made of.
func (s *System) Climbing(items []mass.Item, grip float64) Climbing {
	c := Climbing{Lift: mass.Ratio(s.ahead, s.height)}
	room := mass.Plus(exactly(s.wheelbase), mass.Times(-grip, s.height))
	if room.Value > 0 {
		c.Slip = mass.Ratio(mass.Times(grip, s.behind), room)
	} else {
		c.Slip = exactly(math.Inf(1))
		if math.IsNaN(room.Value) {
			c.Slip = none
		}
	}
	// The lift decides, which is µ where the two meet: its doubt has no pole.
	c.First, c.Slips = c.Lift, grip < c.Lift.Value
	if c.Slips {
		c.First = c.Slip
	}
	apart := math.Abs(c.Lift.Value - grip)
	_, plus := mass.Uncertainty(items, c.Lift)
	c.Decided = apart > plus
	return c
}
