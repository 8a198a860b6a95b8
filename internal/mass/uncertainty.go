package mass

import "math"

// Coverage is the factor between a standard uncertainty and what is shown
// beside a figure, about 95 % for a normal distribution (JCGM 100:2008, 6.2).
const Coverage = 2

// Rectangular returns the standard uncertainty of a value that is somewhere
// within ±half, nowhere more likely than elsewhere: half/√3 (JCGM 100:2008,
// 4.3.7).
func Rectangular(half float64) float64 { return half / math.Sqrt(3) }

// Budget is the uncertainty of a figure, or of the difference of two, by
// source: what JCGM 100:2008 calls the uncertainty budget. The zero Budget is
// ready to use. Sources are numbered by the caller from 0 without wide gaps;
// the budget keeps a slot for each.
type Budget struct {
	mass  []float64 // by mass source: ∂value/∂(error in standard units)
	place []Vec     // by place source
	gross float64   // sum of the squares of all that was charged, before any of it cancels
}

// nought is the variance that is only what rounding leaves when contributions
// cancel: a millionth of a millionth in terms of the uncertainty.
func (b *Budget) nought() float64 { return 1e-24 * b.gross }

// Charge adds sign times the contributions of a figure of the items. A
// difference B - A charges B with +1 and A with -1: what both have in common
// then cancels, source by source.
func (b *Budget) Charge(items []Item, f Figure, sign float64) {
	if len(f.terms) == 0 {
		return
	}
	masses, places, gross := b.mass, b.place, b.gross
	for i := range items {
		it := &items[i]
		if it.MassU == 0 && it.PlaceU == 0 {
			continue
		}
		dm, dp := f.slopes(items, i)
		if it.MassU != 0 {
			if it.MassSource >= len(masses) {
				masses = grow(masses, it.MassSource)
			}
			c := sign * dm * it.MassU
			masses[it.MassSource] += c
			gross += c * c
		}
		if it.PlaceU != 0 {
			if it.PlaceSource >= len(places) {
				places = grow(places, it.PlaceSource)
			}
			u := sign * it.PlaceU
			c := Vec{u * dp.X, u * dp.Y, u * dp.Z}
			p := &places[it.PlaceSource]
			p.X += c.X
			p.Y += c.Y
			p.Z += c.Z
			gross += c.X*c.X + c.Y*c.Y + c.Z*c.Z
		}
	}
	b.mass, b.place, b.gross = masses, places, gross
}

// Add adds f times the contributions of another budget: of B to the negative of
// A for the difference of two figures whose own budgets are known.
func (b *Budget) Add(a *Budget, f float64) {
	if n := len(a.mass); n > len(b.mass) {
		b.mass = grow(b.mass, n-1)
	}
	for i, c := range a.mass {
		b.mass[i] += f * c
	}
	if n := len(a.place); n > len(b.place) {
		b.place = grow(b.place, n-1)
	}
	for i := range a.place {
		c, p := &a.place[i], &b.place[i]
		p.X += f * c.X
		p.Y += f * c.Y
		p.Z += f * c.Z
	}
	b.gross += f * f * a.gross
}

// grow lengthens s so that it has a place i.
func grow[T any](s []T, i int) []T {
	if i < len(s) {
		return s
	}
	return append(s, make([]T, i+1-len(s))...)
}

// Reset empties the budget and keeps its memory.
func (b *Budget) Reset() {
	clear(b.mass)
	clear(b.place)
	b.gross = 0
}

// Variance returns the combined variance, in the square of the figure's unit.
// Where everything cancels it is 0, whatever rounding leaves.
func (b *Budget) Variance() float64 {
	v := 0.0
	for _, c := range b.mass {
		v += c * c
	}
	for i := range b.place {
		c := &b.place[i] // a copy of each costs more than the sum
		v += c.X*c.X + c.Y*c.Y + c.Z*c.Z
	}
	if v <= b.nought() {
		return 0
	}
	return v
}

// Standard returns the combined standard uncertainty, in the figure's unit.
func (b *Budget) Standard() float64 { return math.Sqrt(b.Variance()) }

// MassPart returns the signed contribution of one mass source, in the figure's
// unit and per standard uncertainty of the source; 0 for a source that the
// budget never saw.
func (b *Budget) MassPart(source int) float64 {
	if source < 0 || source >= len(b.mass) {
		return 0
	}
	return b.mass[source]
}

// PlacePart is MassPart for a place source: the root of the sum of squares of
// its three coordinates.
func (b *Budget) PlacePart(source int) float64 {
	if source < 0 || source >= len(b.place) {
		return 0
	}
	return b.place[source].Norm()
}

// Uncertainty returns the standard uncertainty of a figure of the items.
func Uncertainty(items []Item, f Figure) float64 {
	var b Budget
	b.Charge(items, f, 1)
	return b.Standard()
}
