package mass_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"steelyard/internal/mass"
)

// Moments of inertia of uniform bodies as the handbooks give them, per unit of
// mass (for one, J. L. Meriam and L. G. Kraige, Engineering Mechanics:
// Dynamics, table D/4 (memory)). Each is written here as the handbook writes
// it, and not through the second moment.
func TestShapesAgainstHandbook(t *testing.T) {
	const l, r, w, x, y, z = 0.7, 0.31, 0.12, 0.5, 0.17, 0.33
	for _, c := range []struct {
		name       string
		spread     mass.Sym
		xx, yy, zz float64
	}{
		{"point", mass.Point(), 0, 0, 0},
		{"slender rod along x, m l²/12 across", mass.Rod(l), 0, l * l / 12, l * l / 12},
		{"thin hoop about y, m r² and m r²/2", mass.Ring(r), r * r / 2, r * r, r * r / 2},
		{"solid cylinder about y, m r²/2 and m (3 r² + w²)/12", mass.Disc(r, w), (3*r*r + w*w) / 12, r * r / 2, (3*r*r + w*w) / 12},
		{"thin disc about y, m r²/2 and m r²/4", mass.Disc(r, 0), r * r / 4, r * r / 2, r * r / 4},
		{"cylinder without radius, a rod across", mass.Disc(0, w), w * w / 12, 0, w * w / 12},
		{"solid cuboid, m (y² + z²)/12 and so round", mass.Box(x, y, z), (y*y + z*z) / 12, (x*x + z*z) / 12, (x*x + y*y) / 12},
		{"cuboid that is a rod", mass.Box(l, 0, 0), 0, l * l / 12, l * l / 12},
		{"two points w apart across, 2 (m/2) (w/2)²", mass.Pair(w), w * w / 4, 0, w * w / 4},
	} {
		got := mass.Inertia(c.spread)
		want := mass.Sym{XX: c.xx, YY: c.yy, ZZ: c.zz}
		for _, p := range [][2]float64{
			{got.XX, want.XX}, {got.YY, want.YY}, {got.ZZ, want.ZZ}, {got.XY, 0}, {got.XZ, 0}, {got.YZ, 0},
		} {
			if math.Abs(p[0]-p[1]) > 1e-16 {
				t.Errorf("%s: inertia %+v, want %+v", c.name, got, want)
				break
			}
		}
	}
}

// The same by integrating over the bodies with gonum, to have a referee that
// is no formula.
func TestShapesAgainstIntegration(t *testing.T) {
	// mean returns the mean of f over 0..1; the rules are exact for polynomials.
	mean := func(f func(float64) float64) float64 { return quad.Fixed(f, 0, 1, 20, nil, 0) }
	square := func(half float64) float64 {
		return mean(func(u float64) float64 { return half * half * (2*u - 1) * (2*u - 1) })
	}
	const l, r, w, x, y, z = 0.7, 0.31, 0.12, 0.5, 0.17, 0.33
	// ∫ over a disc: the mean of ρ² with weight 2ρ; half of it along each diameter.
	disc := mean(func(u float64) float64 { return 2 * u * (r * u) * (r * u) }) / 2
	for _, c := range []struct {
		name       string
		got        mass.Sym
		xx, yy, zz float64
	}{
		{"rod", mass.Rod(l), square(l / 2), 0, 0},
		{"box", mass.Box(x, y, z), square(x / 2), square(y / 2), square(z / 2)},
		{"disc", mass.Disc(r, w), disc, square(w / 2), disc},
		{"ring", mass.Ring(r),
			mean(func(u float64) float64 { c := r * math.Cos(2*math.Pi*u); return c * c }), 0,
			mean(func(u float64) float64 { s := r * math.Sin(2*math.Pi*u); return s * s })},
	} {
		if math.Abs(c.got.XX-c.xx) > 1e-9 || math.Abs(c.got.YY-c.yy) > 1e-9 || math.Abs(c.got.ZZ-c.zz) > 1e-9 {
			t.Errorf("%s: spread %+v, integrated %v %v %v", c.name, c.got, c.xx, c.yy, c.zz)
		}
	}
}

func TestSecondMomentUndoesInertia(t *testing.T) {
	k := mass.Sym{XX: 1, YY: 2, ZZ: 4, XY: 0.25, XZ: -0.5, YZ: 0.125}
	if got := mass.SecondMoment(mass.Inertia(k)); got != k {
		t.Errorf("SecondMoment(Inertia(%+v)) = %+v", k, got)
	}
}

// A wheel of uniform rim and spokes, split into pieces round the hub, has the
// moments of the ring: the ring's formula and the parallel axes agree.
func TestRingOfPoints(t *testing.T) {
	const n, r = 36, 0.31
	hub := mass.Vec{X: 1.08, Z: 0.34}
	var pieces mass.Moments
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		it := mass.Item{Mass: 0.5 / n, Place: hub.Add(mass.Vec{X: r * c, Z: r * s})}
		pieces = pieces.Add(it.Moments())
	}
	wheel := mass.Item{Mass: 0.5, Place: hub, Spread: mass.Ring(r)}
	near(t, "mass", pieces.M, 0.5, 1e-15)
	near(t, "centre x", pieces.Centre().X, hub.X, 1e-14)
	near(t, "centre z", pieces.Centre().Z, hub.Z, 1e-14)
	m := wheel.Moments()
	got, want := mass.Inertia(pieces.Central()), mass.Inertia(m.Central())
	near(t, "about the axle", got.YY, want.YY, 1e-14)
	near(t, "about a diameter", got.ZZ, want.ZZ, 1e-14)
	near(t, "about the axle by hand, m r²", got.YY, 0.5*r*r, 1e-14)
}
