package ride_test

import (
	"math"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
)

// Whatever numbers come in, nothing panics, and what is judged against a limit
// is finite.
func FuzzSystem(f *testing.F) {
	odd := []float64{0, -1, 1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324}
	for i, v := range odd {
		w := odd[(i+3)%len(odd)]
		f.Add(v, w, 1.0, 0.0, 1.0, 0.1, 0.5, "total", 1e5)
		f.Add(90.0, 0.4, v, w, 1.0, 0.1, 0.5, "rear-tyre", v)
		f.Add(90.0, 0.4, 1.0, 0.0, v, w, v, "rear-rack", w)
	}
	f.Fuzz(func(t *testing.T, m, x, z, rear, front, gradient, grip float64, what string, limit float64) {
		items := []mass.Item{
			{Mass: m, Place: mass.Vec{X: x, Y: rear, Z: z}, MassU: grip, PlaceU: mass.Alike(0.01)},
			{Mass: 1, Place: mass.Vec{X: 0.5, Z: 0.5}, MassU: 0.1, MassSource: 1},
		}
		s := ride.Between(items, rear, front)
		all := figures(items, rear, front, gradient, limit, grip)
		for _, f := range all {
			mass.Uncertainty(items, f)
		}
		s.Curve(gradient, x, 3, grip)
		list := s.Judge(items, []document.Rating{{What: what, Limit: limit}}, map[string]mass.Share{"rear-rack": {1, 0.5}})
		if len(list) > 1 {
			t.Errorf("one rating gave %d judgements", len(list))
		}
		for _, h := range list {
			if v := h.Load + h.Plus + h.Limit + h.Used; math.IsNaN(v) || math.IsInf(h.Load, 0) || math.IsInf(h.Plus, 0) || math.IsInf(h.Limit, 0) || math.IsInf(h.Used, 0) {
				t.Errorf("%+v", h)
			}
		}
	})
}
