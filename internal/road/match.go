package road

import "math"

// Lever is a thing to change by which one bike can be made to do as well as
// another.
type Lever int

// The levers, with what their amounts are: the pressure of a tyre, as a multiple
// of today's; kg of luggage that the frame carries instead of the lower fork
// legs, at the same place; the sag of an end, m.
const (
	PressureFront Lever = iota
	PressureRear
	PressureBoth
	ForkLoad
	SagFront
	SagRear
	numLevers
)

// String is the lever's key.
func (l Lever) String() string {
	return [...]string{"pressure-front", "pressure-rear", "pressure-both", "fork-load", "sag-front", "sag-rear"}[l]
}

// Levers are all there are.
func Levers() []Lever {
	return []Lever{PressureFront, PressureRear, PressureBoth, ForkLoad, SagFront, SagRear}
}

// bounds are between what and what a lever can be, and where it is now; ok is
// false for one that the bike has not.
func (m *Model) bounds(l Lever) (least, now, most float64, ok bool) {
	switch l {
	case PressureFront, PressureRear, PressureBoth:
		return 0.5, 1, 2, true
	case ForkLoad:
		p := &m.bike.ForkBags
		return 0, 0, p.Load, p.There && p.On == ForkLower && p.Load > 0 && m.frame.fork >= 0
	}
	side := Side(l - SagFront)
	s := m.bike.Ends[side].Spring
	if s == nil || s.Rate.Value > 0 {
		return 0, 0, 0, false
	}
	return 0.5 * s.Sag.Value, s.Sag.Value, max(s.Sag.Value, min(2*s.Sag.Value, 0.5*s.Travel)), true
}

// pull gives the numbers with a lever at an amount.
func (m *Model) pull(l Lever, amount float64) *params {
	p := *m.numbers
	switch l {
	case PressureFront, PressureRear:
		p[tyreRate+int(l-PressureFront)] *= amount
	case PressureBoth:
		p[tyreRate] *= amount
		p[tyreRate+1] *= amount
	case ForkLoad:
		at := m.bike.ForkBags.Place
		for k, v := range [perBody]float64{1, at.X, at.Z, at.X*at.X + at.Z*at.Z} {
			p[int(ForkLower)*perBody+k] -= amount * v
			p[int(Frame)*perBody+k] += amount * v
		}
	default:
		p[springSag+int(l-SagFront)] = amount
	}
	return &p
}

// Match finds the amount of a lever at which a figure of the ride has the wanted
// value, between half and twice what it is, and less where the bike does not go so
// far. Ok is false where it does not get there, or the bike has no such lever.
// Nor is it for shares of the time, which follow from the root mean square values.
// More pressure means a stiffer tyre in proportion, as with [Membrane].
func (m *Model) Match(kind Kind, wanted float64, l Lever, speed float64, road Road) (amount float64, ok bool) {
	least, now, most, ok := m.bounds(l)
	if !ok || kind < 0 || kind > TravelRear || !m.frame.there[kind.channelOf()] || first(above(NoSpeed, Both, speed), above(NoRoughness, Both, road.Roughness.Value), number(wanted)) != nil {
		return 0, false
	}
	off := func(x float64) float64 {
		var v variant
		if m.find(m.pull(l, x), &v) != nil {
			return math.NaN()
		}
		return m.values(&v, v.pass(speed, m.frame.wheelbase), speed, road)[kind] - wanted
	}
	here := m.values(&m.base, m.base.pass(speed, m.frame.wheelbase), speed, road)[kind] - wanted
	if here == 0 {
		return now, true
	}
	// The way that leads there; the other is tried where that one does not.
	for _, end := range [2]float64{least, most} {
		if end == now {
			continue
		}
		there := off(end)
		if !(there*here <= 0) {
			continue
		}
		// The secant of an interval that holds the place, with the older end halved
		// when the same one stays twice (Dowell and Jarratt, A modified regula falsi
		// method, BIT 11 (1971) (memory)).
		a, b, fa, fb := now, end, here, there
		for range 60 {
			x := (a*fb - b*fa) / (fb - fa)
			f := off(x)
			if math.IsNaN(f) {
				return 0, false
			}
			if f*fb <= 0 {
				a, fa = b, fb
			} else {
				fa /= 2
			}
			b, fb = x, f
			if math.Abs(f) <= 1e-7*math.Abs(wanted) || math.Abs(b-a) <= 1e-7*math.Abs(b) {
				return b, true
			}
		}
		return b, true
	}
	return 0, false
}
