package weighin

import (
	"math"

	"steelyard/internal/linear"
	"steelyard/internal/mass"
)

// Comparison sets a measured figure beside that of the parts list.
type Comparison struct {
	Key        string // as in a report: "total" (kg), "centre_x" or "centre_z" (m)
	Measured   Value
	Paper      Value
	Difference Value // measured minus paper; what both have in common, the doubt in the wheels' radii, drops out

	// Score is the difference in units of its expanded uncertainty, the normalised
	// error of ISO/IEC 17043 (memory): the two agree within both uncertainties when it is
	// not beyond ±1.
	Score  float64
	Agrees bool
}

// Compare sets the measured figures beside those on paper, each for itself, and
// tests all of them together: what is left between the two, in units of what
// both leave open, is a sum of squares with as many degrees of freedom as there
// are figures.
func Compare(m *Measured, p *Paper) ([]Comparison, Test) {
	e := estimate{m.p, m.against, m.known}
	total, x, z, _ := e.figures()
	list := []Comparison{compare("total", m.Total, total.U, p.Total), compare("centre_x", m.X, x.U, p.X)}
	if m.HasHeight {
		list = append(list, compare("centre_z", m.Z, z.U, p.Z))
	}
	d, q := m.minus(p)
	chol, ok := linear.Factorize(q)
	if !ok {
		return list, Test{P: 1}
	}
	return list, newTest(chol.Inner(d, d), m.known)
}

// compare sets m beside p; u is the uncertainty of m without what moves both.
func compare(key string, m Value, u float64, p Value) Comparison {
	c := Comparison{Key: key, Measured: m, Paper: p}
	c.Difference = Value{m.Value - p.Value, math.Hypot(u, p.U)}
	if plus := c.Difference.Plus(); plus > 0 {
		c.Score = c.Difference.Value / plus
	}
	c.Agrees = math.Abs(c.Difference.Value) <= mass.Coverage*c.Difference.U
	return c
}

// minus returns measured minus paper moments, with their covariance.
func (m *Measured) minus(p *Paper) (linear.Vec, *linear.Sym) {
	d := make(linear.Vec, m.known)
	for i := range d {
		d[i] = m.p[i] - p.p[i]
	}
	q := p.covariance(m.known)
	q.Add(m.against)
	return d, q
}
