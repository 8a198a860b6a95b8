package steer

import (
	"math"
	"sort"
)

// quartic is a polynomial by its coefficients, the constant first.
type quartic [5]float64

// zeros returns the four zeros of a quartic, conjugates beside each other with
// the one above the axis first; they are not numbers where a coefficient is none,
// or the first is 0.
//
// Freed of its cubic term, y⁴ + p y² + q y + r is a product of two quadratics,
// y² ± √(2m) y + p/2 + m ∓ q/(2√(2m)), with m the largest zero of
// m³ + p m² + (p²/4 - r) m - q²/8, which is nowhere below 0 (Ferrari; Press et al.,
// Numerical Recipes, section 5.6, for the cubic (memory)). What rounding takes from
// zeros of very unlike size comes back by Newton's steps on the factors.
func (c *quartic) zeros() (out [4]complex128) {
	a, b, d, e := c[3]/c[4], c[2]/c[4], c[1]/c[4], c[0]/c[4]
	// In a unit in which no zero is far above 1.
	unit := max(math.Abs(a), math.Sqrt(math.Abs(b)), math.Cbrt(math.Abs(d)), math.Sqrt(math.Sqrt(math.Abs(e))))
	if unit == 0 {
		return out
	}
	a, b, d, e = a/unit, b/unit/unit, d/unit/unit/unit, e/unit/unit/unit/unit
	shift := a / 4
	p := b - 6*shift*shift
	q := d - 2*b*shift + 8*shift*shift*shift
	r := e - d*shift + b*shift*shift - 3*shift*shift*shift*shift
	m := resolvent(p, q, r)
	var one, other factor // in y
	if root := math.Sqrt(2 * m); m > 0 {
		one = factor{root, p/2 + m - q/(2*root)}
		other = factor{-root, p/2 + m + q/(2*root)}
	} else { // a quadratic in y²
		half := math.Sqrt(max(0, p*p/4-r))
		one.c, other.c = p/2+half, p/2-half
	}
	repair(&one, &other)
	for _, f := range []*factor{&one, &other} {
		*f = factor{2*shift + f.b, (shift+f.b)*shift + f.c} // in x
	}
	if math.Abs(other.c) < math.Abs(one.c) {
		one, other = other, one
	}
	// The other is what is left, so that both have all zeros where they meet.
	scaled := quartic{e, d, b, a, 1}
	scaled.improve(&one)
	var left quartic
	scaled.divide(one, &left)
	other = factor{left[3], left[2]}
	out[0], out[1] = one.zeros()
	out[2], out[3] = other.zeros()
	for i := range out {
		// One far below its partner has the digits of a sum with that one.
		if i%2 == 1 && imag(out[i]) == 0 && math.Abs(real(out[i])) < 1e-3*math.Abs(real(out[i-1])) {
			out[i] = complex(scaled.step(real(out[i])), 0)
		}
		out[i] *= complex(unit, 0)
	}
	return out
}

// repair has the closest two of four real zeros in one factor: apart, two that
// meet would cost both factors half of their digits.
func repair(one, other *factor) {
	a, b := one.zeros()
	c, d := other.zeros()
	if imag(a) != 0 || imag(c) != 0 {
		return
	}
	y := []float64{real(a), real(b), real(c), real(d)}
	sort.Float64s(y)
	if y[2]-y[1] < min(y[1]-y[0], y[3]-y[2]) {
		y[0], y[2] = y[2], y[0]
	}
	*one, *other = factor{-y[0] - y[1], y[0] * y[1]}, factor{-y[2] - y[3], y[2] * y[3]}
}

// step takes one of Newton's steps towards a zero, if that makes the quartic smaller.
func (c *quartic) step(x float64) float64 {
	value, slope := c.at(x)
	next := x - value/slope
	if after, _ := c.at(next); math.Abs(after) < math.Abs(value) {
		return next
	}
	return x
}

// at returns the value and the slope of a quartic.
func (c *quartic) at(x float64) (value, slope float64) {
	for i := 4; i >= 0; i-- {
		slope = slope*x + value
		value = value*x + c[i]
	}
	return value, slope
}

// resolvent returns the largest zero of m³ + p m² + (p²/4 - r) m - q²/8, 0 where
// that is below what can be told from it.
func resolvent(p, q, r float64) float64 {
	linear, constant := p*p/4-r, -q*q/8
	// With m = x - p/3: x³ - 3 s x - 2 t = 0.
	third := p / 3
	s := third*third - linear/3
	t := (third*(linear-2*third*third) - constant) / 2
	var m float64
	if s > 0 && t*t < s*s*s {
		m = 2*math.Sqrt(s)*math.Cos(math.Acos(max(-1, min(1, t/(s*math.Sqrt(s)))))/3) - third
	} else {
		u := math.Cbrt(t + math.Copysign(math.Sqrt(max(0, t*t-s*s*s)), t))
		if m = -third; u != 0 {
			m += u + s/u
		}
		if m < 0 && s > 0 { // the other two meet, and rounding has lifted them off the axis
			m = math.Sqrt(s) - third
		}
	}
	cubic := quartic{constant, linear, p, 1, 0}
	for range 8 {
		next := cubic.step(m)
		if next == m {
			break
		}
		m = next
	}
	return max(0, m)
}

// factor is the quadratic x² + b x + c.
type factor struct{ b, c float64 }

// zeros returns the zeros of a factor, of conjugates the one above the axis first.
func (f factor) zeros() (complex128, complex128) {
	half := -f.b / 2
	disc := half*half - f.c
	if disc < 0 {
		im := math.Sqrt(-disc)
		return complex(half, im), complex(half, -im)
	}
	// The one farther from 0 by adding what has the same sign, the other from the
	// product, so that nothing cancels.
	far := half + math.Copysign(math.Sqrt(disc), half)
	if far == 0 {
		return 0, 0
	}
	return complex(far, 0), complex(f.c/far, 0)
}

// improve takes Newton's steps on the two numbers of a factor that is nearly
// right, as long as they leave less of the quartic when it is divided by it
// (Bairstow; Press et al., Numerical Recipes, section 9.5 (memory)). A double zero
// within a factor costs no digits of it.
func (c *quartic) improve(f *factor) {
	var q, d quartic // of the division, and of the quotient by the factor again
	left := c.divide(*f, &q)
	for range 6 {
		if left == 0 {
			return
		}
		q.divide(*f, &d)
		det := d[2]*d[2] - d[1]*d[3]
		next := factor{f.b + (q[1]*d[2]-q[0]*d[3])/det, f.c + (q[0]*d[2]-q[1]*d[1])/det}
		now := c.divide(next, &q)
		if !(now < left) {
			return
		}
		*f, left = next, now
	}
}

// size bounds how far the zeros of a factor are from 0.
func (f factor) size() float64 { return math.Abs(f.b) + math.Sqrt(math.Abs(f.c)) }

// divide divides by a factor: out has the quotient from out[2] on, and below it
// what is left, out[1] (x + b) + out[0], whose size where the factor's zeros are
// it returns.
func (c *quartic) divide(f factor, out *quartic) float64 {
	out[4] = c[4]
	out[3] = c[3] - f.b*out[4]
	for i := 2; i >= 0; i-- {
		out[i] = c[i] - f.b*out[i+1] - f.c*out[i+2]
	}
	return math.Abs(out[0]) + math.Abs(out[1])*f.size()
}
