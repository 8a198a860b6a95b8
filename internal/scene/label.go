package scene

import "math"

// note is something to be written beside a dot, with a leader where it has to
// stand off.
type note struct {
	at     pt
	r      float64
	name   string
	figure string // after the name, of second rank
	second string // a second line, of second rank
	bold   bool
	ink    Ink
	worth  float64 // how bad a place it may get: see annotate
	own    box     // what is taken by the thing itself, so that a leader may begin there
	ring   float64 // px, of a thing that is a ring about the dot: a leader ends on it; else 0
}

// Where a note may stand: the distances from the dot, px, and the directions.
var (
	notePlaces = [...]float64{4, 12, 22, 36, 54, 76, 104, 140, 180, 230}
	noteWays   = func() (w [20]pt) {
		for i := range w {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(len(w)))
			w[i] = pt{cos, sin}
		}
		return w
	}()
)

// noteGap is what stands between a name and its figure, in ems.
const noteGap = 0.45

// spot is a place for a note.
type spot struct {
	b         box
	from, to  pt // of the leader, from the dot
	hasLeader bool
	covers    int
	cost      float64
}

// annotate writes a note at the best place near its dot and says whether there
// was one. A place beside the bike goes before any that covers it. Otherwise a place costs 1 for 190 px of distance, and for about 11 cells of
// the busy map that it covers. What must be named, by a worth without end, may at
// the worst hide the saddle, or have its leader end at the dot of a ring.
func (s *sheet) annotate(n *note) bool {
	if s.place(n) {
		return true
	}
	if !math.IsInf(n.worth, 1) {
		return false
	}
	if n.ring > 0 { // no room at the ring: then at the dot
		n.ring = 0
		if s.place(n) {
			return true
		}
	}
	kept := s.kept
	defer func() { s.kept = kept }()
	s.kept = nil
	return s.place(n)
}

// place is annotate for one way of ending the leader.
func (s *sheet) place(n *note) bool {
	nameW := textWidth(n.name, s.type1, n.bold)
	w := nameW
	if n.figure != "" {
		w += noteGap*s.type1 + textWidth(n.figure, s.type1, false)
	}
	h := s.type1 * (capHeight + descent)
	lead := s.type1 * 1.22
	if n.second != "" {
		w = max(w, textWidth(n.second, s.type2, false))
		h += lead
	}
	w, h = w+2, h+3
	best := spot{cost: n.worth, covers: 3}
	found := false
	ways := len(noteWays)
	if n.ring > 0 {
		ways *= 2
	}
	right, foot := s.cam.Width-edge, s.cam.Height-edge
	for _, d := range notePlaces {
		base := d / 190
		if base >= best.cost && best.covers == 0 || base >= n.worth {
			break
		}
		near, far := n.r+1.5, n.r+d
		for i := range ways {
			way := noteWays[i%len(noteWays)]
			var c spot
			if n.ring > 0 {
				var ok bool
				if c, ok = s.ringed(n, d, way, w, h, i >= len(noteWays)); !ok {
					continue
				}
			} else {
				c.to = pt{n.at.x + way.x*far, n.at.y + way.y*far}
				c.b = beside(c.to, way, w, h)
			}
			if b := &c.b; b.x0 < edge || b.y0 < edge || b.x1 > right || b.y1 > foot { // as onPaper
				continue
			}
			c.covers = s.covers(c.b)
			least := best.cost
			if c.covers < best.covers {
				least = n.worth
			}
			if c.covers > best.covers || base >= least {
				continue
			}
			// A leader that rises or falls at a slant is the usual hand.
			c.cost = base + 0.09*s.busy.in(c.b.grow(2))
			if i%5 == 0 && d > 12 {
				c.cost += 0.04
			}
			if c.cost >= least {
				continue
			}
			if n.ring == 0 {
				c.from, c.hasLeader = pt{n.at.x + way.x*near, n.at.y + way.y*near}, d > 4
			}
			if c.hasLeader {
				for k := 1; k < 5; k++ {
					q := c.from.lerp(c.to, float64(k)/5)
					c.cost += 0.07 * s.busy.in(box{q.x, q.y, q.x, q.y})
				}
			}
			// What takes longest to find out comes last.
			if c.cost >= least || s.hides(c.b) || c.hasLeader && s.crosses(c.from, c.to) || !s.free(c.b.grow(1.5)) || c.hasLeader && !s.clear(c.from, c.to, n.own) {
				continue
			}
			best, found = c, true
		}
	}
	if !found {
		return false
	}
	if best.hasLeader {
		s.move(best.from)
		s.line(best.to)
		s.stroke(Quiet, 0.75)
		s.leaders = append(s.leaders, [2]pt{best.from, best.to})
		if n.ring > 0 {
			s.circle(best.from, 1.8)
			s.fill(Quiet)
		}
	}
	s.taken = append(s.taken, best.b)
	x, y := best.b.x0+1, best.b.y0+1.5+s.type1*capHeight
	s.out.Labels = append(s.out.Labels, Label{
		X: x, Y: y, Text: n.name, Size: s.type1, Bold: n.bold, Align: -1, Ink: n.ink, Halo: true, Width: nameW,
	})
	if n.figure != "" {
		s.out.Labels = append(s.out.Labels, Label{
			X: x + nameW + noteGap*s.type1, Y: y, Text: n.figure, Size: s.type1, Align: -1, Ink: Quiet, Halo: true,
			Width: textWidth(n.figure, s.type1, false),
		})
	}
	if n.second != "" {
		s.out.Labels = append(s.out.Labels, Label{
			X: x, Y: y + lead, Text: n.second, Size: s.type2, Align: -1, Ink: Quiet, Halo: true,
			Width: textWidth(n.second, s.type2, false),
		})
	}
	return true
}

// ringed is the place at the distance d from a ring, outside of it or within. The
// leader ends on the ring; ok is false where that is not in the picture.
func (s *sheet) ringed(n *note, d float64, way pt, w, h float64, within bool) (c spot, ok bool) {
	out := n.ring + 0.03*s.cam.Scale + d
	side := way
	if within {
		out = n.ring - 0.03*s.cam.Scale - d
		side = way.mul(-1)
		if out < 0.35*n.ring { // not down to the hub
			return c, false
		}
	}
	c = spot{from: n.at.add(way.mul(n.ring)), to: n.at.add(way.mul(out)), hasLeader: true}
	c.b = beside(c.to, side, w, h)
	return c, s.paper().holds(c.from.x, c.from.y)
}

// beside is the box of a size that lies beside a point in a direction.
func beside(to, way pt, w, h float64) (b box) {
	const gap = 2.5
	switch {
	case way.x > 0.35:
		b = box{to.x + gap, to.y - h/2, to.x + gap + w, to.y + h/2}
	case way.x < -0.35:
		b = box{to.x - gap - w, to.y - h/2, to.x - gap, to.y + h/2}
	case way.y < 0:
		b = box{to.x - w/2, to.y - gap/2 - h, to.x + w/2, to.y - gap/2}
	default:
		b = box{to.x - w/2, to.y + gap/2, to.x + w/2, to.y + gap/2 + h}
	}
	return b
}

// clear says whether a leader can go from a to b, out of its own box.
func (s *sheet) clear(a, b pt, own box) bool {
	x0, x1, y0, y1 := min(a.x, b.x), max(a.x, b.x), min(a.y, b.y), max(a.y, b.y)
	for i := range s.taken {
		k := &s.taken[i]
		if x1 < k.x0 || x0 > k.x1 || y1 < k.y0 || y0 > k.y1 {
			continue // far off
		}
		if *k != own && crossesBox(a, b, *k) {
			return false
		}
	}
	for i := range s.leaders {
		if cross(a, b, s.leaders[i][0], s.leaders[i][1]) {
			return false
		}
	}
	return true
}

// howMany is how many parts are named in a picture of the camera's size.
func (s *sheet) howMany() int {
	return int(sane(s.cam.Width*s.cam.Height/26000, 4, 22))
}
