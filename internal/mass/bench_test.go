package mass_test

import (
	"fmt"
	"testing"

	"steelyard/internal/mass"
)

// parked repeats the tourer to n items, every round with sources of its own.
func parked(n int) ([]mass.Item, mass.Share) {
	items, share := make([]mass.Item, 0, n), make(mass.Share, 0, n)
	for round := 0; len(items) < n; round++ {
		for i, it := range tourer() {
			if len(items) == n {
				break
			}
			it.MassSource += 6 * round
			it.PlaceSource += 4 * round
			items = append(items, it)
			share = append(share, half[i])
		}
	}
	return items, share
}

// BenchmarkAllFigures makes what a report shows of one build, each figure with
// its doubt, and ranks the sources of the total. ns/item says whether the cost
// is linear: it should be about the same at 60 and at 10,000 items.
func BenchmarkAllFigures(b *testing.B) {
	for _, n := range []int{60, 600, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			items, share := parked(n)
			pivot, axle := mass.Vec{X: 0.44, Z: 0.37}, mass.Vec{Z: 0.34}
			doubts := mass.Doubts(items)
			var budget mass.Budget
			b.ReportAllocs()
			for b.Loop() {
				rear := mass.Total(items, share)
				total := mass.Total(items, nil)
				figures := [...]mass.Figure{
					total,
					mass.Centre(items, nil, mass.X), mass.Centre(items, nil, mass.Y), mass.Centre(items, nil, mass.Z),
					mass.Support(items, nil, 1.08, 0), mass.Support(items, nil, 0, 1.08),
					mass.Ratio(mass.Support(items, nil, 1.08, 0), total),
					mass.CentralInertia(items, nil, mass.X), mass.CentralInertia(items, nil, mass.Y),
					mass.CentralInertia(items, nil, mass.Z), mass.CentralProduct(items, nil),
					mass.Gyration(items, nil, mass.X), mass.Gyration(items, nil, mass.Y), mass.Gyration(items, nil, mass.Z),
					rear, mass.LeverMass(items, share, pivot, axle),
					mass.Plus(total, mass.Times(-1, rear)),
					mass.Ratio(mass.Plus(mass.Support(items, nil, 0, 1.08), mass.Times(-1, rear)), rear),
				}
				for i := len(figures) - 1; i >= 0; i-- {
					budget.Reset()
					budget.Charge(items, figures[i], 1)
					sink += budget.Expanded()
				}
				sink += float64(len(budget.Ranking(doubts, 0.0003)))
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/item")
		})
	}
}

// BenchmarkSum is the one pass that every figure makes.
func BenchmarkSum(b *testing.B) {
	for _, n := range []int{60, 10_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			items, share := parked(n)
			for b.Loop() {
				sink += mass.Sum(items, share).M
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/item")
		})
	}
}

// sink keeps results alive.
var sink float64
