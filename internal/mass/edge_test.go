package mass_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

// Nothing has no centre, no inertia and no load, and all of it is 0; only a
// ratio to nothing is not a number.
func TestNothing(t *testing.T) {
	massless := []mass.Item{{Place: mass.Vec{X: 1}, Spread: mass.Ring(0.3), PlaceU: mass.Alike(0.1)}}
	for name, figure := range figures() {
		for what, items := range map[string][]mass.Item{
			"no items": nil, "a massless item": massless,
		} {
			f := figure(items)
			if name == "front share" || name == "sprung to unsprung" || name == "half to fore" {
				if !math.IsNaN(f.Value) {
					t.Errorf("%s of %s = %v, want NaN", name, what, f.Value)
				}
			} else if f.Value != 0 {
				t.Errorf("%s of %s = %v, want 0", name, what, f.Value)
			}
			if u := standard(items, f); u != 0 {
				t.Errorf("%s of %s ± %v, want 0", name, what, u)
			}
		}
	}
	full := tourer()
	zero := make(mass.Share, len(full))
	f := mass.Gyration(full, zero, mass.Y)
	near(t, "gyration of a share without mass", f.Value, 0, 0)
	f = mass.Centre(full, zero, mass.Y)
	near(t, "centre of a share without mass", f.Value, 0, 0)
}

// Coincident supports, and a lever without length.
func TestDegenerateFrames(t *testing.T) {
	items := tourer()
	for what, f := range map[string]mass.Figure{
		"supports at one place":      mass.Support(items, nil, 0.5, 0.5),
		"lever without length":       mass.LeverMass(items, nil, mass.Vec{X: 1, Z: 2}, mass.Vec{X: 1, Z: 2}),
		"lever with its length in y": mass.LeverMass(items, nil, mass.Vec{X: 1}, mass.Vec{X: 1, Y: 3}),
	} {
		if f.Value != 0 || standard(items, f) != 0 {
			t.Errorf("%s: %v ± %v, want 0", what, f.Value, standard(items, f))
		}
	}
}

// Far from the origin the inertia of a single point is rounding, of either
// sign. Its root must stay a number.
func TestGyrationOfAPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items := []mass.Item{{
			Mass:  rapid.Float64Range(0.001, 100).Draw(t, "mass"),
			Place: vec(t, "place", 10), MassU: 0.1, PlaceU: mass.Alike(0.1),
		}}
		for name, axis := range axes {
			f := mass.Gyration(items, nil, axis)
			if f.Value != 0 {
				t.Errorf("gyration %s of a point = %v", name, f.Value)
			}
			if u := standard(items, f); math.IsNaN(u) || u != 0 {
				t.Errorf("gyration %s of a point ± %v", name, u)
			}
		}
	})
}

// Whatever numbers come in, figures are combined and charged without a panic,
// and a ratio to 0 or a root of less than 0 is not a number.
func TestCombiningNeverPanics(t *testing.T) {
	odd := rapid.OneOf(
		rapid.SampledFrom([]float64{0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1),
			math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 1, -1}),
		rapid.Float64(),
	)
	rapid.Check(t, func(t *rapid.T) {
		items := []mass.Item{{
			Mass: odd.Draw(t, "mass"), MassU: odd.Draw(t, "u"), PlaceU: mass.Alike(odd.Draw(t, "pu")),
			Place:  mass.Vec{X: odd.Draw(t, "x"), Y: odd.Draw(t, "y"), Z: odd.Draw(t, "z")},
			Spread: mass.Sym{XX: odd.Draw(t, "xx"), XZ: odd.Draw(t, "xz")},
		}, {
			Mass: odd.Draw(t, "mass"), MassU: 1, MassSource: 3, PlaceU: mass.Alike(1), PlaceSource: 2,
		}}
		a, b := mass.Centre(items, nil, mass.X), mass.Total(items, nil)
		for _, f := range []mass.Figure{
			mass.Ratio(a, b), mass.Ratio(b, a), mass.Sqrt(a), mass.Sqrt(mass.Times(-1, b)), mass.Plus(a, b),
			mass.Times(odd.Draw(t, "f"), a), mass.Gyration(items, nil, mass.Z),
			mass.LeverMass(items, nil, items[0].Place, mass.Vec{X: odd.Draw(t, "end")}),
			mass.Support(items, nil, odd.Draw(t, "at"), odd.Draw(t, "other")),
		} {
			var budget mass.Budget
			budget.Charge(items, f, 1)
			budget.Charge(items, f, -1)
			budget.Standard()
			budget.Ranking(mass.Doubts(items), odd.Draw(t, "scale"))
		}
		if r := mass.Ratio(b, mass.Figure{}); !math.IsNaN(r.Value) || standard(items, r) != 0 {
			t.Errorf("ratio to 0 = %v", r.Value)
		}
		if b.Value > 0 {
			if r := mass.Sqrt(mass.Times(-1, b)); !math.IsNaN(r.Value) {
				t.Errorf("root of %v = %v", -b.Value, r.Value)
			}
		}
	})
}
