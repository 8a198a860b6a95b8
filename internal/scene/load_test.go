package scene_test

import (
	"fmt"
	"math"
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// A rider of 75 kg leaves the dots of parts as large as they are without one,
// and the mark of the rider itself stays small.
func TestRiderLeavesTheDots(t *testing.T) {
	ridden := leaned()
	v := scene.View{Words: specimen.Words}
	cam := scene.Fit(&ridden, v, 760, 480)
	radii := func(s scene.Subject) map[string]float64 {
		out := make(map[string]float64)
		for _, p := range scene.Draw(s, v, cam).Spots {
			if p.DX == 0 && p.DY == 0 { // a dot, and no limb
				out[p.Part] = max(out[p.Part], p.R)
			}
		}
		return out
	}
	with := radii(ridden)
	alone := ridden
	alone.Markers = nil
	for _, m := range ridden.Markers {
		if m.Role != scene.Body {
			alone.Markers = append(alone.Markers, m)
		}
	}
	for part, r := range radii(alone) {
		if with[part] != r {
			t.Errorf("%s has a radius of %v px without the rider and %v with", part, r, with[part])
		}
	}
	if r := with["rider"]; r < 7 || r > 12 {
		t.Errorf("the rider's mark has a radius of %v px", r)
	}
}

// path draws a bike whose centre moves that way, and returns the stops as they
// are drawn: the solid dot that it starts from and the open one at its end.
func path(t *testing.T, by ...mass.Vec) (out *scene.Scene, cam scene.Camera, start, end scene.Seg) {
	s := specimen.Tour()
	s.Ghost, s.Markers = nil, nil
	at := s.Centre.Add(mass.Vec{X: 0.2, Z: 0.35}) // over the bike, clear of all else
	s.Path = []scene.Stop{{Place: at, Name: "brimful"}}
	for i, b := range by {
		s.Path = append(s.Path, scene.Stop{Place: at.Add(b), Name: []string{"so-so", "empty"}[i+2-len(by)]})
	}
	v := scene.View{Words: specimen.Words, Labels: true}
	cam = scene.Fit(&s, v, 760, 480)
	out = scene.Draw(s, v, cam)
	checkLabels(t, out)
	found := 0
	for _, m := range out.Marks {
		if g := m.Path[0]; len(m.Path) == 1 && g.Op == scene.Circle && g.R < 3 {
			switch {
			case m.Fill == scene.Centre && m.Stroke == scene.None:
				start = g
				found++
			case m.Fill == scene.Paper && m.Stroke == scene.Centre:
				end = g
				found++
			}
		}
	}
	if found == 0 {
		t.Fatal("there is no path")
	}
	return out, cam, start, end
}

// A long path is drawn to scale and its ends are named there.
func TestLongPath(t *testing.T) {
	out, cam, start, end := path(t, mass.Vec{X: 0.1, Z: 0.02}, mass.Vec{X: 0.3, Z: -0.1})
	if dx, dy := (end.X-start.X)/cam.Scale, (start.Y-end.Y)/cam.Scale; math.Abs(dx-0.3) > 1e-9 || math.Abs(dy+0.1) > 1e-9 {
		t.Errorf("it goes (%v, %v) m, want (0.3, -0.1)", dx, dy)
	}
	if !has(out, "brimful") || !has(out, "empty") || has(out, "×") {
		t.Errorf("labels %+v", out.Labels)
	}
}

// A short one is shown again in a loupe, to a larger scale that is told there.
func TestShortPath(t *testing.T) {
	for _, far := range []float64{0.0004, 0.002, 0.008, 0.03} {
		out, cam, start, end := path(t, mass.Vec{X: far / 2}, mass.Vec{X: far})
		factor := 0.0
		for _, l := range out.Labels {
			if _, err := fmt.Sscanf(l.Text, "brimful to empty, ×%f", &factor); err == nil {
				break
			}
		}
		if got := (end.X - start.X) / cam.Scale; factor < 2 || math.Abs(got-factor*far) > 1e-9 {
			t.Errorf("%v m is drawn as %v, enlarged %v times", far, got, factor)
		}
		want := fmt.Sprintf("moves %.0f\u00a0mm", 1000*far)
		if far < 0.0005 {
			want = "moves less than 1\u00a0mm"
		}
		if !has(out, want) || !has(out, "brimful") {
			t.Errorf("%q is not in the picture: %+v", want, out.Labels)
		}
	}
}

// A centre that stays where it is has no path to be drawn, and neither has a
// path of one stop.
func TestNoPath(t *testing.T) {
	s := specimen.Tour()
	v := scene.View{Words: specimen.Words, Labels: true}
	cam := scene.Fit(&s, v, 760, 480)
	want := fmt.Sprint(scene.Draw(s, v, cam).Marks)
	s.Path = []scene.Stop{{Place: s.Centre, Name: "full"}}
	if got := fmt.Sprint(scene.Draw(s, v, cam).Marks); got != want {
		t.Error("one stop draws a path")
	}
	s.Path = append(s.Path, s.Path[0], s.Path[0])
	if got := fmt.Sprint(scene.Draw(s, v, cam).Marks); got != want {
		t.Error("a centre that does not move draws a path")
	}
}

// The heavy part of a bag's outline ends where the bag is full to.
func TestFill(t *testing.T) {
	s := specimen.Tour()
	s.Ghost = nil
	at, size := mass.Vec{X: 0.2, Z: 0.6}, mass.Vec{X: 0.3, Y: 0.2, Z: 0.4}
	v := scene.View{Words: specimen.Words}
	cam := scene.Fit(&s, v, 1200, 800)
	for _, fill := range []float64{0, 0.02, 0.05, 0.3, 0.5, 0.8, math.NaN()} {
		s.Markers = []scene.Marker{{Part: "bag", Mass: 1, Place: at, Role: scene.Baggage, Size: size, Fill: fill}}
		heavy := math.Inf(1)
		for _, m := range scene.Draw(s, v, cam).Marks {
			if m.Stroke == scene.Luggage && len(m.Dash) == 0 && m.Width > 1 {
				for _, g := range m.Path {
					heavy = min(heavy, g.Y)
				}
			}
		}
		if !(fill > 0) {
			if !math.IsInf(heavy, 1) {
				t.Errorf("full to %v, and heavy up to %v px", fill, heavy)
			}
			continue
		}
		_, foot := cam.At(at.Sub(mass.Vec{Z: size.Z / 2}))
		if got := (foot - heavy) / cam.Scale / size.Z; math.Abs(got-fill) > 1e-3 {
			t.Errorf("full to %v, and heavy up to %v", fill, got)
		}
	}
}

// What is on the bike is drawn, and what is not is not.
func TestFittings(t *testing.T) {
	bare := specimen.Tour()
	bare.Ghost, bare.Markers = nil, nil
	bare.RearRack, bare.FrontRack, bare.RearRotor, bare.FrontRotor = false, false, 0, 0
	for _, a := range []scene.Aspect{scene.Side, scene.Rear} {
		v := scene.View{Words: specimen.Words, Aspect: a}
		cam := scene.Fit(&bare, v, 760, 480)
		marks := func(change func(*scene.Subject)) []scene.Mark {
			s := bare
			change(&s)
			return scene.Draw(s, v, cam).Marks
		}
		n := len(marks(func(*scene.Subject) {}))
		for name, change := range map[string]func(*scene.Subject){
			"rear rack": func(s *scene.Subject) { s.RearRack = true }, "front rack": func(s *scene.Subject) { s.FrontRack = true },
			"rear rotor": func(s *scene.Subject) { s.RearRotor = 0.09 },
		} {
			if got := len(marks(change)); got <= n {
				t.Errorf("aspect %d: a %s adds no mark", a, name)
			}
		}
		if a != scene.Side {
			continue
		}
		// The disc is as large as it is said to be.
		x, y := cam.At(bare.Bike.FrontAxle)
		found := false
		for _, m := range marks(func(s *scene.Subject) { s.FrontRotor = 0.09 }) {
			g := m.Path[0]
			found = found || m.Stroke == scene.Outline && g.Op == scene.Circle && math.Hypot(g.X-x, g.Y-y) < 0.01 && math.Abs(g.R-0.09*cam.Scale) < 0.01
		}
		if !found {
			t.Error("there is no disc of 90 mm on the front axle")
		}
	}
}

// The cranks stand where the rider's feet are: the left one over level and
// forward by the angle.
func TestCranksTurn(t *testing.T) {
	s := specimen.Tour()
	s.Ghost, s.Markers, s.Crank = nil, nil, math.Pi/2
	for _, a := range []scene.Aspect{scene.Side, scene.Rear} {
		v := scene.View{Words: specimen.Words, Aspect: a}
		cam := scene.Fit(&s, v, 760, 480)
		b := s.Bike
		l := b.PedalFront.X - b.BottomBracket.X
		x, y := cam.At(mass.Vec{X: b.BottomBracket.X, Y: b.PedalFront.Y, Z: b.BottomBracket.Z + l})
		nearest := math.Inf(1)
		for _, m := range scene.Draw(s, v, cam).Marks {
			if m.Fill != scene.Tyre { // pedals are of rubber, so to speak
				continue
			}
			x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
			for _, g := range m.Path {
				if g.Op != scene.Close {
					x0, x1, y0, y1 = min(x0, g.X), max(x1, g.X), min(y0, g.Y), max(y1, g.Y)
				}
			}
			nearest = min(nearest, math.Hypot((x0+x1)/2-x, (y0+y1)/2-y))
		}
		if nearest > 0.5 {
			t.Errorf("aspect %d: no pedal within %v px of where the left foot is", a, nearest)
		}
	}
}
