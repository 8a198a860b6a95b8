package scene

import (
	"math"

	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Camera says which part of the world fills a picture of which size. It looks
// along an axis, without perspective: everything is to scale.
type Camera struct {
	Aspect        Aspect
	Width, Height float64 // of the picture, px
	U, V          float64 // the point of the plane in the middle of the picture, m
	Scale         float64 // px to the metre

	fit    float64 // the scale at which the subject fills the picture
	fu, fv float64 // and the middle then
	room   box     // what there is to see, m
}

// box is an upright rectangle, in whatever unit.
type box struct{ x0, y0, x1, y1 float64 }

// square is the box round a point that reaches r to each side.
func square(c pt, r float64) box { return box{c.x - r, c.y - r, c.x + r, c.y + r} }

func (b box) empty() bool { return b.x0 > b.x1 || b.y0 > b.y1 }

func (b box) grow(d float64) box { return box{b.x0 - d, b.y0 - d, b.x1 + d, b.y1 + d} }

// with returns the least box that holds b and the point, if that is one.
func (b box) with(x, y float64) box {
	if !units.Finite(x) || !units.Finite(y) {
		return b
	}
	return box{min(b.x0, x), min(b.y0, y), max(b.x1, x), max(b.y1, y)}
}

// ball returns the least box that holds b and a ball, as seen in an aspect.
func (b box) ball(a Aspect, at mass.Vec, r float64) box {
	u, v := a.Plane(at)
	return b.with(u-r, v-r).with(u+r, v+r)
}

func (b box) meets(c box) bool { return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1 }

func (b box) holds(x, y float64) bool { return x >= b.x0 && x <= b.x1 && y >= b.y0 && y <= b.y1 }

var nothing = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

// How far a camera goes, as a multiple of the scale that fits.
const (
	zoomOut = 0.4
	zoomIn  = 40
)

// Fit returns the camera that shows all of the subject in a picture of the
// given size, with room for what is written around it.
func Fit(s *Subject, v View, width, height float64) Camera {
	c := Camera{Aspect: v.Aspect, Width: sane(width, 1, 1e5), Height: sane(height, 1, 1e5)}
	c.room = extent(s, v.Aspect)
	m := margins(v, c.Width, c.Height)
	w, h := c.room.x1-c.room.x0, c.room.y1-c.room.y0
	c.fit = min((c.Width-m.x0-m.x1)/w, (c.Height-m.y0-m.y1)/h)
	c.fit = max(c.fit, 1)
	c.Scale = c.fit
	c.U = (c.room.x0+c.room.x1)/2 + (m.x1-m.x0)/2/c.Scale
	// Of what is left over of the height a quarter goes below.
	over := c.Height - m.y0 - m.y1 - h*c.Scale
	c.V = (c.room.y0+c.room.y1)/2 + (m.y0-m.y1+over/2)/2/c.Scale
	if over > 0 { // nor does the bike sink to the foot of a tall picture
		c.V = min(c.V, c.room.y1)
	}
	c.fu, c.fv = c.U, c.V
	return c
}

// margins are the px kept free on the four sides: x0 left, y0 top, x1 right,
// y1 bottom.
func margins(v View, w, h float64) box {
	side := min(largestDot(w, h)+2, 0.2*w)
	m := box{side, min(side, 0.1*h), side, 58}
	switch {
	case v.Dimensions && v.Aspect == Rear:
		m.y0 += 22
	case v.Dimensions:
		m.y1 = 112
	case v.Steering && v.Aspect == Side:
		m.y1 = 84
	}
	if v.Key {
		m.y1 += 12
	}
	m.y1 = min(m.y1, 0.35*h)
	return m
}

// extent is what a subject and its ghost take up in the plane, m.
func extent(s *Subject, a Aspect) box {
	e := nothing
	for k := s; k != nil; {
		if b := k.Bike; b != nil {
			if a == Side {
				e = e.with(b.RearAxle.X-b.RearRadius, 0).with(b.FrontAxle.X+b.FrontRadius, 2*b.FrontRadius)
			} else {
				e = e.with(-0.25, 0).with(0.25, 2*b.RearRadius)
			}
			for _, p := range []mass.Vec{b.SaddleTop, b.Grip, b.BarClamp, {X: b.Grip.X, Y: -b.Grip.Y, Z: b.Grip.Z}} {
				u, v := a.Plane(p)
				e = e.with(u, v+0.03)
			}
		}
		for i := range k.Markers {
			e = e.with(a.Plane(k.Markers[i].Place))
		}
		if k == s {
			k = s.Ghost
		} else {
			k = nil
		}
	}
	for i := range s.Rider {
		l := &s.Rider[i]
		e = e.ball(a, l.From, l.R).ball(a, l.To, l.S)
	}
	if e.empty() {
		e = box{-0.4, 0, 1.6, 1.1}
	}
	// Absurd places (a part a kilometre off) do not make the bike a dot.
	e.x0, e.x1 = max(e.x0, -5), min(e.x1, 8)
	e.y0, e.y1 = max(e.y0, -2), min(e.y1, 5)
	if e.x1-e.x0 < 0.2 {
		e.x0, e.x1 = e.x0-0.1, e.x0+0.1
	}
	if e.y1-e.y0 < 0.2 {
		e.y1 = e.y0 + 0.2
	}
	return e
}

// sane returns x within [lo, hi], lo for what is not a number.
func sane(x, lo, hi float64) float64 {
	if !(x > lo) {
		return lo
	}
	return min(x, hi)
}

// XY returns where a point of the plane is in the picture, px.
func (c *Camera) XY(u, v float64) (x, y float64) {
	return c.Width/2 + (u-c.U)*c.Scale, c.Height/2 - (v-c.V)*c.Scale
}

// At returns where a place is in the picture, px.
func (c *Camera) At(r mass.Vec) (x, y float64) { return c.XY(c.Aspect.Plane(r)) }

// UV is the inverse of XY.
func (c *Camera) UV(x, y float64) (u, v float64) {
	return c.U + (x-c.Width/2)/c.Scale, c.V - (y-c.Height/2)/c.Scale
}

// By returns the displacement in space of a way in the picture, m.
func (c *Camera) By(dx, dy float64) mass.Vec { return c.Aspect.Space(dx/c.Scale, -dy/c.Scale) }

// Pan moves the picture by px.
func (c *Camera) Pan(dx, dy float64) {
	c.U -= dx / c.Scale
	c.V += dy / c.Scale
	c.clamp()
}

// Zoom makes everything f times as large and keeps what is at (x, y) there,
// as far as the limits allow.
func (c *Camera) Zoom(f, x, y float64) {
	if !(f > 0) || math.IsInf(f, 0) || !units.Finite(x) || !units.Finite(y) {
		return
	}
	u, v := c.UV(x, y)
	c.Scale = sane(c.Scale*f, c.fit*zoomOut, c.fit*zoomIn)
	c.U = u - (x-c.Width/2)/c.Scale
	c.V = v + (y-c.Height/2)/c.Scale
	c.clamp()
}

// Refit keeps what the camera shows, and takes the size of the picture and what
// there is to see from another one.
func (c *Camera) Refit(o Camera) {
	// What was in the middle stays there; a larger picture shows more.
	c.Width, c.Height = o.Width, o.Height
	c.fit, c.fu, c.fv, c.room = o.fit, o.fu, o.fv, o.room
	c.Scale = sane(c.Scale, c.fit*zoomOut, c.fit*zoomIn)
	c.clamp()
}

// Reset goes back to what fits.
func (c *Camera) Reset() { c.U, c.V, c.Scale = c.fu, c.fv, c.fit }

// clamp keeps the middle of the picture over something to see, or close by.
func (c *Camera) clamp() {
	const beside = 0.25 // m
	r := c.room.grow(beside).with(c.fu, c.fv)
	c.U = sane(c.U, r.x0, r.x1)
	c.V = sane(c.V, r.y0, r.y1)
}

// Zoomed returns how many times larger than fitting the picture is.
func (c *Camera) Zoomed() float64 { return c.Scale / c.fit }
