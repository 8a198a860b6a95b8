package mesh

import (
	"image"
	"image/draw"
	"math"
	"testing"

	"golang.org/x/image/vector"
	"pgregory.net/rapid"

	"steelyard/internal/scene"
)

// cover paints a mesh of one ink into a w by h picture, pixel by pixel over
// what is there, as a graphics card does: each pixel's middle takes the cover
// of the triangle over it.
func cover(m *Mesh, w, h int) []float64 {
	out := make([]float64, w*h)
	for i := 0; i < len(m.Indices); i += 3 {
		a, b, c := m.Vertices[m.Indices[i]], m.Vertices[m.Indices[i+1]], m.Vertices[m.Indices[i+2]]
		area := float64((b.X-a.X)*(c.Y-a.Y) - (c.X-a.X)*(b.Y-a.Y))
		if area == 0 {
			continue
		}
		x0, x1 := int(min(a.X, b.X, c.X)), int(max(a.X, b.X, c.X))+1
		y0, y1 := int(min(a.Y, b.Y, c.Y)), int(max(a.Y, b.Y, c.Y))+1
		for y := max(y0, 0); y < min(y1, h); y++ {
			for x := max(x0, 0); x < min(x1, w); x++ {
				// A little off, so that no pixel lies on a common edge of two.
				px, py := float64(x)+0.5+1.3e-5, float64(y)+0.5+2.7e-5
				edge := func(p, q Vertex) float64 {
					return (float64(q.X)-float64(p.X))*(py-float64(p.Y)) - (px-float64(p.X))*(float64(q.Y)-float64(p.Y))
				}
				u, v := edge(b, c)/area, edge(c, a)/area
				t := 1 - u - v
				if min(u, v, t) < 0 {
					continue
				}
				k := u*float64(a.Cover) + v*float64(b.Cover) + t*float64(c.Cover)
				o := &out[y*w+x]
				*o += k * (1 - *o)
			}
		}
	}
	return out
}

// exact is the area that a path fills of each pixel, by x/image's rasteriser.
func exact(path []scene.Seg, w, h int) []float64 {
	z := vector.NewRasterizer(w, h)
	f := func(x float64) float32 { return float32(x) }
	for i, g := range path {
		switch g.Op {
		case scene.Move:
			if i > 0 {
				z.ClosePath()
			}
			z.MoveTo(f(g.X), f(g.Y))
		case scene.Line:
			z.LineTo(f(g.X), f(g.Y))
		case scene.Cubic:
			z.CubeTo(f(g.X1), f(g.Y1), f(g.X2), f(g.Y2), f(g.X), f(g.Y))
		case scene.Circle:
			const n = 400
			for i := range n {
				s, c := math.Sincos(2 * math.Pi * float64(i) / n)
				if x, y := f(g.X+g.R*c), f(g.Y+g.R*s); i == 0 {
					z.MoveTo(x, y)
				} else {
					z.LineTo(x, y)
				}
			}
			z.ClosePath()
		case scene.Close:
			z.ClosePath()
		}
	}
	z.ClosePath()
	mask := image.NewAlpha(image.Rect(0, 0, w, h))
	z.DrawOp = draw.Src
	z.Draw(mask, mask.Bounds(), image.Opaque, image.Point{})
	out := make([]float64, w*h)
	for i, a := range mask.Pix {
		out[i] = float64(a) / 255
	}
	return out
}

func sum(c []float64) float64 {
	s := 0.
	for _, v := range c {
		s += v
	}
	return s
}

// apart is the largest difference of two pictures.
func apart(a, b []float64) float64 {
	d := 0.
	for i := range a {
		d = max(d, math.Abs(a[i]-b[i]))
	}
	return d
}

func meshOf(k scene.Mark, w, h int) *Mesh {
	m := &Mesh{}
	m.Scene(&scene.Scene{Width: float64(w), Height: float64(h), Marks: []scene.Mark{k}}, 1)
	return m
}

func poly(closed bool, xy ...float64) []scene.Seg {
	var p []scene.Seg
	for i := 0; i < len(xy); i += 2 {
		op := scene.Line
		if i == 0 {
			op = scene.Move
		}
		p = append(p, scene.Seg{Op: op, X: xy[i], Y: xy[i+1]})
	}
	if closed {
		p = append(p, scene.Seg{Op: scene.Close})
	}
	return p
}

// Fills are held against the rasteriser of golang.org/x/image/vector, which
// computes the exact area of each pixel.
func TestFillsCoverWhatARasteriserFills(t *testing.T) {
	const w, h = 100, 80
	for name, path := range map[string][]scene.Seg{
		"circle":       {{Op: scene.Circle, X: 50.3, Y: 40.7, R: 27.2}},
		"small circle": {{Op: scene.Circle, X: 50.3, Y: 40.7, R: 2.1}},
		"box":          poly(true, 20, 10.5, 80.25, 10.5, 80.25, 60, 20, 60),
		"slanting box": poly(true, 20, 30, 70, 10, 82, 40, 32, 60),
		"other way":    poly(true, 32, 60, 82, 40, 70, 10, 20, 30),
		"dart":         poly(true, 10, 10, 90, 40, 10, 70, 35, 40),
		"comb":         poly(true, 10, 10, 90, 10, 90, 70, 70, 70, 70, 30, 50, 30, 50, 70, 30, 70, 30, 30, 10, 30),
		"star":         poly(true, 50, 5, 58, 30, 85, 30, 63, 46, 72, 72, 50, 56, 28, 72, 37, 46, 15, 30, 42, 30),
		"not closed":   poly(false, 20, 10, 80, 10, 50, 60),
		"leaf": {{Op: scene.Move, X: 10, Y: 40}, {Op: scene.Cubic, X1: 30, Y1: 0, X2: 70, Y2: 0, X: 90, Y: 40},
			{Op: scene.Cubic, X1: 70, Y1: 20, X2: 30, Y2: 20, X: 10, Y: 40}, {Op: scene.Close}},
		"two that overlap": append(poly(true, 10, 30, 90, 30, 90, 50, 10, 50), poly(true, 40, 10, 60, 10, 60, 70, 40, 70)...),
	} {
		t.Run(name, func(t *testing.T) {
			got, want := cover(meshOf(scene.Mark{Path: path, Fill: scene.Text}, w, h), w, h), exact(path, w, h)
			if a, b := sum(got), sum(want); math.Abs(a-b) > 0.01*b+0.5 {
				t.Errorf("area %.2f, want %.2f", a, b)
			}
			// A pixel at a corner or under a slanting edge may differ, but by
			// much less than without soft edges (where half would be usual).
			if d := apart(got, want); d > 0.35 {
				t.Errorf("a pixel is off by %.2f", d)
			}
		})
	}
}

// Strokes are held against the same rasteriser, filling outlines made by hand.
func TestStrokesCoverTheirOutlines(t *testing.T) {
	const w, h = 100, 80
	circle := func(r float64) []scene.Seg { return []scene.Seg{{Op: scene.Circle, X: 50, Y: 40, R: r}} }
	disc := func(x, y, r float64) []scene.Seg { return []scene.Seg{{Op: scene.Circle, X: x, Y: y, R: r}} }
	less := func(a, b []float64) []float64 {
		out := make([]float64, len(a))
		for i := range a {
			out[i] = a[i] - b[i]
		}
		return out
	}
	union := func(paths ...[]scene.Seg) []float64 {
		out := make([]float64, w*h)
		for _, p := range paths {
			for i, v := range exact(p, w, h) {
				out[i] = max(out[i], v)
			}
		}
		return out
	}
	for _, c := range []struct {
		name string
		mark scene.Mark
		want []float64
	}{
		{"ring", scene.Mark{Path: circle(30), Width: 6}, less(exact(circle(33), w, h), exact(circle(27), w, h))},
		{"butt", scene.Mark{Path: poly(false, 20, 40, 80, 40), Width: 6, Butt: true}, exact(poly(true, 20, 37, 80, 37, 80, 43, 20, 43), w, h)},
		{"round", scene.Mark{Path: poly(false, 20, 40, 80, 40), Width: 6},
			union(poly(true, 20, 37, 80, 37, 80, 43, 20, 43), disc(20, 40, 3), disc(80, 40, 3))},
		{"corner", scene.Mark{Path: poly(false, 20, 60, 80, 60, 80, 20), Width: 8},
			union(poly(true, 20, 56, 80, 56, 80, 64, 20, 64), poly(true, 76, 60, 76, 20, 84, 20, 84, 60), disc(20, 60, 4), disc(80, 60, 4), disc(80, 20, 4))},
		{"square", scene.Mark{Path: poly(true, 30, 20, 70, 20, 70, 60, 30, 60), Width: 8},
			union(poly(true, 26, 20, 34, 20, 34, 60, 26, 60), poly(true, 66, 20, 74, 20, 74, 60, 66, 60),
				poly(true, 30, 16, 70, 16, 70, 24, 30, 24), poly(true, 30, 56, 70, 56, 70, 64, 30, 64),
				disc(30, 20, 4), disc(70, 20, 4), disc(70, 60, 4), disc(30, 60, 4))},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.mark.Stroke = scene.Text
			got := cover(meshOf(c.mark, w, h), w, h)
			if a, b := sum(got), sum(c.want); math.Abs(a-b) > 0.015*b {
				t.Errorf("area %.2f, want %.2f", a, b)
			}
			if d := apart(got, c.want); d > 0.3 {
				t.Errorf("a pixel is off by %.2f", d)
			}
		})
	}
}

// A line thinner than a pixel covers its width times its length, wherever it
// lies between the pixels.
func TestThinLinesArePaler(t *testing.T) {
	const w, h = 100, 40
	for _, width := range []float64{0.2, 0.5, 0.8, 1, 1.3, 2} {
		for _, y := range []float64{20, 20.25, 20.5, 20.9} {
			got := sum(cover(meshOf(scene.Mark{Path: poly(false, 10, y, 90, y), Stroke: scene.Text, Width: width, Butt: true}, w, h), w, h))
			if want := 80 * width; math.Abs(got-want) > 0.02*want {
				t.Errorf("width %v at %v covers %.1f, want %.1f", width, y, got, want)
			}
		}
	}
}

func TestDashes(t *testing.T) {
	const w, h = 120, 40
	line := func(dash ...float64) []float64 {
		return cover(meshOf(scene.Mark{Path: poly(false, 10, 20.5, 110, 20.5), Stroke: scene.Text, Width: 1, Dash: dash, Butt: true}, w, h), w, h)
	}
	got := line(6, 4)
	for x := range w {
		want := 0.
		if k := (x - 10) % 10; x >= 10 && x < 110 && k < 6 {
			want = 1
		}
		// The soft ends take half of the pixel on either side of an end.
		if g := got[20*w+x]; math.Abs(g-want) > 0.51 {
			t.Errorf("pixel %d has %.2f, want %.0f", x, g, want)
		}
	}
	if a, b := sum(line(5)), sum(line(5, 5)); math.Abs(a-b) > 1e-9 {
		t.Errorf("an odd pattern covers %v, the same twice %v", a, b)
	}
	if a, b := sum(line(-1, 5)), sum(line()); a != b {
		t.Errorf("a pattern that is none covers %v, the whole line %v", a, b)
	}
	// Round a corner a dash goes on.
	m := &Mesh{}
	m.flatten(poly(false, 0, 10, 20, 10, 20, 30), 1)
	m.dash([]float64{15, 10}, 5, w, h)
	if len(m.lines) != 2 || m.lines[1] != (polyline{2, 4, false}) {
		t.Errorf("dashes %v", m.lines)
	}
	m.flatten(poly(false, 0, 10, 20, 10, 20, 30), 1)
	m.dash([]float64{25, 10}, 5, w, h)
	if len(m.lines) != 2 || m.lines[0] != (polyline{0, 3, false}) {
		t.Errorf("dashes %v", m.lines)
	}
	// A line that runs a thousand kilometres out of the picture costs as little
	// as one that ends at its edge.
	m = meshOf(scene.Mark{Path: poly(false, -1e9, 20, 1e9, 20), Stroke: scene.Text, Width: 1, Dash: []float64{6, 4}}, w, h)
	if len(m.Indices) > 6000 {
		t.Errorf("%d indices for a dashed line across the picture", len(m.Indices))
	}
}

func TestOutOfSight(t *testing.T) {
	nan := math.NaN()
	for _, path := range [][]scene.Seg{
		nil,
		poly(true, nan, 0, 10, 0, 10, 10),
		poly(true, 0, math.Inf(1), 10, 0, 10, 10),
		poly(true, -50, -50, -40, -50, -40, -40),
		{{Op: scene.Circle, X: 200, Y: 20, R: 50}},
		{{Op: scene.Circle, X: 20, Y: 20, R: nan}},
	} {
		if m := meshOf(scene.Mark{Path: path, Fill: scene.Text, Stroke: scene.Text, Width: 1}, 100, 100); len(m.Vertices) > 0 {
			t.Errorf("%v gave %d vertices", path, len(m.Vertices))
		}
	}
}

// Whatever the path, triangles name vertices that exist, and vertices are
// finite and covered by a share.
func TestAnyPath(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := rapid.OneOf(rapid.Float64Range(-50, 150), rapid.Float64Range(-1e7, 1e7), rapid.SampledFrom([]float64{0, 0, 50, 1e-9}))
		seg := rapid.Custom(func(t *rapid.T) scene.Seg {
			return scene.Seg{
				Op: scene.Op(rapid.IntRange(0, int(scene.Close)).Draw(t, "op")),
				X:  num.Draw(t, "x"), Y: num.Draw(t, "y"), R: rapid.Float64Range(0, 1e5).Draw(t, "r"),
				X1: num.Draw(t, "x1"), Y1: num.Draw(t, "y1"), X2: num.Draw(t, "x2"), Y2: num.Draw(t, "y2"),
			}
		})
		m := meshOf(scene.Mark{
			Path: rapid.SliceOfN(seg, 0, 12).Draw(t, "path"),
			Fill: scene.Text, Stroke: scene.Text, Width: rapid.Float64Range(0, 40).Draw(t, "width"),
			Dash: rapid.SliceOfN(rapid.Float64Range(-1, 30), 0, 3).Draw(t, "dash"),
			Butt: rapid.Bool().Draw(t, "butt"),
		}, 100, 100)
		if len(m.Indices)%3 != 0 {
			t.Fatalf("%d indices", len(m.Indices))
		}
		for _, i := range m.Indices {
			if int(i) >= len(m.Vertices) {
				t.Fatalf("index %d of %d vertices", i, len(m.Vertices))
			}
		}
		for _, v := range m.Vertices {
			if x := v.X + v.Y; x-x != 0 || !(v.Cover >= 0 && v.Cover <= 1) {
				t.Fatalf("vertex %+v", v)
			}
		}
	})
}

func BenchmarkScene(b *testing.B) {
	s := &scene.Scene{Width: 900, Height: 600}
	for i := range 300 {
		x, y := float64(i%30)*30, float64(i/30)*60
		s.Marks = append(s.Marks,
			scene.Mark{Path: []scene.Seg{{Op: scene.Circle, X: x, Y: y, R: 10}}, Fill: scene.Sprung, Stroke: scene.Paper, Width: 1.3},
			scene.Mark{Path: poly(true, x, y, x+40, y+10, x+38, y+18, x-2, y+8), Fill: scene.Tube, Stroke: scene.Outline, Width: 1})
	}
	var m Mesh
	for b.Loop() {
		m.Reset()
		m.Scene(s, 2)
	}
	b.ReportMetric(float64(len(m.Vertices)), "vertices")
}
