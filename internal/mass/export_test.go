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

// Gyration is the radius of gyration of a share about an axis through its
// centre of mass, sqrt(I/M), m. Without mass, or without extent about the axis,
// it is 0 and nothing moves it: there the root has no slope.
func Gyration(items []Item, share Share, axis Axis) Figure {
	m := Sum(items, share)
	i := centralInertia(m, share, axis)
	// Of a point away from the origin rounding leaves an inertia of either sign.
	if i.Value <= 1e-12*m.J.Trace() {
		return Figure{}
	}
	return Sqrt(Ratio(i, linear(m.M, share, Moments{M: 1})))
}

// Point has no extent of its own.
func Point() Sym { return Sym{} }

// Inertia returns the inertia tensor that belongs to the second moment j:
// tr(j) 1 - j. Off-diagonal entries are the tensor's, which is to say minus
// the product of inertia.
func Inertia(j Sym) Sym {
	t := j.Trace()
	return Sym{t - j.XX, t - j.YY, t - j.ZZ, -j.XY, -j.XZ, -j.YZ}
}

// SecondMoment is the inverse of [Inertia]: tr(i)/2 1 - i.
func SecondMoment(i Sym) Sym {
	h := i.Trace() / 2
	return Sym{h - i.XX, h - i.YY, h - i.ZZ, -i.XY, -i.XZ, -i.YZ}
}
