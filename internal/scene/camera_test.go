package scene_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

func drawCamera(t *rapid.T) scene.Camera {
	s := specimen.Travel()
	v := scene.View{Aspect: scene.Aspect(rapid.IntRange(0, 1).Draw(t, "aspect"))}
	return scene.Fit(&s, v, rapid.Float64Range(100, 2000).Draw(t, "w"), rapid.Float64Range(100, 1200).Draw(t, "h"))
}

func TestCameraThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCamera(t)
		c.Zoom(rapid.Float64Range(0.1, 100).Draw(t, "zoom"), 50, 60)
		u, v := rapid.Float64Range(-3, 3).Draw(t, "u"), rapid.Float64Range(-3, 3).Draw(t, "v")
		x, y := c.XY(u, v)
		u2, v2 := c.UV(x, y)
		if math.Abs(u-u2)+math.Abs(v-v2) > 1e-9 {
			t.Fatalf("(%v, %v) came back as (%v, %v)", u, v, u2, v2)
		}
		// A displacement in space and its way in the picture belong together.
		r := c.Aspect.Space(u, v)
		x0, y0 := c.At(r)
		dx, dy := rapid.Float64Range(-500, 500).Draw(t, "dx"), rapid.Float64Range(-500, 500).Draw(t, "dy")
		x1, y1 := c.At(r.Add(c.By(dx, dy)))
		if math.Abs(x1-x0-dx)+math.Abs(y1-y0-dy) > 1e-6 {
			t.Fatalf("moved by (%v, %v), want (%v, %v)", x1-x0, y1-y0, dx, dy)
		}
	})
}

func TestZoomKeepsThePoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCamera(t)
		bike := specimen.Travel().Bike
		points := []mass.Vec{bike.RearAxle, bike.FrontAxle, bike.Grip, bike.SaddleTop, bike.RearContact}
		x, y := c.At(points[rapid.IntRange(0, len(points)-1).Draw(t, "point")])
		u, v := c.UV(x, y)
		c.Zoom(rapid.Float64Range(1, 20).Draw(t, "factor"), x, y)
		if u2, v2 := c.UV(x, y); math.Abs(u-u2)+math.Abs(v-v2) > 1e-9 {
			t.Fatalf("(%v, %v) was under the pointer, now (%v, %v)", u, v, u2, v2)
		}
	})
}

// However the camera is driven, it stays over the bike and within its zoom, and
// finds back.
func TestCameraStaysInBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCamera(t)
		start := c
		for range rapid.IntRange(0, 40).Draw(t, "steps") {
			if rapid.Bool().Draw(t, "pan") {
				c.Pan(rapid.Float64Range(-1e5, 1e5).Draw(t, "dx"), rapid.Float64Range(-1e5, 1e5).Draw(t, "dy"))
			} else {
				c.Zoom(rapid.Float64Range(0, 50).Draw(t, "f"), rapid.Float64Range(0, 2000).Draw(t, "x"), rapid.Float64Range(0, 2000).Draw(t, "y"))
			}
			if z := c.Zoomed(); !(z >= 0.399 && z <= 40.01) {
				t.Fatalf("zoomed %v times", z)
			}
			if !(c.U > -1 && c.U < 2.5 && c.V > -0.5 && c.V < 2) {
				t.Fatalf("looks at (%v, %v), off the bike", c.U, c.V)
			}
		}
		c.Reset()
		if c != start {
			t.Fatalf("reset to %+v, want %+v", c, start)
		}
	})
}

// A larger picture of the same bike keeps what the user looks at in the middle.
func TestRefit(t *testing.T) {
	s := specimen.Travel()
	c := scene.Fit(&s, scene.View{}, 400, 300)
	c.Zoom(5, 100, 100)
	u, v, scale := c.U, c.V, c.Scale
	c.Refit(scene.Fit(&s, scene.View{}, 800, 500))
	if c.Width != 800 || c.Height != 500 || c.U != u || c.V != v || c.Scale != scale {
		t.Errorf("got %+v", c)
	}
}
