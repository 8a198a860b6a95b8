package report

import (
	"steelyard/internal/mass"
	"steelyard/internal/parts"
	"steelyard/internal/rider"
)

// What a picture needs to know of what a bike carries.

// Packed is a bag with what is in it, in the state and with the supplies that
// the bike is in.
type Packed struct {
	ID         string // "bag:" and its id
	Bag        *parts.Bag
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
func (w *Weighed) Seated() (*rider.Body, *parts.Rider) {
	if w.level < ridden || w.cargo == nil {
		return nil, nil
	}
	return w.cargo.body, w.cargo.rider
}

// Stage is where the centre of mass is at one level of supplies.
type Stage struct {
	Supplies parts.Supplies
	Place    mass.Vec // m
}

// Path returns where the centre of mass is with all supplies, with half of them
// and with none, in the state that the bike is in; nothing when it carries none.
func (w *Weighed) Path() []Stage {
	if !w.usesUp(w.level) {
		return nil
	}
	var list []Stage
	for _, s := range parts.SupplyLevels {
		m := mass.Sum(w.at(w.level, s.Left()), nil)
		if m.M > 0 {
			list = append(list, Stage{s, m.Centre()})
		}
	}
	return list
}

// State is the state that the bike is in.
func (w *Weighed) State() parts.State { return w.level.state() }

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
