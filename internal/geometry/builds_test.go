package geometry

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	json "github.com/goccy/go-json"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// load reads a build of testdata/geometry.
func load(t testing.TB, name string) *document.Build {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "geometry", name))
	if err != nil {
		t.Fatal(err)
	}
	var b document.Build
	if err := json.Unmarshal(text, &b); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return &b
}

// posed poses a build that has no error.
func posed(t rapid.TB, b *document.Build) *Bike {
	t.Helper()
	bike, problems := Pose(b)
	if bike == nil {
		t.Fatalf("not posed: %v", problems)
	}
	return bike
}

// near fails unless two numbers agree.
func near(t rapid.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.9g, want %.9g ± %g", what, got, want, within)
	}
}

// nearPoint fails unless two points agree.
func nearPoint(t rapid.TB, what string, got, want mass.Vec, within float64) {
	t.Helper()
	if !(got.Sub(want).Norm() <= within) {
		t.Errorf("%s is at %.9g, want %.9g ± %g", what, got, want, within)
	}
}

// mm makes a point of millimetres.
func mm(x, y, z float64) mass.Vec { return mass.Vec{X: x, Y: y, Z: z}.Scale(1. / 1000) }

// exact is what rounding of a few dozen steps may leave, m or rad.
const exact = 1e-12

// figuresThat draws the figures of a bike whose front tyre is off the ground by
// gap mm before levelling: the stack is worked out from the rest.
func figuresThat(t *rapid.T, gap float64) *document.Build {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	b := &document.Build{ID: "drawn"}
	seats := rapid.SampledFrom([]float64{559, 584, 622})
	b.Wheels.Front = document.Wheel{BeadSeat: seats.Draw(t, "front bead seat"), Tyre: in("front tyre", 25, 75)}
	b.Wheels.Rear = document.Wheel{BeadSeat: seats.Draw(t, "rear bead seat"), Tyre: in("rear tyre", 25, 75)}
	b.Frame = document.Frame{
		Reach: in("reach", 380, 520), HeadTube: in("head tube", 90, 220), HeadAngle: in("head angle", 63, 74),
		SeatTube: in("seat tube", 380, 600), SeatAngle: in("seat angle", 70, 79),
		Chainstay: in("chainstay", 430, 520), BBDrop: in("bb drop", -20, 85),
	}
	b.Fork = document.Fork{Length: in("fork", 460, 590), Offset: in("offset", 30, 60)}
	b.Cockpit = document.Cockpit{Spacers: in("spacers", 0, 50), Stem: in("stem", 30, 120), StemAngle: in("stem angle", -17, 35),
		BarWidth: in("bar", 400, 820), BarRise: in("rise", 0, 60), BarBack: in("back", 0, 100)}
	b.Saddle = document.Saddle{Height: in("saddle", 660, 820), Setback: in("setback", -20, 40)}
	b.Cranks = document.Cranks{Length: in("cranks", 150, 180), Width: in("cranks' width", 130, 190)}
	level(b, gap)
	return b
}

// level sets the stack so that the front tyre is gap mm over the ground.
func level(b *document.Build, gap float64) {
	s, c := math.Sincos(b.Frame.HeadAngle * math.Pi / 180)
	front, rear := b.Wheels.Front.BeadSeat/2+b.Wheels.Front.Tyre, b.Wheels.Rear.BeadSeat/2+b.Wheels.Rear.Tyre
	b.Frame.Stack = gap + b.Frame.BBDrop + front - rear + (b.Frame.HeadTube+LowerBearing*1000+b.Fork.Length)*s - b.Fork.Offset*c
}

// sprung gives a bike suspension at both ends, with some of it used.
func sprung(t *rapid.T, b *document.Build) {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	b.Fork.Travel = in("fork travel", 60, 180)
	b.Fork.Sag = b.Fork.Travel * in("fork sag", 0, 0.5)
	b.Rear = document.Rear{Travel: in("rear travel", 60, 180), PivotFwd: in("pivot forward", -30, 60), PivotUp: in("pivot up", 0, 150)}
	b.Rear.Sag = b.Rear.Travel * in("rear sag", 0, 0.5)
	b.Rear.ShockFrom = document.Point2{in("shock frame x", 150, 300), in("shock frame z", 200, 350)}
	b.Rear.ShockTo = document.Point2{in("shock swing x", -20, 80), in("shock swing z", 200, 350)}
}

// finite reports whether every number of a bike is finite.
func (b *Bike) finite() bool {
	ok := func(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
	for _, v := range []float64{
		b.Wheelbase, b.FrontCentre, b.RearCentre, b.Trail, b.HeadAngle, b.SeatAngle, b.BBHeight, b.Pitch,
		b.RearRadius, b.FrontRadius, b.RearRim, b.FrontRim, b.RearTravel, b.FrontTravel, b.RearSag, b.FrontSag,
		b.EndPivot().Length, b.EndPivot().Angle,
	} {
		if !ok(v) {
			return false
		}
	}
	points := append(b.AxlePath(9), b.RearAxle, b.FrontAxle, b.RearContact, b.FrontContact, b.BottomBracket, b.HeadTop, b.HeadBottom,
		b.Crown, b.ForkFoot, b.SeatTop, b.SaddleTop, b.StemBase, b.BarClamp, b.Grip, b.Pivot, b.ShockFrame, b.ShockSwing, b.PedalFront, b.PedalRear)
	for _, s := range b.Stations {
		points = append(points, s.Points...)
	}
	for _, p := range points {
		if !ok(p.X) || !ok(p.Y) || !ok(p.Z) {
			return false
		}
	}
	return true
}
