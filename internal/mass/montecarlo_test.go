package mass_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"

	"steelyard/internal/mass"
)

const draws = 100_000

// Drawn figures scatter as the budget says.
//
// The scatter of 100,000 draws is itself uncertain by 1/√(2 n) = 0.22 % for a
// normal distribution: four times that is 0.9 %. The budget is of first order
// (JCGM 100:2008, 5.1.2); what it leaves out is of the order of the square of
// the doubts, at most (5 % of a mass, 2 cm in a lever of 20 cm)² = 1 % of the
// variance, half of that of the deviation. Together: 1.5 %.
const scatter = 0.015

// throw draws one error a source, in standard uncertainties. Masses are
// rectangular, as half-widths are read, so that the test does not rest on the
// normal distribution; places are normal.
func throw(rng *rand.Rand, masses []float64, places []mass.Vec) {
	for s := range masses {
		masses[s] = math.Sqrt(3) * (2*rng.Float64() - 1)
	}
	for s := range places {
		places[s] = mass.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}
	}
}

// draw fills into with the items as they are when the sources err so.
func draw(into, items []mass.Item, masses []float64, places []mass.Vec) {
	for i, it := range items {
		it.Mass += it.MassU * masses[it.MassSource]
		it.Place = it.Place.Add(each(places[it.PlaceSource], it.PlaceU))
		into[i] = it
	}
}

func TestBudgetAgainstMonteCarlo(t *testing.T) {
	items := tourer()
	all := figures()
	samples := make(map[string][]float64, len(all))
	for name := range all {
		samples[name] = make([]float64, draws)
	}
	rng := rand.New(rand.NewPCG(1, 2))
	drawn := make([]mass.Item, len(items))
	masses, places := make([]float64, 6), make([]mass.Vec, 4)
	for n := range draws {
		throw(rng, masses, places)
		draw(drawn, items, masses, places)
		for name, figure := range all {
			f := figure(drawn)
			samples[name][n] = f.Value
		}
	}
	for name, figure := range all {
		f := figure(items)
		u := standard(items, f)
		mean, got := stat.MeanStdDev(samples[name], nil)
		near(t, name+": standard uncertainty", u, got, scatter*got)
		// The mean moves by second-order terms: a small part of u.
		near(t, name+": mean of the draws", mean, f.Value, 0.1*u+1e-12)
	}
}

// Two systems that share a wheel, a bag whose mass is known badly but is the
// same in both, and a rider whose place is: the difference of each figure
// scatters as its budget says, and less than the two apart would.
func TestDifferenceAgainstMonteCarlo(t *testing.T) {
	a, b := tourer(), tourer()
	// B has its gear in the hub, not at the cranks, and less in the right bag.
	b[3].Mass, b[3].MassU, b[3].MassSource = 3.9, 0.10, 6
	b = append(b[:4:4], b[5:]...)
	b[5].Mass, b[5].MassU = 6.1, 0.30
	shareA, shareB := mass.Share(nil), mass.Share(nil)

	kinds := map[string]func([]mass.Item, mass.Share) mass.Figure{
		"total":      mass.Total,
		"centre x":   func(it []mass.Item, s mass.Share) mass.Figure { return mass.Centre(it, s, mass.X) },
		"centre z":   func(it []mass.Item, s mass.Share) mass.Figure { return mass.Centre(it, s, mass.Z) },
		"inertia y":  func(it []mass.Item, s mass.Share) mass.Figure { return mass.CentralInertia(it, s, mass.Y) },
		"gyration z": func(it []mass.Item, s mass.Share) mass.Figure { return mass.Gyration(it, s, mass.Z) },
		"product":    mass.CentralProduct,
		"rear load":  func(it []mass.Item, s mass.Share) mass.Figure { return mass.Support(it, s, 0, 1.08) },
		"mass at lever": func(it []mass.Item, s mass.Share) mass.Figure {
			return mass.LeverMass(it, s, mass.Vec{X: 0.44, Z: 0.37}, mass.Vec{Z: 0.34})
		},
	}
	samples := make(map[string][]float64, len(kinds))
	rng := rand.New(rand.NewPCG(3, 4))
	drawnA, drawnB := make([]mass.Item, len(a)), make([]mass.Item, len(b))
	masses, places := make([]float64, 7), make([]mass.Vec, 4)
	for range draws {
		throw(rng, masses, places)
		draw(drawnA, a, masses, places)
		draw(drawnB, b, masses, places)
		for name, figure := range kinds {
			fa, fb := figure(drawnA, shareA), figure(drawnB, shareB)
			samples[name] = append(samples[name], fb.Value-fa.Value)
		}
	}
	for name, figure := range kinds {
		fa, fb := figure(a, shareA), figure(b, shareB)
		var d mass.Budget
		d.Charge(b, fb, 1)
		d.Charge(a, fa, -1)
		got := stat.StdDev(samples[name], nil)
		near(t, name+": standard uncertainty of the difference", d.Standard(), got, scatter*got)
		if apart := math.Hypot(standard(a, fa), standard(b, fb)); d.Standard() > 0.8*apart {
			t.Errorf("%s: difference ± %v, hardly less than %v: what both share has not cancelled", name, d.Standard(), apart)
		}
	}
}

// each multiplies axis by axis.
func each(a, b mass.Vec) mass.Vec { return mass.Vec{X: a.X * b.X, Y: a.Y * b.Y, Z: a.Z * b.Z} }
