package stowage

import (
	"slices"

	"steelyard/internal/packing"
)

// Move says to take pieces of a good out of one bag and to put them into another.
type Move struct {
	Good     string // id
	Name     string
	Quantity int
	From     string // id of the bag; empty for what was not packed
	To       string // likewise; empty for what stays at home
	Aside    bool   // what To does not name is set aside; what From does not name is taken from there
}

// hop is a move with what it takes to put it in order.
type hop struct {
	Move
	from, to int     // bags, by index in the load
	volume   float64 // l, of all its pieces
}

// Moves says how to get from the load as it was to a packing, in an order that can
// be done: there is room for what arrives. It goes on with the bag that it is at
// as long as it can. Where bags wait for each other something is set aside, and put
// into its bag as soon as that has room.
func (s *Stowage) Moves(p packing.Packing) []Move {
	var todo []hop
	for _, l := range s.lots(p) {
		todo = append(todo, s.moves(l)...)
	}
	room := map[int]float64{} // l left, of bags whose volume is limited
	for j := range s.load.Bags {
		if b := &s.load.Bags[j]; b.Volume > 0 {
			room[j] = b.Volume * (1 + 1e-9)
			for i := range s.load.Goods {
				if g := &s.load.Goods[i]; g.In == b.ID {
					room[j] -= float64(g.Quantity) * g.Volume
				}
			}
		}
	}
	list := []Move{}
	shift := func(j int, volume float64) {
		if _, limited := room[j]; limited {
			room[j] += volume
		}
	}
	at := unpacked
	for len(todo) > 0 {
		next, best := -1, 0
		for k := range todo {
			h := &todo[k]
			left, limited := room[h.to]
			if limited && left < h.volume {
				continue
			}
			// First what was set aside, then what goes into the same bag as the last
			// thing, then what comes out of that bag.
			rank := 1
			switch {
			case h.Aside:
				rank = 4
			case h.to == at:
				rank = 3
			case h.from == at:
				rank = 2
			}
			if rank > best {
				next, best = k, rank
			}
		}
		aside := -1
		if next < 0 {
			if aside = s.obstacle(todo, room); aside < 0 {
				next = 0 // a bag is too full of what is not packed anew: there is no better order
			}
		}
		if next >= 0 {
			h := todo[next]
			todo = slices.Delete(todo, next, next+1)
			shift(h.from, h.volume)
			shift(h.to, -h.volume)
			at = h.to
			list = append(list, h.Move)
			continue
		}
		h := &todo[aside]
		shift(h.from, h.volume)
		out := h.Move
		out.To, out.Aside = "", true
		list = append(list, out)
		h.from, h.From, h.Aside = unpacked, "", true
	}
	return list
}

// obstacle picks what to set aside when nothing has room where it is to go: of what
// makes room for another thing the smallest, else the largest of all. It is -1 where nothing is left in a bag.
func (s *Stowage) obstacle(todo []hop, room map[int]float64) int {
	pick, frees := -1, false
	for k := range todo {
		h := &todo[k]
		if h.from == unpacked {
			continue
		}
		makes := slices.ContainsFunc(todo, func(o hop) bool { return o.to == h.from && room[h.from]+h.volume >= o.volume })
		if pick < 0 || makes && !frees || makes == frees && (h.volume < todo[pick].volume) == frees {
			pick, frees = k, makes
		}
	}
	return pick
}

func (s *Stowage) moves(l *lot) []hop {
	var list []hop
	less, more := map[int]int{}, map[int]int{}
	order := append([]int{unpacked}, s.bags...)
	for j := range l.was {
		if j != unpacked && !slices.Contains(order, j) {
			order = append(order, j) // a bag that is not on the bike
		}
	}
	slices.Sort(order)
	for _, j := range order {
		less[j], more[j] = max(0, l.was[j]-l.is[j]), max(0, l.is[j]-l.was[j])
	}
	id := func(j int) string {
		if j == unpacked {
			return ""
		}
		return s.load.Bags[j].ID
	}
	for _, from := range order {
		for _, to := range order {
			n := min(less[from], more[to])
			if n == 0 {
				continue
			}
			less[from] -= n
			more[to] -= n
			m := Move{Quantity: n, From: id(from), To: id(to)}
			for _, i := range l.lines {
				if g := &s.load.Goods[i]; m.Good == "" || g.In == m.From {
					m.Good, m.Name = g.ID, g.Name
				}
			}
			list = append(list, hop{m, from, to, float64(n) * s.load.Goods[l.lines[0]].Volume})
		}
	}
	return list
}
