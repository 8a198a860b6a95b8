package effort

import (
	"math"

	"steelyard/internal/drive"
	"steelyard/internal/mass"
)

// Bike is a build with its load and its rider, as far as a road asks.
type Bike struct {
	Mass    drive.Figure // of all together, kg
	RollOut drive.Figure // m
	Gears   []Gear       // lowest first; none is a bike that is pushed
}

// Gear is a gear with what its drive does to the power.
type Gear struct {
	drive.Gear
	Line drive.Line
}

// Mode is how one gets along.
type Mode string

// The modes.
const (
	Pedalling Mode = "pedalling" // with all the power held
	Easing    Mode = "easing"    // at the highest cadence, with less
	Coasting  Mode = "coasting"
	Braking   Mode = "braking" // at the top speed
	Walking   Mode = "walking" // no gear is low enough
)

// State is how one gets along on a stretch.
type State struct {
	Mode    Mode
	Speed   float64 // m/s
	Cadence float64 // turns per minute; 0 where one does not pedal
	Gear    int     // index into Gears, -1 where one does not pedal
	Power   float64 // at the pedals, W
	Wheel   float64 // what of it arrives at the rear wheel, W
}

// Ride returns how a rider gets along with a bike on a road. The gear is the one
// whose cadence is nearest, as a ratio, to what the rider likes.
func (b *Bike) Ride(r *Rider, road *Road) State {
	l := loadOf(road, b.Mass.Value)
	o := b.riddenBy(r)
	return o.ride(&l, 4)
}

// ridden is a bike with who rides it.
type ridden struct {
	bike  *Bike
	rider *Rider
	gears []geared // nil where nobody can pedal
}

// geared is a gear as its rider has it.
type geared struct {
	turns float64 // cadence over that which the rider likes, at 1 m/s
	power float64 // that arrives at the wheel but for drag, W
	drag  float64 // torque of the drive's bearings as a force at the wheel, N
	liked float64 // power that arrives at the cadence liked, W
}

func (b *Bike) riddenBy(r *Rider) ridden {
	o := ridden{bike: b, rider: r}
	p := r.Power.Value
	if len(b.Gears) == 0 || !(p > 0) || !(r.Cadence > 0) || !(b.RollOut.Value > 0) {
		return o
	}
	o.gears = make([]geared, len(b.Gears))
	for i := range o.gears {
		g := &b.Gears[i]
		way := g.Ratio * b.RollOut.Value
		o.gears[i] = geared{
			turns: 60 / (way * r.Cadence), power: g.Line.Share*p - g.Line.Power,
			drag: g.Line.Torque * 2 * math.Pi / way, liked: b.wheel(i, p, r.Cadence),
		}
	}
	return o
}

// ride is how one gets along under a load.
func (o *ridden) ride(l *load, guess float64) State {
	s := o.pedal(l, guess)
	if top := o.rider.Top; top > 0 && s.Speed > top && s.Mode != Walking {
		f, _ := l.force(top)
		if f <= 0 { // it would run faster by itself
			return State{Mode: Braking, Speed: top, Gear: -1}
		}
		s.Speed = top
		o.ease(&s, l)
	}
	return s
}

// speed is that in a gear, within a share of it.
func (o *ridden) speed(l *load, gear int, guess, within float64) float64 {
	g := &o.gears[gear]
	return l.speed(g.power, g.drag, guess, within)
}

// off is how far the cadence of a gear is off at a speed, as a ratio of 1 or more.
func (o *ridden) off(gear int, v float64) float64 {
	c := v * o.gears[gear].turns
	if c < 1 {
		return 1 / c
	}
	return c
}

// pedal is ride without regard to a top speed.
func (o *ridden) pedal(l *load, guess float64) State {
	b, r := o.bike, o.rider
	walk := State{Mode: Walking, Speed: max(r.Walk.Value, 0), Gear: -1}
	n, p := len(o.gears), r.Power.Value
	if n == 0 {
		if v := l.speed(0, 0, guess, exactly); v > walk.Speed {
			return State{Mode: Coasting, Speed: v, Gear: -1}
		}
		return walk
	}
	// Gears differ little in what they lose, so the speed in one tells which are
	// near; from there on to the nearest.
	i := n / 2
	v := o.speed(l, i, guess, roughly)
	best := o.off(i, v)
	// Developments grow from gear to gear, so that the cadence is off less and less
	// up to the nearest, and then more and more.
	for _, step := range [2]int{1, -1} {
		for k := i + step; k >= 0 && k < n; k += step {
			off := o.off(k, v)
			if off >= best {
				break
			}
			i, best = k, off
		}
	}
	v = o.speed(l, i, v, exactly)
	best = o.off(i, v)
	// A neighbour may be nearer at the speed that it gives: that differs by no more
	// than what arrives at the wheel does.
	for _, step := range [2]int{1, -1} {
		for k := i + step; k >= 0 && k < n; k += step {
			more := o.gears[k].liked / o.gears[i].liked
			if more > 0 && o.off(k, v)/max(more, 1/more) > best {
				break
			}
			w := o.speed(l, k, v, exactly)
			if off := o.off(k, w); off >= best {
				break
			} else {
				i, v, best = k, w, off
			}
		}
	}
	cadence := func(gear int, v float64) float64 { return v * o.gears[gear].turns * r.Cadence }
	s := State{Mode: Pedalling, Speed: v, Gear: i, Cadence: cadence(i, v), Power: p}
	if s.Cadence < r.Least || v <= 0 {
		if i > 0 { // the lowest gear may still do
			if w := o.speed(l, 0, v, exactly); cadence(0, w) >= r.Least {
				return State{Mode: Pedalling, Speed: w, Gear: 0, Cadence: cadence(0, w), Power: p, Wheel: b.wheel(0, p, cadence(0, w))}
			}
		}
		return walk
	}
	if most := r.Most.Value; most > 0 && s.Cadence > most {
		// In the highest gear, for i is the nearest.
		s.Speed = most / (o.gears[i].turns * r.Cadence)
		if v := l.speed(0, 0, v, exactly); v >= s.Speed {
			return State{Mode: Coasting, Speed: v, Gear: -1}
		}
		o.ease(&s, l)
		return s
	}
	s.Wheel = b.wheel(i, p, s.Cadence)
	return s
}

// wheel is the power that arrives, W.
func (b *Bike) wheel(gear int, power, cadence float64) float64 {
	l := &b.Gears[gear].Line
	return l.Share*power - l.Torque*cadence*2*math.Pi/60 - l.Power
}

// ease takes from the power what is not wanted at the state's speed.
func (o *ridden) ease(s *State, l *load) {
	if s.Gear < 0 {
		return
	}
	f, _ := l.force(s.Speed)
	line := &o.bike.Gears[s.Gear].Line
	s.Mode = Easing
	s.Cadence = s.Speed * o.gears[s.Gear].turns * o.rider.Cadence
	s.Wheel = max(f*s.Speed, 0)
	s.Power = 0
	if line.Share > 0 {
		s.Power = max((s.Wheel+line.Power+line.Torque*s.Cadence*2*math.Pi/60)/line.Share, 0)
	}
}

// owed collects how a sum of times moves with what it rests on, per unit of
// each, over one stretch after the other.
type owed struct {
	mass, power, wind, density, drag, slope, rollOut, most, walk float64
	rolling                                                      []float64 // by surface
	gears                                                        []gearOwed
}

// gearOwed is that by the three figures of the line of a gear.
type gearOwed struct{ share, torque, power float64 }

func newOwed(gears, surfaces int) owed {
	return owed{rolling: make([]float64, surfaces), gears: make([]gearOwed, gears)}
}

// add adds k times the slopes of the speed of a state: of the balance F(v, q) = 0
// it is dv/dq = -F_q/F_v.
func (o *owed) add(by *ridden, road *Road, l *load, surface int, s *State, k float64) {
	b, r := by.bike, by.rider
	v, m := s.Speed, b.Mass.Value
	f, df := l.force(v)
	switch s.Mode {
	case Easing:
		if !(r.Top > 0 && v >= r.Top) {
			o.rollOut += k * v / b.RollOut.Value
			o.most += k * v / r.Most.Value
		}
		return
	case Coasting:
		// F is the force: as below, without the factor v.
		if df <= 0 {
			return
		}
		k = -k / (df * v)
	case Walking:
		o.walk += k
		return
	case Pedalling:
		line, drag := &b.Gears[s.Gear].Line, by.gears[s.Gear].drag
		k = -k / (f + drag + df*v)
		o.power -= k * line.Share
		o.rollOut -= k * drag * v / b.RollOut.Value
		g := &o.gears[s.Gear]
		g.share -= k * s.Power
		g.torque += k * s.Cadence * 2 * math.Pi / 60
		g.power += k
	default:
		return
	}
	o.outside(road, l, surface, v, m, k)
}

// outside adds k times the slopes of force times speed by what acts from outside.
func (o *owed) outside(road *Road, l *load, surface int, v, m, k float64) {
	slope := road.Slope.Value
	a := v + l.wind
	o.mass += k * l.steady / m * v
	cos := cosOf(slope)
	o.rolling[surface] += k * m * G * cos * v
	o.slope += k * m * G * v * (1 - road.Rolling.Value*slope) * cos * cos * cos
	o.wind += k * 2 * l.air * math.Abs(a) * v
	o.density += k * 0.5 * road.Drag.Value * a * math.Abs(a) * v
	o.drag += k * 0.5 * road.Density.Value * a * math.Abs(a) * v
}

// budget charges what was collected to the sources.
func (o *owed) budget(bike *Bike, r *Rider, road *Road, rolling []drive.Quantity) *mass.Budget {
	b := new(mass.Budget)
	if bike.Mass.Budget != nil {
		b.Add(bike.Mass.Budget, o.mass)
	}
	if bike.RollOut.Budget != nil {
		b.Add(bike.RollOut.Budget, o.rollOut)
	}
	r.Power.Charge(b, o.power)
	r.Most.Charge(b, o.most)
	r.Walk.Charge(b, o.walk)
	road.Slope.Charge(b, o.slope)
	road.Wind.Charge(b, o.wind)
	road.Density.Charge(b, o.density)
	road.Drag.Charge(b, o.drag)
	for i, q := range rolling {
		q.Charge(b, o.rolling[i])
	}
	for i := range o.gears {
		g := &o.gears[i]
		if *g == (gearOwed{}) {
			continue
		}
		for _, s := range bike.Gears[i].Line.Slopes {
			b.ChargeNamed(s.Source, g.share*s.Share+g.torque*s.Torque+g.power*s.Power)
		}
	}
	return b
}
