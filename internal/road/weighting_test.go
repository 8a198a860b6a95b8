package road_test

import (
	"math"
	"testing"

	"steelyard/internal/road"
)

// Factors at thirds of an octave: ISO 2631-1, table 3, and ISO 5349-1, table A.2,
// both to three decimals (memory): that of Wk at the frequencies as they are called,
// as the parameters give it, and that of Wh at the exact middles of the bands.
func TestWeightings(t *testing.T) {
	for _, c := range []struct {
		name string
		w    road.Weighting
		f    []float64
		want []float64
	}{
		{"Wk", road.Wk(), []float64{1, 2, 4, 5, 8, 16, 31.5}, []float64{0.482, 0.531, 0.967, 1.039, 1.036, 0.768, 0.405}},
		{"Wh", road.Wh(), []float64{7.943, 10, 12.589, 15.849, 31.623, 100}, []float64{0.873, 0.951, 0.958, 0.896, 0.519, 0.160}},
	} {
		for i, f := range c.f {
			if got := c.w.Gain(f); math.Abs(got-c.want[i]) > 0.001 {
				t.Errorf("%s at %g Hz is %.4f, want %.3f", c.name, f, got, c.want[i])
			}
		}
	}
}
