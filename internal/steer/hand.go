package steer

import (
	"math"

	"steelyard/internal/mass"
)

// Held is a bike in the hand: without its rider, standing on its wheels at x = 0
// and x = Wheelbase.
type Held struct {
	Items     []mass.Item
	Wheelbase float64 // m
}

// Lift is the upward force at a point that lifts the wheel at the other end, N:
// at x behind the middle of the wheelbase the rear wheel while the front one
// stands, else the front wheel while the rear one stands. By moments about the
// wheel that stands.
func (h *Held) Lift(x float64) mass.Figure {
	stands := 0.0
	if x < h.Wheelbase/2 {
		stands = h.Wheelbase
	}
	return mass.Times(Gravity, mass.Support(h.Items, nil, x, stands))
}

// Weight is the force that carries the whole, N.
func (h *Held) Weight() mass.Figure { return mass.Times(Gravity, mass.Total(h.Items, nil)) }

// FollowUp is the upward force at a point, m, that lifts the rear wheel once the
// front wheel stands on a step of that height, N: everything is turned up about
// the rear contact by the angle that the step makes over the wheelbase.
func (h *Held) FollowUp(at mass.Vec, step float64) (force mass.Figure, ok bool) {
	sin := step / h.Wheelbase
	if !(sin > -1 && sin < 1) {
		return mass.Figure{}, false
	}
	cos := math.Sqrt(1 - sin*sin)
	behind := func(x, z float64) float64 { return (h.Wheelbase-x)*cos + z*sin }
	lever := behind(at.X, at.Z)
	if lever <= 0 {
		return mass.Figure{}, false
	}
	f := Gravity / lever
	m := mass.Sum(h.Items, nil)
	slope := mass.Moments{M: f * h.Wheelbase * cos, S: mass.Vec{X: -f * cos, Z: f * sin}}
	return mass.Function(inner(&slope, &m), mass.Slope{Of: slope}), true
}

// Upright is the sideways force at a height, m, that holds the bike at a lean,
// rad, N: the weight's moment about the line of the contacts.
func (h *Held) Upright(lean, height float64) mass.Figure {
	m := mass.Sum(h.Items, nil)
	f := Gravity * math.Tan(lean) / height
	return mass.Function(f*m.S.Z, mass.Slope{Of: mass.Moments{S: mass.Vec{Z: f}}})
}

// Push is the force along a slope, rise over run, that pushes the bike up at a
// steady pace, N, with a coefficient of rolling resistance.
func (h *Held) Push(slope, rolling float64) mass.Figure {
	angle := math.Atan(slope)
	return mass.Times(Gravity*(math.Sin(angle)+rolling*math.Cos(angle)), mass.Total(h.Items, nil))
}

// Stand is a side stand under the bike.
type Stand struct {
	Forward float64 // its foot ahead of the rear contact, m
	Out     float64 // its foot beside the line of the wheels, m
	Lean    float64 // of the bike to its side, rad
}

// Rest is how a bike rests on its stand.
type Rest struct {
	Foot  mass.Figure // load on the foot of the stand, N
	Slope mass.Figure // the least slope of the ground, rad, on which it falls over
	Wind  mass.Figure // sideways force at the height of the centre of mass that tips it off the stand, N
	Over  bool        // it falls over on level ground: the centre of mass is beyond one of the three lines
}

// On returns how the bike rests on a stand. Its feet on the ground are the two
// contacts and the foot of the stand; it falls over the one of the three lines
// between them that the centre of mass is nearest to. What the stand, the tyres
// and the ground give is left out, and so is a wheel that rolls away or turns.
func (h *Held) On(s Stand) (rest Rest, ok bool) {
	m := mass.Sum(h.Items, nil)
	if !(m.M > 0 && s.Out > 0 && h.Wheelbase > 0) || m.S.Z <= 0 {
		return Rest{}, false
	}
	sin, cos := math.Sincos(s.Lean)
	centre := m.Centre()
	// On the ground: along the wheels, and out to the stand.
	x, y, z := centre.X, centre.Z*sin, centre.Z*cos
	value := func(v float64, dx, dz float64) mass.Figure {
		// v as a function of the centre (x, z): its moments' slopes.
		return mass.Function(v, mass.Slope{Of: mass.Moments{
			M: -(dx*centre.X + dz*centre.Z) / m.M, S: mass.Vec{X: dx / m.M, Z: dz / m.M},
		}})
	}
	// The foot's load from the moment about the line of the wheels.
	f := Gravity * sin / s.Out
	rest.Foot = mass.Function(f*m.S.Z, mass.Slope{Of: mass.Moments{S: mass.Vec{Z: f}}})
	w := Gravity * math.Tan(s.Lean)
	rest.Wind = mass.Function(w*m.M, mass.Slope{Of: mass.Moments{M: w}})

	lines := [3][4]float64{ // from, to, going round with the inside on the left
		{0, 0, h.Wheelbase, 0},
		{h.Wheelbase, 0, s.Forward, s.Out},
		{s.Forward, s.Out, 0, 0},
	}
	nearest := math.Inf(1)
	for _, l := range lines {
		ex, ey := l[2]-l[0], l[3]-l[1]
		long := math.Hypot(ex, ey)
		if long == 0 {
			return Rest{}, false
		}
		d := (ex*(y-l[1]) - ey*(x-l[0])) / long
		if d >= nearest {
			continue
		}
		nearest = d
		// atan(d/z), with d = (ex (z0 sin) - ey x)/long and z = z0 cos.
		v := math.Atan2(d, z)
		q := z*z + d*d
		dx := -ey / long * z / q
		dz := ex / long * sin * z / q
		dz -= d * cos / q
		rest.Slope = value(v, dx, dz)
	}
	rest.Over = nearest < 0
	return rest, true
}
