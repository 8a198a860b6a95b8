package mesh

import (
	"math"

	"steelyard/internal/scene"
)

type point struct{ x, y float64 }

func (a point) add(b point) point     { return point{a.x + b.x, a.y + b.y} }
func (a point) sub(b point) point     { return point{a.x - b.x, a.y - b.y} }
func (a point) mul(f float64) point   { return point{a.x * f, a.y * f} }
func (a point) dot(b point) float64   { return a.x*b.x + a.y*b.y }
func (a point) cross(b point) float64 { return a.x*b.y - a.y*b.x }

// len is plain: nothing in sight is so far away that its square overflows, and
// math.Hypot would take a fifth of the time of a picture.
func (a point) len() float64 { return math.Sqrt(a.x*a.x + a.y*a.y) }

// left is a turned by a quarter, from x towards y.
func (a point) left() point { return point{-a.y, a.x} }

// polyline is a sub-path: points from to to. The first point of a closed one
// is not repeated.
type polyline struct {
	from, to int
	closed   bool
}

const (
	// stray is how far a line may lie from the curve that it stands for, px.
	stray = 0.2
	// most is how many lines may stand for one curve.
	most = 1024
	// near is the distance under which two points are one, px.
	near = 1e-3
)

// flatten turns a path into the polylines m.lines, in pixels of the screen.
func (m *Mesh) flatten(path []scene.Seg, density float64) {
	m.lines, m.points = m.lines[:0], m.points[:0]
	from := 0
	add := func(p point) {
		if n := len(m.points); n > from && p.sub(m.points[n-1]).len() < near {
			return
		}
		m.points = append(m.points, p)
	}
	end := func(closed bool) {
		if closed {
			for n := len(m.points); n-from > 1 && m.points[n-1].sub(m.points[from]).len() < near; n-- {
				m.points = m.points[:n-1]
			}
		}
		if len(m.points) > from {
			m.lines = append(m.lines, polyline{from, len(m.points), closed})
		}
		from = len(m.points)
	}
	at := func(x, y float64) point { return point{x * density, y * density} }
	var start point // of the sub-path in hand
	for i := range path {
		g := &path[i]
		if from == len(m.points) && i > 0 && path[i-1].Op == scene.Close && (g.Op == scene.Line || g.Op == scene.Cubic) {
			add(start) // a path goes on from where it closed
		}
		switch g.Op {
		case scene.Move:
			end(false)
			start = at(g.X, g.Y)
			add(start)
		case scene.Line:
			add(at(g.X, g.Y))
		case scene.Cubic:
			if len(m.points) == from {
				add(at(g.X1, g.Y1))
			}
			a, b, c, d := m.points[len(m.points)-1], at(g.X1, g.Y1), at(g.X2, g.Y2), at(g.X, g.Y)
			// Wang's bound on the error of a cubic in n lines: 3/4 of the larger
			// second difference of its points, over n².
			bend := max(a.sub(b.mul(2)).add(c).len(), b.sub(c.mul(2)).add(d).len())
			n := pieces(math.Sqrt(0.75 * bend / stray))
			for i := 1; i <= n; i++ {
				t := float64(i) / float64(n)
				u := 1 - t
				add(a.mul(u * u * u).add(b.mul(3 * u * u * t)).add(c.mul(3 * u * t * t)).add(d.mul(t * t * t)))
			}
		case scene.Circle:
			end(false)
			// The sagitta of a chord of angle 2π/n is r(1 - cos(π/n)).
			c, r := at(g.X, g.Y), g.R*density
			n := max(8, pieces(math.Pi/math.Acos(1-min(stray/max(r, stray), 1))))
			// A polygon of the circle's area: its corners lie a little outside.
			a := 2 * math.Pi / float64(n)
			r *= math.Sqrt(a / math.Sin(a))
			for i := range n {
				sin, cos := math.Sincos(a * float64(i))
				add(point{c.x + r*cos, c.y + r*sin})
			}
			end(true)
		case scene.Close:
			end(true)
		}
	}
	end(false)
}

func pieces(n float64) int { return int(min(max(math.Ceil(n), 1), most)) }
