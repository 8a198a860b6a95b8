package road

import (
	"math"

	"steelyard/internal/mass"
)

// sums of one body in the plane: what of its moments the motion depends on.
const (
	sumM    = iota // Σ m
	sumX           // Σ m x
	sumZ           // Σ m z
	sumJ           // Σ m (x² + z² + own)
	perBody        // numbers a body
)

// params are all numbers that a bike's motion depends on, but for the points of
// its pose, which are taken as exact: perBody sums for each body, and from
// bodyParams on what else is known with a doubt, two of a kind front and rear.
type params [numParams]float64

const (
	setLoad    = int(numBodies)*perBody + iota*2 // that a spring carried where it was set, N
	springSag                                    // m
	springRate                                   // N/m
	dampRatio
	damper // N s/m
	tyreRate
	tyreLag
	standing  // Hz, and ratio
	numParams // the end
)

// form is a linear function of the sums of the bodies.
type form [int(numBodies) * perBody]float64

func (l *form) of(p *params) float64 {
	var v float64
	for i, c := range l {
		v += c * p[i]
	}
	return v
}

// planar are the sums of a body. A wheel turns as it likes and is in balance, so
// that it is a point at its axle.
func (b *Bike) planar(body Body, m mass.Moments) [perBody]float64 {
	if axle, wheel := b.axleOf(body); wheel {
		return [perBody]float64{m.M, m.M * axle.X, m.M * axle.Z, m.M * (axle.X*axle.X + axle.Z*axle.Z)}
	}
	return [perBody]float64{m.M, m.S.X, m.S.Z, m.J.XX + m.J.ZZ}
}

func (b *Bike) axleOf(body Body) (axle mass.Vec, wheel bool) {
	switch body {
	case RearWheel:
		return b.RearAxle, true
	case FrontWheel:
		return b.FrontAxle, true
	}
	return mass.Vec{}, false
}

// moments turns the slopes with respect to a body's sums into those with respect
// to its moments.
func (b *Bike) moments(body Body, g []float64) mass.Moments {
	if axle, wheel := b.axleOf(body); wheel {
		return mass.Moments{M: g[sumM] + g[sumX]*axle.X + g[sumZ]*axle.Z + g[sumJ]*(axle.X*axle.X+axle.Z*axle.Z)}
	}
	return mass.Moments{M: g[sumM], S: mass.Vec{X: g[sumX], Z: g[sumZ]}, J: mass.Sym{XX: g[sumJ], ZZ: g[sumJ]}}
}

// sums puts the sums of a loading's bodies in p.
func (b *Bike) sums(l *Loading, p *params) {
	for body := range numBodies {
		if len(l.Shares[body]) == 0 {
			continue
		}
		s := b.planar(body, mass.Sum(l.Items, l.Shares[body]))
		copy(p[int(body)*perBody:], s[:])
	}
}

// wheelbase is the distance of the axles on the level.
func (b *Bike) wheelbase() float64 { return b.FrontAxle.X - b.RearAxle.X }

// arm is how far the rear axle is behind the pivot, on the level.
func (b *Bike) arm() float64 { return b.Pivot.X - b.RearAxle.X }

// static is the load of a tyre at rest, N, by the moments about the other
// contact.
func (b *Bike) static(side Side) (l form) {
	at, other := b.FrontAxle.X, b.RearAxle.X
	if side == Rear {
		at, other = other, at
	}
	d := at - other
	for body := range int(numBodies) {
		l[body*perBody+sumM] = -Gravity * other / d
		l[body*perBody+sumX] = Gravity / d
	}
	return l
}

// carried is the vertical load on a spring at rest, N: by virtual work the load
// of the tyre less the weight of what moves with the wheel, which of a swingarm
// counts by its lever.
func (b *Bike) carried(side Side) form {
	l := b.static(side)
	at := func(body Body, sum int) *float64 { return &l[int(body)*perBody+sum] }
	if side == Front {
		*at(ForkLower, sumM) -= Gravity
		*at(FrontWheel, sumM) -= Gravity
		return l
	}
	*at(RearWheel, sumM) -= Gravity
	*at(Swingarm, sumM) -= Gravity * b.Pivot.X / b.arm()
	*at(Swingarm, sumX) += Gravity / b.arm()
	return l
}

// params gathers all numbers of a bike.
func (b *Bike) params() *params {
	p := new(params)
	if b.Set != nil {
		b.sums(b.Set, p)
		for side := range Both {
			if b.Ends[side].Spring != nil {
				l := b.carried(side)
				p[setLoad+int(side)] = l.of(p)
			}
		}
		clear(p[:setLoad])
	}
	b.sums(&b.Loading, p)
	for i, k := range b.known() {
		if k != nil {
			p[springSag+i] = k.Value
		}
	}
	return p
}

// known are the numbers from springSag on; nil is one that the bike has not.
func (b *Bike) known() (k [numParams - springSag]*Known) {
	for i := range Both {
		e, at := &b.Ends[i], int(i)-springSag
		k[tyreRate+at], k[tyreLag+at] = &e.Tyre.Rate, &e.Tyre.Lag
		if s := e.Spring; s != nil {
			if s.Rate.Value > 0 {
				k[springRate+at] = &s.Rate
			} else {
				k[springSag+at] = &s.Sag
			}
			if s.Damper.Value > 0 {
				k[damper+at] = &s.Damper
			} else {
				k[dampRatio+at] = &s.Ratio
			}
		}
	}
	if s := b.Standing; s != nil {
		k[standing-springSag], k[standing+1-springSag] = &s.Frequency, &s.Ratio
	}
	return k
}

// like is the body that another one moves with as one piece, for want of a
// spring between them; itself for one that moves by itself.
func (b *Bike) like(body Body) Body {
	switch {
	case body == ForkLower && b.Ends[Front].Spring == nil,
		body == Swingarm && b.Ends[Rear].Spring == nil,
		body == Rider && b.Standing == nil:
		return Frame
	}
	return body
}

// move adds step to the number at i. The mass of a wheel is at its axle.
func (b *Bike) move(p *params, i int, step float64) {
	p[i] += step
	if i >= setLoad || i%perBody != sumM {
		return
	}
	if axle, wheel := b.axleOf(Body(i / perBody)); wheel {
		p[i+sumX] += step * axle.X
		p[i+sumZ] += step * axle.Z
		p[i+sumJ] += step * (axle.X*axle.X + axle.Z*axle.Z)
	}
}

// steps are by how much each number is moved to see what follows from it; 0 is
// for one on which nothing depends, or that is known.
func (b *Bike) steps(p *params) (h params) {
	const small = 1e-5
	var total float64
	for body := range int(numBodies) {
		total += p[body*perBody+sumM]
	}
	for body := range numBodies {
		if b.like(body) != body || len(b.Shares[body]) == 0 && body != Frame {
			continue
		}
		// In proportion to what the body has, so that it stays a body that could be.
		at, l := int(body)*perBody, min(1, b.wheelbase())
		if body == Swingarm {
			l = min(l, b.arm())
		}
		m := small * p[at+sumM]
		if !(m > 1e-4*small*total) {
			m = 1e-4 * small * total
		}
		h[at+sumM] = m
		if _, wheel := b.axleOf(body); !wheel {
			h[at+sumX], h[at+sumZ], h[at+sumJ] = m*l, m*l, m*l*l
		}
	}
	if b.Set != nil {
		for side := range Both {
			if p[setLoad+int(side)] > 0 {
				h[setLoad+int(side)] = small * p[setLoad+int(side)]
			}
		}
	}
	for i, k := range b.known() {
		if k != nil {
			h[springSag+i] = small * max(math.Abs(k.Value), k.U)
		}
	}
	return h
}
