package drive

import "math"

// Pitch of a bicycle chain, m: half an inch (ISO 9633).
const Pitch = 0.0127

// PitchRadius is the radius on which the pins of a chain lie on a sprocket, m:
// pitch / (2 sin(π/teeth)).
func PitchRadius(teeth int) float64 { return Pitch / (2 * math.Sin(math.Pi/float64(teeth))) }

// Losses are the quantities that a drive loses power by.
type Losses struct {
	Chain Chain
	Belt  Belt
	Front Box      // the gearbox at the cranks
	Rear  Box      // the gear hub
	Crank Quantity // constant torque of bearings and seals at the cranks, N m

	// Stated are losses that somebody states, whatever they come from; they
	// come after all others.
	Stated []StatedLoss
	// Whole, if there, is the efficiency of the whole drive and takes the place
	// of all that stands before.
	Whole *Whole
}

// Chain is how a chain loses power (Lodge and Burgess, 2002): each link turns on
// and off each sprocket under the tension of its span, and its pins rub.
type Chain struct {
	Friction     Quantity // coefficient, pin in bush
	Pin          float64  // radius, m
	Slack        Quantity // tension of the slack span, N
	PulleyTeeth  int
	PulleyTorque Quantity // constant, of the bearing of one pulley, N m
}

// Belt is a toothed belt: a share of the power, and the torque at the front
// pulley that bending and tension take.
type Belt struct {
	Share  Quantity
	Torque Quantity // N m
}

// Box is a gear hub or gearbox.
type Box struct {
	Mesh   Quantity // share of the power that each pair of gears loses
	Meshes Quantity // how many carry the load, where nobody knows
	Torque Quantity // constant, of bearings and seals, at the shaft that goes in, N m
}

// StatedLoss is a share of what arrives, and a power besides.
type StatedLoss struct {
	Name  string
	Share Quantity
	Power Quantity // W
}

// Whole is the efficiency of a whole drive as somebody measured it at a power, W.
type Whole struct {
	Efficiency Quantity
	Power      float64
}

// Typical figures, all of them ours (common practice, no source): a chain
// that is oiled and used on dusty roads between two cleanings, at touring power.
// Lodge and Burgess (2002) and Spicer et al. (2001) measured clean ones, which
// lose less.
func TypicalLosses() Losses {
	q := func(v, half float64, source string) Quantity { return Quantity{v, half, Typical, source} }
	return Losses{
		Chain: Chain{
			Friction: q(0.25, 0.12, "chain friction"), Pin: 0.0018,
			Slack: q(16, 8, "chain slack"), PulleyTeeth: 11, PulleyTorque: q(0.012, 0.008, "pulley bearing"),
		},
		Belt:  Belt{Share: q(0.012, 0.006, "belt share"), Torque: q(0.16, 0.08, "belt torque")},
		Front: Box{Mesh: q(0.017, 0.010, "gearbox mesh"), Meshes: q(2, 0.5, "gearbox meshes"), Torque: q(0.35, 0.25, "gearbox seals")},
		Rear:  Box{Mesh: q(0.010, 0.006, "hub mesh"), Meshes: q(2, 1, "hub meshes"), Torque: q(0.06, 0.04, "hub seals")},
		Crank: q(0.08, 0.05, "crank bearings"),
	}
}
