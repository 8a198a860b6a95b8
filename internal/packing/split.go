package packing

import (
	"math"
	"math/bits"
	"sort"
)

// split decides the sides once it is settled how many pieces of each kind go into
// each group. Then only the balance of the aim is open, and that depends only on
// the load of the left bag of each pair. For each pair the loads that are
// possible within its limits are listed, and the lists are searched together for
// the sum that balances best.
type split struct {
	in    *instance
	pairs []pairList
	few   bool // lists are complete

	shift, merged []point
}

// point is one way to fill the first bag of a pair: kg and l of it, and what
// it came from.
type point struct {
	load, vol float64
	from      int32 // index of a point of the step before
	n         int16 // pieces of the step's kind
}

type pairList struct {
	a, b  int // bags
	kinds []int
	count []int16
	steps [][]point // after each kind; the last is what can be had
	lever float64   // change of the balance row for a kg from b to a
	base  float64   // balance row with all in b
}

// listMax is how many points a list may have; beyond that it is thinned out,
// and the answer may miss the best by a little.
const listMax = 4000

// eps is below any difference that the limits know.
const eps = 1e-11

// sides finds the best sides for counts by kind and group. It returns the
// packing by kind and bag, nil if there is none, and whether nothing better
// exists. Enough is the value at which it may stop looking.
func (sp *split) sides(counts []int16, enough float64) (best []int16, exact bool) {
	in := sp.in
	ng := len(in.group)
	out := make([]int16, len(in.kinds)*in.nb)
	sp.few = true
	sp.pairs = sp.pairs[:0]
	row := in.side
	var settled float64 // balance row of what is settled
	for g, set := range in.group {
		switch bits.OnesCount64(set) {
		case 1:
			j := bits.TrailingZeros64(set)
			for k := range in.kinds {
				n := counts[k*ng+g]
				out[k*in.nb+j] = n
				if row >= 0 {
					settled += float64(n) * in.kinds[k].m * in.at[row*in.nb+j]
				}
			}
		case 2:
			a := bits.TrailingZeros64(set)
			b := bits.TrailingZeros64(set &^ (1 << a))
			if !sp.list(counts, g, a, b) {
				return nil, sp.few
			}
		default:
			return nil, false
		}
	}
	for p := range sp.pairs {
		settled += sp.pairs[p].base
	}
	pick := make([]int, len(sp.pairs))
	if row < 0 {
		// any will do
	} else if !sp.balance(in.abs[row].rhs-settled, pick) {
		sp.few = false
	}
	for p := range sp.pairs {
		l := &sp.pairs[p]
		at := int32(pick[p])
		for step := len(l.kinds) - 1; step >= 0; step-- {
			pt := l.steps[step+1][at]
			out[l.kinds[step]*in.nb+l.a] = pt.n
			out[l.kinds[step]*in.nb+l.b] = l.count[step] - pt.n
			at = pt.from
		}
	}
	return out, sp.few
}

// list finds what the first bag of a pair can hold so that both keep their
// limits; false means that there is nothing.
func (sp *split) list(counts []int16, g, a, b int) bool {
	in := sp.in
	ng := len(in.group)
	if n := len(sp.pairs); n < cap(sp.pairs) {
		sp.pairs = sp.pairs[:n+1]
	} else {
		sp.pairs = append(sp.pairs, pairList{})
	}
	l := &sp.pairs[len(sp.pairs)-1]
	l.a, l.b, l.kinds, l.count = a, b, l.kinds[:0], l.count[:0]
	var load, vol, m float64
	for k := range in.kinds {
		if n := counts[k*ng+g]; n > 0 {
			l.kinds = append(l.kinds, k)
			l.count = append(l.count, n)
			load += float64(n) * in.kinds[k].mass
			vol += float64(n) * in.kinds[k].vol
			m += float64(n) * in.kinds[k].m
		}
	}
	l.lever, l.base = 0, 0
	if row := in.side; row >= 0 && len(l.kinds) > 0 {
		k := l.kinds[0]
		if in.kinds[k].mass > 0 {
			per := in.kinds[k].m / in.kinds[k].mass
			l.lever = per * (in.at[row*in.nb+a] - in.at[row*in.nb+b])
		}
		l.base = m * in.at[row*in.nb+b]
	}
	// A limit that is not there binds nothing.
	loadMin, volMin := load-in.load[b], vol-in.vol[b]
	for len(l.steps) <= len(l.kinds) {
		l.steps = append(l.steps, nil)
	}
	l.steps = l.steps[:len(l.kinds)+1]
	l.steps[0] = append(l.steps[0][:0], point{})
	for step, k := range l.kinds {
		kd := &in.kinds[k]
		n := l.count[step]
		load -= float64(n) * kd.mass // what is still to come
		vol -= float64(n) * kd.vol
		lo, hi := int16(0), n
		if kd.mask>>l.a&1 == 0 {
			hi = 0
		}
		if kd.mask>>l.b&1 == 0 {
			lo = n
		}
		// Each number of pieces shifts the list, which stays in order: merge.
		from := l.steps[step]
		to := l.steps[step+1][:0]
		for n := lo; n <= hi; n++ {
			dl, dv := float64(n)*kd.mass, float64(n)*kd.vol
			sp.shift = sp.shift[:0]
			for i := range from {
				x, y := from[i].load+dl, from[i].vol+dv
				if x > in.load[l.a]+eps {
					break
				}
				if y > in.vol[l.a]+eps || x+load < loadMin-eps || y+vol < volMin-eps {
					continue
				}
				sp.shift = append(sp.shift, point{x, y, int32(i), n})
			}
			if n == lo {
				to = append(to, sp.shift...)
			} else {
				sp.merged = merge(sp.merged[:0], to, sp.shift)
				to, sp.merged = sp.merged, to
			}
		}
		to = sp.thin(to)
		l.steps[step+1] = to
		if len(to) == 0 {
			return false
		}
	}
	return true
}

// merge joins two lists that are in order, and drops points that are equal.
func merge(to, p, q []point) []point {
	i, j := 0, 0
	for i < len(p) && j < len(q) {
		d := p[i].load - q[j].load
		if d >= -eps && d <= eps {
			d = p[i].vol - q[j].vol
			if d >= -eps && d <= eps {
				j++
				continue
			}
		}
		if d < 0 {
			to = append(to, p[i])
			i++
		} else {
			to = append(to, q[j])
			j++
		}
	}
	to = append(to, p[i:]...)
	return append(to, q[j:]...)
}

// thin shortens a list that is too long.
func (sp *split) thin(list []point) []point {
	if n := len(list); n > listMax {
		sp.few = false
		for i := range listMax {
			list[i] = list[i*n/listMax]
		}
		list = list[:listMax]
	}
	return list
}

// balance picks a point from each list so that the sum of levers comes as near
// as possible to want. It reports whether it has looked at everything.
func (sp *split) balance(want float64, pick []int) bool {
	var lists []int
	for p := range sp.pairs {
		if l := &sp.pairs[p]; len(l.kinds) > 0 && l.lever != 0 {
			lists = append(lists, p)
		}
	}
	last := func(p int) []point { l := &sp.pairs[p]; return l.steps[len(l.kinds)] }
	sort.SliceStable(lists, func(i, j int) bool { return len(last(lists[i])) < len(last(lists[j])) })
	outer := 1
	for n := 0; n < len(lists)-2; n++ {
		outer *= len(last(lists[n]))
		if outer > 1000 {
			// Too many to go through: take the middle one of the small lists.
			for ; n >= 0; n-- {
				p := lists[n]
				pick[p] = len(last(p)) / 2
				want -= sp.pairs[p].lever * last(p)[pick[p]].load
			}
			sp.two(lists[len(lists)-2:], want, pick)
			return false
		}
	}
	best := math.Inf(1)
	trial := make([]int, len(pick))
	var rec func(n int, want float64)
	rec = func(n int, want float64) {
		if len(lists)-n <= 2 {
			if d := sp.two(lists[n:], want, trial); d < best {
				best = d
				copy(pick, trial)
			}
			return
		}
		p := lists[n]
		for i, pt := range last(p) {
			trial[p] = i
			rec(n+1, want-sp.pairs[p].lever*pt.load)
		}
	}
	rec(0, want)
	return true
}

// two is balance for at most two lists, and returns the distance too.
func (sp *split) two(lists []int, want float64, pick []int) float64 {
	if len(lists) == 0 {
		return abs(want)
	}
	l := &sp.pairs[lists[0]]
	a, fa := l.steps[len(l.kinds)], l.lever
	best := math.Inf(1)
	if len(lists) == 1 {
		for i := range a {
			if d := abs(fa*a[i].load - want); d < best {
				best, pick[lists[0]] = d, i
			}
		}
		return best
	}
	l = &sp.pairs[lists[1]]
	b, fb := l.steps[len(l.kinds)], l.lever
	// Go up one list and, for a growing sum of levers, down the other.
	down := fa*fb > 0
	j := 0
	if down {
		j = len(b) - 1
	}
	for i := range a {
		need := (want - fa*a[i].load) / fb
		// as i goes up, need goes down if the levers have the same sign
		if down {
			for j > 0 && b[j].load > need {
				j--
			}
		} else {
			for j < len(b)-1 && b[j].load < need {
				j++
			}
		}
		for _, k := range [3]int{j - 1, j, j + 1} {
			if k >= 0 && k < len(b) {
				if d := abs(fa*a[i].load + fb*b[k].load - want); d < best {
					best, pick[lists[0]], pick[lists[1]] = d, i, k
				}
			}
		}
	}
	return best
}
