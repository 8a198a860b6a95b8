package geometry

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// The working is in testdata/geometry/README.md, step by step with whole-sided
// triangles.
func TestRoundBike(t *testing.T) {
	b := load(t, "round-bike.json")
	bike, problems := Pose(b)
	if len(problems) != 0 {
		t.Errorf("problems: %v", problems)
	}
	if bike == nil {
		t.Fatal("not posed")
	}
	near(t, "wheelbase", bike.Wheelbase, 1.098, exact)
	near(t, "bottom bracket's height", bike.BBHeight, 0.2685, exact)
	near(t, "front centre", bike.FrontCentre, 0.653231, 1e-6)
	near(t, "rear centre", bike.RearCentre, 0.4575, exact)
	near(t, "trail", bike.Trail, 1.079/12, exact)
	near(t, "head angle", bike.HeadAngle, math.Atan2(12, 5), exact)
	near(t, "seat angle", bike.SeatAngle, math.Atan2(12, 5), exact)
	near(t, "pitch", bike.Pitch, 0, exact)
	near(t, "rear radius", bike.RearRadius, 0.351, exact)
	near(t, "rear rim", bike.RearRim, 0.311, exact)

	ground := func(x, y, z float64) mass.Vec { return mm(x+450, y, z+268.5) }
	for _, c := range []struct {
		name      string
		got, want mass.Vec
	}{
		{"rear axle", bike.RearAxle, mm(0, 0, 351)},
		{"rear contact", bike.RearContact, mm(0, 0, 0)},
		{"front axle", bike.FrontAxle, mm(1098, 0, 351)},
		{"front contact", bike.FrontContact, mm(1098, 0, 0)},
		{"bottom bracket", bike.BottomBracket, mm(450, 0, 268.5)},
		{"head tube's top", bike.HeadTop, ground(400, 0, 542.5)},
		{"head tube's bottom", bike.HeadBottom, ground(400+114*5./13, 0, 542.5-114*12./13)},
		{"crown", bike.Crown, ground(400+120*5./13, 0, 542.5-120*12./13)},
		{"fork's foot", bike.ForkFoot, ground(600, 0, 62.5)},
		{"seat tube's top", bike.SeatTop, ground(-200, 0, 480)},
		{"saddle", bike.SaddleTop, ground(-300, 0, 660)},
		{"stem's base", bike.StemBase, ground(390, 0, 566.5)},
		{"bar clamp", bike.BarClamp, ground(474, 0, 601.5)},
		{"grip", bike.Grip, ground(400, 250, 611.5)},
		{"pivot", bike.Pivot, mm(450, 0, 268.5)},
		{"left pedal", bike.PedalFront, ground(170, 75+55, 0)},
		{"right pedal", bike.PedalRear, ground(-170, -75-55, 0)},
	} {
		nearPoint(t, c.name, c.got, c.want, exact)
	}
	if bike.RearSprung || bike.FrontSprung {
		t.Error("a rigid bike is sprung")
	}
}

// Likewise, with the suspension of the same page.
func TestRoundBikeWithSag(t *testing.T) {
	b := load(t, "round-bike.json")
	b.Fork.Travel, b.Rear.Travel, b.Rear.PivotFwd, b.Rear.PivotUp = 120, 120, -30, 257.5
	b.Rear.ShockFrom, b.Rear.ShockTo = document.Point2{200, 300}, document.Point2{0, 350}

	t.Run("both", func(t *testing.T) {
		b := *b
		b.Fork.Sag, b.Rear.Sag = 68.25, 63
		bike := posed(t, &b)
		near(t, "pitch", bike.Pitch, 0, exact)
		near(t, "wheelbase", bike.Wheelbase, 1.09275, exact)
		near(t, "bottom bracket's height", bike.BBHeight, 0.2055, exact)
		nearPoint(t, "pivot", bike.Pivot, mm(471-30, 0, 205.5+257.5), exact)
		nearPoint(t, "rear axle", bike.RearAxle, mm(0, 0, 351), exact)
		nearPoint(t, "front axle", bike.FrontAxle, mm(471+621.75, 0, 351), exact)
		near(t, "lever", bike.EndPivot().Length, 0.455, exact)
		near(t, "lever's angle", bike.EndPivot().Angle, math.Atan2(-112, 441), exact)
	})
	t.Run("rear alone", func(t *testing.T) {
		b := *b
		b.Rear.Sag = 63
		bike := posed(t, &b)
		near(t, "pitch", bike.Pitch, math.Atan(63./1119), exact)
		near(t, "wheelbase", bike.Wheelbase, 1.120772, 1e-6)
		near(t, "head angle", bike.HeadAngle, math.Atan2(12, 5)-math.Atan(63./1119), exact)
		near(t, "seat angle", bike.SeatAngle, math.Atan2(12, 5)-math.Atan(63./1119), exact)
	})
}

// The steering geometry of Meijaard, Papadopoulos, Ruina and Schwab (2007),
// Proc. R. Soc. A 463, 1955-1982, table 1: wheelbase 1.02 m, trail 0.08 m,
// steer axis tilted by pi/10, wheel radii 0.3 and 0.35 m. A frame is built
// backwards from it, with the fork offset o = R cos h - c sin h = 32.07 mm.
func TestMeijaardSteering(t *testing.T) {
	const wheelbase, trail, front, rear = 1020.0, 80.0, 350.0, 300.0
	h := math.Pi/2 - math.Pi/10
	s, c := math.Sincos(h)
	offset := front*c - trail*s
	near(t, "offset", offset, 32.0714, 1e-4) // 350 x 0.309017 - 80 x 0.951057

	b := load(t, "touring-bike.json")
	b.Wheels.Rear = document.Wheel{BeadSeat: 500, Tyre: 50}
	b.Wheels.Front = document.Wheel{BeadSeat: 600, Tyre: 50}
	b.Frame.HeadAngle, b.Frame.Chainstay, b.Frame.BBDrop = 72, 420, 30
	b.Fork.Offset, b.Fork.Length, b.Frame.HeadTube = offset, 394, 120
	along := 120 + 6 + 394.0
	b.Frame.Stack = 30 + front - rear + along*s - offset*c
	b.Frame.Reach = wheelbase - math.Sqrt(420*420-30*30) - along*c - offset*s

	bike, problems := Pose(b)
	for _, p := range problems {
		if p.Severity != document.SeverityWarning || p.Field != "wheels.front.bead_seat_mm" && p.Field != "wheels.rear.bead_seat_mm" {
			t.Errorf("unexpected: %+v", p)
		}
	}
	if len(problems) != 2 {
		t.Errorf("%d warnings, want one for either bead seat that ISO 5775 does not have", len(problems))
	}
	near(t, "wheelbase", bike.Wheelbase, 1.02, exact)
	near(t, "trail", bike.Trail, 0.08, exact)
	near(t, "constructed trail", constructedTrail(bike), 0.08, exact)
	near(t, "tilt", math.Pi/2-bike.HeadAngle, math.Pi/10, exact)
	near(t, "pitch", bike.Pitch, 0, exact)
}

// constructedTrail finds the trail without the formula: it follows the line
// through head tube and fork down to the ground.
func constructedTrail(b *Bike) float64 {
	way := b.ForkFoot.Sub(b.HeadTop)
	return b.HeadTop.Add(way.Scale(-b.HeadTop.Z/way.Z)).X - b.FrontContact.X
}

func TestTrailAgreesWithConstruction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-24, 24).Draw(t, "gap"))
		sprung(t, b)
		bike := posed(t, b)
		near(t, "trail", bike.Trail, constructedTrail(bike), 1e-9)
	})
}

func TestLevelFiguresKeepPrintedAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, 0)
		if rapid.Bool().Draw(t, "sprung") {
			sprung(t, b)
			b.Fork.Sag, b.Rear.Sag = 0, 0
		}
		bike := posed(t, b)
		near(t, "head angle", bike.HeadAngle, b.Frame.HeadAngle*math.Pi/180, 1e-9)
		near(t, "seat angle", bike.SeatAngle, b.Frame.SeatAngle*math.Pi/180, 1e-9)
		near(t, "bottom bracket's height", bike.BBHeight, bike.RearRadius-b.Frame.BBDrop/1000, 1e-9)
		near(t, "rear centre", bike.RearCentre, b.Frame.Chainstay/1000, 1e-9)
	})
}

func TestTyresStandOnTheGround(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-79, 79).Draw(t, "gap"))
		sprung(t, b)
		bike := posed(t, b)
		near(t, "rear axle's height", bike.RearAxle.Z, bike.RearRadius, exact)
		near(t, "front axle's height", bike.FrontAxle.Z, bike.FrontRadius, exact)
		near(t, "rear axle's place", bike.RearAxle.X, 0, exact)
		near(t, "rear contact", bike.RearContact.Norm(), 0, exact)
		near(t, "front contact's height", bike.FrontContact.Z, 0, 0)
		near(t, "wheelbase", bike.Wheelbase, bike.FrontAxle.X, exact)
	})
}

// The axles keep their distances: along the fork and square to it, from the
// pivot, and the frame stays one body however it is turned.
func TestSagKeepsLengths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-24, 24).Draw(t, "gap"))
		sprung(t, b)
		low := posed(t, b)
		b.Fork.Sag, b.Rear.Sag = 0, 0
		full := posed(t, b)

		near(t, "fork's length", low.ForkFoot.Sub(low.Crown).Norm(), full.ForkFoot.Sub(full.Crown).Norm()-low.FrontSag, 1e-9)
		near(t, "printed fork's length", full.ForkFoot.Sub(full.Crown).Norm(), b.Fork.Length/1000, 1e-9)
		near(t, "offset", low.FrontAxle.Sub(low.ForkFoot).Norm(), b.Fork.Offset/1000, 1e-9)
		near(t, "offset square to the fork", low.FrontAxle.Sub(low.ForkFoot).Dot(low.ForkFoot.Sub(low.HeadTop)), 0, 1e-9)
		near(t, "swingarm", low.RearAxle.Sub(low.Pivot).Norm(), full.RearAxle.Sub(full.Pivot).Norm(), 1e-9)
		near(t, "shock eye from pivot", low.ShockSwing.Sub(low.Pivot).Norm(), full.ShockSwing.Sub(full.Pivot).Norm(), 1e-9)
		near(t, "shock eye from axle", low.ShockSwing.Sub(low.RearAxle).Norm(), full.ShockSwing.Sub(full.RearAxle).Norm(), 1e-9)

		rise := func(b *Bike) float64 { return b.RearAxle.Sub(b.BottomBracket).PitchBy(-b.Pitch).Z }
		near(t, "rise of the axle over the frame", rise(low)-rise(full), low.RearSag, 1e-9)

		rigid := func(b *Bike) []mass.Vec {
			return []mass.Vec{b.BottomBracket, b.HeadTop, b.HeadBottom, b.Crown, b.SeatTop, b.SaddleTop, b.BarClamp, b.Grip, b.Pivot, b.ShockFrame}
		}
		p, q := rigid(low), rigid(full)
		for i := range p {
			for j := range i {
				near(t, "distance in the frame", p[i].Sub(p[j]).Norm(), q[i].Sub(q[j]).Norm(), 1e-9)
			}
		}
		near(t, "head angle less seat angle", low.HeadAngle-low.SeatAngle, full.HeadAngle-full.SeatAngle, exact)
	})
}

// A stiff beam that sinks by r at one end and by f at the other sinks by their
// mean, weighted by place, in between. The bottom bracket does so to within the
// few millimetres that the axles move fore and aft.
func TestSagLowersBottomBracket(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, 0)
		sprung(t, b)
		low := posed(t, b)
		b.Fork.Sag, b.Rear.Sag = 0, 0
		full := posed(t, b)
		front := low.FrontSag * math.Sin(full.HeadAngle)
		share := full.BottomBracket.X / full.Wheelbase
		near(t, "sinking", full.BBHeight-low.BBHeight, low.RearSag*(1-share)+front*share, 0.008)
	})
}

// Without suspension the axles' distance is plain trigonometry, and the
// wheelbase is its shadow on the ground.
func TestChainstayStretchesWheelbase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, 0)
		short := posed(t, b)
		more := rapid.Float64Range(1, 60).Draw(t, "longer by")
		back := func() float64 {
			return math.Sqrt(b.Frame.Chainstay*b.Frame.Chainstay-b.Frame.BBDrop*b.Frame.BBDrop) / 1000
		}
		before := back()
		b.Frame.Chainstay += more
		long := posed(t, b)
		near(t, "wheelbase", long.Wheelbase-short.Wheelbase, back()-before, 1e-9)
		near(t, "trail", long.Trail, short.Trail, 1e-9)
		near(t, "front centre", long.FrontCentre, short.FrontCentre, 1e-9)
		near(t, "bottom bracket's height", long.BBHeight, short.BBHeight, 1e-9)
	})
}

// A larger front tyre lifts the nose: slacker angles, higher bottom bracket.
func TestFrontTyreLiftsNose(t *testing.T) {
	b := load(t, "touring-bike.json")
	before := posed(t, b)
	b.Wheels.Front.Tyre += 15
	after := posed(t, b)
	// The hub rises by 15 mm over a wheelbase of 1063 mm: 0.81 degrees.
	near(t, "pitch", after.Pitch-before.Pitch, math.Asin(15/1062.8), 1e-4)
	if !(after.HeadAngle < before.HeadAngle && after.BBHeight > before.BBHeight) {
		t.Errorf("head angle %v -> %v, height %v -> %v", before.HeadAngle, after.HeadAngle, before.BBHeight, after.BBHeight)
	}
}

// What README.md of testdata/geometry promises of its builds.
func TestBuildsAgree(t *testing.T) {
	for _, name := range []string{"travel-bike.json", "touring-bike.json"} {
		b := load(t, name)
		bike, problems := Pose(b)
		if bike == nil || len(problems) != 0 {
			t.Errorf("%s: %v", name, problems)
			continue
		}
		b.Fork.Sag, b.Rear.Sag = 0, 0
		bike = posed(t, b)
		near(t, name+": front tyre before levelling", math.Sin(bike.Pitch)*bike.Wheelbase, 0, 0.001)
	}
}
