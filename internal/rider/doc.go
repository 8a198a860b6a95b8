// Package rider puts a body on the bike: it bends a person of a given stature
// and mass so that seat, feet and hands are where saddle, pedals and grips are,
// and says where the mass of every limb then sits.
//
// The body is a chain of rigid segments. Their lengths are fractions of stature
// after Drillis and Contini (1966), their masses, centres and radii of gyration
// those of de Leva (1996), who has a table for women and one for men. A trunk
// that does not bend and shoulders that do not move forward are the coarsest of
// its simplifications; [PlaceWithin] allows for them.
//
// All of the body counts as sprung mass on the main frame. The seat rests on
// the saddle, the feet on cranks that turn in the main frame, the hands on the
// bar, above the fork's spring: each contact is on the sprung side, whatever
// share of the weight goes through it. Where the forces enter changes how the
// bike feels, not which side of the springs the mass is on. Who stands on the
// pedals has a spring of their own in the legs, which lets the bike move under
// the body and takes some of that mass off the suspension for a moment; the
// weight still comes down through the pedals onto the main frame, so the mass is
// counted there all the same, and [Body.Note] is there for the page to say so.
//
// Axes and units are those of package geometry: metres and radians, x forward,
// y to the rider's left, z up, the origin on the ground below the rear axle.
package rider
