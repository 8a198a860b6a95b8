package road

import "math"

// The coordinates of the motion, after the way fore and aft is taken out.
const (
	heave     = iota // of the frame midway between the contacts, m
	pitch            // nose up, rad
	numFixed         // what every bike has
	maxDOF    = 5    // and fork travel, m; turn of the swingarm that lifts the axle, rad; height of a standing rider, m
	maxWithX  = maxDOF + 1
	maxPoles  = 2 * maxDOF
	undefined = -1
)

// row is a linear function of the coordinates.
type row [maxDOF]float64

// matrix is a square matrix over the coordinates.
type matrix [maxDOF]row

// addOuter adds f r rᵀ.
func (m *matrix) addOuter(f float64, r *row) {
	for i, a := range r {
		for j, b := range r {
			m[i][j] += f * (a * b)
		}
	}
}

// layout says which coordinate is which.
type layout struct{ n, fork, arm, body int }

func (b *Bike) layout() layout {
	l := layout{numFixed, undefined, undefined, undefined}
	next := func(is bool) int {
		if !is {
			return undefined
		}
		l.n++
		return l.n - 1
	}
	l.fork = next(b.Ends[Front].Spring != nil)
	l.arm = next(b.Ends[Rear].Spring != nil)
	l.body = next(b.Standing != nil)
	return l
}

// twist is an infinitesimal motion of a body in the plane: the point (x, z) goes
// by (tx - w z, tz + w x).
type twist struct{ tx, tz, w float64 }

// motion is how a body moves with each coordinate; the last is the way fore and
// aft.
type motion [maxWithX]twist

// motion returns how a body moves. The frame's heave and pitch are taken midway
// between the contacts, on the ground.
func (b *Bike) motion(l layout, body Body) (m motion) {
	middle := (b.RearAxle.X + b.FrontAxle.X) / 2
	m[maxDOF] = twist{tx: 1}
	m[heave] = twist{tz: 1}
	m[pitch] = twist{tz: -middle, w: 1}
	switch {
	case (body == ForkLower || body == FrontWheel) && l.fork >= 0:
		sin, cos := math.Sincos(b.HeadAngle)
		m[l.fork] = twist{tx: -cos, tz: sin}
	case (body == Swingarm || body == RearWheel) && l.arm >= 0:
		m[l.arm] = twist{tx: -b.Pivot.Z, tz: b.Pivot.X, w: -1}
	case body == Rider && l.body >= 0:
		m[heave] = twist{}
		m[pitch] = twist{tx: -b.Standing.Pedals.Z}
		m[l.body] = twist{tz: 1}
	}
	return m
}

// at is how the point (x, z) goes forward and up, with each coordinate.
func (m *motion) at(x, z float64) (forward, up [maxWithX]float64) {
	for i, t := range m {
		forward[i], up[i] = t.tx-t.w*z, t.tz+t.w*x
	}
	return forward, up
}

// kind says what a channel is made of.
type kind int

const (
	deflection   kind = iota // row · q
	acceleration             // row · q"
	tyre                     // kt (w - row · q) + ct (w' - row · q')
)

// The channels: what is asked of the motion.
const (
	tyreFront = iota
	tyreRear
	travelFront
	travelRear
	saddle
	gripForward
	gripUp
	rack
	forkBags
	barBag
	numChannels
)

// channel is one of them. Weight is 0 for none, 1 for Wk and 2 for Wh.
type channel struct {
	there  bool
	kind   kind
	weight int
	row    row
}

// system is the equation of motion with its numbers.
type system struct {
	n        int
	m, c, k  matrix
	axle     [2]row // how the axles rise
	kt, ct   [2]float64
	static   [2]float64 // load of the tyres, N
	carried  [2]float64 // load of the springs, N
	rate     [2]float64 // of the springs, along the travel, N/m
	damping  [2]float64 // N s/m
	contact  [2]float64 // length, m
	total    float64    // kg
	full     [maxWithX][maxWithX]float64
	channels [numChannels]channel
}

// frameOf is what of a bike's motion its pose alone decides.
type frameOf struct {
	layout
	motions        [numBodies]motion
	static, bears  [2]form
	places         [numChannels][2][maxWithX]float64 // of the accelerations: forward, up
	there          [numChannels]bool
	axleUp         [2][maxWithX]float64
	sin, wheelbase float64
}

func (b *Bike) frame() *frameOf {
	f := &frameOf{layout: b.layout(), sin: math.Sin(b.HeadAngle), wheelbase: b.wheelbase()}
	for body := range numBodies {
		f.motions[body] = b.motion(f.layout, body)
	}
	for side := range Both {
		f.static[side], f.bears[side] = b.static(side), b.carried(side)
	}
	_, f.axleUp[Front] = f.motions[FrontWheel].at(b.FrontAxle.X, b.FrontAxle.Z)
	_, f.axleUp[Rear] = f.motions[RearWheel].at(b.RearAxle.X, b.RearAxle.Z)
	for ch, p := range map[int]*Point{saddle: &b.Saddle, gripForward: &b.Grips, gripUp: &b.Grips, rack: &b.Rack, forkBags: &b.ForkBags, barBag: &b.BarBag} {
		if p.There {
			f.there[ch] = true
			f.places[ch][0], f.places[ch][1] = f.motions[p.On].at(p.Place.X, p.Place.Z)
		}
	}
	f.there[tyreFront], f.there[tyreRear] = true, true
	f.there[travelFront], f.there[travelRear] = f.fork >= 0, f.arm >= 0
	return f
}

// system puts the equation of motion together in s, which is empty.
func (b *Bike) system(f *frameOf, p *params, s *system) {
	s.n = f.n
	full := &s.full
	for body := range numBodies {
		sums := p[int(body)*perBody:]
		m, x, z, j := sums[sumM], sums[sumX], sums[sumZ], sums[sumJ]
		if m == 0 && j == 0 {
			continue
		}
		s.total += m
		mo := &f.motions[body]
		for i := range mo {
			a := &mo[i]
			if *a == (twist{}) {
				continue
			}
			for k := range i + 1 {
				c := &mo[k]
				full[i][k] += m*(a.tx*c.tx+a.tz*c.tz) + a.w*(c.tz*x-c.tx*z) + c.w*(a.tz*x-a.tx*z) + a.w*c.w*j
			}
		}
	}
	for i := range full {
		for k := range i {
			full[k][i] = full[i][k]
		}
	}
	// What goes fore and aft keeps its momentum.
	drift := &full[maxDOF]
	for i := range f.n {
		for k := range f.n {
			s.m[i][k] = full[i][k] - drift[i]*drift[k]/drift[maxDOF]
		}
	}
	fold := func(r *[maxWithX]float64) (out row) {
		for i := range f.n {
			out[i] = r[i] - r[maxDOF]*drift[i]/drift[maxDOF]
		}
		return out
	}
	for side := range Both {
		i := int(side)
		e := &b.Ends[side]
		s.axle[i] = fold(&f.axleUp[i])
		s.static[i] = f.static[i].of(p)
		s.kt[i], s.ct[i] = p[tyreRate+i], p[tyreRate+i]*p[tyreLag+i]
		if !b.PointContact {
			s.contact[i] = e.Tyre.contact(s.static[i] / s.kt[i])
		}
		s.k.addOuter(s.kt[i], &s.axle[i])
		s.c.addOuter(s.ct[i], &s.axle[i])
		s.channels[tyreFront+i] = channel{there: true, kind: tyre, row: s.axle[i]}
		if e.Spring == nil {
			continue
		}
		s.carried[i] = f.bears[i].of(p)
		set := s.carried[i]
		if b.Set != nil {
			set = p[setLoad+i]
		}
		// Along the travel: a fork's force is as many times smaller than the load as
		// the wheel rises less than the fork goes.
		lever, r := f.sin, row{}
		if side == Rear {
			lever = 1
			r[f.arm] = b.arm()
		} else {
			r[f.fork] = 1
		}
		s.rate[i] = p[springRate+i]
		if e.Spring.Rate.Value <= 0 {
			s.rate[i] = set * lever / p[springSag+i]
		}
		s.damping[i] = p[damper+i]
		if e.Spring.Damper.Value <= 0 {
			s.damping[i] = 2 * p[dampRatio+i] * math.Sqrt(s.rate[i]*set/Gravity) * lever
		}
		s.k.addOuter(s.rate[i], &r)
		s.c.addOuter(s.damping[i], &r)
		s.channels[travelFront+i] = channel{there: true, kind: deflection, row: r}
	}
	if f.body >= 0 {
		// Over a point of the frame below the rider's centre, so that at rest it
		// bears as if it were fixed.
		sums := p[int(Rider)*perBody:]
		_, r := f.motions[Frame].at(sums[sumX]/sums[sumM], 0)
		r[f.body]--
		d, w := fold(&r), 2*math.Pi*p[standing]
		s.k.addOuter(sums[sumM]*w*w, &d)
		s.c.addOuter(sums[sumM]*2*p[standing+1]*w, &d)
	}
	for ch := saddle; ch < numChannels; ch++ {
		if !f.there[ch] {
			continue
		}
		c := channel{there: true, kind: acceleration, row: fold(&f.places[ch][1])}
		switch ch {
		case saddle:
			c.weight = 1
		case gripForward:
			c.row = fold(&f.places[ch][0])
			c.weight = 2
		case gripUp:
			c.weight = 2
		}
		s.channels[ch] = c
	}
}
