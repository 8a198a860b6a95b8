package road

import (
	"math"
	"math/cmplx"
)

// Motion is what moves most in a mode.
type Motion string

// The motions.
const (
	Bounce   Motion = "bounce"    // the frame goes up and down
	Pitching Motion = "pitch"     // and its ends in turn
	HopFront Motion = "hop-front" // the wheel between road and spring
	HopRear  Motion = "hop-rear"
	Swaying  Motion = "body" // a standing rider over the bike
)

// Mode is a way in which a bike swings by itself. Frequency is that of the
// undamped motion with the same pole, Hz: |s|/2π; Damping is the share of the
// critical one, -Re s/|s|. A mode that creeps back (Damping of 1 or more) stands
// for two poles.
//
// Shape is how far each place goes and when, as complex numbers of which the
// largest is 1: of the frame over either axle, of the axles themselves, and of a
// standing rider.
type Mode struct {
	Motion             Motion
	Frequency, Damping Figure
	Shape              Shape
}

// Shape is what moves in a mode; see [Mode].
type Shape struct {
	FrameFront, FrameRear complex128
	AxleFront, AxleRear   complex128
	Rider                 complex128
	ForkTravel, RearLift  complex128 // along the travel
}

// modeOf are the poles of a mode: one and its conjugate (second < 0), or two that
// creep.
type modeOf struct {
	motion        Motion
	first, second int
}

func (m *modeOf) figures(poles *[maxPoles]complex128) (frequency, damping float64) {
	s := poles[m.first]
	if m.second < 0 {
		w := cmplx.Abs(s)
		return w / (2 * math.Pi), -real(s) / w
	}
	t := poles[m.second]
	w := math.Sqrt(math.Abs(real(s) * real(t)))
	return w / (2 * math.Pi), -(real(s) + real(t)) / (2 * w)
}

// modes puts poles together to modes, and names what moves.
func (s *system) modes(poles []pole) (list []modeOf) {
	var used [maxPoles]bool
	for i := range poles {
		if used[i] {
			continue
		}
		m := modeOf{first: i, second: -1}
		if !poles[i].twice {
			// Its fellow is the one that moves most alike.
			most := -1.0
			for j := i + 1; j < len(poles); j++ {
				if poles[j].twice || used[j] {
					continue
				}
				if a := s.alike(&poles[i].u, &poles[j].u); a > most {
					most, m.second = a, j
				}
			}
			if m.second >= 0 {
				used[m.second] = true
			}
		}
		list = append(list, m)
	}
	return list
}

// alike is the cosine between two shapes, measured by the masses.
func (s *system) alike(u, v *vector) float64 {
	var uv, uu, vv float64
	for i := range s.n {
		for j := range s.n {
			uv += real(u[i]) * s.m[i][j] * real(v[j])
			uu += real(u[i]) * s.m[i][j] * real(u[j])
			vv += real(v[i]) * s.m[i][j] * real(v[j])
		}
	}
	return math.Abs(uv) / math.Sqrt(uu*vv)
}

// name gives each mode its motion: to a hop the mode in which that axle goes
// furthest beside the frame, to a standing rider the one that has most of the
// rider's own, and of the two that are left pitch to the one with more turning.
func (m *Model) name() {
	left := make([]int, len(m.modes))
	for i := range left {
		left[i] = i
	}
	take := func(motion Motion, of func(*Shape) float64) {
		best, most := -1, -1.0
		for at, i := range left {
			shape := m.shape(&m.modes[i])
			if v := of(&shape); v > most {
				best, most = at, v
			}
		}
		if best >= 0 {
			m.modes[left[best]].motion = motion
			left = append(left[:best], left[best+1:]...)
		}
	}
	if m.frame.fork >= 0 {
		take(HopFront, func(s *Shape) float64 { return cmplx.Abs(s.AxleFront) / outer(s) })
	}
	if m.frame.arm >= 0 {
		take(HopRear, func(s *Shape) float64 { return cmplx.Abs(s.AxleRear) / outer(s) })
	}
	if m.frame.body >= 0 {
		take(Swaying, func(s *Shape) float64 { return cmplx.Abs(s.Rider) / outer(s) })
	}
	take(Pitching, func(s *Shape) float64 {
		return cmplx.Abs(s.FrameFront-s.FrameRear) / (cmplx.Abs(s.FrameFront+s.FrameRear) + 1e-12)
	})
	take(Bounce, func(*Shape) float64 { return 1 })
}

// outer is how far the frame goes over the axles.
func outer(s *Shape) float64 { return cmplx.Abs(s.FrameFront) + cmplx.Abs(s.FrameRear) + 1e-12 }

// shape reads a mode's shape.
func (m *Model) shape(mode *modeOf) (s Shape) {
	u := &m.base.poles.pole[mode.first].u
	half := complex(m.frame.wheelbase/2, 0)
	s.FrameFront, s.FrameRear = u[heave]+half*u[pitch], u[heave]-half*u[pitch]
	s.AxleFront, s.AxleRear = m.base.system.axle[0].dot(u), m.base.system.axle[1].dot(u)
	if f := m.frame.fork; f >= 0 {
		s.ForkTravel = u[f]
	}
	if a := m.frame.arm; a >= 0 {
		s.RearLift = u[a] * complex(m.bike.arm(), 0)
	}
	if b := m.frame.body; b >= 0 {
		s.Rider = u[b]
	}
	var most complex128
	all := [...]*complex128{&s.FrameFront, &s.FrameRear, &s.AxleFront, &s.AxleRear, &s.Rider, &s.ForkTravel, &s.RearLift}
	for _, v := range all[:5] {
		if cmplx.Abs(*v) > cmplx.Abs(most) {
			most = *v
		}
	}
	for _, v := range all {
		*v /= most
	}
	return s
}

// Modes are the ways in which the bike swings by itself, the slowest first.
func (m *Model) Modes() []Mode {
	list := make([]Mode, len(m.modes))
	base := m.base.poles.places()
	for i := range m.modes {
		o := &m.modes[i]
		hz, damping := o.figures(&base)
		list[i] = Mode{Motion: o.motion, Frequency: m.figure(hz), Damping: m.figure(damping), Shape: m.shape(o)}
		for k := range m.moved {
			v := &m.moved[k]
			f, d := o.figures(&v.places)
			list[i].Frequency.slopes[k], list[i].Damping.slopes[k] = slope(f, hz, v.step), slope(d, damping, v.step)
		}
	}
	return list
}
