package road

import "steelyard/internal/mass"

// doubts are what the numbers of a motion owe to what is in doubt of a bike, each
// per standard uncertainty.
type doubts struct {
	items []itemDoubt  // of the loading
	set   []setDoubt   // of that in which the springs were set
	known []namedDoubt // by source, in order
}

// itemDoubt is that of the sums of one body to an item: of all four to its mass, of
// x and J to where it is along x, and of z and J along z.
type itemDoubt struct {
	item, at int // of the loading; of the body's sums
	mass     [perBody]float64
	x, z     [2]float64
}

// setDoubt is that of what both springs carried to an item: by its mass, and by
// where it is along x.
type setDoubt struct {
	item    int
	mass, x [2]float64
}

// namedDoubt is that of a number to its source.
type namedDoubt struct {
	index  int
	source string
	u      float64
}

// doubts finds them. A body that moves with another has the other's sums.
func (b *Bike) doubts() (d doubts) {
	d.items = make([]itemDoubt, 0, len(b.Items)+len(b.Items)/8)
	b.each(&b.Loading, func(i int, body Body, share float64, it *mass.Item) {
		x, z := it.Place.X, it.Place.Z
		o := itemDoubt{item: i, at: int(b.like(body)) * perBody}
		sums := [perBody]float64{sumM: 1, sumX: x, sumZ: z, sumJ: x*x + z*z + it.Spread.XX + it.Spread.ZZ}
		if _, wheel := b.axleOf(body); wheel {
			sums = b.planar(body, mass.Moments{M: 1})
		} else {
			u, v := share*it.Mass*it.PlaceU.X, share*it.Mass*it.PlaceU.Z
			o.x, o.z = [2]float64{u, 2 * u * x}, [2]float64{v, 2 * v * z}
		}
		for k, s := range sums {
			o.mass[k] = share * it.MassU * s
		}
		d.items = append(d.items, o)
	})
	if b.Set != nil {
		bears := [2]form{b.carried(Front), b.carried(Rear)}
		d.set = make([]setDoubt, 0, len(b.Set.Items))
		b.each(b.Set, func(i int, body Body, share float64, it *mass.Item) {
			o := setDoubt{item: i}
			for side := range bears {
				at := int(body) * perBody
				by := b.moments(body, bears[side][at:at+perBody])
				o.mass[side] = share * it.MassU * (by.M + by.S.X*it.Place.X)
				o.x[side] = share * it.Mass * it.PlaceU.X * by.S.X
			}
			d.set = append(d.set, o)
		})
	}
	for i, k := range b.known() {
		if k != nil && k.U != 0 {
			d.known = append(d.known, namedDoubt{springSag + i, k.Source, k.U})
			for n := len(d.known) - 1; n > 0 && d.known[n-1].source > d.known[n].source; n-- {
				d.known[n-1], d.known[n] = d.known[n], d.known[n-1]
			}
		}
	}
	return d
}

// each calls of for every item that is in doubt, with each body that has a share of
// it.
func (b *Bike) each(l *Loading, of func(i int, body Body, share float64, it *mass.Item)) {
	for i := range l.Items {
		it := &l.Items[i]
		if it.MassU == 0 && it.PlaceU.X == 0 && it.PlaceU.Z == 0 {
			continue
		}
		for body := range numBodies {
			if s := l.Shares[body]; i < len(s) && s[i] != 0 {
				of(i, body, s[i], it)
			}
		}
	}
}

// Charge adds sign times the contributions of all that the figure's doubt comes
// from: masses and places of items, and named sources. A difference charges one
// figure with +1 and the other with -1; what both have in common cancels.
func (f *Figure) Charge(budget *mass.Budget, sign float64) {
	if !f.There {
		return
	}
	m := f.model
	b, d := m.bike, &m.doubts
	var g params
	for i := range m.moved {
		g[m.moved[i].index] = sign * f.slopes[i]
	}
	for i := range d.items {
		o := &d.items[i]
		s := g[o.at : o.at+perBody]
		budget.ChargeItem(&b.Items[o.item],
			s[sumM]*o.mass[sumM]+s[sumX]*o.mass[sumX]+s[sumZ]*o.mass[sumZ]+s[sumJ]*o.mass[sumJ],
			mass.Vec{X: s[sumX]*o.x[0] + s[sumJ]*o.x[1], Z: s[sumZ]*o.z[0] + s[sumJ]*o.z[1]})
	}
	// What a spring carried where it was set goes through the sums of that state.
	if front, rear := g[setLoad], g[setLoad+1]; front != 0 || rear != 0 {
		for i := range d.set {
			o := &d.set[i]
			budget.ChargeItem(&b.Set.Items[o.item], front*o.mass[0]+rear*o.mass[1], mass.Vec{X: front*o.x[0] + rear*o.x[1]})
		}
	}
	for i := range d.known {
		k := &d.known[i]
		budget.ChargeNamed(k.source, g[k.index]*k.u)
	}
	if f.road.U != 0 {
		budget.ChargeNamed(f.road.Source, sign*f.level*f.road.U)
	}
}
