package weighin

import (
	"cmp"

	"steelyard/internal/linear"
	"steelyard/internal/mass"
	"steelyard/internal/order"
)

// Owed is what one doubt makes of the uncertainty of a figure.
type Owed struct {
	Key   string  // of the figure: "total" (kg), "centre_x" or "centre_z" (m)
	Doubt Doubt   //
	U     float64 // standard uncertainty of the figure by this doubt alone
	Share float64 // of the figure's variance, 0 to 1; those of all doubts add up to 1
	Else  float64 // standard uncertainty by all other doubts: what would be left if this one were gone
}

// Plus is what would be left of the figure's expanded uncertainty without the
// doubt.
func (o *Owed) Plus() float64 { return mass.Coverage * o.Else }

// Limit is the doubt that contributes most to a figure; nil for a figure that the
// result does not have.
func (m *Measured) Limit(key string) *Owed {
	for i := range m.Owed {
		if m.Owed[i].Key == key {
			return &m.Owed[i]
		}
	}
	return nil
}

// weighDoubts splits the uncertainty of the figures by doubt. It is the law of
// propagation with each source by itself (JCGM 100:2008, 5.1.2 and 5.2.2), which
// add up, since sources are independent of each other.
func (m *Measured) weighDoubts(g *gls, doubts []effect, known int) {
	by := map[Doubt]*linear.Sym{}
	var met []Doubt
	for i := range doubts {
		of := doubts[i].of
		if by[of] == nil {
			by[of] = linear.NewSym(known)
			met = append(met, of)
		}
		by[of].Add(g.owed(&doubts[i]))
	}
	m.against = linear.NewSym(known)
	for _, of := range met {
		if of != Radii {
			m.against.Add(by[of])
		}
	}
	var p moments
	copy(p[:], g.p)
	for k, key := range []string{"total", "centre_x", "centre_z"}[:known] {
		figure := func(cov *linear.Sym) float64 {
			e := estimate{p, cov, known}
			total, x, z, _ := e.figures()
			return [...]Value{total, x, z}[k].U
		}
		all := figure(g.cov)
		if !(all > 0) {
			continue
		}
		first := len(m.Owed)
		for _, of := range met {
			rest := linear.NewSym(known)
			for _, other := range met {
				if other != of {
					rest.Add(by[other])
				}
			}
			u := figure(by[of])
			m.Owed = append(m.Owed, Owed{key, of, u * m.Widened, u * u / (all * all), figure(rest) * m.Widened})
		}
		order.Stable(m.Owed[first:], func(a, b Owed) int { return cmp.Compare(b.Share, a.Share) })
	}
}
