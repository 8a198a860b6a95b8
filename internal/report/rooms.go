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

// Difference returns the ± of a figure of the second side minus the same of the
// first. Both figures are of the items of their sides. Charge adds what a figure
// of a side owes to a budget, with a sign; what both sides have in common cancels.
func (e *Evaluation) Difference(charge func(side int, b *mass.Budget, sign float64)) float64 {
	if len(e.Sides) != 2 || e.Sides[0] == nil || e.Sides[1] == nil {
		return 0
	}
	w := workspaces.Get().(*workspace)
	defer workspaces.Put(w)
	b := &w.both
	b.Reset()
	charge(0, b, -1)
	e.Sides[1].rename(e.renamed, true)
	charge(1, b, 1)
	e.Sides[1].rename(e.renamed, false)
	return b.Expanded()
}

// Changed returns the lines of both sides that go together and are not the same in
// mass, place and carrier, by index; -1 where one side has none.
func (e *Evaluation) Changed() [][2]int {
	if len(e.Sides) != 2 || e.Sides[0] == nil || e.Sides[1] == nil {
		return nil
	}
	a, b := e.Sides[0], e.Sides[1]
	var list [][2]int
	for _, c := range countedPairs(a, b, e.matched) {
		if c.a < 0 || c.b < 0 || !alike(&a.Lines[c.a], &b.Lines[c.b]) {
			list = append(list, [2]int{c.a, c.b})
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
