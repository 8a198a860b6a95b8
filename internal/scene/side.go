package scene

import (
	"math"

	"steelyard/internal/mass"
)

// sideView draws the bike from its right. What the suspension carries is drawn
// in solid tubes; what it follows (swingarm, fork lowers) in open double lines.
type sideView struct{ drawing }

func plane(r mass.Vec) pt { return pt{r.X, r.Z} }

// at returns a place in px.
func (d *sideView) at(r mass.Vec) pt { return d.px(plane(r)) }

// off returns the point that lies forward and up of p by mm.
func (d *sideView) off(p pt, fwd, up float64) pt { return pt{p.x + d.mm(fwd), p.y - d.mm(up)} }

func (d *sideView) draw() {
	t := d.drivetrain()
	d.farCrank()
	d.wheel(d.b.RearAxle, d.b.RearRadius, d.b.RearRim, d.fitted.RearRotor, "gear-hub")
	d.wheel(d.b.FrontAxle, d.b.FrontRadius, d.b.FrontRim, d.fitted.FrontRotor, "dynamo")
	d.mudguards()
	d.stands()
	d.cassette(t)
	d.post()
	if !d.b.RearSprung {
		d.stays()
	}
	d.fork()
	d.frame()
	if d.b.RearSprung {
		d.swingarm()
	}
	d.gearboxes()
	d.bottles()
	d.racks()
	d.cockpit()
	d.transmission(t)
	d.envelopes(d.at)
}

// wheel draws a wheel: tyre with its lugs, rim, 32 spokes crossed three times,
// hub, and behind the spokes the brake disc. The hub is of a kind if there is such
// a fitting on the axle.
func (d *sideView) wheel(axle mass.Vec, radius, rim, rotor float64, kind string) {
	c, s := d.at(axle), d.cam.Scale
	bead := rim + 0.004
	inner := rim - 0.018
	d.circle(c, (radius+bead)/2*s)
	d.stroke(Tyre, (radius-bead)*s+0.6)
	if section := radius - rim; section > 0.050 { // lugs: a tyre for bad roads
		pitch := 2 * math.Pi * (radius - 0.002) * s / 84
		d.circle(c, (radius-0.0025)*s)
		d.dashed(Outline, 0.005*s, pitch*0.62, pitch*0.38)
	}
	d.circle(c, (radius-0.001)*s)
	d.stroke(Outline, d.edge)
	d.circle(c, (bead+inner)/2*s)
	d.stroke(Metal, (bead-inner)*s)
	d.circle(c, bead*s)
	d.circle(c, inner*s)
	d.stroke(Outline, d.edge*0.8)
	d.rotor(c, min(rotor, inner-0.01)*s)

	// 32 spokes, 16 to a flange, each crossing three others of its flange: from
	// its hole a spoke runs ahead or back by three holes of the flange's 16.
	const holes, crosses = 16, 3
	shell, flange := 0.030, 0.027*s
	if f := d.fitted.fitting(kind); f != nil && math.Abs(f.Place.X-axle.X) < 0.05 && math.Abs(f.Place.Z-axle.Z) < 0.05 {
		shell = min(f.radius(0.045), 0.6*inner)
		flange = 0.98 * shell * s
	} else {
		kind = "hub"
	}
	for i := range 2 * holes {
		hole := 2 * math.Pi * float64(i) / (2 * holes)
		turn := 2 * math.Pi * crosses / holes
		if i/2%2 == 1 {
			turn = -turn
		}
		s0, c0 := math.Sincos(hole)
		s1, c1 := math.Sincos(hole + turn)
		d.move(c.add(pt{c0, s0}.mul(flange)))
		d.line(c.add(pt{c1, s1}.mul(inner * s)))
	}
	d.mark(Mark{Stroke: Hair, Width: d.hair, Butt: true}) // an end of a hair has no shape
	d.hub(c, kind, shell)
}

// rotor draws a brake disc of the radius r, px: its ring and its arms.
func (d *sideView) rotor(c pt, r float64) {
	ring := d.mm(14)
	if !(r > ring+d.mm(30)) {
		return
	}
	d.circle(c, r-ring/2)
	d.stroke(Metal, ring)
	d.circle(c, r)
	d.circle(c, r-ring)
	const arms = 5
	for i := range arms {
		s0, c0 := math.Sincos(2 * math.Pi * float64(i) / arms)
		s1, c1 := math.Sincos(2*math.Pi*float64(i)/arms + 0.5)
		d.move(c.add(pt{c0, s0}.mul(d.mm(24))))
		d.line(c.add(pt{c1, s1}.mul(r - ring)))
	}
	d.stroke(Outline, d.hair)
}

// Half the width of a rack's tubes, mm.
const rackTube = 5.5

// racks draws the racks: the rear one stands on the main frame, the front one
// moves with the wheel, and is open as the fork's lowers are when that is
// sprung.
func (d *sideView) racks() {
	b, m := d.b, d.mm
	tube := func(a, b pt) { d.capsule(a, b, m(rackTube), m(rackTube)) }
	if deck, ok := d.deck("rear-rack-deck"); ok && d.fitted.RearRack {
		p, ax := d.at(deck), d.at(b.RearAxle)
		bb, st := d.at(b.BottomBracket), d.at(b.SeatTop)
		seat := func(y float64) pt { // on the seat tube at a height, as far as it goes
			return bb.lerp(st, sane((bb.y-y)/max(bb.y-st.y, 1), 0.3, 0.97))
		}
		front := d.off(p, 160, 0)
		if b.RearSprung {
			tube(d.off(p, -90, -32), seat(p.y+m(190)))
		} else {
			foot := ax.add(pt{0, -m(22)})
			tube(foot, d.off(p, -120, -32))
			tube(foot, d.off(p, 0, -32))
			tube(foot, d.off(p, 95, -32))
		}
		tube(front, seat(front.y-m(10)))
		tube(d.off(p, -190, 0), front)
		tube(d.off(p, -150, -32), d.off(p, 110, -32))
		tube(d.off(p, -150, -32), d.off(p, -190, 0))
		d.solid(Metal, Outline, d.edge*0.8)
	}
	if deck, ok := d.deck("front-rack-deck"); ok && d.fitted.FrontRack {
		p, ax := d.at(deck), d.at(b.FrontAxle)
		low := b.FrontRadius * 1000 * 0.62 // the low rail below the deck
		tube(ax, d.off(p, -70, 0))
		tube(ax, d.off(p, 70, 0))
		tube(d.off(p, -125, 0), d.off(p, 125, 0))
		tube(d.off(p, -110, -low), d.off(p, 110, -low))
		fill, edge := Metal, Outline
		if b.FrontSprung {
			fill, edge = Plain, Unsprung
		} else {
			tube(d.off(p, -125, 0), d.at(b.Crown))
		}
		d.solid(fill, edge, d.edge*0.8)
		d.circle(ax, m(9))
		d.paint(Paper, Outline, d.edge*0.8)
	}
}

// tubes of the main frame: half-widths in mm.
const (
	downTube = 24
	topTube  = 18
	seatTube = 17.5
	headTube = 24
)

func (d *sideView) frame() {
	b := d.b
	bb, st := d.at(b.BottomBracket), d.at(b.SeatTop)
	ht, hb := d.at(b.HeadTop), d.at(b.HeadBottom)
	seat := st.sub(bb).len()
	ttRear := bb.lerp(st, max(0, (seat-d.mm(40))/max(seat, 1)))
	ttHead, dtHead := ht.lerp(hb, 0.24), hb.lerp(ht, 0.26)
	m := d.mm
	d.taper(bb, dtHead, m(downTube+3), m(downTube-2))
	d.taper(ttRear, ttHead, m(topTube-2), m(topTube+3))
	d.taper(bb, st, m(seatTube), m(seatTube))
	d.taper(hb, ht, m(headTube+3), m(headTube-2))
	d.circle(bb, m(26))
	if d.hasShock() {
		d.bracket(bb, st, ttRear, ttHead, dtHead)
	}
	d.solid(Tube, Outline, d.edge)
	// A shading line along the underside of the big tubes.
	shade := func(a, b pt, w0, w1, from, to float64) {
		n := b.sub(a).unit().left()
		if n.y < 0 {
			n = n.mul(-1)
		}
		d.move(a.lerp(b, from).add(n.mul(m(w0) * 0.45)))
		d.line(a.lerp(b, to).add(n.mul(m(w1) * 0.45)))
	}
	shade(bb, dtHead, downTube+3, downTube-2, 0.10, 0.93)
	shade(ttRear, ttHead, topTube-2, topTube+3, 0.06, 0.93)
	d.stroke(Hair, d.hair)
	// Bearings at both ends of the head tube.
	for _, e := range [2][2]pt{{ht, hb}, {hb, ht}} {
		d.taper(e[0].add(e[0].sub(e[1]).unit().mul(m(6))), e[0], m(headTube+2), m(headTube+2))
	}
	d.paint(Metal, Outline, d.edge*0.8)
	d.circle(bb, m(15))
	d.paint(Paper, Outline, d.edge*0.8)
}

// bracket ties the shock's frame eye to the nearest tube.
func (d *sideView) bracket(bb, st, ttRear, ttHead, dtHead pt) {
	eye := d.at(d.b.ShockFrame)
	best, foot, dir := math.Inf(1), eye, pt{1, 0}
	for _, t := range [3][2]pt{{bb, dtHead}, {ttRear, ttHead}, {bb, st}} {
		e := t[1].sub(t[0])
		l := e.len()
		if l < 1 {
			continue
		}
		s := min(max(eye.sub(t[0]).dot(e)/(l*l), 0), 1)
		f := t[0].add(e.mul(s))
		if g := eye.sub(f).len(); g < best {
			best, foot, dir = g, f, e.mul(1/l)
		}
	}
	w := dir.mul(d.mm(42))
	d.shape(eye, foot.sub(w), foot.add(w))
	d.circle(eye, d.mm(15))
}

// hasShock says whether it is known where the shock is.
func (d *sideView) hasShock() bool {
	return d.b.RearSprung && d.b.ShockFrame.Sub(d.b.ShockSwing).Norm() > 0.02
}

func (d *sideView) stays() {
	bb, st, ax := d.at(d.b.BottomBracket), d.at(d.b.SeatTop), d.at(d.b.RearAxle)
	m := d.mm
	top := st.lerp(bb, min(0.12, m(50)/max(st.sub(bb).len(), 1)))
	d.taper(bb, ax, m(13), m(9))
	d.taper(top, ax, m(8), m(7))
	d.circle(ax, m(15))
	d.solid(Tube, Outline, d.edge)
	d.circle(ax, m(8))
	d.paint(Paper, Outline, d.edge*0.8)
}

// swingarm draws the arm from the main pivot to the axle, the strut up to the
// shock or to a rocker on the seat tube, and the shock.
func (d *sideView) swingarm() {
	b := d.b
	bb, st, ax, pv := d.at(b.BottomBracket), d.at(b.SeatTop), d.at(b.RearAxle), d.at(b.Pivot)
	eye, frame := d.at(b.ShockSwing), d.at(b.ShockFrame)
	m := d.mm
	// Where the strut meets the rocker: mirrored to behind the seat tube if the
	// eye is near it, straight to the eye otherwise.
	e := st.sub(bb)
	l := max(e.len(), 1)
	s := eye.sub(bb).dot(e) / (l * l)
	foot := bb.add(e.mul(s))
	gap := eye.sub(foot)
	shock := d.hasShock()
	rocker := shock && s > 0.25 && s < 1.1 && gap.x > 0 && gap.len() < m(150)
	top := eye
	switch {
	case !shock:
		top = bb.lerp(st, 0.6)
	case rocker:
		top = foot.sub(gap.unit().mul(m(58))).sub(e.mul(m(12) / l))
	}
	d.taper(pv, ax, m(19), m(12))
	d.taper(top, ax, m(11), m(10))
	mid := 0.42
	d.taper(pv.lerp(ax, mid), top.lerp(ax, mid-0.08), m(9), m(8))
	d.circle(pv, m(21))
	d.circle(top, m(13))
	d.circle(ax, m(20))
	d.solid(Plain, Unsprung, d.edge*1.1)
	d.centreLine(along(pv, ax, m(30), 0), along(ax, pv, m(30), 0))
	d.centreLine(along(top, ax, m(24), 0), along(ax, top, m(30), 0))
	d.lines(Unsprung)
	if shock {
		d.shock(frame, eye)
	}
	if rocker {
		piv := foot.sub(e.mul(m(34) / l))
		d.capsule(top, piv, m(11), m(13))
		d.capsule(piv, eye, m(13), m(11))
		d.capsule(top, eye, m(9), m(9))
		d.shape(top, piv, eye)
		d.solid(Metal, Outline, d.edge)
		d.bolt(piv)
	}
	d.bolt(top)
	if shock {
		d.bolt(eye)
		d.bolt(frame)
	}
	d.bolt(pv)
	d.circle(ax, m(9))
	d.paint(Paper, Outline, d.edge*0.8)
}

// centreLine adds the centre line of an open tube to the path in hand, where the
// picture is large enough for it.
func (d *sideView) centreLine(a, b pt) {
	if d.cam.Scale > 260 {
		d.move(a)
		d.line(b)
	}
}

func (d *sideView) lines(k Ink) {
	m := d.mm
	d.mark(Mark{Stroke: k, Width: d.hair, Dash: []float64{m(26), m(6), m(4), m(6)}, Butt: true})
}

func (d *sideView) bolt(c pt) {
	d.circle(c, max(1.4, d.mm(7)))
	d.paint(Paper, Outline, d.edge*0.8)
}

// shock draws a damper with its spring from the eye on the frame.
func (d *sideView) shock(from, to pt) {
	m, l := d.mm, to.sub(from).len()
	if l < 4 {
		return
	}
	d.capsule(from, to, m(7), m(7))
	d.solid(Metal, Outline, d.edge*0.8)
	d.taper(from.lerp(to, 0.10), from.lerp(to, 0.60), m(21), m(21))
	d.paint(Metal, Outline, d.edge)
	d.taper(from.lerp(to, 0.60), from.lerp(to, 0.66), m(23), m(23))
	d.paint(Metal, Outline, d.edge*0.8)
	d.move(along(from, to, 0.18*l, -m(10)))
	d.line(along(from, to, 0.52*l, -m(10)))
	d.stroke(Hair, d.hair)
}

func (d *sideView) fork() {
	b := d.b
	m := d.mm
	crown, foot, ax := d.at(b.Crown), d.at(b.ForkFoot), d.at(b.FrontAxle)
	axis := foot.sub(crown)
	if axis.len() < 2 {
		axis = ax.sub(crown)
	}
	u := axis.unit()
	if !b.FrontSprung {
		// A blade that leaves the crown along the steering axis and sweeps forward.
		n := u.left()
		if n.x > 0 {
			n = n.mul(-1)
		} // n points back
		l := axis.len()
		c1, c2 := crown.add(u.mul(l*0.45)), ax.sub(u.mul(l*0.22)).add(n.mul(m(16)))
		w0, w1 := m(14), m(7)
		d.move(crown.add(n.mul(w0)))
		d.cubic(c1.add(n.mul(w0)), c2.add(n.mul(w1*1.3)), ax.add(n.mul(w1)))
		d.line(ax.sub(n.mul(w1)))
		d.cubic(c2.sub(n.mul(w1*1.3)), c1.sub(n.mul(w0)), crown.sub(n.mul(w0)))
		d.close()
		d.solid(Tube, Outline, d.edge)
		d.taper(crown, crown.add(u.mul(m(26))), m(20), m(17))
		d.paint(Tube, Outline, d.edge)
		d.circle(ax, m(9))
		d.paint(Paper, Outline, d.edge*0.8)
		return
	}
	// The legs run parallel to the steering axis, between it and the axle.
	shift := ax.sub(foot).mul(0.55)
	top, bottom := crown.add(shift), foot.add(shift)
	leg := bottom.sub(top).len()
	lower := min(leg*0.86, (b.FrontRadius+0.022)*d.cam.Scale)
	cut := bottom.sub(u.mul(lower))
	d.taper(top, cut.add(u.mul(m(20))), m(17.5), m(17.5))
	d.paint(Metal, Outline, d.edge)
	n := u.left()
	if n.x < 0 {
		n = n.mul(-1)
	} // n points forward
	// Lowers: leg, axle lug, and the arch that ties the legs over the tyre.
	d.capsule(cut.add(u.mul(m(23))), bottom.sub(u.mul(m(4))), m(23), m(18))
	d.taper(cut, cut.add(u.mul(m(40))), m(23), m(22.6))
	d.capsule(bottom.sub(u.mul(m(28))), ax, m(17), m(16))
	arch := func(fwd, up float64) pt { return cut.add(n.mul(m(fwd))).sub(u.mul(m(up))) }
	d.move(arch(12, -2))
	d.cubic(arch(16, 4), arch(20, 13), arch(27, 17))
	d.cubic(arch(35, 21), arch(44, 12), arch(41, 2))
	d.cubic(arch(36, -24), arch(25, -44), arch(20, -86))
	d.line(arch(12, -86))
	d.close()
	d.solid(Plain, Unsprung, d.edge*1.1)
	d.taper(cut.sub(u.mul(m(1))), cut.add(u.mul(m(9))), m(25), m(25))
	d.paint(Paper, Unsprung, d.edge*0.9)
	d.centreLine(cut.add(u.mul(m(30))), bottom.sub(u.mul(m(40))))
	d.lines(Unsprung)
	// The crown reaches from the steerer to the legs.
	d.shape(
		crown.sub(n.mul(m(24))), crown.add(n.mul(m(24))).add(shift),
		top.add(n.mul(m(24))).add(u.mul(m(34))), top.sub(n.mul(m(23))).add(u.mul(m(38))))
	d.paint(Tube, Outline, d.edge)
	d.circle(ax, m(9))
	d.paint(Paper, Outline, d.edge*0.8)
}

// saddle is a saddle seen from its right, mm forward and up of the middle of
// its top: pairs of a control point each side of a knot would be longer to
// read than the cubics themselves.
var saddle = [...][6]float64{
	{-118, 12, -100, 9, -74, 3},
	{-36, -5, 24, -1, 76, 0},
	{100, 0, 122, -2, 134, -7},
	{141, -10, 140, -19, 131, -21},
	{94, -25, 64, -25, 24, -30},
	{-20, -37, -62, -50, -100, -46},
	{-126, -43, -139, -18, -138, 2},
	{-137, 12, -130, 15, -118, 12},
}

// post draws seatpost, rails and saddle.
func (d *sideView) post() {
	b, m := d.b, d.mm
	bb, st, sad := d.at(b.BottomBracket), d.at(b.SeatTop), d.at(b.SaddleTop)
	up := st.sub(bb).unit()
	if st.sub(bb).len() < 2 {
		up = pt{0, -1}
	}
	// The clamp sits on the post's axis, a saddle's height below its top.
	rise := max(sad.sub(st).dot(up)-m(62), m(6))
	clamp := st.add(up.mul(rise))
	d.taper(st.sub(up.mul(m(20))), clamp, m(14.5), m(14.5))
	d.paint(Metal, Outline, d.edge)
	d.taper(st.sub(up.mul(m(4))), st.add(up.mul(m(14))), m(21), m(21))
	d.paint(Tube, Outline, d.edge*0.9)
	// Rails.
	d.move(d.off(sad, -96, -42))
	d.cubic(d.off(sad, -80, -66), d.off(sad, -60, -64), d.off(sad, -36, -62))
	d.line(d.off(sad, 48, -62))
	d.cubic(d.off(sad, 80, -60), d.off(sad, 96, -44), d.off(sad, 112, -22))
	d.stroke(Outline, max(d.edge, m(7)))
	d.roundBox(box{clamp.x - m(24), d.off(sad, 0, -52).y, clamp.x + m(24), d.off(sad, 0, -76).y}, m(6))
	d.paint(Metal, Outline, d.edge*0.9)
	d.move(d.off(sad, saddle[len(saddle)-1][4], saddle[len(saddle)-1][5]))
	for _, c := range saddle {
		d.cubic(d.off(sad, c[0], c[1]), d.off(sad, c[2], c[3]), d.off(sad, c[4], c[5]))
	}
	d.close()
	d.paint(Tyre, Outline, d.edge)
	d.move(d.off(sad, -128, -8))
	d.cubic(d.off(sad, -90, -22), d.off(sad, 20, -12), d.off(sad, 128, -14))
	d.stroke(Hair, d.hair)
}

func (d *sideView) cockpit() {
	b, m := d.b, d.mm
	ht, hb := d.at(b.HeadTop), d.at(b.HeadBottom)
	base, clamp, grip := d.at(b.StemBase), d.at(b.BarClamp), d.at(b.Grip)
	up := ht.sub(hb).unit()
	// Spacers and the stem's clamp on the steerer.
	d.taper(ht.add(up.mul(m(5))), base, m(16), m(16))
	d.paint(Metal, Outline, d.edge*0.8)
	d.taper(base.sub(up.mul(m(20))), base.add(up.mul(m(20))), m(20), m(20))
	d.taper(base, clamp, m(17), m(16))
	d.circle(clamp, m(22))
	d.solid(Tube, Outline, d.edge)
	if reach, down, ok := drop(d.fitted); ok {
		d.dropBar(reach, down)
		d.circle(clamp, m(9))
		d.paint(Paper, Outline, d.edge*0.8)
		return
	}
	// The bar comes towards the eye: from the clamp to the grip it is seen
	// foreshortened.
	d.capsule(clamp, grip, m(14), m(11))
	d.paint(Metal, Outline, d.edge)
	// Lever, in front of and below the grip.
	d.move(d.off(grip, 18, 4))
	d.cubic(d.off(grip, 46, -2), d.off(grip, 54, -20), d.off(grip, 66, -62))
	d.stroke(Outline, max(d.edge, m(7)))
	d.roundBox(box{grip.x - m(34), grip.y - m(17), grip.x + m(22), grip.y + m(17)}, m(15))
	d.paint(Tyre, Outline, d.edge)
	d.circle(clamp, m(9))
	d.paint(Paper, Outline, d.edge*0.8)
}

func (d *sideView) crankArm(from, to pt) {
	m := d.mm
	d.capsule(from, to, m(15), m(11))
	d.solid(Metal, Outline, d.edge)
}

func (d *sideView) pedal(c pt) {
	m := d.mm
	d.roundBox(box{c.x - m(50), c.y - m(10), c.x + m(50), c.y + m(10)}, m(7))
	d.paint(Tyre, Outline, d.edge)
	d.circle(c, max(1, m(5)))
	d.paint(Paper, Outline, d.edge*0.8)
}

func (d *sideView) farCrank() {
	d.pedal(d.at(d.b.PedalFront))
	d.crankArm(d.at(d.b.BottomBracket), d.at(d.b.PedalFront))
}
