package packing

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"sort"
)

// anneal looks for good packings by simulated annealing (Kirkpatrick, Gelatt and
// Vecchi 1983): pieces move between bags and change places, at first almost
// freely, then only for the better. Sides are balanced afterwards, by split.
// It proves nothing, but an early good packing lets the search rule out most
// of the rest.
type anneal struct {
	in   *instance
	rng  *rand.Rand
	kind []int16 // by piece
	at   []int16 // its bag

	// The guide: a place to begin, near the optimum of a relaxation, and where each
	// piece may go from there.
	guide []int16
	allow []uint64
	fresh bool // the guide has not been used yet

	// Of each bag: what a unit of mass and of volume costs in the relaxation;
	// its place in the rows of absolute values; how far the sides of its group
	// can pull the balance.
	K, H             []float64
	front, mid, pull []float64
	wFront, tFront   float64
	wSide, tSide     float64

	now     tally
	finds   []solution
	scratch []int16

	floor float64 // values below it are all as good
	left  int     // effort still to be spent in this annealing
	temp  float64 // how hot it is
	cool  float64 // by how much each move cools it
}

// tally is what the pieces add up to.
type tally struct {
	cost, front, mid, pull float64
	load, vol, lim         []float64
	excess, moves          float64
}

// solution is a packing by kind and group that may be better than the best.
type solution struct {
	value  float64 // where any value will do, the moves
	key    uint64
	counts []int16
}

func newAnneal(in *instance) *anneal {
	h := &anneal{in: in, floor: math.Inf(-1), rng: rand.New(rand.NewPCG(1, 2))}
	for k := range in.kinds {
		for range in.kinds[k].count {
			h.kind = append(h.kind, int16(k))
			h.allow = append(h.allow, in.kinds[k].mask)
		}
	}
	h.at, h.guide = make([]int16, len(h.kind)), make([]int16, len(h.kind))
	for _, p := range []*[]float64{&h.K, &h.H, &h.front, &h.mid, &h.pull, &h.now.load, &h.now.vol} {
		*p = make([]float64, in.nb)
	}
	h.now.lim = make([]float64, len(in.lim))
	for a := range in.abs {
		row := in.at[a*in.nb:][:in.nb]
		if a != in.side {
			h.wFront, h.tFront = in.abs[a].w, in.abs[a].rhs
			copy(h.front, row)
			continue
		}
		h.wSide, h.tSide = in.abs[a].w, in.abs[a].rhs
		for j := range in.nb {
			lo, hi := row[j], row[j]
			for s := in.group[in.groupOf[j]]; s != 0; s &= s - 1 {
				y := row[bits.TrailingZeros64(s)]
				lo, hi = min(lo, y), max(hi, y)
			}
			h.mid[j], h.pull[j] = (lo+hi)/2, (hi-lo)/2
		}
	}
	return h
}

// over is by how much x exceeds a limit, as a part of it.
func over(x, limit float64) float64 {
	if x <= limit {
		return 0
	}
	return (x - limit) / (limit + 1e-3)
}

// value is the least aim with these sums, whatever the sides.
func (h *anneal) value(cost, front, mid, pull float64) float64 {
	return cost + h.wFront*abs(front-h.tFront) + h.wSide*max(0, abs(mid-h.tSide)-pull)
}

// count adds everything up anew.
func (h *anneal) count() {
	n := &h.now
	n.cost, n.front, n.mid, n.pull, n.moves = 0, 0, 0, 0, 0
	clear(n.load)
	clear(n.vol)
	clear(n.lim)
	for p := range h.kind {
		h.put(p, int(h.at[p]), 1)
	}
	h.exceed()
}

func (h *anneal) put(p, j int, f float64) {
	n, k := &h.now, &h.in.kinds[h.kind[p]]
	m := f * k.m
	n.cost += m * h.in.cost[j]
	n.moves += f * h.away(int(h.kind[p]), j)
	n.front += m * h.front[j]
	n.mid += m * h.mid[j]
	n.pull += m * h.pull[j]
	n.load[j] += f * k.mass
	n.vol[j] += f * k.vol
	for l := range n.lim {
		n.lim[l] += f * k.mass * h.in.task.Limits[l].Share[j]
	}
}

// away is how many moves it takes to have a piece of a kind in a bag.
func (h *anneal) away(k, j int) float64 {
	if h.in.moves == nil {
		return 0
	}
	return h.in.moves[k*h.in.nb+j]
}

func (h *anneal) exceed() {
	n := &h.now
	n.excess = 0
	for j := range n.load {
		n.excess += over(n.load[j], h.in.load[j]) + over(n.vol[j], h.in.vol[j])
	}
	for l := range n.lim {
		n.excess += over(n.lim[l], h.in.lim[l])
	}
}

// annealUnit is how many moves take about as long as a node.
const annealUnit = 400

// An annealing cools, in parts of what the aim can vary by, and keeps the limits
// by these numbers, found by trial.
const (
	hot     = 0.005
	cold    = 1e-3
	ease    = 1e-3 // below this an excess counts in full
	penalty = 10.0 // of an excess
	further = 0.01 // of a move too many: little enough that a detour is found
	thrift  = 2    // where fewer moves are looked for: so many below the limit cost already
)

// begin begins an annealing, from the guide or from the best packing.
func (h *anneal) begin(s *Solver, effort int) {
	copy(h.at, h.guide)
	best := s.best
	if best == nil {
		best = s.seed
	}
	if !h.fresh && best != nil {
		h.from(best)
		for p, k := range h.kind {
			h.allow[p] = h.in.kinds[k].mask
		}
	}
	h.fresh = false
	h.count()
	h.finds = h.finds[:0]
	h.left = effort
	h.temp, h.cool = hot, math.Pow(cold/hot, 1/float64(effort*annealUnit))
}

// run continues an annealing for some effort, and tries what it has found when it
// ends.
func (h *anneal) run(s *Solver, effort int) {
	in, n := h.in, &h.now
	pieces := len(h.kind)
	h.left -= effort
	cool, temp := h.cool, h.temp
	free := in.most // moves that cost nothing
	if s.any {
		free -= thrift
	}

	// A move of a mean piece across the span changes the value by about 1. At first
	// most of the weight of limits and absolute values is replaced by what they cost
	// in the relaxation: where the relaxation is indifferent, pieces then move
	// freely, until the weight has grown to 1.
	const clean = 1e-9
	for range effort * annealUnit {
		temp *= cool
		part := min(1, ease/temp)
		u := h.rng.Uint64()
		p := int(u >> 32 * uint64(pieces) >> 32)
		a := int(h.at[p])
		kp := h.kind[p]
		k := &in.kinds[kp]
		m, v, mass, vol := k.m, k.v, k.mass, k.vol
		moves := n.moves
		q, b := -1, 0
		if u&1 == 0 {
			b = int(u >> 1 & (1<<31 - 1) * uint64(in.nb) >> 31)
			if b == a || h.allow[p]>>b&1 == 0 {
				continue
			}
		} else {
			q = int(u >> 1 & (1<<31 - 1) * uint64(pieces) >> 31)
			b = int(h.at[q])
			if a == b || kp == h.kind[q] || h.allow[p]>>b&1 == 0 || h.allow[q]>>a&1 == 0 {
				continue
			}
			o := &in.kinds[h.kind[q]]
			m, v, mass, vol = m-o.m, v-o.v, mass-o.mass, vol-o.vol
			moves += h.away(int(h.kind[q]), a) - h.away(int(h.kind[q]), b)
		}
		moves += h.away(int(kp), b) - h.away(int(kp), a)
		cost, front := n.cost+m*(in.cost[b]-in.cost[a]), n.front+m*(h.front[b]-h.front[a])
		mid, pull := n.mid+m*(h.mid[b]-h.mid[a]), n.pull+m*(h.pull[b]-h.pull[a])
		d := part * (max(h.floor, h.value(cost, front, mid, pull)) - max(h.floor, h.value(n.cost, n.front, n.mid, n.pull)))
		d += (1 - part) * (m*(h.K[b]-h.K[a]) + v*(h.H[b]-h.H[a]))
		e := over(n.load[a]-mass, in.load[a]) - over(n.load[a], in.load[a]) +
			over(n.load[b]+mass, in.load[b]) - over(n.load[b], in.load[b]) +
			over(n.vol[a]-vol, in.vol[a]) - over(n.vol[a], in.vol[a]) +
			over(n.vol[b]+vol, in.vol[b]) - over(n.vol[b], in.vol[b])
		for l := range n.lim {
			sh := in.task.Limits[l].Share
			e += over(n.lim[l]+mass*(sh[b]-sh[a]), in.lim[l]) - over(n.lim[l], in.lim[l])
		}
		d += penalty * part * e
		if moves != n.moves {
			d += further * (max(0, moves-free) - max(0, n.moves-free))
		}
		if d > 0 && d > temp*h.rng.ExpFloat64() {
			continue
		}
		h.put(p, a, -1)
		h.put(p, b, 1)
		h.at[p] = int16(b)
		if q >= 0 {
			h.put(q, b, -1)
			h.put(q, a, 1)
			h.at[q] = int16(a)
		}
		h.exceed()
		if n.excess <= clean && n.moves <= max(0, in.most) {
			if value := h.value(n.cost, n.front, n.mid, n.pull); value < s.value-1e-9 {
				if s.any {
					value = n.moves
				}
				h.keep(value)
			}
		}
	}
	h.temp = temp
	if h.left > 0 {
		return
	}
	for i := range h.finds {
		if f := &h.finds[i]; s.any || f.value < s.value {
			s.try(f.counts)
		}
	}
}

// keep remembers a solution, if it is among the best of this annealing.
func (h *anneal) keep(value float64) {
	const most = 10
	n := len(h.finds)
	if n == most && value >= h.finds[n-1].value {
		return
	}
	counts := h.counts()
	key := hash(counts)
	for i := range h.finds {
		if h.finds[i].key == key {
			return
		}
	}
	f := solution{value, key, nil}
	if n == most {
		f.counts = h.finds[n-1].counts
		h.finds = h.finds[:n-1]
	}
	f.counts = append(f.counts[:0], counts...)
	h.finds = append(h.finds, f)
	for i := len(h.finds) - 1; i > 0 && h.finds[i].value < h.finds[i-1].value; i-- {
		h.finds[i], h.finds[i-1] = h.finds[i-1], h.finds[i]
	}
}

// from takes a packing by kind and bag.
func (h *anneal) from(best []int16) {
	p := 0
	for k := range h.in.kinds {
		for j := range h.in.nb {
			for range best[k*h.in.nb+j] {
				h.at[p] = int16(j)
				p++
			}
		}
	}
}

// counts are the pieces by kind and group.
func (h *anneal) counts() []int16 {
	ng := len(h.in.group)
	h.scratch = append(h.scratch[:0], make([]int16, len(h.in.kinds)*ng)...)
	for p, k := range h.kind {
		h.scratch[int(k)*ng+h.in.groupOf[h.at[p]]]++
	}
	return h.scratch
}

// follow takes the relaxation of a state as the guide: pieces begin where it
// puts most of them. Narrow keeps them to the groups that the state allows.
func (h *anneal) follow(r *relax, st *state, narrow bool) {
	in := h.in
	nb := in.nb
	r.prices(st.pi, r.K, r.H, r.E, true)
	for j := range nb {
		// bags of a group cost the same, but for the balance
		set := in.group[in.groupOf[j]]
		h.K[j], h.H[j] = 0, 0
		n := float64(bits.OnesCount64(set))
		for ; set != 0; set &= set - 1 {
			b := bits.TrailingZeros64(set)
			h.K[j] += r.K[b] / n
			h.H[j] += r.H[b] / n
		}
	}
	x := make([]float64, len(in.kinds)*nb)
	r.fractions(st, x)
	p := 0
	for k := range in.kinds {
		kd := &in.kinds[k]
		// pieces settled, then those of each slot
		var sets []uint64
		if narrow {
			for j := range nb {
				for range st.fixed[k*nb+j] {
					sets = append(sets, in.group[in.groupOf[j]]&kd.mask)
				}
			}
			for t := k; t < len(st.q); t += len(in.kinds) {
				var set uint64
				for m := st.mask[t]; m != 0; m &= m - 1 {
					set |= in.group[in.groupOf[bits.TrailingZeros64(m)]]
				}
				for range st.q[t] {
					sets = append(sets, set&kd.mask)
				}
			}
			// the most confined first, so that they get what they need
			sort.SliceStable(sets, func(i, j int) bool { return bits.OnesCount64(sets[i]) < bits.OnesCount64(sets[j]) })
		}
		for n := range kd.count {
			set := kd.mask
			if narrow {
				set = sets[n]
			}
			best := -1
			for m := set; m != 0; m &= m - 1 {
				if j := bits.TrailingZeros64(m); best < 0 || x[k*nb+j] > x[k*nb+best] {
					best = j
				}
			}
			x[k*nb+best]--
			h.allow[p], h.guide[p] = set, int16(best)
			p++
		}
	}
	h.fresh = true
}
