package scene

import (
	"math"
	"strings"

	"steelyard/internal/document"
)

// mudguards draws mudguards as bands round their tyres. How long one is, is read
// off its place, which is the centroid of its arc: r sin a / a from the axle for
// a half angle a.
func (d *sideView) mudguards() {
	m := d.mm
	d.fitted.each("mudguard", func(f *Fitting) {
		axle, radius := d.b.RearAxle, d.b.RearRadius
		if strings.HasPrefix(f.Station, "front-") {
			axle, radius = d.b.FrontAxle, d.b.FrontRadius
		}
		c, at := d.at(axle), d.at(f.Place)
		off := at.sub(c).len() / d.cam.Scale
		r := radius + 0.015
		a := 0.0
		if off < 0.96*r {
			a = arcOf(off / r)
		} else { // a short one, over the tyre or well above it
			r = max(r, off)
			a = math.Asin(sane(f.Size.X/2/r, 0.1, 1))
		}
		mid := math.Atan2(at.y-c.y, at.x-c.x)
		r *= d.cam.Scale
		end := func(a float64) pt { s, co := math.Sincos(a); return c.add(pt{co, s}.mul(r)) }
		full := a > 0.9
		fill, edge := Tube, Outline
		if d.open(f) {
			fill, edge = Plain, Unsprung
		}
		if full { // its stays, to its lower end and halfway up
			k := 1.0
			if end(mid-a).y > end(mid+a).y {
				k = -1
			}
			for _, way := range [2]float64{0.93, 0.3} {
				d.move(c)
				d.line(end(mid + k*way*a))
			}
			d.mark(Mark{Stroke: edge, Width: max(0.8, m(4)), Butt: true})
		}
		d.move(end(mid - a))
		d.arc(c, r, mid-a, mid+a)
		path := d.take()
		d.add(Mark{Path: path, Stroke: edge, Width: m(7) + 2*d.edge})
		d.add(Mark{Path: path, Stroke: fill, Width: m(7)})
	})
}

// arcOf solves sin a / a = k for an angle up to half a turn.
func arcOf(k float64) float64 {
	lo, hi := 0.0, math.Pi
	for range 40 {
		if a := (lo + hi) / 2; math.Sin(a) > k*a {
			lo = a
		} else {
			hi = a
		}
	}
	return lo
}

// stands draws side stands, folded up along the stay on the far side.
func (d *sideView) stands() {
	m := d.mm
	d.fitted.each("stand", func(f *Fitting) {
		long := sane(max(f.Size.X, f.Size.Y)*1000, 120, 600)
		at := d.at(f.Place)
		way := d.at(d.b.RearAxle).sub(d.at(d.b.BottomBracket)).unit()
		switch {
		case f.Station == "top-tube": // carried, not fixed
			way = d.at(d.b.HeadTop).sub(d.at(d.b.SeatTop)).unit()
		case f.Station == "rear-axle":
			way = pt{-way.y, way.x}.add(way.mul(2)).unit()
		}
		foot := at.add(way.mul(m(0.8 * long)))
		head := at.sub(way.mul(m(0.2 * long)))
		d.capsule(head, foot, m(11), m(7))
		d.capsule(foot, foot.add(way.left().mul(-m(18))), m(8), m(6))
		if f.Station != "top-tube" {
			d.circle(head, m(15))
		}
		d.solid(Metal, Outline, d.edge*0.8)
	})
}

// tubeOf returns the direction of what a fitting is fixed along, from its foot
// upwards, and the way out of the tube.
func (d *sideView) tubeOf(f *Fitting) (up, out pt) {
	bb := d.at(d.b.BottomBracket)
	switch f.Station {
	case "bottle-down-tube":
		up = d.at(d.b.HeadBottom).sub(bb).unit()
		return up, up.left().mul(-1)
	case "bottle-under":
		up = d.at(d.b.HeadBottom).sub(bb).unit()
		return up, up.left()
	case "bottle-seat-tube":
		up = d.at(d.b.SeatTop).sub(bb).unit()
		return up, up.left()
	case "fork-legs", "fork-lower":
		up = d.at(d.b.HeadTop).sub(d.at(d.b.HeadBottom)).unit()
		return up, up.left()
	}
	s, c := math.Sincos(f.Pitch + d.b.Pitch)
	up = pt{c, -s}
	return up, up.left().mul(-1)
}

// bottles draws bottles and cages in line with the tubes that hold them.
func (d *sideView) bottles() {
	m := d.mm
	d.fitted.each("bottle", func(f *Fitting) {
		if f.Form != document.FormRod {
			return
		}
		up, _ := d.tubeOf(f)
		c, long := d.at(f.Place), sane(f.Size.X*1000, 80, 400)
		at := func(along, across float64) pt {
			return c.add(up.mul(m(along))).add(up.left().mul(m(across)))
		}
		turn := math.Atan2(up.y, up.x)
		// Body, shoulder and cap.
		neck := 0.24 * long
		d.turnedBox(at((neck-0.5*long)/2, 0), m((neck+0.5*long)/2), m(36), m(10), turn)
		d.move(at(neck-6, -36))
		d.cubic(at(neck+0.05*long, -35), at(neck+0.08*long, -28), at(neck+0.12*long, -26))
		d.line(at(neck+0.12*long, 26))
		d.cubic(at(neck+0.08*long, 28), at(neck+0.05*long, 35), at(neck-6, 36))
		d.close()
		d.solid(Metal, Outline, d.edge)
		d.turnedBox(at(neck+0.15*long, 0), m(0.035*long), m(28), m(4), turn)
		d.turnedBox(at(neck+0.21*long, 0), m(0.05*long), m(11), m(5), turn)
		d.solid(Tyre, Outline, d.edge*0.9)
		d.move(at(0.02*long, -36))
		d.line(at(0.02*long, 36))
		d.stroke(Hair, d.hair)
	})
	d.fitted.each("cage", func(f *Fitting) {
		up, out := d.tubeOf(f)
		c, long := d.at(f.Place), sane(f.Size.X*1000, 80, 300)
		at := func(along, across float64) pt { return c.add(up.mul(m(along))).add(out.mul(m(across))) }
		low := -0.52 * max(long, 150)
		d.move(at(low+long*0.9, -41))
		d.line(at(low, -41))
		d.line(at(low, 41))
		d.line(at(low+0.22*long, 41))
		d.move(at(low+0.62*long, -41))
		d.line(at(low+0.72*long, 41))
		d.line(at(low+0.22*long, 41))
		edge := Outline
		if d.open(f) {
			edge = Unsprung
		}
		d.stroke(edge, max(0.8, m(3.5)))
	})
}

// drop says whether a bar is bent down, by its shape: that is higher than any
// riser.
func drop(s *Subject) (reach, down float64, ok bool) {
	f := s.fitting("bar")
	if f == nil || f.Form != document.FormBox || !(f.Size.Z > 0.08) {
		return 0, 0, false
	}
	return sane(f.Size.X, 0.05, 0.25), sane(f.Size.Z, 0.08, 0.3), true
}

// dropBar draws a bar that is bent down, from its clamp forward over the hoods,
// and its levers.
func (d *sideView) dropBar(reach, down float64) {
	clamp := d.at(d.b.BarClamp)
	r, h := reach*1000, down*1000
	at := func(fwd, up float64) pt { return d.off(clamp, fwd, up) }
	d.move(at(0, 0))
	d.line(at(0.35*r, 1))
	d.cubic(at(0.8*r, 4), at(r, -0.10*h), at(r, -0.40*h))
	d.cubic(at(r, -0.85*h), at(0.72*r, -h), at(0.35*r, -h))
	d.line(at(-0.25*r, -0.97*h))
	path, m := d.take(), d.mm
	d.add(Mark{Path: path, Stroke: Outline, Width: m(27) + 2*d.edge})
	d.add(Mark{Path: path, Stroke: Tyre, Width: m(27)})
	// Hood and lever.
	d.move(at(r+42, -18))
	d.cubic(at(r+58, -50), at(r+34, -0.7*h), at(r+16, -h))
	d.stroke(Outline, max(d.edge, m(8)))
	d.move(at(0.75*r, 14))
	d.cubic(at(r, 18), at(r+24, 20), at(r+30, 44))
	d.cubic(at(r+36, 62), at(r+58, 54), at(r+56, 34))
	d.cubic(at(r+54, 0), at(r+42, -26), at(r+16, -34))
	d.cubic(at(r+6, -34), at(0.9*r, -18), at(0.75*r, 14))
	d.close()
	d.paint(Metal, Outline, d.edge)
}
