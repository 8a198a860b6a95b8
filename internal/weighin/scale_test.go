package weighin_test

import (
	"math"
	"os"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/mass"
	"steelyard/internal/weighin"
)

// bike is what stands on the scale in a test.
type bike struct {
	wheelbase, rear, front float64
	bodies                 []mass.Item
}

func (b *bike) stand() weighin.Stand {
	return weighin.Stand{Wheelbase: b.wheelbase, RearRadius: b.rear, FrontRadius: b.front}
}

// onScale puts the bike on two level supports, the front one rise above the
// rear, and returns what each wheel presses with. It turns every body about the
// rear axle until the front wheel stands on its support, and takes moments about
// the axles: it knows nothing of the formula that it is to check. Turned is a
// further pitch, of a floor that is not level.
func (b *bike) onScale(rise, turned float64) (front, rear float64) {
	axle, other := mass.Vec{Z: b.rear}, mass.Vec{X: b.wheelbase, Z: b.front}
	low, high := -1.5, 1.5
	for range 60 {
		mid := (low + high) / 2
		if axle.Z+other.Sub(axle).PitchBy(mid).Z < b.front+rise {
			low = mid
		} else {
			high = mid
		}
	}
	pitch := (low+high)/2 + turned
	span := other.Sub(axle).PitchBy(pitch).X
	for _, it := range b.bodies {
		front += it.Mass * it.Place.Sub(axle).PitchBy(pitch).X / span
		rear += it.Mass
	}
	return front, rear - front
}

// reading reads the scale under one wheel.
func (b *bike) reading(front bool, rise, step float64) weighin.Reading {
	f, r := b.onScale(rise, 0)
	if !front {
		f = r
	}
	return weighin.Reading{Front: front, Rise: rise, Mass: f, MassU: mass.Resolution(step)}
}

// benchmark is the bicycle with rider of Meijaard et al. (2007), with z up.
func benchmark(t testing.TB) *bike {
	t.Helper()
	text, err := os.ReadFile("../../testdata/mass/meijaard2007.json")
	if err != nil {
		t.Fatal(err)
	}
	var table struct {
		Wheelbase float64 `json:"wheelbase_m"`
		Bodies    []struct {
			Mass float64 `json:"mass_kg"`
			X    float64 `json:"x_m"`
			Z    float64 `json:"z_m"`
		} `json:"bodies"`
	}
	if err := json.Unmarshal(text, &table); err != nil {
		t.Fatal(err)
	}
	if len(table.Bodies) != 4 {
		t.Fatalf("%d bodies, want 4", len(table.Bodies))
	}
	b := &bike{wheelbase: table.Wheelbase, rear: 0.3, front: 0.35}
	for i, p := range table.Bodies {
		b.bodies = append(b.bodies, mass.Item{Mass: p.Mass, Place: mass.Vec{X: p.X, Z: -p.Z}, MassSource: i, PlaceSource: i})
	}
	return b
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.15g, want %.15g ± %g", what, got, want, tolerance)
	}
}
