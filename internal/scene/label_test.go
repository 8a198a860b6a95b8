package scene_test

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// named goes over the bikes that names are tried on, with the sizes of their
// pictures.
func named(try func(name string, s scene.Subject, w, h float64)) {
	for name, s := range map[string]func() scene.Subject{
		"travel": specimen.Travel, "tour": specimen.Tour, "leaned": leaned, "low": low,
		"upright": func() scene.Subject { return specimen.Ridden("upright") },
	} {
		for _, size := range [][2]float64{{760, 440}, {1180, 560}, {390, 300}, {620, 420}, {340, 420}, {480, 300}, {900, 380}, {1000, 700}, {560, 560}} {
			try(name, s(), size[0], size[1])
		}
	}
}

// Names, the centre's too, leave saddle and seatpost to be seen. How large those
// are is measured off the drawing.
func TestNamesLeaveTheSaddleToBeSeen(t *testing.T) {
	named(func(name string, s scene.Subject, w, h float64) {
		v := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
		cam := scene.Fit(&s, v, w, h)
		out := scene.Draw(s, v, cam)
		x, y := cam.At(s.Bike.SaddleTop)
		sx, sy := cam.At(s.Bike.SeatTop)
		m := cam.Scale
		saddle := rect{x - 0.138*m, y - 0.010*m, x + 0.140*m, y + 0.050*m}
		for i := range out.Labels {
			l := &out.Labels[i]
			b := letters(l)
			if b.meets(saddle) {
				t.Errorf("%s, %v x %v: %q at %+v hides the saddle at %+v", name, w, h, l.Text, b, saddle)
			}
			for k := 0.0; k <= 1; k += 0.05 {
				px, py := x+(sx-x)*k, y+(sy-y)*k
				if b.meets(rect{px - 0.012*m, py - 1, px + 0.012*m, py + 1}) {
					t.Errorf("%s, %v x %v: %q at %+v hides the seatpost", name, w, h, l.Text, b)
					break
				}
			}
		}
	})
}

// The leader of a tyre ends on the tyre and not at the hub, where those of all
// that is on the wheel would meet.
func TestLeadersEndOnTheTyre(t *testing.T) {
	seen := 0
	named(func(name string, s scene.Subject, w, h float64) {
		v := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
		cam := scene.Fit(&s, v, w, h)
		out := scene.Draw(s, v, cam)
		for i := range out.Labels {
			l := &out.Labels[i]
			if !strings.HasSuffix(l.Text, " tyre") {
				continue
			}
			axle := s.Bike.RearAxle
			if strings.HasPrefix(l.Text, "Front") {
				axle = s.Bike.FrontAxle
			}
			x, y := cam.At(axle)
			b := letters(l)
			// The leader that begins at the label.
			from, best := math.Inf(1), math.Inf(1)
			for k := range out.Marks {
				m := &out.Marks[k]
				if m.Stroke != scene.Quiet || len(m.Path) != 2 || m.Width != 0.75 {
					continue
				}
				p, q := m.Path[0], m.Path[1]
				// Behind the name stands its mass, at which a leader may begin.
				d := math.Hypot(max(b.x0-q.X, q.X-b.x1-80, 0), max(b.y0-q.Y, q.Y-b.y1, 0))
				if d < best {
					best, from = d, math.Hypot(p.X-x, p.Y-y)
				}
			}
			seen++
			if best > 6 || math.Abs(from-0.345*cam.Scale) > 1 {
				t.Errorf("%s, %v x %v: the leader of %q ends %.0f px from the axle, and the tyre is at %.0f px", name, w, h, l.Text, from, 0.345*cam.Scale)
			}
		}
	})
	if seen < 8 {
		t.Errorf("only %d tyres are named", seen)
	}
}
