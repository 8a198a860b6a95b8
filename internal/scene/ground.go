package scene

import (
	"math"

	"steelyard/internal/units"
)

// ground draws the line that the bike stands on.
func (s *sheet) ground() {
	_, y := s.cam.XY(0, 0)
	if y < -2 || y > s.cam.Height+2 {
		return
	}
	const gap, deep = 9, 5
	from := math.Mod(s.cam.Width/2-s.cam.U*s.cam.Scale, gap)
	for x := from - gap; x < s.cam.Width+gap; x += gap {
		s.move(pt{x, y + 1})
		s.line(pt{x - deep, y + 1 + deep})
	}
	s.mark(Mark{Stroke: Hair, Width: 0.8, Butt: true})
	s.move(pt{0, y})
	s.line(pt{s.cam.Width, y})
	s.stroke(Outline, 1.1)
}

// loads draws what rests on each wheel: an arrow below it, as long as the
// load is large, and the figure.
func (s *sheet) loads(sub *Subject) {
	b := sub.Bike
	if b == nil || !sub.has() {
		return
	}
	most := max(math.Abs(sub.FrontLoad), math.Abs(sub.RearLoad))
	if !(most > 0) || math.IsInf(most, 0) {
		return
	}
	reach := s.arrowReach()
	one := func(at pt, load, plus float64, align int) {
		l := reach * load / most
		from, to := pt{at.x, at.y + 2.5}, pt{at.x, at.y + 2.5 + l}
		if load < 0 { // the wheel lifts
			from, to = pt{at.x, at.y + 2.5 - l}, from
		}
		s.move(pt{at.x - 6, at.y + 1.5})
		s.line(pt{at.x + 6, at.y + 1.5})
		s.stroke(Load, 2.2)
		s.arrow(from, to, Load, 2.2, 9)
		dx := 10.5
		if align > 0 {
			dx = -dx
		}
		s.taken = append(s.taken, box{at.x - 7, at.y, at.x + 7, at.y + 4 + reach})
		value, within := s.v.Units.massWithin(load, plus)
		s.write(Label{X: at.x + dx, Y: at.y + 7 + s.type1*capHeight + 1, Text: value, Size: s.type1, Bold: true, Align: align, Ink: Text, Halo: true})
		more := s.v.Units.number(100*load/sub.Total, 0) + noBreak + "%"
		if within != "" {
			more = within + " · " + more
		}
		s.write(Label{X: at.x + dx, Y: at.y + 7 + 2.15*s.type1, Text: more, Size: s.type2, Align: align, Ink: Quiet, Halo: true})
	}
	if s.cam.Aspect == Rear {
		ground := s.at(0, 0)
		for _, side := range [2]struct {
			at    float64
			align int
			key   string
		}{{-0.17, 1, "left"}, {0.17, -1, "right"}} {
			s.write(Label{X: ground.x + side.at*s.cam.Scale, Y: ground.y - 6, Text: s.v.word(side.key), Size: s.type2, Align: side.align, Ink: Quiet, Halo: true})
		}
		one(s.at(b.RearContact.X, 0), sub.RearLoad, sub.RearLoadPlus, -1)
		return
	}
	one(s.at(b.RearContact.X, 0), sub.RearLoad, sub.RearLoadPlus, -1)
	one(s.at(b.FrontContact.X, 0), sub.FrontLoad, sub.FrontLoadPlus, 1)
}

// at is a point of the bike's middle plane, x forward and z up, px.
func (s *sheet) at(x, z float64) pt {
	if s.cam.Aspect == Rear {
		x = 0
	}
	return s.px(pt{x, z})
}

func (s *sheet) arrowReach() float64 { return sane(0.075*s.cam.Height, 20, 34) }

// scaleBar draws a round length at the lower left.
func (s *sheet) scaleBar() {
	l := s.v.Units.roundLength(0.24 * s.cam.Width / s.cam.Scale)
	w := l * s.cam.Scale
	x, y := 12.0, s.cam.Height-11
	b := box{x, y - 5, x + w, y + 2}
	text := s.v.Units.round(l)
	b.x1 += 8 + textWidth(text, s.type2, false)
	if s.cam.Width < 160 || s.cam.Height < 120 || !s.free(b) {
		return
	}
	s.move(pt{x, y - 4})
	s.line(pt{x, y})
	s.line(pt{x + w, y})
	s.line(pt{x + w, y - 4})
	s.move(pt{x + w/2, y - 2.5})
	s.line(pt{x + w/2, y})
	s.mark(Mark{Stroke: Quiet, Width: 1.2, Butt: true})
	s.write(Label{X: x + w + 6, Y: y + 1.5, Text: text, Size: s.type2, Align: -1, Ink: Quiet, Halo: true})
	s.taken = append(s.taken, b)
}

// key tells what the figures mean, at the lower right.
func (s *sheet) key(sub *Subject, k float64) {
	type entry struct {
		d    dot
		text string
	}
	one := 5.0
	entries := []entry{
		{dot{m: &Marker{}}, s.v.word("sprung")},
		{dot{m: &Marker{Unsprung: 1}}, s.v.word("unsprung")},
	}
	var bag, body bool
	for i := range sub.Markers {
		bag = bag || sub.Markers[i].Role == Baggage
		body = body || sub.Markers[i].Role == Body
	}
	if bag {
		entries = append(entries, entry{dot{m: &Marker{Role: Baggage}}, s.v.word("luggage")})
	}
	if body {
		entries = append(entries, entry{dot{m: &Marker{Role: Body}}, s.v.word("rider")})
	}
	w := -14.0
	for _, e := range entries {
		w += 2*one + 5 + textWidth(e.text, s.type2, false) + 14
	}
	// A mass with a round figure, to read areas by.
	ref := s.v.Units.format().Mass(1000, units.Kilogram, 0)
	if s.v.Units.Mass == units.PoundOunce {
		ref = s.v.Units.format().Mass(units.GramsPerPound, units.Pound, 0)
		k *= math.Sqrt(units.GramsPerPound / 1000)
	}
	w += 14 + 2*k + 5 + textWidth(ref, s.type2, false)
	y := s.cam.Height - 13
	b := box{s.cam.Width - 12 - w, y - max(7, k), s.cam.Width - 12, y + max(7, k)}
	if b.y1 > s.cam.Height-edge {
		b.y0, b.y1 = b.y0-(b.y1-s.cam.Height+edge), s.cam.Height-edge
		y = (b.y0 + b.y1) / 2
	}
	if !s.free(b) || b.x0 < edge {
		return
	}
	s.taken = append(s.taken, b)
	x := b.x0
	put := func(text string, r float64) {
		l := Label{X: x + 2*r + 5, Y: y + s.type2*capHeight/2, Text: text, Size: s.type2, Align: -1, Ink: Quiet}
		l.Width = textWidth(text, l.Size, false)
		s.out.Labels = append(s.out.Labels, l)
		x += 2*r + 5 + l.Width + 14
	}
	for i := range entries {
		e := &entries[i]
		e.d.at, e.d.r = pt{x + one, y}, one
		s.marker(&e.d)
		put(e.text, one)
	}
	s.circle(pt{x + k, y}, k)
	s.stroke(Quiet, 1)
	put(ref, k)
}
