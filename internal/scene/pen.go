package scene

import "math"

// pen collects the steps of paths in one arena and makes marks of them. Its
// coordinates are px; what is in metres goes through the camera first.
type pen struct {
	cam  Camera
	out  *Scene
	segs []Seg
	from int // where the path in hand begins
}

// pt is a point: px in the picture, or metres in its plane.
type pt struct{ x, y float64 }

func (a pt) add(b pt) pt             { return pt{a.x + b.x, a.y + b.y} }
func (a pt) sub(b pt) pt             { return pt{a.x - b.x, a.y - b.y} }
func (a pt) mul(f float64) pt        { return pt{a.x * f, a.y * f} }
func (a pt) dot(b pt) float64        { return a.x*b.x + a.y*b.y }
func (a pt) len() float64            { return math.Sqrt(a.x*a.x + a.y*a.y) } // farOff and less: its square does not overflow
func (a pt) lerp(b pt, t float64) pt { return pt{a.x + (b.x-a.x)*t, a.y + (b.y-a.y)*t} }

// left is a turned by a quarter, from x towards y.
func (a pt) left() pt { return pt{-a.y, a.x} }

// unit returns a's direction, and x's for what has none.
func (a pt) unit() pt {
	l := a.len()
	if !(l > 1e-12) || math.IsInf(l, 0) {
		return pt{1, 0}
	}
	return a.mul(1 / l)
}

// along returns the point at the way s along and t to the left of the line
// from a to b.
func along(a, b pt, s, t float64) pt {
	d := b.sub(a).unit()
	return a.add(d.mul(s)).add(d.left().mul(t))
}

func (p *pen) px(w pt) pt { x, y := p.cam.XY(w.x, w.y); return pt{x, y} }

// mm returns a length in px.
func (p *pen) mm(l float64) float64 { return l / 1000 * p.cam.Scale }

func (p *pen) move(a pt) { p.segs = append(p.segs, Seg{Op: Move, X: a.x, Y: a.y}) }
func (p *pen) line(a pt) { p.segs = append(p.segs, Seg{Op: Line, X: a.x, Y: a.y}) }
func (p *pen) close()    { p.segs = append(p.segs, Seg{Op: Close}) }

func (p *pen) cubic(c1, c2, a pt) {
	p.segs = append(p.segs, Seg{Op: Cubic, X: a.x, Y: a.y, X1: c1.x, Y1: c1.y, X2: c2.x, Y2: c2.y})
}

func (p *pen) circle(c pt, r float64) {
	p.segs = append(p.segs, Seg{Op: Circle, X: c.x, Y: c.y, R: r})
}

// arc goes on from where the path is, which must be at the angle a0, to a1
// round c; angles in rad from x towards y. A cubic for each quarter at most:
// its error is 3e-4 of r.
func (p *pen) arc(c pt, r, a0, a1 float64) {
	n := int(math.Ceil(sane(math.Abs(a1-a0), 0, 2*math.Pi) / (math.Pi/2 + 1e-9)))
	if n < 1 {
		return
	}
	step := (a1 - a0) / float64(n)
	k := 4. / 3 * math.Tan(step/4) * r
	for i := range n {
		s0, c0 := math.Sincos(a0 + step*float64(i))
		s1, c1 := math.Sincos(a0 + step*float64(i+1))
		p.cubic(
			pt{c.x + r*c0 - k*s0, c.y + r*s0 + k*c0},
			pt{c.x + r*c1 + k*s1, c.y + r*s1 - k*c1},
			pt{c.x + r*c1, c.y + r*s1})
	}
}

// ellipse is a whole one, upright.
func (p *pen) ellipse(c pt, rx, ry float64) {
	const k = 0.5522847498
	p.move(pt{c.x + rx, c.y})
	p.cubic(pt{c.x + rx, c.y + k*ry}, pt{c.x + k*rx, c.y + ry}, pt{c.x, c.y + ry})
	p.cubic(pt{c.x - k*rx, c.y + ry}, pt{c.x - rx, c.y + k*ry}, pt{c.x - rx, c.y})
	p.cubic(pt{c.x - rx, c.y - k*ry}, pt{c.x - k*rx, c.y - ry}, pt{c.x, c.y - ry})
	p.cubic(pt{c.x + k*rx, c.y - ry}, pt{c.x + rx, c.y - k*ry}, pt{c.x + rx, c.y})
	p.close()
}

// roundBox is an upright rectangle with round corners.
func (p *pen) roundBox(b box, r float64) {
	r = min(r, (b.x1-b.x0)/2, (b.y1-b.y0)/2)
	p.move(pt{b.x0 + r, b.y0})
	p.line(pt{b.x1 - r, b.y0})
	p.arc(pt{b.x1 - r, b.y0 + r}, r, -math.Pi/2, 0)
	p.line(pt{b.x1, b.y1 - r})
	p.arc(pt{b.x1 - r, b.y1 - r}, r, 0, math.Pi/2)
	p.line(pt{b.x0 + r, b.y1})
	p.arc(pt{b.x0 + r, b.y1 - r}, r, math.Pi/2, math.Pi)
	p.line(pt{b.x0, b.y0 + r})
	p.arc(pt{b.x0 + r, b.y0 + r}, r, math.Pi, 3*math.Pi/2)
	p.close()
}

// taper is a straight tube from a to b with the half-widths ra and rb, cut
// square. All closed shapes of a pen turn the same way round, from x towards y,
// so that those which overlap in one path are one area.
func (p *pen) taper(a, b pt, ra, rb float64) {
	n := b.sub(a).unit().left()
	p.move(a.sub(n.mul(ra)))
	p.line(b.sub(n.mul(rb)))
	p.line(b.add(n.mul(rb)))
	p.line(a.add(n.mul(ra)))
	p.close()
}

// capsule is a taper with round ends.
func (p *pen) capsule(a, b pt, ra, rb float64) {
	d := b.sub(a).unit()
	n := d.left()
	at := math.Atan2(n.y, n.x)
	p.move(a.sub(n.mul(ra)))
	p.line(b.sub(n.mul(rb)))
	p.arc(b, rb, at-math.Pi, at)
	p.line(a.add(n.mul(ra)))
	p.arc(a, ra, at, at+math.Pi)
	p.close()
}

// shape is a closed polygon, whichever way round it is given.
func (p *pen) shape(pts ...pt) {
	area, n := 0.0, len(pts)
	for i, a := range pts {
		b := pts[(i+1)%n]
		area += a.x*b.y - b.x*a.y
	}
	for i := range pts {
		a := pts[i]
		if area < 0 {
			a = pts[n-1-i]
		}
		if i == 0 {
			p.move(a)
		} else {
			p.line(a)
		}
	}
	p.close()
}

// take ends the path in hand and returns it. A path that leads to where no
// painter could follow is nil: a figure gone wrong costs its own shape and no
// more.
func (p *pen) take() []Seg {
	n := len(p.segs)
	path := p.segs[p.from:n:n]
	for i := range path {
		g := &path[i]
		sum := math.Abs(g.X) + math.Abs(g.Y) + math.Abs(g.R) + math.Abs(g.X1) + math.Abs(g.Y1) + math.Abs(g.X2) + math.Abs(g.Y2)
		if !(sum < farOff) || g.R < 0 {
			p.segs = p.segs[:p.from]
			return nil
		}
	}
	p.from = n
	return path
}

// farOff is how far, px, a path may lead; no number is farther.
const farOff = 1e7

// fill, stroke and paint make a mark of the path in hand.
func (p *pen) fill(k Ink) { p.mark(Mark{Fill: k}) }

func (p *pen) stroke(k Ink, w float64) { p.mark(Mark{Stroke: k, Width: w}) }

func (p *pen) paint(fill, stroke Ink, w float64) { p.mark(Mark{Fill: fill, Stroke: stroke, Width: w}) }

func (p *pen) dashed(k Ink, w float64, dash ...float64) {
	p.mark(Mark{Stroke: k, Width: w, Dash: dash, Butt: true})
}

func (p *pen) mark(m Mark) {
	m.Path = p.take()
	p.add(m)
}

// add makes a mark, unless there is nothing to see of it.
func (p *pen) add(m Mark) {
	if !(m.Width > 0 && m.Width < farOff) {
		m.Stroke, m.Width = None, 0
	}
	for _, d := range m.Dash {
		if !(d > 0.05) { // too fine to be dashed
			m.Dash = nil
			break
		}
	}
	if len(m.Path) > 0 && (m.Fill != None || m.Stroke != None) {
		p.out.Marks = append(p.out.Marks, m)
	}
}

// solid paints the path in hand as one area with an edge: the edge is drawn
// first and the area over its inner half, so that shapes which overlap have a
// common edge and none between them.
func (p *pen) solid(fill, edge Ink, w float64) {
	path := p.take()
	p.add(Mark{Path: path, Stroke: edge, Width: 2 * w})
	p.add(Mark{Path: path, Fill: fill})
}
