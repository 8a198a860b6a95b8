package packing

import (
	"math"
	"math/bits"
	"slices"
)

// Solver searches for the best packing of one task, a slice at a time.
//
//	s, err := packing.New(task)
//	for st := s.Run(2000); !st.Done; st = s.Run(2000) {
//		show(st) // and return early to cancel; Run again to resume
//	}
//
// It is not for use by several goroutines at once. The same task gives the
// same steps and the same answer every time.
type Solver struct {
	in  *instance
	rel *relax

	best    []int16 // by kind and bag; nil is none yet
	value   float64 // of best, search value; the largest possible one if there is none
	tol     float64 // search value
	within  float64 // search value: the whole tolerance, of which tol is a part
	ripe    int     // effort at which a bound within that is good enough
	bound   float64 // of all, search value
	cut     float64 // bounds from here on are of no interest
	packing Packing

	tree       tree
	next       *frame // a node with the way to go at once, its first; nil for none
	spare      []*frame
	nodes      int
	done       bool
	anneal     *anneal
	sides      split
	seen       map[uint64]sidesFound
	gains      []gain // by kind and set, see branch
	list       []candidate
	amount     []float64 // by bag, and by group
	counts     []int16   // by kind and group
	share      []float64 // by group
	annealings int
	diving     bool // going on to the end, come what may
	dive       int  // node at which to do so next
	annealed   int  // effort spent on annealings
	spent      int  // effort in all, in nodes
	effort     int  // of the next annealing

	any    bool    // any packing of less than the first value will do, the fewer moves the better
	once   bool    // and the first one ends the search
	found  bool    // one has been, and is not taken note of yet
	seed   []int16 // one to begin from then, with too many moves
	fewer  *Solver // looks for a packing as good with fewer moves
	fewest bool    // there is none
	least  int     // no packing that is as good has fewer moves
	leap   int     // how many moves less are looked for at once
	unmet  int     // effort since one was found
}

// frame is a node of the search in hand, with the ways on from it.
type frame struct {
	state state
	ways  []way
}

// way is a decision: n pieces of a slot go into one of the bags `into`, and the
// others of that slot into one of `rest`.
type way struct {
	slot  int
	n     int
	into  uint64
	rest  uint64
	bound float64
}

// Status is where a search stands.
type Status struct {
	Incumbent float64 // aim of the best packing so far, +Inf if there is none
	Bound     float64 // no packing has a smaller aim
	Gap       float64 // Incumbent - Bound
	Nodes     int     // parts of the search looked at so far
	Proved    bool    // the gap is within the tolerance, or there is no packing; a better one may still come
	Moves     int     // of the best packing so far, see [Task.Moves]
	Fewest    bool    // no packing with an aim within the tolerance of the bound has fewer moves
	Done      bool    // the aim is proved, and the moves too, or that was given up
	Err       error   // when done without a packing: a *Shortage that says why
}

// New checks a task and prepares the search. The error is a *Fault or several
// of them joined when a field is wrong, and a *Shortage when counting shows
// that the goods cannot be packed. The task must not be changed while the
// solver is in use.
func New(t *Task) (*Solver, error) {
	if err := t.Check(); err != nil {
		return nil, err
	}
	return newSolver(t, math.Inf(1))
}

// newSolver prepares a search for any packing with an aim below a ceiling, or for
// the best when that is infinite.
func newSolver(t *Task, ceiling float64) (*Solver, error) {
	in, err := newInstance(t)
	if err != nil {
		return nil, err
	}
	s := &Solver{in: in, bound: math.Inf(-1)}
	s.tol = max(t.tolerance(), t.Rounding()) / in.unit
	s.within = t.Tolerance / in.unit
	s.value = in.ceiling()
	if s.any = !math.IsInf(ceiling, 1); s.any {
		s.value = min(s.value, (ceiling-in.zero)/in.unit)
	}
	s.cut = s.value
	s.rel = newRelax(in)
	s.rel = tighten(in, s.rel)
	s.anneal = newAnneal(in)
	if s.any {
		s.anneal.floor = s.value - 1e-6
	}
	s.sides.in = in
	s.amount = make([]float64, in.nb+len(in.group))
	s.gains = make([]gain, len(in.kinds)*(in.nb+len(in.group)))
	s.seen = map[uint64]sidesFound{}
	s.counts, s.share = make([]int16, len(in.kinds)*len(in.group)), make([]float64, len(in.group))
	s.start()
	root := s.frame()
	root.state.copyFrom(s.rel.root())
	s.enter(root)
	s.settleBound()
	return s, nil
}

// Rounding is the accuracy of the aim: packings closer than this are equal.
func (t *Task) Rounding() float64 { return 1e-11 * t.span() }

// Fine is a tolerance far below anything that can be weighed or felt: a
// millionth of what the aim can vary by.
func (t *Task) Fine() float64 { return 1e-6 * t.span() }

// span is roughly how much the aim can vary from one packing to another.
func (t *Task) span() float64 {
	if len(t.Bags) == 0 {
		return 0
	}
	var free float64
	all := t.Rest.M
	for i := range t.Goods {
		w := float64(t.Goods[i].Quantity) * t.Goods[i].Mass
		all += w
		if !t.Goods[i].Pinned {
			free += w
		}
	}
	if !(free > 0) {
		return 0
	}
	width := func(of func(b *Bag) float64) float64 {
		lo, hi := math.Inf(1), math.Inf(-1)
		for j := range t.Bags {
			x := of(&t.Bags[j])
			lo, hi = min(lo, x), max(hi, x)
		}
		return hi - lo
	}
	a := &t.Aim
	sum := width(t.perMass)
	sum += a.Balance * width(func(b *Bag) float64 { return b.Place.Y })
	if base := abs(t.FrontContact - t.RearContact); a.Front > 0 && base > 0 {
		sum += a.Front / base * width(func(b *Bag) float64 { return b.Place.X })
	}
	return sum * free / all
}

// ceiling is a search value that no packing exceeds.
func (in *instance) ceiling() float64 {
	var total, most float64
	for i := range in.kinds {
		total += float64(in.kinds[i].count) * in.kinds[i].m
	}
	most = total * slices.Max(append([]float64{0}, in.cost...))
	for a := range in.abs {
		// each row lies between 0 and total
		most += in.abs[a].w * max(abs(in.abs[a].rhs), abs(total-in.abs[a].rhs))
	}
	return most + 1e-6*(1+abs(most))
}

// Run looks at up to n more parts of the search.
func (s *Solver) Run(n int) Status {
	end := s.spent + n
	for !s.done && s.spent < end {
		s.step()
	}
	s.settleBound()
	for s.done && !s.settled() && s.spent < end {
		s.lessen(end - s.spent)
	}
	return s.Status()
}

// Status says where the search stands.
func (s *Solver) Status() Status {
	st := Status{Incumbent: math.Inf(1), Bound: s.in.unit*s.bound + s.in.zero, Nodes: s.nodes, Proved: s.done, Fewest: s.fewest, Done: s.done && s.settled()}
	if s.best != nil {
		// What goes on then is for a bound that leaves more packings to choose from.
		st.Proved = s.done || s.proves(s.bound)
		st.Incumbent, st.Moves = s.in.task.Figures(s.packing).Aim, s.in.task.Moves(s.packing)
		st.Bound = min(st.Bound, st.Incumbent)
		st.Gap = st.Incumbent - st.Bound
		return st
	}
	st.Gap = math.Inf(1)
	if s.done {
		st.Bound, st.Gap = math.Inf(1), 0
		st.Err = s.in.noWay()
	}
	return st
}

// Packing returns the best packing so far, nil if there is none yet.
func (s *Solver) Packing() Packing { return s.packing.Clone() }

// proves reports whether the best packing is within the whole tolerance of a bound.
func (s *Solver) proves(bound float64) bool { return bound >= s.value-s.within }

// step looks at one node.
func (s *Solver) step() {
	if s.anneal.left > 0 || s.annealDue() && (s.anneal.fresh || s.best != nil || s.seed != nil) {
		s.annealSome()
		return
	}
	if !s.any && s.within > s.tol && s.best != nil {
		if low := s.low(); s.proves(low) {
			switch {
			case s.ripe == 0:
				s.ripe = s.spent + s.spent/4 + ripening
			case s.spent >= s.ripe:
				s.cut = low
				s.finish()
				return
			}
		}
	}
	f, w, ok := s.choose()
	if !ok {
		s.finish()
		return
	}
	s.nodes++
	s.spent++
	f.state.bound = max(f.state.bound, w.bound)
	s.rel.allow(&f.state)
	if !s.take(&f.state, w) {
		s.drop(f)
		return
	}
	s.enter(f)
}

// A search goes on from the last node as long as that is not further above the
// least bound than this part of the gap; after so many nodes it dives to the end all
// the same. Where fewer moves are looked for it always does: any packing will do.
const (
	plunge    = 0.3
	diveEvery = 400
)

// choose takes the next way to go and the node that it leads on from: the best one
// on from the last node, or the one with the least bound of all.
func (s *Solver) choose() (*frame, way, bool) {
	if f := s.next; f != nil {
		s.next = nil
		if w := f.ways[0]; w.bound < s.cut {
			low := s.tree.low(s.cut)
			if s.any || s.diving || len(s.tree.stack) > 0 || w.bound <= low+plunge*(s.cut-low) {
				return f, w, true
			}
			s.tree.push(open{newNode(&f.state), w})
		}
		s.drop(f)
	}
	s.diving = false
	if s.nodes >= s.dive {
		s.diving = true
		s.dive = s.nodes + diveEvery
	}
	o, ok := s.tree.take(s.cut)
	if !ok {
		return nil, way{}, false
	}
	f := s.frame()
	o.node.restore(&f.state)
	s.rel.refactor(&f.state)
	return f, o.way, true
}

// low is the least bound of everything open.
func (s *Solver) low() float64 {
	low := s.tree.low(s.cut)
	if s.next != nil {
		low = min(low, s.next.ways[0].bound)
	}
	return low
}

// annealDue reports whether it is time to anneal again, which takes a part of all
// effort.
func (s *Solver) annealDue() bool {
	return len(s.anneal.kind) > 0 && s.annealed <= annealFirst+min(s.spent/annealPart, annealFull+s.spent/annealLate)
}

// annealSome spends some effort on the present annealing, or on a new one: little
// at a time, so that the caller gets its turn.
func (s *Solver) annealSome() {
	if s.anneal.left == 0 {
		if n := s.annealings % 3; n == 2 || n == 1 && s.any {
			s.anneal.fresh = false // from the best
		}
		s.annealings++
		s.effort = min(max(s.effort*5/4, annealLeast), annealMost)
		if s.any {
			s.effort = annealMost // a short one finds nothing better than what is good already
		}
		s.anneal.begin(s, s.effort)
	}
	effort := min(s.anneal.left, annealTurn)
	s.anneal.run(s, effort)
	s.annealed += effort
	s.spent += effort
}

// Annealing gets so many nodes' effort at first, and then a part of all effort. On
// tours the relaxation is close to the best packing from the start, and only the
// packing is missing. Once annealings have taken so much, what they have not found
// they hardly will, and their part is smaller: the proof is missing.
const (
	annealFirst = 250
	annealPart  = 3
	annealFull  = 10000
	annealLate  = 10
	annealLeast = 20   // a single annealing
	annealMost  = 300  // the same, once the short ones have been made
	annealTurn  = 20   // what is done of it in one go
	ripening    = 5000 // and a quarter of the effort so far: for a bound that leaves more to choose from
)

func (s *Solver) finish() {
	s.done = true
	s.tree, s.next = tree{}, nil
	if s.best != nil {
		s.bound = max(s.bound, s.cut)
	}
}

// settleBound takes the least bound of all that is still open.
func (s *Solver) settleBound() {
	if s.done {
		return
	}
	low := s.low()
	s.bound = max(s.bound, low)
	if low >= s.cut {
		s.finish()
	}
}

func (s *Solver) frame() *frame {
	if n := len(s.spare); n > 0 {
		f := s.spare[n-1]
		s.spare = s.spare[:n-1]
		f.ways = f.ways[:0]
		return f
	}
	return &frame{}
}

// drop keeps a frame that has been of use for another.
func (s *Solver) drop(f *frame) { s.spare = append(s.spare, f) }

// take carries out a decision; false means that the result is impossible.
func (s *Solver) take(st *state, w way) bool {
	k := s.rel.kindOf[w.slot]
	st.q[w.slot] -= int32(w.n)
	st.mask[w.slot] &= w.rest
	if st.q[w.slot] > 0 && st.mask[w.slot] == 0 {
		return false
	}
	into := w.into
	if w.n == 0 {
		return true
	}
	if into&(into-1) == 0 {
		return s.fix(st, k, bits.TrailingZeros64(into), w.n)
	}
	t := s.in.slotOf[s.in.groupOf[bits.TrailingZeros64(into)]]*len(s.in.kinds) + k
	if st.q[t] > 0 {
		// Pieces that were here before may have more bags left than the new
		// ones, or fewer: the wider set is safe.
		st.q[t] += int32(w.n)
		if st.mask[t]|into != st.mask[t] {
			st.mask[t] |= into
			s.rel.restart(st)
		}
		return true
	}
	st.q[t], st.mask[t] = int32(w.n), into
	if st.basic[t] != 0 {
		s.rel.restart(st)
	} else {
		s.rel.prices(st.pi, s.rel.K, s.rel.H, s.rel.E, true)
		st.key[t] = int8(s.rel.cheapest(st, t))
	}
	return true
}

// fix puts n pieces of a kind into a bag for good; false means that they do
// not fit.
func (s *Solver) fix(st *state, k, j, n int) bool {
	in := s.in
	kd := &in.kinds[k]
	mass, vol := float64(n)*kd.mass, float64(n)*kd.vol
	st.load[j] -= mass
	st.vol[j] -= vol
	// differences of nearly equal numbers: leave the last word to keeps
	if st.load[j] < -slack*kd.mass || st.vol[j] < -slack*kd.vol {
		return false
	}
	for l := range st.lim {
		w := mass * in.task.Limits[l].Share[j]
		st.lim[l] -= w
		if st.lim[l] < -slack*w {
			return false
		}
	}
	s.rel.addColumn(st.rhs, k, j, -float64(n))
	if in.moves != nil && st.rhs[in.moveRow] < -0.5 {
		return false
	}
	st.base += float64(n) * kd.m * in.cost[j]
	st.fixed[k*in.nb+j] += int16(n)
	return true
}

// propagate rules out bags that have no room for a piece any more and fixes
// pieces that have one bag left. It reports whether the state is possible.
func (s *Solver) propagate(st *state) bool {
	in := s.in
	for again := true; again; {
		again = false
		for t, q := range st.q {
			if q == 0 {
				continue
			}
			k := s.rel.kindOf[t]
			kd := &in.kinds[k]
			for mask := st.mask[t]; mask != 0; mask &= mask - 1 {
				j := bits.TrailingZeros64(mask)
				out := kd.mass > st.load[j]+slack*kd.mass || kd.vol > st.vol[j]+slack*kd.vol
				out = out || in.moves != nil && in.moves[k*in.nb+j] > st.rhs[in.moveRow]+0.5
				for l := range st.lim {
					w := kd.mass * in.task.Limits[l].Share[j]
					out = out || w > st.lim[l]+slack*w
				}
				if out {
					st.mask[t] &^= 1 << j
				}
			}
			m := st.mask[t]
			if m == 0 {
				return false
			}
			if m&(m-1) == 0 {
				st.q[t] = 0
				if !s.fix(st, k, bits.TrailingZeros64(m), int(q)) {
					return false
				}
				again = true
			}
		}
	}
	return true
}

// enter bounds a node and, if it is still of interest, finds the ways on.
func (s *Solver) enter(f *frame) {
	st := &f.state
	var res outcome
	for {
		if !s.propagate(st) {
			s.drop(f)
			return
		}
		res = s.rel.solve(st, s.cut)
		if res == cutOff {
			s.drop(f)
			return
		}
		if !s.ruleOut(st) {
			break
		}
	}
	if !slices.ContainsFunc(st.q, func(q int32) bool { return q > 0 }) {
		s.offer(st.fixed)
		s.drop(f)
		return
	}
	if v := s.twoGroupBound(st); v > st.bound {
		st.bound = v
		if v >= s.cut {
			s.drop(f)
			return
		}
	}
	if res == optimal && !s.anneal.fresh && s.annealDue() {
		s.anneal.follow(s.rel, st, s.annealings&1 == 1)
	}
	if s.whole(st, res == optimal) {
		s.drop(f)
		return
	}
	s.branch(f, res == optimal)
	if len(f.ways) == 0 || f.ways[0].bound >= s.cut {
		s.drop(f)
		return
	}
	s.next = f
	var node *node
	for _, w := range f.ways[1:] {
		if w.bound >= s.cut {
			break
		}
		if node == nil {
			node = newNode(st)
		}
		s.tree.push(open{node, w})
	}
}

// ruleOut takes bags out of the masks that would cost more than the gap. It
// reports whether that, or the room left, may have changed the relaxation's
// optimum.
func (s *Solver) ruleOut(st *state) bool {
	r := s.rel
	gap := s.cut - r.lagrange(st, st.pi)
	single := false
	for t, q := range st.q {
		if q == 0 {
			continue
		}
		least := math.Inf(1)
		for mask := st.mask[t]; mask != 0; mask &= mask - 1 {
			j := bits.TrailingZeros64(mask) & 31
			least = min(least, r.price(t, j))
		}
		for mask := st.mask[t]; mask != 0; mask &= mask - 1 {
			j := bits.TrailingZeros64(mask) & 31
			if r.price(t, j)-least > gap {
				st.mask[t] &^= 1 << j
			}
		}
		if n := st.mask[t]; n&(n-1) == 0 {
			single = true
		}
	}
	return single
}

// whole checks whether the groups of all pieces are settled, by decision or
// because the relaxation does not cut any piece between groups. It then looks for
// the best sides, and reports whether that settles the node.
func (s *Solver) whole(st *state, solved bool) bool {
	in := s.in
	ng, nk := len(in.group), len(in.kinds)
	counts := s.counts
	clear(counts)
	for k := range nk {
		for g, set := range in.group {
			for ; set != 0; set &= set - 1 {
				counts[k*ng+g] += st.fixed[k*in.nb+bits.TrailingZeros64(set)]
			}
		}
	}
	leaf := true
	for t, q := range st.q {
		if q == 0 {
			continue
		}
		k := s.rel.kindOf[t]
		if t >= nk {
			counts[k*ng+in.wide[t/nk-1]] += int16(q)
			continue
		}
		leaf = leaf && st.mask[t]&^in.group[in.groupOf[bits.TrailingZeros64(st.mask[t])]] == 0
		if st.basic[t] == 0 {
			counts[k*ng+in.groupOf[st.key[t]]] += int16(q)
			continue
		}
		if !solved {
			return false
		}
		sum := s.share
		clear(sum)
		left := float64(q)
		for p, h := range st.head {
			if h >= 0 && int(h>>8) == t {
				sum[in.groupOf[h&255]] += st.x[p]
				left -= st.x[p]
			}
		}
		sum[in.groupOf[st.key[t]]] += left
		for g, x := range sum {
			n := math.Round(x)
			if abs(x-n) > 1e-7 || n < 0 {
				return false
			}
			counts[k*ng+g] += int16(n)
		}
	}
	if !solved && !leaf {
		return false
	}
	s.try(counts)
	known := s.seen[hash(counts)]
	// a node that is settled for the aim may still have fewer moves
	return leaf && known.exact || !s.any && known.value <= st.bound+max(s.tol, 1e-10)
}

// try finds the sides for counts by kind and group, unless it has done so
// before.
func (s *Solver) try(counts []int16) bool {
	key := hash(counts)
	if _, ok := s.seen[key]; ok {
		return false
	}
	best, exact := s.sides.sides(counts, 0)
	known := sidesFound{math.Inf(1), exact}
	if best != nil && s.in.keeps(best) {
		s.offer(best)
		known.value = s.in.value(best)
	}
	if len(s.seen) >= 1<<14 {
		clear(s.seen)
	}
	s.seen[key] = known
	return true
}

type sidesFound struct {
	value float64
	exact bool
}

// hash is FNV-1a.
func hash(counts []int16) uint64 {
	h := uint64(14695981039346656037)
	for _, c := range counts {
		h = (h ^ uint64(c)) * 1099511628211
	}
	return h
}

// value is the search value of a packing by kind and bag.
func (in *instance) value(counts []int16) float64 {
	var sum float64
	for a := range in.abs {
		var x float64
		for k := range in.kinds {
			for j := range in.nb {
				if n := counts[k*in.nb+j]; n != 0 {
					x += float64(n) * in.kinds[k].m * in.at[a*in.nb+j]
				}
			}
		}
		sum += in.abs[a].w * abs(x-in.abs[a].rhs)
	}
	for k := range in.kinds {
		for j := range in.nb {
			sum += float64(counts[k*in.nb+j]) * in.kinds[k].m * in.cost[j]
		}
	}
	return sum
}

// keeps reports whether a packing by kind and bag keeps every limit.
func (in *instance) keeps(counts []int16) bool {
	lim := slices.Clone(in.lim)
	for j := range in.nb {
		var mass, vol float64
		for k := range in.kinds {
			n := float64(counts[k*in.nb+j])
			mass += n * in.kinds[k].mass
			vol += n * in.kinds[k].vol
		}
		if mass > in.load[j] || vol > in.vol[j] {
			return false
		}
		for l := range lim {
			lim[l] -= mass * in.task.Limits[l].Share[j]
		}
	}
	moves := 0.0
	for i, n := range in.moves {
		moves += n * float64(counts[i])
	}
	if in.moves != nil && moves > in.most+0.5 {
		return false
	}
	for l := range lim {
		if lim[l] < -slack*in.task.Limits[l].Permitted {
			return false
		}
	}
	return true
}

// offer takes a packing as the best so far if it is better.
func (s *Solver) offer(counts []int16) {
	if !s.in.keeps(counts) {
		return
	}
	v := s.in.value(counts)
	if (s.best != nil || s.any) && v >= s.value {
		return
	}
	if s.best == nil {
		s.best = make([]int16, 0, len(counts)) // not nil, also when nothing is left to choose
	}
	s.best = append(s.best[:0], counts...)
	s.packing = s.in.unfold(counts)
	if !s.any {
		s.value = v
		s.cut = v - s.tol
		return
	}
	s.found = true
	s.in.allow(s.in.task.Moves(s.packing) - 1)
	if s.once {
		s.finish()
	}
}

// start takes the task's own packing as the first, if it keeps the limits.
func (s *Solver) start() {
	t := s.in.task
	if t.Start == nil || t.Keeps(t.Start) != nil {
		return
	}
	s.offer(s.in.fold(t.Start))
}

// fold turns a packing by good into counts by kind. It need not keep the limits,
// but has all goods.
func (in *instance) fold(p Packing) []int16 {
	t, left := in.task, p.Clone()
	counts := make([]int16, len(in.kinds)*in.nb)
	put := func(k, j, most int, src *source) int {
		i := src.goods[0]
		n := min(most, left[i][j]/src.of(t, i))
		left[i][j] -= n * src.of(t, i)
		counts[k*in.nb+j] += int16(n)
		return most - n
	}
	for _, home := range []bool{true, false} { // what stays first
		for k := range in.kinds {
			for i := range in.kinds[k].from {
				src := &in.kinds[k].from[i]
				todo := src.count
				if src.home >= 0 {
					stays := min(todo, t.Start[src.goods[0]][src.home], p[src.goods[0]][src.home])
					if home {
						put(k, src.home, stays, src)
						continue
					}
					todo -= stays
				} else if home {
					continue
				}
				for j := range in.nb {
					todo = put(k, j, todo, src)
				}
			}
		}
	}
	return counts
}

// unfold turns counts by kind into a packing by good. Pieces stay where the
// task's start has them as far as the counts allow.
func (in *instance) unfold(counts []int16) Packing {
	t, p := in.task, in.idle.Clone()
	for k := range in.kinds {
		left := make([]int, in.nb)
		for j := range left {
			left[j] = int(counts[k*in.nb+j])
		}
		from := in.kinds[k].from
		todo := make([]int, len(from))
		put := func(n, j, most int) {
			src := &from[n]
			most = min(most, left[j], todo[n])
			for _, i := range src.goods {
				p[i][j] += most * src.of(t, i)
			}
			left[j] -= most
			todo[n] -= most
		}
		for n := range from {
			src := &from[n]
			todo[n] = src.count
			for j := range left {
				if t.Start != nil && (src.home < 0 || src.home == j) {
					put(n, j, t.Start[src.goods[0]][j]/src.of(t, src.goods[0]))
				}
			}
		}
		for n := range from {
			for j := range left {
				put(n, j, todo[n])
			}
		}
	}
	return p
}
