package packing

import (
	"math"
	"math/bits"
)

// grain is the unit in which masses are compared exactly, kg: a milligram.
const grain = 1e-6

// grains is a mass in milligrams, 0 if it is not a whole number of them.
func grains(mass float64) int64 {
	n := math.Round(mass / grain)
	if abs(mass/grain-n) > 1e-4 || n > 1e15 {
		return 0
	}
	return int64(n)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// twoGroupBound bounds a state in which everything undecided may go into two
// groups only. Masses are not continuous: if all of them are multiples of 10 g,
// so is the mass in the first group, and the front share can only come so near to
// the wanted one. The relaxation, which cuts pieces, does not see that.
func (s *Solver) twoGroupBound(st *state) float64 {
	in, h := s.in, s.anneal
	none := math.Inf(-1)
	if h.wFront == 0 {
		return none
	}
	nk := len(in.kinds)
	var set uint64 // groups
	var unit int64
	var free float64
	cost, front := st.base, 0.0
	for a := range in.abs {
		if a != in.side {
			front = in.abs[a].rhs - st.rhs[a]
		}
	}
	for t, q := range st.q {
		if q == 0 {
			continue
		}
		m := float64(q) * s.rel.m[t]
		if t >= nk {
			j := bits.TrailingZeros64(st.mask[t])
			cost += m * in.cost[j]
			front += m * h.front[j]
			continue
		}
		for mask := st.mask[t]; mask != 0; mask &= mask - 1 {
			set |= 1 << in.groupOf[bits.TrailingZeros64(mask)]
		}
		n := in.kinds[t].grains
		if n == 0 && in.kinds[t].mass > 0 {
			return none
		}
		unit = gcd(unit, n)
		free += m
	}
	if bits.OnesCount64(set) != 2 || unit == 0 {
		return none
	}
	a := bits.TrailingZeros64(in.group[bits.TrailingZeros64(set)])
	b := bits.TrailingZeros64(in.group[63-bits.LeadingZeros64(set)])
	// with x in a: cost + (ca - cb) x + w |front + (fa - fb) x - t|
	cost += free * in.cost[b]
	front += free*h.front[b] - h.tFront
	dc, df := in.cost[a]-in.cost[b], h.front[a]-h.front[b]
	step := float64(unit) * grain / in.meanMass
	most := math.Round(free / step)
	value := func(n float64) float64 {
		n = max(0, min(most, n))
		return cost + dc*n*step + h.wFront*abs(front+df*n*step)
	}
	v := min(value(0), value(most))
	if df != 0 {
		n := math.Floor(-front / df / step)
		v = min(v, value(n), value(n+1))
	}
	return v
}
