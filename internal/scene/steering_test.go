package scene_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// On demand trail, mechanical trail and wheel flop are told, with the values that
// the geometry gives by the textbook's c, c sin and c sin cos of the head angle,
// and what turns with the bar has a ring for each of its dots.
func TestSteeringIsDrawn(t *testing.T) {
	s := specimen.Travel()
	s.Ghost = nil
	v := scene.View{Words: specimen.Words}
	cam := scene.Fit(&s, v, 1000, 640)
	plain := scene.Draw(s, v, cam)
	v.Steering = true
	drawn := scene.Draw(s, v, cam)
	said := map[string]bool{}
	for _, l := range drawn.Labels {
		said[l.Text] = true
	}
	c, a := s.Bike.Trail, s.Bike.HeadAngle
	for _, mm := range []float64{c, c * math.Sin(a), c * math.Sin(a) * math.Cos(a)} {
		want := strconv.FormatFloat(math.Round(1000*mm), 'f', 0, 64) + "\u00a0mm"
		found := false
		for text := range said {
			found = found || strings.Contains(text, want)
		}
		if !found {
			t.Errorf("%s is told nowhere among %v", want, said)
		}
	}
	turns, rings := 0, 0
	for i := range s.Markers {
		m := &s.Markers[i]
		switch document.Carrier(m.Carrier) {
		case document.ForkUpper, document.ForkLower, document.FrontWheel:
			turns++
			if !m.Turns() {
				t.Errorf("%s does not turn", m.Part)
			}
		default:
			if m.Turns() {
				t.Errorf("%s turns", m.Part)
			}
		}
	}
	dashed := func(p *scene.Scene) (n int) {
		for _, m := range p.Marks {
			if m.Stroke == scene.Dimension && len(m.Dash) == 2 {
				n++
			}
		}
		return n
	}
	rings = dashed(drawn)
	if rings < turns/2 || rings > turns || dashed(plain) != 0 { // a pair is one dot from the side
		t.Errorf("%d rings for %d markers that turn, %d without being asked", rings, turns, dashed(plain))
	}
	v.Aspect = scene.Rear
	if n := dashed(scene.Draw(s, v, scene.Fit(&s, v, 1000, 640))); n != 0 {
		t.Errorf("%d rings from behind", n)
	}
}
