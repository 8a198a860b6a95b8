package road

import "math"

// Model is a bike's motion, ready to be asked. Its own numbers are base; beside
// it stands how the motion moves with each of them, for the doubt.
type Model struct {
	bike  *Bike
	frame *frameOf

	numbers *params
	base    variant
	moved   []moves
	doubts  doubts
	modes   []modeOf
	marks   []Mark

	answered map[[2]float64][TravelRear + 1]float64 // by frequency and speed
}

// variant is the motion with some numbers.
type variant struct {
	system system
	expansion
}

// bare finds a bike's motion without what its doubts need.
func bare(b *Bike) (*Model, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	m := &Model{bike: b, frame: b.frame(), numbers: b.params()}
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
	m.move()
	m.doubts = b.doubts()
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
	s.expand(&v.expansion)
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
	f := m.figure(m.base.system.sag(m.frame, side))
	for i := range m.moved {
		f.slopes[i] = m.moved[i].sag[side]
	}
	return f
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

// figure makes a figure of a number that moves with nothing yet.
func (m *Model) figure(value float64) Figure {
	return Figure{Value: value, There: true, model: m, slopes: make([]float64, len(m.moved))}
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
