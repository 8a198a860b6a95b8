package road

import (
	"math"

	"steelyard/internal/mass"
)

// Model is a bike's motion, ready to be asked. Its own numbers are base; beside
// it stand the same motion with each number moved by a little, for the doubt.
type Model struct {
	bike    *Bike
	frame   *frameOf
	weights [2]filter

	numbers *params
	base    variant
	moved   []variant
	modes   []modeOf
	marks   []Mark

	answered map[[2]float64][TravelRear + 1]float64 // by frequency and speed
}

// variant is the motion with one number, at index, moved by step.
type variant struct {
	index  int
	step   float64
	system system
	expansion
}

// bare finds a bike's motion without what its doubts need.
func bare(b *Bike) (*Model, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	m := &Model{bike: b, frame: b.frame(), weights: filters(), numbers: b.params()}
	return m, m.find(m.numbers, &m.base)
}

// New finds a bike's motion. The error is a [*Problem]: of a number that makes no
// sense, or of a bike that has no such motion.
func New(b *Bike) (*Model, error) {
	m, err := bare(b)
	if err != nil {
		return nil, err
	}
	m.marks = m.base.system.marks(b)
	h := b.steps(m.numbers)
	count := 0
	for _, step := range h {
		if step != 0 {
			count++
		}
	}
	m.moved = make([]variant, count)
	n := 0
	for i, step := range h {
		if step == 0 {
			continue
		}
		p := *m.numbers
		b.move(&p, i, step)
		v := &m.moved[n]
		n++
		v.index, v.step, v.poles = i, step, m.base.poles
		b.system(m.frame, &p, &v.system)
		v.system.follow(&v.poles)
		v.system.expand(&v.expansion, &m.weights)
	}
	m.modes = m.base.system.modes(m.base.poles.all())
	m.name()
	return m, nil
}

// find finds the motion with other numbers, in v, which is empty.
func (m *Model) find(p *params, v *variant) error {
	b := m.bike
	s := &v.system
	b.system(m.frame, p, s)
	if err := s.check(b, m.frame, p); err != nil {
		return err
	}
	var ok bool
	if v.poles, ok = s.poles(); !ok {
		return &Problem{NoMass, Both, s.total, 0, math.Inf(1)}
	}
	for _, p := range v.poles.all() {
		if !(real(p.s) < -1e-7*math.Abs(imag(p.s))) {
			return &Problem{NoDamping, Both, -real(p.s), 0, math.Inf(1)}
		}
	}
	s.expand(&v.expansion, &m.weights)
	return nil
}

// Marks are what is to be said of the bike at whatever speed.
func (m *Model) Marks() []Mark { return m.marks }

// SpringRate is the rate of an end's spring along its travel, N/m; 0 of a rigid
// end.
func (m *Model) SpringRate(side Side) float64 { return m.base.system.rate[side] }

// Damper is the damping of an end along its travel, N s/m; 0 of a rigid end.
func (m *Model) Damper(side Side) float64 { return m.base.system.damping[side] }

// Sag is how far the weight presses an end's spring in this state, m.
func (m *Model) Sag(side Side) Figure {
	if m.bike.Ends[side].Spring == nil {
		return Figure{}
	}
	return m.figure(func(v *variant) float64 { return v.system.sag(m.frame, side) })
}

// sag is how far a spring is pressed at rest, along the travel.
func (s *system) sag(f *frameOf, side Side) float64 {
	lever := 1.0
	if side == Front {
		lever = f.sin
	}
	return s.carried[side] * lever / s.rate[side]
}

// Figure is a number with what moves it. The zero Figure is one that the bike
// has not.
type Figure struct {
	Value float64
	There bool

	model  *Model
	slopes []float64 // in the order of the model's moved
	level  float64   // with the roughness of the road, 1/m³
	road   Known
}

// figure makes a figure of a number that each variant has.
func (m *Model) figure(of func(*variant) float64) Figure {
	f := Figure{Value: of(&m.base), There: true, model: m, slopes: make([]float64, len(m.moved))}
	for i := range m.moved {
		v := &m.moved[i]
		f.slopes[i] = slope(of(v), f.Value, v.step)
	}
	return f
}

// slope is how a figure moves with a number. Where a number that is a little
// different has no figure, as at the edge of what can be, the figure is taken not
// to move.
func slope(moved, value, step float64) float64 {
	s := (moved - value) / step
	if math.IsNaN(s) || math.IsInf(s, 0) {
		return 0
	}
	return s
}

// Charge adds sign times the contributions of all that the figure's doubt comes
// from: masses and places of items, and named sources. A difference charges one
// figure with +1 and the other with -1; what both have in common cancels.
func (f *Figure) Charge(budget *mass.Budget, sign float64) {
	if !f.There {
		return
	}
	b := f.model.bike
	var g params
	for i := range f.model.moved {
		g[f.model.moved[i].index] = f.slopes[i]
	}
	budget.Charge(b.Items, b.function(&b.Loading, f.Value, g[:setLoad]), sign)
	if b.Set != nil {
		// What a spring carried where it was set goes through the sums of that state.
		var through form
		for side := range Both {
			if s := g[setLoad+int(side)]; s != 0 {
				l := &f.model.frame.bears[side]
				for i, c := range l {
					through[i] += s * c
				}
			}
		}
		budget.Charge(b.Set.Items, b.function(b.Set, f.Value, through[:]), sign)
	}
	for i, k := range b.known() {
		if k != nil && k.U != 0 {
			budget.ChargeNamed(k.Source, sign*g[springSag+i]*k.U)
		}
	}
	if f.road.U != 0 {
		budget.ChargeNamed(f.road.Source, sign*f.level*f.road.U)
	}
}

// function makes of slopes with respect to a loading's sums a figure of its
// items. A body that moves with another has the other's slopes.
func (b *Bike) function(l *Loading, value float64, g []float64) mass.Figure {
	slopes := make([]mass.Slope, 0, numBodies)
	for body := range numBodies {
		if len(l.Shares[body]) == 0 {
			continue
		}
		at := int(body) * perBody
		if l == &b.Loading {
			at = int(b.like(body)) * perBody
		}
		slopes = append(slopes, mass.Slope{Share: l.Shares[body], Of: b.moments(body, g[at:at+perBody])})
	}
	return mass.Function(value, slopes...)
}
