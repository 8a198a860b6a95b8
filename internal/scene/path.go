package scene

import "math"

// stop is a stage of the way of the centre of mass, in the picture.
type stop struct {
	at   pt
	name string
}

// stops are those that have a place in the picture; of fewer than two there is
// no way.
func (s *sheet) stops(sub *Subject) []stop {
	const most = 100
	var out []stop
	for i := range sub.Path {
		p := &sub.Path[i]
		x, y := s.cam.At(p.Place)
		if known(p.Place) && math.Abs(x)+math.Abs(y) < farOff && len(out) < most {
			out = append(out, stop{pt{x, y}, short(p.Name, maxNarrow)})
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// span is how far apart the stops are at most.
func span(way []stop) float64 {
	b := nothing
	for _, k := range way {
		b = b.with(k.at.x, k.at.y)
	}
	return math.Hypot(b.x1-b.x0, b.y1-b.y0)
}

// way draws the path of the centre of mass: a fine line, solid where it begins
// and open where it ends, with a tick across at each stop between.
func (p *pen) way(stops []stop, dot float64) {
	for i, k := range stops {
		if i == 0 {
			p.move(k.at)
		} else {
			p.line(k.at)
		}
	}
	p.stroke(Centre, 1.1)
	for i := 1; i < len(stops)-1; i++ {
		n := stops[i+1].at.sub(stops[i-1].at).unit().left().mul(dot + 1.5)
		p.move(stops[i].at.sub(n))
		p.line(stops[i].at.add(n))
	}
	p.stroke(Centre, 1.1)
	p.circle(stops[0].at, dot)
	p.fill(Centre)
	p.circle(stops[len(stops)-1].at, dot)
	p.paint(Paper, Centre, 1.1)
}

// path draws the path of the centre of mass where it is large enough to be seen.
func (s *sheet) path(sub *Subject) {
	if way := s.stops(sub); way != nil && span(way) >= 4 {
		s.way(way, 2.2)
	}
}

// pathNotes names both ends of the path: where they are, or in a loupe.
func (s *sheet) pathNotes(sub *Subject) {
	way := s.stops(sub)
	if way == nil {
		return
	}
	first, last := way[0], way[len(way)-1]
	l := span(way)
	if l >= farEnough {
		for _, k := range [2]stop{first, last} {
			if k.name != "" && s.paper().holds(k.at.x, k.at.y) {
				s.annotate(&note{at: k.at, r: 3, name: k.name, ink: Text, worth: 5})
			}
		}
		return
	}
	moved := sub.Path[len(sub.Path)-1].Place.Sub(sub.Path[0].Place)
	if s.cam.Aspect == Rear {
		moved.X = 0
	} else {
		moved.Y = 0
	}
	if l < 0.00005*s.cam.Scale || !known(moved) || s.cam.Width < 260 || s.cam.Height < 200 {
		return
	}
	caption := s.v.say("moves", "length", s.v.Units.length(moved.Norm()))
	if moved.Norm() < 0.0005 {
		caption = s.v.say("moves_less", "length", s.v.Units.length(0.001))
	}
	radius := 0.0
	c, factor := s.loupe(caption, func(r float64) (factor float64, second string) {
		radius = r
		for _, f := range enlargements {
			if f*l <= 1.05*r {
				factor = f
			}
		}
		if s.cam.Width > 520 && first.name != "" && last.name != "" {
			return factor, s.v.say("enlarged_way", "from", first.name, "to", last.name, "factor", s.v.Units.number(factor, 0))
		}
		return factor, s.v.say("enlarged", "factor", s.v.Units.number(factor, 0))
	})
	if factor == 0 {
		return
	}
	b := nothing
	for _, k := range way {
		b = b.with(k.at.x, k.at.y)
	}
	mid := pt{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2}
	for i := range way {
		way[i].at = c.add(way[i].at.sub(mid).mul(factor))
	}
	s.way(way, 2.6)
	s.within(c, radius, way[0], way[len(way)-1])
}

// within names the ends of a path inside a loupe, one above it and the other
// below, where they fit.
func (s *sheet) within(c pt, radius float64, ends ...stop) {
	size := s.type2 - 1
	up := ends[0].at.y < ends[1].at.y
	for i, k := range ends {
		l := Label{X: k.at.x, Y: k.at.y + 6 + size*capHeight, Text: k.name, Size: size, Ink: Quiet}
		if up == (i == 0) {
			l.Y = k.at.y - 6
		}
		l.Width = textWidth(l.Text, l.Size, false)
		// Slid sideways into the circle, if it is wide enough at that height.
		far := max(math.Abs(l.Y-size*capHeight-c.y), math.Abs(l.Y+size*descent-c.y))
		room := math.Sqrt(max(0, radius*radius-far*far)) - 2 - l.Width/2
		if k.name == "" || room < 0 {
			continue
		}
		l.X = sane(l.X, c.x-room, c.x+room)
		s.out.Labels = append(s.out.Labels, l)
	}
}
