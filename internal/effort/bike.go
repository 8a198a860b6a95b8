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

// drag is the torque of the drive's bearings as a force at the wheel, N.
func (b *Bike) drag(gear int) float64 {
	g := &b.Gears[gear]
	return g.Line.Torque * 2 * math.Pi / (g.Ratio * b.RollOut.Value)
}

// cadence is that of a gear at a speed, turns per minute.
func (b *Bike) cadence(gear int, v float64) float64 {
	return 60 * v / (b.Gears[gear].Ratio * b.RollOut.Value)
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
	return b.ride(r, &l, 4)
}

func (b *Bike) ride(r *Rider, l *load, guess float64) State {
	s := b.pedal(r, l, guess)
	if r.Top > 0 && s.Speed > r.Top && s.Mode != Walking {
		f, _ := l.force(r.Top)
		if f <= 0 { // it would run faster by itself
			return State{Mode: Braking, Speed: r.Top, Gear: -1}
		}
		s.Speed = r.Top
		s.ease(b, l)
	}
	return s
}

// pedal is ride without regard to a top speed.
func (b *Bike) pedal(r *Rider, l *load, guess float64) State {
	walk := State{Mode: Walking, Speed: max(r.Walk, 0), Gear: -1}
	n, p := len(b.Gears), r.Power.Value
	if n == 0 || !(p > 0) || !(r.Cadence > 0) || !(b.RollOut.Value > 0) {
		if v := l.speed(0, 0, guess); v > walk.Speed {
			return State{Mode: Coasting, Speed: v, Gear: -1}
		}
		return walk
	}
	at := func(i int, guess float64) float64 {
		line := &b.Gears[i].Line
		return l.speed(line.Share*p-line.Power, b.drag(i), guess)
	}
	// How far off a cadence is, as a ratio of 1 or more.
	off := func(i int, v float64) float64 {
		c := b.cadence(i, v) / r.Cadence
		return max(c, 1/c)
	}
	// Gears differ little in what they lose, so the speed in one tells which are
	// near; from there on to the nearest.
	i := n / 2
	v := at(i, guess)
	best := off(i, v)
	for k := range b.Gears {
		if o := off(k, v); o < best {
			i, best = k, o
		}
	}
	v = at(i, v)
	best = off(i, v)
	// A neighbour may be nearer at the speed that it gives: that differs by no more
	// than what arrives at the wheel does.
	for _, step := range [2]int{1, -1} {
		for k := i + step; k >= 0 && k < n; k += step {
			more := b.wheel(k, p, r.Cadence) / b.wheel(i, p, r.Cadence)
			if more > 0 && off(k, v)/max(more, 1/more) > best {
				break
			}
			w := at(k, v)
			if o := off(k, w); o >= best {
				break
			} else {
				i, v, best = k, w, o
			}
		}
	}
	s := State{Mode: Pedalling, Speed: v, Gear: i, Cadence: b.cadence(i, v), Power: p}
	if s.Cadence < r.Least || v <= 0 {
		if i > 0 { // the lowest gear may still do
			if w := at(0, v); b.cadence(0, w) >= r.Least {
				return State{Mode: Pedalling, Speed: w, Gear: 0, Cadence: b.cadence(0, w), Power: p, Wheel: b.wheel(0, p, b.cadence(0, w))}
			}
		}
		return walk
	}
	if r.Most > 0 && s.Cadence > r.Most {
		// In the highest gear, for i is the nearest.
		s.Speed = r.Most / 60 * b.Gears[i].Ratio * b.RollOut.Value
		if v := l.speed(0, 0, v); v >= s.Speed {
			return State{Mode: Coasting, Speed: v, Gear: -1}
		}
		s.ease(b, l)
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
func (s *State) ease(b *Bike, l *load) {
	if s.Gear < 0 {
		return
	}
	f, _ := l.force(s.Speed)
	line := &b.Gears[s.Gear].Line
	s.Mode = Easing
	s.Cadence = b.cadence(s.Gear, s.Speed)
	s.Wheel = max(f*s.Speed, 0)
	s.Power = 0
	if line.Share > 0 {
		s.Power = max((s.Wheel+line.Power+line.Torque*s.Cadence*2*math.Pi/60)/line.Share, 0)
	}
}

// owed collects how a sum of times moves with what it rests on, per unit of
// each, over one stretch after the other.
type owed struct {
	mass, power, wind, density, drag, slope, rollOut, most float64
	rolling                                                []float64 // by surface
	gears                                                  []gearOwed
}

// gearOwed is that by the three figures of the line of a gear.
type gearOwed struct{ share, torque, power float64 }

func newOwed(gears, surfaces int) owed {
	return owed{rolling: make([]float64, surfaces), gears: make([]gearOwed, gears)}
}

// add adds k times the slopes of the speed of a state: of the balance F(v, q) = 0
// it is dv/dq = -F_q/F_v.
func (o *owed) add(b *Bike, r *Rider, road *Road, l *load, surface int, s *State, k float64) {
	v, m := s.Speed, b.Mass.Value
	f, df := l.force(v)
	switch s.Mode {
	case Easing:
		if !(r.Top > 0 && v >= r.Top) {
			o.rollOut += k * v / b.RollOut.Value
			o.most += k * v / r.Most
		}
		return
	case Coasting:
		// F is the force: as below, without the factor v.
		if df <= 0 {
			return
		}
		k = -k / (df * v)
	case Pedalling:
		line, drag := &b.Gears[s.Gear].Line, b.drag(s.Gear)
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
	drive.Quantity{Value: r.Most, Half: r.MostHalf, Source: "highest cadence"}.Charge(b, o.most)
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
