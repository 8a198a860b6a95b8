package scene_test

import (
	"math"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// circles are the radii of the full circles round a place that are drawn, mm.
func circles(s *scene.Scene, cam *scene.Camera, at mass.Vec) (list []float64) {
	x, y := cam.At(at)
	for i := range s.Marks {
		for _, g := range s.Marks[i].Path {
			if g.Op == scene.Circle && math.Hypot(g.X-x, g.Y-y) < 0.5 {
				list = append(list, g.R/cam.Scale*1000)
			}
		}
	}
	return list
}

func near(list []float64, r float64) bool {
	for _, k := range list {
		if math.Abs(k-r) < 0.6 {
			return true
		}
	}
	return false
}

func bare(s scene.Subject) (*scene.Scene, scene.Camera) {
	s.Markers, s.Ghost = nil, nil
	v := scene.View{Words: specimen.Words}
	cam := scene.Fit(&s, v, 1600, 900)
	return scene.Draw(s, v, cam), cam
}

// What is compared is drawn, and to scale.
func TestDrivetrainsAreDrawn(t *testing.T) {
	type drawing struct {
		*scene.Scene
		rings, hub []float64
	}
	all := map[string]drawing{}
	for _, set := range specimen.Drives {
		s := specimen.Driven(set)
		out, cam := bare(s)
		all[set] = drawing{out, circles(out, &cam, s.Bike.BottomBracket), circles(out, &cam, s.Bike.RearAxle)}
	}
	shape := func(set, kind string) (list []scene.Fitting) {
		s := specimen.Driven(set)
		for _, f := range s.Fittings {
			if f.Kind == kind {
				list = append(list, f)
			}
		}
		return list
	}
	for set, rings := range map[string]int{
		"derailleur-one-ring": 1, "derailleur-two-rings": 2, "gear-hub-chain": 1, "gear-hub-belt": 1, "gearbox-chain": 1, "gearbox-belt": 1,
	} {
		list := shape(set, "chainring")
		if len(list) != rings {
			t.Fatalf("%s has %d rings, want %d", set, len(list), rings)
		}
		for _, f := range list {
			r := 1000 * f.Size.X
			if len(f.Teeth) > 0 {
				pitch := 12.7
				if len(shape(set, "belt")) > 0 {
					pitch = 11
				}
				r = pitch / 2 / math.Sin(math.Pi/float64(f.Teeth[0]))
			}
			if !near(all[set].rings, r) {
				t.Errorf("%s: no ring of %.1f mm round the cranks' axle, but %.1f", set, r, all[set].rings)
			}
		}
	}
	for set, hub := range map[string]bool{"derailleur-one-ring": false, "gear-hub-chain": true, "gear-hub-belt": true, "gearbox-belt": false} {
		if got := near(all[set].hub, 50); got != hub {
			t.Errorf("%s: the shell of a gear hub is drawn: %v, want %v", set, got, hub)
		}
	}
	if a, b := len(all["derailleur-one-ring"].hub), len(all["gearbox-chain"].hub); a < b+4 {
		t.Errorf("a cassette has %d circles, a single cog %d", a, b)
	}
	for a := range all {
		for b := range all {
			if a != b && len(all[a].Marks) == len(all[b].Marks) && same(all[a].Scene, all[b].Scene) {
				t.Errorf("%s and %s are drawn alike", a, b)
			}
		}
	}
}

func same(a, b *scene.Scene) bool {
	for i := range a.Marks {
		p, q := a.Marks[i].Path, b.Marks[i].Path
		if len(p) != len(q) {
			return false
		}
		for k := range p {
			if p[k] != q[k] {
				return false
			}
		}
	}
	return true
}

// A gearbox is as large in the picture as its shape says, and stands where it is.
func TestGearboxIsToScale(t *testing.T) {
	s := specimen.Driven("gearbox-chain")
	out, cam := bare(s)
	for _, f := range s.Fittings {
		if f.Kind != "crank-gearbox" {
			continue
		}
		x, y := cam.At(f.Place)
		best := math.Inf(1)
		for i := range out.Marks {
			x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
			for _, g := range out.Marks[i].Path {
				if g.Op == scene.Close {
					continue
				}
				x0, x1, y0, y1 = min(x0, g.X), max(x1, g.X), min(y0, g.Y), max(y1, g.Y)
			}
			// The frame is a little turned by its sag: so is the shell.
			sin, cos := math.Sincos(math.Abs(s.Bike.Pitch))
			w, h := f.Size.X*cos+f.Size.Z*sin, f.Size.Z*cos+f.Size.X*sin
			off := math.Abs((x0+x1)/2-x) + math.Abs((y0+y1)/2-y) + math.Abs(x1-x0-w*cam.Scale) + math.Abs(y1-y0-h*cam.Scale)
			best = min(best, off)
		}
		if best > 12 { // its corners are round
			t.Errorf("nothing of the gearbox's size is drawn where it is; the best is %.1f px off", best)
		}
		return
	}
	t.Fatal("no gearbox")
}

// A part that is far too large, or nowhere, draws nothing that is not finite.
func TestAbsurdFittings(t *testing.T) {
	for _, kind := range []string{"chainring", "cassette", "cog", "chain", "belt", "derailleur", "front-derailleur", "tensioner", "gear-hub", "crank-gearbox", "dynamo", "bar", "mudguard", "stand", "bottle", "cage", "other"} {
		for _, size := range []float64{0, 1e4, math.NaN(), math.Inf(1)} {
			for _, form := range []document.Form{document.FormBox, document.FormDisc, document.FormRod} {
				for _, at := range []mass.Vec{{}, {X: 1e6, Z: -1e6}, {X: math.NaN()}} {
					s := specimen.Driven("derailleur-two-rings")
					p := document.Part{ID: "odd", Kind: kind, Station: "front-mudguard", Shape: document.Shape{Form: form, Size: document.Vec3{size, size, size}, Pitch: size}}
					s.Mount(&p, at)
					s.Fittings = append([]scene.Fitting{{Kind: kind, Form: form, Size: mass.Vec{X: size, Y: size, Z: size}, Place: at, Teeth: []int{-3, 0, 1, 7, 1 << 40}}}, s.Fittings...)
					for _, aspect := range []scene.Aspect{scene.Side, scene.Rear} {
						v := scene.View{Words: specimen.Words, Aspect: aspect, Labels: true}
						checkFinite(t, scene.Draw(s, v, scene.Fit(&s, v, 390, 300)))
					}
				}
			}
		}
	}
}
