package packing

import (
	"math"
	"math/bits"
)

// The linear relaxation of what is left to decide, solved by the dual simplex
// method.
//
//	min  Σ_s Σ_j m_s cost_j x_sj + Σ_a w_a |dev_a|
//	     Σ_j x_sj = q_s                            for every slot s
//	     Σ_sj m_s at_aj x_sj - dev_a = rhs_a       absolute values
//	     Σ_sj (m_s P_rj + v_s Q_rj) x_sj <= rhs_r  limits
//
// The many rows Σ_j x_sj = q_s never enter the basis: each slot has a key bag
// that takes what its other bags leave (generalised upper bounds, Dantzig and
// Van Slyke 1967). The working basis has one column for each of the other
// rows, a slack or a bag of a slot measured against its key. Columns are never
// stored, for all come from two numbers a bag: m K_j + v H_j.

// state is a node of the search: what is left to decide and a basis for it.
type state struct {
	// A slot holds q interchangeable pieces of one kind that may go into the
	// bags of its mask. Each kind has a slot for pieces that are free and one
	// for each group of several bags, for pieces that are in that group.
	q     []int32
	mask  []uint64
	key   []int8   // the key bag
	basic []uint64 // bags in the working basis

	head []int32   // the column at each place of the working basis
	inv  []float64 // inverse of the working basis, row by row
	pi   []float64 // multipliers of the rows
	x    []float64 // values of the working basis

	rhs            []float64 // of the rows, less what is fixed
	most           float64   // moves that were allowed when rhs was worked out
	base           float64   // cost of what is fixed
	load, vol, lim []float64 // what fixed pieces leave, kg and l
	fixed          []int16   // pieces fixed, by kind and bag

	bound float64
}

// copyFrom makes s equal to o, without sharing memory.
func (s *state) copyFrom(o *state) {
	s.q = append(s.q[:0], o.q...)
	s.mask = append(s.mask[:0], o.mask...)
	s.key = append(s.key[:0], o.key...)
	s.basic = append(s.basic[:0], o.basic...)
	s.head = append(s.head[:0], o.head...)
	s.inv = append(s.inv[:0], o.inv...)
	s.pi = append(s.pi[:0], o.pi...)
	s.x = append(s.x[:0], o.x...)
	s.rhs = append(s.rhs[:0], o.rhs...)
	s.load = append(s.load[:0], o.load...)
	s.vol = append(s.vol[:0], o.vol...)
	s.lim = append(s.lim[:0], o.lim...)
	s.fixed = append(s.fixed[:0], o.fixed...)
	s.base, s.bound, s.most = o.base, o.bound, o.most
}

// A column of the basis is coded as slot<<8 | bag, or for a slack as
// -1 - (row<<1 | sign): sign 1 has -1 in its row, which only an absolute value
// has.
func slackColumn(row, sign int) int32 { return int32(-1 - (row<<1 | sign)) }
func slackRow(c int32) (row, sign int) {
	n := int(-1 - c)
	return n >> 1, n & 1
}
func column(slot, bag int) int32 { return int32(slot<<8 | bag) }

const (
	tiny  = 1e-9  // what a value may be below 0
	pivot = 1e-7  // the smallest pivot
	ties  = 1e-11 // ratios this close are equal
)

// relax works on states; it holds what all of them share.
type relax struct {
	in     *instance
	nb, d  int
	slots  int
	m, v   []float64 // by slot
	kindOf []int

	K, H, E []float64 // prices of bags for a unit of mass and of volume, and of cuts by kind and bag
	P, Q, G []float64 // the same of a row of the inverse
	b, rho  []float64
	col     []float64
	sum     []float64 // by slot: what its basic bags hold

	bags, rows, slack []int // places and rows
	sign, full, work  []float64
}

func newRelax(in *instance) *relax {
	r := &relax{in: in, nb: in.nb, d: in.rows, slots: len(in.kinds) * (1 + len(in.wide))}
	for s := range r.slots {
		k := s % len(in.kinds)
		r.kindOf = append(r.kindOf, k)
		r.m, r.v = append(r.m, in.kinds[k].m), append(r.v, in.kinds[k].v)
	}
	for _, p := range []*[]float64{&r.K, &r.H, &r.P, &r.Q} {
		*p = make([]float64, r.nb)
	}
	r.E, r.G = make([]float64, len(in.kinds)*r.nb), make([]float64, len(in.kinds)*r.nb)
	for _, p := range []*[]float64{&r.b, &r.rho, &r.col} {
		*p = make([]float64, r.d)
	}
	r.sum = make([]float64, r.slots)
	r.slack, r.sign = make([]int, r.d), make([]float64, r.d)
	r.bags, r.rows = make([]int, 0, r.d), make([]int, 0, r.d)
	r.full, r.work = make([]float64, r.d*r.d), make([]float64, 2*r.d*r.d)
	return r
}

// root is the state before any decision, with a basis of slacks.
func (r *relax) root() *state {
	in := r.in
	s := &state{
		q: make([]int32, r.slots), mask: make([]uint64, r.slots), key: make([]int8, r.slots), basic: make([]uint64, r.slots),
		head: make([]int32, r.d), inv: make([]float64, r.d*r.d), pi: make([]float64, r.d), x: make([]float64, r.d),
		rhs:  append([]float64(nil), in.rhs...),
		load: append([]float64(nil), in.load...), vol: append([]float64(nil), in.vol...), lim: append([]float64(nil), in.lim...),
		fixed: make([]int16, len(in.kinds)*r.nb), most: in.most,
	}
	for i := range in.kinds {
		s.q[i], s.mask[i] = int32(in.kinds[i].count), in.kinds[i].mask
	}
	r.restart(s)
	return s
}

// allow tells a state how many moves are allowed by now.
func (r *relax) allow(s *state) {
	if s.most != r.in.most {
		s.rhs[r.in.moveRow] += r.in.most - s.most
		s.most = r.in.most
	}
}

// restart gives a state the basis of slacks, which is dual feasible with every
// slot keyed to its cheapest bag.
func (r *relax) restart(s *state) {
	clear(s.inv)
	clear(s.basic)
	clear(s.pi)
	for p := range r.d {
		s.head[p] = slackColumn(p, 0)
		s.inv[p*r.d+p] = 1
		if p < len(r.in.abs) {
			s.pi[p] = r.in.abs[p].w
		}
	}
	r.prices(s.pi, r.K, r.H, r.E, true)
	for t := range r.slots {
		if s.q[t] > 0 {
			s.key[t] = int8(r.cheapest(s, t))
		}
	}
}

// refactor works out the inverse of the basis anew. If it has none, the state
// gets the basis of slacks. Most of the basis is slacks, each alone with its row:
// only the bags of slots, in the rows that have no slack, need elimination.
func (r *relax) refactor(s *state) {
	d := r.d
	bags, rows := r.bags[:0], r.rows[:0]
	for row := range d {
		r.slack[row] = -1
	}
	for p, h := range s.head {
		if h >= 0 {
			bags = append(bags, p)
			continue
		}
		row, sign := slackRow(h)
		r.slack[row] = p
		r.sign[p] = 1 - 2*float64(sign)
	}
	for row, p := range r.slack {
		if p < 0 {
			rows = append(rows, row)
		}
	}
	n := len(bags)
	if len(rows) != n { // a row with both its slacks
		r.restart(s)
		return
	}
	// full is the columns of the bags, one after the other; w is [B | 1] of the
	// rows without a slack, row by row.
	full, w := r.full[:n*d], r.work[:2*n*n]
	clear(full)
	clear(w)
	for c, p := range bags {
		a := full[c*d:][:d]
		t, j := int(s.head[p]>>8), int(s.head[p]&255)
		r.addColumn(a, t, j, 1)
		r.addColumn(a, t, int(s.key[t]), -1)
		for i, row := range rows {
			w[i*2*n+c] = a[row]
		}
		w[c*2*n+n+c] = 1
	}
	for c := range n {
		best := c
		for i := c + 1; i < n; i++ {
			if abs(w[i*2*n+c]) > abs(w[best*2*n+c]) {
				best = i
			}
		}
		if abs(w[best*2*n+c]) < 1e-10 {
			r.restart(s)
			return
		}
		row := w[c*2*n : (c+1)*2*n]
		if best != c {
			other := w[best*2*n : (best+1)*2*n]
			for i := range row {
				row[i], other[i] = other[i], row[i]
			}
		}
		f := 1 / row[c]
		for i := c; i < 2*n; i++ {
			row[i] *= f
		}
		for k := range n {
			if k == c {
				continue
			}
			other := w[k*2*n : (k+1)*2*n]
			if f := other[c]; f != 0 {
				for i := c; i < 2*n; i++ {
					other[i] -= f * row[i]
				}
			}
		}
	}
	clear(s.inv)
	for c, p := range bags {
		for i, row := range rows {
			s.inv[p*d+row] = w[c*2*n+n+i]
		}
	}
	// What a slack is: what its row has, less what the bags take of it.
	for row, p := range r.slack {
		if p < 0 {
			continue
		}
		to := s.inv[p*d : (p+1)*d]
		to[row] = r.sign[p]
		for c := range bags {
			if f := r.sign[p] * full[c*d+row]; f != 0 {
				for i, row := range rows {
					to[row] -= f * w[c*2*n+n+i]
				}
			}
		}
	}
}

// prices fills K and H for a vector over the rows: the cost of a unit of mass
// and of volume in each bag, less what the rows pay for it.
func (r *relax) prices(pi, K, H, E []float64, cost bool) {
	in := r.in
	if cost {
		copy(K, in.cost)
	} else {
		clear(K)
	}
	for a := range in.dense {
		if y := pi[a]; y != 0 {
			for j, c := range in.at[a*r.nb : (a+1)*r.nb] {
				K[j] -= y * c
			}
		}
	}
	for j := range H {
		H[j] = 0
		if row := in.loadRow[j]; row >= 0 {
			K[j] -= pi[row]
		}
		if row := in.volRow[j]; row >= 0 {
			H[j] = -pi[row]
		}
	}
	if len(in.cuts) == 0 && in.moves == nil {
		return
	}
	clear(E)
	if in.moves != nil && pi[in.moveRow] != 0 {
		y := pi[in.moveRow]
		for i, n := range in.moves {
			E[i] = -y * n
		}
	}
	for c := range in.cuts {
		if y := pi[in.plain+c]; y != 0 {
			j := in.cuts[c].bag
			for k, u := range in.cuts[c].u {
				E[k*r.nb+j] -= y * u
			}
		}
	}
}

// price is what a piece of a slot costs in a bag under K, H and E.
func (r *relax) price(t, j int) float64 {
	return r.m[t]*r.K[j] + r.v[t]*r.H[j] + r.E[r.kindOf[t]*r.nb+j]
}

// cheapest is the bag of least price for a slot under K and H.
func (r *relax) cheapest(s *state, t int) int {
	best, at := math.Inf(1), -1
	for mask := s.mask[t]; mask != 0; mask &= mask - 1 {
		j := bits.TrailingZeros64(mask)
		if c := r.price(t, j); c < best {
			best, at = c, j
		}
	}
	return at
}

// lagrange returns L(π) of the package comment, the bound that holds for any
// π once the signs are right, and leaves the prices in K and H.
func (r *relax) lagrange(s *state, pi []float64) float64 {
	in := r.in
	sum := s.base
	for p := range pi {
		if p < len(in.abs) {
			pi[p] = max(-in.abs[p].w, min(in.abs[p].w, pi[p]))
		} else {
			pi[p] = min(pi[p], 0)
		}
		sum += pi[p] * s.rhs[p]
	}
	r.prices(pi, r.K, r.H, r.E, true)
	for t, q := range s.q {
		if q == 0 {
			continue
		}
		least := math.Inf(1)
		for mask := s.mask[t]; mask != 0; mask &= mask - 1 {
			least = min(least, r.price(t, bits.TrailingZeros64(mask)))
		}
		sum += float64(q) * least
	}
	return sum
}

// addColumn adds f times the column of slot t in bag j to a vector over the rows.
func (r *relax) addColumn(b []float64, t, j int, f float64) {
	in := r.in
	m := f * r.m[t]
	for a := range in.dense {
		b[a] += m * in.at[a*r.nb+j]
	}
	if row := in.loadRow[j]; row >= 0 {
		b[row] += m
	}
	if row := in.volRow[j]; row >= 0 {
		b[row] += f * r.v[t]
	}
	if in.moves != nil {
		b[in.moveRow] += f * in.moves[r.kindOf[t]*r.nb+j]
	}
	for _, c := range in.cutsOf[j] {
		b[in.plain+c] += f * in.cuts[c].u[r.kindOf[t]]
	}
}

// values solves for the working basis.
func (r *relax) values(s *state) {
	b := r.b
	copy(b, s.rhs)
	for t, q := range s.q {
		if q > 0 {
			r.addColumn(b, t, int(s.key[t]), -float64(q))
		}
	}
	d := r.d
	for p := range d {
		var x float64
		for k, c := range s.inv[p*d : (p+1)*d] {
			x += c * b[k]
		}
		s.x[p] = x
	}
}

// outcome says how solve ended.
type outcome int

const (
	optimal  outcome = iota // s.x is an optimum of the relaxation
	cutOff                  // the bound has reached the cut
	unsolved                // no optimum, but s.bound holds as ever
)

// solve finds the optimum of the relaxation, or stops when its bound reaches
// the cut. Whatever happens, s.bound is a bound that holds and s.pi the
// multipliers that it comes from.
func (r *relax) solve(s *state, cut float64) outcome {
	d := r.d
	r.rekeyEmpty(s)
	limit := 50 + 10*d
	restarted := false
	stale, exact := true, false // s.x is to be worked out anew; it has been, since the last pivot
	for iter := 0; ; iter++ {
		if iter == limit {
			if restarted {
				s.bound = max(s.bound, r.lagrange(s, s.pi))
				return unsolved
			}
			restarted, iter, stale = true, 0, true
			r.restart(s)
		}
		if stale {
			r.values(s)
			stale, exact = false, true
		}
		p, slot, up := r.leaving(s)
		if p < 0 && slot < 0 {
			if stale = !exact; stale {
				continue
			}
			s.bound = max(s.bound, r.lagrange(s, s.pi))
			if s.bound >= cut {
				return cutOff
			}
			return optimal
		}
		if p < 0 {
			p = r.rekey(s, slot)
		}
		rho := r.rho
		copy(rho, s.inv[p*d:(p+1)*d])
		sign := 1.0 // direction in which a rises with the entering column
		if up {
			sign = -1
		}
		enter, step := r.entering(s, p, sign)
		if enter == none {
			// No way to make this value right: the bound grows without end along
			// the row.
			viol := abs(s.x[p])
			low := r.lagrange(s, s.pi)
			s.bound = max(s.bound, low)
			if s.bound < cut {
				step := 1.01 * (cut - low + 1e-6) / viol
				for k := range rho {
					r.col[k] = s.pi[k] + sign*step*rho[k]
				}
				s.bound = max(s.bound, r.lagrange(s, r.col))
			}
			if s.bound >= cut {
				return cutOff
			}
			if restarted {
				return unsolved
			}
			restarted, iter, stale = true, 0, true
			r.restart(s)
			continue
		}
		for k := range rho {
			s.pi[k] += sign * step * rho[k]
		}
		left := s.head[p]
		if !r.enter(s, p, enter) {
			if restarted {
				s.bound = max(s.bound, r.lagrange(s, s.pi))
				return unsolved
			}
			restarted, iter, stale = true, 0, true
			r.restart(s)
			continue
		}
		exact = false
		stale = left >= 0 && r.rekeyEmpty(s)
		if step > 0 && iter&3 == 3 {
			if low := r.lagrange(s, s.pi); low > s.bound {
				s.bound = low
				if low >= cut {
					return cutOff
				}
			}
		}
	}
}

// rekeyEmpty gives a new key to slots whose key has been ruled out and that
// have no basic bag: the cheapest one left. It reports whether there are any.
func (r *relax) rekeyEmpty(s *state) bool {
	ready := false
	for t, q := range s.q {
		if q == 0 || s.mask[t]>>s.key[t]&1 != 0 || s.basic[t] != 0 {
			continue
		}
		if !ready {
			ready = true
			r.prices(s.pi, r.K, r.H, r.E, true)
		}
		s.key[t] = int8(r.cheapest(s, t))
	}
	return ready
}

// leaving picks the value that is furthest from what it may be: a place of the
// working basis or the key of a slot. Up says that it must rise.
func (r *relax) leaving(s *state) (place, slot int, up bool) {
	place, slot = -1, -1
	worst := tiny
	any := false
	for p, h := range s.head {
		x := s.x[p]
		if h < 0 {
			if -x > worst {
				worst, place, up = -x, p, true
			}
			continue
		}
		t, j := int(h>>8), int(h&255)
		if !any {
			any = true
		}
		r.sum[t] = 0
		if s.q[t] > 0 && s.mask[t]>>j&1 != 0 {
			if -x > worst {
				worst, place, up = -x, p, true
			}
		} else if abs(x) > worst {
			worst, place, up = abs(x), p, x < 0
		}
	}
	if !any {
		return place, slot, up
	}
	for p, h := range s.head {
		if h >= 0 {
			r.sum[h>>8] += s.x[p]
		}
	}
	for _, h := range s.head {
		if h < 0 {
			continue
		}
		t := int(h >> 8)
		if s.q[t] == 0 {
			continue
		}
		x := float64(s.q[t]) - r.sum[t]
		if s.mask[t]>>s.key[t]&1 != 0 {
			if -x > worst {
				worst, place, slot, up = -x, -1, t, true
			}
		} else if abs(x) > worst {
			worst, place, slot, up = abs(x), -1, t, x < 0
		}
	}
	return place, slot, up
}

// rekey exchanges the key of a slot with one of its basic bags and returns the
// place where the old key now is.
//
// With y the new coordinates, x_q = y_q for the other bags of the slot and
// x_p = -y_p - Σ y_q, so row p of the inverse becomes minus the sum of the
// slot's rows.
func (r *relax) rekey(s *state, t int) int {
	d := r.d
	p := -1
	for k, h := range s.head {
		if h >= 0 && int(h>>8) == t && (p < 0 || s.mask[t]>>(h&255)&1 != 0) {
			p = k
			if s.mask[t]>>(h&255)&1 != 0 {
				break
			}
		}
	}
	row := s.inv[p*d : (p+1)*d]
	for k, h := range s.head {
		if k != p && h >= 0 && int(h>>8) == t {
			for c, y := range s.inv[k*d : (k+1)*d] {
				row[c] += y
			}
		}
	}
	for c := range row {
		row[c] = -row[c]
	}
	j := int(s.head[p] & 255)
	old := int(s.key[t])
	s.basic[t] = s.basic[t]&^(1<<j) | 1<<old
	s.head[p] = column(t, old)
	s.key[t] = int8(j)
	s.x[p] = float64(s.q[t]) - r.sum[t]
	return p
}

const none = int32(math.MinInt32)

// entering makes the ratio test: among the columns that move the value at p
// the right way, the one whose reduced cost is used up first; among equals the
// one with the largest pivot.
func (r *relax) entering(s *state, p int, sign float64) (int32, float64) {
	in := r.in
	best, ratio, size := none, math.Inf(1), 0.0
	try := func(c int32, alpha, cost float64) {
		alpha *= sign
		if alpha <= pivot {
			return
		}
		q := max(cost, 0) / alpha
		if q < ratio-ties || q <= ratio+ties && alpha > size {
			best, ratio, size = c, q, alpha
		}
	}
	rho := r.rho
	for row := range r.d {
		if row < len(in.abs) {
			w := in.abs[row].w
			try(slackColumn(row, 0), rho[row], w-s.pi[row])
			try(slackColumn(row, 1), -rho[row], w+s.pi[row])
		} else {
			try(slackColumn(row, 0), rho[row], -s.pi[row])
		}
	}
	if best != none && ratio <= 0 {
		ratio = 0
	}
	r.prices(s.pi, r.K, r.H, r.E, true)
	r.prices(rho, r.P, r.Q, r.G, false)
	K, H, P, Q := r.K, r.H, r.P, r.Q
	for t, q := range s.q {
		if q == 0 {
			continue
		}
		key := int(s.key[t])
		others := s.mask[t] &^ (s.basic[t] | 1<<key)
		if others == 0 {
			continue
		}
		m, v := r.m[t], r.v[t]
		E, G := r.E[r.kindOf[t]*r.nb:][:r.nb], r.G[r.kindOf[t]*r.nb:][:r.nb]
		price := m*K[key] + v*H[key] + E[key]
		alpha := m*P[key] + v*Q[key] + G[key]
		for ; others != 0; others &= others - 1 {
			j := bits.TrailingZeros64(others) & 31
			// prices of a row come with a minus
			a := (alpha - (m*P[j] + v*Q[j] + G[j])) * sign
			if a <= pivot {
				continue
			}
			c := max(m*K[j]+v*H[j]+E[j]-price, 0)
			if c > (ratio+ties)*a {
				continue
			}
			if x := c / a; x < ratio-ties || a > size {
				best, ratio, size = column(t, j), min(x, ratio), a
			}
		}
	}
	return best, ratio
}

// enter brings a column into the working basis in place of the one at p, and
// says whether the pivot was sound.
func (r *relax) enter(s *state, p int, c int32) bool {
	d := r.d
	a := r.b
	clear(a)
	if c < 0 {
		row, sign := slackRow(c)
		a[row] = 1 - 2*float64(sign)
	} else {
		t, j := int(c>>8), int(c&255)
		r.addColumn(a, t, j, 1)
		r.addColumn(a, t, int(s.key[t]), -1)
	}
	w := r.col
	in := nonzero(r.rows[:0], a)
	for k := range d {
		var x float64
		row := s.inv[k*d : (k+1)*d]
		for _, i := range in {
			x += row[i] * a[i]
		}
		w[k] = x
	}
	if abs(w[p]) < pivot/10 {
		return false
	}
	row := s.inv[p*d : (p+1)*d]
	in = nonzero(r.rows[:0], row)
	f := 1 / w[p]
	for _, i := range in {
		row[i] *= f
	}
	x := s.x[p] * f
	for k := range d {
		if f := w[k]; k != p && f != 0 {
			other := s.inv[k*d : (k+1)*d]
			for _, i := range in {
				other[i] -= f * row[i]
			}
			s.x[k] -= f * x
		}
	}
	s.x[p] = x
	if h := s.head[p]; h >= 0 {
		s.basic[h>>8] &^= 1 << (h & 255)
	}
	if c >= 0 {
		s.basic[c>>8] |= 1 << (c & 255)
	}
	s.head[p] = c
	return true
}

// nonzero appends where a vector is not 0.
func nonzero(at []int, v []float64) []int {
	for i, x := range v {
		if x != 0 {
			at = append(at, i)
		}
	}
	return at
}
