package mass

// Item is one body: a mass at a place, with an extent of its own and two kinds
// of doubt.
type Item struct {
	Mass   float64 // kg, of all the pieces at this place
	Place  Vec     // m, where the centre of the item is
	Spread Sym     // m², second moment per unit of mass about that centre

	// MassU is the standard uncertainty of Mass, kg. Items with the same
	// MassSource share one error: it adds up linearly, and cancels in the
	// difference of two systems.
	MassU      float64
	MassSource int

	// PlaceU is the standard uncertainty of each coordinate of Place, m; one
	// coordinate's error says nothing of another's. Items with the same
	// PlaceSource are misplaced together.
	PlaceU      Vec
	PlaceSource int
}

// Moments are the ten sums that every figure is made of.
type Moments struct {
	M float64 // Σ m, kg
	S Vec     // Σ m r, kg m
	J Sym     // Σ m (r rᵀ + K), kg m²
}

// Moments returns the moments of a single item about the origin.
func (it *Item) Moments() Moments {
	return Moments{it.Mass, it.Place.Scale(it.Mass), Outer(it.Place).Add(it.Spread).Scale(it.Mass)}
}

// Add returns the moments of two systems taken together.
func (a Moments) Add(b Moments) Moments { return Moments{a.M + b.M, a.S.Add(b.S), a.J.Add(b.J)} }

// Scale returns f a.
func (a Moments) Scale(f float64) Moments { return Moments{f * a.M, a.S.Scale(f), a.J.Scale(f)} }

// Centre returns the centre of mass S/M. Without mass there is no centre, and
// the result is the origin.
func (a Moments) Centre() Vec {
	if a.M == 0 {
		return Vec{}
	}
	return a.S.Scale(1 / a.M)
}

// Central returns the second moment about the centre of mass,
// J - M c cᵀ (Huygens and Steiner).
func (a Moments) Central() Sym { return a.J.Add(Outer(a.Centre()).Scale(-a.M)) }

// Share says how much of each item counts: one number an item, 1 for all of
// it, 1/2 for half. A nil Share is everything.
type Share []float64

// is says whether two shares are the same one in memory.
func (s Share) is(o Share) bool {
	if s == nil || o == nil {
		return s == nil && o == nil
	}
	return len(s) == len(o) && (len(s) == 0 || &s[0] == &o[0])
}

// Sum returns the moments of the share of the items.
func Sum(items []Item, share Share) Moments {
	var m Moments
	for i := range items {
		it := &items[i]
		w := it.Mass
		if share != nil {
			w *= share[i]
		}
		if w == 0 {
			continue
		}
		r, k := &it.Place, &it.Spread
		m.M += w
		m.S.X += w * r.X
		m.S.Y += w * r.Y
		m.S.Z += w * r.Z
		m.J.XX += w * (r.X*r.X + k.XX)
		m.J.YY += w * (r.Y*r.Y + k.YY)
		m.J.ZZ += w * (r.Z*r.Z + k.ZZ)
		m.J.XY += w * (r.X*r.Y + k.XY)
		m.J.XZ += w * (r.X*r.Z + k.XZ)
		m.J.YZ += w * (r.Y*r.Z + k.YZ)
	}
	return m
}
