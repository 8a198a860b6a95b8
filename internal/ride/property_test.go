package ride_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
)

// loaded draws a bike with a load: up to a dozen bodies above the ground
// between or a little beyond the wheels.
func loaded(t *rapid.T) (items []mass.Item, rear, front float64) {
	rear = rapid.Float64Range(-1, 1).Draw(t, "rear")
	front = rear + rapid.Float64Range(0.7, 2).Draw(t, "wheelbase")
	n := rapid.IntRange(1, 12).Draw(t, "items")
	for range n {
		items = append(items, mass.Item{
			Mass: rapid.Float64Range(0.1, 80).Draw(t, "mass"),
			Place: mass.Vec{
				X: rear + rapid.Float64Range(-0.3, 1.5).Draw(t, "x"),
				Y: rapid.Float64Range(-0.4, 0.4).Draw(t, "y"),
				Z: rapid.Float64Range(0.2, 1.5).Draw(t, "z"),
			},
			MassU: rapid.Float64Range(0, 0.5).Draw(t, "mass u"), MassSource: rapid.IntRange(0, n).Draw(t, "mass source"),
			PlaceU: mass.Vec{X: rapid.Float64Range(0, 0.03).Draw(t, "place u"), Y: rapid.Float64Range(0, 0.03).Draw(t, "place u, sideways"), Z: rapid.Float64Range(0, 0.03).Draw(t, "place u, up")}, PlaceSource: rapid.IntRange(0, n).Draw(t, "place source"),
		})
	}
	return items, rear, front
}

var (
	gradient     = rapid.Float64Range(-0.5, 0.5)
	deceleration = rapid.Float64Range(-0.5, 1)
)

// The loads, the force along the road, the weight and d'Alembert's force are in
// balance: along the road, square to it, and about any point.
func TestBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, rear, front := loaded(t)
		g, d := gradient.Draw(t, "gradient"), deceleration.Draw(t, "deceleration")
		l := ride.Between(items, rear, front).Loads(g, d)
		m := mass.Sum(items, nil)
		sin, cos := math.Sincos(math.Atan(g))
		// In units of kg g, x up the road: forces with the points they act at.
		type force struct{ at, f mass.Vec }
		forces := []force{
			{mass.Vec{X: rear}, mass.Vec{Z: l.Rear.Value}},
			{mass.Vec{X: front}, mass.Vec{Z: l.Front.Value}},
			{m.Centre(), mass.Vec{X: -m.M * sin, Z: -m.M * cos}},
			{m.Centre(), mass.Vec{X: m.M * d}},
			{mass.Vec{X: rear}, mass.Vec{X: m.M * (sin - d)}}, // drive or brakes, at either contact
		}
		about := mass.Vec{X: rapid.Float64Range(-3, 3).Draw(t, "about x"), Z: rapid.Float64Range(-3, 3).Draw(t, "about z")}
		var sum mass.Vec
		moment := 0.0
		for _, f := range forces {
			sum = sum.Add(f.f)
			r := f.at.Sub(about)
			moment += r.Z*f.f.X - r.X*f.f.Z
		}
		if sum.Norm() > 1e-9*m.M || math.Abs(moment) > 1e-8*m.M {
			t.Errorf("forces %v, moment %v are left over", sum, moment)
		}
		if got := l.Front.Value + l.Rear.Value; math.Abs(got-m.M*cos) > 1e-9*m.M {
			t.Errorf("loads add up to %v, want %v", got, m.M*cos)
		}
	})
}

// At its own limit each wheel's load is 0, and the tyre at the edge of grip
// pushes with just its grip.
func TestLimitsAreLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, rear, front := loaded(t)
		s := ride.Between(items, rear, front)
		m := mass.Sum(items, nil)
		g := gradient.Draw(t, "gradient")
		if r := s.Loads(g, s.Braking(nil, g, 1).Lift.Value).Rear.Value; math.Abs(r) > 1e-9*m.M {
			t.Errorf("rear load at the braking limit is %v kg", r)
		}
		grip := rapid.Float64Range(0.05, 1.2).Draw(t, "grip")
		b := s.Braking(items, g, grip)
		if first := min(b.Lift.Value, b.Slip.Value); math.Abs(b.First.Value-first) > 1e-12*(1+math.Abs(first)) || b.Slips != (b.First.Value == b.Slip.Value) {
			t.Errorf("braking: first is %v of lift %v and slip %v", b.First.Value, b.Lift.Value, b.Slip.Value)
		}
		// At the edge of grip what slows the bike along the road, less what the
		// slope does, is the grip times the loads.
		sin, _ := math.Sincos(math.Atan(g))
		l := s.Loads(g, b.Slip.Value)
		if push := (b.Slip.Value - sin) * m.M; math.Abs(push-grip*(l.Front.Value+l.Rear.Value)) > 1e-9*m.M {
			t.Errorf("the tyres push %v kg of %v", push, grip*(l.Front.Value+l.Rear.Value))
		}
		c := s.Climbing(items, grip)
		if f := s.Loads(c.Lift.Value, 0).Front.Value; math.Abs(f) > 1e-9*m.M {
			t.Errorf("front load where it lifts is %v kg", f)
		}
		if x := m.Centre().X; x < front {
			if first := min(c.Lift.Value, c.Slip.Value); c.First.Value != first && math.Abs(c.First.Value-first) > 1e-9*(1+math.Abs(first)) {
				t.Errorf("first is %v of lift %v and slip %v", c.First.Value, c.Lift.Value, c.Slip.Value)
			}
		}
		if slip := c.Slip.Value; !math.IsInf(slip, 1) {
			sin, _ := math.Sincos(math.Atan(slip))
			if r := s.Loads(slip, 0).Rear.Value; math.Abs(grip*r-m.M*sin) > 1e-8*m.M {
				t.Errorf("grip gives %v, the climb takes %v kg", grip*r, m.M*sin)
			}
			// A little steeper it slips.
			steeper := slip + 0.01
			sin, _ = math.Sincos(math.Atan(steeper))
			if r := s.Loads(steeper, 0).Rear.Value; grip*r >= m.M*sin {
				t.Errorf("at %v beyond %v it still grips", steeper, slip)
			}
		}
	})
}

// Leaning by the lean brings the centre of mass over the line of contact, and
// moving the mass across brings it into the middle plane.
func TestLeanBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, rear, front := loaded(t)
		s := ride.Between(items, rear, front)
		c := mass.Sum(items, nil).Centre()
		sin, cos := math.Sincos(s.Lean().Value)
		if y := cos*c.Y - sin*c.Z; math.Abs(y) > 1e-12 {
			t.Errorf("leaning, the centre is %v m off", y)
		}
		apart := rapid.Float64Range(0.1, 1).Draw(t, "apart")
		m := s.Rebalance(apart).Value
		moved := append(slices.Clone(items),
			mass.Item{Mass: -m, Place: mass.Vec{Y: apart / 2}}, mass.Item{Mass: m, Place: mass.Vec{Y: -apart / 2}})
		if y := mass.Sum(moved, nil).S.Y; math.Abs(y) > 1e-9 {
			t.Errorf("rebalanced, a moment of %v kg m is left", y)
		}
	})
}

// figures are all figures of a system.
func figures(items []mass.Item, rear, front, g, d, grip float64) map[string]mass.Figure {
	s := ride.Between(items, rear, front)
	l, c := s.Loads(g, d), s.Climbing(items, grip)
	return map[string]mass.Figure{
		"braking": s.Braking(items, g, grip).Lift, "front": l.Front, "rear": l.Rear, "lift": c.Lift, "slip": c.Slip,
		"lean": s.Lean(), "rebalance": s.Rebalance(0.4),
	}
}

// Every figure carries the doubt that moving one source at a time by finite
// steps gives.
func TestDoubtAgainstFiniteDifferences(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		items, rear, front := loaded(t)
		g, d := gradient.Draw(t, "gradient"), deceleration.Draw(t, "deceleration")
		grip := rapid.Float64Range(0.05, 0.4).Draw(t, "grip") // away from the pole of the slip
		all := func(items []mass.Item) map[string]mass.Figure { return figures(items, rear, front, g, d, grip) }
		variance := map[string]float64{}
		const step = 1e-4
		charge := func(move func(it *mass.Item, by float64) bool) {
			up, down := slices.Clone(items), slices.Clone(items)
			any := false
			for i := range items {
				any = move(&up[i], step) || any
				move(&down[i], -step)
			}
			if !any {
				return
			}
			a, b := all(up), all(down)
			for name := range a {
				slope := (a[name].Value - b[name].Value) / (2 * step)
				variance[name] += slope * slope
			}
		}
		for source := range 13 {
			charge(func(it *mass.Item, by float64) bool {
				if it.MassSource == source {
					it.Mass += by * it.MassU
				}
				return it.MassSource == source
			})
			for axis := range 3 {
				charge(func(it *mass.Item, by float64) bool {
					if it.PlaceSource != source {
						return false
					}
					*[]*float64{&it.Place.X, &it.Place.Y, &it.Place.Z}[axis] += by * [...]float64{it.PlaceU.X, it.PlaceU.Y, it.PlaceU.Z}[axis]
					return true
				})
			}
		}
		for name, f := range all(items) {
			got, _ := mass.Uncertainty(items, f)
			want := math.Sqrt(variance[name])
			if math.Abs(got-want) > 1e-5*(1e-3+want) {
				t.Errorf("%s ± %v, by finite differences %v", name, got, want)
			}
		}
	})
}

// Which of lift and slip comes first is left open when the doubt is larger
// than what is between them.
func TestClimbingDecided(t *testing.T) {
	items := []mass.Item{{Mass: 90, Place: mass.Vec{X: 0.4, Z: 1}, PlaceU: mass.Alike(0.01)}}
	s := ride.Between(items, 0, 1)
	// a/h = 0.4, with ± 2 · 0.01 · sqrt(1 + 0.4²) = 0.0215.
	for grip, want := range map[float64]bool{0.37: true, 0.385: false, 0.4: false, 0.415: false, 0.43: true} {
		if c := s.Climbing(items, grip); c.Decided != want {
			t.Errorf("at a grip of %v decided: %v, want %v", grip, c.Decided, want)
		}
	}
}

func TestCurve(t *testing.T) {
	items := []mass.Item{{Mass: 90, Place: mass.Vec{X: 0.4, Z: 1}}}
	s := ride.Between(items, 0, 1)
	list := s.Curve(-0.2, 0.2, 5, 0.1)
	if len(list) != 5 {
		t.Fatalf("%d points, want 5", len(list))
	}
	for i, want := range []float64{-0.2, -0.1, 0, 0.1, 0.2} {
		near(t, "gradient", list[i].Gradient, want, 1e-15)
		near(t, "front", list[i].Front.Value, s.Loads(list[i].Gradient, 0.1).Front.Value, 0)
	}
	if one := s.Curve(0.1, 0.2, 1, 0); len(one) != 1 || one[0].Gradient != 0.1 {
		t.Errorf("a curve of one point: %v", one)
	}
	if none := s.Curve(0, 1, 0, 0); len(none) != 0 {
		t.Errorf("a curve of no points: %v", none)
	}
}

// A posed bike is stood on its own contact points.
func TestOn(t *testing.T) {
	items := []mass.Item{{Mass: 90, Place: mass.Vec{X: 0.4, Z: 1}}}
	bike := &geometry.Bike{RearContact: mass.Vec{X: -0.1}, FrontContact: mass.Vec{X: 0.9}}
	got := ride.On(items, bike).Loads(0, 0)
	near(t, "front", got.Front.Value, 45, 1e-12)
	near(t, "rear", got.Rear.Value, 45, 1e-12)
}
