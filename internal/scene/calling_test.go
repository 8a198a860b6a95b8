package scene_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// leaders are the fine lines between names and what they name.
func leaders(s *scene.Scene) (list [][2]scene.Seg) {
	for i := range s.Marks {
		m := &s.Marks[i]
		if m.Stroke == scene.Quiet && m.Width == 0.75 && len(m.Path) == 2 && m.Path[1].Op == scene.Line {
			list = append(list, [2]scene.Seg{m.Path[0], m.Path[1]})
		}
	}
	return list
}

func checkLeaders(t interface{ Fatalf(string, ...any) }, s *scene.Scene) {
	side := func(a, b, p scene.Seg) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }
	list := leaders(s)
	for i, a := range list {
		for _, b := range list[:i] {
			if side(a[0], a[1], b[0])*side(a[0], a[1], b[1]) < 0 && side(b[0], b[1], a[0])*side(b[0], b[1], a[1]) < 0 {
				t.Fatalf("the leaders %v and %v cross", a, b)
			}
		}
		for k := range s.Labels {
			q := letters(&s.Labels[k])
			if s.Labels[k].Angle != 0 {
				continue
			}
			for step := 0.0; step <= 1; step += 1. / 64 {
				x, y := a[0].X+(a[1].X-a[0].X)*step, a[0].Y+(a[1].Y-a[0].Y)*step
				if x > q.x0+1 && x < q.x1-1 && y > q.y0+1 && y < q.y1-1 {
					t.Fatalf("a leader %v goes through %q", a, s.Labels[k].Text)
				}
			}
		}
	}
}

// pairs are all drivetrains, each set against another kind.
func pairs(try func(name string, s scene.Subject)) {
	for i, set := range specimen.Drives {
		for _, k := range []int{1, 2, 4} {
			other := specimen.Drives[(i+k)%len(specimen.Drives)]
			try(set+" against "+other, specimen.Against(specimen.Driven(set), specimen.Driven(other)))
		}
	}
}

func TestLeadersDoNotCross(t *testing.T) {
	v := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
	named(func(_ string, s scene.Subject, w, h float64) {
		checkLeaders(t, scene.Draw(s, v, scene.Fit(&s, v, w, h)))
	})
	pairs(func(_ string, s scene.Subject) {
		for _, size := range [][2]float64{{760, 440}, {390, 300}, {1180, 640}} {
			checkLeaders(t, scene.Draw(s, v, scene.Fit(&s, v, size[0], size[1])))
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		s, v := drawSubject(t, 30), drawView(t)
		cam := scene.Fit(&s, v, rapid.Float64Range(200, 1500).Draw(t, "width"), rapid.Float64Range(150, 1000).Draw(t, "height"))
		checkLeaders(t, scene.Draw(s, v, cam))
	})
}

// On a phone the compared parts are named: what makes the one drive, and what
// the other.
func TestComparedPartsAreNamedOnAPhone(t *testing.T) {
	chief := func(set string) string {
		switch {
		case strings.HasPrefix(set, "gearbox"):
			return "Crank gearbox"
		case strings.HasPrefix(set, "gear-hub"):
			return "Gear hub"
		}
		return ""
	}
	v := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
	seen := 0
	pairs(func(name string, s scene.Subject) {
		a, b, _ := strings.Cut(name, " against ")
		if chief(a) == chief(b) {
			return
		}
		for _, size := range [][2]float64{{390, 300}, {358, 420}} {
			out := scene.Draw(s, v, scene.Fit(&s, v, size[0], size[1]))
			for _, want := range []string{chief(a), chief(b)} {
				found := false
				for i := range out.Labels {
					found = found || strings.HasPrefix(out.Labels[i].Text, want)
				}
				if seen++; !found && want != "" {
					t.Errorf("%s, %v: no %q among the names", name, size, want)
				}
			}
		}
	})
	if seen < 20 {
		t.Errorf("only %d names were looked for", seen)
	}
}

// What differs is named before what is heavier and the same.
func TestWhatDiffersIsNamedFirst(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
	cam := scene.Fit(&s, v, 760, 440)
	if out := scene.Draw(s, v, cam); !has(out, "Belt") || !has(out, "Chain") {
		t.Error("belt and chain are what differs, and are not named")
	}
	s.Ghost = nil
	if out := scene.Draw(s, v, cam); has(out, "Belt") {
		t.Error("without another build the belt, of 90 g, is among the heaviest")
	}
}

// Where there is room beside the bike, as there is in a wide picture, no name
// covers its tyres, its tubes or its saddle.
func TestNamesStandBesideTheBike(t *testing.T) {
	v := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
	check := func(name string, s scene.Subject) {
		cam := scene.Fit(&s, v, 1100, 430)
		b := s.Bike
		tubes := [][2]mass.Vec{
			{b.BottomBracket, b.HeadBottom}, {b.SeatTop, b.HeadTop}, {b.BottomBracket, b.SaddleTop}, {b.HeadTop, b.FrontAxle},
			{b.BottomBracket, b.RearAxle}, {b.StemBase, b.BarClamp}, {b.PedalFront, b.PedalRear},
		}
		out := scene.Draw(s, v, cam)
		names := 0
		for i := range out.Labels {
			l := &out.Labels[i]
			if !l.Halo || l.Bold || l.Ink == scene.Quiet {
				continue
			}
			names++
			q := letters(l)
			for _, tube := range tubes {
				x0, y0 := cam.At(tube[0])
				x1, y1 := cam.At(tube[1])
				for k := 0.0; k <= 1; k += 0.01 {
					if x, y := x0+(x1-x0)*k, y0+(y1-y0)*k; x > q.x0 && x < q.x1 && y > q.y0 && y < q.y1 {
						t.Errorf("%s: %q covers a tube", name, l.Text)
						break
					}
				}
			}
			for _, w := range []struct {
				axle mass.Vec
				r    float64
			}{{b.RearAxle, b.RearRadius}, {b.FrontAxle, b.FrontRadius}} {
				x, y := cam.At(w.axle)
				dx, dy := max(q.x0-x, x-q.x1, 0), max(q.y0-y, y-q.y1, 0)
				far := math.Hypot(max(math.Abs(q.x0-x), math.Abs(q.x1-x)), max(math.Abs(q.y0-y), math.Abs(q.y1-y)))
				if near := math.Hypot(dx, dy); near < w.r*cam.Scale && far > (w.r-0.04)*cam.Scale {
					t.Errorf("%s: %q covers a tyre", name, l.Text)
				}
			}
		}
		if names < 8 {
			t.Errorf("%s: only %d names", name, names)
		}
	}
	for name, s := range map[string]func() scene.Subject{"travel": specimen.Travel, "leaned": leaned, "low": low} {
		check(name, s())
	}
}
