package road_test

import (
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/road"
)

// Two builds at one speed and road, every figure and every difference with its ±.
func BenchmarkTwoBuilds(b *testing.B) {
	x, y := rough(3.2), rough(1.4)
	for b.Loop() {
		compare(b, x, y, []float64{6})
	}
}

// The curves of two builds over 30 speeds.
func BenchmarkCurves(b *testing.B) {
	x, y := rough(3.2), rough(1.4)
	speeds := make([]float64, 30)
	for i := range speeds {
		speeds[i] = 1 + 0.5*float64(i)
	}
	for b.Loop() {
		compare(b, x, y, speeds)
	}
}

func compare(t testing.TB, x, y *road.Bike, speeds []float64) {
	m, n := model(t, x), model(t, y)
	m.Modes()
	n.Modes()
	var own, other mass.Budget
	for _, v := range speeds {
		p, q := at(t, m, v, gravel()), at(t, n, v, gravel())
		for k := range p.Figures {
			if !p.Figures[k].There {
				continue
			}
			own.Reset()
			other.Reset()
			p.Figures[k].Charge(&own, -1)
			q.Figures[k].Charge(&other, 1)
			own.Expanded()
			other.Expanded()
			own.Add(&other, 1)
			own.Expanded()
		}
	}
}
