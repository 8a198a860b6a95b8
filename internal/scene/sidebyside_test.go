package scene_test

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// largestRing is the largest full circle that is drawn between two lines: a wheel.
func largestRing(s *scene.Scene, x0, x1 float64) (r, foot float64) {
	for _, m := range s.Marks {
		for _, g := range m.Path {
			if g.Op == scene.Circle && g.X > x0 && g.X < x1 && g.R > r {
				r, foot = g.R, g.Y+g.R
			}
		}
	}
	return r, foot
}

// The same bike is drawn as large in each panel, and stands on one ground; a
// bike beside a longer one is drawn to its scale. Nothing leaves the paper.
func TestSideBySideHasOneScale(t *testing.T) {
	a, b := specimen.Travel(), specimen.Travel()
	b.Name = "Another"
	v := scene.View{Words: specimen.Words, Labels: true}
	for _, n := range []int{2, 3, 4} {
		subs := []scene.Subject{a, b, a, b}[:n]
		s := scene.SideBySide(subs, v, compared(), 1200, 400)
		if s.Width != 1200 || s.Height <= 400 {
			t.Fatalf("%v × %v", s.Width, s.Height)
		}
		wide := 1200 / float64(n)
		r0, foot0 := largestRing(s, 0, wide)
		if r0 < 20 {
			t.Fatalf("the wheels of %d bikes are %v px large", n, r0)
		}
		for i := range n {
			r, foot := largestRing(s, float64(i)*wide, float64(i+1)*wide)
			if math.Abs(r-r0) > 1e-6 || math.Abs(foot-foot0) > 1e-6 {
				t.Errorf("%d of %d: a wheel of %v px on the ground at %v, the first of %v at %v", i, n, r, foot, r0, foot0)
			}
		}
		for _, l := range s.Labels {
			// Above the line under the heads stand the names of the bikes alone.
			if l.Y-l.Size < 24 && l.Text != a.Name && l.Text != b.Name {
				t.Errorf("%q stands in the head", l.Text)
			}
			if x0, x1 := textSpan(l); l.Angle == 0 && (x0 < -1 || x1 > 1201) {
				t.Errorf("%q reaches from %v to %v", l.Text, x0, x1)
			}
		}
		if !strings.Contains(s.Title, "Another") || !strings.Contains(s.Desc, "Total mass") {
			t.Errorf("%q %q", s.Title, s.Desc)
		}
	}
	long := specimen.Travel()
	bike := *long.Bike
	bike.FrontAxle.X += 0.8
	long.Bike = &bike
	alone, _ := largestRing(scene.SideBySide([]scene.Subject{a, b}, v, &scene.Caption{}, 1000, 400), 0, 500)
	beside, _ := largestRing(scene.SideBySide([]scene.Subject{a, long}, v, &scene.Caption{}, 1000, 400), 0, 500)
	if beside > 0.9*alone {
		t.Errorf("beside a long bike the wheels have %v px, alone %v", beside, alone)
	}
}

func TestSideBySideOfNothing(t *testing.T) {
	if s := scene.SideBySide(nil, scene.View{}, &scene.Caption{}, math.NaN(), 0); len(s.Marks) != 0 {
		t.Errorf("%d marks", len(s.Marks))
	}
}
