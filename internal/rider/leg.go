package rider

import (
	"math"

	"steelyard/internal/mass"
)

// shoe is a foot in its own axes: the pedal's spindle is the origin, x along
// the sole towards the toes, z square to it. The ball of the foot is over the
// spindle.
type shoe struct {
	ankle, heel, toe, ball mass.Vec
	reach, slope           float64 // of the ankle from the spindle: distance, m, and angle from x, rad
}

func newShoe(stature float64) shoe {
	l := footLength * stature
	s := shoe{
		ankle: mass.Vec{X: (ankleAt - ballAt) * l, Z: spindleToSole + ankleHeight*stature},
		heel:  mass.Vec{X: -ballAt * l, Z: spindleToSole + soleToFoot*stature},
		toe:   mass.Vec{X: (1 - ballAt) * l, Z: spindleToSole + soleToFoot*stature},
		ball:  mass.Vec{Z: spindleToSole},
	}
	s.reach, s.slope = s.ankle.Norm(), math.Atan2(s.ankle.Z, s.ankle.X)
	return s
}

// Angles of the sole, toes down positive: estimates of ours. Pedalling, the
// heel drops a little as the foot pushes and lifts as the pedal comes back.
// Standing, it is the lower foot that points its toes.
const (
	toesSeated   = 17 * degree
	toesPedal    = 9 * degree
	toesStanding = 12 * degree
	toesLower    = 10 * degree
	toesMost     = 40 * degree // as far as the toes point to reach a pedal
)

// toesDown is the usual angle of the sole at a crank angle, rad: of this leg's
// crank from level and forward, positive up.
func toesDown(crank float64, standing bool) float64 {
	s, c := math.Sincos(crank)
	if standing {
		return toesStanding - toesLower*s
	}
	return toesSeated - toesPedal*c
}

// stand puts the ankle over a pedal's spindle.
func (s *shoe) stand(spindle mass.Vec, toes float64) mass.Vec {
	return spindle.Add(s.ankle.PitchBy(-toes))
}

// point is the angle of the sole with which a leg that would be too short at
// the usual angle reaches its pedal: the ankle lies on a circle about the
// spindle, and as far from the hip as the leg is long. It is at most toesMost,
// which may not do.
func (m *body) point(hip, spindle mass.Vec, usual float64) float64 {
	if m.foot.stand(spindle, usual).Sub(hip).Norm() <= m.legs.straight {
		return usual
	}
	d := hip.Sub(spindle)
	flat := math.Hypot(d.X, d.Z)
	leg2 := m.legs.straight*m.legs.straight - d.Y*d.Y // in the plane in which the foot turns
	r := m.foot.reach
	between := math.Acos(clamp((r*r+flat*flat-leg2)/(2*r*flat), -1, 1))
	toes := m.foot.slope - math.Atan2(d.Z, d.X) - between
	toes -= 2 * math.Pi * math.Round((toes-toesSeated)/(2*math.Pi))
	return clamp(toes, usual, max(usual, toesMost))
}

// crank is what the feet turn.
type crank struct {
	centre   mass.Vec // of the bottom bracket
	length   float64  // m
	sideways float64  // of a pedal's middle from the middle of the bike, m
}

// spindle is the middle of the left pedal, at an angle from level and forward,
// positive up.
func (c crank) spindle(angle float64) mass.Vec {
	s, co := math.Sincos(angle)
	return c.centre.Add(mass.Vec{X: c.length * co, Y: c.sideways, Z: c.length * s})
}

// turnSteps is how many crank angles a whole turn is looked at before the worst
// of them is narrowed down.
const turnSteps = 36

// worst is the greatest value of f over a turn of the cranks. Around the best
// of its steps f is narrowed down by golden section, to a thousandth of a step.
func worst(f func(angle float64) float64) (value, angle float64) {
	const step = 2 * math.Pi / turnSteps
	value = math.Inf(-1)
	for i := range turnSteps {
		a := float64(i) * step
		if v := f(a); v > value {
			value, angle = v, a
		}
	}
	const golden = 0.6180339887498949
	low, high := angle-step, angle+step
	a, b := high-golden*(high-low), low+golden*(high-low)
	fa, fb := f(a), f(b)
	for range 16 {
		if fa > fb {
			high, b, fb = b, a, fa
			a = high - golden*(high-low)
			fa = f(a)
		} else {
			low, a, fa = a, b, fb
			b = low + golden*(high-low)
			fb = f(b)
		}
	}
	if fa > value {
		value, angle = fa, a
	}
	if fb > value {
		value, angle = fb, b
	}
	return value, angle
}

// Shorten is by how much the left leg is too short, over a whole turn of the
// cranks, when the toes point as far as most, m; not positive is long enough.
func (m *body) short(hip mass.Vec, c crank, most float64) float64 {
	v, _ := worst(func(angle float64) float64 {
		p := c.spindle(angle)
		usual := toesDown(angle, false)
		return m.foot.stand(p, clamp(m.inLine(hip, p), usual, max(most, usual))).Sub(hip).Norm() - m.legs.straight
	})
	return v
}

// inLine is the angle of toes that point, rad, at which spindle, ankle and hip
// lie in line, so that the leg needs to be no longer for any other.
func (m *body) inLine(hip, spindle mass.Vec) float64 {
	d := hip.Sub(spindle)
	toes := m.foot.slope - math.Atan2(d.Z, d.X)
	return toes - 2*math.Pi*math.Round((toes-toesSeated)/(2*math.Pi))
}

// tight is by how much the left leg does not fold far enough, over a whole turn
// of the cranks, m.
func (m *body) tight(hip mass.Vec, c crank) float64 {
	v, _ := worst(func(angle float64) float64 {
		return m.legs.folded - m.foot.stand(c.spindle(angle), toesDown(angle, false)).Sub(hip).Norm()
	})
	return v
}

// leg solves the left leg from hip and pedal. The bike is mirrored for the
// right one.
func (m *body) leg(hip, spindle mass.Vec, toes float64, s *Side) {
	turn := func(p mass.Vec) mass.Vec { return spindle.Add(p.PitchBy(-toes)) }
	s.Hip, s.Pedal, s.Toes = hip, spindle, toes
	s.Ankle, s.Heel, s.Toe, s.Ball = turn(m.foot.ankle), turn(m.foot.heel), turn(m.foot.toe), turn(m.foot.ball)
	// The knee bends in the plane that contains hip, ankle and the direction
	// square to the leg in the side view: forward, as long as the foot is below.
	way := s.Ankle.Sub(hip)
	s.Knee = m.legs.joint(hip, s.Ankle, mass.Vec{X: -way.Z, Z: way.X})
	s.KneeBend = m.legs.bend(way.Norm())
}
