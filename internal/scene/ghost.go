package scene

import (
	"math"

	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// sameOutline says whether two bikes would be drawn over each other.
func sameOutline(a, b *geometry.Bike) bool {
	const d = 0.0005
	for _, p := range [...][2]mass.Vec{
		{a.RearAxle, b.RearAxle}, {a.FrontAxle, b.FrontAxle}, {a.BottomBracket, b.BottomBracket},
		{a.HeadTop, b.HeadTop}, {a.HeadBottom, b.HeadBottom}, {a.SeatTop, b.SeatTop}, {a.SaddleTop, b.SaddleTop},
		{a.BarClamp, b.BarClamp}, {a.Grip, b.Grip}, {a.Pivot, b.Pivot},
	} {
		if !(p[0].Sub(p[1]).Norm() < d) {
			return false
		}
	}
	return math.Abs(a.RearRadius-b.RearRadius) < d && math.Abs(a.FrontRadius-b.FrontRadius) < d
}

// ghostBike draws the other build's bike as thin dashed lines.
func (s *sheet) ghostBike(b *geometry.Bike) {
	dash := []float64{5, 3.5}
	at := func(r mass.Vec) pt { x, y := s.cam.At(r); return pt{x, y} }
	way := func(rs ...mass.Vec) {
		for i, r := range rs {
			if i == 0 {
				s.move(at(r))
			} else {
				s.line(at(r))
			}
		}
	}
	if s.cam.Aspect == Rear {
		half := (b.RearRadius - b.RearRim) / 2 * s.cam.Scale
		c := at(b.RearAxle)
		s.roundBox(box{c.x - half, c.y - b.RearRadius*s.cam.Scale, c.x + half, c.y + b.RearRadius*s.cam.Scale}, half)
		other := b.Grip
		other.Y = -other.Y
		way(b.Grip, b.BarClamp, other)
		way(b.BottomBracket, b.SaddleTop)
		saddle := b.SaddleTop
		l, r := saddle, saddle
		l.Y, r.Y = 0.07, -0.07
		way(l, r)
	} else {
		s.circle(at(b.RearAxle), b.RearRadius*s.cam.Scale)
		s.circle(at(b.FrontAxle), b.FrontRadius*s.cam.Scale)
		top := b.SeatTop.Lerp(b.BottomBracket, 0.08)
		way(b.BottomBracket, b.SaddleTop)
		way(b.BottomBracket, b.HeadBottom, b.HeadTop, top)
		way(b.Crown, b.ForkFoot, b.FrontAxle)
		way(b.HeadTop, b.StemBase, b.BarClamp, b.Grip)
		if b.RearSprung {
			way(b.Pivot, b.RearAxle)
			if b.ShockFrame != b.ShockSwing {
				way(b.RearAxle, b.ShockSwing, b.ShockFrame)
			}
		} else {
			way(b.BottomBracket, b.RearAxle, top)
		}
		nose, tail := b.SaddleTop, b.SaddleTop
		nose.X, tail.X = nose.X+0.13, tail.X-0.13
		way(tail, nose)
	}
	s.mark(Mark{Stroke: Ghost, Width: 1, Dash: dash, Butt: true})
}

// otherDots returns what the other build has and this one has not: first the
// dots of parts that are not fitted here at all, as many as gone, then those of
// parts that weigh something else here or, with moved, sit somewhere else.
func otherDots(here, there []dot, moved bool) (other []dot, gone int) {
	if len(there) == 0 {
		return nil, 0
	}
	first := make(map[string]int, len(here))
	for i := range here {
		if _, ok := first[here[i].m.Part]; !ok {
			first[here[i].m.Part] = i
		}
	}
	var changed []dot
	for i := range there {
		d := &there[i]
		k, ok := first[d.m.Part]
		switch {
		case !ok:
			other = append(other, *d)
		case math.Abs(here[k].part-d.part) > 0.02*d.part:
			changed = append(changed, *d)
		case moved && here[k].m.Place.Sub(d.m.Place).Norm() > 0.01 && here[k].m.Mirror == d.m.Mirror:
			changed = append(changed, *d)
		}
	}
	return append(other, changed...), len(other)
}

// ghostDot is where the other build has a part: a dashed ring, its area by mass.
func (s *sheet) ghostDot(d *dot) {
	s.outline(d.m.Role, d.at, d.r, 0)
	s.mark(Mark{Stroke: Ghost, Width: 1.3, Dash: []float64{3, 2.2}, Butt: true})
}
