package mesh

import (
	"math"

	"steelyard/internal/scene"
)

// Vertex is a corner of a triangle, in pixels of the screen.
type Vertex struct {
	X, Y  float32
	Cover float32   // 0 to 1
	Ink   scene.Ink // what colour to give it
}

// Mesh is a list of triangles, painted in order. The zero Mesh is empty and
// ready.
type Mesh struct {
	Vertices []Vertex
	Indices  []uint32 // three for a triangle

	// The rest belongs to the present mark and is kept for its memory.
	ink    scene.Ink
	lines  []polyline
	points []point
	uncut  struct { // the same before dashes were cut
		lines  []polyline
		points []point
	}
	ears []int
	rim  []rim
}

// Reset empties the mesh and keeps its memory.
func (m *Mesh) Reset() {
	m.Vertices, m.Indices = m.Vertices[:0], m.Indices[:0]
}

// Scene adds all marks of a scene, density pixels of the screen to each of the
// scene's. Marks out of sight are left out.
func (m *Mesh) Scene(s *scene.Scene, density float64) {
	for i := range s.Marks {
		m.mark(&s.Marks[i], s.Width, s.Height, density)
	}
}

func (m *Mesh) mark(k *scene.Mark, width, height, density float64) {
	if !inSight(k.Path, width, height, k.Width) {
		return
	}
	m.flatten(k.Path, density)
	if k.Fill != scene.None {
		m.ink = k.Fill
		over := k.Stroke != scene.None && len(k.Dash) == 0 && k.Width*density >= hides
		for _, l := range m.lines {
			m.fill(m.points[l.from:l.to], over && l.closed)
		}
	}
	if k.Stroke != scene.None && k.Width > 0 {
		m.ink = k.Stroke
		if pattern, ok := pattern(k.Dash, density); ok {
			m.dash(pattern, (k.Width+2)*density, width*density, height*density)
		}
		for _, l := range m.lines {
			m.stroke(m.points[l.from:l.to], l.closed, k.Width*density, !k.Butt)
		}
	}
}

// hides is from which width on, px, the stroke of an area covers its rim.
const hides = 1.2

// vertex adds a vertex and returns its number.
func (m *Mesh) vertex(p point, cover float64) uint32 {
	m.Vertices = append(m.Vertices, Vertex{float32(p.x), float32(p.y), float32(cover), m.ink})
	return uint32(len(m.Vertices) - 1)
}

func (m *Mesh) triangle(a, b, c uint32) { m.Indices = append(m.Indices, a, b, c) }

// quad adds the two triangles of a, b, c, d, going round.
func (m *Mesh) quad(a, b, c, d uint32) { m.Indices = append(m.Indices, a, b, c, a, c, d) }

// profile is how a line of a width, px, covers what lies across it: cover from
// its middle out to core, and from there less and less to none at reach. It is
// the share of a pixel-wide window that the line fills, so that the pixels across
// the line sum up to its width wherever it lies between them. A line that is thinner
// than a pixel has no core: a ridge as wide as two does the same with fewer corners.
func profile(width float64) (cover, core, reach float64) {
	if width <= 1 {
		return width, 0, 1
	}
	return 1, (width - 1) / 2, (width + 1) / 2
}

// inSight reports whether a path stroked with a width may touch a picture of the
// given size. A path with a coordinate that is not finite is out of sight.
func inSight(path []scene.Seg, width, height, stroke float64) bool {
	sum := 0. // of everything times zero: not zero when anything is not finite
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	reach := func(x, y, r float64) {
		sum += (x + y + r) * 0
		x0, x1 = min(x0, x-r), max(x1, x+r)
		y0, y1 = min(y0, y-r), max(y1, y+r)
	}
	for i := range path {
		g := &path[i]
		switch g.Op {
		case scene.Move, scene.Line:
			reach(g.X, g.Y, 0)
		case scene.Cubic:
			reach(g.X, g.Y, 0)
			reach(g.X1, g.Y1, 0)
			reach(g.X2, g.Y2, 0)
		case scene.Circle:
			reach(g.X, g.Y, g.R)
		}
	}
	half := stroke/2 + 1
	return sum == 0 && x1 >= -half && y1 >= -half && x0 <= width+half && y0 <= height+half
}
