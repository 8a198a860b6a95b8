package weighin

import (
	"math"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
)

// Stand is a bike as the scale sees it: two wheels, rigidly held.
//
// Axles at the heights r (rear) and R (front) lie w apart along the ground, so
// D = sqrt(w² + (R - r)²) apart, on a line that rises by φ₀ = atan((R - r)/w).
// With the front contact raised by H over the rear one, it rises by φ, where
// sin φ = (R - r + H)/D, and the whole bike is pitched by θ = φ - φ₀. Wheels
// that are free to roll press straight down below their axles, D cos φ apart,
// and the centre of mass lies x cos θ - (z - r) sin θ ahead of the rear one.
// Moments about it give the reading under the front wheel,
//
//	(M x cos θ - (M z - M r) sin θ)/(D cos φ)
//
// and M less that under the rear one. Heights are over the ground that tyres
// without load would stand on; that tyres give by a few millimetres moves it,
// and the centre over it, but not the centre over the axles.
type Stand struct {
	Wheelbase   float64 // m
	RearRadius  float64 // tyre radius, m
	FrontRadius float64

	WheelbaseU float64 // standard uncertainty, m
	RadiusU    float64 // of each tyre radius, m
	LevelU     float64 // and of the pitch, rad, in all readings alike: an uneven floor, tyres that give unequally
}

// How far one end may be off its height above the other (common practice, no
// source): floors slope a little and tyres give by a few millimetres.
const (
	levelWithin  = 0.005 // m
	sprungWithin = 0.010 // m, on springs
)

// StandOf returns the stand of a posed bike with the doubts that a weigh-in
// states or takes for granted: wheelbase and radii within what
// [document.WeighIn.StandWithin] tells, and one end within ± 5 mm of where it should
// be above the other, ± 10 mm on springs.
func StandOf(w *document.WeighIn, bike *geometry.Bike) Stand {
	wheelbase, radius := w.StandWithin()
	within := levelWithin
	if bike.FrontSprung || bike.RearSprung {
		within = sprungWithin
	}
	return Stand{
		Wheelbase: bike.Wheelbase, RearRadius: bike.RearRadius, FrontRadius: bike.FrontRadius,
		WheelbaseU: mass.Rectangular(wheelbase / 1000),
		RadiusU:    mass.Rectangular(radius / 1000),
		LevelU:     mass.Rectangular(within) / bike.Wheelbase,
	}
}

// span returns D, the distance between the axles.
func (s *Stand) span() float64 { return math.Hypot(s.Wheelbase, s.FrontRadius-s.RearRadius) }

// pitch returns the angle φ of the line between the axles and the pitch θ of
// the bike with the front contact raised by rise; ok is false when that is more
// than the bike is long.
func (s *Stand) pitch(rise float64) (phi, theta float64, ok bool) {
	d := s.FrontRadius - s.RearRadius
	sin := (d + rise) / s.span()
	if !(math.Abs(sin) < 1) {
		return 0, 0, false
	}
	phi = math.Asin(sin)
	return phi, phi - math.Atan2(d, s.Wheelbase), true
}

// moments are M, M x and M z.
type moments [3]float64

// lever returns the reading under a wheel as a linear function of the moments.
func (s *Stand) lever(front bool, rise float64) moments {
	phi, theta, _ := s.pitch(rise)
	sin, cos := math.Sincos(theta)
	apart := s.span() * math.Cos(phi)
	c := moments{s.RearRadius * sin / apart, cos / apart, -sin / apart}
	if !front {
		c = moments{1 - c[0], -c[1], -c[2]}
	}
	return c
}

// shows is the reading under a wheel of a system with the moments p.
func (s *Stand) shows(front bool, rise float64, p moments) float64 {
	l := s.lever(front, rise)
	return l[0]*p[0] + l[1]*p[1] + l[2]*p[2]
}

// byRadii returns the derivatives of a reading of p by the radii of the rear and
// of the front wheel. A radius moves the axle that the bike is pitched about and,
// where it is not the other's, the line between the axles; where the centre of
// mass lies over the ground, p, stays as it is.
func (s *Stand) byRadii(front bool, rise float64, p moments) (rear, fore float64) {
	phi, theta, _ := s.pitch(rise)
	sin, cos := math.Sincos(theta)
	d, tan := s.span(), math.Tan(phi)
	apart := d * math.Cos(phi)
	up := p[2] - p[0]*s.RearRadius
	reading := (p[1]*cos - up*sin) / apart
	turned := (-p[1]*sin - up*cos) / apart

	step := s.FrontRadius - s.RearRadius
	dphi := (1 - math.Sin(phi)*step/d) / apart // by the step between the radii, which moves D too
	dphi0 := s.Wheelbase / (d * d)
	fore = turned*(dphi-dphi0) + reading*(tan*dphi-step/(d*d))
	rear = p[0]*sin/apart - fore
	if !front {
		return -rear, -fore
	}
	return rear, fore
}

// slopes returns the derivatives of a reading of p by wheelbase, level and rise.
func (s *Stand) slopes(front bool, rise float64, p moments) (wheelbase, level, byRise float64) {
	phi, theta, _ := s.pitch(rise)
	sin, cos := math.Sincos(theta)
	d, tan := s.span(), math.Tan(phi)
	apart := d * math.Cos(phi)
	up := p[2] - p[0]*s.RearRadius
	reading := (p[1]*cos - up*sin) / apart
	turned := (-p[1]*sin - up*cos) / apart // by θ alone
	level = turned + reading*tan           // θ and φ together
	byRise = level / apart                 // dφ/dH = 1/(D cos φ)

	step := s.FrontRadius - s.RearRadius
	dd := s.Wheelbase / d    // dD/dw
	dphi := -tan * dd / d    // sin φ D is fixed
	dphi0 := -step / (d * d) // of atan(step/w)
	wheelbase = turned*(dphi-dphi0) + reading*(tan*dphi-dd/d)
	if !front {
		return -wheelbase, -level, -byRise
	}
	return wheelbase, level, byRise
}
