// Package road tells what a rough road does to a bike: how it swings, how far
// the load on its tyres varies, what saddle, grips and luggage are shaken by,
// how much travel is used, and how two bikes differ in it.
//
// A bike moves in its plane of symmetry by small amounts about its pose. It is
// a main frame with all that it carries, which heaves, pitches and is free to go
// fore and aft; fork lowers and front wheel that travel along the steering axis;
// a swingarm that turns about its pivot. A rigid end has no travel and stands on
// its tyre. The rider is fixed to the saddle, or stands on springs of flesh. The
// equation of motion is
//
//	M q" + C q' + K q = Σ J (kt w + ct w'),  front and rear
//
// with the road's height w under either wheel, the tyres' kt and ct, and the
// axles' rows J of how they rise with q. As nothing but the tyres' vertical
// forces acts from outside, the way fore and aft follows from the others and is
// taken out of the equation.
//
// The height of a road after ISO 8608 has a rate of change that is white, so
// that each root-mean-square value is an integral of a rational function. It is
// had in closed form, tails included, by residues: with the poles p of the
// motion, the correlation of two responses is a sum of terms r exp(p t), and the
// delay of the rear wheel and the length of the tyre's contact, over which the
// road is averaged, put a factor to each.
//
// What is left out: the bow of damper curves, the friction of fork and shock,
// how a tyre wraps itself round a stone, the sideways; frames that give, bags
// that swing, the limbs of a seated rider; that the weight itself is lifted and
// lowered as levers turn (a tenth of the travel); and what the wheels' spin
// resists when the bike goes fore and aft. The sums say how bikes compare, and
// nothing of health or safety.
//
// Axes are those of package mass: x forward, z up, pitch with the nose up
// positive. Units are SI.
package road
