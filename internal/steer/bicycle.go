package steer

import (
	"math"

	"steelyard/internal/mass"
)

// Gravity is the acceleration of free fall of the paper, m/s².
const Gravity = 9.81

// Bicycle is a bike in its pose with all that it carries.
type Bicycle struct {
	Wheelbase   float64 // between the contacts, m
	Trail       float64 // front contact behind the steering axis on the ground, m
	HeadAngle   float64 // steering axis from the horizontal, rad
	RearRadius  float64 // m
	FrontRadius float64 // m

	Items []mass.Item
	// Shares of the items. Front is all that turns with the bar, the front wheel
	// included; the wheels are what spins.
	Front, RearWheel, FrontWheel mass.Share
}

// entry is a number of the matrices that depends on the items.
type entry int

// The entries. The others are 0, or the mirror image of one of these.
const (
	m00 entry = iota // M, lean
	m01              // M, between lean and steer
	m11              // M, steer
	k00              // K0, lean
	k01
	k11
	k201 // K2, steer to lean
	k211
	c01 // C1, steer rate to lean
	c10 // C1, lean rate to steer
	c11
	numEntries
)

// slopes are the gradient of a number with respect to the moments of the shares
// that a bicycle is made of.
type slopes struct{ all, front, rearWheel, frontWheel mass.Moments }

func (s slopes) add(o slopes, f float64) slopes {
	return slopes{
		s.all.Add(o.all.Scale(f)), s.front.Add(o.front.Scale(f)),
		s.rearWheel.Add(o.rearWheel.Scale(f)), s.frontWheel.Add(o.frontWheel.Scale(f)),
	}
}

// sensitivities returns each entry as a linear function of the moments, after
// appendix A of the paper. Writing u = (x - w - c) cos t + z sin t for how far a
// point lies ahead of the steering axis, with the tilt t of that axis, the
// wheelbase w and the trail c, the sums over the front are
//
//	Iλλ = Σ m (u² + y²)   Iλx = Σ m (u z + y² sin t)   Iλz = Σ m (u x + y² cos t)
//
// and all others are moments as they stand.
func (b *Bicycle) sensitivities() [numEntries]slopes {
	var e [numEntries]slopes
	w := b.Wheelbase
	// The tilt is the head angle from the vertical.
	cos, sin := math.Sincos(b.HeadAngle)
	mu := b.Trail / w * cos

	s := steeringOf(b)
	ahead, about, withLean, withYaw := s.ahead, s.about, s.withLean, s.withYaw
	roll := mass.Moments{J: mass.Sym{YY: 1, ZZ: 1}}
	yaw := mass.Moments{J: mass.Sym{XX: 1, YY: 1}}
	cross := mass.Moments{J: mass.Sym{XZ: 0.5}} // of J's two places
	length, height := mass.Moments{S: mass.Vec{X: 1}}, mass.Moments{S: mass.Vec{Z: 1}}
	// Spin of a wheel over its radius.
	spinRear := spin(0, b.RearRadius)
	spinFront := spin(w, b.FrontRadius)
	spins := slopes{rearWheel: spinRear, frontWheel: spinFront}
	front := slopes{frontWheel: spinFront}

	steered := slopes{front: ahead, all: length.Scale(mu)} // S_A

	e[m00] = slopes{all: roll}
	e[m01] = slopes{front: withLean, all: cross.Scale(mu)}
	e[m11] = slopes{front: about.Add(withYaw.Scale(2 * mu)), all: yaw.Scale(mu * mu)}
	e[k00] = slopes{all: height.Scale(-1)}
	e[k01] = slopes{}.add(steered, -1)
	e[k11] = slopes{}.add(steered, -sin)
	e[k201] = slopes{all: height.Scale(cos / w)}.add(spins, cos/w)
	e[k211] = slopes{}.add(steered, cos/w).add(front, sin*cos/w)
	e[c01] = slopes{all: cross.Scale(cos / w).Add(height.Scale(mu))}.add(spins, mu).add(front, cos)
	e[c10] = slopes{}.add(spins, -mu).add(front, -cos)
	e[c11] = slopes{front: withYaw.Scale(cos / w), all: yaw.Scale(mu * cos / w)}.add(steered, mu)
	return e
}

// steering are the sums over the front that have to do with the steering axis,
// as functions of its moments: see sensitivities.
type steering struct{ ahead, about, withLean, withYaw mass.Moments }

func steeringOf(b *Bicycle) steering {
	cos, sin := math.Sincos(b.HeadAngle)
	back := (b.Wheelbase + b.Trail) * cos
	return steering{
		ahead: mass.Moments{M: -back, S: mass.Vec{X: cos, Z: sin}},
		about: mass.Moments{
			M: back * back, S: mass.Vec{X: -2 * back * cos, Z: -2 * back * sin},
			J: mass.Sym{XX: cos * cos, YY: 1, ZZ: sin * sin, XZ: sin * cos},
		},
		withLean: mass.Moments{S: mass.Vec{Z: -back}, J: mass.Sym{YY: sin, ZZ: sin, XZ: cos / 2}},
		withYaw:  mass.Moments{S: mass.Vec{X: -back}, J: mass.Sym{XX: cos, YY: cos, XZ: sin / 2}},
	}
}

func (m *Model) steering() steering { return steeringOf(m.bicycle) }

// spin returns the slope of a wheel's inertia about its axle at (x, r), divided
// by its radius r.
func spin(x, r float64) mass.Moments {
	return mass.Moments{
		M: (x*x + r*r) / r, S: mass.Vec{X: -2 * x / r, Z: -2}, J: mass.Sym{XX: 1 / r, ZZ: 1 / r},
	}
}

// Matrix is a matrix of two rows, lean before steer.
type Matrix [2][2]float64

func (m *Matrix) det() float64 { return m[0][0]*m[1][1] - m[0][1]*m[1][0] }

// Model is the equation of motion of a bicycle, see the package. M is in kg m²,
// C1 in kg m, K0 in kg m and K2 in kg.
type Model struct {
	M, C1, K0, K2 Matrix

	bicycle *Bicycle
	slopes  [numEntries]slopes
}

// New puts the equation of motion together. Ok is false where a figure of the
// bicycle makes it meaningless: no wheelbase, no wheels, a steering axis that
// lies flat, or no mass to steer or to lean.
func New(b *Bicycle) (m *Model, ok bool) {
	m = &Model{bicycle: b}
	if !(b.Wheelbase > 0 && b.RearRadius > 0 && b.FrontRadius > 0 && math.Sin(b.HeadAngle) > 1e-6) {
		return m, false
	}
	m.slopes = b.sensitivities()
	all, front := mass.Sum(b.Items, nil), mass.Sum(b.Items, b.Front)
	rear, fore := mass.Sum(b.Items, b.RearWheel), mass.Sum(b.Items, b.FrontWheel)
	var v [numEntries]float64
	for i := range v {
		s := &m.slopes[i]
		v[i] = inner(&s.all, &all) + inner(&s.front, &front) + inner(&s.rearWheel, &rear) + inner(&s.frontWheel, &fore)
		if math.IsNaN(v[i]) || math.IsInf(v[i], 0) {
			return m, false
		}
	}
	m.M = Matrix{{v[m00], v[m01]}, {v[m01], v[m11]}}
	m.C1 = Matrix{{0, v[c01]}, {v[c10], v[c11]}}
	m.K0 = Matrix{{v[k00], v[k01]}, {v[k01], v[k11]}}
	m.K2 = Matrix{{0, v[k201]}, {0, v[k211]}}
	return m, m.M[0][0] > 0 && m.M.det() > 1e-12*m.M[0][0]*m.M[0][0]
}

// inner is the value of a linear function of moments.
func inner(slope, m *mass.Moments) float64 {
	return slope.M*m.M + slope.S.Dot(m.S) + slope.J.Inner(m.J)
}

// figure makes the figure with the given value and the gradient with respect to
// the entries.
func (m *Model) figure(value float64, gradient *[numEntries]float64) mass.Figure {
	var s slopes
	for i, g := range gradient {
		if g != 0 {
			s = s.add(m.slopes[i], g)
		}
	}
	b := m.bicycle
	return mass.Function(value,
		mass.Slope{Of: s.all}, mass.Slope{Share: b.Front, Of: s.front},
		mass.Slope{Share: b.RearWheel, Of: s.rearWheel}, mass.Slope{Share: b.FrontWheel, Of: s.frontWheel})
}
