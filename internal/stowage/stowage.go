package stowage

import (
	"errors"
	"reflect"
	"slices"
	"strings"

	"steelyard/internal/document"
	"steelyard/internal/packing"
	"steelyard/internal/report"
	"steelyard/internal/ride"
	"steelyard/internal/words"
)

// Stowage is a load that is being packed on a build.
type Stowage struct {
	Build  string            // id
	Task   *packing.Task     // the load as it is to be packed
	Solver *packing.Solver   // nil when counting showed that the goods do not fit
	Short  error             // why, then: a *packing.Shortage
	words  *words.Words      // the language that limits are named in
	doc    document.Document // with the one build and the one load, ridden and full
	load   document.Load     // as it was at the start
	goods  []int             // of the task, by index in load.Goods
	bags   []int             // of the task, by index in load.Bags
	racks  []string          // what the limits of the task are of, by name in a rating

	before  string          // what the load keeps only perhaps as it is packed
	judged  packing.Packing // the packing that perhaps is of
	perhaps string
}

// Options say what to pack. What is nil is that of the first side that the
// document shows.
type Options struct {
	Build *string // id
	Load  *string // id
	Aim   *document.Packing

	// Tolerance is how far from the best is good enough, in units of the aim; 0 is
	// far below what can be weighed, and may take long to prove. Without it, it is
	// [GoodEnough].
	Tolerance *float64
}

// GoodEnough is the tolerance unless another is asked for, in units of the aim:
// at a weight of 100 half a millimetre, or a twentieth of a percentage point of
// front share. No packer fills a bag that exactly.
const GoodEnough = 0.05

// New begins to pack a load of a document that was opened. The problem says why
// it cannot. That goods do not fit is no problem, but a [Stowage.Short].
func New(d *document.Document, o Options, language *words.Words) (*Stowage, *document.Problem) {
	fault := func(p document.Problem) (*Stowage, *document.Problem) {
		p.Severity = document.SeverityError
		return nil, &p
	}
	show := func(given *string, list []string) string {
		switch {
		case given != nil:
			return *given
		case len(list) > 0:
			return list[0]
		}
		return ""
	}
	build, load := show(o.Build, d.Show.Compare), show(o.Load, d.Show.Loads)
	b, l := d.Build(build), d.Load(load)
	switch {
	case b == nil:
		return fault(document.Problem{Build: build, Message: words.Tell("stowage.no_build")})
	case l == nil:
		return fault(document.Problem{Load: load, Message: words.Tell("stowage.no_load")})
	case len(l.Bags) == 0:
		return fault(document.Problem{Load: load, Field: "bags", Message: words.Tell("stowage.no_bags")})
	}
	aim := document.DefaultPacking
	if d.Show.Packing != nil {
		aim = *d.Show.Packing
	}
	if o.Aim != nil {
		aim = *o.Aim
	}
	one := *d
	one.Builds = []document.Build{*b}
	one.Show.Compare, one.Show.Loads, one.Show.Packing = []string{build}, []string{load}, &aim
	one.Show.State, one.Show.Supplies = document.Ridden, document.Full
	for _, p := range document.Check(&one) {
		if p.Severity == document.SeverityError && strings.HasPrefix(p.Field, "show.packing.") {
			return nil, &p
		}
	}
	w := report.Weigh(&one, nil).Sides[0]
	if w == nil {
		return fault(document.Problem{Build: build, Message: words.Tell("stowage.figures")})
	}
	p := w.Packing()
	if len(p.Bags) == 0 {
		return fault(document.Problem{Load: load, Field: "bags", Message: words.Tell("stowage.nowhere")})
	}
	s := &Stowage{Build: build, words: language, doc: one, load: *l, goods: p.Goods, bags: p.Bags}
	s.load.Bags, s.load.Goods = slices.Clone(l.Bags), slices.Clone(l.Goods)
	s.Task = s.newTask(p, &aim, w)
	s.before = s.undecided(s.load.Goods)
	tolerance := GoodEnough
	if o.Tolerance != nil {
		tolerance = *o.Tolerance
	}
	s.Task.Tolerance = max(s.Task.Tolerance, tolerance)
	solver, err := packing.New(s.Task)
	if short := (*packing.Shortage)(nil); err != nil && !errors.As(err, &short) {
		return fault(document.Problem{Load: load, Message: words.Tell("stowage.task", "why", words.Sentence{Of: err})})
	}
	s.Solver, s.Short = solver, err
	return s, nil
}

// Load returns the id of the load.
func (s *Stowage) Load() string { return s.load.ID }

// Best returns the best packing so far, nil while there is none.
func (s *Stowage) Best() packing.Packing {
	if s.Solver == nil {
		return nil
	}
	return s.Solver.Packing()
}

// Good returns a good of the task.
func (s *Stowage) Good(k int) *document.Good { return &s.load.Goods[s.goods[k]] }

// Bag returns a bag of the task.
func (s *Stowage) Bag(j int) *document.Bag { return &s.load.Bags[s.bags[j]] }

// Unrated returns the names of the bags that have no permitted load: a packing
// keeps only to their volume.
func (s *Stowage) Unrated() []string {
	list := []string{}
	for j := range s.bags {
		if b := s.Bag(j); !(b.Permitted > 0) {
			list = append(list, b.Name)
		}
	}
	return list
}

// Of reports whether a load has the bags and goods that this packing began with.
func (s *Stowage) Of(l *document.Load) bool {
	return l != nil && reflect.DeepEqual(l.Bags, s.load.Bags) && reflect.DeepEqual(l.Goods, s.load.Goods)
}

// Terms are what an aim judges of a packing.
type Terms struct {
	packing.Figures
	Costs   packing.Costs
	Inertia float64 // about the steering axis, kg m², of the bags and goods that turn with the bar
	Breaks  error   // the limit that it does not keep, nil when it keeps them all
	Perhaps string  // the limits that it keeps, but perhaps not, for all that is known of the masses
}

// Before returns the terms of the load as it was at the start.
func (s *Stowage) Before() Terms {
	t := s.terms(s.Task.Start)
	if t.Breaks == nil {
		t.Perhaps = s.before
	}
	return t
}

// After returns the terms of a packing.
func (s *Stowage) After(p packing.Packing) Terms {
	t := s.terms(p)
	if t.Breaks != nil {
		return t
	}
	if s.judged == nil || !reflect.DeepEqual(s.judged, p) {
		packed := s.load
		packed.Goods = slices.Clone(packed.Goods)
		s.judged, s.perhaps = p, s.undecided(s.Packed(&document.Document{Loads: []document.Load{packed}}, p))
	}
	t.Perhaps = s.perhaps
	return t
}

func (s *Stowage) terms(p packing.Packing) Terms {
	f := s.Task.Figures(p)
	return Terms{Figures: f, Costs: s.Task.Aim.Costs(f), Inertia: f.Steered * s.Task.Mass(), Breaks: s.Task.Keeps(p)}
}

// undecided tells of the limits that a packing is held to which are kept only
// within the doubt of the masses, when the load has these goods.
func (s *Stowage) undecided(goods []document.Good) string {
	load := s.load
	load.Goods = goods
	d := s.doc
	d.Loads = []document.Load{load}
	side := &report.Weigh(&d, s.words).Report.Sides[0]
	var list []string
	say := func(h *report.Headroom) {
		if h != nil && h.Verdict == string(ride.Near) {
			list = append(list, h.Text)
		}
	}
	for i := range side.Bags {
		say(side.Bags[i].Headroom)
	}
	if side.Ratings != nil {
		for i := range side.Ratings.List {
			if h := &side.Ratings.List[i]; slices.Contains(s.racks, h.What) {
				say(h)
			}
		}
	}
	return strings.Join(list, " ")
}
