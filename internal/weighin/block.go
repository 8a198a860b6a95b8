package weighin

import (
	"math"

	"steelyard/internal/linear"
	"steelyard/internal/mass"
	"steelyard/internal/units"
)

// fine is how well a height should be known, as a part of itself: the few per
// cent that ISO 10392:2011 expects of the axle lift.
const fine = 0.05

// Block is how high to raise a wheel for a height that is known well.
type Block struct {
	Height float64 // m; rounded up to a whole centimetre
	Plus   float64 // what the height of the centre of mass is then known within, m
	Enough bool    // whether that is within 5 % of it; if not, Height is the most that can be held
}

// blockFor finds the block for readings like those made, of a bike with these
// moments. Where no wheel was raised, one further reading is taken to be made
// under the rear wheel with the front one raised, on the coarsest of the scales,
// with a height known within 2 mm.
func blockFor(s *Stand, readings []Reading, p moments) (Block, bool) {
	plan := append([]Reading(nil), readings...)
	raised := false
	var worst Reading
	for _, r := range plan {
		raised = raised || r.Rise != 0
		if r.MassU > worst.MassU {
			worst = r
		}
	}
	if !raised {
		worst.Front, worst.Rise, worst.RiseU = false, 1, mass.Rectangular(0.002)
		plan = append(plan, worst)
	}
	plus := func(height float64) float64 {
		for i := range plan {
			if r := &plan[i]; r.Rise != 0 {
				r.Rise = math.Copysign(height, r.Rise)
			}
		}
		loads := loadsOf(plan)
		a := linear.NewDense(len(loads), 3)
		for i := range loads {
			l := s.lever(loads[i].Front, loads[i].Rise)
			copy(a.Row(i), l[:])
		}
		g := newGLS(a, make(linear.Vec, len(loads)), covariance(len(loads), effects(s, loads, p)))
		if g == nil {
			return math.Inf(1)
		}
		e := estimate{p, g.cov, 3}
		_, _, z, _ := e.figures()
		return z.Plus()
	}
	const step = 0.01
	most := math.Floor((s.span()*math.Sin(steep)-math.Abs(s.FrontRadius-s.RearRadius))/step) * step
	wanted := fine * p[2] / p[0]
	if !(most >= step) || !(wanted > 0) {
		return Block{}, false
	}
	b := Block{Height: most, Plus: plus(most)}
	if b.Enough = b.Plus <= wanted; b.Enough {
		low, high := 0.0, math.Round(most/step) // in steps: not enough, enough
		for high-low > 1 {
			mid := math.Floor((low + high) / 2)
			if plus(mid*step) <= wanted {
				high = mid
			} else {
				low = mid
			}
		}
		b.Height = high * step
		b.Plus = plus(b.Height)
	}
	return b, units.Finite(b.Plus)
}
