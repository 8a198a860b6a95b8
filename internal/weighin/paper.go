package weighin

import (
	"math"

	"steelyard/internal/linear"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Paper is what the parts list says of the same figures.
type Paper struct {
	Total, X, Z Value
	XZ          float64 // covariance of X and Z, m²

	p       moments
	sources []source
	place   moments // variances that misplaced parts give
}

// source is a mass that is known to some doubt, with all items that share it:
// what its standard uncertainty does to the moments.
type source struct {
	number int     // mass.Item.MassSource
	mass   float64 // kg, of all its items
	u      float64 // standard uncertainty of that
	lever  moments // Σ MassU (1, x, z)
	low    float64 // how far it can go down and up, in standard uncertainties
	high   float64
}

// half is the half-width of a rectangle in units of its standard uncertainty:
// no part's mass is further off than that.
var half = math.Sqrt(3)

// PaperOf sums up items; ok is false when they have no mass or are not numbers.
func PaperOf(items []mass.Item) (p *Paper, ok bool) {
	p = &Paper{}
	index := map[int]int{}
	spots := map[int]mass.Vec{} // by place source, Σ mass PlaceU
	for i := range items {
		it := &items[i]
		p.p[0] += it.Mass
		p.p[1] += it.Mass * it.Place.X
		p.p[2] += it.Mass * it.Place.Z
		if it.PlaceU != (mass.Vec{}) {
			spots[it.PlaceSource] = spots[it.PlaceSource].Add(it.PlaceU.Scale(it.Mass))
		}
		if it.MassU == 0 {
			continue
		}
		k, seen := index[it.MassSource]
		if !seen {
			k = len(p.sources)
			index[it.MassSource] = k
			p.sources = append(p.sources, source{number: it.MassSource, low: -half, high: half})
		}
		s := &p.sources[k]
		s.mass += it.Mass
		s.u += it.MassU
		s.lever[0] += it.MassU
		s.lever[1] += it.MassU * it.Place.X
		s.lever[2] += it.MassU * it.Place.Z
		s.low = max(s.low, min(0, -it.Mass/it.MassU)) // no part weighs less than nothing
	}
	for i := range items { // in the order of the items, as sums must not depend on a map's
		if u, ok := spots[items[i].PlaceSource]; ok {
			p.place[1] += u.X * u.X
			p.place[2] += u.Z * u.Z
			delete(spots, items[i].PlaceSource)
		}
	}
	if !(p.p[0] > 0) {
		return nil, false
	}
	e := estimate{p.p, p.covariance(3), 3}
	p.Total, p.X, p.Z, p.XZ = e.figures()
	for _, v := range []float64{p.p[0], p.p[1], p.p[2], p.Total.U, p.X.Value, p.X.U, p.Z.Value, p.Z.U, p.XZ} {
		if !units.Finite(v) {
			return nil, false
		}
	}
	return p, true
}

// covariance is that of the first known moments.
func (p *Paper) covariance(known int) *linear.Sym {
	v := p.placeCovariance(known)
	for i := range p.sources {
		v.AddOuter(1, p.sources[i].vec(known))
	}
	return v
}

// placeCovariance is the part of it that is owed to places.
func (p *Paper) placeCovariance(known int) *linear.Sym {
	v := linear.NewSym(known)
	for i := 1; i < known; i++ {
		v.Set(i, i, p.place[i])
	}
	return v
}

// vec is the first known of the lever.
func (s *source) vec(known int) linear.Vec { return s.lever[:known] }
