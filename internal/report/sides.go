package report

import (
	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// sides are what a document sets against each other.
type sides struct {
	list  []side
	loads [2]*document.Load // nil for none
}

// side is a build with a load.
type side struct {
	build   int // index of the document's
	load    *document.Load
	weighed *Weighed // nil when it could not be
}

// newSides finds the sides. Without any, the first build is the only one. A
// build with one and the same load twice is one side.
func newSides(d *document.Document) *sides {
	s := &sides{}
	for i, id := range d.Show.Loads {
		if i < len(s.loads) && id != "" {
			s.loads[i] = d.Load(id)
		}
	}
	for i, id := range d.Show.Compare {
		if i == len(s.loads) {
			break
		}
		for j := range d.Builds {
			if d.Builds[j].ID != id {
				continue
			}
			if o := s.find(j); o == nil || o.load != s.loads[i] {
				s.list = append(s.list, side{build: j, load: s.loads[i]})
			}
			break
		}
	}
	if len(s.list) == 0 && len(d.Builds) > 0 {
		s.list = append(s.list, side{load: s.loads[0]})
	}
	return s
}

// find returns the first side with a build, nil when there is none.
func (s *sides) find(build int) *side {
	for i := range s.list {
		if s.list[i].build == build {
			return &s.list[i]
		}
	}
	return nil
}

// loadID is the id of what a build carries.
func loadID(l *document.Load) string {
	if l == nil {
		return ""
	}
	return l.ID
}

// side writes a side into a report; builds are those of the report.
func (t *workspace) side(d *document.Document, s *sides, i int, builds []Build) Side {
	one := &s.list[i]
	b := &d.Builds[one.build]
	out := Side{
		Carrying: Carrying{State: assembly.LevelOf(t.show.State).State(), Supplies: t.supplies()},
		Findings: newFindings(),
	}
	switch w := one.weighed; {
	case w == nil:
		out.Summary = t.phrasing.unweighed(b)
	case s.find(one.build) == one: // told as a build
		out.Findings = builds[one.build].Findings
	default:
		out.Findings = t.tell(w, mass.Doubts(w.Items))
	}
	out.Build, out.Load = b.ID, loadID(one.load)
	out.Name = BuildName(b)
	if len(s.list) == 2 && s.list[0].build == s.list[1].build {
		out.Name = t.phrasing.Label("side.no_load")
		if one.load != nil {
			out.Name = LoadName(one.load)
		}
	}
	out.States, out.Path, out.Bags, out.Goods = []State{}, []Path{}, []Bag{}, []Good{}
	w := one.weighed
	if w == nil {
		return out
	}
	out.Weighed = true
	out.State, out.Supplies = w.Level.State(), t.supplies()
	if w.Cargo != nil && w.Cargo.Rider != nil {
		out.Rider = w.Cargo.Rider.ID
	}
	out.States = t.states(w)
	out.Path = t.paths(w)
	var kg float64
	out.Bags, out.Goods, kg = t.packed(w)
	out.Luggage = gram.of(kg)
	out.Body = w.bodyOf()
	if w.Cargo != nil {
		out.Handling = t.handling(w)
	}
	if w.Cargo != nil || len(w.Build.Ratings) > 0 {
		out.Ratings = t.ratings(w)
	}
	return out
}

// supplies are those shown; an unknown level is full.
func (t *workspace) supplies() document.Supplies {
	switch s := t.show.Supplies; s {
	case document.Half, document.Empty:
		return s
	}
	return document.Full
}

// packed writes the bags and goods of what a build carries.
func (t *workspace) packed(w *Weighed) (bags []Bag, goods []Good, kg float64) {
	c := w.Cargo
	if c == nil {
		return []Bag{}, []Good{}, 0
	}
	bags, goods = make([]Bag, len(c.Load.Bags)), make([]Good, len(c.Load.Goods))
	for i := range bags {
		bags[i].ID = c.Load.Bags[i].ID
	}
	for i := range goods {
		g := &c.Load.Goods[i]
		goods[i] = Good{ID: g.ID, Bag: g.In}
		if n := float64(g.Quantity); !c.Omit.Good(c.Load, g) {
			goods[i].OK = g.In == ""
			goods[i].Mass = gram.of(n * g.Mass / gram.perSI)
			goods[i].Plus = gram.of(n * g.HalfWidth / gram.perSI)
			goods[i].Volume = round(n*g.Volume, 1e3)
		}
	}
	for k := range c.Lines {
		l, i, j := &w.Lines[w.Own+k], c.Bag[k], c.Good[k]
		if i < 0 || !l.OK && !l.Off {
			continue
		}
		if j >= 0 {
			goods[j].OK, goods[j].Place = true, inMillimetres(l.Place)
			continue
		}
		b := &bags[i]
		b.OK, b.Place = true, inMillimetres(l.Place)
		// Of an empty bag nothing is used up: the line is as it is at full supplies.
		b.Mass, b.Plus = gram.of(l.Mass), gram.of(mass.HalfWidth(l.MassU))
	}
	var items []mass.Item
	for i := range bags {
		b, of := &bags[i], &c.Load.Bags[i]
		if !b.OK {
			continue
		}
		items = items[:0]
		litres := 0.0
		var own []mass.Item // of the empty bag
		for k := range c.Lines {
			l := &w.Lines[w.Own+k]
			if c.Bag[k] != i {
				continue
			}
			if c.Good[k] < 0 {
				own = w.Whole[l.WholeFirst:l.WholeEnd]
				continue
			}
			if !goods[c.Good[k]].OK {
				continue
			}
			g := &c.Load.Goods[c.Good[k]]
			items = append(items, w.Whole[l.WholeFirst:l.WholeEnd]...)
			b.Pieces += g.Quantity
			litres += float64(g.Quantity) * g.Volume
		}
		load := mass.Total(items, nil)
		t.one.Reset()
		t.one.Charge(items, load, 1)
		b.Goods, b.GoodsPlus = gram.of(load.Value), gram.of(t.one.Expanded())
		b.Volume = round(litres, 1e3)
		b.Headroom = t.headroom("bag", of, items, load, of.Permitted/gram.perSI)
		b.Room = t.room(of, litres)
		items = append(items, own...)
		whole := mass.Total(items, nil)
		t.one.Reset()
		t.one.Charge(items, whole, 1)
		b.Whole, b.WholePlus = gram.of(whole.Value), gram.of(t.one.Expanded())
		kg += whole.Value
	}
	return bags, goods, kg
}

// bodyOf describes the rider on the bike.
func (w *Weighed) bodyOf() *Body {
	if w.Cargo == nil || w.Cargo.Body == nil {
		return nil
	}
	c, l := w.Cargo, &w.Lines[len(w.Lines)-1]
	out := &Body{
		Rider: c.Rider.ID, Posture: c.Body.Posture, Lean: degree.of(c.Body.Lean), Note: c.Body.Note,
		Mass: gram.of(l.Mass), Plus: gram.of(mass.HalfWidth(l.MassU)), Centre: inMillimetres(l.Place),
		Segments: make([]Segment, len(c.Body.Segments)),
	}
	for i := range c.Body.Segments {
		s := &c.Body.Segments[i]
		out.Segments[i] = Segment{
			Name: s.Name, Side: s.Side, Mass: gram.of(s.Mass),
			From: inMillimetres(s.From), To: inMillimetres(s.To), Place: inMillimetres(s.Place),
		}
	}
	return out
}
