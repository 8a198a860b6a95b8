package scene

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// Turns says whether a marker turns with the bar.
func (m *Marker) Turns() bool {
	switch document.Carrier(m.Carrier) {
	case document.ForkUpper, document.ForkLower, document.FrontWheel:
		return true
	}
	return false
}

// turning is the line of what turns with the bar, px wide.
const turning = 1.8

// steered lays a line over what turns with the bar: wheel, fork and cockpit, and
// a broken ring round each dot of theirs.
func (s *sheet) steered(sub *Subject, here []dot) {
	b := sub.Bike
	if b == nil || s.cam.Aspect == Rear {
		return
	}
	at := func(r mass.Vec) pt { return s.px(plane(r)) }
	s.circle(at(b.FrontAxle), b.FrontRadius*s.cam.Scale)
	s.move(at(b.FrontAxle))
	s.line(at(b.Crown))
	s.line(at(b.StemBase))
	s.line(at(b.BarClamp))
	s.line(at(b.Grip))
	s.stroke(Dimension, turning)
	for i := range here {
		if d := &here[i]; d.m.Turns() {
			s.outline(d.m.Role, d.at, d.r, halo+1.8)
			s.mark(Mark{Stroke: Dimension, Width: 1.2, Dash: []float64{3, 2.2}, Butt: true})
		}
	}
}

// steering draws what steering hangs on. Of the line from the front contact square
// to the steering axis the length is the mechanical trail; how high its foot lies
// above the ground is the wheel flop, by which the front sinks as the bar turns.
func (s *sheet) steering(sub *Subject) {
	b, u := sub.Bike, s.v.Units
	if b == nil || s.cam.Aspect == Rear {
		return
	}
	contact, meet := s.at(b.FrontContact.X, 0), s.at(b.FrontContact.X+b.Trail, 0)
	if !units.Finite(meet.x) || !units.Finite(contact.x) {
		return
	}
	if !s.v.Dimensions { // which draw these as well
		top, bottom := s.px(plane(b.HeadTop)), s.px(plane(b.HeadBottom))
		s.axis(top.add(top.sub(bottom).unit().mul(14)), meet)
		y := contact.y + 16
		s.dimension(contact, meet, pt{contact.x, y}, pt{meet.x, y}, "trail", u.length(b.Trail))
	}
	sin, cos := math.Sincos(b.HeadAngle)
	foot := s.at(b.FrontContact.X+b.Trail-b.Trail*cos*cos, b.Trail*cos*sin)
	x := max(meet.x, contact.x) + 0.11*s.cam.Scale
	s.dimension(pt{foot.x, contact.y}, foot, pt{x, contact.y}, pt{x, foot.y}, "flop", u.length(b.Trail*sin*cos))
	s.dimension(contact, foot, contact, foot, "mechanical_trail", u.length(b.Trail*sin))
	kg := 0.0
	for i := range sub.Markers {
		if m := &sub.Markers[i]; m.Turns() {
			kg += m.Mass
		}
	}
	text := s.v.say("turns", "mass", u.mass(kg))
	put := func(x, y float64, align int) bool {
		return s.write(Label{X: x, Y: y, Text: text, Size: s.type2, Align: align, Ink: Dimension, Halo: true})
	}
	grip, axle := s.px(plane(b.Grip)), s.px(plane(b.FrontAxle))
	for _, up := range [...]float64{26, 40, 54, 68} {
		for _, align := range [...]int{-1, 0, 1} {
			if put(grip.x, grip.y-up, align) {
				return
			}
		}
	}
	// No room above the bar: beside the wheel, or over it.
	for _, down := range [...]float64{-0.5, 0.5, 0, -1.1} {
		y := axle.y + down*b.FrontRadius*s.cam.Scale
		if put(axle.x+b.FrontRadius*s.cam.Scale+8, y, -1) || put(axle.x, y, 0) {
			return
		}
	}
}
