package road

import (
	"math"
)

// Answer is yes, no, or that the doubt is too large to say.
type Answer string

// The answers.
const (
	Yes       Answer = "yes"
	No        Answer = "no"
	Undecided Answer = "undecided"
)

// noticed is the ratio from which on people tell two vertical vibrations of a
// seat apart, about a tenth (Mansfield and Griffin, Difference thresholds for
// automobile seat vibration, Applied Ergonomics 31 (2000) (memory)).
const noticed = 1.1

// Difference is b - a of a figure, with what both have in common cancelled.
type Difference struct {
	Value, Plus float64
	// Ratio is b over a, and RatioPlus the expanded uncertainty of its logarithm.
	// Both are 0 where a or b is.
	Ratio, RatioPlus float64
	// Differs says whether the two are known to differ; Felt whether a body that is
	// shaken by that much would tell: it means something for accelerations.
	Differs, Felt Answer
}

// Felt says whether people tell two vibrations apart whose ratio, and the expanded
// uncertainty of its logarithm, are these.
func Felt(ratio, plus float64) Answer {
	switch l := math.Abs(math.Log(ratio)); {
	case l-plus > math.Log(noticed):
		return Yes
	case l+plus < math.Log(noticed):
		return No
	}
	return Undecided
}

// Part is a part that one or both of two bikes have: the indices of its items in
// each loading, and in the state where the springs were set. None is for a bike
// that has it not.
type Part struct{ A, B Pieces }

// Pieces are the indices of a part's items.
type Pieces struct{ Items, Set []int }

// Causes is what a difference b - a of a figure comes from: each part, in their
// order, and what is set: springs (rate or sag), their dampers, tyres, a standing
// body. Rest is what none of them explains: the points of the pose, an end that
// is sprung in only one, and what is not in proportion.
type Causes struct {
	Parts                               []float64
	Springs, Dampers, Tyres, Body, Rest float64
}

// Explain says what a difference comes from: each change times the mean of the
// figure's slopes in both bikes, which is exact to the second order.
func Explain(a, b *Figure, parts []Part) (c Causes) {
	ga, gb := a.gradient(), b.gradient()
	m, n := a.model, b.model
	c.Rest = b.Value - a.Value
	c.Parts = make([]float64, len(parts))
	for i := range parts {
		pa, pb := m.of(&parts[i].A), n.of(&parts[i].B)
		var sum float64
		for k := range pa {
			if k >= springSag {
				break
			}
			sum += (ga[k] + gb[k]) / 2 * (pb[k] - pa[k])
		}
		c.Parts[i] = sum
		c.Rest -= sum
	}
	ka, kb := m.bike.known(), n.bike.known()
	for i := range ka {
		if ka[i] == nil || kb[i] == nil {
			continue
		}
		at := springSag + i
		part := (ga[at] + gb[at]) / 2 * (n.numbers[at] - m.numbers[at])
		switch {
		case at < dampRatio:
			c.Springs += part
		case at < tyreRate:
			c.Dampers += part
		case at < standing:
			c.Tyres += part
		default:
			c.Body += part
		}
		c.Rest -= part
	}
	return c
}

// gradient is the figure's slope with each number; a body that moves with another
// has the other's.
func (f *Figure) gradient() (g params) {
	for i := range f.model.moved {
		g[f.model.moved[i].index] = f.slopes[i]
	}
	for body := range numBodies {
		if as := f.model.bike.like(body); as != body {
			copy(g[int(body)*perBody:int(body+1)*perBody], g[int(as)*perBody:])
		}
	}
	return g
}

// of are the numbers that pieces bring: their sums, and what they make the springs
// carry where these were set.
func (m *Model) of(pieces *Pieces) (p params) {
	b := m.bike
	add := func(l *Loading, which []int) {
		for _, i := range which {
			own := l.Items[i].Moments()
			for body := range numBodies {
				if s := l.Shares[body]; i < len(s) && s[i] != 0 {
					for k, v := range b.planar(body, own.Scale(s[i])) {
						p[int(body)*perBody+k] += v
					}
				}
			}
		}
	}
	if b.Set != nil {
		add(b.Set, pieces.Set)
		for side := range Both {
			if b.Ends[side].Spring != nil {
				p[setLoad+int(side)] = m.frame.bears[side].of(&p)
			}
		}
		clear(p[:setLoad])
	}
	add(&b.Loading, pieces.Items)
	return p
}
