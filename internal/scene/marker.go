package scene

import (
	"math"
	"slices"
	"sort"

	"steelyard/internal/units"
)

// dot is what is drawn for the markers of one part that coincide in the
// picture: in the side view both sides of a pair are one dot with all of its
// mass.
type dot struct {
	m    *Marker
	kg   float64
	part float64 // kg of all the part's markers
	at   pt
	r    float64
	nth  int // in the list
}

// leastDot is the smallest radius that a dot is drawn with, px, and leastSpot
// the smallest that can be hit.
const (
	leastDot  = 2.2
	leastSpot = 7
)

// dots gathers a subject's markers, heaviest first. Markers of one part that
// stand next to each other in the list are one part's.
func dots(s *Subject, cam *Camera) []dot {
	ds := make([]dot, 0, len(s.Markers))
	for i := 0; i < len(s.Markers); {
		first, sum := len(ds), 0.0
		j := i
		for ; j < len(s.Markers) && s.Markers[j].Part == s.Markers[i].Part; j++ {
			m := &s.Markers[j]
			kg := m.Mass
			if !units.Finite(kg) || kg < 0 {
				kg = 0
			}
			sum += kg
			x, y := cam.At(m.Place)
			if !(math.Abs(x)+math.Abs(y) < farOff) {
				continue
			}
			at := pt{x, y}
			k := slices.IndexFunc(ds[first:], func(d dot) bool { return d.at.sub(at).len() < 0.5 })
			if k >= 0 {
				ds[first+k].kg += kg
				continue
			}
			ds = append(ds, dot{m: m, kg: kg, at: at, nth: j})
		}
		for k := range ds[first:] {
			ds[first+k].part = sum
		}
		i = j
	}
	sort.Slice(ds, func(i, j int) bool {
		a, b := &ds[i], &ds[j]
		return a.kg > b.kg || a.kg == b.kg && a.nth < b.nth
	})
	return ds
}

// largestDot is how large the heaviest dot may be in a picture, px.
func largestDot(w, h float64) float64 { return min(28, 0.06*min(w, h)) }

// bikeDot is how large the heaviest dot may be beside the bike, m.
const bikeDot = 0.050

// largestBody is how large the rider's mark may be. A rider weighs more than all
// the rest: to the scale of the other dots the mark would hide the bike, and
// with the dots to its scale they would vanish. So it only says where.
func largestBody(w, h float64) float64 { return 0.4 * largestDot(w, h) }

// dotScale is the radius of a dot of 1 kg, px: one for the whole picture, ghost
// included, so that areas can be compared. The heaviest dot but for the rider's
// stays below largestDot, and on a bike that is small in its picture below
// bikeDot; all together stay below a quarter of the paper.
func dotScale(cam *Camera, sets ...[]dot) float64 {
	heaviest, sum := 0.0, 0.0
	for _, ds := range sets {
		total := 0.0
		for i := range ds {
			if ds[i].m.Role == Body {
				continue
			}
			heaviest = max(heaviest, ds[i].kg)
			total += ds[i].kg
		}
		sum = max(sum, total)
	}
	k := 0.019 * math.Sqrt(cam.Width*cam.Height)
	if heaviest > 0 {
		k = min(k, min(largestDot(cam.Width, cam.Height), bikeDot*cam.fit)/math.Sqrt(heaviest))
		k = min(k, math.Sqrt(0.25*cam.Width*cam.Height/(math.Pi*sum)))
	}
	// Closer up, dots grow less than the bike, so that they come apart.
	return k * math.Pow(max(1, cam.Zoomed()), 0.3)
}

func (s *sheet) size(ds []dot, k float64) {
	most := largestBody(s.cam.Width, s.cam.Height)
	for i := range ds {
		d := &ds[i]
		d.r = max(leastDot, k*math.Sqrt(d.kg))
		if d.m.Role == Body {
			d.r = min(d.r, most)
		}
	}
}

// inks of a role: of its sprung and of its unsprung share.
func (r Role) inks() (sprung, unsprung Ink) {
	switch r {
	case Baggage:
		return Luggage, Luggage
	case Body:
		return Rider, Rider
	}
	return Sprung, Unsprung
}

// corners are the corners of a role's figure round the origin, of the same
// area as a circle of radius 1; none for the circle. Bags are square, the rider
// is a square on its tip.
func (r Role) corners() [4]pt {
	if r == Body {
		d := math.Sqrt(math.Pi / 2)
		return [4]pt{{0, -d}, {d, 0}, {0, d}, {-d, 0}}
	}
	d := math.Sqrt(math.Pi) / 2
	return [4]pt{{-d, -d}, {d, -d}, {d, d}, {-d, d}}
}

// outline adds a role's figure round c to the path in hand, grown by g.
func (p *pen) outline(role Role, c pt, r, g float64) {
	switch role {
	case Baggage:
		d := r*math.Sqrt(math.Pi)/2 + g
		p.roundBox(box{c.x - d, c.y - d, c.x + d, c.y + d}, min(2, d/3)+g)
	case Body:
		q := role.corners()
		f := r + g*2/math.Sqrt(math.Pi)
		p.shape(c.add(q[0].mul(f)), c.add(q[1].mul(f)), c.add(q[2].mul(f)), c.add(q[3].mul(f)))
	default:
		p.circle(c, r+g)
	}
}

// chord returns the part of the line o + t d, |d| = 1, inside a role's figure of
// radius r round the origin and, with half, at x < 0.
func (r Role) chord(radius float64, o, d pt, half bool) (t0, t1 float64, ok bool) {
	t0, t1 = math.Inf(-1), math.Inf(1)
	cut := func(n pt, lim float64) { // keep n·p <= lim
		nd, no := n.dot(d), lim-n.dot(o)
		switch {
		case math.Abs(nd) < 1e-12:
			if no < 0 {
				t1 = math.Inf(-1)
			}
		case nd > 0:
			t1 = min(t1, no/nd)
		default:
			t0 = max(t0, no/nd)
		}
	}
	if r == Fitted {
		b, c := o.dot(d), o.dot(o)-radius*radius
		q := b*b - c
		if q <= 0 {
			return 0, 0, false
		}
		q = math.Sqrt(q)
		t0, t1 = -b-q, -b+q
	} else {
		q := r.corners()
		for i := range q {
			a, b := q[i], q[(i+1)%4]
			n := a.add(b).unit()
			cut(n, n.dot(a)*radius)
		}
	}
	if half {
		cut(pt{1, 0}, 0)
	}
	return t0, t1, t1-t0 > 0.5
}

// hatch adds the hatching of a figure to the path in hand.
func (p *pen) hatch(role Role, c pt, r float64, half bool) {
	const gap = 3.1
	d := pt{math.Sqrt2 / 2, -math.Sqrt2 / 2}
	n := d.left()
	reach := math.Floor(r * 1.3 / gap)
	for k := -reach; k <= reach; k++ {
		o := n.mul(k * gap)
		if t0, t1, ok := role.chord(r, o, d, half); ok {
			p.move(c.add(o.add(d.mul(t0))))
			p.line(c.add(o.add(d.mul(t1))))
		}
	}
}

// halo is how wide the rim of paper round a dot is, px.
const halo = 1.3

// marker draws a dot: what is sprung solid, what is unsprung hatched in a ring,
// what moves by half half of each.
func (p *pen) marker(d *dot) {
	role := d.m.Role
	full, open := role.inks()
	share := d.m.Unsprung
	if !(share > 0) { // sprung, or not known
		if role == Fitted {
			p.circle(d.at, d.r+halo/2)
			p.paint(full, Paper, halo)
			return
		}
		p.outline(role, d.at, d.r, halo)
		p.fill(Paper)
		p.outline(role, d.at, d.r, 0)
		p.fill(full)
		return
	}
	p.outline(role, d.at, d.r, halo)
	p.fill(Paper)
	ring := sane(d.r*0.16, 1.1, 1.7)
	inner := max(d.r-ring/2, 0.5)
	if share < 1 {
		p.rightHalf(role, d.at, d.r)
		p.fill(full)
	}
	p.outline(role, d.at, inner, 0)
	if d.r >= 4 {
		p.hatch(role, d.at, inner, share < 1)
	}
	p.mark(Mark{Stroke: open, Width: ring, Butt: true})
}

// rightHalf adds the right half of a figure to the path in hand.
func (p *pen) rightHalf(role Role, c pt, r float64) {
	switch role {
	case Baggage:
		d := r * math.Sqrt(math.Pi) / 2
		p.shape(c.add(pt{0, -d}), c.add(pt{d, -d}), c.add(pt{d, d}), c.add(pt{0, d}))
	case Body:
		q := role.corners()
		p.shape(c.add(q[0].mul(r)), c.add(q[1].mul(r)), c.add(q[2].mul(r)))
	default:
		p.move(pt{c.x, c.y - r})
		p.arc(c, r, -math.Pi/2, math.Pi/2)
		p.close()
	}
}

// ring marks a dot as chosen or pointed at.
func (p *pen) ring(d *dot, chosen bool) {
	if chosen {
		p.outline(d.m.Role, d.at, d.r, halo+2.2)
		p.mark(Mark{Stroke: Paper, Width: 4.4})
		p.outline(d.m.Role, d.at, d.r, halo+2.2)
		p.mark(Mark{Stroke: Select, Width: 2.2})
		return
	}
	p.outline(d.m.Role, d.at, d.r, halo+1.6)
	p.mark(Mark{Stroke: Select, Width: 1.3})
}

// bags draws the outlines of box-shaped luggage, as large as it is and heavier
// up to where it is full. Of what lies in each other only the largest is drawn,
// and of two alike the nearer.
func (p *pen) bags(sub *Subject) {
	const most = 32
	type bag struct {
		box
		m *Marker
	}
	drawn := make([]bag, 0, most)
	for i := range sub.Markers {
		m := &sub.Markers[i]
		if m.Role != Baggage || m.Size.X <= 0 || len(drawn) == most {
			continue
		}
		w, h := m.Size.X, m.Size.Z
		if p.cam.Aspect == Rear {
			w = m.Size.Y
		}
		w, h = sane(w, 0, 3)*p.cam.Scale/2, sane(h, 0, 3)*p.cam.Scale/2
		x, y := p.cam.At(m.Place)
		if w < 3 || h < 3 || !(math.Abs(x)+math.Abs(y) < farOff) {
			continue
		}
		b := bag{box{x - w, y - h, x + w, y + h}, m}
		k := 0
		for k < len(drawn) && !drawn[k].about(b.box, 0.02*p.cam.Scale) {
			k++
		}
		if k == len(drawn) {
			drawn = append(drawn, b)
			continue
		}
		other := (drawn[k].x1 - drawn[k].x0) * (drawn[k].y1 - drawn[k].y0) / 4
		if alike := math.Abs(w*h-other) < 0.05*other; w*h > other && !alike || alike && p.cam.Aspect.nearer(m.Place, drawn[k].m.Place) {
			drawn[k] = b
		}
	}
	for _, b := range drawn {
		p.roundBox(b.box, b.corner())
	}
	p.stroke(Luggage, 0.9)
	for _, b := range drawn {
		if f := sane(b.m.Fill, 0, 1); f > 0 {
			p.cup(b.box, b.corner(), f)
		}
	}
	p.mark(Mark{Stroke: Luggage, Width: sane(0.007*p.cam.Scale, 1.3, 2), Butt: true})
	for _, b := range drawn {
		if f := sane(b.m.Fill, 0, 1); f > 0 && f < 1 {
			y := b.y1 + f*(b.y0-b.y1)
			p.move(pt{b.x0, y})
			p.line(pt{b.x1, y})
		}
	}
	p.dashed(Luggage, 0.8, 2, 2.5)
}

// corner is the radius of a bag's corners.
func (b box) corner() float64 { return 0.14 * min(b.x1-b.x0, b.y1-b.y0) }

// cup adds a bag's outline from its foot up to the share f of its height.
func (p *pen) cup(b box, r, f float64) {
	y := b.y1 + f*(b.y0-b.y1)
	low := max(y, b.y1-r)
	// Within the lower corners the outline begins further along the arc.
	a := math.Asin(sane((low-b.y1+r)/r, 0, 1))
	top := max(y, b.y0+r)
	sin, cos := math.Sincos(a)
	p.move(pt{b.x1 - r + r*cos, min(top, b.y1-r+r*sin)})
	p.line(pt{b.x1 - r + r*cos, b.y1 - r + r*sin})
	p.arc(pt{b.x1 - r, b.y1 - r}, r, a, math.Pi/2)
	p.line(pt{b.x0 + r, b.y1})
	p.arc(pt{b.x0 + r, b.y1 - r}, r, math.Pi/2, math.Pi-a)
	p.line(pt{b.x0 + r - r*cos, min(top, b.y1-r+r*sin)})
}

// about says whether two boxes have their middles within d of each other.
func (b box) about(c box, d float64) bool {
	return math.Abs(b.x0+b.x1-c.x0-c.x1) < 2*d && math.Abs(b.y0+b.y1-c.y0-c.y1) < 2*d
}
