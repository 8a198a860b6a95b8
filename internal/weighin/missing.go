package weighin

import (
	"math"
	"sort"

	"steelyard/internal/geometry"
	"steelyard/internal/linear"
	"steelyard/internal/units"
)

// Missing is the second explanation of a difference: one mass is on the bike and
// not on the list, or, below 0, on the list and not on the bike. The three
// differences of the moments are those of such a mass, which therefore always
// meets them; whether it can be true is told by its size and its place.
type Missing struct {
	Mass Value // kg, at the place that fits best

	// The place, m, with the covariance of X and Z; Z only with a measured
	// height. Placed is false for a mass that does not stand out of its doubt:
	// it may then be anywhere, and there is no place.
	Placed bool
	X, Z   Value
	XZ     float64

	// Near are stations at which such a mass explains the difference, best
	// first: all that fit as well as can be told, at most ten, and always the
	// best one. Possible says that the best one fits.
	Near     []Spot
	Possible bool

	// Fit tests list and readings together with the mass at the best station,
	// with a degree of freedom for each reading but one.
	Fit Test
}

// Spot is a mass at a station.
type Spot struct {
	Station string
	Mass    Value   // kg
	Fit     Test    // of the difference that remains
	Away    float64 // from the place that fits best, m; 0 when there is no such place
}

const mostSpots = 10

// explainByMissing finds the mass and its place. With d the difference of the
// moments and Q its covariance, a mass at the fixed place v = (1, x, z) is best
// at vᵀQ⁻¹d / vᵀQ⁻¹v, and leaves dᵀQ⁻¹d less the square of the numerator over
// the denominator.
func explainByMissing(m *Measured, p *Paper, stations map[string]geometry.Station) *Missing {
	d, q := m.minus(p)
	chol, ok := linear.Factorize(q)
	if !ok {
		return nil
	}
	out := &Missing{}
	e := estimate{cov: q, known: m.known}
	copy(e.p[:], d)
	out.Mass = Value{e.p[0], math.Sqrt(q.At(0, 0))}
	// A ratio of two doubtful numbers has a doubt of its own only while the
	// denominator stands well clear of 0.
	if math.Abs(out.Mass.Value) > 2*out.Mass.U {
		_, x, z, xz := e.figures()
		if units.Finite(x.Value) && units.Finite(x.U) && units.Finite(z.Value) && units.Finite(z.U) {
			out.Placed, out.X, out.Z, out.XZ = true, x, z, xz
		}
	}
	all := chol.Inner(d, d)
	for _, name := range geometry.StationNames {
		points := stations[name].Points
		if len(points) == 0 {
			continue
		}
		at := moments{1}
		for _, r := range points {
			at[1] += r.X / float64(len(points))
			at[2] += r.Z / float64(len(points))
		}
		v := linear.Vec(at[:m.known])
		n, size := chol.Inner(v, d), chol.Inner(v, v)
		if !(size > 0) || !units.Finite(n) {
			continue
		}
		s := Spot{Station: name, Mass: Value{n / size, 1 / math.Sqrt(size)}, Fit: newTest(max(0, all-n*n/size), m.known-1)}
		if out.Placed {
			s.Away = math.Abs(at[1] - out.X.Value)
			if m.HasHeight {
				s.Away = math.Hypot(s.Away, at[2]-out.Z.Value)
			}
		}
		out.Near = append(out.Near, s)
	}
	sort.SliceStable(out.Near, func(i, j int) bool { return out.Near[i].Fit.ChiSquare < out.Near[j].Fit.ChiSquare })
	keep := 0
	for keep < len(out.Near) && keep < mostSpots && (keep == 0 || !out.Near[keep].Fit.Unlikely()) {
		keep++
	}
	out.Near = out.Near[:keep]
	if keep > 0 {
		best := out.Near[0].Fit
		out.Possible = !best.Unlikely()
		out.Fit = newTest(m.Self.ChiSquare/(m.Widened*m.Widened)+best.ChiSquare, m.Self.Freedom+best.Freedom)
	}
	return out
}
