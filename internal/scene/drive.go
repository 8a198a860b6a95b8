package scene

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/mass"
)

// drivetrain is what turns the rear wheel, in the side view; lengths in px.
type drivetrain struct {
	rings  []float64 // radii, largest first
	cogs   []float64
	on     float64 // radius of the cog that the chain is on
	guides []pulley
	belt   bool
	chain  bool
}

// drivetrain works out the wheels of the drive.
func (d *sideView) drivetrain() *drivetrain {
	t := &drivetrain{belt: d.fitted.fitting("belt") != nil}
	t.chain = t.belt || d.fitted.fitting("chain") != nil
	t.rings = d.radii("chainring")
	if len(t.rings) > 3 {
		t.rings = t.rings[:3]
	}
	if t.cogs = d.radii("cassette"); len(t.cogs) == 0 {
		if t.cogs = d.radii("cog"); len(t.cogs) > 1 {
			t.cogs = t.cogs[:1] // the others are its spacers
		}
	}
	if n := len(t.cogs); n > 0 {
		t.on = t.cogs[n/2]
	}
	return t
}

// guided finds the pulleys that hold the lower run: a derailleur's two, a
// tensioner's two or its one.
func (d *sideView) guided(t *drivetrain) {
	ax, m := d.at(d.b.RearAxle), d.mm
	f := d.fitted.fitting("derailleur")
	if f == nil {
		f = d.fitted.fitting("tensioner")
	}
	if f == nil || t.on == 0 || len(t.rings) == 0 {
		return
	}
	high := sane(f.Size.Z*1000, 60, 200)
	if f.Form != document.FormBox {
		high = 120
	}
	if f.Kind == "tensioner" && f.Size.Z < 1.5*f.Size.X { // a roller
		bb, at := d.at(d.b.BottomBracket), d.at(f.Place)
		r, ring := m(19), t.rings[0]
		if gap := at.sub(bb); gap.len() < ring+r+m(6) { // clear of the ring
			at = bb.add(gap.unit().mul(ring + r + m(6)))
		}
		t.guides = []pulley{{at: at, r: r, ccw: true}}
		return
	}
	// The guide pulley hangs below the cog that the chain is on, the other one
	// at the end of a cage.
	guide := ax.add(pt{m(16), t.on + m(31)})
	last := guide.add(pt{0.28, 0.96}.mul(m(high * 0.56)))
	if floor := d.px(pt{0, 0.03}).y; last.y > floor { // small wheels
		last = guide.add(pt{m(high * 0.56), 0})
	}
	t.guides = []pulley{{at: last, r: m(22)}, {at: guide, r: m(22), ccw: true}}
}

// loop is the chain's way over the wheels of the drive; nil where it has none.
func (d *sideView) loop(t *drivetrain) []Seg {
	if !t.chain || len(t.rings) == 0 || t.on == 0 {
		return nil
	}
	list := append([]pulley{{at: d.at(d.b.RearAxle), r: t.on}, {at: d.at(d.b.BottomBracket), r: t.rings[0]}}, t.guides...)
	if !d.run(list) {
		d.segs = d.segs[:d.from]
		return nil
	}
	return d.take()
}

// wheelOf draws a ring or cog: its teeth, its body, and with a hole what is
// behind it.
func (d *sideView) wheelOf(c pt, r, hole float64) {
	m := d.mm
	tooth := max(2*math.Pi*r/max(2*math.Pi*r/m(12.7), 6), 1.6)
	d.circle(c, r)
	d.dashed(Outline, max(1, m(8)), tooth*0.5, tooth*0.5)
	d.circle(c, max(r-m(2), 1))
	d.paint(Metal, Outline, d.edge*0.8)
	if hole > 0 {
		d.circle(c, hole)
		d.paint(Paper, Outline, d.edge*0.8)
	}
}

// cassette draws a stack of cogs, which lies behind the stay.
func (d *sideView) cassette(t *drivetrain) {
	if len(t.cogs) < 2 {
		return
	}
	ax := d.at(d.b.RearAxle)
	d.wheelOf(ax, t.cogs[0], 0)
	// Cogs closer together than the eye can part are drawn as one.
	last := t.cogs[0]
	for _, r := range t.cogs[1:] {
		if last-r > max(2.2, d.mm(4)) {
			d.circle(ax, r)
			last = r
		}
	}
	d.mark(Mark{Stroke: Outline, Width: 0.6 * d.edge})
}

// transmission draws chain or belt, cog, derailleurs, rings, the near crank and
// its pedal.
func (d *sideView) transmission(t *drivetrain) {
	m := d.mm
	bb, ax := d.at(d.b.BottomBracket), d.at(d.b.RearAxle)
	if len(t.cogs) == 1 {
		d.wheelOf(ax, t.on, 0)
	}
	if len(t.cogs) > 0 {
		d.circle(ax, m(9))
		d.paint(Paper, Outline, d.edge*0.8)
	}
	d.guided(t)
	d.chain(t)
	d.cage(t)
	for i, r := range t.rings {
		hole := r - m(14)
		if i+1 < len(t.rings) {
			hole = min(hole, t.rings[i+1]+m(5))
		}
		d.wheelOf(bb, r, max(hole, m(14)))
	}
	if len(t.rings) > 0 {
		for i := range 4 {
			s, c := math.Sincos(float64(i)*math.Pi/2 + math.Pi/4)
			d.taper(bb, bb.add(pt{c, s}.mul(max(t.rings[0]-m(8), m(12)))), m(13), m(8))
		}
	}
	d.circle(bb, m(22))
	d.solid(Metal, Outline, d.edge*0.8)
	d.frontCage(t)
	pedal := d.at(d.b.PedalRear)
	d.crankArm(bb, pedal)
	d.circle(bb, m(9))
	d.paint(Paper, Outline, d.edge*0.8)
	d.pedal(pedal)
}

// chain draws the chain as links and the belt as a band.
func (d *sideView) chain(t *drivetrain) {
	path, m := d.loop(t), d.mm
	if path == nil {
		return
	}
	if t.belt {
		d.add(Mark{Path: path, Stroke: Outline, Width: max(2.2, m(11)), Butt: true})
		d.add(Mark{Path: path, Stroke: Hair, Width: max(0.8, m(3.5)), Butt: true})
		return
	}
	d.add(Mark{Path: path, Stroke: Outline, Width: max(1.3, m(8)), Butt: true})
	if m(8) > 2.4 { // its links
		d.add(Mark{Path: path, Stroke: Paper, Width: m(8) - 1.4, Dash: []float64{m(9), m(3.7)}, Butt: true})
	}
}

// cage draws what holds the guide pulleys.
func (d *sideView) cage(t *drivetrain) {
	m := d.mm
	switch len(t.guides) {
	case 1:
		bb, g := d.at(d.b.BottomBracket), t.guides[0]
		d.capsule(bb, g.at, m(11), m(8))
		d.solid(Metal, Outline, d.edge*0.9)
		d.circle(g.at, g.r)
		d.paint(Metal, Outline, d.edge*0.9)
		d.bolt(g.at)
	case 2:
		ax := d.at(d.b.RearAxle)
		last, guide := t.guides[0], t.guides[1]
		hanger := ax.add(pt{m(9), m(30)})
		knuckle := guide.at.add(pt{m(-13), m(-2)})
		for _, g := range t.guides {
			d.circle(g.at, g.r)
		}
		d.paint(Metal, Outline, d.edge*0.9)
		// The parallelogram, and the cage in front of the pulleys.
		d.capsule(ax.add(pt{m(3), m(10)}), hanger, m(9), m(9))
		if d.fitted.fitting("derailleur") != nil {
			mid := hanger.lerp(knuckle, 0.5).add(pt{m(-16), m(4)})
			d.capsule(hanger, mid, m(14), m(15))
			d.capsule(mid, knuckle, m(15), m(16))
		} else {
			d.capsule(hanger, guide.at, m(9), m(9))
		}
		d.capsule(guide.at, last.at, m(12), m(11))
		d.solid(Metal, Outline, d.edge)
		d.bolt(guide.at)
		d.bolt(last.at)
		d.bolt(hanger)
	}
}

// frontCage draws a front derailleur: the plate over the largest ring, and its
// clamp on the seat tube.
func (d *sideView) frontCage(t *drivetrain) {
	f := d.fitted.fitting("front-derailleur")
	if f == nil || len(t.rings) == 0 {
		return
	}
	m, bb := d.mm, d.at(d.b.BottomBracket)
	in, out := t.rings[0]+m(1), t.rings[0]+m(22)
	const from, to = -125 * math.Pi / 180, -68 * math.Pi / 180
	edge := func(a, r float64) pt { s, c := math.Sincos(a); return bb.add(pt{c, s}.mul(r)) }
	bb2, st := bb, d.at(d.b.SeatTop)
	mid := edge((from+to)/2, out)
	along := st.sub(bb2).unit()
	foot := bb2.add(along.mul(max(mid.sub(bb2).dot(along)+m(14), 0)))
	d.capsule(edge(-96*math.Pi/180, out-m(4)), foot, m(10), m(14))
	d.solid(Metal, Outline, d.edge*0.9)
	d.move(edge(from, in))
	d.line(edge(from, out))
	d.arc(bb, out, from, to)
	d.line(edge(to, in))
	d.arc(bb, in, to, from)
	d.close()
	d.paint(Metal, Outline, d.edge)
	d.bolt(foot)
}

// hub draws a hub's shell of the radius r, m, with what tells a gear hub and a
// dynamo from a plain one.
func (d *sideView) hub(c pt, kind string, r float64) {
	s := d.cam.Scale
	d.circle(c, r*s)
	switch kind {
	case "gear-hub":
		d.paint(Metal, Outline, d.edge*1.3)
		d.circle(c, (r-0.008)*s)
		d.circle(c, r*0.62*s)
		d.stroke(Outline, 0.7*d.edge)
		const bolts = 9
		for i := range bolts {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / bolts)
			d.circle(c.add(pt{cos, sin}.mul((r*0.62+r-0.008)/2*s)), max(0.7, 0.0025*s))
		}
		d.fill(Outline)
	case "dynamo":
		d.paint(Metal, Outline, d.edge)
		const claws = 14
		for i := range claws {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / claws)
			d.move(c.add(pt{cos, sin}.mul(0.55 * r * s)))
			d.line(c.add(pt{cos, sin}.mul(0.85 * r * s)))
		}
		d.stroke(Outline, 0.7*d.edge)
	default:
		d.paint(Metal, Outline, d.edge*0.8)
	}
	d.circle(c, 0.009*s)
	d.paint(Paper, Outline, d.edge*0.8)
}

// gearboxes draws the shell of a crank gearbox, to scale by its shape.
func (d *sideView) gearboxes() {
	d.fitted.each("crank-gearbox", func(f *Fitting) {
		size := f.Size
		if f.Form != document.FormBox {
			size = mass.Vec{X: 0.17, Z: 0.15} // usual
		}
		c, m := d.at(f.Place), d.mm
		w, h := sane(size.X, 0.02, 0.6)*d.cam.Scale/2, sane(size.Z, 0.02, 0.6)*d.cam.Scale/2
		turn := -(f.Pitch + d.b.Pitch)
		corner := 0.34 * min(w, h)
		d.turnedBox(c, w, h, corner, turn)
		d.paint(Metal, Outline, d.edge*1.5)
		d.turnedBox(c, w-m(10), h-m(10), max(corner-m(6), 1), turn)
		d.stroke(Outline, 0.7*d.edge)
		x := pt{math.Cos(turn), math.Sin(turn)}
		y := x.left()
		for _, k := range [...][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}} {
			d.circle(c.add(x.mul(k[0]*(w-m(19)))).add(y.mul(k[1]*(h-m(19)))), max(0.9, m(4)))
		}
		d.fill(Outline)
		// The two shafts' covers.
		d.circle(c.add(x.mul(0.38*w)).sub(y.mul(0.34*h)), 0.42*min(w, h))
		d.circle(d.at(d.b.BottomBracket), 0.36*min(w, h))
		d.stroke(Outline, 0.7*d.edge)
	})
}

// envelopes draws what else is as large as a motor: dashed, to scale by its
// shape, for nobody can say what it looks like.
func (d *drawing) envelopes(at func(mass.Vec) pt) {
	d.fitted.each("other", func(f *Fitting) {
		wide, high := f.Size.X, f.Size.Z
		if d.cam.Aspect == Rear {
			wide = f.Size.Y
		}
		if f.Form == document.FormDisc {
			wide, high = 2*f.Size.X, 2*f.Size.X
			if d.cam.Aspect == Rear {
				wide = f.Size.Y
			}
		} else if f.Form != document.FormBox {
			return
		}
		if !(wide*high > 0.008) { // 90 mm square
			return
		}
		w, h := sane(wide, 0, 2)*d.cam.Scale/2, sane(high, 0, 2)*d.cam.Scale/2
		if turn := -(f.Pitch + d.b.Pitch); d.cam.Aspect == Side {
			d.turnedBox(at(f.Place), w, h, 0.2*min(w, h), turn)
		} else {
			d.turnedBox(at(f.Place), w, h, 0.2*min(w, h), 0)
		}
		d.dashed(Outline, d.edge, 5, 3)
	})
}

// turnedBox is a rectangle with round corners, turned by an angle with the clock.
func (p *pen) turnedBox(c pt, w, h, r, turn float64) {
	r = min(r, w, h)
	if !(r > 0) {
		return
	}
	x := pt{math.Cos(turn), math.Sin(turn)}
	y := x.left()
	at := func(u, v float64) pt { return c.add(x.mul(u)).add(y.mul(v)) }
	const q = math.Pi / 2
	p.move(at(-w+r, -h))
	p.line(at(w-r, -h))
	p.arc(at(w-r, -h+r), r, turn-q, turn)
	p.line(at(w, h-r))
	p.arc(at(w-r, h-r), r, turn, turn+q)
	p.line(at(-w+r, h))
	p.arc(at(-w+r, h-r), r, turn+q, turn+2*q)
	p.line(at(-w, -h+r))
	p.arc(at(-w+r, -h+r), r, turn+2*q, turn+3*q)
	p.close()
}
