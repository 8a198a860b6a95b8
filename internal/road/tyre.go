package road

import "math"

// Bar is a bar in Pa.
const Bar = 1e5

// highPressure is more than any bicycle tyre is made for, Pa (common practice, no
// source).
const highPressure = 15 * Bar

// Typical figures, with half-widths, for what nobody has measured: estimates of
// ours, no source.
const (
	TypicalLag, TypicalLagHalf             = 0.001, 0.0005 // s, of a tyre
	TypicalRatio, TypicalRatioHalf         = 0.25, 0.1     // damping of fork and shock
	TypicalStanding, TypicalStandingHalf   = 3.0, 1.0      // Hz, of a body on bent knees
	TypicalBodyRatio, TypicalBodyRatioHalf = 0.35, 0.15    // its damping
	MembraneHalf                           = 0.25          // of a rate from [Membrane]
)

// Membrane estimates the vertical rate of a tyre, N/m, from its pressure, Pa, the
// radius of the wheel and the width of the tyre, m:
//
//	k = 2π p √(R w/2)
//
// A torus pressed on a plane by d touches it in an ellipse with the half axes
// √(2Rd) and √(2rd), whose area times the pressure is the load. The casing is
// taken to bear nothing.
func Membrane(side Side, pressure, radius, width float64) (rate float64, err error) {
	if err := first(above(NoPressure, side, pressure), above(NoSize, side, radius), above(NoSize, side, width)); err != nil {
		return 0, err
	}
	return 2 * math.Pi * pressure * math.Sqrt(radius*width/2), nil
}

// Drop is the rate of a tyre, N/m, by a test: the axle sank by drop, m, when the
// load on the wheel grew by load, N, both with their standard uncertainties.
func Drop(side Side, load, loadU, drop, dropU float64) (rate, u float64, err error) {
	if err := first(above(NoDrop, side, load), above(NoDrop, side, drop)); err != nil {
		return 0, 0, err
	}
	rate = load / drop
	return rate, rate * math.Hypot(loadU/load, dropU/drop), nil
}

// contact is the length of a tyre's contact, m, when it is pressed by d: the
// chord of its circle.
func (t *Tyre) contact(d float64) float64 {
	d = min(d, t.Radius)
	return 2 * math.Sqrt(d*(2*t.Radius-d))
}
