package packing

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
	"sort"
)

// slack is how far a limit may be exceeded and still count as kept, as a part
// of itself: ten times 0.1 l fit into 1 l.
const slack = 1e-9

// kind is a set of pieces that are equal in all that counts: mass, volume and
// the bags that they may go into.
type kind struct {
	mass, vol float64 // of one piece, kg and l
	m, v      float64 // of one piece, in units of the mean piece
	count     int
	grains    int64  // mass of one piece in milligrams, 0 if that is not a whole number
	mask      uint64 // bags allowed
	moves     string // how many moves it takes to have a piece in each bag, where these count
	from      []source
}

// source is where the pieces of a kind come from: single pieces of one good, or
// one lump of all the pieces of goods that stay together.
type source struct {
	goods []int
	count int
	lump  bool
	home  int // the bag that single pieces start in, where moves count; else -1
}

// of is how many pieces of a good a piece of the kind stands for.
func (s *source) of(t *Task, good int) int {
	if s.lump {
		return t.Goods[good].Quantity
	}
	return 1
}

// absolute is a term w |Σ m_i at_j x_ij - rhs|.
type absolute struct{ w, rhs float64 }

// instance is a task reduced to what matters to the search: pinned pieces are
// added to the rest, equal pieces are counted together, and everything is
// measured in mean pieces and in the span of the aim.
//
// The rows of the relaxation come in this order: absolute values, limits on
// several bags, loads of bags, volumes of bags, moves. The first two kinds have a
// coefficient for each bag, in `at`; the next two only for their own, and the
// moves one for each kind and bag.
type instance struct {
	task  *Task
	kinds []kind
	nb    int

	cost []float64 // per bag and unit of mass, smallest 0
	abs  []absolute
	side int       // the row that is the balance, -1 for none
	at   []float64 // dense rows, row by row
	// dense counts the absolute values and limits, rows all of them.
	dense, rows     int
	loadRow, volRow []int     // row of each bag, -1 for none
	moveRow         int       // row of the moves, -1 for none
	moves           []float64 // by kind and bag; nil where they do not count
	most            float64   // moves that are left to the free pieces
	rhs             []float64
	plain           int // rows that are not cuts
	cuts            []cut
	cutsOf          [][]int // by bag

	load, vol, lim []float64 // what limits leave to free pieces, kg and l, with slack; Inf for none

	meanMass   float64 // kg, of a piece
	unit, zero float64 // aim = unit × search value + zero
	span       float64 // how far the aim can vary, roughly

	group   []uint64 // sets of bags that differ only in their side, or not at all
	groupOf []int    // of each bag
	wide    []int    // groups of several bags
	slotOf  []int    // of each group: which of a kind's slots is for it
	idle    Packing  // pieces settled before the search: pinned, or of no size
	pins    []int    // the bag that a good stays in, with what it is kept together with; -1 for none
	pieces  int
}

// newInstance expects a task that has passed Check.
func newInstance(t *Task) (*instance, error) {
	in := &instance{task: t, nb: len(t.Bags), side: -1, moveRow: -1, idle: make(Packing, len(t.Goods))}
	for i := range in.idle {
		in.idle[i] = make([]int, in.nb)
	}
	in.limits()
	if err := in.pin(); err != nil {
		return nil, err
	}
	if err := in.settle(); err != nil {
		return nil, err
	}
	if err := in.gather(); err != nil {
		return nil, err
	}
	in.price()
	in.pair()
	return in, nil
}

func (in *instance) limits() {
	t := in.task
	in.load, in.vol, in.lim = make([]float64, in.nb), make([]float64, in.nb), make([]float64, len(t.Limits))
	for j := range t.Bags {
		in.load[j], in.vol[j] = math.Inf(1), math.Inf(1)
		if b := &t.Bags[j]; b.Permitted > 0 {
			in.load[j] = b.Permitted * (1 + slack)
		}
		if b := &t.Bags[j]; b.Volume > 0 {
			in.vol[j] = b.Volume * (1 + slack)
		}
	}
	for l := range t.Limits {
		in.lim[l] = t.Limits[l].Permitted * (1 + slack)
	}
}

// pin finds the goods that stay in a bag: those that are pinned, and what is kept
// together with them.
func (in *instance) pin() error {
	t := in.task
	in.pins = make([]int, len(t.Goods))
	pinned := map[int]int{} // a good, by group
	for i := range t.Goods {
		g := &t.Goods[i]
		if in.pins[i] = -1; !g.Pinned || g.Quantity == 0 {
			continue
		}
		in.pins[i] = g.In
		if g.Group == 0 {
			continue
		}
		if o, ok := pinned[g.Group]; ok && in.pins[o] != g.In {
			return in.apart(o, i)
		}
		pinned[g.Group] = i
	}
	for i := range t.Goods {
		g := &t.Goods[i]
		if o, ok := pinned[g.Group]; ok && g.Group != 0 && g.Quantity > 0 && in.pins[i] < 0 {
			in.pins[i] = in.pins[o]
			for _, f := range t.Forbidden {
				if f.Good == i && f.Bag == in.pins[i] {
					return in.apart(o, i)
				}
			}
		}
	}
	return nil
}

// settle puts the pinned goods into their bags.
func (in *instance) settle() error {
	t := in.task
	for i := range t.Goods {
		g := &t.Goods[i]
		j, n := in.pins[i], float64(g.Quantity)
		if j < 0 {
			continue
		}
		in.idle[i][j] += g.Quantity
		in.load[j] -= n * g.Mass
		in.vol[j] -= n * g.Volume
		for l := range t.Limits {
			in.lim[l] -= n * g.Mass * t.Limits[l].Share[j]
		}
	}
	return in.pinnedShortage()
}

// fits reports whether so much may be added to a bag.
func (in *instance) fits(j int, mass, vol float64) bool {
	if mass > in.load[j] || vol > in.vol[j] {
		return false
	}
	for l := range in.lim {
		if mass*in.task.Limits[l].Share[j] > max(in.lim[l], 0) {
			return false
		}
	}
	return true
}

// sources are the goods that are free to move: lumps of those that stay together,
// and single pieces, by the bag that they start in where moves count.
func (in *instance) sources() []source {
	t := in.task
	var list []source
	at := map[int]int{} // of a group in the list
	for i := range t.Goods {
		g := &t.Goods[i]
		if in.pins[i] >= 0 || g.Quantity == 0 {
			continue
		}
		if g.lump() {
			if k, ok := at[g.Group]; ok && g.Group != 0 {
				list[k].goods = append(list[k].goods, i)
				continue
			}
			at[g.Group] = len(list)
			list = append(list, source{[]int{i}, 1, true, -1})
			continue
		}
		left := g.Quantity
		if t.AtMost != nil && t.Start != nil {
			for j, n := range t.Start[i] {
				if n = min(n, left); n > 0 {
					list = append(list, source{[]int{i}, n, false, j})
					left -= n
				}
			}
		}
		if left > 0 {
			list = append(list, source{[]int{i}, left, false, -1})
		}
	}
	return list
}

// away is how many moves it takes to have a piece of a source in each bag.
func (in *instance) away(s *source) string {
	moves := make([]rune, in.nb)
	for _, i := range s.goods {
		was := 0
		for _, n := range in.task.Start[i] {
			was += n
		}
		for j, n := range in.task.Start[i] {
			if s.lump && n < was || s.home >= 0 && s.home != j {
				moves[j]++
			}
		}
	}
	return string(moves)
}

// gather makes kinds of the goods that are free to move.
func (in *instance) gather() error {
	t := in.task
	forbidden := make([]uint64, len(t.Goods))
	for _, p := range t.Forbidden {
		forbidden[p.Good] |= 1 << p.Bag
	}
	count := t.AtMost != nil && t.Start != nil
	type key struct {
		mass, vol float64
		mask      uint64
		moves     string
	}
	seen := map[key]int{}
	for _, s := range in.sources() {
		var k key
		var not uint64
		for _, i := range s.goods {
			n := float64(s.of(t, i))
			k.mass, k.vol = k.mass+n*t.Goods[i].Mass, k.vol+n*t.Goods[i].Volume
			not |= forbidden[i]
		}
		for j := range in.nb {
			if not>>j&1 == 0 && in.fits(j, k.mass, k.vol) {
				k.mask |= 1 << j
			}
		}
		if k.mask == 0 {
			return in.pieceShortage(&s, k.mass, k.vol, not)
		}
		if k.mass == 0 && k.vol == 0 {
			j := in.nearest(&s, k.mask)
			for _, i := range s.goods {
				in.idle[i][j] += s.count * s.of(t, i)
			}
			continue
		}
		if count {
			k.moves = in.away(&s)
		}
		at, ok := seen[k]
		if !ok {
			at = len(in.kinds)
			seen[k] = at
			in.kinds = append(in.kinds, kind{mass: k.mass, vol: k.vol, mask: k.mask, moves: k.moves, grains: grains(k.mass)})
		}
		in.kinds[at].count += s.count
		in.kinds[at].from = append(in.kinds[at].from, s)
		in.pieces += s.count
	}
	// Heavy first, so that the order of the goods in the task does not matter.
	sort.SliceStable(in.kinds, func(i, j int) bool {
		a, b := &in.kinds[i], &in.kinds[j]
		return cmp.Or(cmp.Compare(b.mass, a.mass), cmp.Compare(b.vol, a.vol), cmp.Compare(a.mask, b.mask), cmp.Compare(a.moves, b.moves)) < 0
	})
	if count {
		if in.most = float64(*t.AtMost - t.Moves(in.idle)); in.most < 0 {
			return in.noWay()
		}
		for i := range in.kinds {
			for _, n := range in.kinds[i].moves {
				in.moves = append(in.moves, float64(n))
			}
		}
	}
	return in.shortage()
}

// nearest is the bag for what has no size: of those allowed the one that most of
// it starts in.
func (in *instance) nearest(s *source, mask uint64) int {
	best, most := bits.TrailingZeros64(mask), 0
	for ; mask != 0 && in.task.Start != nil; mask &= mask - 1 {
		j, n := bits.TrailingZeros64(mask), 0
		for _, i := range s.goods {
			n += in.task.Start[i][j]
		}
		if n > most {
			best, most = j, n
		}
	}
	return best
}

// price measures masses, volumes and the aim.
func (in *instance) price() {
	t := in.task
	var mass, vol float64
	for i := range in.kinds {
		k := &in.kinds[i]
		mass += float64(k.count) * k.mass
		vol += float64(k.count) * k.vol
	}
	meanMass, meanVol := mean(mass, in.pieces), mean(vol, in.pieces)
	in.meanMass = meanMass
	for i := range in.kinds {
		in.kinds[i].m, in.kinds[i].v = in.kinds[i].mass/meanMass, in.kinds[i].vol/meanVol
	}

	// The rest and the idle goods are settled already.
	settled := t.Rest.M
	s := t.Rest.S
	square, steered := t.restSquare(), t.RestSteered
	for i := range in.idle {
		for j, n := range in.idle[i] {
			w := float64(n) * t.Goods[i].Mass
			settled += w
			s = s.Add(t.Bags[j].Place.Scale(w))
			square += w * t.square(t.Bags[j].Place)
			steered += w * t.Bags[j].Steered
		}
	}
	all := settled + mass
	in.cost = make([]float64, in.nb)
	in.unit = 1
	if mass == 0 || all == 0 {
		in.zero = t.Figures(in.idle).Aim
		in.rowsOf(meanMass, meanVol)
		return
	}

	// Aim = a constant + (mass of a mean piece / all) × Σ m cost, and so on.
	for j := range in.cost {
		in.cost[j] = t.perMass(&t.Bags[j])
	}
	least := slices.Min(in.cost)
	span := slices.Max(in.cost) - least
	in.zero = (t.Aim.Low*s.Z+t.Aim.Middle*square+t.Aim.Steered*steered)/all + least*mass/all
	for j := range in.cost {
		in.cost[j] -= least
	}
	base := t.FrontContact - t.RearContact
	front, side := make([]float64, in.nb), make([]float64, in.nb)
	for j := range front {
		if t.Aim.Front > 0 {
			front[j] = (t.Bags[j].Place.X - t.RearContact) / base
		}
		side[j] = t.Bags[j].Place.Y
	}
	for n, term := range []struct {
		w, rhs float64 // rhs: what the free pieces should make together, kg times the row's unit
		at     []float64
	}{
		{t.Aim.Front, t.Aim.FrontShare*all - (s.X-t.RearContact*settled)/base, front},
		{t.Aim.Balance, -s.Y, side},
	} {
		if term.w == 0 {
			continue
		}
		lo := slices.Min(term.at)
		width := slices.Max(term.at) - lo
		if width == 0 {
			in.zero += term.w * abs(lo*mass-term.rhs) / all
			continue
		}
		for j := range term.at {
			in.at = append(in.at, (term.at[j]-lo)/width)
		}
		if n == 1 {
			in.side = len(in.abs)
		}
		in.abs = append(in.abs, absolute{term.w * width, (term.rhs - lo*mass) / width / meanMass})
		span += term.w * width
	}
	if span > 0 {
		in.unit = span * meanMass / all
		for j := range in.cost {
			in.cost[j] /= span
		}
		for a := range in.abs {
			in.abs[a].w /= span
		}
	}
	in.span = span * mass / all
	in.rowsOf(meanMass, meanVol)
}

// mean is a positive size to measure in.
func mean(sum float64, n int) float64 {
	if sum <= 0 || n == 0 {
		return 1
	}
	return sum / float64(n)
}

// rowsOf sets up the rows, leaving out limits that cannot be reached.
func (in *instance) rowsOf(meanMass, meanVol float64) {
	t := in.task
	in.loadRow, in.volRow = make([]int, in.nb), make([]int, in.nb)
	for _, a := range in.abs {
		in.rhs = append(in.rhs, a.rhs)
	}
	for l := range t.Limits {
		var most float64
		for i := range in.kinds {
			k := &in.kinds[i]
			var share float64
			for j := range in.nb {
				if k.mask>>j&1 != 0 {
					share = max(share, t.Limits[l].Share[j])
				}
			}
			most += float64(k.count) * k.mass * share
		}
		if most > in.lim[l] {
			in.at = append(in.at, t.Limits[l].Share...)
			in.rhs = append(in.rhs, max(in.lim[l], 0)/meanMass)
		}
	}
	in.dense = len(in.rhs)
	for j := range in.nb {
		var m float64
		for i := range in.kinds {
			if k := &in.kinds[i]; k.mask>>j&1 != 0 {
				m += float64(k.count) * k.mass
			}
		}
		in.loadRow[j] = -1
		if m > in.load[j] {
			in.loadRow[j] = len(in.rhs)
			in.rhs = append(in.rhs, in.load[j]/meanMass)
		}
	}
	for j := range in.nb {
		var v float64
		for i := range in.kinds {
			if k := &in.kinds[i]; k.mask>>j&1 != 0 {
				v += float64(k.count) * k.vol
			}
		}
		in.volRow[j] = -1
		if v > in.vol[j] {
			in.volRow[j] = len(in.rhs)
			in.rhs = append(in.rhs, in.vol[j]/meanVol)
		}
	}
	if in.moves != nil {
		in.moveRow = len(in.rhs)
		in.rhs = append(in.rhs, in.most)
	}
	in.rows, in.plain = len(in.rhs), len(in.rhs)
	in.cutsOf = make([][]int, in.nb)
}

// pair finds the bags that differ only in their side: those that are equal in
// everything that the aim depends on except the balance. Where moves count, no two
// are.
func (in *instance) pair() {
	const same = 1e-9
	done := uint64(0)
	for a := range in.nb {
		if done>>a&1 != 0 {
			continue
		}
		set := uint64(1) << a
		for b := a + 1; b < in.nb; b++ {
			equal := in.moves == nil && abs(in.cost[a]-in.cost[b]) <= same
			for r := range in.dense {
				if r != in.side {
					equal = equal && abs(in.at[r*in.nb+a]-in.at[r*in.nb+b]) <= same
				}
			}
			if equal && done>>b&1 == 0 {
				set |= 1 << b
			}
		}
		done |= set
		in.slotOf = append(in.slotOf, 0)
		if set&(set-1) != 0 {
			in.wide = append(in.wide, len(in.group))
			in.slotOf[len(in.group)] = len(in.wide)
		}
		in.group = append(in.group, set)
	}
	in.groupOf = make([]int, in.nb)
	for g, set := range in.group {
		for ; set != 0; set &= set - 1 {
			in.groupOf[bits.TrailingZeros64(set)] = g
		}
	}
}

// allow has all packings from here on take so many moves at most.
func (in *instance) allow(moves int) {
	in.most = float64(moves - in.task.Moves(in.idle))
	in.rhs[in.moveRow] = in.most
}
