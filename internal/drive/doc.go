// Package drive says what the drive of a bike does with the turns and the power
// that go into it: the gears of the fitted parts, how even and how far they
// step, how long a turn of the cranks carries, and what is lost on the way to
// the rear wheel.
//
// A drive is read off the parts of a build from the cranks to the rear wheel: a
// gearbox at the cranks, rings, chain or belt, cogs, a gear hub. A gear is the
// product of its stages. Its development is the ratio times the roll-out, the
// way of the rear wheel for one turn.
//
// Losses are reckoned stage after stage at a power and a cadence. Every quantity
// they rest on is a [Quantity] with a half-width, a basis and the name of its
// source: what two builds owe to one source is one error, and cancels in the
// difference (JCGM 100:2008, 5.2).
//
// Units are SI: m, N, N m, W, rad/s; cadences are turns per minute.
package drive
