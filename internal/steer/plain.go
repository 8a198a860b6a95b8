package steer

import (
	"math"

	"steelyard/internal/mass"
)

// MechanicalTrail is the distance of the front contact from the steering axis,
// square to it, m.
func (b *Bicycle) MechanicalTrail() float64 { return b.Trail * math.Sin(b.HeadAngle) }

// Flop is the wheel flop factor, m: how far the front end sinks for a small
// square of the steering angle, trail times sine and cosine of the head angle.
func (b *Bicycle) Flop() float64 {
	s, c := math.Sincos(b.HeadAngle)
	return b.Trail * s * c
}

// SteeringInertia is the moment of inertia of all that turns with the bar, the
// front wheel included, about the steering axis, kg m².
func (m *Model) SteeringInertia() mass.Figure {
	s := m.steering().about
	return mass.Function(m.front(s), mass.Slope{Share: m.bicycle.Front, Of: s})
}

// Ahead is how far the centre of what turns with the bar lies ahead of the
// steering axis, square to it, m. Without mass there it is 0.
func (m *Model) Ahead() mass.Figure {
	b, s := m.bicycle, m.steering().ahead
	total := mass.Total(b.Items, b.Front)
	if total.Value == 0 {
		return mass.Figure{}
	}
	return mass.Ratio(mass.Function(m.front(s), mass.Slope{Share: b.Front, Of: s}), total)
}

func (m *Model) front(s mass.Moments) float64 {
	front := mass.Sum(m.bicycle.Items, m.bicycle.Front)
	return inner(&s, &front)
}

// RollInertia is the moment of inertia of the whole about the line on the ground
// from contact to contact, kg m²: how slowly it leans.
func (m *Model) RollInertia() mass.Figure { return m.figure(m.M[0][0], &[numEntries]float64{m00: 1}) }

// HoldStanding is the torque about the steering axis that holds the bar at an
// angle to the side, rad, while the bike stands still upright, N m. Above 0 the
// bar would turn back by itself, below it would turn further. Of first order in
// the angle: at 10° it is within 2 %.
func (m *Model) HoldStanding(angle float64) mass.Figure {
	return m.figure(Gravity*m.K0[1][1]*angle, &[numEntries]float64{k11: Gravity * angle})
}

// HoldTurn is the torque about the steering axis that holds the bike in a steady
// turn of a radius, m, at a speed, m/s, leaning as the turn wants it, N m, with
// the sign of HoldStanding. It follows from the equation with q constant: the
// first row gives the lean to a steer angle w/(radius cos t), the second the
// torque (a road that turns slowly, so that the rates may be left out).
func (m *Model) HoldTurn(v, radius float64) mass.Figure {
	b := m.bicycle
	angle := b.Wheelbase / (radius * math.Sin(b.HeadAngle))
	k, l := m.K0, m.K2
	g, vv := Gravity, v*v
	if k[0][0] == 0 {
		return mass.Figure{Value: math.NaN()}
	}
	lean := (g*k[0][1] + vv*l[0][1]) / k[0][0] // to the other side, per steer, without g
	return m.figure(angle*(g*k[1][1]+vv*l[1][1]-k[0][1]*lean), &[numEntries]float64{
		k11: angle * g, k211: angle * vv,
		k01: -angle * (2*g*k[0][1] + vv*l[0][1]) / k[0][0], k201: -angle * vv * k[0][1] / k[0][0],
		k00: angle * k[0][1] * lean / k[0][0],
	})
}

// Flick is the largest torque about the steering axis that turns the bar of the
// standing bike by an angle, rad, in a time, s, from rest to rest, its speed a
// sine over the time, N m: inertia alone, 2π I angle/time².
func (m *Model) Flick(angle, time float64) mass.Figure {
	return mass.Times(2*math.Pi*angle/(time*time), m.SteeringInertia())
}
