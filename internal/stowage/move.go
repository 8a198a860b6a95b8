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
}

// Moves says how to get from the load as it was to a packing.
func (s *Stowage) Moves(p packing.Packing) []Move {
	list := []Move{}
	for _, l := range s.lots(p) {
		list = append(list, s.moves(l)...)
	}
	return list
}

func (s *Stowage) moves(l *lot) []Move {
	var list []Move
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
			list = append(list, m)
		}
	}
	return list
}
