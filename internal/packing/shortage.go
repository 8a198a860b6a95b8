package packing

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
	"sort"
	"strconv"

	"steelyard/internal/words"
)

// Shortage says why a task cannot be done: which limit is in the way, and by
// how much it is short.
type Shortage struct {
	Reason  Reason
	Goods   []int   // the goods that need the room
	Bags    []int   // the bags that could give it
	Limit   int     // index of the limit, -1 if it is none
	Short   float64 // how much is missing, kg or l; 0 if the totals would do
	message words.Message
}

// Reason is the sort of a shortage.
type Reason int

// The reasons, from those that counting shows to those that only a search does.
const (
	PinnedLoad   Reason = iota // pinned goods are heavier than their bag permits
	PinnedVolume               // pinned goods are larger than their bag
	PinnedLimit                // pinned goods exceed a limit on several bags
	PieceLoad                  // a piece is heavier than any allowed bag permits
	PieceVolume                // a piece is larger than any allowed bag
	PieceForbids               // a piece has no allowed bag at all, or none with both room and load left
	TotalLoad                  // goods are heavier than all their bags together permit
	TotalVolume                // goods are larger than all their bags together
	TotalLimit                 // goods are heavier than a limit on several bags permits
	NoWay                      // each total would do, but no packing keeps every limit
	GroupApart                 // goods of a group are pinned apart, or where one of them may not be
)

// Error explains the shortage in English: a piece of a sentence without a full stop.
func (s *Shortage) Error() string { return s.message.String() }

// In explains the shortage in a language: a piece of a sentence without a full
// stop.
func (s *Shortage) In(w *words.Words) string { return s.message.In(w) }

// names lists goods or bags for a person, the first few by name.
func names(n int, index []int, name func(int) words.Message) words.Message {
	if len(index) == n && n > 1 {
		return words.Tell("packing.all")
	}
	const few = 4
	var list words.Row
	for k, i := range index {
		if k == few && len(index) > few+1 {
			return words.Tell("packing.names.more", "names", list, "n", len(index)-few)
		}
		list = append(list, name(i))
	}
	return words.Tell("packing.names", "names", list)
}

func (in *instance) bag(j int) words.Message  { return title("bag", j, in.task.Bags[j].Name) }
func (in *instance) good(i int) words.Message { return title("good", i, in.task.Goods[i].Name) }

// amount is a mass or a volume, written so that a shortage is never shown as 0.
func amount(x float64, unit string) words.Message {
	digits := 4
	if x < 0.01 && x != 0 {
		digits = 2
	}
	n, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	return words.Tell("packing.amount", "n", words.Number(n), "unit", unit)
}

// pinnedShortage checks whether the pinned goods alone are too much.
func (in *instance) pinnedShortage() error {
	t := in.task
	pinned := func(j int) (goods []int) {
		for i := range t.Goods {
			if in.idle[i][j] > 0 {
				goods = append(goods, i)
			}
		}
		return goods
	}
	for j := range t.Bags {
		for _, side := range []struct {
			left, limit float64
			reason      Reason
			unit, key   string
		}{
			{in.load[j], t.Bags[j].Permitted, PinnedLoad, "kg", "packing.pinned.load"},
			{in.vol[j], t.Bags[j].Volume, PinnedVolume, "l", "packing.pinned.volume"},
		} {
			if side.left < 0 {
				short := slack*side.limit - side.left
				return &Shortage{side.reason, pinned(j), []int{j}, -1, short, words.Tell(side.key,
					"bag", in.bag(j), "limit", amount(side.limit, side.unit), "short", amount(short, side.unit))}
			}
		}
	}
	for l := range t.Limits {
		if in.lim[l] >= 0 {
			continue
		}
		m := &t.Limits[l]
		var goods, bags []int
		for j := range t.Bags {
			if m.Share[j] > 0 {
				bags = append(bags, j)
				goods = append(goods, pinned(j)...)
			}
		}
		slices.Sort(goods)
		short := slack*m.Permitted - in.lim[l]
		return &Shortage{PinnedLimit, slices.Compact(goods), bags, l, short, words.Tell("packing.pinned.limit",
			"limit", title("limit", l, m.Name), "permitted", amount(m.Permitted, "kg"), "short", amount(short, "kg"))}
	}
	return nil
}

// apart says that two goods of a group cannot lie in one bag.
func (in *instance) apart(a, b int) error {
	s := &Shortage{Reason: GroupApart, Goods: []int{a, b}, Bags: []int{in.pins[a]}, Limit: -1}
	if j := in.pins[b]; j != in.pins[a] {
		s.Bags = append(s.Bags, j)
	}
	s.message = words.Tell("packing.apart", "one", in.good(a), "bag", in.bag(in.pins[a]), "other", in.good(b))
	return s
}

// pieceShortage says why a single piece of a good, or all that stays together,
// goes into no bag at all.
func (in *instance) pieceShortage(src *source, mass, vol float64, forbidden uint64) error {
	t := in.task
	var bags []int
	var lim, load, room float64
	for j := range in.nb {
		if forbidden>>j&1 != 0 {
			continue
		}
		bags = append(bags, j)
		most := in.load[j]
		for l := range in.lim {
			if s := t.Limits[l].Share[j]; s > 0 {
				most = min(most, max(in.lim[l], 0)/s)
			}
		}
		load, room = max(load, most), max(room, in.vol[j])
		lim = max(lim, in.load[j])
	}
	s := &Shortage{Reason: PieceForbids, Goods: src.goods, Bags: bags, Limit: -1}
	var list words.Row
	number := ".one"
	for _, i := range src.goods {
		what := in.good(i)
		if n := src.of(t, i); n > 1 && len(src.goods) == 1 {
			what, number = words.Tell("packing.pieces", "n", n, "good", what), ".many"
		}
		list = append(list, what)
	}
	what := list[0]
	if len(list) > 1 {
		what, number = words.Tell("packing.group", "goods", words.Tell("packing.names", "names", list)), ".many"
	}
	switch {
	case len(bags) == 0:
		s.message = words.Tell("packing.forbidden", "what", what)
	case vol > room:
		s.Reason, s.Short = PieceVolume, vol-room
		s.message = words.Tell("packing.piece.volume"+number, "what", what, "is", amount(vol, "l"), "most", amount(room, "l"), "short", amount(s.Short, "l"))
	case mass > load:
		s.Reason, s.Short = PieceLoad, mass-load
		s.message = words.Tell("packing.piece.load"+number, "what", what, "is", amount(mass, "kg"), "most", amount(load, "kg"), "short", amount(s.Short, "kg"))
	default:
		s.message = words.Tell("packing.piece.both", "what", what, "mass", amount(mass, "kg"), "volume", amount(vol, "l"))
	}
	return s
}

// shortage counts: some goods can only go into some of the bags, and these
// bags must have the room. It looks at all bags together, at each set of bags
// that a kind is confined to, and at the limits on several bags.
func (in *instance) shortage() error {
	sets := []uint64{1<<in.nb - 1}
	for i := range in.kinds {
		sets = append(sets, in.kinds[i].mask)
	}
	sort.Slice(sets, func(i, j int) bool {
		a, b := sets[i], sets[j]
		return cmp.Or(bits.OnesCount64(b)-bits.OnesCount64(a), cmp.Compare(a, b)) < 0
	})
	for _, set := range slices.Compact(sets) {
		var goods []int
		var mass, vol, load, room float64
		for i := range in.kinds {
			k := &in.kinds[i]
			if k.mask&^set != 0 {
				continue
			}
			mass += float64(k.count) * k.mass
			vol += float64(k.count) * k.vol
			for _, s := range k.from {
				goods = append(goods, s.goods...)
			}
		}
		var bags []int
		for j := range in.nb {
			if set>>j&1 != 0 {
				bags = append(bags, j)
				load += in.load[j]
				room += in.vol[j]
			}
		}
		slices.Sort(goods)
		goods = slices.Compact(goods)
		if vol > room {
			return in.total(TotalVolume, goods, bags, vol, room, "l")
		}
		if mass > load {
			return in.total(TotalLoad, goods, bags, mass, load, "kg")
		}
		for l := range in.lim {
			if err := in.limitShortage(l, set, goods, bags, mass); err != nil {
				return err
			}
		}
	}
	return nil
}

// limitShortage checks whether goods that go only into the bags of a set are too
// heavy for a limit, when as much as possible goes into its other bags.
func (in *instance) limitShortage(l int, set uint64, goods, bags []int, mass float64) error {
	m := &in.task.Limits[l]
	order := slices.Clone(bags)
	sort.SliceStable(order, func(i, j int) bool { return m.Share[order[i]] < m.Share[order[j]] })
	left, used := mass, 0.0
	for _, j := range order {
		put := min(left, in.load[j])
		used += put * m.Share[j]
		left -= put
	}
	if short := used - max(in.lim[l], 0); short > slack*used {
		return &Shortage{TotalLimit, goods, bags, l, short, words.Tell("packing.total.limit",
			"limit", title("limit", l, m.Name), "permitted", amount(max(in.lim[l], 0), "kg"), "goods", in.those(goods),
			"mass", amount(mass, "kg"), "used", amount(used, "kg"), "short", amount(short, "kg"))}
	}
	return nil
}

// those is what goods are called together.
func (in *instance) those(goods []int) words.Message {
	free := 0
	for i := range in.task.Goods {
		if g := &in.task.Goods[i]; in.pins[i] < 0 && g.Quantity > 0 && g.Mass+g.Volume > 0 {
			free++
		}
	}
	if len(goods) == free {
		return words.Tell("packing.goods")
	}
	return names(len(in.task.Goods), goods, in.good)
}

func (in *instance) total(reason Reason, goods, bags []int, need, have float64, unit string) error {
	short := need - have
	key := "packing.total.volume"
	if reason == TotalLoad {
		key = "packing.total.load"
	}
	var where words.Message
	switch {
	case len(bags) == in.nb:
		where = words.Tell("packing.bags.all")
	case len(bags) == 1:
		where = words.Tell("packing.bags.one", "bag", in.bag(bags[0]))
	default:
		where = words.Tell("packing.bags.some", "bags", names(in.nb, bags, in.bag))
	}
	return &Shortage{reason, goods, bags, -1, short, words.Tell(key, "goods", in.those(goods), "need", amount(need, unit),
		"bags", where, "have", amount(max(have, 0), unit), "short", amount(short, unit))}
}

// noWay is the reason that only the search can give.
func (in *instance) noWay() error {
	s := &Shortage{Reason: NoWay, Limit: -1, message: words.Tell("packing.no_way")}
	if in.task.AtMost != nil {
		s.message = words.Tell("packing.no_way.moves", "n", *in.task.AtMost)
	}
	return s
}

// fill returns the load (kg) and the volume (l) in each bag.
func (t *Task) fill(p Packing) (load, vol []float64) {
	load, vol = make([]float64, len(t.Bags)), make([]float64, len(t.Bags))
	for i := range p {
		for j, n := range p[i] {
			load[j] += float64(n) * t.Goods[i].Mass
			vol[j] += float64(n) * t.Goods[i].Volume
		}
	}
	return load, vol
}

// Keeps checks whether a packing packs all goods and keeps every limit, pin and
// forbidden pair; the error says which it does not, nil is none.
func (t *Task) Keeps(p Packing) error {
	if len(p) != len(t.Goods) {
		return words.Tell("packing.breaks.goods", "n", len(p), "of", len(t.Goods))
	}
	group := map[int]int{} // where it is
	for i := range t.Goods {
		g := &t.Goods[i]
		if len(p[i]) != len(t.Bags) {
			return words.Tell("packing.breaks.bags", "good", title("good", i, g.Name), "n", len(p[i]), "of", len(t.Bags))
		}
		sum, places := 0, 0
		for j, n := range p[i] {
			if n < 0 {
				return words.Tell("packing.breaks.negative", "good", title("good", i, g.Name), "n", n)
			}
			sum += n
			if n == 0 {
				continue
			}
			places++
			if at, ok := group[g.Group]; ok && at != j && g.Group != 0 {
				return words.Tell("packing.breaks.group", "good", title("good", i, g.Name))
			}
			group[g.Group] = j
		}
		switch {
		case sum != g.Quantity:
			return words.Tell("packing.breaks.pieces", "good", title("good", i, g.Name), "n", sum, "of", g.Quantity)
		case g.lump() && places > 1:
			return words.Tell("packing.breaks.together", "good", title("good", i, g.Name), "n", places)
		case g.Pinned && p[i][g.In] != g.Quantity:
			return words.Tell("packing.breaks.pinned", "good", title("good", i, g.Name))
		}
	}
	if n := t.Moves(p); t.AtMost != nil && n > *t.AtMost {
		return words.Tell("packing.breaks.moves", "n", n, "of", *t.AtMost)
	}
	for _, f := range t.Forbidden {
		if p[f.Good][f.Bag] > 0 {
			return words.Tell("packing.breaks.forbidden", "good", title("good", f.Good, t.Goods[f.Good].Name), "bag", title("bag", f.Bag, t.Bags[f.Bag].Name))
		}
	}
	loads, vols := t.fill(p)
	for j := range t.Bags {
		b := &t.Bags[j]
		if b.Permitted > 0 && loads[j] > b.Permitted*(1+2*slack) {
			return words.Tell("packing.breaks.load", "bag", title("bag", j, b.Name), "by", amount(loads[j]-b.Permitted, "kg"))
		}
		if b.Volume > 0 && vols[j] > b.Volume*(1+2*slack) {
			return words.Tell("packing.breaks.volume", "bag", title("bag", j, b.Name), "by", amount(vols[j]-b.Volume, "l"))
		}
	}
	for l := range t.Limits {
		m := &t.Limits[l]
		var w float64
		for j := range loads {
			w += m.Share[j] * loads[j]
		}
		if w > m.Permitted*(1+2*slack)+math.SmallestNonzeroFloat64 {
			return words.Tell("packing.breaks.limit", "limit", title("limit", l, m.Name), "by", amount(w-m.Permitted, "kg"))
		}
	}
	return nil
}
