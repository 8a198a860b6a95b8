package ride

import "steelyard/internal/mass"

// Loads are what the road carries under the two wheels, square to the road, as
// the mass, kg, that presses as hard on a level one. A load below 0 means that
// the wheel lifts, since the road cannot hold it down; the other load is then
// wrong.
type Loads struct {
	Gradient    float64
	Front, Rear mass.Figure
}

// Loads returns the loads on a road of this gradient at a deceleration in g, 0
// for steady speed and below 0 when speeding up. How the brakes or the drive
// share the force between the wheels does not enter. With the letters of
// [System.Climbing] and the deceleration d,
//
//	front: m (a cos α + h (d - sin α))/w    rear: m (b cos α - h (d - sin α))/w
//
// and the two add up to m cos α.
func (s *System) Loads(gradient, deceleration float64) Loads {
	sin, cos := onSlope(gradient)
	shift := mass.Times((deceleration-sin)/s.wheelbase, s.moment)
	return Loads{
		Gradient: gradient,
		Front:    mass.Plus(mass.Times(cos, s.front), shift),
		Rear:     mass.Plus(mass.Times(cos, s.rear), mass.Times(-1, shift)),
	}
}

// Curve returns the loads at n gradients, evenly from one to another, both
// included; a single one is at the first.
func (s *System) Curve(from, to float64, n int, deceleration float64) []Loads {
	if n <= 0 {
		return nil
	}
	list := make([]Loads, n)
	for i := range list {
		g := from
		if n > 1 {
			g += (to - from) * float64(i) / float64(n-1)
		}
		list[i] = s.Loads(g, deceleration)
	}
	return list
}
