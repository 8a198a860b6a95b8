// Package effort says what a road asks of a rider, and what it costs: speed for
// a power, gear, cadence and time on a climb and on a day of stretches, and what
// weight and losses of the drive are worth against each other.
//
// The road load is that of Martin et al. (1998), J. Applied Biomechanics 14(3),
// at steady speed: air, rolling, wheel bearings and climbing, divided by the
// efficiency of the drive, which package drive reckons. What is gained and lost
// in changes of speed adds up to nothing from rest to rest, and is left out.
//
// Every input is a [drive.Quantity]: a value within a half-width, with a basis
// and the name of its source. The masses may carry a budget of their own. Slopes
// of the answers follow from the balance of forces by the theorem of implicit
// functions, so the ± costs no second solution.
//
// Units are SI: m, m/s, kg, N, W, s; cadences are turns per minute. A slope is
// rise over run, positive uphill; its angle is the arctangent. Wind is positive
// against the rider. These are figures on paper and no medical advice.
package effort
