package road

import "math"

// check says what makes a bike impossible, before anything is reckoned.
func (b *Bike) check() error {
	err := first(above(NoWheelbase, Both, b.wheelbase()), above(NoHeadAngle, Front, math.Sin(b.HeadAngle)-1e-3))
	for side := range Both {
		e := &b.Ends[side]
		err = first(err,
			above(NoPressure, side, e.Tyre.Rate.Value),
			above(NoSize, side, e.Tyre.Radius),
			damping(side, e.Tyre.Lag.Value, longestLag))
		s := e.Spring
		if s == nil {
			continue
		}
		err = first(err, above(NoSize, side, s.Travel), damping(side, s.Ratio.Value, largestRatio), notBelow(BadDamping, side, s.Damper.Value))
		if err == nil && !(s.Rate.Value > 0) {
			err = above(NoSag, side, s.Sag.Value)
			if err == nil && s.Sag.Value >= s.Travel {
				err = &Problem{SagOverTravel, side, s.Sag.Value, 0, s.Travel}
			}
		}
		if side == Rear {
			err = first(err, above(NoArm, side, b.arm()))
		}
	}
	if s := b.Standing; s != nil {
		err = first(err, above(NoBody, Both, s.Frequency.Value), damping(Both, s.Ratio.Value, largestRatio))
	}
	return err
}

// What is beyond these is a slip of the pen: a damping as a share of the critical
// one, and the lag of a tyre, s.
const (
	largestRatio = 10.0
	longestLag   = 0.05
)

// damping is a problem where v is not between 0 and most.
func damping(side Side, v, most float64) error {
	if v > most && !math.IsInf(v, 0) {
		return &Problem{BadDamping, side, v, 0, most}
	}
	return notBelow(BadDamping, side, v)
}

// notBelow is a problem where v is less than 0, or no number.
func notBelow(key Key, side Side, v float64) error {
	if v == 0 {
		return nil
	}
	return above(key, side, v)
}

// check says what makes a motion impossible.
func (s *system) check(b *Bike, f *frameOf, p *params) error {
	err := above(NoMass, Both, s.total)
	if f.body >= 0 {
		err = first(err, above(NoMass, Both, p[int(Rider)*perBody+sumM]))
	}
	for side := range Both {
		err = first(err, above(NoLoad, side, s.static[side]))
		// Softer than that, the wheel would sink by half its radius.
		if least := 2 * s.static[side] / b.Ends[side].Tyre.Radius; err == nil && s.kt[side] < least {
			err = &Problem{NoPressure, side, s.kt[side], least, math.Inf(1)}
		}
		if b.Ends[side].Spring != nil {
			err = first(err, above(NoLoad, side, s.carried[side]), above(NoSag, side, s.rate[side]), notBelow(BadDamping, side, s.damping[side]))
		}
	}
	for i := range s.n {
		for j := range s.n {
			err = first(err, number(s.m[i][j]), number(s.c[i][j]), number(s.k[i][j]))
		}
		err = first(err, above(NoMass, Both, s.m[i][i]))
	}
	for ch := range s.channels {
		for _, v := range s.channels[ch].row {
			err = first(err, number(v))
		}
	}
	return err
}

// number is a problem where v is none.
func number(v float64) error {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return &Problem{NotANumber, Both, v, math.Inf(-1), math.Inf(1)}
	}
	return nil
}

// Bounds of what is usual, beyond which a figure is marked.
const (
	mostRatio  = 1.5     // of the critical damping
	mostSpeed  = 25.0    // m/s
	mostPress  = 1 / 3.0 // of a tyre's height that its load takes up
	steep      = 1 / 3.0 // of a wheel's radius that an obstacle is high
	mostChange = 0.2     // of the sag by which it may be another than the set one
)

// marks are what is to be said of a motion.
func (s *system) marks(b *Bike) (list []Mark) {
	f := b.frame()
	for side := range Both {
		e := &b.Ends[side]
		if d := s.static[side] / s.kt[side]; e.Tyre.Width > 0 && d > mostPress*e.Tyre.Width {
			list = append(list, Mark{TyreFlat, side, d, mostPress * e.Tyre.Width})
		}
		sp := e.Spring
		if sp == nil {
			continue
		}
		sag := s.sag(f, side)
		if sag >= sp.Travel {
			list = append(list, Mark{SagGone, side, sag, sp.Travel})
		} else if b.Set != nil && sp.Rate.Value <= 0 && math.Abs(sag-sp.Sag.Value) > mostChange*sp.Sag.Value {
			list = append(list, Mark{SagChanged, side, sag, sp.Sag.Value})
		}
		// The share of critical damping that a measured damper is.
		ratio := sp.Ratio.Value
		if sp.Damper.Value > 0 {
			lever := 1.0
			if side == Front {
				lever = f.sin
			}
			ratio = s.damping[side] / (2 * lever * math.Sqrt(s.rate[side]*s.carried[side]/Gravity))
		}
		switch {
		case ratio > mostRatio:
			list = append(list, Mark{OverDamped, side, ratio, mostRatio})
		case ratio == 0:
			list = append(list, Mark{UnDamped, side, 0, 0})
		}
	}
	return list
}
