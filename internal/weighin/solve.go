package weighin

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/linear"
	"steelyard/internal/mass"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Value is a figure with its standard uncertainty.
type Value struct{ Value, U float64 }

// Plus is the expanded uncertainty, with coverage factor 2.
func (v Value) Plus() float64 { return mass.Coverage * v.U }

// Measured is what the scale says.
type Measured struct {
	Total Value // kg
	X     Value // of the centre of mass, ahead of the rear contact, m
	Z     Value // and above the ground; only with HasHeight

	HasHeight bool    // whether the readings tell the height: one of them with a wheel raised
	XZ        float64 // covariance of X and Z, m²

	// Owed says what each doubt does to the figures, that which does most first.
	Owed []Owed

	// Self says whether readings beyond those needed agree with the others.
	// When they are unlikely to by chance, the scale is worse than its display,
	// and all uncertainties are widened by the factor Widened (Birge's ratio,
	// the root of the sum of squares per degree); otherwise that is 1.
	Self    Test
	Widened float64
	Left    []Residual // one for each reading that was taken

	estimate

	// against is the covariance of the moments for holding them against the parts
	// list: without the doubt in the radii, since a list stands on the same wheels
	// and moves up and down with them.
	against *linear.Sym
}

// estimate is what is known of the moments: all three, or, without a height,
// the first two.
type estimate struct {
	p     moments
	cov   *linear.Sym
	known int
}

// Residual is what a reading differs by from what all readings together say.
type Residual struct {
	Line  int     // of the reading
	By    float64 // kg, reading minus what is expected
	Score float64 // in units of its standard uncertainty, not widened; 0 for a reading that nothing else checks
}

// solve finds total and centre from readings, which need to be of both wheels
// with the bike level, and for the height of one with a wheel raised; other
// sets that tell the same are taken as well. When the readings do not tell the
// height, about says where it will be: it has a small part in how much a floor
// out of level makes uncertain.
//
// Without a result the problems say what is missing or impossible.
func (c *checker) solve(s *Stand, readings []Reading, about float64) *Measured {
	if !s.valid() {
		c.fail("readings", "weighin.stand", "wheelbase", s.Wheelbase, "rear", s.RearRadius, "front", s.FrontRadius)
		return nil
	}
	var raised []Reading
	var front, rear bool // weighed level
	for _, r := range readings {
		if r.Rise != 0 {
			raised = append(raised, r)
			continue
		}
		front, rear = front || r.Front, rear || !r.Front
	}
	known := 2
	if len(raised) > 0 {
		known = 3
	}
	if !observable(s, readings, known) {
		c.missing(front, rear)
		return nil
	}
	m := solve(s, readings, about, known)
	if m == nil {
		c.fail("readings", "weighin.unsolved")
		return nil
	}
	if !(m.Total.Value > 0) || m.Total.Value > 10*document.MaxMass/1000 {
		c.fail("readings", "weighin.total", "kg", words.Fixed(m.Total.Value, 1))
		return nil
	}
	if off := outside(m.X, 0, s.Wheelbase); off {
		c.fail("readings", "weighin.outside", "x", words.Fixed(m.X.Value*1000, 0))
		return nil
	}
	if !m.HasHeight || !c.impossible(s, m, raised) {
		return m
	}
	if front && rear { // what the level readings say still holds
		var level []Reading
		for _, r := range readings {
			if r.Rise == 0 {
				level = append(level, r)
			}
		}
		return solve(s, level, about, 2)
	}
	return nil
}

// valid reports whether a bike can stand with these figures.
func (s *Stand) valid() bool {
	return units.Finite(s.Wheelbase) && units.Finite(s.RearRadius) && units.Finite(s.FrontRadius) && units.Finite(s.WheelbaseU) && units.Finite(s.RadiusU) && units.Finite(s.LevelU) &&
		s.Wheelbase > 0.01 && s.RearRadius > 0 && s.FrontRadius > 0 && s.WheelbaseU >= 0 && s.RadiusU >= 0 && s.LevelU >= 0 &&
		s.WheelbaseU < s.Wheelbase && s.Wheelbase+s.RearRadius+s.FrontRadius < 100
}

// narrowed is the measurement without the widening.
func (m *Measured) narrowed() *Measured {
	n := *m
	n.cov = m.cov.Clone()
	n.cov.Scale(1 / (m.Widened * m.Widened))
	n.against = m.against.Clone()
	n.against.Scale(1 / (m.Widened * m.Widened))
	n.Total, n.X, n.Z, n.XZ = n.figures()
	n.Widened = 1
	return &n
}

// outside reports whether a value lies outside of a range for all its doubt.
func outside(v Value, low, high float64) bool {
	return v.Value+v.Plus() < low || v.Value-v.Plus() > high
}

// observable reports whether readings determine the first known moments.
func observable(s *Stand, readings []Reading, known int) bool {
	if len(readings) < known {
		return false
	}
	n := linear.NewSym(known)
	for _, r := range readings {
		a := s.lever(r.Front, r.Rise)
		n.AddOuter(1, a[:known])
	}
	size := make([]float64, known)
	for i := range size {
		if size[i] = math.Sqrt(n.At(i, i)); !(size[i] > 0) {
			return false
		}
	}
	for i := range known {
		for j := i; j < known; j++ {
			n.Set(i, j, n.At(i, j)/(size[i]*size[j]))
		}
	}
	chol, ok := linear.Factorize(n)
	return ok && chol.Cond() < 1e9
}

// missing says which reading to add.
func (c *checker) missing(front, rear bool) {
	key := "weighin.level.both"
	switch {
	case rear && !front:
		key = "weighin.level.front"
	case front && !rear:
		key = "weighin.level.rear"
	}
	c.fail("readings", key)
}

// impossible says when a height cannot be, and at which reading to look.
func (c *checker) impossible(s *Stand, m *Measured, raised []Reading) bool {
	const highest = 2.5 // m; nobody rides higher
	low := m.Z.Value+m.Z.Plus() < 0
	if !low && !(m.Z.Value-m.Z.Plus() > highest) {
		if m.Z.Value < 0 {
			c.warn(rise(raised, "height_mm"), "weighin.untold", "z", words.Fixed(m.Z.Value*1000, 0), "plus", words.Fixed(m.Z.Plus()*1000, 0))
		}
		return false
	}
	at := rise(raised, "mass_g")
	r := raised[0]
	end := ".front"
	if r.Rise < 0 {
		end = ".rear"
	}
	if low {
		c.fail(at, "weighin.under"+end, "by", words.Fixed(-m.Z.Value*1000, 0))
		return true
	}
	c.fail(at, "weighin.over"+end, "z", words.Fixed(m.Z.Value, 1))
	return true
}

// rise is the field to look at in the raised readings: that of the only one, or
// the whole list.
func rise(raised []Reading, name string) string {
	if len(raised) == 1 {
		return field(raised[0].Line, name)
	}
	return "readings"
}

// solve is generalised least squares on the first known moments; nil when
// rounding leaves nothing to solve.
func solve(s *Stand, readings []Reading, about float64, known int) *Measured {
	loads := loadsOf(readings)
	n := len(loads)
	a, y := linear.NewDense(n, known), make(linear.Vec, n)
	for i := range loads {
		l := s.lever(loads[i].Front, loads[i].Rise)
		copy(a.Row(i), l[:known])
		y[i] = loads[i].Mass
	}
	// What the shared doubts do to the readings depends on the moments, which
	// are not known yet: start without them, and a few rounds settle it.
	var g *gls
	var p moments
	var doubts []effect
	for range 4 {
		doubts = effects(s, loads, p)
		if g = newGLS(a, y, covariance(n, doubts)); g == nil {
			return nil
		}
		copy(p[:], g.p)
		if known == 2 {
			p[2] = p[0] * about
		}
	}
	again, freedom := checks(loads)
	m := &Measured{HasHeight: known == 3, Widened: 1, Self: newTest(g.chiSquare+again, n-known+freedom)}
	if per, ok := m.Self.PerDegree(); ok && m.Self.Unlikely() {
		m.Widened = math.Sqrt(per)
	}
	m.Left = make([]Residual, len(readings))
	for k := range loads {
		l := &loads[k]
		within := l.scatterU() * l.scatterU() * (1 - 1/float64(len(l.lines)))
		v := g.variance(k) + within
		for _, i := range l.lines {
			r := Residual{Line: readings[i].Line, By: g.left[k] + readings[i].Mass - l.Mass}
			if v > 0 {
				r.Score = r.By / math.Sqrt(v)
			}
			m.Left[i] = r
		}
	}
	m.weighDoubts(g, doubts, known)
	wider := m.Widened * m.Widened
	g.cov.Scale(wider)
	m.against.Scale(wider)
	m.estimate = estimate{p, g.cov, known}
	if known == 2 {
		m.p[2] = 0
	}
	m.Total, m.X, m.Z, m.XZ = m.figures()
	for _, v := range []float64{m.Total.Value, m.Total.U, m.X.Value, m.X.U, m.Z.Value, m.Z.U, m.XZ, m.Self.ChiSquare} {
		if !units.Finite(v) {
			return nil
		}
	}
	return m
}

// figures turns moments into total and centre, with the doubt of each and what
// x and z have in common: with c = S/M, ∂c/∂M = -c/M and ∂c/∂S = 1/M.
func (e *estimate) figures() (total, x, z Value, xz float64) {
	m := e.p[0]
	v := func(i, j int) float64 { return e.cov.At(i, j) }
	root := func(v float64) float64 { return math.Sqrt(max(v, 0)) }
	total = Value{m, root(v(0, 0))}
	common := func(a, b float64, i, j int) float64 {
		return (a*b*v(0, 0) - a*v(0, j) - b*v(0, i) + v(i, j)) / (m * m)
	}
	x.Value = e.p[1] / m
	x.U = root(common(x.Value, x.Value, 1, 1))
	if e.known == 3 {
		z.Value = e.p[2] / m
		z.U = root(common(z.Value, z.Value, 2, 2))
		xz = common(x.Value, z.Value, 1, 2)
	}
	return total, x, z, xz
}
