package packing

import (
	"cmp"
	"fmt"
	"math"
	"math/bits"
	"slices"
	"sort"
	"strings"
)

// Shortage says why a task cannot be done: which limit is in the way, and by
// how much it is short.
type Shortage struct {
	Reason Reason
	Goods  []int   // the goods that need the room
	Bags   []int   // the bags that could give it
	Limit  int     // index of the limit, -1 if it is none
	Short  float64 // how much is missing, kg or l; 0 if the totals would do
	text   string
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
)

func (s *Shortage) Error() string { return s.text }

// names lists goods or bags for a person, the first few by name.
func names(n int, index []int, name func(int) string) string {
	if len(index) == n && n > 1 {
		return "all"
	}
	const few = 4
	var b strings.Builder
	for k, i := range index {
		if k == few && len(index) > few+1 {
			fmt.Fprintf(&b, " and %d more", len(index)-few)
			break
		}
		if k > 0 {
			b.WriteString(", ")
		}
		b.WriteString(name(i))
	}
	return b.String()
}

func (in *instance) bag(j int) string  { return title("bag", j, in.task.Bags[j].Name) }
func (in *instance) good(i int) string { return title("good", i, in.task.Goods[i].Name) }

// amount writes a mass or a volume so that a shortage is never shown as 0.
func amount(x float64, unit string) string {
	if x >= 0.01 || x == 0 {
		return fmt.Sprintf("%.4g %s", x, unit)
	}
	return fmt.Sprintf("%.2g %s", x, unit)
}

// pinnedShortage looks whether the pinned goods alone are too much.
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
			unit, verb  string
		}{
			{in.load[j], t.Bags[j].Permitted, PinnedLoad, "kg", "may hold"},
			{in.vol[j], t.Bags[j].Volume, PinnedVolume, "l", "holds"},
		} {
			if side.left < 0 {
				short := slack*side.limit - side.left
				return &Shortage{side.reason, pinned(j), []int{j}, -1, short, fmt.Sprintf(
					"%s %s %s, but the goods pinned in it come to %s more: unpin one of them",
					in.bag(j), side.verb, amount(side.limit, side.unit), amount(short, side.unit))}
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
		return &Shortage{PinnedLimit, slices.Compact(goods), bags, l, short, fmt.Sprintf(
			"%s permits %s, but the goods pinned there come to %s more: unpin one of them",
			title("limit", l, m.Name), amount(m.Permitted, "kg"), amount(short, "kg"))}
	}
	return nil
}

// pieceShortage says why a single piece of a good, or all its pieces if they
// stay together, goes into no bag at all.
func (in *instance) pieceShortage(i, pieces int, forbidden uint64) error {
	t := in.task
	g := &t.Goods[i]
	mass, vol := float64(pieces)*g.Mass, float64(pieces)*g.Volume
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
	s := &Shortage{Reason: PieceForbids, Goods: []int{i}, Bags: bags, Limit: -1}
	what, verb := in.good(i), "is"
	if pieces > 1 {
		what, verb = fmt.Sprintf("the %d pieces of %s that stay together", pieces, in.good(i)), "are"
	}
	switch {
	case len(bags) == 0:
		s.text = what + " may go into no bag: every one is forbidden"
	case vol > room:
		s.Reason, s.Short = PieceVolume, vol-room
		s.text = fmt.Sprintf("%s %s %s, but the largest room left for it in a bag is %s: %s too large",
			what, verb, amount(vol, "l"), amount(room, "l"), amount(s.Short, "l"))
	case mass > load:
		s.Reason, s.Short = PieceLoad, mass-load
		s.text = fmt.Sprintf("%s %s %s, but the most that a bag or its limits permit is %s: %s too heavy",
			what, verb, amount(mass, "kg"), amount(load, "kg"), amount(s.Short, "kg"))
	default:
		s.text = fmt.Sprintf("%s (%s, %s) goes into no bag: those with the room do not permit the load", what, amount(mass, "kg"), amount(vol, "l"))
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
				goods = append(goods, s.good)
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

// limitShortage looks whether goods that go only into the bags of a set are
// too heavy for a limit, when as much as possible goes into its other bags.
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
		return &Shortage{TotalLimit, goods, bags, l, short, fmt.Sprintf(
			"%s permits %s for what is free to move, but %s (%s) put at least %s on it: %s too much",
			title("limit", l, m.Name), amount(max(in.lim[l], 0), "kg"), in.those(goods), amount(mass, "kg"), amount(used, "kg"), amount(short, "kg"))}
	}
	return nil
}

func (in *instance) those(goods []int) string {
	free := 0
	for i := range in.task.Goods {
		if g := &in.task.Goods[i]; !g.Pinned && g.Quantity > 0 && g.Mass+g.Volume > 0 {
			free++
		}
	}
	if len(goods) == free {
		return "the goods"
	}
	return names(len(in.task.Goods), goods, in.good)
}

func (in *instance) total(reason Reason, goods, bags []int, need, have float64, unit string) error {
	short := need - have
	where := "the bags have"
	what := "room for"
	if len(bags) < in.nb {
		where = names(in.nb, bags, in.bag) + ", the only ones for them, have"
		if len(bags) == 1 {
			where = in.bag(bags[0]) + ", the only one for them, has"
		}
	}
	if reason == TotalLoad {
		what = "a permitted load of"
	}
	return &Shortage{reason, goods, bags, -1, short, fmt.Sprintf("%s come to %s, but %s %s %s: %s short",
		in.those(goods), amount(need, unit), where, what, amount(max(have, 0), unit), amount(short, unit))}
}

// noWay is the reason that only the search can give. The near miss is the
// packing with the least excess that was found.
func (in *instance) noWay(near Packing) error {
	s := &Shortage{Reason: NoWay, Limit: -1}
	text := "no packing keeps every limit, although their totals would do"
	if near == nil {
		s.text = text
		return s
	}
	loads, vols := in.task.fill(near)
	var over []string
	for j := range in.task.Bags {
		b := &in.task.Bags[j]
		if d := vols[j] - b.Volume; b.Volume > 0 && d > slack*b.Volume {
			s.Bags, s.Short = append(s.Bags, j), s.Short+d
			over = append(over, fmt.Sprintf("%s %s", in.bag(j), amount(d, "l")))
		}
		if d := loads[j] - b.Permitted; b.Permitted > 0 && d > slack*b.Permitted {
			s.Bags, s.Short = append(s.Bags, j), s.Short+d
			over = append(over, fmt.Sprintf("%s %s", in.bag(j), amount(d, "kg")))
		}
	}
	for l := range in.task.Limits {
		m := &in.task.Limits[l]
		var w float64
		for j := range loads {
			w += m.Share[j] * loads[j]
		}
		if d := w - m.Permitted; d > slack*m.Permitted {
			s.Limit, s.Short = l, s.Short+d
			over = append(over, fmt.Sprintf("%s %s", title("limit", l, m.Name), amount(d, "kg")))
		}
	}
	if len(over) > 0 {
		text += "; the nearest found exceeds " + strings.Join(over, ", ")
	}
	s.text = text
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

// Keeps says whether a packing packs all goods and keeps every limit, pin and
// forbidden pair; the error says what it does not.
func (t *Task) Keeps(p Packing) error {
	if len(p) != len(t.Goods) {
		return fmt.Errorf("a packing of %d goods, not of %d", len(p), len(t.Goods))
	}
	for i := range t.Goods {
		g := &t.Goods[i]
		if len(p[i]) != len(t.Bags) {
			return fmt.Errorf("%s: packed over %d bags, not %d", title("good", i, g.Name), len(p[i]), len(t.Bags))
		}
		sum, places := 0, 0
		for _, n := range p[i] {
			if n < 0 {
				return fmt.Errorf("%s: %d pieces in a bag", title("good", i, g.Name), n)
			}
			sum += n
			if n > 0 {
				places++
			}
		}
		switch {
		case sum != g.Quantity:
			return fmt.Errorf("%s: %d of %d pieces packed", title("good", i, g.Name), sum, g.Quantity)
		case g.Together && places > 1:
			return fmt.Errorf("%s: spread over %d bags, but must stay together", title("good", i, g.Name), places)
		case g.Pinned && p[i][g.In] != g.Quantity:
			return fmt.Errorf("%s: not where it is pinned", title("good", i, g.Name))
		}
	}
	for _, f := range t.Forbidden {
		if p[f.Good][f.Bag] > 0 {
			return fmt.Errorf("%s: in %s, where it is forbidden", title("good", f.Good, t.Goods[f.Good].Name), title("bag", f.Bag, t.Bags[f.Bag].Name))
		}
	}
	loads, vols := t.fill(p)
	for j := range t.Bags {
		b := &t.Bags[j]
		if b.Permitted > 0 && loads[j] > b.Permitted*(1+2*slack) {
			return fmt.Errorf("%s: %s over its permitted load", title("bag", j, b.Name), amount(loads[j]-b.Permitted, "kg"))
		}
		if b.Volume > 0 && vols[j] > b.Volume*(1+2*slack) {
			return fmt.Errorf("%s: %s over its volume", title("bag", j, b.Name), amount(vols[j]-b.Volume, "l"))
		}
	}
	for l := range t.Limits {
		m := &t.Limits[l]
		var w float64
		for j := range loads {
			w += m.Share[j] * loads[j]
		}
		if w > m.Permitted*(1+2*slack)+math.SmallestNonzeroFloat64 {
			return fmt.Errorf("%s: %s too much", title("limit", l, m.Name), amount(w-m.Permitted, "kg"))
		}
	}
	return nil
}
