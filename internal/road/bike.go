package road

import "steelyard/internal/mass"

// Gravity is the standard acceleration of free fall, m/s² (CGPM 1901).
const Gravity = 9.80665

// Known is a number with its standard uncertainty. Source names what makes it
// doubtful: numbers with the same source, in two bikes too, are wrong by the same
// share of their uncertainty, the same way round.
type Known struct {
	Value, U float64
	Source   string
}

// Side is one end of a bike.
type Side int

// The ends; Both is for what concerns no single one.
const (
	Front Side = iota
	Rear
	Both
)

// String is the end's key.
func (s Side) String() string { return [...]string{"front", "rear", "both"}[s] }

// Body is one of the bodies that a bike is made of.
type Body int

// The bodies. What is neither of the others is Frame: fork crown, bar and a
// seated rider too.
const (
	Frame Body = iota
	Swingarm
	RearWheel
	ForkLower
	FrontWheel
	Rider
	numBodies
)

// Loading is a bike's items, and how much of each belongs to which body. Over the
// bodies the shares of an item add up to 1; shock and links belong to frame and
// swingarm by half. A body without a share has nothing.
type Loading struct {
	Items  []mass.Item
	Shares [numBodies]mass.Share
}

// NumBodies is the length of [Loading.Shares].
const NumBodies = int(numBodies)

// Spring is the suspension of an end.
type Spring struct {
	// Travel that the end has: vertical at the rear axle, along the steering axis
	// in front, m; and Sag, the part of it that the weight takes up, by which the
	// spring is chosen in the state in which it is set.
	Travel float64
	Sag    Known
	// Rate, N/m, and measured along the travel; 0 where it follows from the sag.
	Rate Known
	// Ratio is the damping as a share of the critical one; 0 is none. Damper is a
	// damping that was measured along the travel, N s/m, and goes before it.
	Ratio, Damper Known
}

// Tyre is a tyre in the vertical direction.
type Tyre struct {
	Rate Known // N/m, see [Membrane] and [Drop]
	// Lag is damping over rate, s.
	Lag Known
	// Radius of the wheel with its tyre on and Width of the tyre, m; from the
	// radius follows how long the contact is.
	Radius, Width float64
}

// End is one end of a bike. Without a spring it is rigid.
type End struct {
	Spring *Spring
	Tyre   Tyre
}

// Standing is a rider who stands: a mass on a spring and a damper over what
// carries it. It does not pitch with the frame, and goes fore and aft with the
// pedals.
type Standing struct {
	Frequency Known    // of the body on its legs and arms while the bike stands still, Hz
	Ratio     Known    // its damping, as a share of the critical one
	Pedals    mass.Vec // midway between the pedals
}

// Point is a place on a body that is shaken. Load is what it carries, kg.
type Point struct {
	There bool
	On    Body // Frame, Swingarm or ForkLower
	Place mass.Vec
	Load  float64
}

// Bike is a bike in its pose with all that it carries.
type Bike struct {
	Loading
	// Set is the state in which the springs were set; nil where they are set anew
	// in the bike's own.
	Set *Loading

	RearAxle, FrontAxle, Pivot mass.Vec
	HeadAngle                  float64 // steering axis from the horizontal, rad
	Ends                       [2]End  // Front, Rear
	Standing                   *Standing
	// PointContact takes the road as it is under the axle, not averaged over the
	// length of the contact: closed forms want it so.
	PointContact bool

	// Saddle is what bears a seated rider, of one who stands it is the pedals.
	// Grips is the middle of the grips.
	Saddle, Grips, Rack, ForkBags, BarBag Point
}
