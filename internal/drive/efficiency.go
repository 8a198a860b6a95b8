package drive

import (
	"math"
	"slices"
	"strings"

	"steelyard/internal/mass"
)

// Line is the power that arrives at the rear wheel as a function of what goes in
// at the cranks, P in W, and how fast they turn, w in rad/s:
//
//	Share P - Torque w - Power
//
// It is exact for the losses of this package: each stage takes a share, and a
// power that grows with the speed of its shaft. Slopes say how the three move
// with the sources.
type Line struct {
	Share, Torque, Power float64
	Slopes               []Slope // by source, in order
}

// Slope is the derivative of a [Line] by one source, times the standard
// uncertainty of the source.
type Slope struct {
	Source               string
	Share, Torque, Power float64
}

// Efficiency returns the share of the power, W, that arrives at a cadence in
// turns per minute, between 0 and 1. Without power nothing arrives, and nothing
// is known of the share.
func (l *Line) Efficiency(power, cadence float64) Figure {
	if !(power > 0) {
		return Figure{}
	}
	w := cadence * 2 * math.Pi / 60
	e := l.Share - (l.Torque*w+l.Power)/power
	b := new(mass.Budget)
	if e <= 0 {
		return Figure{0, b}
	}
	for _, s := range l.Slopes {
		b.ChargeNamed(s.Source, s.Share-(s.Torque*w+s.Power)/power)
	}
	return Figure{e, b}
}

// line is a Line being made, a stage at a time; plain is one whose slopes nobody
// asks for.
type line struct {
	Line
	plain bool
}

// slope returns the slope by a source.
func (l *line) slope(source string) *Slope {
	i, known := slices.BinarySearchFunc(l.Slopes, source, func(s Slope, name string) int { return strings.Compare(s.Source, name) })
	if !known {
		l.Slopes = slices.Insert(l.Slopes, i, Slope{Source: source})
	}
	return &l.Slopes[i]
}

// part is what a loss owes to a quantity: its derivative by it.
type part struct {
	q     *Quantity
	slope float64
}

// take passes the power on less a share of it.
func (l *line) take(share float64, owed ...part) {
	share = min(max(share, 0), 1)
	if l.plain {
		owed = nil
	}
	for _, p := range owed {
		if u := p.slope * p.q.Standard(); u != 0 {
			s := l.slope(p.q.Source)
			s.Share -= u * l.Share / (1 - min(share, 0.999999))
			s.Torque -= u * l.Torque / (1 - min(share, 0.999999))
			s.Power -= u * l.Power / (1 - min(share, 0.999999))
		}
	}
	f := 1 - share
	l.Share, l.Torque, l.Power = l.Share*f, l.Torque*f, l.Power*f
	for i := range l.Slopes {
		s := &l.Slopes[i]
		s.Share, s.Torque, s.Power = s.Share*f, s.Torque*f, s.Power*f
	}
}

// drag takes a torque of the cranks: so many N m, already reckoned to them.
func (l *line) drag(torque float64, owed ...part) {
	l.Torque += torque
	if l.plain {
		return
	}
	for _, p := range owed {
		if u := p.slope * p.q.Standard(); u != 0 {
			l.slope(p.q.Source).Torque += u
		}
	}
}

// Line returns what a gear of the drive does to the power.
//
// From the cranks on: their bearings; the gearbox, its bearings and seals first,
// then its runs of chain and its meshes; chain or belt; the gear hub likewise;
// what is stated.
func (d *Drive) Line(g *Gear, l *Losses, power float64) Line {
	if l.Whole != nil {
		return l.Whole.line(power)
	}
	out := line{Line: Line{Share: 1, Slopes: make([]Slope, 0, 10)}}
	d.line(&out, g, l)
	return out.Line
}

// Plain is Line without its slopes.
func (d *Drive) Plain(g *Gear, l *Losses, power float64) Line {
	if l.Whole != nil {
		return l.Whole.line(power)
	}
	out := line{Line: Line{Share: 1}, plain: true}
	d.line(&out, g, l)
	return out.Line
}

// line makes that of stages.
func (d *Drive) line(out *line, g *Gear, l *Losses) {
	out.drag(l.Crank.Value, part{&l.Crank, 1})
	speed := 1.0 // of the shaft, for a turn of the cranks
	if g.Front >= 0 && g.Front < len(d.Front) {
		b := &d.Front[g.Front]
		out.box(b, &l.Front, &l.Chain, speed)
		speed *= b.Ratio
	}
	if d.Belt {
		out.drag(l.Belt.Torque.Value*speed, part{&l.Belt.Torque, speed})
		out.take(l.Belt.Share.Value, part{&l.Belt.Share, 1})
	} else {
		out.chain(Link{g.Ring, g.Cog, speed}, &l.Chain, d.Pulleys)
	}
	speed *= float64(g.Ring) / float64(g.Cog)
	if g.Rear >= 0 && g.Rear < len(d.Rear) {
		out.box(&d.Rear[g.Rear], &l.Rear, &l.Chain, speed)
	}
	for i := range l.Stated {
		s := &l.Stated[i]
		out.take(s.Share.Value, part{&s.Share, 1})
		out.Power += s.Power.Value
		if u := s.Power.Standard(); u != 0 && !out.plain {
			out.slope(s.Power.Source).Power += u
		}
	}
}

// chain is a run of chain from the sprocket that drives to the one that is
// driven, with pulleys in the slack span.
//
// A link that turns through 2π/N on or off a sprocket of radius R under a tension
// T rubs its pin of radius rho: µ rho T v/R of power. T v is the power in the
// tight span, which turns off the driven and on the driving sprocket, so it
// loses the share µ rho (1/R1 + 1/R2); the slack span loses the same of its own
// tension, and both turnings at each pulley.
func (l *line) chain(k Link, c *Chain, pulleys int) {
	r1, r2 := PitchRadius(k.Driving), PitchRadius(k.Driven)
	bend := c.Pin * (1/r1 + 1/r2)
	v := r1 * k.Speed // for one radian of the cranks
	slack := bend
	if pulleys > 0 {
		r := PitchRadius(max(c.PulleyTeeth, 3))
		n := float64(pulleys)
		slack += c.Pin * 2 * n / r
		l.drag(c.PulleyTorque.Value*n*v/r, part{&c.PulleyTorque, n * v / r})
	}
	mu, t := &c.Friction, &c.Slack
	l.drag(mu.Value*slack*t.Value*v, part{mu, slack * t.Value * v}, part{t, mu.Value * slack * v})
	l.take(mu.Value*bend, part{mu, bend})
}

// box is a hub or gearbox whose shaft turns so fast for a turn of the cranks.
func (l *line) box(g *BoxGear, b *Box, c *Chain, speed float64) {
	l.drag(b.Torque.Value*speed, part{&b.Torque, speed})
	for _, k := range g.Chains {
		k.Speed *= speed
		l.chain(k, c, 0)
	}
	n, left := float64(g.Meshes), 1-b.Mesh.Value
	if left <= 0 {
		l.take(1)
		return
	}
	if g.Meshes >= 0 {
		l.take(1-math.Pow(left, n), part{&b.Mesh, n * math.Pow(left, n-1)})
		return
	}
	n = max(b.Meshes.Value, 0)
	l.take(1-math.Pow(left, n), part{&b.Meshes, -math.Pow(left, n) * math.Log(left)}, part{&b.Mesh, n * math.Pow(left, n-1)})
}

// line is what a measured efficiency says at a power. At another power than the
// one that it was measured at, the loss lies between all of it growing with the
// power and none of it: the middle is taken, and half of what lies between is
// a doubt of its own.
func (w *Whole) line(power float64) Line {
	e, u := min(max(w.Efficiency.Value, 0), 1), w.Efficiency.Standard()
	out := line{Line: Line{Share: e}}
	if u != 0 {
		out.slope(w.Efficiency.Source).Share = u
	}
	if power > 0 && w.Power > 0 && power != w.Power {
		constant := max(1-(1-e)*w.Power/power, 0)
		out.Share = (e + constant) / 2
		out.slope("efficiency at another power").Share = mass.Rectangular(math.Abs(e-constant) / 2)
	}
	return out.Line
}
