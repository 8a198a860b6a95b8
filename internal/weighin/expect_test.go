package weighin_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/weighin"
)

// What the scale should show is a matter of levers: level, a wheel carries the
// moment about the other contact over the wheelbase. Raised, the centre is turned
// about the rear axle together with the bike; here the points are turned one by
// one, and not the sums.
func TestExpectedReadings(t *testing.T) {
	bike, items := tourer(t)
	w := &document.WeighIn{ID: "w", Name: "w", Readings: []document.Reading{
		{Wheel: "front", Mass: 0, Resolution: 50}, {Wheel: "rear", Mass: 9999, Resolution: 50},
		{Wheel: "rear", Raised: "front", Height: 400, HeightPlus: 2, Resolution: 50},
		{Wheel: "front", Raised: "rear", Height: 300, HeightPlus: 2, Resolution: 50},
		{Wheel: "front", Raised: "front", Height: 9000, HeightPlus: 2, Resolution: 50}, // no bike is that long
	}}
	got := weighin.Expect(w, bike, items)
	if len(got) != 4 {
		t.Fatalf("%d readings are told: %+v", len(got), got)
	}
	step := bike.FrontRadius - bike.RearRadius
	for n, rise := range []float64{0, 0, 0.4, -0.3} {
		d := math.Hypot(bike.Wheelbase, step)
		theta := math.Asin((step+rise)/d) - math.Asin(step/d)
		apart := d * math.Cos(math.Asin((step+rise)/d))
		var front, rear float64
		for _, it := range items {
			x := it.Place.X*math.Cos(theta) - (it.Place.Z-bike.RearRadius)*math.Sin(theta)
			front += it.Mass * x / apart
			rear += it.Mass * (1 - x/apart)
		}
		want := front
		if n == 1 || n == 2 {
			want = rear
		}
		if math.Abs(got[n].Mass.Value-want) > 1e-9 || got[n].Line != n {
			t.Errorf("reading %d: %+v, want %g", n, got[n], want)
		}
	}
	if weighin.Expect(w, bike, nil) != nil {
		t.Error("without a mass something is expected")
	}
}

// The ± covers what happens when masses are drawn anew: of 2000 bikes, about 95
// in 100 show a reading within it (a binomial's five sigma either way).
func TestExpectedCoversDraws(t *testing.T) {
	bike, items := tourer(t)
	for i := range items {
		items[i].PlaceU = mass.Vec{} // only masses are drawn
	}
	w := &document.WeighIn{ID: "w", Name: "w", Readings: []document.Reading{{Wheel: "front", Mass: 1, Resolution: 0.1}}}
	want := weighin.Expect(w, bike, items)[0].Mass
	rng := rand.New(rand.NewPCG(3, 4))
	const draws = 2000
	s := weighin.StandOf(&document.WeighIn{}, bike)
	within := 0
	for range draws {
		drawn := append([]mass.Item(nil), items...)
		for i := range drawn {
			drawn[i].Mass += math.Sqrt(3) * drawn[i].MassU * (2*rng.Float64() - 1)
		}
		b := *bike
		b.Wheelbase += math.Sqrt(3) * s.WheelbaseU * (2*rng.Float64() - 1)
		x := weighin.Expect(w, &b, drawn)[0].Mass.Value
		// a floor out of level pitches the bike
		var up float64
		for _, it := range drawn {
			up += it.Mass * (it.Place.Z - b.RearRadius)
		}
		x -= up / b.Wheelbase * math.Sqrt(3) * s.LevelU * (2*rng.Float64() - 1)
		if math.Abs(x-want.Value) <= want.Plus() {
			within++
		}
	}
	if share := float64(within) / draws; share < 0.925 || share > 0.99 {
		t.Errorf("%.3f of the draws lie within %g ± %g", share, want.Value, want.Plus())
	}
}
