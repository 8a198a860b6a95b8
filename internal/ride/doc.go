// Package ride says what masses and lengths mean on the road: how hard a loaded
// bike can brake, how steep it can climb, what its wheels carry on a slope, how
// far it must lean to run straight, and how much of a maker's limit is used.
//
// All of it is statics of one rigid body on two contact points, after Newton
// and d'Alembert. Air, rolling resistance, the give of tyres and suspension and
// everything that moves within the body are left out; a rider who moves is
// another body. Every figure is a [mass.Figure], so that the doubt of every
// part can be carried through with [mass.Uncertainty] or [mass.Budget].
//
// Lengths are m, masses kg, angles rad. A gradient is rise over run, the tangent
// of the slope, and is positive uphill: 0.08 climbs 8 m in 100 m along the map.
// A deceleration is in units of g = 9.81 m/s². A load is given as the mass, kg,
// that presses a contact point against a level road as hard.
//
// These are figures on paper. The maker's ratings, local rules and a qualified
// mechanic decide what may be ridden.
package ride
