package road

import (
	"math"
	"math/cmplx"
)

// Form is the form of an obstacle.
type Form int

// The forms: a kerb that is ridden up and stays; a bar that lies across the road;
// a hole. Their sides are upright.
const (
	Edge Form = iota
	Step
	Hole
)

// Obstacle lies across a level road. Length, m, is along it, and means nothing
// for an edge.
type Obstacle struct {
	Form           Form
	Height, Length float64 // m; of a hole its depth
}

// rise is how far the axle of a stiff wheel of the radius r is lifted over the
// level, m, with the obstacle's begin a distance x behind it: the wheel lies on
// whatever lifts it most, a flat or a corner.
func (o *Obstacle) rise(x, r float64) float64 {
	corner := func(height, d float64) float64 {
		if d <= -r || d >= r {
			return math.Inf(-1)
		}
		return height + math.Sqrt(r*r-d*d) - r
	}
	switch {
	case o.Form == Edge && x >= 0:
		return o.Height
	case o.Form == Edge:
		return max(0, corner(o.Height, x))
	case o.Form == Step && x >= 0 && x <= o.Length:
		return o.Height
	case o.Form == Step:
		return max(0, corner(o.Height, x), corner(o.Height, x-o.Length))
	case x <= 0 || x >= o.Length:
		return 0
	}
	return max(-o.Height, corner(0, x), corner(0, x-o.Length))
}

// reach is how far before its begin and behind its end an obstacle moves a wheel.
func (o *Obstacle) reach(r float64) (from, to float64) {
	if o.Form == Hole {
		return 0, o.Length
	}
	h := min(o.Height, r)
	d := math.Sqrt(h * (2*r - h))
	if o.Form == Edge {
		return -d, 0
	}
	return -d, o.Length + d
}

// Jolt is a figure of a ride over an obstacle.
type Jolt int

// The figures. A load is that of the tyre with what it bears at rest, N, and one
// below 0 means that it is off the ground; travel is with the sag, m;
// accelerations are the largest either way, m/s², the weight not in them. Force
// is what the rack bears of its load, N.
const (
	MostLoadFront Jolt = iota
	MostLoadRear
	LeastLoadFront
	LeastLoadRear
	SaddleJolt
	GripsJolt
	RackJolt
	ForkBagsJolt
	BarBagJolt
	MostTravelFront
	MostTravelRear
	RackForce
	numJolts
)

// NumJolts is how many figures there are.
const NumJolts = int(numJolts)

// channelOf is a channel that the figure is made of.
func (j Jolt) channelOf() int {
	return [...]int{tyreFront, tyreRear, tyreFront, tyreRear, saddle, gripUp, rack, forkBags, barBag, travelFront, travelRear, rack}[j]
}

// Passage is a ride over an obstacle, from where the front wheel meets it.
type Passage struct {
	Jolts [numJolts]Figure
	Marks []Mark
	// Times, s, and beside each the loads of the tyres, N, and the vertical
	// acceleration of saddle and rack, m/s²; a trace is nil for what is not there.
	Times               []float64
	LoadFront, LoadRear []float64
	SaddleUp, RackUp    []float64
	OffFront, OffRear   float64   // how long the tyres are off the ground, s
	PathFront, PathRear []float64 // rise of the road as the tyre feels it, m
}

// Steps of the road and of the time behind it.
const (
	roadStep = 0.002 // m
	timeStep = 0.002 // s
	after    = 1.0   // s that are told of behind the obstacle
	maxSteps = 20000
)

// drive is what the road does under both wheels, step by step: it goes by a
// steady rate in each.
type drive struct {
	dt     []float64
	slopes [2][]float64 // dw/dt, m/s
}

// drive makes the road's steps of an obstacle. They begin and end where the
// contacts of the model itself do, whatever the contacts are, with some room.
func (m *Model) drive(o *Obstacle, speed float64, contact *[2]float64) (d drive) {
	begin, end := math.Inf(1), math.Inf(-1)
	for i, a := range m.base.contact {
		from, to := o.reach(m.bike.Ends[i].Tyre.Radius)
		behind := float64(i) * m.frame.wheelbase
		begin, end = min(begin, from-a/2+behind), max(end, to+a/2+behind)
	}
	begin, end = begin-roadStep, end+roadStep
	step := max(roadStep, (end-begin)/(maxSteps/2))
	n := int(math.Ceil((end - begin) / step))
	room := make([]float64, 3*(n+int(after/timeStep)))
	all := len(room) / 3
	d.dt, d.slopes[0], d.slopes[1] = room[:0:all], room[all:all:2*all], room[2*all:2*all]
	for k := range n {
		d.dt = append(d.dt, step/speed)
		for i, a := range contact {
			x := begin + float64(k)*step - float64(i)*m.frame.wheelbase
			r := m.bike.Ends[i].Tyre.Radius
			// Averaged over the contact the road rises by what comes in ahead less what
			// goes out behind.
			var rate float64
			if a > 0 {
				x += step / 2
				rate = (o.rise(x+a/2, r) - o.rise(x-a/2, r)) / a
			} else {
				rate = (o.rise(x+step, r) - o.rise(x, r)) / step
			}
			d.slopes[i] = append(d.slopes[i], rate*speed)
		}
	}
	for range int(after / timeStep) {
		d.dt = append(d.dt, timeStep)
		d.slopes[0], d.slopes[1] = append(d.slopes[0], 0), append(d.slopes[1], 0)
	}
	return d
}

// player plays a motion through time. The answer to a road that rises steadily
// within each step is exact: x' = s x + b w' for each pole.
type player struct {
	s       *system
	poles   []pole
	direct  [numChannels][2]float64
	input   [maxPoles][2]complex128
	output  [numChannels][maxPoles]complex128
	state   [maxPoles]complex128
	step    float64
	forward [maxPoles]complex128 // e^(s dt)
	gain    [maxPoles]complex128 // (e^(s dt) - 1)/s
}

func newPlayer(s *system, poles []pole) *player {
	p := &player{s: s, poles: poles, direct: s.direct()}
	for k := range poles {
		at := &poles[k]
		for i := range p.input[k] {
			p.input[k][i] = s.axle[i].dot(&at.u) * (complex(s.kt[i], 0) + at.s*complex(s.ct[i], 0)) * inverse(at.s*at.d)
		}
		for ch := range p.output {
			if s.channels[ch].there {
				f, _ := s.read(ch, at.s, &at.u, &at.u)
				p.output[ch][k] = f * complex(at.weight(), 0)
			}
		}
	}
	return p
}

// advance goes on by dt while the road rises at these rates.
func (p *player) advance(dt, front, rear float64) {
	if dt != p.step {
		p.step = dt
		for k := range p.poles {
			s := p.poles[k].s
			p.forward[k] = cmplx.Exp(s * complex(dt, 0))
			p.gain[k] = averages(s*complex(dt, 0)).half * complex(dt, 0)
		}
	}
	for k := range p.poles {
		in := p.input[k][0]*complex(front, 0) + p.input[k][1]*complex(rear, 0)
		p.state[k] = p.state[k]*p.forward[k] + p.gain[k]*in
	}
}

// read is a channel's value.
func (p *player) read(ch int, front, rear float64) float64 {
	d := &p.direct[ch]
	sum := d[0]*front + d[1]*rear
	for k := range p.poles {
		o, x := p.output[ch][k], p.state[k]
		sum += real(o)*real(x) - imag(o)*imag(x)
	}
	return sum
}

// jolt is a figure at the present moment, and how large it is for the search of
// its largest.
func (m *Model) jolt(j Jolt, p *player, front, rear float64) (value, size float64) {
	y := p.read(j.channelOf(), front, rear)
	switch j {
	case MostLoadFront, MostLoadRear:
		y += p.s.static[j-MostLoadFront]
	case LeastLoadFront, LeastLoadRear:
		y += p.s.static[j-LeastLoadFront]
		return y, -y
	case GripsJolt:
		y = math.Hypot(y, p.read(gripForward, front, rear))
	case MostTravelFront, MostTravelRear:
		y += p.s.sag(m.frame, Side(j-MostTravelFront))
	case RackForce:
		y = m.bike.Rack.Load * (Gravity + y)
	default:
		return math.Abs(y), math.Abs(y)
	}
	return y, y
}

// Over finds a ride over an obstacle. The error is a [*Problem].
func (m *Model) Over(o Obstacle, speed float64) (*Passage, error) {
	err := first(above(NoSpeed, Both, speed), above(NoObstacle, Both, o.Height))
	if o.Form != Edge {
		err = first(err, above(NoObstacle, Both, o.Length))
		if err == nil && o.Length > maxSteps/10*roadStep {
			err = &Problem{NoObstacle, Both, o.Length, 0, maxSteps / 10 * roadStep}
		}
	}
	if err != nil {
		return nil, err
	}
	out := new(Passage)
	if speed > mostSpeed {
		out.Marks = append(out.Marks, Mark{SpeedHigh, Both, speed, mostSpeed})
	}
	for side := range Both {
		r := m.bike.Ends[side].Tyre.Radius
		if o.Height >= r {
			return nil, &Problem{TooHigh, side, o.Height, 0, r}
		}
		if o.Form == Hole {
			if deep := -o.rise(o.Length/2, r); deep < o.Height*(1-1e-9) {
				out.Marks = append(out.Marks, Mark{HoleNarrow, side, deep, o.Height})
			}
		} else if o.Height > steep*r {
			out.Marks = append(out.Marks, Mark{StepSteep, side, o.Height, steep * r})
		}
	}
	d := m.drive(&o, speed, &m.base.contact)
	at := m.play(&d, out)
	for j := range out.Jolts {
		if err := number(out.Jolts[j].Value); err != nil {
			return nil, err
		}
	}
	m.doubt(&o, speed, &d, at, out)
	for side, off := range [2]float64{out.OffFront, out.OffRear} {
		if off > 0 {
			out.Marks = append(out.Marks, Mark{LiftsOff, Side(side), off, 0})
		}
		if t := &out.Jolts[MostTravelFront+Jolt(side)]; t.There && t.Value > m.bike.Ends[side].Spring.Travel {
			out.Marks = append(out.Marks, Mark{HitsEnd, Side(side), t.Value, m.bike.Ends[side].Spring.Travel})
		}
	}
	return out, nil
}

// play fills a passage, and returns the step at which each figure is largest.
func (m *Model) play(d *drive, out *Passage) (at [numJolts]int) {
	s := &m.base.system
	p := newPlayer(s, m.base.poles.all())
	var most [numJolts]float64
	for j := range numJolts {
		out.Jolts[j].There = m.frame.there[j.channelOf()]
		most[j] = math.Inf(-1)
	}
	n := len(d.dt)
	traces := make([]float64, 0, 7*n)
	trace := func(there bool) []float64 {
		if !there {
			return nil
		}
		traces = traces[:len(traces)+n]
		return traces[len(traces)-n:]
	}
	out.Times, out.LoadFront, out.LoadRear = trace(true), trace(true), trace(true)
	out.PathFront, out.PathRear = trace(true), trace(true)
	out.SaddleUp, out.RackUp = trace(m.frame.there[saddle]), trace(m.frame.there[rack])
	var now, front, rear float64
	for k, dt := range d.dt {
		a, b := d.slopes[0][k], d.slopes[1][k]
		p.advance(dt, a, b)
		now, front, rear = now+dt, front+a*dt, rear+b*dt
		for j := range numJolts {
			if !out.Jolts[j].There {
				continue
			}
			if v, size := m.jolt(j, p, a, b); size > most[j] {
				most[j], at[j], out.Jolts[j].Value = size, k, v
			}
		}
		out.Times[k], out.PathFront[k], out.PathRear[k] = now, front, rear
		out.LoadFront[k] = s.static[Front] + p.read(tyreFront, a, b)
		out.LoadRear[k] = s.static[Rear] + p.read(tyreRear, a, b)
		if out.LoadFront[k] < 0 {
			out.OffFront += dt
		}
		if out.LoadRear[k] < 0 {
			out.OffRear += dt
		}
		if out.SaddleUp != nil {
			out.SaddleUp[k] = p.read(saddle, a, b)
		}
		if out.RackUp != nil {
			out.RackUp[k] = p.read(rack, a, b)
		}
	}
	return at
}

// doubt gives the figures what moves them. Where a figure is at its largest its
// time does not matter, so that each variant is read at the same step.
func (m *Model) doubt(o *Obstacle, speed float64, d *drive, at [numJolts]int, out *Passage) {
	last := 0
	for j := range numJolts {
		if f := &out.Jolts[j]; f.There {
			f.model, f.slopes = m, make([]float64, len(m.moved))
			last = max(last, at[j])
		}
	}
	var v variant
	for i := range m.moved {
		m.vary(m.moved[i].index, m.moved[i].step, &v)
		here := d
		if v.contact != m.base.contact {
			moved := m.drive(o, speed, &v.contact)
			here = &moved
		}
		p := newPlayer(&v.system, v.poles.all())
		for k := 0; k <= last && k < len(here.dt); k++ {
			a, b := here.slopes[0][k], here.slopes[1][k]
			p.advance(here.dt[k], a, b)
			for j := range numJolts {
				if f := &out.Jolts[j]; f.There && at[j] == k {
					value, _ := m.jolt(j, p, a, b)
					f.slopes[i] = slope(value, f.Value, m.moved[i].step)
				}
			}
		}
	}
}
