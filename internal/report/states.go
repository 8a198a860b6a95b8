package report

import (
	"math"

	"steelyard/internal/assembly"
	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// first are the mass and the first moments of a bike in a state, M, Mx, My and
// Mz, with their doubts. Every figure of the table of states is a function of
// these four, so one walk along the items does for all of them.
type first struct {
	at            [4]float64   // kg, kg m
	errors        [][4]float64 // what the error of each source of mass does to them
	places, sizes [3]float64   // of what the sources of place do along each axis: sums of squares, (kg m)², and of magnitudes, kg m
}

// spreading is memory for the walk: what the errors of each source do to the
// moments.
type spreading struct {
	mass    [][4]float64 // by source of mass
	place   []mass.Vec   // by source of place, kg m
	masses  []int        // sources in use
	placeds []int
	errors  [][4]float64 // of the sources in use
}

// firstOf sums up what is on the bike in a state. Left is the share of each
// supply. The errors hold until the next call.
func (t *workspace) firstOf(w *Weighed, to assembly.Level, left *[assembly.NumSupplies]float64) first {
	var f first
	s := &t.spread
	for i := range w.Lines {
		l := &w.Lines[i]
		if l.Level > to || !l.OK && !l.Off {
			continue
		}
		share := left[l.Supply]
		if share == 0 {
			continue
		}
		for j := l.WholeFirst; j < l.WholeEnd; j++ {
			it := &w.Whole[j]
			m := share * it.Mass
			f.at[0] += m
			f.at[1] += m * it.Place.X
			f.at[2] += m * it.Place.Y
			f.at[3] += m * it.Place.Z
			if u := share * it.MassU; u != 0 {
				e := s.ofMass(it.MassSource)
				e[0] += u
				e[1] += u * it.Place.X
				e[2] += u * it.Place.Y
				e[3] += u * it.Place.Z
			}
			if u := &it.PlaceU; *u != (mass.Vec{}) {
				p := s.ofPlace(it.PlaceSource)
				p.X += m * u.X
				p.Y += m * u.Y
				p.Z += m * u.Z
			}
		}
	}
	s.errors = s.errors[:0]
	for _, n := range s.masses {
		e := &s.mass[n]
		s.errors = append(s.errors, *e)
		*e = [4]float64{}
	}
	f.errors = s.errors
	for _, n := range s.placeds {
		p := &s.place[n]
		for i, v := range [...]float64{p.X, p.Y, p.Z} {
			f.places[i] += v * v
			f.sizes[i] += math.Abs(v)
		}
		*p = mass.Vec{}
	}
	s.masses, s.placeds = s.masses[:0], s.placeds[:0]
	return f
}

func (s *spreading) ofMass(n int) *[4]float64 {
	if k := n + 1 - len(s.mass); k > 0 {
		s.mass = append(s.mass, make([][4]float64, k)...)
	}
	if s.mass[n] == ([4]float64{}) {
		s.masses = append(s.masses, n)
	}
	return &s.mass[n]
}

func (s *spreading) ofPlace(n int) *mass.Vec {
	if k := n + 1 - len(s.place); k > 0 {
		s.place = append(s.place, make([]mass.Vec, k)...)
	}
	if s.place[n] == (mass.Vec{}) {
		s.placeds = append(s.placeds, n)
	}
	return &s.place[n]
}

// figure is a figure with the gradient g.
func (f *first) figure(s slot, value float64, g [4]float64) (Figure, bool) {
	v, sum := 0.0, 0.0
	for i := range f.places {
		v += f.places[i] * g[1+i] * g[1+i]
		sum += f.sizes[i] * math.Abs(g[1+i])
	}
	for i := range f.errors {
		e := &f.errors[i]
		c := g[0]*e[0] + g[1]*e[1] + g[2]*e[2] + g[3]*e[3]
		v += c * c
		sum += math.Abs(c)
	}
	k, plus := &figureKeys[s], mass.Expanded(v, sum)
	return Figure{Key: k.key, Unit: k.unit.name, Value: k.unit.of(value), Plus: k.unit.of(plus)}, units.Finite(value) && units.Finite(plus)
}

// figures are the main figures: c = S/M has the gradient (-c/M, 1/M), a wheel's
// load is M times the other wheel's distance from the centre over the wheelbase.
func (f *first) figures(rear, front float64) []Figure {
	list := make([]Figure, 0, 7)
	add := func(s slot, value float64, g [4]float64) {
		if f, ok := f.figure(s, value, g); ok {
			list = append(list, f)
		}
	}
	m, base := f.at[0], front-rear
	add(total, m, [4]float64{1})
	if !(m > 0) {
		return list
	}
	for i, s := range [...]slot{centreX, centreY, centreZ} {
		c := f.at[1+i] / m
		g := [4]float64{0: -c / m}
		g[1+i] = 1 / m
		add(s, c, g)
	}
	if base == 0 {
		return list
	}
	x := f.at[1] / m
	add(frontLoad, (f.at[1]-rear*m)/base, [4]float64{-rear / base, 1 / base})
	add(rearLoad, (front*m-f.at[1])/base, [4]float64{front / base, -1 / base})
	add(frontShare, (x-rear)/base, [4]float64{-x / (m * base), 1 / (m * base)})
	return list
}

// all is full supplies; what is never used up is always there.
func all(left float64) *[assembly.NumSupplies]float64 {
	var s [assembly.NumSupplies]float64
	for i := range s {
		s[i] = left
	}
	s[assembly.Lasting] = 1
	return &s
}

// states writes every state that the bike has.
func (t *workspace) states(w *Weighed) []State {
	var list []State
	for to := assembly.Bare; to <= w.Highest(); to++ {
		var figures []Figure
		for _, s := range document.SupplyLevels {
			if figures == nil || w.UsesUp(to) {
				f := t.firstOf(w, to, all(s.Left()))
				figures = f.figures(w.Bike.RearContact.X, w.Bike.FrontContact.X)
			}
			list = append(list, State{Condition{to.State(), s}, figures})
		}
	}
	return list
}

// pathSteps is into how many steps a path is cut.
const pathSteps = 4

// paths writes the paths of the centre of mass in the state shown: with all
// supplies used up together and, if there are several, with each by itself.
func (t *workspace) paths(w *Weighed) []Path {
	list := []Path{}
	var used [assembly.NumSupplies]bool
	n := 0
	for i := range w.Lines {
		if l := &w.Lines[i]; l.Supply != assembly.Lasting && l.Level <= w.Level && l.WholeEnd > l.WholeFirst && !used[l.Supply] {
			used[l.Supply] = true
			n++
		}
	}
	if n == 0 {
		return list
	}
	path := func(key string, emptied func(left float64) *[assembly.NumSupplies]float64) {
		p := Path{Supply: key, Points: make([]Stop, 0, pathSteps+1)}
		for i := range pathSteps + 1 {
			left := 1 - float64(i)/pathSteps
			f := t.firstOf(w, w.Level, emptied(left))
			if s, ok := f.stop(left, w.Bike.RearContact.X, w.Bike.FrontContact.X); ok {
				p.Points = append(p.Points, s)
			}
		}
		p.sum()
		list = append(list, p)
	}
	path("all", all)
	for s := assembly.Water; n > 1 && s < assembly.NumSupplies; s++ {
		if used[s] {
			path(assembly.SupplyKeys[s], func(left float64) *[assembly.NumSupplies]float64 {
				a := all(1)
				a[s] = left
				return a
			})
		}
	}
	return list
}

func (f *first) stop(left, rear, front float64) (Stop, bool) {
	m := f.at[0]
	if !(m > 0) || front == rear {
		return Stop{}, false
	}
	c := mass.Vec{X: f.at[1] / m, Y: f.at[2] / m, Z: f.at[3] / m}
	share := (c.X - rear) / (front - rear)
	if !units.Finite(c.X) || !units.Finite(c.Y) || !units.Finite(c.Z) || !units.Finite(share) {
		return Stop{}, false
	}
	return Stop{Left: round(left, 100), Total: gram.of(m), Centre: inMillimetres(c), FrontShare: ratio.of(share)}, true
}

// sum adds up a path.
func (p *Path) sum() {
	if len(p.Points) < 2 {
		return
	}
	from, to := &p.Points[0], &p.Points[len(p.Points)-1]
	p.Gone = from.Total - to.Total
	for i := range p.Moved {
		p.Moved[i] = to.Centre[i] - from.Centre[i]
	}
	p.ShareBy = to.FrontShare - from.FrontShare
}
