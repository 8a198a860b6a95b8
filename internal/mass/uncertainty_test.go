package mass_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

func TestRectangular(t *testing.T) {
	// JCGM 100:2008, 4.3.7: u² = a²/3.
	near(t, "variance of ±6", math.Pow(mass.Rectangular(6), 2), 12, 1e-14)
}

// JCGM 100:2008, 5.2.2, example: ten resistors of 1000 Ω, each calibrated to
// 0.1 Ω against the same standard, in series: 1 Ω, and not 0.32 Ω. Masses that
// share a source add up the same way.
func TestSharedSourceAddsLinearly(t *testing.T) {
	shared, apart := make([]mass.Item, 10), make([]mass.Item, 10)
	for i := range shared {
		shared[i] = mass.Item{Mass: 1000, MassU: 0.1}
		apart[i] = mass.Item{Mass: 1000, MassU: 0.1, MassSource: i}
	}
	near(t, "one source", standard(shared, mass.Total(shared, nil)), 1, 1e-14)
	near(t, "ten sources", standard(apart, mass.Total(apart, nil)), 0.1*math.Sqrt(10), 1e-14)
}

func TestDifferenceOfASystemWithItselfIsExact(t *testing.T) {
	items := tourer()
	for name, figure := range figures() {
		var b mass.Budget
		b.Charge(items, figure(items), 1)
		b.Charge(items, figure(items), -1)
		if v := b.Variance(); v != 0 {
			t.Errorf("%s: variance %v", name, v)
		}
		if r := b.Ranking(mass.Doubts(items), 0); r != nil {
			t.Errorf("%s: advises to weigh %v", name, r)
		}
	}
}

// By hand: two points of 1 and 3 kg, 4 m apart. The centre moves by the part's
// share of the mass, m/M, and by (x - c)/M a kilogram.
func TestCentreBudgetByHand(t *testing.T) {
	items := []mass.Item{
		{Mass: 1, Place: mass.Vec{X: 0}, MassU: 0.04, MassSource: 0, PlaceU: mass.Alike(0.4), PlaceSource: 0},
		{Mass: 3, Place: mass.Vec{X: 4}, MassU: 0.08, MassSource: 1, PlaceU: mass.Alike(0.04), PlaceSource: 1},
	}
	var b mass.Budget
	b.Charge(items, mass.Centre(items, nil, mass.X), 1)
	near(t, "mass of the first", b.MassPart(0), -3./4*0.04, 1e-15)
	near(t, "mass of the second", b.MassPart(1), 1./4*0.08, 1e-15)
	near(t, "place of the first", b.PlacePart(0), 1./4*0.4, 1e-15)
	near(t, "place of the second", b.PlacePart(1), 3./4*0.04, 1e-15)
	near(t, "all", b.Standard(), math.Sqrt(0.03*0.03+0.02*0.02+0.1*0.1+0.03*0.03), 1e-15)
	for _, s := range []int{-1, 2, math.MaxInt} {
		if b.MassPart(s) != 0 || b.PlacePart(s) != 0 {
			t.Errorf("source %d, never seen, has a part", s)
		}
	}
	b.Reset()
	if b.Variance() != 0 {
		t.Error("an emptied budget has variance")
	}
	// What was charged before the reset must not make this look like rounding.
	b.Charge(items, mass.Total(items, nil), 1e20)
	b.Reset()
	b.Charge(items, mass.Total(items, nil), 2)
	near(t, "used again, doubled", b.Standard(), 2*math.Hypot(0.04, 0.08), 1e-15)
}

// A named source that two figures share cancels in their difference, and those
// that they do not add up in quadrature, beside the masses.
func TestNamedSources(t *testing.T) {
	items := []mass.Item{{Mass: 10, MassU: 0.3, MassSource: 2}}
	var a, b mass.Budget
	a.Charge(items, mass.Total(items, nil), 1)
	a.ChargeNamed("air", 0.4)
	if got := a.Standard(); math.Abs(got-0.5) > 1e-15 {
		t.Errorf("0.3 and 0.4 combine to %g, want 0.5", got)
	}
	b.ChargeNamed("air", 0.4)
	b.ChargeNamed("oil", -0.1)
	b.Add(&a, -1)
	if got, want := b.Standard(), math.Hypot(0.3, 0.1); math.Abs(got-want) > 1e-15 {
		t.Errorf("the difference is known within %g, want %g", got, want)
	}
	if b.Named("air") != 0 || b.Named("oil") != -0.1 {
		t.Errorf("air %g, oil %g", b.Named("air"), b.Named("oil"))
	}
	b.Reset()
	if b.Standard() != 0 {
		t.Error("a budget that was emptied is not empty")
	}
}

// Names may be charged in any order, in pieces, and through another budget: what
// each source owes is the same, and so is the whole.
func TestNamesInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		names := []string{"a", "b", "ba", "c", "d e", "d f"}
		want := map[string]float64{}
		var all, part mass.Budget
		for range rapid.IntRange(0, 30).Draw(t, "n") {
			name := rapid.SampledFrom(names).Draw(t, "name")
			v := float64(rapid.IntRange(-3, 3).Draw(t, "v"))
			want[name] += v
			switch rapid.IntRange(0, 2).Draw(t, "how") {
			case 0:
				all.ChargeNamed(name, v)
			case 1:
				all.ChargeNamed(name, v/2)
				all.ChargeNamed(name, v/2)
			default:
				part.Reset()
				part.ChargeNamed(name, v)
				part.ChargeNamed("c", 1)
				want["c"] += 1
				all.Add(&part, 1)
			}
		}
		sum := 0.0
		for _, name := range names {
			if got := all.Named(name); got != want[name] {
				t.Fatalf("%s owes %v, want %v", name, got, want[name])
			}
			sum += want[name] * want[name]
		}
		if got := all.Variance(); math.Abs(got-sum) > 1e-9*sum {
			t.Fatalf("variance %v, want %v", got, sum)
		}
	})
}
