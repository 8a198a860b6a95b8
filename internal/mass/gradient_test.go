package mass_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/diff/fd"

	"steelyard/internal/mass"
)

// Every figure's gradient, for every mass and every coordinate of every item,
// against central differences.
//
// The figures are quotients and roots of polynomials in numbers around 1. A
// step h of 1e-5 leaves a truncation error of the order of h² = 1e-10 and a
// rounding error of the order of 1e-16/h = 1e-11 times the largest figure
// (about 100 kg): 1e-8 of the scale is beyond both, and far below a wrong term.
func TestGradients(t *testing.T) {
	formula := fd.Central
	formula.Step = 1e-5
	items := tourer()
	for name, figure := range figures() {
		f := figure(items)
		// x holds mass, x, y, z of each item.
		x := make([]float64, 0, 4*len(items))
		want := make([]float64, 0, 4*len(items))
		for i, it := range items {
			m, p := f.Slopes(items, i)
			x = append(x, it.Mass, it.Place.X, it.Place.Y, it.Place.Z)
			want = append(want, m, p.X, p.Y, p.Z)
		}
		got := fd.Gradient(nil, func(x []float64) float64 {
			there := tourer()
			for i := range there {
				there[i].Mass = x[4*i]
				there[i].Place = mass.Vec{X: x[4*i+1], Y: x[4*i+2], Z: x[4*i+3]}
			}
			f := figure(there)
			return f.Value
		}, x, &fd.Settings{Formula: formula})
		scale, moved := 1+math.Abs(f.Value), false
		for j := range got {
			if math.Abs(got[j]-want[j]) > 1e-8*scale {
				t.Errorf("%s: slope to %s of item %d is %.10g, differences give %.10g",
					name, [...]string{"mass", "x", "y", "z"}[j%4], j/4, want[j], got[j])
			}
			moved = moved || want[j] != 0
		}
		// The half share has no part off the middle plane.
		if !moved && name != "centre of half y" {
			t.Errorf("%s: nothing moves it", name)
		}
	}
}
