package ride

import "steelyard/internal/mass"

// Braking is the largest deceleration, in g, at which the rear wheel still
// touches a road of this gradient. With b the distance of the centre of mass
// behind the front contact, h its height and α the slope, moments about the
// front contact give
//
//	d = (b/h) cos α + sin α
//
// (J. S. Riel, Maximal Braking on a Standard Bicycle, 2005, equations 3 and 6),
// which for gentle slopes is the level value plus the gradient. It is the
// deceleration of the bike; the brakes' force is (b/h) of the load on the road
// whatever the slope, so a front tyre with less grip than b/h slides before the
// rear wheel lifts. On a descent so steep that the value is below 0, to hold
// the speed is enough to lift it.
func (s *System) Braking(gradient float64) mass.Figure {
	sin, cos := onSlope(gradient)
	return mass.Plus(mass.Times(cos, mass.Ratio(s.behind, s.height)), exactly(sin))
}
