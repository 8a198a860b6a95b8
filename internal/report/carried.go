package report

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
	"steelyard/internal/rider"
)

// What a picture needs to know of what a bike carries.

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
func (w *Weighed) Carried(line int) bool { return line >= w.own }

// Bags returns the bags that are on the bike.
func (w *Weighed) Bags() []Packed {
	if w.cargo == nil {
		return nil
	}
	var list []Packed
	var t tally
	for i := range w.cargo.load.Bags {
		var p Packed
		for k, bag := range w.cargo.bag {
			l := &w.Lines[w.own+k]
			if bag != i || !l.OK {
				continue
			}
			t.add(l, 1)
			if j := w.cargo.good[k]; j >= 0 {
				g := &w.cargo.load.Goods[j]
				p.Volume += float64(g.Quantity) * g.Volume
				continue
			}
			p.ID, p.Bag = w.cargo.lines[k].ID, &w.cargo.load.Bags[i]
			p.Place, p.Unsprung = l.Place, l.Unsprung
		}
		p.Mass = t.kg
		p.Plus = t.plus()
		if p.Bag != nil {
			list = append(list, p)
		}
	}
	return list
}

// Seated returns the rider on the bike, nil when nobody is.
func (w *Weighed) Seated() (*rider.Body, *document.Rider) {
	if w.level < ridden || w.cargo == nil {
		return nil, nil
	}
	return w.cargo.body, w.cargo.rider
}

// Stage is where the centre of mass is at one level of supplies.
type Stage struct {
	Supplies document.Supplies
	Place    mass.Vec // m
}

// Path returns where the centre of mass is with all supplies, with half of them
// and with none, in the state that the bike is in; nothing when it carries none.
func (w *Weighed) Path() []Stage {
	if !w.usesUp(w.level) {
		return nil
	}
	var list []Stage
	for _, s := range document.SupplyLevels {
		m := mass.Sum(w.at(w.level, s.Left()), nil)
		if m.M > 0 {
			list = append(list, Stage{s, m.Centre()})
		}
	}
	return list
}

// State is the state that the bike is in.
func (w *Weighed) State() document.State { return w.level.state() }

// Sources returns the lines that count, by the source of their mass: pieces of
// one type share one error.
func (w *Weighed) Sources() map[int][]int {
	m := make(map[int][]int)
	for i := range w.Lines {
		if l := &w.Lines[i]; l.OK {
			m[l.source] = append(m[l.source], i)
		}
	}
	return m
}

// Pieces returns how many pieces a line has.
func (w *Weighed) Pieces(line int) float64 { return w.Lines[line].pieces }

// Owner returns where a line stands in the document: in "parts" of a build, in
// "bags" or "goods" of a load, or in "riders", which are of nothing; and its id
// there.
func (w *Weighed) Owner(line int) (list, owner, id string) {
	k := line - w.own
	if k < 0 {
		return "parts", w.Build.ID, w.Build.Parts[line].ID
	}
	c := w.cargo
	switch {
	case c.bag[k] < 0:
		return "riders", "", c.rider.ID
	case c.good[k] < 0:
		return "bags", c.load.ID, c.load.Bags[c.bag[k]].ID
	}
	return "goods", c.load.ID, c.load.Goods[c.good[k]].ID
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

// Packing says what is to be packed; nil when the bike carries no load. A good
// is left out that has an error, and one that is pinned but in no bag that is on
// the bike.
func (w *Weighed) Packing() *Packing {
	c := w.cargo
	if c == nil {
		return nil
	}
	p := &Packing{Load: c.load, Place: map[int]mass.Vec{}, Racks: map[string]Rack{}}
	for i := range w.Lines {
		l := &w.Lines[i]
		if !l.OK && !l.Off {
			continue
		}
		m := mass.Sum(w.whole[l.wholeFirst:l.wholeEnd], nil)
		k := i - w.own
		good := k >= 0 && c.good[k] >= 0
		switch {
		case k < 0:
			p.Bike = p.Bike.Add(m)
		case good:
			continue
		case c.bag[k] >= 0:
			p.Bags = append(p.Bags, c.bag[k])
			p.Place[c.bag[k]] = l.Place
			p.Empty = p.Empty.Add(m)
		}
		p.Rest = p.Rest.Add(m)
		if l.group != bagsGroup && l.group != carriedGroup {
			continue
		}
		for _, it := range w.whole[l.wholeFirst:l.wholeEnd] {
			rack := ride.RackOf(w.Build.Parts[i].Station, it.Place.Y)
			if rack == "" {
				continue
			}
			r := p.Racks[rack]
			r.Fixed += it.Mass
			if k >= 0 {
				r.Bags = append(r.Bags, c.bag[k])
			}
			p.Racks[rack] = r
		}
	}
	for i := range c.load.Goods {
		g := &c.load.Goods[i]
		if c.omit.good(c.load, g) || g.Pinned && !slices.ContainsFunc(p.Bags, func(b int) bool { return c.load.Bags[b].ID == g.In }) {
			continue
		}
		p.Goods = append(p.Goods, i)
	}
	return p
}
