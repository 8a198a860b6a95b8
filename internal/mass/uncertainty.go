package mass

import (
	"math"
	"slices"
	"strings"
	"sync"
)

// Coverage is the factor between a standard uncertainty and what is shown
// beside a figure, about 95 % for a normal distribution (JCGM 100:2008, 6.2).
const Coverage = 2

// Rectangular returns the standard uncertainty of a value that is somewhere
// within ±half, nowhere more likely than elsewhere: half/√3 (JCGM 100:2008,
// 4.3.7).
func Rectangular(half float64) float64 { return half / math.Sqrt(3) }

// HalfWidth is the inverse of [Rectangular]: how far off a value with that
// standard uncertainty can be.
func HalfWidth(u float64) float64 { return u * math.Sqrt(3) }

// Expanded returns what is shown beside a figure: [Coverage] times the root of
// its variance, but never more than what the figure is off by when every source
// is off by the whole of its half-width, the worst way round. Sum is the sum of
// the magnitudes of what the sources contribute, each per standard uncertainty,
// so that worst case is HalfWidth(sum): of rectangular sources nothing lies
// outside, whereas twice the standard uncertainty of a single one is 1.15 of
// its half-width (JCGM 100:2008, G.2.3, warns of one dominant source).
//
// Both are of first order: exact for totals, and as good as the gradient is for
// all else.
func Expanded(variance, sum float64) float64 {
	return min(Coverage*math.Sqrt(variance), HalfWidth(sum))
}

// Budget is the uncertainty of a figure, or of the difference of two, by
// source: what JCGM 100:2008 calls the uncertainty budget. The zero Budget is
// ready to use. Sources are numbered by the caller from 0 without wide gaps;
// the budget keeps a slot for each.
type Budget struct {
	mass  []float64 // by mass source: ∂value/∂(error in standard units)
	place []Vec     // by place source
	named []named   // by name
	next  int       // the slot behind the one that was named last
	gross float64   // sum of the squares of all that was charged, before any of it cancels
}

// rounding returns the variance at and below which contributions have cancelled
// and only rounding is left: 1e-12 of all of them in terms of the uncertainty.
func (b *Budget) rounding() float64 { return 1e-24 * b.gross }

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
		placed := it.PlaceU.X == 0 && it.PlaceU.Y == 0 && it.PlaceU.Z == 0
		if it.MassU == 0 && placed {
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
		if !placed {
			if it.PlaceSource >= len(places) {
				places = grow(places, it.PlaceSource)
			}
			u := &it.PlaceU
			c := Vec{sign * u.X * dp.X, sign * u.Y * dp.Y, sign * u.Z * dp.Z}
			p := &places[it.PlaceSource]
			p.X += c.X
			p.Y += c.Y
			p.Z += c.Z
			gross += c.X*c.X + c.Y*c.Y + c.Z*c.Z
		}
	}
	b.mass, b.place, b.gross = masses, places, gross
}

// ChargeItem adds what a figure owes to one item, per standard uncertainty of its
// mass and of each coordinate of its place, with their signs.
func (b *Budget) ChargeItem(it *Item, mass float64, place Vec) {
	if mass != 0 {
		if it.MassSource >= len(b.mass) {
			b.mass = grow(b.mass, it.MassSource)
		}
		b.mass[it.MassSource] += mass
	}
	if place.X != 0 || place.Y != 0 || place.Z != 0 {
		if it.PlaceSource >= len(b.place) {
			b.place = grow(b.place, it.PlaceSource)
		}
		p := &b.place[it.PlaceSource]
		p.X += place.X
		p.Y += place.Y
		p.Z += place.Z
	}
	b.gross += mass*mass + place.X*place.X + place.Y*place.Y + place.Z*place.Z
}

// ChargeNamed adds the contribution of a source that is neither a mass nor a
// place: how far the figure moves with it times its standard uncertainty, with
// its sign. The same name is the same source wherever it is charged.
func (b *Budget) ChargeNamed(source string, contribution float64) {
	if contribution == 0 {
		return
	}
	b.slot(source).part += contribution
	b.gross += contribution * contribution
}

// slot returns the place of a named source. Whoever charges names in order finds
// each behind the one before.
func (b *Budget) slot(source string) *named {
	i, known := b.next, b.next < len(b.named) && b.named[b.next].source == source
	if !known && i == len(b.named) && (i == 0 || b.named[i-1].source < source) {
		if b.named == nil {
			b.named = make([]named, 0, 12) // few have more
		}
		b.named = append(b.named, named{source: source})
		known = true
	}
	if !known {
		if i, known = b.search(source); !known {
			b.named = slices.Insert(b.named, i, named{source: source})
		}
	}
	b.next = i + 1
	return &b.named[i]
}

// named is what a source that has a name contributes. A list in order, and no
// map: the sum must not depend on the order that it is walked in.
type named struct {
	source string
	part   float64
}

func (b *Budget) search(source string) (i int, known bool) {
	return slices.BinarySearchFunc(b.named, source, func(n named, s string) int { return strings.Compare(n.source, s) })
}

// Named returns what a named source contributes, signed, per standard
// uncertainty of the source.
func (b *Budget) Named(source string) float64 {
	if i, known := b.search(source); known {
		return b.named[i].part
	}
	return 0
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
	b.next = 0
	for _, n := range a.named {
		if part := f * n.part; part != 0 {
			b.slot(n.source).part += part
		}
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
	b.named = b.named[:0]
	b.next, b.gross = 0, 0
}

// Variance returns the combined variance, in the square of the figure's unit.
// Where everything cancels it is 0, whatever rounding leaves.
func (b *Budget) Variance() float64 {
	v, _ := b.sums()
	return v
}

// Standard returns the combined standard uncertainty, in the figure's unit.
func (b *Budget) Standard() float64 { return math.Sqrt(b.Variance()) }

// Expanded returns the expanded uncertainty, in the figure's unit: see
// [Expanded]. Each coordinate of a place is a source by itself.
func (b *Budget) Expanded() float64 { return Expanded(b.sums()) }

// sums returns the sum of the squares of all contributions, and that of their
// magnitudes.
func (b *Budget) sums() (variance, sum float64) {
	for _, c := range b.mass {
		variance += c * c
		sum += math.Abs(c)
	}
	for i := range b.place {
		c := &b.place[i] // a copy of each costs more than the sum
		variance += c.X*c.X + c.Y*c.Y + c.Z*c.Z
		sum += math.Abs(c.X) + math.Abs(c.Y) + math.Abs(c.Z)
	}
	for _, n := range b.named {
		variance += n.part * n.part
		sum += math.Abs(n.part)
	}
	if variance <= b.rounding() {
		return 0, 0
	}
	return variance, sum
}

// Uncertainty returns the standard and the expanded uncertainty of a figure of
// the items, in the figure's unit.
func Uncertainty(items []Item, f Figure) (standard, expanded float64) {
	b := budgets.Get().(*Budget)
	defer budgets.Put(b)
	b.Reset()
	b.Charge(items, f, 1)
	variance, sum := b.sums()
	return math.Sqrt(variance), Expanded(variance, sum)
}

// budgets that are not in use: the memory of one serves the next.
var budgets = sync.Pool{New: func() any { return new(Budget) }}
