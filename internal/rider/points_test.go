package rider

import "steelyard/internal/mass"

// mirror returns v as seen in the bike's middle plane.
func mirror(v mass.Vec) mass.Vec { return mass.Vec{X: v.X, Y: -v.Y, Z: v.Z} }

// middle is half way between two points.
func middle(v, w mass.Vec) mass.Vec { return v.Lerp(w, 0.5) }

// inertia returns the inertia tensor that belongs to the second moment j:
// tr(j) 1 - j.
func inertia(j mass.Sym) mass.Sym {
	t := j.Trace()
	return mass.Sym{XX: t - j.XX, YY: t - j.YY, ZZ: t - j.ZZ, XY: -j.XY, XZ: -j.XZ, YZ: -j.YZ}
}
