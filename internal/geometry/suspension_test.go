package geometry

import (
	"testing"

	"pgregory.net/rapid"
)

// The whole-sided swingarm of testdata/geometry/README.md, let through 126 mm:
// the triangles 25, 60, 65 and 16, 63, 65 and 7, ... do not go on evenly, so
// its three steps of 63 mm are: 175 below, 112 below, 49 below; the last is
// sqrt(455² - 49²) = 452.353844 behind.
func TestAxlePathByHand(t *testing.T) {
	b := load(t, "round-bike.json")
	b.Rear.Travel, b.Rear.PivotFwd, b.Rear.PivotUp = 126, -30, 257.5
	bike := posed(t, b)
	near(t, "pitch", bike.Pitch, 0, exact)
	path := bike.AxlePath(3)
	if len(path) != 3 {
		t.Fatalf("%d points", len(path))
	}
	nearPoint(t, "full length", path[0], mm(0, 0, 351), exact)
	nearPoint(t, "half way", path[1], mm(-21, 0, 351+63), exact)
	nearPoint(t, "full travel", path[2], mm(420-452.353844, 0, 351+126), 1e-9)
}

func TestAxlePath(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-24, 24).Draw(t, "gap"))
		sprung(t, b)
		bike := posed(t, b)
		n := rapid.IntRange(2, 40).Draw(t, "points")
		path := bike.AxlePath(n)
		if len(path) != n {
			t.Fatalf("%d points, want %d", len(path), n)
		}
		lever := bike.EndPivot()
		near(t, "lever", lever.Length, bike.RearAxle.Sub(bike.Pivot).Norm(), exact)
		up := func(i int) float64 { return path[i].Sub(bike.BottomBracket).PitchBy(-bike.Pitch).Z }
		for i := range path {
			near(t, "distance from the pivot", path[i].Sub(bike.Pivot).Norm(), lever.Length, 1e-9)
			near(t, "height over the frame", up(i)-up(0), bike.RearTravel*float64(i)/float64(n-1), 1e-9)
		}
		// The pose is on the path, where the sag is used up.
		pose := bike.RearAxle.Sub(bike.BottomBracket).PitchBy(-bike.Pitch).Z
		near(t, "height of the pose", pose-up(0), bike.RearSag, 1e-9)

		// At full length the path is where the unsagged bike has its axle.
		b.Fork.Sag, b.Rear.Sag = 0, 0
		full := posed(t, b)
		want := full.RearAxle.Sub(full.BottomBracket).PitchBy(-full.Pitch)
		nearPoint(t, "start of the path", path[0].Sub(bike.BottomBracket).PitchBy(-bike.Pitch), want, 1e-9)
	})
}

func TestAxlePathOfFewPoints(t *testing.T) {
	bike := posed(t, load(t, "travel-bike.json"))
	for _, n := range []int{-1, 0} {
		if p := bike.AxlePath(n); len(p) != 0 {
			t.Errorf("AxlePath(%d) has %d points", n, len(p))
		}
	}
	if p := bike.AxlePath(1); len(p) != 1 || p[0].Sub(bike.AxlePath(2)[0]).Norm() > exact {
		t.Errorf("AxlePath(1) = %v, want the axle at full length", p)
	}
}

func TestRigidRear(t *testing.T) {
	bike := posed(t, load(t, "touring-bike.json"))
	for _, p := range bike.AxlePath(5) {
		if p != bike.RearAxle {
			t.Errorf("the axle of a rigid rear moves to %v", p)
		}
	}
	l := bike.EndPivot()
	if l.Sprung || l.Pivot != bike.BottomBracket || l.End != bike.RearAxle {
		t.Errorf("lever of a rigid rear: %+v", l)
	}
	near(t, "its length", l.Length, 0.450, exact)
}
