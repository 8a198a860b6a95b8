package drive

import (
	"cmp"
	"math"
	"slices"

	"steelyard/internal/mass"
	"steelyard/internal/order"
)

// Mean returns the efficiency over several gears, each with its weight: its
// share of the energy that goes in. Without weights all gears count alike. Gears
// share their sources, so their doubts do not average out.
func Mean(efficiencies []Figure, weights []float64) Figure {
	b := new(mass.Budget)
	sum, total := 0.0, 0.0
	weight := func(i int) float64 {
		if len(weights) == 0 {
			return 1
		}
		if i < len(weights) {
			return max(weights[i], 0)
		}
		return 0
	}
	for i := range efficiencies {
		total += weight(i)
	}
	if total == 0 {
		return Figure{}
	}
	for i, e := range efficiencies {
		w := weight(i) / total
		sum += w * e.Value
		if w > 0 && e.Budget != nil {
			b.Add(e.Budget, w)
		}
	}
	return Figure{sum, b}
}

// Measuring is what is gained by measuring one quantity.
type Measuring struct {
	Source string
	Share  float64 // of the figure's variance, 0 to 1
	Then   float64 // expanded uncertainty once this source and all above it are known exactly
}

// First lists which of the sources is worth measuring, the one that narrows the
// figure most first; equal ones follow their names. What moves nothing, or has
// cancelled, is left out.
func First(f Figure, sources []string) []Measuring {
	if f.Budget == nil {
		return nil
	}
	total := f.Budget.Variance()
	if total == 0 {
		return nil
	}
	var list []Measuring
	for _, s := range slices.Compact(slices.Sorted(slices.Values(sources))) {
		if c := f.Budget.Named(s); c*c > 1e-12*total {
			list = append(list, Measuring{Source: s, Share: c * c / total})
		}
	}
	order.Stable(list, func(a, b Measuring) int { return cmp.Compare(b.Share, a.Share) })
	left := new(mass.Budget)
	left.Add(f.Budget, 1)
	for i := range list {
		left.ChargeNamed(list[i].Source, -f.Budget.Named(list[i].Source))
		list[i].Then = left.Expanded()
		if math.IsNaN(list[i].Then) {
			list[i].Then = 0
		}
	}
	return list
}
