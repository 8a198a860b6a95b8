package scene

import (
	"math"

	"steelyard/internal/mass"
)

// rearView draws the bike from behind, with the same treatment as the side view:
// the rider's left is to the left.
type rearView struct{ drawing }

// at is the point y to the left, z up of the ground, all in m.
func (d *rearView) at(y, z float64) pt { return d.px(pt{-y, z}) }

// both calls f for the left and the right of the bike.
func both(f func(side float64)) {
	f(1)
	f(-1)
}

func (d *rearView) draw() {
	d.bar()
	d.rearGuards(d.at, true)
	d.legs()
	d.frontRack()
	d.cranks()
	d.rearRings(d.at)
	d.frame()
	d.rearGearbox(d.at)
	d.rear()
	d.wheel()
	d.rearGuards(d.at, false)
	d.envelopes(func(r mass.Vec) pt { return d.px(pt{-r.Y, r.Z}) })
	d.rearRack()
	d.saddle()
}

func (d *rearView) bar() {
	b, m := d.b, d.mm
	gy, gz := math.Abs(b.Grip.Y), b.Grip.Z
	cz := b.BarClamp.Z
	if _, down, ok := drop(d.fitted); ok {
		d.rearDropBar(d.at, sane(d.fitted.fitting("bar").Size.Y, 0.3, 0.8), down)
		d.headTube()
		return
	}
	both(func(k float64) {
		d.move(d.at(0, cz))
		d.line(d.at(k*0.045, cz))
		d.cubic(d.at(k*0.11, cz), d.at(k*0.12, gz), d.at(k*0.20, gz))
		d.line(d.at(k*(gy-0.06), gz))
	})
	path := d.take()
	d.add(Mark{Path: path, Stroke: Outline, Width: m(25) + 2*d.edge})
	d.add(Mark{Path: path, Stroke: Metal, Width: m(25)})
	both(func(k float64) {
		p, q := d.at(k*(gy-0.065), gz), d.at(k*(gy+0.065), gz)
		d.capsule(p, q, m(16), m(16))
		d.paint(Tyre, Outline, d.edge)
		c := d.at(k*(gy-0.10), gz)
		d.roundBox(box{c.x - m(14), c.y - m(18), c.x + m(14), c.y + m(18)}, m(5))
		d.paint(Metal, Outline, d.edge)
	})
	d.headTube()
}

// headTube draws the head tube with the stem's clamp, in front of the bar.
func (d *rearView) headTube() {
	b, m := d.b, d.mm
	cz := b.BarClamp.Z
	d.taper(d.at(0, b.HeadBottom.Z), d.at(0, b.HeadTop.Z), m(headTube+2), m(headTube-2))
	d.taper(d.at(0, b.HeadTop.Z), d.at(0, cz+0.012), m(19), m(19))
	d.solid(Tube, Outline, d.edge)
}

func (d *rearView) legs() {
	b, m := d.b, d.mm
	far := 0.6 * d.edge
	gap := (b.FrontRadius-b.FrontRim)/2 + 0.034
	crown, axle := b.Crown.Z, b.FrontAxle.Z
	d.roundBox(box{d.at(gap+0.022, 0).x, d.at(0, crown+0.006).y, d.at(-gap-0.022, 0).x, d.at(0, crown-0.036).y}, m(12))
	d.paint(Tube, Outline, far)
	both(func(k float64) {
		if !b.FrontSprung {
			d.taper(d.at(k*gap, crown-0.03), d.at(k*gap, axle), m(13), m(8))
			d.solid(Tube, Outline, far)
			return
		}
		cut := min(b.FrontAxle.Z+b.FrontRadius+0.015, crown-0.05)
		d.taper(d.at(k*gap, crown-0.036), d.at(k*gap, cut), m(17.5), m(17.5))
		d.paint(Metal, Outline, far)
		d.taper(d.at(k*gap, cut), d.at(k*gap, axle-0.02), m(23), m(19))
		d.solid(Paper, Unsprung, far*1.1)
	})
}

func (d *rearView) cranks() {
	b, m := d.b, d.mm
	z := b.BottomBracket.Z
	for _, p := range [2]struct{ y, z float64 }{{b.PedalFront.Y, b.PedalFront.Z}, {b.PedalRear.Y, b.PedalRear.Z}} {
		k := math.Copysign(1, p.y)
		out := math.Abs(p.y)
		arm := max(0.04, out-0.065)
		d.taper(d.at(0, z), d.at(k*arm, z), m(12), m(12))
		d.paint(Metal, Outline, d.edge)
		if math.Abs(p.z-z) > 0.005 { // not level
			d.capsule(d.at(k*arm, z), d.at(k*arm, p.z), m(9), m(8))
			d.paint(Metal, Outline, d.edge)
		}
		c := d.at(k*arm, p.z)
		d.roundBox(box{c.x - m(9), c.y - m(15), c.x + m(9), c.y + m(15)}, m(5))
		d.paint(Metal, Outline, d.edge)
		q := d.at(k*out, p.z)
		d.roundBox(box{q.x - m(50), q.y - m(9), q.x + m(50), q.y + m(9)}, m(6))
		d.paint(Tyre, Outline, d.edge)
	}
}

func (d *rearView) frame() {
	b, m := d.b, d.mm
	d.taper(d.at(0, b.BottomBracket.Z), d.at(0, b.SeatTop.Z), m(seatTube+2), m(seatTube))
	bb := d.at(0, b.BottomBracket.Z)
	d.roundBox(box{bb.x - m(46), bb.y - m(24), bb.x + m(46), bb.y + m(24)}, m(8))
	d.solid(Tube, Outline, d.edge)
}

// rear draws what holds the rear wheel.
func (d *rearView) rear() {
	b, m := d.b, d.mm
	axle := b.RearAxle.Z
	gap := (b.RearRadius-b.RearRim)/2 + 0.014
	top, low := b.SeatTop.Z-0.05, b.BottomBracket.Z
	if b.RearSprung {
		top, low = b.ShockSwing.Z, b.Pivot.Z
	}
	// Over the tyre the stays come together.
	arch := b.RearAxle.Z + b.RearRadius + 0.018
	if top < arch {
		top = arch
	}
	both(func(k float64) {
		d.taper(d.at(k*0.074, axle), d.at(k*gap, axle+(top-axle)*0.62), m(10), m(8))
		d.taper(d.at(k*gap, axle+(top-axle)*0.62), d.at(k*gap, top), m(8), m(8))
		d.taper(d.at(k*0.074, axle), d.at(k*(gap+0.012), low), m(11), m(12))
		d.circle(d.at(k*0.074, axle), m(15))
	})
	d.taper(d.at(gap+0.008, top), d.at(-gap-0.008, top), m(8), m(8))
	if b.RearSprung {
		d.solid(Paper, Unsprung, d.edge*1.1)
	} else {
		d.solid(Tube, Outline, d.edge)
	}
	// Cogs to the right, brake disc to the left.
	d.rearDrive(d.at)
	if r := sane(d.fitted.RearRotor, 0, b.RearRim); r > 0 {
		d.taper(d.at(0.044, axle-r), d.at(0.044, axle+r), m(2), m(2))
		d.paint(Metal, Outline, d.edge*0.8)
	}
	d.taper(d.at(0.074, axle), d.at(-0.074, axle), m(8), m(8))
	d.paint(Metal, Outline, d.edge)
	d.rearCage(d.at)
}

func (d *rearView) wheel() {
	b, m, s := d.b, d.mm, d.cam.Scale
	half := (b.RearRadius - b.RearRim) / 2 * s
	c := d.at(0, b.RearAxle.Z)
	r := b.RearRadius * s
	d.roundBox(box{c.x - half, c.y - r, c.x + half, c.y + r}, half)
	d.paint(Tyre, Outline, d.edge)
	// Tread: lugs in rows, closer together towards the horizon of the wheel.
	rows := 17
	if r < 70 {
		rows = 11
	}
	wide := half * 0.62
	for i := range rows {
		a := (float64(i)/float64(rows-1) - 0.5) * math.Pi * 0.86
		y := c.y - r*math.Sin(a)
		w := wide
		if i%2 == 1 {
			w *= 0.55
		}
		d.move(pt{c.x - w, y})
		d.line(pt{c.x + w, y})
	}
	if b.RearRadius-b.RearRim > 0.050 {
		d.mark(Mark{Stroke: Outline, Width: max(1, m(6)), Butt: true})
	} else {
		d.mark(Mark{Stroke: Hair, Width: d.hair})
	}
}

// rearRack draws the rack over the rear wheel: its deck, and its legs on a rigid
// rear. Otherwise its stays run forward to the frame.
func (d *rearView) rearRack() {
	deck, ok := d.deck("rear-rack-deck")
	if !ok || !d.fitted.RearRack {
		return
	}
	m := d.mm
	both(func(k float64) {
		foot := d.at(k*0.060, deck.Z-0.15)
		if !d.b.RearSprung {
			foot = d.at(k*0.082, d.b.RearAxle.Z+0.022)
		}
		d.capsule(foot, d.at(k*0.075, deck.Z-0.032), m(rackTube), m(rackTube))
		d.capsule(d.at(k*0.075, deck.Z-0.032), d.at(k*0.060, deck.Z), m(rackTube), m(rackTube))
	})
	d.capsule(d.at(0.060, deck.Z), d.at(-0.060, deck.Z), m(rackTube), m(rackTube))
	d.solid(Metal, Outline, d.edge*0.8)
}

func (d *rearView) frontRack() {
	deck, ok := d.deck("front-rack-deck")
	if !ok || !d.fitted.FrontRack {
		return
	}
	m, low := d.mm, deck.Z-0.62*d.b.FrontRadius
	both(func(k float64) {
		d.capsule(d.at(k*0.080, d.b.FrontAxle.Z), d.at(k*0.095, low), m(rackTube), m(rackTube))
		d.capsule(d.at(k*0.095, low), d.at(k*0.055, deck.Z), m(rackTube), m(rackTube))
	})
	d.capsule(d.at(0.055, deck.Z), d.at(-0.055, deck.Z), m(rackTube), m(rackTube))
	if d.b.FrontSprung {
		d.solid(Paper, Unsprung, 0.6*d.edge)
	} else {
		d.solid(Metal, Outline, 0.6*d.edge)
	}
}

// rearSaddle is half a saddle seen from behind, mm left and up of the middle
// of its top.
var rearSaddle = [...][6]float64{
	{14, -2, 30, 4, 46, 3},
	{64, 2, 74, -6, 73, -18},
	{72, -34, 66, -44, 58, -46},
	{44, -46, 30, -34, 0, -33},
}

func (d *rearView) saddle() {
	b, m := d.b, d.mm
	z := b.SaddleTop.Z
	d.taper(d.at(0, b.SeatTop.Z), d.at(0, z-0.06), m(14.5), m(14.5))
	d.paint(Metal, Outline, d.edge)
	d.taper(d.at(0, b.SeatTop.Z-0.004), d.at(0, b.SeatTop.Z+0.014), m(21), m(21))
	d.paint(Tube, Outline, d.edge)
	both(func(k float64) {
		d.move(d.at(k*0.020, z-0.066))
		d.line(d.at(k*0.040, z-0.035))
	})
	d.stroke(Outline, max(1, m(7)))
	c := d.at(0, z-0.066)
	d.roundBox(box{c.x - m(26), c.y - m(7), c.x + m(26), c.y + m(7)}, m(4))
	d.paint(Metal, Outline, d.edge)
	half := func(k float64, c [6]float64) (p, q, r pt) {
		return d.at(k*c[0]/1000, z+c[1]/1000), d.at(k*c[2]/1000, z+c[3]/1000), d.at(k*c[4]/1000, z+c[5]/1000)
	}
	d.move(d.at(0, z-0.002))
	for _, c := range rearSaddle {
		d.cubic(half(-1, c))
	}
	for i := len(rearSaddle) - 1; i >= 0; i-- { // the other half, from below upwards
		c := rearSaddle[i]
		end := [2]float64{0, -2}
		if i > 0 {
			end = [2]float64{rearSaddle[i-1][4], rearSaddle[i-1][5]}
		}
		d.cubic(half(1, [6]float64{c[2], c[3], c[0], c[1], end[0], end[1]}))
	}
	d.close()
	d.paint(Tyre, Outline, d.edge)
}
