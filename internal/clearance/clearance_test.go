package clearance_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/clearance"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// bike is worked out by hand: wheels of 350 mm, axles 1100 mm apart, the pivot
// 400 mm ahead of the rear axle and level with it, a vertical steering axis, and
// 100 mm of travel at both ends of which 20 are in use.
func bike() *geometry.Bike {
	return &geometry.Bike{
		RearRadius: 0.35, FrontRadius: 0.35, RearRim: 0.30, FrontRim: 0.30,
		RearAxle: mass.Vec{Z: 0.35}, FrontAxle: mass.Vec{X: 1.1, Z: 0.35},
		HeadTop: mass.Vec{X: 1.05, Z: 0.95}, HeadBottom: mass.Vec{X: 1.05, Z: 0.80},
		Pivot: mass.Vec{X: 0.4, Z: 0.35}, BottomBracket: mass.Vec{X: 0.45, Z: 0.3},
		RearSprung: true, FrontSprung: true, RearTravel: 0.1, FrontTravel: 0.1, RearSag: 0.02, FrontSag: 0.02,
	}
}

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s: %.6f m, want %.6f m", what, got, want)
	}
}

// With both ends down by the same 80 mm the frame stays level and comes down by
// 80 mm: 190 mm under a box of 160 mm whose middle is at 270 mm become 110 mm.
func TestGroundWithBothEndsDown(t *testing.T) {
	box := clearance.Solid{ID: "box", Place: mass.Vec{X: 0.45, Z: 0.27}, Half: mass.Vec{X: 0.085, Y: 0.045, Z: 0.08}}
	got, ok := clearance.Ground(bike(), []clearance.Solid{box}, 0)
	if !ok {
		t.Fatal("nothing told")
	}
	same(t, "in the pose", got.Pose.Value, 0.19)
	same(t, "at least", got.Least.Value, 0.11)
	same(t, "rear travel", got.Rear, 0.1)
	same(t, "front travel", got.Front, 0.1)
}

// With the fork alone down by 80 mm, the nose comes down by atan(80/1100): a
// point at the rear axle's height and 550 mm ahead of it comes down by half of
// 80 mm times the cosine. Here it is a ring of 100 mm on a bike that is rigid
// at the rear.
func TestGroundWithTheForkDown(t *testing.T) {
	b := bike()
	b.RearSprung, b.RearTravel, b.RearSag = false, 0, 0
	ring := clearance.Solid{ID: "ring", Place: mass.Vec{X: 0.55, Z: 0.35}, Radius: 0.1}
	got, _ := clearance.Ground(b, []clearance.Solid{ring}, 0)
	same(t, "in the pose", got.Pose.Value, 0.25)
	same(t, "at least", got.Least.Value, 0.35-0.55*0.08/math.Hypot(1.1, 0.08)-0.1)
}

// The lowest of several is told, by its name.
func TestGroundTellsTheLowest(t *testing.T) {
	list := []clearance.Solid{
		{ID: "ring", Place: mass.Vec{X: 0.45, Z: 0.3}, Radius: 0.065},
		{ID: "plate", Place: mass.Vec{X: 0.45, Z: 0.2}, Half: mass.Vec{X: 0.08, Z: 0.03}},
	}
	got, _ := clearance.Ground(bike(), list, 0)
	if got.Pose.ID != "plate" {
		t.Errorf("%q is told as the lowest", got.Pose.ID)
	}
	if _, ok := clearance.Ground(bike(), nil, 0); ok {
		t.Error("something is told of nothing")
	}
}

// A bag whose foot is at 900 mm over the wheel: at full length of a suspension
// without sag 200 mm over the tyre. At full travel the axle is 100 mm up and
// √(400² - 100²) mm behind the pivot, right under the middle of the bag: 100 mm.
func TestTyreThroughTheTravel(t *testing.T) {
	b := bike()
	b.RearSag = 0
	bag := clearance.Solid{ID: "bag", Place: mass.Vec{X: 0.4 - math.Sqrt(0.15), Z: 1}, Half: mass.Vec{X: 0.2, Y: 0.1, Z: 0.1}}
	got := clearance.Tyre(b, bag, 0)
	same(t, "in the pose", got.Pose.Value, 0.2)
	same(t, "at least", got.Least.Value, 0.1)
	same(t, "rear travel", got.Rear, 0.1)
	if bag.Place.Z = 0.85; clearance.Tyre(b, bag, 0).Least.Value >= 0 {
		t.Error("150 mm lower there is still room")
	}
	bag.Swings = true
	if got := clearance.Tyre(b, bag, 0); got.Least != got.Pose {
		t.Error("what the swingarm carries moves against the wheel")
	}
}

// Panniers hang beside the wheel: with their inner side 110 mm out they are 85 mm
// from a tyre of 50 mm.
func TestTyreBeside(t *testing.T) {
	bag := clearance.Solid{Place: mass.Vec{Y: 0.18, Z: 0.5}, Half: mass.Vec{X: 0.15, Y: 0.07, Z: 0.17}}
	same(t, "beside", clearance.Tyre(bike(), bag, 0).Least.Value, 0.085)
}

// A box ahead of the tyre, turned by a quarter, has its long side up.
func TestTyreBeforeATurnedBox(t *testing.T) {
	b := bike()
	b.RearSprung = false
	box := clearance.Solid{Place: mass.Vec{X: 0.45, Z: 0.35}, Half: mass.Vec{X: 0.09, Z: 0.05}, Pitch: math.Pi / 2}
	same(t, "turned", clearance.Tyre(b, box, 0).Pose.Value, 0.05)
	box.Pitch = 0
	same(t, "not turned", clearance.Tyre(b, box, 0).Pose.Value, 0.01)
}

// A knee of 50 mm, 200 mm out of the middle, beside a bag of 160 mm: 70 mm. One of
// 320 mm is in the way by 10 mm. Over a corner the way is a hypotenuse: 30 and
// 40 mm off are 50 mm.
func TestKnees(t *testing.T) {
	bag := clearance.Solid{ID: "bag", Place: mass.Vec{X: 0.6, Z: 0.8}, Half: mass.Vec{X: 0.1, Y: 0.08, Z: 0.1}}
	knee := clearance.Knee{At: mass.Vec{X: 0.6, Y: 0.2, Z: 0.8}, Radius: 0.05}
	far := clearance.Knee{At: mass.Vec{X: 0.2, Y: -0.2, Z: 0.8}, Radius: 0.05}
	got, ok := clearance.Knees(bag, []clearance.Knee{far, knee}, 0)
	if !ok {
		t.Fatal("nothing told")
	}
	same(t, "narrow", got.Value, 0.07)
	bag.Half.Y = 0.16
	got, _ = clearance.Knees(bag, []clearance.Knee{knee}, 0)
	same(t, "wide", got.Value, -0.01)
	if got.Value >= 0 {
		t.Error("it is not told that there is no room")
	}
	corner := clearance.Knee{At: mass.Vec{X: 0.6 + 0.1 + 0.03, Z: 0.8 + 0.1 + 0.04}}
	got, _ = clearance.Knees(bag, []clearance.Knee{corner}, 0)
	same(t, "corner", got.Value, 0.05)
	if _, ok := clearance.Knees(bag, nil, 0); ok {
		t.Error("something is told of nobody's knees")
	}
}

// One doubt alone is told as its half-width: 5 mm of place along the way out.
// Three of 5, 3 and 4 mm are 2 √((25 + 9 + 16)/3) = 8.165 mm, less than all 12.
func TestPlus(t *testing.T) {
	bag := clearance.Solid{Place: mass.Vec{Y: 0.18, Z: 0.5}, Half: mass.Vec{X: 0.15, Y: 0.07, Z: 0.17}, Within: 0.005}
	same(t, "one", clearance.Tyre(bike(), bag, 0).Pose.Plus, 0.005)
	bag.Size = 0.003
	same(t, "three", clearance.Tyre(bike(), bag, 0.004).Pose.Plus, 2*math.Sqrt(50e-6/3))
}

// What is least is never more than in the pose; further down there is less room
// under the frame; and what moves out of the way of the tyre has more of it.
func TestProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := bike()
		s := clearance.Solid{
			Place: mass.Vec{X: rapid.Float64Range(0.2, 0.8).Draw(t, "x"), Z: rapid.Float64Range(0.1, 1.2).Draw(t, "z")},
			Half:  mass.Vec{X: rapid.Float64Range(0, 0.2).Draw(t, "half x"), Y: 0.05, Z: rapid.Float64Range(0, 0.2).Draw(t, "half z")},
			Pitch: rapid.Float64Range(-1.5, 1.5).Draw(t, "pitch"),
		}
		ground, _ := clearance.Ground(b, []clearance.Solid{s}, 0)
		tyre := clearance.Tyre(b, s, 0)
		if ground.Least.Value > ground.Pose.Value || tyre.Least.Value > tyre.Pose.Value {
			t.Fatal("the least is more than in the pose")
		}
		lower := s
		lower.Place.Z -= 0.01
		if g, _ := clearance.Ground(b, []clearance.Solid{lower}, 0); math.Abs(ground.Pose.Value-g.Pose.Value-0.01) > 1e-9 {
			t.Fatal("10 mm lower is not 10 mm less room")
		}
		// Moving by 10 mm moves the gap by no more.
		ahead := s
		ahead.Place.X += 0.01
		if d := clearance.Tyre(b, ahead, 0).Pose.Value - tyre.Pose.Value; math.Abs(d) > 0.01+1e-9 {
			t.Fatalf("10 mm ahead are %v m", d)
		}
	})
}
