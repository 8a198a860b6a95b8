package packing

import (
	"cmp"
	"math"
	"math/bits"

	"steelyard/internal/order"
)

// candidate is a decision that may be taken next: how many pieces of a slot go
// into a set of bags, of which the relaxation puts x there.
type candidate struct {
	slot  int
	set   uint64
	x     float64
	id    int
	score float64
}

// gain is what earlier decisions on a kind and a set have brought: how much
// the bound rose for each piece that was put in beyond what the relaxation
// wanted, and for each that was kept out.
type gain struct {
	up, down   float64
	ups, downs float64
}

// The next decision is searched for by these numbers, found by trial on tours of
// 20 to 40 goods.
const (
	trusted    = 2.0 // gains seen on the rarer side of a decision before they are believed untried
	patience   = 4   // decisions tried in a row without a better one before the best so far is taken
	candidates = 16  // decisions considered, most fractional first
	bigPart    = 0.2 // of what is left of a bag: a piece above that is settled before small ones
)

// branch finds the decision to take next and its ways: the one that promises
// to raise the bound most on either side. What a decision brings is tried out
// until it is known well enough (reliability branching, Achterberg, Koch and
// Martin 2005).
//
// A decision asks whether pieces go into one group of bags or not, and leaves
// open into which of the others. Often the relaxation is indifferent between
// front and rear as long as the front share comes out right; to decide such
// things early would double the search for nothing.
func (s *Solver) branch(f *frame, solved bool) {
	st := &f.state
	var list []candidate
	if solved {
		list = s.fractional(st)
	}
	if len(list) == 0 {
		s.spread(f, s.fallback(st))
		return
	}
	gap := s.cut - st.bound
	for i := range list {
		c := &list[i]
		c.score = s.promise(c, gap)
	}
	order.Stable(list, func(a, b candidate) int { return cmp.Compare(b.score, a.score) })
	if len(list) > candidates {
		list = list[:candidates]
	}
	best, fails := -1.0, 0
	var ways []way
	for i := range list {
		c := &list[i]
		g := &s.gains[c.id]
		f.ways = f.ways[:0]
		if min(g.ups, g.downs) < trusted {
			s.spread(f, *c)
			c.score = s.probe(f, c, gap)
		}
		if c.score <= best {
			fails++
			if fails >= patience {
				break
			}
			continue
		}
		fails = 0
		best = c.score
		if len(f.ways) == 0 {
			s.spread(f, *c)
		}
		ways = append(ways[:0], f.ways...)
	}
	f.ways = append(f.ways[:0], ways...)
	order.Stable(f.ways, func(a, b way) int { return cmp.Compare(a.bound, b.bound) })
}

// promise estimates the score of a candidate from earlier gains.
func (s *Solver) promise(c *candidate, gap float64) float64 {
	g := &s.gains[c.id]
	m := s.rel.m[c.slot] + s.rel.v[c.slot]
	up, down := m, m // nothing known: big pieces first
	if g.ups > 0 {
		up = g.up / g.ups
	}
	if g.downs > 0 {
		down = g.down / g.downs
	}
	frac := c.x - math.Floor(c.x)
	return score(up*(1-frac), down*frac, gap)
}

func score(up, down, gap float64) float64 {
	least := 1e-3 * gap
	return max(min(up, 2*gap), least) * max(min(down, 2*gap), least)
}

// probe solves the relaxation of all ways and learns from it.
func (s *Solver) probe(f *frame, c *candidate, gap float64) float64 {
	st := &f.state
	up, down := 2*gap, 2*gap
	n := int(math.Floor(c.x)) + 1
	for i := range f.ways {
		w := &f.ways[i]
		g := s.frame()
		g.state.copyFrom(st)
		s.spent++
		low := math.Inf(1)
		if s.take(&g.state, *w) {
			if s.propagate(&g.state) && s.rel.solve(&g.state, s.cut) != cutOff {
				low = g.state.bound
			}
		}
		w.bound = max(w.bound, low)
		s.drop(g)
		d := min(low-st.bound, 2*gap)
		if w.n == n {
			up = d
		} else if w.n == n-1 {
			down = d
		}
	}
	frac := c.x - math.Floor(c.x)
	g := &s.gains[c.id]
	g.up += up / max(1-frac, 0.01)
	g.down += down / max(frac, 0.01)
	g.ups++
	g.downs++
	return score(up, down, gap)
}

// fractional lists the decisions that the relaxation leaves open.
func (s *Solver) fractional(st *state) []candidate {
	in, r := s.in, s.rel
	const whole = 1e-7
	open := func(x float64) bool { return abs(x-math.Round(x)) > whole }
	list := s.list[:0]
	bag, group := s.amount[:in.nb], s.amount[in.nb:]
	var low []candidate
	for t, q := range st.q {
		if q == 0 || st.basic[t] == 0 {
			continue
		}
		clear(s.amount)
		key := float64(q)
		for p, h := range st.head {
			if h >= 0 && int(h>>8) == t {
				bag[h&255] = st.x[p]
				key -= st.x[p]
			}
		}
		bag[st.key[t]] += key
		k := r.kindOf[t]
		kd := &in.kinds[k]
		ids := k * (in.nb + len(in.group))
		for g, set := range in.group {
			part := set & st.mask[t]
			if part == 0 {
				continue
			}
			worst, at, big := whole, -1, false
			for b := part; b != 0; b &= b - 1 {
				j := bits.TrailingZeros64(b)
				group[g] += bag[j]
				if d := abs(bag[j] - math.Round(bag[j])); d > worst {
					worst, at = d, j
					big = kd.mass > bigPart*st.load[j] || kd.vol > bigPart*st.vol[j]
				}
			}
			if part != st.mask[t] && open(group[g]) {
				list = append(list, candidate{slot: t, set: part, x: group[g], id: ids + in.nb + g})
			}
			if at >= 0 && set&(set-1) != 0 {
				c := candidate{slot: t, set: 1 << at, x: bag[at], id: ids + at}
				if big {
					list = append(list, c)
				} else {
					low = append(low, c)
				}
			}
		}
	}
	if len(list) == 0 {
		list = append(list, low...)
	}
	s.list = list
	return list
}

// fallback is the decision when the relaxation has none to offer: the one on
// the largest pieces that are open.
func (s *Solver) fallback(st *state) candidate {
	in, r := s.in, s.rel
	var c candidate
	level, most := -1, -1.0
	for t, q := range st.q {
		if q == 0 {
			continue
		}
		lv := 0
		set := st.mask[t] & in.group[in.groupOf[st.key[t]]]
		if set != st.mask[t] && set != 0 {
			lv = 1
		} else {
			set = 1 << st.key[t] & st.mask[t]
			if set == 0 {
				set = st.mask[t] & -st.mask[t]
			}
		}
		if size := r.m[t] + r.v[t]; lv > level || lv == level && size > most {
			level, most = lv, size
			c = candidate{slot: t, set: set, x: float64(q) - 0.5}
		}
	}
	return c
}

// spread lists the ways of a decision: n pieces or more go into the set, or
// exactly so many fewer.
func (s *Solver) spread(f *frame, c candidate) {
	st := &f.state
	mask, low := st.mask[c.slot], st.bound
	q := int(st.q[c.slot])
	n := min(max(int(math.Floor(c.x))+1, 1), q)
	f.ways = append(f.ways[:0], way{slot: c.slot, n: n, into: c.set, rest: mask, bound: low})
	for i := n - 1; i >= 0; i-- {
		f.ways = append(f.ways, way{slot: c.slot, n: i, into: c.set, rest: mask &^ c.set, bound: low})
	}
}
