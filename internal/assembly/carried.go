package assembly

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
	"steelyard/internal/rider"
)

// This file answers what a picture needs to know of what a bike carries.

// Packed is a bag with what is in it, in the state and with the supplies that
// the bike is in.
type Packed struct {
	ID         string // "bag:" and its id
	Bag        *document.Bag
	Mass, Plus float64  // kg, with expanded uncertainty
	Volume     float64  // l, of what is in it, at full supplies
	Place      mass.Vec // m
	Unsprung   float64
}

// Carried reports whether a line is a bag, a good or a rider and no part of the
// build's own.
func (w *Assembly) Carried(line int) bool { return line >= w.Own }

// Bags returns the bags that are on the bike.
func (w *Assembly) Bags() []Packed {
	if w.Cargo == nil {
		return nil
	}
	var list []Packed
	var t Tally
	for i := range w.Cargo.Load.Bags {
		var p Packed
		for k, bag := range w.Cargo.Bag {
			l := &w.Lines[w.Own+k]
			if bag != i || !l.OK {
				continue
			}
			t.Add(l, 1)
			if j := w.Cargo.Good[k]; j >= 0 {
				g := &w.Cargo.Load.Goods[j]
				p.Volume += float64(g.Quantity) * g.Volume
				continue
			}
			p.ID, p.Bag = w.Cargo.Lines[k].ID, &w.Cargo.Load.Bags[i]
			p.Place, p.Unsprung = l.Place, l.Unsprung
		}
		p.Mass = t.Mass
		p.Plus = t.Plus()
		if p.Bag != nil {
			list = append(list, p)
		}
	}
	return list
}

// Seated returns the rider on the bike, nil when nobody is.
func (w *Assembly) Seated() (*rider.Body, *document.Rider) {
	if w.Level < Ridden || w.Cargo == nil {
		return nil, nil
	}
	return w.Cargo.Body, w.Cargo.Rider
}

// Stage is where the centre of mass is at one level of supplies.
type Stage struct {
	Supplies document.Supplies
	Place    mass.Vec // m
}

// Path returns where the centre of mass is with all supplies, with half of them
// and with none, in the state that the bike is in; nothing when it carries none.
func (w *Assembly) Path() []Stage {
	if !w.UsesUp(w.Level) {
		return nil
	}
	var list []Stage
	for _, s := range document.SupplyLevels {
		m := mass.Sum(w.At(w.Level, s.Left()), nil)
		if m.M > 0 {
			list = append(list, Stage{s, m.Centre()})
		}
	}
	return list
}

// State is the state that the bike is in.
func (w *Assembly) State() document.State { return w.Level.State() }

// Sources returns the lines that count, by the source of their mass: pieces of
// one type share one error.
func (w *Assembly) Sources() map[int][]int {
	m := make(map[int][]int)
	for i := range w.Lines {
		if l := &w.Lines[i]; l.OK {
			m[l.Source] = append(m[l.Source], i)
		}
	}
	return m
}

// Pieces returns how many pieces a line has.
func (w *Assembly) Pieces(line int) float64 { return w.Lines[line].Pieces }

// Owner returns where a line stands in the document: in "parts" of a build, in
// "bags" or "goods" of a load, or in "riders", which are of nothing; and its id
// there.
func (w *Assembly) Owner(line int) (list, owner, id string) {
	k := line - w.Own
	if k < 0 {
		return "parts", w.Build.ID, w.Build.Parts[line].ID
	}
	c := w.Cargo
	switch {
	case c.Bag[k] < 0:
		return "riders", "", c.Rider.ID
	case c.Good[k] < 0:
		return "bags", c.Load.ID, c.Load.Bags[c.Bag[k]].ID
	}
	return "goods", c.Load.ID, c.Load.Goods[c.Good[k]].ID
}

// Packing is what is to be packed on a bike, at full supplies.
type Packing struct {
	Load  *document.Load
	Goods []int            // goods that may be packed, by index in Load.Goods
	Bags  []int            // bags that are on the bike, by index in Load.Bags
	Place map[int]mass.Vec // of each of these bags, m
	Empty mass.Moments     // the empty bags
	Rest  mass.Moments     // everything but the goods: bike, empty bags and rider
	Bike  mass.Moments     // the bike ready to ride
	Racks map[string]Rack  // what a rack or cage carries, by its name in a rating
}

// Rack is a rack with the bags that hang on it.
type Rack struct {
	Bags  []int   // by index in Load.Bags
	Fixed float64 // kg that hang on it besides the goods: empty bags, and parts of the build
}

// Packing returns what is to be packed; nil when the bike carries no load. It
// leaves out a good that has an error, and one that is pinned but in no bag on
// the bike.
func (w *Assembly) Packing() *Packing {
	c := w.Cargo
	if c == nil {
		return nil
	}
	p := &Packing{Load: c.Load, Place: map[int]mass.Vec{}, Racks: map[string]Rack{}}
	for i := range w.Lines {
		l := &w.Lines[i]
		if !l.OK && !l.Off {
			continue
		}
		m := mass.Sum(w.Whole[l.WholeFirst:l.WholeEnd], nil)
		k := i - w.Own
		good := k >= 0 && c.Good[k] >= 0
		switch {
		case k < 0:
			p.Bike = p.Bike.Add(m)
		case good:
			continue
		case c.Bag[k] >= 0:
			p.Bags = append(p.Bags, c.Bag[k])
			p.Place[c.Bag[k]] = l.Place
			p.Empty = p.Empty.Add(m)
		}
		p.Rest = p.Rest.Add(m)
		if l.Group != BagsGroup && l.Group != CarriedGroup {
			continue
		}
		for _, it := range w.Whole[l.WholeFirst:l.WholeEnd] {
			rack := ride.RackOf(w.Build.Parts[i].Station, it.Place.Y)
			if rack == "" {
				continue
			}
			r := p.Racks[rack]
			r.Fixed += it.Mass
			if k >= 0 {
				r.Bags = append(r.Bags, c.Bag[k])
			}
			p.Racks[rack] = r
		}
	}
	for i := range c.Load.Goods {
		g := &c.Load.Goods[i]
		if c.Omit.Good(c.Load, g) || g.Pinned && !slices.ContainsFunc(p.Bags, func(b int) bool { return c.Load.Bags[b].ID == g.In }) {
			continue
		}
		p.Goods = append(p.Goods, i)
	}
	return p
}
