package mass

// Slopes opens the gradient of a figure to the tests.
func (f *Figure) Slopes(items []Item, i int) (mass float64, place Vec) { return f.slopes(items, i) }

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
