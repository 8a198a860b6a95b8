package scene

import (
	"math"

	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// dimension draws a dimension line from la to lb that measures a to b:
// extension lines from the points to the line, slender arrows, the figure along
// the line. Where the line is too short, the arrows come from outside and the
// figure stands beyond an end.
// With a key the figure is named, where there is room for it.
func (s *sheet) dimension(a, b, la, lb pt, key, figure string) {
	l := lb.sub(la).len()
	if l < 2 || !units.Finite(l) {
		return
	}
	for _, e := range [2][2]pt{{a, la}, {b, lb}} {
		if d := e[1].sub(e[0]).len(); d > 5 {
			s.move(along(e[0], e[1], 3, 0))
			s.line(along(e[0], e[1], d+4, 0))
		}
	}
	const head = 7
	text := figure
	if key != "" {
		text = s.v.word(key) + " " + figure
	}
	fits := func(t string) bool { return l > textWidth(t, s.type2, false)+2*head+8 }
	u := lb.sub(la).mul(1 / l)
	if l > 3*head {
		s.move(la)
		s.line(lb)
		s.stroke(Dimension, 0.8)
		s.head(la, u.mul(-1), head)
		s.head(lb, u, head)
	} else {
		s.move(la.sub(u.mul(2 * head)))
		s.line(lb.add(u.mul(2 * head)))
		s.stroke(Dimension, 0.8)
		s.head(la, u, head)
		s.head(lb, u.mul(-1), head)
	}
	if text == "" {
		return
	}
	angle := math.Atan2(u.y, u.x) * 180 / math.Pi
	if angle > 90 || angle <= -90 { // never upside down
		u, la, lb = u.mul(-1), lb, la
		angle -= math.Copysign(180, angle)
	}
	up := u.left().mul(-1)
	label := Label{Text: text, Size: s.type2, Ink: Dimension, Halo: true, Angle: angle}
	if math.Abs(angle) < 0.01 {
		label.Angle = 0
	}
	inside := func(words string) bool {
		if !fits(words) {
			return false
		}
		label.Text = words
		for _, t := range [...]float64{0.5, 0.35, 0.65, 0.25, 0.75} {
			q := la.lerp(lb, t)
			for _, o := range [2]pt{up.mul(3.5), up.mul(-3.5 - s.type2*capHeight)} {
				label.X, label.Y = q.x+o.x, q.y+o.y
				if s.write(label) {
					return true
				}
			}
		}
		return false
	}
	// outside is beyond an end, or upright beside a steep line, or below.
	outside := func(words string) bool {
		out := label
		out.Text = words
		steep := math.Abs(angle) > 60
		base := s.type2 * capHeight / 2
		for _, way := range [2]float64{1, -1} {
			end, gap := lb, 5.0
			if way < 0 {
				end = la
			}
			if l <= 3*head {
				gap += 2 * head
			}
			q := end.add(u.mul(way * gap)).add(up.mul(-base))
			if steep {
				q = la.lerp(lb, 0.5).add(pt{way * 6, base})
				out.Angle = 0
			}
			out.X, out.Y, out.Align = q.x, q.y, -int(way)
			if s.write(out) {
				return true
			}
		}
		q := la.lerp(lb, 0.5).add(up.mul(-5 - s.type2*capHeight))
		for _, out.Align = range [...]int{0, 1, -1} {
			out.X, out.Y = q.x, q.y
			if !steep && s.write(out) {
				return true
			}
		}
		return false
	}
	// A long line without room for its name is better left with the figure than
	// named from afar.
	const near = 160
	switch {
	case inside(text):
	case l < near && outside(text):
	case inside(figure):
	case l < near:
		outside(figure)
	}
}

// head is an arrow head at p, pointing along u.
func (s *sheet) head(p, u pt, l float64) {
	n := u.left().mul(l * 0.2)
	q := p.sub(u.mul(l))
	s.shape(p, q.add(n), q.sub(n))
	s.fill(Dimension)
}

// axis is a centre line: long and short dashes.
func (s *sheet) axis(a, b pt) {
	s.move(a)
	s.line(b)
	s.mark(Mark{Stroke: Dimension, Width: 0.8, Dash: []float64{11, 3, 2, 3}, Butt: true})
}

// angle draws the angle at c from the direction a0 to a1, rad from x towards y.
func (s *sheet) angle(c pt, r, a0, a1 float64, text string) {
	s.move(c.add(pt{math.Cos(a0), math.Sin(a0)}.mul(r)))
	s.arc(c, r, a0, a1)
	s.stroke(Dimension, 0.8)
	tip := func(a, way float64) {
		sin, cos := math.Sincos(a)
		s.head(c.add(pt{cos, sin}.mul(r)), pt{-sin, cos}.mul(way), 7)
	}
	way := math.Copysign(1, a1-a0)
	tip(a0, -way)
	tip(a1, way)
	for _, t := range [...]float64{0.5, 0.35, 0.65, 0.2, 0.8} {
		sin, cos := math.Sincos(a0 + (a1-a0)*t)
		for _, d := range [...]float64{6, -6} {
			align := -1
			if cos*d < 0 {
				align = 1
			}
			if s.write(Label{X: c.x + cos*(r+d), Y: c.y + sin*(r+d) + s.type2*capHeight/2, Text: text, Size: s.type2, Align: align, Ink: Dimension, Halo: true}) {
				return
			}
		}
	}
}

// dimensions draws the measures of a subject.
func (s *sheet) dimensions(sub *Subject) {
	b := sub.Bike
	if b == nil {
		return
	}
	if s.cam.Aspect == Rear {
		s.rearDimensions(sub)
		return
	}
	u := s.v.Units
	at := func(r mass.Vec) pt { return s.px(plane(r)) }
	rear, front := s.at(b.RearContact.X, 0), s.at(b.FrontContact.X, 0)
	row := func(i int) float64 { return rear.y + s.arrowReach() + 27 + float64(i)*(s.type2+9) }
	level := func(a, b pt, y float64, key, figure string) {
		s.dimension(a, b, pt{a.x, y}, pt{b.x, y}, key, figure)
	}
	under := s.arrowReach() + 4 // the arrows stand where extension lines would
	ra, fa := pt{rear.x, rear.y + under}, pt{front.x, front.y + under}
	next := 0
	if sub.has() {
		c := s.centreAt(sub)
		foot := pt{c.x, rear.y}
		s.axis(pt{c.x, c.y}, pt{c.x, row(0) + 4})
		level(ra, foot, row(0), "", u.length(sub.Centre.X-b.RearContact.X))
		level(foot, fa, row(0), "", u.length(b.FrontContact.X-sub.Centre.X))
		x := max(at(b.BottomBracket).x+0.225*s.cam.Scale, c.x+24)
		s.dimension(c, foot, pt{x, c.y}, pt{x, rear.y}, "centre", u.length(sub.Centre.Z))
		next = 1
	}
	level(ra, fa, row(next), "wheelbase", u.length(b.Wheelbase))

	// Trail: from the front contact to where the steering axis meets the ground.
	top, bottom := at(b.HeadTop), at(b.HeadBottom)
	meet := s.at(b.FrontContact.X+b.Trail, 0)
	if units.Finite(meet.x) {
		s.axis(top.add(top.sub(bottom).unit().mul(14)), meet)
		y := rear.y + 16
		s.dimension(front, meet, pt{front.x, y}, pt{meet.x, y}, "trail", u.length(b.Trail))
		s.angle(meet, 0.19*s.cam.Scale, math.Pi, math.Pi+b.HeadAngle, s.v.Units.degrees(b.HeadAngle))
	}
	bb := at(b.BottomBracket)
	s.angle(bb, 0.17*s.cam.Scale, math.Pi, math.Pi+b.SeatAngle, s.v.Units.degrees(b.SeatAngle))
	s.axis(bb, bb.sub(pt{0.19 * s.cam.Scale, 0}))

	x := bb.x + 0.105*s.cam.Scale
	s.dimension(bb, pt{bb.x, rear.y}, pt{x, bb.y}, pt{x, rear.y}, "bb", u.length(b.BBHeight))
	beside := func(from, to mass.Vec, off float64, key, figure string) {
		p, q := at(from), at(to)
		n := q.sub(p).unit().left().mul(off * s.cam.Scale)
		if n.y < 0 {
			n = n.mul(-1)
		}
		s.dimension(p, q, p.add(n), q.add(n), key, figure)
	}
	beside(b.RearAxle, b.BottomBracket, 0.125, "rear_centre", u.length(b.RearCentre))
	beside(b.BottomBracket, b.FrontAxle, 0.125, "front_centre", u.length(b.FrontCentre))
}

// degrees writes an angle in rad.
func (u Units) degrees(a float64) string { return u.number(a*180/math.Pi, 1) + "°" }

func (s *sheet) rearDimensions(sub *Subject) {
	b, u := sub.Bike, s.v.Units
	ground := s.at(0, 0)
	grip := s.px(pt{math.Abs(b.Grip.Y), b.Grip.Z})
	left := pt{2*ground.x - grip.x, grip.y}
	y := grip.y - 22
	s.dimension(left, grip, pt{left.x, y}, pt{grip.x, y}, "between_grips", u.length(2*math.Abs(b.Grip.Y)))
	if !sub.has() {
		return
	}
	c := s.centreAt(sub)
	x := ground.x - math.Max(0.16*s.cam.Scale, 40)
	s.dimension(c, pt{c.x, ground.y}, pt{x, c.y}, pt{x, ground.y}, "centre", u.length(sub.Centre.Z))
}
