package rooms

import (
	"math"
	"strconv"
	"sync"

	"steelyard/internal/mass"
	"steelyard/internal/report"
	"steelyard/internal/units"
	"steelyard/internal/words"
)

// Figure is a figure of a side with its ±.
type Figure struct {
	Key   string  `json:"key"`
	Label string  `json:"label"`
	Unit  string  `json:"unit"`
	Value float64 `json:"value"`
	Plus  float64 `json:"plus"`
}

// Change is a figure of both sides, and its difference.
type Change struct {
	Key     string  `json:"key"`
	Label   string  `json:"label"`
	Unit    string  `json:"unit"`
	A       float64 `json:"a"`
	B       float64 `json:"b"`
	Delta   float64 `json:"delta"`
	Plus    float64 `json:"plus"`
	Verdict string  `json:"verdict"`
}

// told is a figure before it is written: what it is, and what it owes to a
// budget.
type told struct {
	key, unit string
	factor    float64 // from SI to the unit
	decimals  int
	value     float64 // SI
	charge    func(b *mass.Budget, sign float64)
}

// plus is the ± of a figure, SI.
func (f *told) plus() float64 {
	if f.charge == nil {
		return 0
	}
	b := budgets.Get().(*mass.Budget)
	defer budgets.Put(b)
	b.Reset()
	f.charge(b, 1)
	return b.Expanded()
}

// budgets are budgets that are free: one holds a number for each source.
var budgets = sync.Pool{New: func() any { return new(mass.Budget) }}

// real reports whether a figure is a number.
func (f *told) real() bool { return !math.IsNaN(f.value) && !math.IsInf(f.value, 0) }

// figure writes it under its label.
func (f *told) figure(label func(string) string) Figure {
	return Figure{
		Key: f.key, Label: label(f.key), Unit: f.unit,
		Value: report.Decimal(f.factor*f.value, f.decimals), Plus: report.Decimal(f.factor*f.plus(), f.decimals),
	}
}

// changes sets the figures of two sides against each other, those that both have.
func changes(e *report.Evaluation, a, b []told, label func(string) string) []Change {
	out := make([]Change, 0, len(a))
	e.Differences(func(of func(report.Charge) float64) {
		for i := range a {
			fa := &a[i]
			// Mostly they come in the same order.
			fb := named(b, fa.key, i)
			if fb == nil || !fa.real() || !fb.real() {
				continue
			}
			c := change(fa, fb, of(func(side int, budget *mass.Budget, sign float64) {
				f := fa
				if side == 1 {
					f = fb
				}
				if f.charge != nil {
					f.charge(budget, sign)
				}
			}))
			c.Label = label(fa.key)
			out = append(out, c)
		}
	})
	return out
}

// named is the figure of a key, which is looked for at a place first; nil where
// there is none.
func named(list []told, key string, first int) *told {
	if first < len(list) && list[first].key == key {
		return &list[first]
	}
	for i := range list {
		if list[i].key == key {
			return &list[i]
		}
	}
	return nil
}

// differ sets a figure against the same of another thing whose sources of doubt
// have the same numbers, so that what they have in common cancels.
func differ(from, to *told) Change {
	b := budgets.Get().(*mass.Budget)
	defer budgets.Put(b)
	b.Reset()
	if from.charge != nil {
		from.charge(b, -1)
	}
	if to.charge != nil {
		to.charge(b, 1)
	}
	return change(from, to, b.Expanded())
}

// change writes two figures of a sort and their difference, whose ± is given, SI.
func change(a, b *told, plus float64) Change {
	shown := func(v float64) float64 { return report.Decimal(a.factor*v, a.decimals) }
	c := Change{Key: a.key, Unit: a.unit, A: shown(a.value), B: shown(b.value), Delta: shown(b.value - a.value), Plus: shown(plus)}
	c.Verdict = report.Verdict(c.Delta, c.Plus)
	return c
}

// numbers writes numbers in the sentences of a language.
func numbers(w *words.Words) func(v float64, decimals int) string {
	f := units.Format{Comma: w.Comma()}
	return func(v float64, decimals int) string { return f.Number(strconv.FormatFloat(v, 'f', decimals, 64)) }
}
