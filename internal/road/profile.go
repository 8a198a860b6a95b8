package road

import "math"

// reference is the spatial frequency that ISO 8608 refers to, cycle/m, and
// Longest the least one for which a road's spectrum is taken to hold.
const (
	reference = 0.1
	Longest   = 0.01
)

// Class is a class of roads of ISO 8608, by the geometric mean of its roughness.
type Class int

// The classes, from a good road to one that is hardly one.
const (
	A Class = iota
	B
	C
	D
	E
)

// Roughness is the displacement spectral density Gd(n0) of a class, m³: 16e-6 for
// A, and four times as much from one to the next (ISO 8608:2016 (memory)). A class
// reaches from half of it to twice.
func (c Class) Roughness() float64 { return 16e-6 * float64(int(1)<<(2*c)) }

// Road is a random road: a displacement spectrum Gd(n) = Gd(n0) (n/n0)⁻², one-sided.
// Roughness is Gd(n0) at n0 = 0.1 cycle/m, in m³.
type Road struct{ Roughness Known }

// intensity is q of a road that is ridden at a speed: E[w'(t) w'(s)] = q δ(t-s).
// The one-sided spectrum of w' over time frequency is (2π)² n0² Gd(n0) v, and q
// is half of it.
func (r Road) intensity(v float64) float64 {
	return 2 * math.Pi * math.Pi * reference * reference * r.Roughness.Value * v
}
