package effort

import "math"

// Wheel bearings take (91 + 8.7 v) v / 1000 W at v m/s (Martin et al., 1998).
const (
	bearing0 = 0.091
	bearing1 = 0.0087
)

// Air is the power against the air, W: ½ rho A v_air |v_air| v. Wind from
// behind that is faster than the bike drives it.
func Air(density, drag, wind, v float64) float64 {
	a := v + wind
	return 0.5 * density * drag * a * math.Abs(a) * v
}

// RollingPower is the power against rolling resistance, W: c m g cos(slope) v.
func RollingPower(c, mass, slope, v float64) float64 { return c * mass * G * cosOf(slope) * v }

// Bearings is what wheel bearings take, W.
func Bearings(v float64) float64 { return (bearing0 + bearing1*v) * v }

// The angle of a slope s is arctan s.
func cosOf(s float64) float64 { return 1 / math.Sqrt(1+s*s) }
func sinOf(s float64) float64 { return s / math.Sqrt(1+s*s) }

// load is a road with a mass on it: what holds a bike back at a speed, N.
type load struct {
	air, wind, steady float64 // ½ rho A; m/s; rolling and climbing, N
}

func loadOf(r *Road, mass float64) load {
	s := r.Slope.Value
	cos := cosOf(s)
	return load{
		air:    max(0.5*r.Density.Value*r.Drag.Value, 0),
		wind:   r.Wind.Value,
		steady: mass * G * cos * (r.Rolling.Value + s),
	}
}

// force is what holds back at v, and its derivative.
func (l *load) force(v float64) (f, df float64) {
	a := v + l.wind
	m := math.Abs(a)
	return l.air*a*m + l.steady + bearing0 + bearing1*v, 2*l.air*m + bearing1
}

// exactly is within what a speed is found; roughly will do to see which gears are
// near.
const exactly, roughly = 1e-9, 1e-3

// fastest is a bound of speed that nothing here reaches but a fall without air.
const fastest = 100

// speed solves (force(v) + drag) v = power for v ≥ 0, N and W: with drag the
// drive's constant torques as a force at the wheel. The left side over v grows
// with v and power/v falls, so there is one solution. Without power the bike
// rolls as fast as the forces are in balance, or stands. Newton's method, kept
// between bounds that close, until a step is less than a share of the speed; the
// step after one of a billionth changes nothing more.
func (l *load) speed(power, drag, guess, within float64) float64 {
	f0, _ := l.force(0)
	if power <= 0 && f0+drag >= 0 {
		return 0
	}
	low, high := 0.0, float64(fastest)
	v := guess
	if !(v > low && v < high) {
		v = 4
	}
	for range 80 {
		f, df := l.force(v)
		f += drag
		// Without power the root of the force, with power that of the balance.
		var y, dy float64
		if power > 0 {
			y, dy = f*v-power, f+df*v
		} else {
			y, dy = f, df
		}
		if y == 0 {
			return v
		}
		if y > 0 {
			high = v
		} else {
			low = v
		}
		step := y / dy
		if math.Abs(step) <= within*v {
			return v - step
		}
		next := v - step
		if !(next > low && next < high) {
			if next = (low + high) / 2; high-low < 1e-14*high {
				return next
			}
		}
		v = next
	}
	return v
}
