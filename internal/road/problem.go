package road

import (
	"fmt"
	"math"
)

// Key names a problem or a mark.
type Key string

// What makes a bike or a question impossible. Values are the offending one and
// the bounds that it should keep.
const (
	NoSag         Key = "no-sag"          // a spring without sag or rate; m
	SagOverTravel Key = "sag-over-travel" // m, at most the travel
	NoPressure    Key = "no-pressure"     // no pressure, or a tyre without stiffness; Pa or N/m
	NoSize        Key = "no-size"         // of a wheel or tyre; m
	NoDrop        Key = "no-drop"         // an axle that did not drop, or no load; m or N
	BadDamping    Key = "bad-damping"     // below 0, or so large that it is a slip: a ratio, N s/m, or s of a tyre
	NoDamping     Key = "no-damping"      // nothing in the bike takes energy out of some motion
	NoSpeed       Key = "no-speed"        // m/s
	NoRoughness   Key = "no-roughness"    // m³
	NoWheelbase   Key = "no-wheelbase"    // m
	NoArm         Key = "no-arm"          // a pivot that is not ahead of the rear axle; m
	NoHeadAngle   Key = "no-head-angle"   // rad
	NoLoad        Key = "no-load"         // a wheel or spring that carries nothing; N
	NoMass        Key = "no-mass"         // something that moves without mass
	NoObstacle    Key = "no-obstacle"     // height or length of 0
	TooHigh       Key = "too-high"        // an obstacle that the wheel cannot roll over; m
	NotANumber    Key = "not-a-number"
	NoBody        Key = "no-body" // a standing rider without stiffness; Hz
)

// What limits how far a figure may be believed.
const (
	TyreLifts    Key = "tyre-lifts"    // the load varies by more than a third of the static one
	LoadFormal   Key = "load-formal"   // by more than the whole of it
	Bottoms      Key = "bottoms"       // the travel that is left is less than three times its root mean square
	TravelFormal Key = "travel-formal" // or less than it
	SagChanged   Key = "sag-changed"   // the kept spring has another sag, m, of the set one
	SagGone      Key = "sag-gone"      // the weight alone takes up all the travel, m
	OverDamped   Key = "over-damped"   // a damping over 1.5 of critical
	UnDamped     Key = "undamped"      // a suspension without damping
	TyreFlat     Key = "tyre-flat"     // the weight presses the tyre by more than a third of its height, m
	PressureHigh Key = "pressure-high" // a pressure above what bicycle tyres are made for, Pa
	SpeedHigh    Key = "speed-high"    // a speed at which nobody rides on a rough road, m/s
	LiftsOff     Key = "lifts-off"     // the tyre leaves the ground at the obstacle for so many s
	HitsEnd      Key = "hits-end"      // the travel is used up at the obstacle, m
	StepSteep    Key = "step-steep"    // an obstacle of over a third of the wheel's radius, m
	HoleNarrow   Key = "hole-narrow"   // a hole that the wheel does not reach the ground of, m
)

// Problem says why there is no figure. Value is what was given, Least and Most
// what would be right (an infinity where nothing bounds it).
type Problem struct {
	Key         Key
	Side        Side
	Value       float64
	Least, Most float64
}

// Error names the problem; the page has words for it.
func (p *Problem) Error() string {
	return fmt.Sprintf("road: %s (%s): %g is not between %g and %g", p.Key, p.Side, p.Value, p.Least, p.Most)
}

// Mark says where a figure is at the end of what the model can say. Limit is what
// Value went beyond.
type Mark struct {
	Key          Key
	Side         Side
	Value, Limit float64
}

// above is a problem where v is not greater than 0, or no number.
func above(key Key, side Side, v float64) error {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return &Problem{NotANumber, side, v, 0, math.Inf(1)}
	case v <= 0:
		return &Problem{key, side, v, 0, math.Inf(1)}
	}
	return nil
}

// first is the first problem of a list.
func first(list ...error) error {
	for _, e := range list {
		if e != nil {
			return e
		}
	}
	return nil
}
