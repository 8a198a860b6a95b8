package clearance_test

import (
	"math"
	"testing"

	"steelyard/internal/clearance"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// square is a frame that can be worked out by hand: bottom bracket at (500, 300), an
// upright seat tube to (500, 800), a level top tube to (1000, 800), a head tube
// straight down to (1000, 600), so the down tube goes from there 500 mm back and
// 300 mm down.
func square() *geometry.Bike {
	return &geometry.Bike{
		BottomBracket: mass.Vec{X: 0.5, Z: 0.3}, SeatTop: mass.Vec{X: 0.5, Z: 0.8},
		HeadTop: mass.Vec{X: 1, Z: 0.8}, HeadBottom: mass.Vec{X: 1, Z: 0.6}, BarClamp: mass.Vec{X: 1, Z: 0.95},
	}
}

// Tubes of 40 mm leave x from 520 to 980 and z up to 780. The down tube's upper face
// is 20 mm square to its axis z = 300 + 0.6 (x - 500), so 20 √(1 + 0.36) = 23.32 mm
// above it: at x = 520 it is at 335.32, at x = 980 at 611.32.
func TestTriangleByHand(t *testing.T) {
	room := clearance.Triangle(square())
	up := 0.02 * math.Sqrt(1.36)
	want := []clearance.Side{
		{From: mass.Vec{X: 0.52, Z: 0.312 + up}, Along: "seat-tube"}, {From: mass.Vec{X: 0.52, Z: 0.78}, Along: "top-tube"},
		{From: mass.Vec{X: 0.98, Z: 0.78}, Along: "head-tube"}, {From: mass.Vec{X: 0.98, Z: 0.588 + up}, Along: "down-tube"},
	}
	if len(room) != len(want) {
		t.Fatalf("%d sides: %+v", len(room), room)
	}
	at := 0
	for i := range room {
		if room[i].Along == "seat-tube" {
			at = i
		}
	}
	for i := range want {
		got := room[(at+i)%4]
		if got.Along != want[i].Along || got.From.Sub(want[i].From).Norm() > 1e-9 || got.To.Sub(want[(i+1)%4].From).Norm() > 1e-9 {
			t.Errorf("side %d is %+v, want %+v", i, got, want[i])
		}
	}
	long, high := clearance.Extent(room)
	same(t, "long", long, 0.46)
	same(t, "high", high, 0.468-up)
	// A trapezium: the mean of both heights times its length.
	same(t, "area", clearance.Area(room), 0.46*((0.468-up)+(0.192-up))/2)
}

// A box 300 mm long and 100 mm high with its middle at (750, 700) leaves 30 mm to the
// top tube and 80 mm to seat and head tube; down by 200 mm its lower front corner, at
// (900, 450), is 90 mm below the down tube's axis at 540, (90 √(1/1.36) + 20) mm out.
func TestInsideOfTheTriangle(t *testing.T) {
	room := clearance.Triangle(square())
	box := clearance.Solid{ID: "bag", Place: mass.Vec{X: 0.75, Z: 0.7}, Half: mass.Vec{X: 0.15, Z: 0.05}}
	g, along, _ := clearance.Inside(room, box, "", 0)
	same(t, "inside", g.Value, 0.03)
	if along != "top-tube" {
		t.Errorf("nearest is %s", along)
	}
	// Its lower front corner, at (900, 650), is 110 mm above the axis of the down tube.
	g, along, _ = clearance.Inside(room, box, "top-tube", 0)
	same(t, "without the top tube", g.Value, 0.11/math.Sqrt(1.36)-0.02)
	if along != "down-tube" {
		t.Errorf("then nearest is %s", along)
	}
	box.Place.Z = 0.5
	g, along, _ = clearance.Inside(room, box, "", 0)
	same(t, "too low", g.Value, -(0.09/math.Sqrt(1.36) + 0.02))
	if along != "down-tube" {
		t.Errorf("nearest is %s", along)
	}
	if _, _, ok := clearance.Inside(nil, box, "", 0); ok {
		t.Error("something is told of no room")
	}
}

// A shock that goes level through the square at 500 mm leaves the part above it,
// from 530 mm up, which is the larger one.
func TestTriangleBesideAShock(t *testing.T) {
	b := square()
	b.ShockFrame, b.ShockSwing = mass.Vec{X: 0.9, Z: 0.5}, mass.Vec{X: 0.45, Z: 0.5}
	_, high := clearance.Extent(clearance.Triangle(b))
	same(t, "high", high, 0.78-0.53)
}

// A bottle of 75 mm beside another one, 100 mm off square to both: 25 mm. Turned by a
// quarter about its middle it is 200 mm long that way: they overlap by 37.5 mm.
func TestBetween(t *testing.T) {
	a := clearance.Solid{ID: "a", Half: mass.Vec{X: 0.1, Z: 0.0375}}
	b := a
	b.Place.Z = 0.1
	between := func() float64 {
		return clearance.Between(a, b, clearance.Outline(a, nil), clearance.Outline(b, nil)).Value
	}
	same(t, "beside", between(), 0.025)
	b.Pitch = math.Pi / 2
	same(t, "turned", between(), 0.1-0.0375-0.1)
	// What is sewn to fit ends at the tubes: a box over all of the triangle is it.
	room := clearance.Tubes(square())
	all := clearance.Outline(clearance.Solid{Place: mass.Vec{X: 0.75, Z: 0.6}, Half: mass.Vec{X: 1, Z: 1}}, room)
	same(t, "cut to fit", clearance.Area(all), clearance.Area(room))
	// 60 mm of shock at a height of 500 mm, a bottle of 75 mm level at 600 mm.
	s := square()
	s.ShockFrame, s.ShockSwing = mass.Vec{X: 0.9, Z: 0.5}, mass.Vec{X: 0.55, Z: 0.5}
	a.Place = mass.Vec{X: 0.7, Z: 0.6}
	g, ok := clearance.Shock(s, a, clearance.Outline(a, nil))
	same(t, "to the shock", g.Value, 0.1-0.03-0.0375)
	if _, ok2 := clearance.Shock(square(), a, clearance.Outline(a, nil)); !ok || ok2 {
		t.Error("a shock is told where there is none, or none where there is one")
	}
}

// A roll of 160 mm, 250 mm over the front axle's height and straight above it, is
// 250 - 80 - 350 mm over a wheel of 350 mm, so 180 mm inside; at 550 mm it leaves
// 120 mm in the pose, and 40 mm with the 80 mm of travel that are left used up. A
// bar of 32 mm whose axis is 170 mm behind its middle is 170 - 80 - 16 mm off.
func TestFrontTyreAndBar(t *testing.T) {
	b := bike()
	roll := clearance.Solid{ID: "roll", Place: mass.Vec{X: 1.1, Z: 0.9}, Half: mass.Vec{X: 0.08, Y: 0.22, Z: 0.08}}
	got := clearance.Front(b, roll, 0)
	same(t, "in the pose", got.Pose.Value, 0.12)
	same(t, "at least", got.Least.Value, 0.04)
	same(t, "travel", got.Front, 0.1)
	roll.Place.Z = 0.6
	if g := clearance.Front(b, roll, 0).Pose.Value; g > -0.18+1e-9 {
		t.Errorf("a roll in the wheel leaves %v m", g)
	}
	b.BarClamp = mass.Vec{X: 0.93, Z: 0.6}
	same(t, "to the bar", clearance.Bar(b, roll, 0.016, 0).Value, 0.17-0.08-0.016)
}
