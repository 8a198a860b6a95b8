// Package steer tells how a bicycle steers and balances: the linear bicycle of
// Meijaard, Papadopoulos, Ruina and Schwab, Linearized dynamics equations for the
// balance and steer of a bicycle: a benchmark and review, Proc. R. Soc. A 463
// (2007) 1955-1982, and the plain figures beside it.
//
// A bicycle is four rigid bodies: rear wheel, rear body with the rider fixed to
// it, what turns with the bar, front wheel. Its wheels roll without slip; frame,
// fork and racks do not give; the rider's hands are off the bar. Upright and
// straight ahead at the speed v it obeys
//
//	M q" + v C1 q' + (g K0 + v² K2) q = 0,  q = (lean, steer)
//
// Every entry of the matrices is a sum over the items of the bike, so that the
// doubt of each item can be carried through to every figure.
//
// Axes are those of package mass: x forward from the rear contact, y left, z up.
// The paper's z points down; lean is to the right and steer to the right
// positive, as there. What lies to the left and right is taken to be in balance.
package steer
