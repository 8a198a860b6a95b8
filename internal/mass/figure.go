package mass

import "math"

// Figure is a number found from the moments of one or more shares of a system,
// with its gradient, so that the doubt of every item can be carried through.
type Figure struct {
	Value float64
	terms []term
}

// term is the part of a gradient that goes through the moments of one share.
type term struct {
	share Share
	slope Moments // ∂value/∂M, ∂value/∂S, ∂value/∂J (of J's nine places)
}

// slopes returns ∂value/∂mass and ∂value/∂place for item i. With the slopes
// (a, b, C) of the ten moments these are a + r·(b + C r) + C:K and m (b + 2 C r).
func (f *Figure) slopes(items []Item, i int) (mass float64, place Vec) {
	it := &items[i]
	r, k := &it.Place, &it.Spread
	for n := range f.terms {
		t := &f.terms[n]
		w := 1.0
		if t.share != nil {
			if w = t.share[i]; w == 0 {
				continue
			}
		}
		b, c := &t.slope.S, &t.slope.J
		// C r and b + C r.
		cx := c.XX*r.X + c.XY*r.Y + c.XZ*r.Z
		cy := c.XY*r.X + c.YY*r.Y + c.YZ*r.Z
		cz := c.XZ*r.X + c.YZ*r.Y + c.ZZ*r.Z
		hx, hy, hz := b.X+cx, b.Y+cy, b.Z+cz
		mass += w * (t.slope.M + r.X*hx + r.Y*hy + r.Z*hz +
			c.XX*k.XX + c.YY*k.YY + c.ZZ*k.ZZ + 2*(c.XY*k.XY+c.XZ*k.XZ+c.YZ*k.YZ))
		w *= it.Mass
		place.X += w * (hx + cx)
		place.Y += w * (hy + cy)
		place.Z += w * (hz + cz)
	}
	return mass, place
}

// linear makes a figure of one share whose gradient is known.
func linear(value float64, share Share, slope Moments) Figure {
	return Figure{Value: value, terms: []term{{share, slope}}}
}

// Total is the mass of a share, kg.
func Total(items []Item, share Share) Figure {
	return linear(Sum(items, share).M, share, Moments{M: 1})
}

// Axis picks a coordinate.
type Axis int

// The axes of the caller's frame; roll, pitch and yaw turn about them.
const (
	X Axis = iota
	Y
	Z
)

func (a Axis) unit() Vec {
	switch a {
	case X:
		return Vec{X: 1}
	case Y:
		return Vec{Y: 1}
	default:
		return Vec{Z: 1}
	}
}

// Centre is a coordinate of the centre of mass of a share, m. The slope with
// respect to an item's mass is (r - c)/M: a part at the centre moves nothing.
// Without mass the value is 0 and nothing moves it.
func Centre(items []Item, share Share, axis Axis) Figure {
	m := Sum(items, share)
	if m.M == 0 {
		return Figure{}
	}
	u, c := axis.unit(), m.Centre()
	v := c.Dot(u)
	return linear(v, share, Moments{M: -v / m.M, S: u.Scale(1 / m.M)})
}

// CentralInertia is the moment of inertia of a share about the axis through
// its centre of mass, kg m².
//
// I = J:(1 - u uᵀ) - (S² - (S·u)²)/M, so ∂I/∂S = -2 (c - u (u·c)) and
// ∂I/∂M = c² - (c·u)².
func CentralInertia(items []Item, share Share, axis Axis) Figure {
	return centralInertia(Sum(items, share), share, axis)
}

func centralInertia(m Moments, share Share, axis Axis) Figure {
	if m.M == 0 {
		return Figure{}
	}
	u, c := axis.unit(), m.Centre()
	across := Sym{XX: 1, YY: 1, ZZ: 1}.Add(Outer(u).Scale(-1))
	cp := across.Times(c)
	return linear(across.Inner(m.Central()), share, Moments{M: cp.Dot(c), S: cp.Scale(-2), J: across})
}

// CentralProduct is the off-diagonal entry of the inertia tensor between x and
// z, about the centre of mass of a share, kg m²: -Σ m x z. Of a body that is
// symmetric left and right it is the only one that is not 0.
func CentralProduct(items []Item, share Share) Figure {
	m := Sum(items, share)
	if m.M == 0 {
		return Figure{}
	}
	c := m.Centre()
	return linear(-m.Central().XZ, share, Moments{
		M: -c.X * c.Z, S: Vec{X: c.Z, Z: c.X}, J: Sym{XZ: -0.5},
	})
}

// LeverMass is the mass that a lever feels at its end, kg: the moment of
// inertia of a share about the axis through pivot along y, divided by the
// square of the distance from pivot to end in the x-z plane. It is 0 when the
// two coincide.
//
// I = Jxx + Jzz - 2 (p·S) + p² M in that plane.
func LeverMass(items []Item, share Share, pivot, end Vec) Figure {
	l := Vec{X: end.X - pivot.X, Z: end.Z - pivot.Z}
	l2 := l.Dot(l)
	if l2 == 0 {
		return Figure{}
	}
	m := Sum(items, share)
	p := Vec{X: pivot.X, Z: pivot.Z}
	i := m.J.XX + m.J.ZZ - 2*p.Dot(m.S) + p.Dot(p)*m.M
	return linear(i/l2, share, Moments{
		M: p.Dot(p) / l2, S: p.Scale(-2 / l2), J: Sym{XX: 1 / l2, ZZ: 1 / l2},
	})
}

// Support is the mass that a support carries of a share, kg, when the share
// rests on two supports at the places at and other along x: the load is that
// mass times g. From moments about the other support,
// (S·x - other M)/(at - other).
func Support(items []Item, share Share, at, other float64) Figure {
	if at == other {
		return Figure{}
	}
	m := Sum(items, share)
	d := at - other
	return linear((m.S.X-other*m.M)/d, share, Moments{M: -other / d, S: Vec{X: 1 / d}})
}

// Ratio is a/b; where b is 0 the value is not a number and has no gradient.
func Ratio(a, b Figure) Figure {
	if b.Value == 0 {
		return Figure{Value: math.NaN()}
	}
	v := a.Value / b.Value
	return combine(v, a, 1/b.Value, b, -v/b.Value)
}

// Plus is a + b.
func Plus(a, b Figure) Figure { return combine(a.Value+b.Value, a, 1, b, 1) }

// Times is f a for a number f that is known exactly.
func Times(f float64, a Figure) Figure { return combine(f*a.Value, a, f, Figure{}, 0) }

// Sqrt is the square root of a. Of a negative number it is not a number; at 0,
// where its slope is infinite, it has no gradient.
func Sqrt(a Figure) Figure {
	v := math.Sqrt(a.Value)
	if v == 0 || math.IsNaN(v) {
		return Figure{Value: v}
	}
	return combine(v, a, 0.5/v, Figure{}, 0)
}

// combine makes the figure with the given value and the gradient
// da ∇a + db ∇b.
func combine(value float64, a Figure, da float64, b Figure, db float64) Figure {
	f := Figure{Value: value, terms: make([]term, 0, len(a.terms)+len(b.terms))}
	for _, t := range a.terms {
		f.add(t.share, t.slope.Scale(da))
	}
	for _, t := range b.terms {
		f.add(t.share, t.slope.Scale(db))
	}
	return f
}

// add puts a slope to the gradient, to the term of the same share if there is
// one: every term costs a pass over the items.
func (f *Figure) add(share Share, slope Moments) {
	for k := range f.terms {
		if t := &f.terms[k]; t.share.is(share) {
			t.slope = t.slope.Add(slope)
			return
		}
	}
	f.terms = append(f.terms, term{share, slope})
}

// Slope is the gradient of a number with respect to the ten moments of a share;
// that with respect to J goes with its nine places, so that an entry beside the
// diagonal counts twice.
type Slope struct {
	Share Share
	Of    Moments
}

// Function is any other number that is found from moments: its value, and its
// gradient with respect to those of each share that it is found from.
func Function(value float64, slopes ...Slope) Figure {
	f := Figure{Value: value, terms: make([]term, 0, len(slopes))}
	for _, s := range slopes {
		f.add(s.Share, s.Of)
	}
	return f
}
