// Package mass is pure mechanics: it adds up bodies that have a mass and a
// place, and says how well the result is known.
//
// Everything rests on ten sums over the items, the moments
//
//	M = Σ m,   S = Σ m r,   J = Σ m (r rᵀ + K)
//
// where r is the place of an item's centre and K its own spread: the second
// moment of its shape per unit of mass, about its own centre. Every figure of
// this package (total, centre, inertia, the load on a support, the mass that a
// lever feels at its end) is a function of such moments, so one gradient with
// respect to ten numbers gives the sensitivity of a figure to the mass and to
// the place of every item. Uncertainty follows from that gradient by the law
// of propagation of uncertainty, JCGM 100:2008, section 5.
//
// Units are SI: kg, m, kg m². Axes are the caller's; the words roll, pitch and
// yaw mean about x, y and z, with z up as in ISO 8855. The package knows
// nothing of bicycles.
package mass
