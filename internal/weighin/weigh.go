package weighin

import (
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/words"
)

// Verdict is what comes out of holding the bike on the scale against the bike
// on paper.
type Verdict string

// The verdicts.
const (
	Agree       Verdict = "agree"       // within both uncertainties, all figures together
	Contradict  Verdict = "contradict"  // only because the readings contradict each other: nothing can be said
	ByWeights   Verdict = "weights"     // parts' masses within their half-widths explain it
	ByMissing   Verdict = "missing"     // a mass that is not on the list explains it better
	BySurplus   Verdict = "surplus"     // a mass on the list that is not on the bike does
	ByEither    Verdict = "either"      // both explain it about as well
	Unexplained Verdict = "unexplained" // neither does
	NoPaper     Verdict = "no-paper"    // there is nothing on paper to set it against
)

// Result is a weigh-in worked out.
type Result struct {
	Readings []Reading // that were taken
	Ridden   bool      // with somebody on the bike, so that no wheel may be raised
	Measured *Measured
	Paper    *Paper // nil when the bike on paper has no mass; so is all below

	Figures  []Comparison // total, centre_x and, when measured, centre_z
	Together Test         // of all of them
	Verdict  Verdict
	Weights  *Weights
	Missing  *Missing

	// Block is how high to raise a wheel: without a measured height for one at
	// all, otherwise for one that is known within 5 %. It is nil when the height
	// is known that well, and with a rider.
	Block *Block
}

// About is the height, m, at which the centre of mass is taken to be when
// neither scale nor paper tell it: that of a rider on a bike (common practice,
// no source).
const About = 1.0

// Weigh works out a weigh-in of a posed bike with these items on it: what the
// scale says, whether the items agree, and what would explain it when they do
// not. Without a result the problems say why; they are those of [Read] and
// solve, with the weigh-in named. What document.Check finds is not told again.
func Weigh(w *document.WeighIn, bike *geometry.Bike, items []mass.Item) (*Result, []document.Problem) {
	s := StandOf(w, bike)
	c := &checker{of: w}
	if !s.valid() {
		c.solve(&s, nil, About)
		return nil, c.problems
	}
	readings := c.read(w, &s)
	paper, ok := PaperOf(items)
	about := About
	if ok && paper.Z.Value > 0 {
		about = paper.Z.Value
	}
	m := c.solve(&s, readings, about)
	if m == nil {
		return nil, c.problems
	}
	r := &Result{Readings: readings, Ridden: w.State == document.Ridden, Measured: m, Verdict: NoPaper}
	c.suspension(w, bike, m)
	if !r.Ridden {
		c.block(&s, r, about)
	}
	if !ok {
		c.warn("build", "weighin.no_paper")
		return r, c.problems
	}
	r.Paper = paper
	r.Figures, r.Together = Compare(m, paper)
	r.Weights = explainByWeights(m, paper)
	r.Missing = explainByMissing(m, paper, bike.Stations)
	r.Verdict = r.judge()
	return r, c.problems
}

// suspension warns of what springs do to a weigh-in: on paper the bike sits at
// the sag of its build, however much is on it, unless somebody has measured how
// far it sank on the scale.
func (c *checker) suspension(w *document.WeighIn, bike *geometry.Bike, m *Measured) {
	if !bike.FrontSprung && !bike.RearSprung {
		return
	}
	front, rear := bike.FrontSag, bike.RearSag
	if w.FrontSag != nil {
		front = 0
	}
	if w.RearSag != nil {
		rear = 0
	}
	if sag := max(front, rear); sag > 0 && w.State != document.Ridden {
		c.warn("state", "weighin.sag", "front", words.Fixed(bike.FrontSag*1000, 0), "rear", words.Fixed(bike.RearSag*1000, 0), "by", words.Fixed(sag*1000, 0))
	}
	if m.HasHeight {
		c.warn("readings", "weighin.suspension")
	}
}

// block tells how high to raise a wheel.
func (c *checker) block(s *Stand, r *Result, about float64) {
	m, p := r.Measured.narrowed(), r.Measured.p // readings that contradict each other are another matter
	if !m.HasHeight {
		p[2] = p[0] * about
	} else if m.Z.Plus() <= fine*m.Z.Value {
		return
	} else if !(m.Z.Value > 0) {
		p[2] = p[0] * about
	}
	b, ok := blockFor(s, r.Readings, p)
	if !ok {
		return
	}
	r.Block = &b
	if !m.HasHeight {
		return
	}
	at := "readings"
	for _, one := range r.Readings {
		if one.Rise != 0 {
			at = field(one.Line, "height_mm")
			break
		}
	}
	key := "weighin.block.enough"
	if !b.Enough {
		key = "weighin.block.most"
	}
	c.warn(at, key, "now", words.Fixed(m.Z.Plus()*1000, 0), "height", words.Fixed(b.Height*1000, 0), "plus", words.Fixed(b.Plus*1000, 0))
}

// judge chooses between the explanations.
//
// Both are held to the same measure, Akaike's: the sum of squares plus twice
// the number of free figures. Masses within their half-widths have none, since
// the list says what to expect of them; a missing mass has its size and its
// place. Less than 4 apart neither is preferred (K. P. Burnham and D. R.
// Anderson, Model Selection and Multimodel Inference, 2002 (memory)).
func (r *Result) judge() Verdict {
	const apart = 4
	w, m := r.Weights, r.Missing
	switch {
	case !r.Together.Unlikely():
		if r.Measured.Widened > 1 {
			if _, t := Compare(r.Measured.narrowed(), r.Paper); t.Unlikely() {
				return Contradict
			}
		}
		return Agree
	case w == nil || m == nil:
		return Unexplained
	}
	byMass := ByMissing
	if m.Possible && m.Near[0].Mass.Value < 0 {
		byMass = BySurplus
	}
	switch {
	case !w.Possible && !m.Possible:
		return Unexplained
	case !m.Possible:
		return ByWeights
	case !w.Possible:
		return byMass
	}
	less := w.Prior + w.Residual - (m.Near[0].Fit.ChiSquare + 2*float64(r.Measured.known))
	switch {
	case less > apart:
		return byMass
	case less < -apart:
		return ByWeights
	}
	return ByEither
}
