package rooms

import (
	"math"
	"sync"

	"steelyard/internal/mass"
	"steelyard/internal/report"
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
	out := []Change{}
	for i := range a {
		fa := &a[i]
		for k := range b {
			fb := &b[k]
			if fa.key != fb.key || !fa.real() || !fb.real() {
				continue
			}
			plus := e.Difference(func(side int, budget *mass.Budget, sign float64) {
				if f := []*told{fa, fb}[side]; f.charge != nil {
					f.charge(budget, sign)
				}
			})
			c := Change{
				Key: fa.key, Label: label(fa.key), Unit: fa.unit,
				A: report.Decimal(fa.factor*fa.value, fa.decimals), B: report.Decimal(fb.factor*fb.value, fb.decimals),
				Delta: report.Decimal(fa.factor*(fb.value-fa.value), fa.decimals), Plus: report.Decimal(fa.factor*plus, fa.decimals),
			}
			c.Verdict = report.Verdict(c.Delta, c.Plus)
			out = append(out, c)
			break
		}
	}
	return out
}
