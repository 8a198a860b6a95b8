package scene

import "math"

// hollows is the radius to which the outline of a body is rounded where limbs
// meet, m.
const hollows = 0.022

// rider draws the rider's body, which the bike is drawn upon: a figure in one
// outline, and the limbs of the far side behind it.
func (s *sheet) rider(sub *Subject) {
	near, far := s.hulls(sub.Rider)
	if len(near)+len(far) == 0 {
		return
	}
	w := sane(0.0032*s.cam.Scale, 0.8, 1.5)
	s.figure(far, hollows*s.cam.Scale)
	s.stroke(Rider, 0.6*w)
	s.limbs(near)
	s.fill(Flesh)
	s.figure(near, hollows*s.cam.Scale)
	s.paint(Flesh, Rider, w)
	for i := range sub.Rider { // nothing is written across a face
		if l := &sub.Rider[i]; l.Member == Head {
			b := nothing.ball(s.cam.Aspect, l.From, l.R).ball(s.cam.Aspect, l.To, l.S)
			x0, y0 := s.cam.XY(b.x0, b.y1)
			x1, y1 := s.cam.XY(b.x1, b.y0)
			s.taken = append(s.taken, box{x0, y0, x1, y1})
		}
	}
}

// touched makes the whole body a place where a pointer finds the rider.
func (s *sheet) touched(sub *Subject) {
	for i := range sub.Markers {
		m := &sub.Markers[i]
		if m.Role != Body || m.Part == "" {
			continue
		}
		near, far := s.hulls(sub.Rider)
		for _, h := range append(near, far...) {
			s.out.Spots = append(s.out.Spots, Spot{
				Part: m.Part, X: h.a.x, Y: h.a.y, DX: h.b.x - h.a.x, DY: h.b.y - h.a.y, R: (h.r + h.s) / 2, Fixed: true,
			})
		}
		return
	}
}

// hull is a limb in the picture: what is between and around two discs, px.
type hull struct {
	a, b pt
	r, s float64 // radii at a and b
}

// hulls are the limbs in the picture, those of the far side apart: what the
// rest of the body is in front of, when seen from the right. From behind both
// sides are as far.
func (s *sheet) hulls(limbs []Limb) (near, far []hull) {
	for i := range limbs {
		l := &limbs[i]
		ax, ay := s.cam.At(l.From)
		bx, by := s.cam.At(l.To)
		h := hull{pt{ax, ay}, pt{bx, by}, l.R * s.cam.Scale, l.S * s.cam.Scale}
		if !(math.Abs(ax)+math.Abs(ay)+math.Abs(bx)+math.Abs(by) < farOff) || !(h.r > 0 && h.s > 0 && h.r+h.s < farOff) {
			continue
		}
		if s.cam.Aspect == Side && (l.Member == Arm || l.Member == Leg) && l.From.Y+l.To.Y > 0 {
			far = append(far, h)
		} else {
			near = append(near, h)
		}
	}
	return alone(near), alone(far)
}

// alone leaves out hulls that are within others.
func alone(hs []hull) []hull {
	out := hs[:0:0]
	for i := range hs {
		within := false
		for k := range hs {
			if i != k && hs[i].within(&hs[k]) && !(k > i && hs[k].within(&hs[i])) {
				within = true
				break
			}
		}
		if !within {
			out = append(out, hs[i])
		}
	}
	return out
}

// within says whether h is inside o. A hull is convex, so its two discs tell.
func (h *hull) within(o *hull) bool {
	const hair = 0.05 // px
	return o.depth(h.a)-h.r > -hair && o.depth(h.b)-h.s > -hair
}

// slant returns the way from a to b as an angle, and how far from it the discs
// are touched by their common tangents: right angles when they are of one size.
// One disc within the other has no tangents.
func (h *hull) slant() (along, off float64, ok bool) {
	d := h.b.sub(h.a)
	c := (h.r - h.s) / d.len()
	if !(math.Abs(c) < 1) {
		return 0, 0, false
	}
	return math.Atan2(d.y, d.x), math.Acos(c), true
}

// depth is how far inside the hull a point is; below 0 it is outside by as much.
func (h *hull) depth(p pt) float64 {
	d := h.b.sub(h.a)
	l := d.len()
	p = p.sub(h.a)
	c := (h.r - h.s) / l
	if !(math.Abs(c) < 1) { // one disc is within the other
		if h.r >= h.s {
			return h.r - p.len()
		}
		return h.s - p.sub(d).len()
	}
	u := d.mul(1 / l)
	x, y := p.dot(u), math.Abs(p.dot(u.left()))
	sin := math.Sqrt(1 - c*c)
	switch k := x*sin - y*c; { // how far along the tangent
	case k <= 0:
		return h.r - p.len()
	case k >= l*sin:
		return h.s - p.sub(d).len()
	}
	return h.r - y*sin - x*c
}

// stretch is a piece of a hull's edge: a straight line, or an arc with r > 0.
type stretch struct {
	a, b   pt
	c      pt
	r      float64
	a0, a1 float64
}

// at is the point at the share t of the way.
func (e *stretch) at(t float64) pt {
	if e.r == 0 {
		return e.a.lerp(e.b, t)
	}
	sin, cos := math.Sincos(e.a0 + (e.a1-e.a0)*t)
	return e.c.add(pt{cos, sin}.mul(e.r))
}

func (e *stretch) len() float64 {
	if e.r == 0 {
		return e.b.sub(e.a).len()
	}
	return e.r * math.Abs(e.a1-e.a0)
}

// edge is the outline of a hull, one stretch after the other, from x towards y.
func (h *hull) edge() []stretch {
	at, off, ok := h.slant()
	if !ok {
		c, r := h.a, h.r
		if h.s > h.r {
			c, r = h.b, h.s
		}
		return []stretch{{c: c, r: r, a1: 2 * math.Pi}}
	}
	rim := func(c pt, r, a float64) pt {
		sin, cos := math.Sincos(a)
		return c.add(pt{cos, sin}.mul(r))
	}
	return []stretch{
		{a: rim(h.a, h.r, at-off), b: rim(h.b, h.s, at-off)},
		{c: h.b, r: h.s, a0: at - off, a1: at + off},
		{a: rim(h.b, h.s, at+off), b: rim(h.a, h.r, at+off)},
		{c: h.a, r: h.r, a0: at + off, a1: at - off + 2*math.Pi},
	}
}

// follow goes on along a stretch from t0 to t1.
func (p *pen) follow(e *stretch, t0, t1 float64) {
	if e.r == 0 {
		p.line(e.at(t1))
		return
	}
	p.arc(e.c, e.r, e.a0+(e.a1-e.a0)*t0, e.a0+(e.a1-e.a0)*t1)
}

// limbs adds to the path in hand every hull by itself, all the same way round,
// so that a painter fills them as one. [pen.figure] follows one outline from run
// to run; where more than two edges meet within a hair of each other it can lose
// its way, and then the line has a gap but no limb is missing.
func (p *pen) limbs(hs []hull) {
	for i := range hs {
		edge := hs[i].edge()
		p.move(edge[0].at(0))
		for k := range edge {
			p.follow(&edge[k], 0, 1)
		}
		p.close()
	}
}

// run is what shows of a stretch: the part of it that is outside of all other
// hulls. Its ends are where it meets the runs before and after it.
type run struct {
	e        stretch
	t0, t1   float64
	from, to pt // the ends, on the hulls grown by the radius of the hollows
	used     bool
}

// figure adds to the path in hand the outline of all hulls together, with
// hollows rounded to a radius: what is left of them when they grow by that much,
// become one, and shrink again.
func (p *pen) figure(hs []hull, hollow float64) {
	runs := runsOf(hs, hollow)
	for i := range runs {
		if runs[i].used {
			continue
		}
		r := &runs[i]
		p.move(r.e.at(r.t0))
		for r != nil {
			r.used = true
			p.follow(&r.e, r.t0, r.t1)
			next := after(runs, r, &runs[i])
			if next == nil {
				break
			}
			p.hollow(r.e.at(r.t1), next.e.at(next.t0), r.to, hollow)
			if next.used {
				break
			}
			r = next
		}
		p.close()
	}
}

// after is the run that begins where r ends: one that is not drawn yet, or the
// first of the outline in hand.
func after(runs []run, r, first *run) *run {
	const near = 4 // px²: what is farther off does not belong to it
	var best *run
	least := float64(near)
	for i := range runs {
		n := &runs[i]
		if n.used && n != first {
			continue
		}
		d := n.from.sub(r.to)
		if d := d.dot(d); d < least {
			best, least = n, d
		}
	}
	return best
}

// hollow goes on from a to b round the centre c of a hollow, against the usual
// way.
func (p *pen) hollow(a, b, c pt, r float64) {
	if b.sub(a).len() < 0.05 {
		return
	}
	u, v := a.sub(c), b.sub(c)
	turn := math.Atan2(u.x*v.y-u.y*v.x, u.dot(v))
	if turn > 0 { // two ends that are no neighbours
		p.line(b)
		return
	}
	at := math.Atan2(u.y, u.x)
	p.arc(c, r, at, at+turn)
}

// runsOf finds what shows of hulls, all grown.
func runsOf(hs []hull, grow float64) []run {
	grown := make([]hull, len(hs))
	for i, h := range hs {
		grown[i] = hull{h.a, h.b, h.r + grow, h.s + grow}
	}
	runs := make([]run, 0, 6*len(hs))
	// Of edges that coincide the first hull's shows: the ends of others count as
	// inside it, by a little.
	const hair = 0.005 // px
	type other struct {
		*hull
		from float64 // the depth at which it hides
	}
	others := make([]other, 0, len(hs))
	for i := range hs {
		others = others[:0]
		bounds := grown[i].bounds()
		for k := range grown {
			if k != i && grown[k].bounds().meets(bounds) {
				others = append(others, other{&grown[k], math.Copysign(hair, float64(k-i))})
			}
		}
		hidden := func(q pt) bool {
			for _, o := range others {
				if o.depth(q) > o.from {
					return true
				}
			}
			return false
		}
		large := grown[i].edge()
		for k, e := range hs[i].edge() {
			runs = shown(runs, &e, &large[k], hidden)
		}
	}
	return runs
}

func (h *hull) bounds() box {
	return nothing.with(h.a.x-h.r, h.a.y-h.r).with(h.a.x+h.r, h.a.y+h.r).with(h.b.x-h.s, h.b.y-h.s).with(h.b.x+h.s, h.b.y+h.s)
}

// shown adds the runs of a stretch; large is the same one grown.
func shown(runs []run, e, large *stretch, hidden func(pt) bool) []run {
	add := func(t0, t1 float64) {
		if t1 > t0 {
			runs = append(runs, run{e: *e, t0: t0, t1: t1, from: large.at(t0), to: large.at(t1)})
		}
	}
	n := int(sane(large.len()/2, 4, 64))
	from, before, was := 0.0, 0.0, hidden(large.at(0))
	for i := 1; i <= n; i++ {
		t := float64(i) / float64(n)
		is := hidden(large.at(t))
		if is != was { // somewhere between, one ends and the other begins
			lo, hi := before, t
			for range 12 {
				if mid := (lo + hi) / 2; hidden(large.at(mid)) == was {
					lo = mid
				} else {
					hi = mid
				}
			}
			if is {
				add(from, lo)
			}
			from = hi
		}
		before, was = t, is
	}
	if !was {
		add(from, 1)
	}
	return runs
}
