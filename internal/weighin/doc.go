// Package weighin finds the centre of mass of a real bike on a bathroom scale
// and holds it against the bike on paper.
//
// The method is the axle lift of ISO 10392 (Road vehicles: determination of
// centre of gravity), and J. S. Riel did the same with a bicycle (Maximal Braking on a
// Standard Bicycle, 2005): what the two wheels press with on the level gives the
// mass and how far forward its centre lies; raised at one end, the bike pitches
// about the other axle, and how the load then moves gives the height.
//
// A reading is a linear function of the mass M and its moments M x and M z, see
// [Stand], so any set of readings is solved for these three by generalised
// least squares: readings weigh in by the inverse of their covariance, which is
// made of what the scale's display rounds and of what readings share: the scale's
// calibration, and the doubts of wheelbase, radii, level and block heights
// (JCGM 100:2008, section 5; JCGM 102:2011). A reading that is repeated says
// little more than once, see load. Readings beyond what is needed check each
// other. The parts list is another
// estimate of the same three numbers with a covariance of its own, and all that
// the package says about the two follows from their difference.
//
// Lengths are m, masses kg, angles rad, in the axes of package geometry: x
// forward from the rear contact, z up from the ground. U is a standard
// uncertainty; the expanded one, with coverage factor 2, is Plus.
//
// The linear algebra is that of package linear. Gonum's would cost the page
// 3.6 MB, 0.8 MB gzipped (Go 1.26, gonum 0.17, the whole program with and without
// it): text/template, which the drawing library brings along, looks up methods by
// name, so the linker keeps every exported method of a type that is ever put in an
// interface, and with those of gonum's matrices all of BLAS and LAPACK that they
// call. Gonum is the referee in the tests.
package weighin
