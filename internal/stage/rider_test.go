package stage

import (
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// ridden is a stage with a rider on the bike, and one part on it.
func ridden(t *testing.T) (*Stage, float64, float64) {
	t.Helper()
	s := specimen.Travel()
	s.Ghost = nil
	thigh := scene.Limb{From: mass.Vec{X: 0.3, Y: -0.1, Z: 1}, To: mass.Vec{X: 0.7, Y: -0.1, Z: 0.9}, R: 0.08, S: 0.06, Member: scene.Leg}
	s.Rider = []scene.Limb{thigh}
	s.Markers = []scene.Marker{
		{Part: "rider:r", Name: "R", Mass: 80, Place: mass.Vec{X: 0.4, Z: 1.6}, Role: scene.Body},
		{Part: "bolt", Mass: 0.1, Place: mass.Vec{X: 0.5, Z: 0.95}},
	}
	st := &Stage{}
	st.Draw(s, scene.View{}, 760, 440)
	c := st.Camera()
	x, y := c.At(mass.Vec{X: 0.35, Z: 1})
	return st, x, y
}

// Anywhere on the body the pointer finds the rider, and a part that lies upon it
// all the same; the rider is chosen and never dragged.
func TestRiderIsPicked(t *testing.T) {
	st, x, y := ridden(t)
	in := st.Pointer(mouse("move", x, y))
	if in.Hover == nil || *in.Hover != "rider:r" || in.Cursor != "pointer" {
		t.Fatalf("on the thigh: %+v", in)
	}
	bolt := spot(st, "bolt", 0)
	if in := st.Pointer(mouse("move", bolt.X, bolt.Y)); in.Hover == nil || *in.Hover != "bolt" || in.Cursor != "grab" {
		t.Errorf("on a part before the thigh: %+v", in)
	}
	st.Pointer(mouse("down", x, y))
	if in := st.Pointer(mouse("up", x, y)); in.Select == nil || *in.Select != "rider:r" {
		t.Errorf("a click says %+v", in)
	}
	st.Pointer(mouse("down", x, y))
	for _, e := range []Event{mouse("move", x+40, y), mouse("up", x+40, y)} {
		if in := st.Pointer(e); in.Move != nil || in.Select != nil {
			t.Errorf("dragging the rider says %+v", in)
		}
	}
	st, x, y = ridden(t)
	if in := st.Pointer(touch("down", 1, x, y)); in.Cursor == "grabbing" {
		t.Error("a finger on the rider holds the page")
	}
	if in := st.Pointer(touch("up", 1, x, y)); in.Select == nil || *in.Select != "rider:r" {
		t.Errorf("a tap says %+v", in)
	}
}
