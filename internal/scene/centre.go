package scene

import (
	"math"

	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// centreSymbol is the usual sign of a centre of mass: a circle in quarters,
// two of them solid.
func (p *pen) centreSymbol(c pt, r float64, ink Ink) {
	p.circle(c, r+1.6)
	p.fill(Paper)
	for _, a := range [2]float64{-math.Pi / 2, math.Pi / 2} {
		s, o := math.Sincos(a)
		p.move(c)
		p.line(c.add(pt{o * r, s * r}))
		p.arc(c, r, a, a+math.Pi/2)
		p.close()
	}
	p.fill(ink)
	p.circle(c, r)
	p.stroke(ink, 1.3)
}

// ghostCentre is the same for the other build: open.
func (p *pen) ghostCentre(c pt, r float64) {
	p.circle(c, r)
	p.paint(Paper, Ghost, 1.2)
	p.move(c.add(pt{-r, 0}))
	p.line(c.add(pt{r, 0}))
	p.move(c.add(pt{0, -r}))
	p.line(c.add(pt{0, r}))
	p.stroke(Ghost, 1)
}

// arrow goes from a to b with a solid head.
func (p *pen) arrow(a, b pt, ink Ink, w, head float64) {
	d := b.sub(a)
	l := d.len()
	if l < 0.5 {
		return
	}
	head = min(head, l)
	u := d.mul(1 / l)
	n := u.left().mul(head * 0.36)
	neck := b.sub(u.mul(head))
	if l > head {
		p.move(a)
		p.line(neck.add(u))
		p.mark(Mark{Stroke: ink, Width: w, Butt: true})
	}
	p.shape(b, neck.add(n), neck.sub(n))
	p.fill(ink)
}

func known(r mass.Vec) bool { return units.Finite(r.X) && units.Finite(r.Y) && units.Finite(r.Z) }

// has says whether a subject has anything that weighs.
func (s *Subject) has() bool { return s != nil && s.Total > 0 && known(s.Centre) }

// centres draws the centre of mass with its ±, and where the ghost's is.
func (s *sheet) centres(sub *Subject) {
	if !sub.has() {
		return
	}
	r := s.centreRadius()
	at := s.centreAt(sub)
	if g := sub.Ghost; g.has() {
		from := s.centreAt(g)
		if from.sub(at).len() >= farEnough {
			s.plus(g, Ghost)
			s.ghostCentre(from, r)
			s.arrow(along(from, at, r+1, 0), along(at, from, r+2, 0), Centre, 1.6, 8)
		}
	}
	s.plus(sub, Centre)
	s.centreSymbol(at, r, Centre)
	s.taken = append(s.taken, square(at, r+2))
}

// centreRadius is that of the sign of the centre of mass, px.
func (s *sheet) centreRadius() float64 { return sane(0.021*min(s.cam.Width, s.cam.Height), 6, 9) }

// farEnough is from which distance on two centres are told apart without a
// detail, px.
const farEnough = 36

func (s *sheet) centreAt(sub *Subject) pt {
	x, y := s.cam.At(sub.Centre)
	return pt{x, y}
}

// plus draws the ellipse within which the centre lies.
func (s *sheet) plus(sub *Subject, ink Ink) {
	c := s.centreAt(sub)
	pu, pv := s.cam.Aspect.Plane(sub.CentrePlus)
	rx, ry := math.Abs(pu)*s.cam.Scale, math.Abs(pv)*s.cam.Scale
	if rx > 1 && ry > 1 && units.Finite(rx) && units.Finite(ry) {
		s.ellipse(c, rx, ry)
		s.mark(Mark{Stroke: ink, Width: 1, Dash: []float64{3, 2}, Butt: true})
	}
}

// centreNote names the centre and tells where it is.
func (s *sheet) centreNote(sub *Subject) {
	if !sub.has() {
		return
	}
	u := s.v.Units
	n := note{at: s.centreAt(sub), r: s.centreRadius(), name: s.v.word("centre"), bold: true, ink: Text, worth: 7}
	n.own = square(n.at, n.r+2)
	if !s.paper().holds(n.at.x, n.at.y) {
		return
	}
	x, bareX := u.lengthWithin(sub.Centre.X, sub.CentrePlus.X)
	z, bareZ := u.lengthWithin(sub.Centre.Z, sub.CentrePlus.Z)
	unit := noBreak + u.lengthName()
	words := [2]string{
		s.v.say("centre_side", "x", x, "z", z+unit),
		s.v.say("centre_side", "x", bareX, "z", bareZ+unit),
	}
	if s.cam.Aspect == Rear {
		y := s.sideways(sub.Centre.Y)
		words = [2]string{
			s.v.say("centre_rear", "y", y, "z", z+unit),
			s.v.say("centre_rear", "y", y, "z", bareZ+unit),
		}
	}
	if s.cam.Width >= 560 {
		for _, n.second = range words {
			if s.annotate(&n) {
				return
			}
		}
	}
	n.second = ""
	s.annotate(&n)
}

// sideways tells an offset from the middle of the bike in words.
func (s *sheet) sideways(y float64) string {
	u := s.v.Units
	switch {
	case math.Abs(y) < 0.0005:
		return s.v.word("middle")
	case y > 0:
		return s.v.say("left_by", "length", u.length(y))
	default:
		return s.v.say("right_by", "length", u.length(-y))
	}
}

// detail shows enlarged how far the centre is from the ghost's, where the
// picture itself is too small for it: both centres, the ± of each, and the way
// from one to the other.
func (s *sheet) detail(sub *Subject) {
	g := sub.Ghost
	if !sub.has() || !g.has() || s.cam.Width < 260 || s.cam.Height < 200 {
		return
	}
	at, from := s.centreAt(sub), s.centreAt(g)
	way := at.sub(from)
	apart := sub.Centre.Sub(g.Centre)
	if s.cam.Aspect == Rear {
		apart.X = 0
	} else {
		apart.Y = 0
	}
	moved := apart.Norm()
	if moved < 0.00005 {
		return
	}
	text := s.v.say("moves", "length", s.v.Units.length(moved))
	if moved < 0.0005 {
		text = s.v.say("moves_less", "length", s.v.Units.length(0.001))
	}
	if way.len() >= farEnough {
		n := note{at: from.lerp(at, 0.5), r: 3, name: text, bold: true, ink: Text, worth: 8}
		s.annotate(&n)
		return
	}
	reach := func(k *Subject) (x, y float64) {
		u, v := s.cam.Aspect.Plane(k.CentrePlus)
		return math.Abs(u) * s.cam.Scale, math.Abs(v) * s.cam.Scale
	}
	ax, ay := reach(sub)
	gx, gy := reach(g)
	if !units.Finite(ax + ay + gx + gy) {
		return
	}
	c, factor := s.loupe(text, func(radius float64) (factor float64, second string) {
		for _, f := range enlargements {
			if f*way.len() <= 2*radius-16 && f*(way.len()/2+max(ax, ay, gx, gy)) <= radius-2 {
				factor = f
			}
		}
		if from := short(g.Name, maxName); from != "" && s.cam.Width > 520 {
			return factor, s.v.say("enlarged_from", "name", from, "factor", s.v.Units.number(factor, 0))
		}
		return factor, s.v.say("enlarged", "factor", s.v.Units.number(factor, 0))
	})
	if factor == 0 {
		s.annotate(&note{at: from.lerp(at, 0.5), r: s.centreRadius() + 2, name: text, bold: true, ink: Text, worth: 1.6})
		return
	}
	// The middle of the way between the centres is the middle of the detail.
	to := func(p pt) pt { return c.add(p.sub(from.lerp(at, 0.5)).mul(factor)) }
	a, b := to(from), to(at)
	s.ellipse(a, max(gx*factor, 1), max(gy*factor, 1))
	s.mark(Mark{Stroke: Ghost, Width: 1, Dash: []float64{3, 2}, Butt: true})
	s.ellipse(b, max(ax*factor, 1), max(ay*factor, 1))
	s.mark(Mark{Stroke: Centre, Width: 1, Dash: []float64{3, 2}, Butt: true})
	s.ghostCentre(a, 4.5)
	s.centreSymbol(b, 4.5, Centre)
	if b.sub(a).len() > 13 {
		s.arrow(along(a, b, 5, 0), along(b, a, 6, 0), Centre, 1.4, 6)
	}
}

// enlargements are how many times larger a loupe may show things.
var enlargements = [...]float64{2, 5, 10, 20, 50, 100}

// crowded is from which cost on, see busyMap, a loupe would hide what is drawn.
const crowded = 4

// loupe draws the round frame of an enlarged detail, with two lines below it,
// where there is most room for it: on the paper beside the bike, and smaller
// where there is little. The second line comes with how many times a detail is
// enlarged in a loupe of a radius. It returns the loupe's middle; the factor is 0
// when there is no room but over the bike.
func (s *sheet) loupe(caption string, scaled func(radius float64) (factor float64, second string)) (c pt, factor float64) {
	usual := sane(0.105*min(s.cam.Width, s.cam.Height), 26, 48)
	for _, radius := range [...]float64{usual, 0.75 * usual} {
		factor, second := scaled(radius)
		if factor == 0 {
			continue
		}
		wide := max(2*radius, textWidth(caption, s.type2, true), textWidth(second, s.type2, false)) + 4
		b, ok := s.spare(wide, 2*radius+2.6*s.type2)
		if !ok {
			continue
		}
		s.taken = append(s.taken, b)
		c = pt{(b.x0 + b.x1) / 2, b.y0 + radius + 1}
		s.circle(c, radius)
		s.paint(Paper, Quiet, 1)
		y := b.y0 + 2*radius + 1.25*s.type2
		for i, l := range [2]Label{{Text: caption, Bold: true, Ink: Text}, {Text: second, Ink: Quiet}} {
			l.X, l.Y, l.Size = c.x, y+float64(i)*1.2*s.type2, s.type2
			l.Width = textWidth(l.Text, l.Size, l.Bold)
			s.out.Labels = append(s.out.Labels, l)
		}
		return c, factor
	}
	return pt{}, 0
}

// spare finds room on the paper for something that is nothing of the bike: in
// its corners first, then along its edges.
func (s *sheet) spare(wide, high float64) (where box, ok bool) {
	W, H := s.cam.Width, s.cam.Height
	const m = 10
	best := float64(crowded)
	try := func(x, y, aside float64) {
		b := box{x, y, x + wide, y + high}
		if s.free(b) {
			if cost := s.busy.in(b) + aside; cost < best-1e-9 {
				best, where, ok = cost, b, true
			}
		}
	}
	for _, q := range [...]pt{{m, m}, {W - m - wide, m}, {(W - wide) / 2, m}, {m, 0.4*H - high/2}, {W - m - wide, 0.4*H - high/2}} {
		try(q.x, q.y, 0)
	}
	const steps = 12
	for i := range steps + 1 {
		for j := range steps + 1 {
			x, y := edge+(W-2*edge-wide)*float64(i)/steps, edge+(H-2*edge-high)*float64(j)/steps
			try(x, y, 0.5+0.02*min(x, y, W-x-wide, H-y-high))
		}
	}
	return where, ok
}
