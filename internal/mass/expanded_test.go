package mass_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

// standard is the standard uncertainty of a figure of the items.
func standard(items []mass.Item, f mass.Figure) float64 {
	u, _ := mass.Uncertainty(items, f)
	return u
}

// One part of 1000 ± 100 g is known within 100 g, not within 2·100/√3 = 115 g.
func TestExpandedOfOneSource(t *testing.T) {
	items := []mass.Item{{Mass: 1, MassU: mass.Rectangular(0.1)}}
	if _, plus := mass.Uncertainty(items, mass.Total(items, nil)); math.Abs(plus-0.1) > 1e-15 {
		t.Errorf("± %v, want 0.1", plus)
	}
	// Two like it, not of one type: 2·√2·100/√3 = 163 g, less than 200 g.
	items = append(items, mass.Item{Mass: 1, MassU: mass.Rectangular(0.1), MassSource: 1})
	if _, plus := mass.Uncertainty(items, mass.Total(items, nil)); math.Abs(plus-0.2*math.Sqrt(2./3)) > 1e-15 {
		t.Errorf("± %v, want %v", plus, 0.2*math.Sqrt(2./3))
	}
	// Two of one type are off by as much.
	items[1].MassSource = 0
	if _, plus := mass.Uncertainty(items, mass.Total(items, nil)); math.Abs(plus-0.2) > 1e-15 {
		t.Errorf("± %v, want 0.2", plus)
	}
}

// What is shown is never more than the worst that the half-widths can do, which
// is tried out here corner by corner, and never less than the smaller of that
// and twice the standard uncertainty. Totals and supports are linear in the
// masses, so the corners are exact.
func TestExpandedAgainstEveryCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sources := rapid.IntRange(1, 6).Draw(t, "sources")
		half := make([]float64, sources) // share of a mass
		for i := range half {
			half[i] = math.Pow(10, rapid.Float64Range(-4, -0.5).Draw(t, "half"))
		}
		draw := func(name string) []mass.Item {
			items := make([]mass.Item, rapid.IntRange(1, 8).Draw(t, name))
			for i := range items {
				it := &items[i]
				it.MassSource = rapid.IntRange(0, sources-1).Draw(t, "source")
				it.Mass = rapid.Float64Range(0.01, 5).Draw(t, "mass")
				it.Place.X = rapid.Float64Range(-0.5, 1.5).Draw(t, "x")
				it.MassU = mass.Rectangular(half[it.MassSource] * it.Mass)
			}
			return items
		}
		a, b := draw("a"), draw("b")
		off := func(items []mass.Item, corner int) []mass.Item {
			out := append([]mass.Item(nil), items...)
			for i := range out {
				h := half[out[i].MassSource] * out[i].Mass
				if corner>>out[i].MassSource&1 == 1 {
					h = -h
				}
				out[i].Mass += h
			}
			return out
		}
		for name, figure := range map[string]func([]mass.Item) mass.Figure{
			"total":   func(it []mass.Item) mass.Figure { return mass.Total(it, nil) },
			"support": func(it []mass.Item) mass.Figure { return mass.Support(it, nil, 1.1, 0) },
		} {
			worst, worstDifference := 0.0, 0.0
			value := figure(a).Value
			difference := figure(b).Value - value
			for corner := range 1 << sources {
				va, vb := figure(off(a, corner)).Value, figure(off(b, corner)).Value
				worst = max(worst, math.Abs(va-value))
				worstDifference = max(worstDifference, math.Abs(vb-va-difference))
			}
			u, plus := mass.Uncertainty(a, figure(a))
			check(t, name, plus, u, worst)
			var d mass.Budget
			d.Charge(b, figure(b), 1)
			d.Charge(a, figure(a), -1)
			check(t, name+", difference", d.Expanded(), d.Standard(), worstDifference)
		}
	})
}

func check(t *rapid.T, name string, plus, u, worst float64) {
	if want := min(2*u, worst); math.Abs(plus-want) > 1e-9*(worst+1e-3) {
		t.Errorf("%s: ± %v, want the smaller of %v and %v", name, plus, 2*u, worst)
	}
}

// Every figure is bounded so, with doubts in places too: never below the
// standard uncertainty, never above twice that, and never above the worst case.
func TestExpandedIsBounded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, share := system(t)
		for name, f := range map[string]mass.Figure{
			"total": mass.Total(items, share), "centre": mass.Centre(items, share, mass.Z),
			"inertia": mass.CentralInertia(items, share, mass.Y),
			"lever":   mass.LeverMass(items, share, stand.pivot, stand.end),
		} {
			var b mass.Budget
			b.Charge(items, f, 1)
			u, plus := b.Standard(), b.Expanded()
			worst := 0.0 // with every half-width in full, along each axis
			for i := range len(items) + 1 {
				worst += mass.HalfWidth(math.Abs(b.MassPart(i)))
			}
			places := make(map[int]mass.Vec)
			for i := range items {
				_, dp := f.Slopes(items, i)
				n := items[i].PlaceSource
				places[n] = places[n].Add(each(dp, items[i].PlaceU))
			}
			for _, p := range places {
				worst += mass.HalfWidth(math.Abs(p.X) + math.Abs(p.Y) + math.Abs(p.Z))
			}
			if want := min(2*u, worst); math.Abs(plus-want) > 1e-9*(want+1e-12) || plus < u {
				t.Errorf("%s: ± %v, want the smaller of 2 · %v and %v", name, plus, u, worst)
			}
		}
	})
}
