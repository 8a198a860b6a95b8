package scene_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// tyres are the outlines of tyres in a picture, from left to right.
func tyres(s *scene.Scene) (found []scene.Seg) {
	for _, m := range s.Marks {
		if g := m.Path[0]; len(m.Path) == 1 && g.Op == scene.Circle && m.Stroke == scene.Outline && m.Fill == scene.None && g.R > 30 {
			found = append(found, g)
		}
	}
	// Rims are circles as well: of those round one point the largest is the tyre.
	var out []scene.Seg
	for _, g := range found {
		if n := len(out); n > 0 && math.Hypot(out[n-1].X-g.X, out[n-1].Y-g.Y) < 0.01 {
			out[n-1].R = max(out[n-1].R, g.R)
			continue
		}
		out = append(out, g)
	}
	return out
}

// The raised bike stands with its contacts as far apart in height as the block
// is high, on wheels as far apart as they are on the level.
func TestWeighInStandsAsSaid(t *testing.T) {
	for _, b := range []*geometry.Bike{specimen.Travel().Bike, specimen.Tour().Bike} {
		for _, w := range []scene.Weighing{{Raised: "front", Height: 0.3}, {Raised: "rear", Height: 0.3}, {Raised: "front", Height: 0.05}, {Raised: "rear", Height: 0.12}} {
			w.Words = specimen.Words
			out := scene.WeighIn(b, w, 1200, 700)
			checkLabels(t, out)
			checkFinite(t, out)
			got := tyres(out)
			if len(got) != 4 {
				t.Fatalf("%s: %d tyres", w.Raised, len(got))
			}
			scale := got[0].R / (b.RearRadius - 0.001) // the line is inside the tyre's edge
			foot := func(g scene.Seg) float64 { return (g.Y + g.R) / scale }
			if d := foot(got[1]) - foot(got[0]); math.Abs(d) > 1e-6 {
				t.Errorf("level, the front contact is %v m lower", d)
			}
			if d := (got[1].X - got[0].X) / scale; math.Abs(d-(b.FrontAxle.X-b.RearAxle.X)) > 1e-6 {
				t.Errorf("level, the axles are %v m apart", d)
			}
			want := w.Height
			if w.Raised == "rear" {
				want = -want
			}
			if d := foot(got[2]) - foot(got[3]); math.Abs(d-want) > 1e-6 {
				t.Errorf("%s raised: the front contact is %v m higher, want %v", w.Raised, d, want)
			}
			level := math.Hypot(got[1].X-got[0].X, got[1].Y-got[0].Y)
			if d := math.Hypot(got[3].X-got[2].X, got[3].Y-got[2].Y); math.Abs(d-level) > 1e-3 {
				t.Errorf("%s raised: the axles are %v px apart, want %v", w.Raised, d, level)
			}
			// The lower wheel stands as high as the level ones do: on the scale.
			if d := max(foot(got[2]), foot(got[3])) - foot(got[0]); math.Abs(d) > 1e-6 {
				t.Errorf("%s raised: the lower wheel is %v m below the scale", w.Raised, d)
			}
			if !has(out, fmt.Sprintf("%.0f\u00a0mm", 1000*w.Height)) {
				t.Errorf("the height of %v m is not told", w.Height)
			}
		}
	}
}

// Each step that is told has its number in the figures, and those that there is
// no room for are told to those who do not see the picture all the same.
func TestWeighInSteps(t *testing.T) {
	numbers := func(s *scene.Scene) map[string]int {
		n := make(map[string]int)
		for _, l := range s.Labels {
			if l.Bold && len(l.Text) == 1 {
				n[l.Text]++
			}
		}
		return n
	}
	for _, c := range []struct {
		bike   *geometry.Bike
		raised string
		steps  int
	}{
		{specimen.Tour().Bike, "front", 6}, {specimen.Tour().Bike, "rear", 6}, {specimen.Tour().Bike, "", 3}, {specimen.Tour().Bike, "both", 3},
		{specimen.Travel().Bike, "front", 7}, {specimen.Travel().Bike, "", 4},
	} {
		w := scene.Weighing{Raised: c.raised, Height: 0.3, Words: specimen.Words}
		for _, size := range [][2]float64{{760, 480}, {390, 640}, {1200, 700}} {
			n := numbers(scene.WeighIn(c.bike, w, size[0], size[1]))
			for i := 1; i <= c.steps; i++ {
				if n[fmt.Sprint(i)] != 2 {
					t.Errorf("%q, %v: step %d stands there %d times, want once in its line and once in the figure", c.raised, size, i, n[fmt.Sprint(i)])
				}
			}
			if len(n) != c.steps {
				t.Errorf("%q, %v: %d steps, want %d", c.raised, size, len(n), c.steps)
			}
		}
		small := scene.WeighIn(c.bike, w, 300, 200)
		if n := numbers(small); len(n) != 0 {
			t.Errorf("%q: a picture with no room for steps has %v", c.raised, n)
		}
		if got := strings.Count(small.Desc, "."); got < c.steps {
			t.Errorf("%q: %q tells too little", c.raised, small.Desc)
		}
	}
}

// Whoever weighs is told what to beware of, with the drawing and without seeing
// it: of the raised wheel where there is one, and of what the scale bears.
func TestWeighInCaution(t *testing.T) {
	for _, c := range []struct {
		w    scene.Weighing
		says string
		not  string
	}{
		{scene.Weighing{Raised: "front", Height: 0.3}, "weigh_caution_raised", "weigh_caution_ridden"},
		{scene.Weighing{Raised: "rear", Height: 0.3}, "weigh_caution_raised", "weigh_caution_ridden"},
		{scene.Weighing{}, "weigh_caution_scale", "weigh_caution_raised"},
		{scene.Weighing{Ridden: true}, "weigh_caution_ridden", "weigh_caution_raised"},
	} {
		c.w.Words = specimen.Words
		for _, size := range [][2]float64{{760, 480}, {363, 720}, {390, 640}, {1180, 560}} {
			out := scene.WeighIn(specimen.Travel().Bike, c.w, size[0], size[1])
			checkLabels(t, out)
			var bold []string
			for _, l := range out.Labels {
				if l.Bold && l.Align == -1 {
					bold = append(bold, l.Text)
				}
			}
			for _, text := range []string{strings.Join(bold, " "), out.Desc} {
				for _, key := range []string{"weigh_caution", c.says, "weigh_caution_scale"} {
					if !strings.Contains(text, specimen.Words("scene."+key)) {
						t.Errorf("%+v, %v: %q does not say %q", c.w, size, text, specimen.Words("scene."+key))
					}
				}
				if strings.Contains(text, specimen.Words("scene."+c.not)) {
					t.Errorf("%+v, %v: says %q", c.w, size, text)
				}
			}
		}
	}
}

func TestWeighInOfAnything(t *testing.T) {
	odd := rapid.OneOf(rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), 1e300, -1, 0.3}), rapid.Float64Range(-3, 3))
	rapid.Check(t, func(t *rapid.T) {
		bike := *specimen.Travel().Bike
		vec := func(name string) mass.Vec {
			return mass.Vec{X: odd.Draw(t, name+" x"), Y: odd.Draw(t, name+" y"), Z: odd.Draw(t, name+" z")}
		}
		for i, p := range []*mass.Vec{&bike.SaddleTop, &bike.Grip, &bike.Crown, &bike.FrontAxle, &bike.RearAxle, &bike.BottomBracket} {
			if rapid.IntRange(0, 7).Draw(t, "odd point") == 0 {
				*p = vec(fmt.Sprint("point ", i))
			}
		}
		if rapid.IntRange(0, 5).Draw(t, "wheels") == 0 {
			bike.RearRadius, bike.FrontRadius = odd.Draw(t, "r"), odd.Draw(t, "f")
		}
		w := scene.Weighing{
			Raised: rapid.SampledFrom([]string{"front", "rear", "", "both"}).Draw(t, "raised"),
			Height: odd.Draw(t, "height"), Words: specimen.Words,
		}
		if rapid.IntRange(0, 3).Draw(t, "other words") == 0 {
			word := drawName(t, "word")
			w.Words = func(string) string { return word }
		}
		size := rapid.OneOf(rapid.SampledFrom([]float64{390, 300, 760, 480, 1200, 90, 1}), odd, rapid.Float64Range(50, 2000))
		out := scene.WeighIn(&bike, w, size.Draw(t, "width"), size.Draw(t, "height px"))
		checkFinite(t, out)
		checkLabels(t, out)
	})
	if out := scene.WeighIn(nil, scene.Weighing{}, 400, 300); len(out.Marks) != 0 {
		t.Error("no bike, and yet a drawing")
	}
}
