package geometry

import "steelyard/internal/mass"

// AxlePath returns n places of the rear axle on its way about the main pivot,
// from full length to full travel by equal steps of height over the frame,
// while the frame stays where it is in the pose. The rear axle of the pose is
// on the path. On a rigid rear all n are the rear axle; without n there are none.
func (b *Bike) AxlePath(n int) []mass.Vec {
	if n < 1 {
		return nil
	}
	path := make([]mass.Vec, n)
	// Height over the frame is measured square to the frame's own level.
	arm := b.RearAxle.Sub(b.Pivot).PitchBy(-b.Pitch)
	for i := range path {
		path[i] = b.RearAxle
		if !b.RearSprung {
			continue
		}
		rise := -b.RearSag
		if n > 1 {
			rise += b.RearTravel * float64(i) / float64(n-1)
		}
		path[i] = b.Pivot.Add(arm.PitchBy(swing(arm, rise) + b.Pitch))
	}
	return path
}

// EndPivot is the lever that carries the rear wheel: what is fixed to it turns
// about Pivot while the wheel moves at End. The effective mass at the axle is
// the lever's moment of inertia about Pivot over Length squared (package mass,
// LeverMass).
type EndPivot struct {
	Pivot, End mass.Vec // main pivot and rear axle, in the pose
	Length     float64  // between them, m
	Angle      float64  // of the lever over the level, seen from the pivot backwards, rad: positive with the axle above the pivot
	Sprung     bool     // false on a rigid rear, where nothing turns: Pivot is then the bottom bracket
}

// EndPivot returns the lever that carries the rear wheel.
func (b *Bike) EndPivot() EndPivot {
	arm := b.RearAxle.Sub(b.Pivot)
	return EndPivot{
		Pivot: b.Pivot, End: b.RearAxle,
		Length: arm.Norm(), Angle: angleOver(-arm.X, arm.Z),
		Sprung: b.RearSprung,
	}
}
