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
	from      []source
}

// source is where the pieces of a kind come from. Each stands for `pieces`
// pieces of the good: 1, or all of them if they stay together.
type source struct{ good, count, pieces int }

// absolute is a term w |Σ m_i at_j x_ij - rhs|.
type absolute struct{ w, rhs float64 }

// instance is a task reduced to what matters to the search: pinned pieces are
// added to the rest, equal pieces are counted together, and everything is
// measured in mean pieces and in the span of the aim.
//
// The rows of the relaxation come in this order: absolute values, limits on
// several bags, loads of bags, volumes of bags. The first two kinds have a
// coefficient for each bag, in `at`; the others only for their own.
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
	loadRow, volRow []int // row of each bag, -1 for none
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
	pieces  int
}

// newInstance expects a task that has passed Check.
func newInstance(t *Task) (*instance, error) {
	in := &instance{task: t, nb: len(t.Bags), side: -1, idle: make(Packing, len(t.Goods))}
	for i := range in.idle {
		in.idle[i] = make([]int, in.nb)
	}
	in.limits()
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

// settle puts the pinned goods into their bags.
func (in *instance) settle() error {
	t := in.task
	for i := range t.Goods {
		g := &t.Goods[i]
		if !g.Pinned || g.Quantity == 0 {
			continue
		}
		j, n := g.In, float64(g.Quantity)
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

// gather makes kinds of the goods that are free to move.
func (in *instance) gather() error {
	t := in.task
	forbidden := make([]uint64, len(t.Goods))
	for _, p := range t.Forbidden {
		forbidden[p.Good] |= 1 << p.Bag
	}
	type key struct {
		mass, vol float64
		mask      uint64
	}
	seen := map[key]int{}
	for i := range t.Goods {
		g := &t.Goods[i]
		if g.Pinned || g.Quantity == 0 {
			continue
		}
		s := source{i, g.Quantity, 1}
		if g.Together {
			s = source{i, 1, g.Quantity}
		}
		k := key{float64(s.pieces) * g.Mass, float64(s.pieces) * g.Volume, 0}
		for j := range in.nb {
			if forbidden[i]>>j&1 == 0 && in.fits(j, k.mass, k.vol) {
				k.mask |= 1 << j
			}
		}
		if k.mask == 0 {
			return in.pieceShortage(i, s.pieces, forbidden[i])
		}
		if k.mass == 0 && k.vol == 0 {
			in.idle[i][bits.TrailingZeros64(k.mask)] += g.Quantity
			continue
		}
		at, ok := seen[k]
		if !ok {
			at = len(in.kinds)
			seen[k] = at
			in.kinds = append(in.kinds, kind{mass: k.mass, vol: k.vol, mask: k.mask, grains: grains(k.mass)})
		}
		in.kinds[at].count += s.count
		in.kinds[at].from = append(in.kinds[at].from, s)
		in.pieces += s.count
	}
	// Heavy first, so that the order of the goods in the task does not matter.
	sort.SliceStable(in.kinds, func(i, j int) bool {
		a, b := &in.kinds[i], &in.kinds[j]
		return cmp.Or(cmp.Compare(b.mass, a.mass), cmp.Compare(b.vol, a.vol), cmp.Compare(a.mask, b.mask)) < 0
	})
	return in.shortage()
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
	square := t.restSquare()
	for i := range in.idle {
		for j, n := range in.idle[i] {
			w := float64(n) * t.Goods[i].Mass
			settled += w
			s = s.Add(t.Bags[j].Place.Scale(w))
			square += w * t.square(t.Bags[j].Place)
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
		r := t.Bags[j].Place
		in.cost[j] = t.Aim.Low*r.Z + t.Aim.Middle*t.square(r)
	}
	least := slices.Min(in.cost)
	span := slices.Max(in.cost) - least
	in.zero = (t.Aim.Low*s.Z+t.Aim.Middle*square)/all + least*mass/all
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
	in.rows, in.plain = len(in.rhs), len(in.rhs)
	in.cutsOf = make([][]int, in.nb)
}

// pair finds the bags that differ only in their side: those that are equal in
// everything that the aim depends on except the balance.
func (in *instance) pair() {
	const same = 1e-9
	done := uint64(0)
	for a := range in.nb {
		if done>>a&1 != 0 {
			continue
		}
		set := uint64(1) << a
		for b := a + 1; b < in.nb; b++ {
			equal := abs(in.cost[a]-in.cost[b]) <= same
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
