package report

import (
	"steelyard/internal/assembly"
	"steelyard/internal/mass"
)

// Further rooms reckon with the same builds; this file has what they need.

// Decimal rounds a value to so many decimals, as the report does: 0 is never
// negative.
func Decimal(v float64, decimals int) float64 {
	steps := 1.0
	for range decimals {
		steps *= 10
	}
	return round(v, steps)
}

// Verdict judges a difference and its ±, both as they are shown.
func Verdict(delta, plus float64) string { return verdict(delta, plus) }

// A Charge adds what a figure of the items of a side owes to a budget, with a sign.
type Charge func(side int, b *mass.Budget, sign float64)

// Difference returns the ± of a figure of the second side minus the same of the
// first: what both sides have in common cancels.
func (e *Evaluation) Difference(charge Charge) (plus float64) {
	e.Differences(func(of func(Charge) float64) { plus = of(charge) })
	return plus
}

// Differences is Difference for several figures: work is called with what returns
// the ± of each. Meanwhile the lines of the second side have the sources that they
// have in the first.
func (e *Evaluation) Differences(work func(of func(Charge) float64)) {
	if len(e.Sides) != 2 || e.Sides[0] == nil || e.Sides[1] == nil {
		work(func(Charge) float64 { return 0 })
		return
	}
	w := workspaces.Get().(*workspace)
	defer workspaces.Put(w)
	b := &w.both
	e.Sides[1].rename(e.renamed, true)
	defer e.Sides[1].rename(e.renamed, false)
	work(func(charge Charge) float64 {
		b.Reset()
		charge(0, b, -1)
		charge(1, b, 1)
		return b.Expanded()
	})
}

// Changed returns the lines of both sides that go together and are not the same in
// mass, place and carrier, by index; -1 where one side has none. Lines that are not
// on the bike in its state are among them.
func (e *Evaluation) Changed() [][2]int {
	if len(e.Sides) != 2 || e.Sides[0] == nil || e.Sides[1] == nil {
		return nil
	}
	a, b := e.Sides[0], e.Sides[1]
	var list [][2]int
	there := func(w *Weighed, i int) int {
		if i >= 0 && (w.Lines[i].OK || w.Lines[i].Off) {
			return i
		}
		return -1
	}
	for _, c := range e.matched {
		i, j := there(a, c.a), there(b, c.b)
		if i < 0 != (j < 0) || i >= 0 && !alike(&a.Lines[i], &b.Lines[j]) {
			list = append(list, [2]int{i, j})
		}
	}
	return list
}

// SideName is what a side of the comparison is called.
func (e *Evaluation) SideName(side int) string { return e.Report.Sides[side].Name }

// Share is a share of all items of a bike: 1 for those on the carriers named, 0
// for all others.
func Share(w *assembly.Assembly, carriers ...assembly.Carrier) mass.Share {
	s := make(mass.Share, len(w.Items))
	for _, c := range carriers {
		first, end := w.Span(c)
		for i := first; i < end; i++ {
			s[i] = 1
		}
	}
	return s
}
