package geometry

import (
	"math"

	"steelyard/internal/mass"
)

// sag lets the suspension down by its sag, in the frame's own axes: the fork
// gets shorter along the steering axis, and the swingarm turns about the main
// pivot until the rear axle has risen by its sag.
func (f *frame) sag() {
	up := f.down.Scale(-f.frontSag)
	f.forkFoot = f.forkFoot.Add(up)
	f.frontAxle = f.frontAxle.Add(up)
	if f.rearTravel > 0 {
		turn := swing(f.rearAxle.Sub(f.pivot), f.rearSag)
		f.rearAxle = f.pivot.Add(f.rearAxle.Sub(f.pivot).PitchBy(turn))
		f.shockSwing = f.pivot.Add(f.shockSwing.Sub(f.pivot).PitchBy(turn))
	}
}

// swing is the angle in rad, nose up positive and hence mostly negative, by
// which a swingarm turns about its pivot when its end rises by rise. The arm
// runs from the pivot to the end, which must be behind the pivot and stay
// there: |arm.Z + rise| < |arm|.
//
// The end is at (-L cos a, L sin a); its height grows from L sin a by the rise.
func swing(arm mass.Vec, rise float64) float64 {
	l := math.Hypot(arm.X, arm.Z)
	return math.Asin(arm.Z/l) - math.Asin((arm.Z+rise)/l)
}
