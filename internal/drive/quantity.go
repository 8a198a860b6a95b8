package drive

import "steelyard/internal/mass"

// Basis says where a figure comes from.
type Basis string

// The bases, best known first.
const (
	Measured Basis = "measured"
	Stated   Basis = "stated"
	Typical  Basis = "typical"
	Guessed  Basis = "guessed"
)

// Bases are all of them, best known first.
var Bases = []Basis{Measured, Stated, Typical, Guessed}

// Quantity is a figure that is known within a half-width: it lies within Value
// ± Half, nowhere more likely than elsewhere (JCGM 100:2008, 4.3.7).
type Quantity struct {
	Value, Half float64
	Basis       Basis
	// Source names the error: two quantities with one source err alike. Without
	// a name a quantity is taken as exact.
	Source string
}

// Standard returns the standard uncertainty, Half/√3.
func (q Quantity) Standard() float64 {
	if q.Source == "" {
		return 0
	}
	return mass.Rectangular(q.Half)
}

// Charge adds to a budget what a figure owes to the quantity: slope is how far
// the figure moves with it.
func (q Quantity) Charge(b *mass.Budget, slope float64) {
	b.ChargeNamed(q.Source, slope*q.Standard())
}

// Figure is a value with what it is owed to.
type Figure struct {
	Value  float64
	Budget *mass.Budget // contributions by source; nil is none
}

// Plus is the expanded uncertainty, with coverage factor 2 and never more than
// what all sources can do together, see [mass.Expanded].
func (f Figure) Plus() float64 {
	if f.Budget == nil {
		return 0
	}
	return f.Budget.Expanded()
}

// Minus returns f - g: what both owe to one source cancels.
func (f Figure) Minus(g Figure) Figure {
	b := new(mass.Budget)
	if f.Budget != nil {
		b.Add(f.Budget, 1)
	}
	if g.Budget != nil {
		b.Add(g.Budget, -1)
	}
	return Figure{f.Value - g.Value, b}
}
