package mass

// The functions of this file return the spread K of a uniform body about its
// own centre, per unit of mass, in m². The inertia tensor of the body is
// m (tr(K) 1 - K). The values are those of any mechanics handbook.

// Rod is a thin straight rod of length l along x: I = m l²/12 across it.
func Rod(l float64) Sym { return Sym{XX: l * l / 12} }

// Ring is a thin hoop of radius r that turns about y: I = m r² about its axis,
// m r²/2 about a diameter.
func Ring(r float64) Sym { return Sym{XX: r * r / 2, ZZ: r * r / 2} }

// Disc is a solid cylinder of radius r and width w that turns about y:
// I = m r²/2 about its axis.
func Disc(r, w float64) Sym { return Sym{XX: r * r / 4, YY: w * w / 12, ZZ: r * r / 4} }

// Box is a solid cuboid of length x, width y and height z:
// I = m (y² + z²)/12 about x, and so round.
func Box(x, y, z float64) Sym { return Sym{XX: x * x / 12, YY: y * y / 12, ZZ: z * z / 12} }

// Pair is two equal points, w apart across the bike: a body that comes left and
// right. I = m w²/4 about x.
func Pair(w float64) Sym { return Sym{YY: w * w / 4} }
