package mass

import "math"

// Alike returns the vector with v along each axis.
func Alike(v float64) Vec { return Vec{v, v, v} }

// Vec is a point or a displacement, in metres.
type Vec struct{ X, Y, Z float64 }

// Add returns v + w.
func (v Vec) Add(w Vec) Vec { return Vec{v.X + w.X, v.Y + w.Y, v.Z + w.Z} }

// Sub returns v - w.
func (v Vec) Sub(w Vec) Vec { return Vec{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Scale returns f v.
func (v Vec) Scale(f float64) Vec { return Vec{f * v.X, f * v.Y, f * v.Z} }

// Dot returns the scalar product of v and w.
func (v Vec) Dot(w Vec) float64 { return v.X*w.X + v.Y*w.Y + v.Z*w.Z }

// Norm returns the length of v.
func (v Vec) Norm() float64 { return math.Sqrt(v.Dot(v)) }

// Lerp returns the point that divides the way from v to w at the fraction t.
func (v Vec) Lerp(w Vec, t float64) Vec { return v.Add(w.Sub(v).Scale(t)) }

// PitchBy returns v turned about the y axis by the angle a in radians,
// positive from x towards z: the front of a bike that faces x goes up.
func (v Vec) PitchBy(a float64) Vec {
	s, c := math.Sincos(a)
	return Vec{c*v.X - s*v.Z, v.Y, s*v.X + c*v.Z}
}

// Sym is a symmetric 3×3 matrix: a second moment or an inertia tensor.
type Sym struct{ XX, YY, ZZ, XY, XZ, YZ float64 }

// Add returns a + b.
func (a Sym) Add(b Sym) Sym {
	return Sym{a.XX + b.XX, a.YY + b.YY, a.ZZ + b.ZZ, a.XY + b.XY, a.XZ + b.XZ, a.YZ + b.YZ}
}

// Scale returns f a.
func (a Sym) Scale(f float64) Sym {
	return Sym{f * a.XX, f * a.YY, f * a.ZZ, f * a.XY, f * a.XZ, f * a.YZ}
}

// Trace returns the sum of the diagonal.
func (a Sym) Trace() float64 { return a.XX + a.YY + a.ZZ }

// Times returns the product of a and the vector v.
func (a Sym) Times(v Vec) Vec {
	return Vec{
		a.XX*v.X + a.XY*v.Y + a.XZ*v.Z,
		a.XY*v.X + a.YY*v.Y + a.YZ*v.Z,
		a.XZ*v.X + a.YZ*v.Y + a.ZZ*v.Z,
	}
}

// Inner returns Σ aᵢⱼ bᵢⱼ over all nine places.
func (a Sym) Inner(b Sym) float64 {
	return a.XX*b.XX + a.YY*b.YY + a.ZZ*b.ZZ + 2*(a.XY*b.XY+a.XZ*b.XZ+a.YZ*b.YZ)
}

// Outer returns the second moment r rᵀ of a unit mass at r.
func Outer(r Vec) Sym {
	return Sym{r.X * r.X, r.Y * r.Y, r.Z * r.Z, r.X * r.Y, r.X * r.Z, r.Y * r.Z}
}

// PitchBy returns a as seen after its body is turned about the y axis by the
// angle t in radians, positive from x towards z: R a Rᵀ.
func (a Sym) PitchBy(t float64) Sym {
	s, c := math.Sincos(t)
	return Sym{
		XX: c*c*a.XX - 2*s*c*a.XZ + s*s*a.ZZ,
		YY: a.YY,
		ZZ: s*s*a.XX + 2*s*c*a.XZ + c*c*a.ZZ,
		XY: c*a.XY - s*a.YZ,
		XZ: s*c*(a.XX-a.ZZ) + (c*c-s*s)*a.XZ,
		YZ: s*a.XY + c*a.YZ,
	}
}
