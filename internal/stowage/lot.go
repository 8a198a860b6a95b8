package stowage

import (
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/packing"
)

// unpacked stands for no bag among indices of bags.
const unpacked = -1

// lot is all lines of a load that are the same good: which of its pieces lies in
// which bag makes no difference, so each bag needs one line.
type lot struct {
	lines []int       // by index in load.Goods
	was   map[int]int // pieces by bag
	is    map[int]int
}

// lots gathers the goods of a packing, in the order of the load.
func (s *Stowage) lots(p packing.Packing) []*lot {
	bag := map[string]int{"": unpacked}
	for i := range s.load.Bags {
		bag[s.load.Bags[i].ID] = i
	}
	var list []*lot
	same := map[document.Good]*lot{}
	for k, i := range s.goods {
		g := s.load.Goods[i]
		if g.Quantity == 0 {
			continue
		}
		key := g
		key.ID, key.Quantity, key.In = "", 0, ""
		l := same[key]
		if l == nil {
			l = &lot{was: map[int]int{}, is: map[int]int{}}
			same[key] = l
			list = append(list, l)
		}
		l.lines = append(l.lines, i)
		from, ok := bag[g.In]
		if !ok {
			from = unpacked
		}
		l.was[from] += g.Quantity
		for j, n := range p[k] {
			if n > 0 {
				l.is[s.bags[j]] += n
			}
		}
	}
	return list
}

// newLine stands for a line that the load does not have yet, among lines of a lot.
const newLine = -1

// share gives the bags of a lot to its lines: a line keeps the bag that it was in,
// if it can. Bags that no line is left for come under [newLine].
func (s *Stowage) share(l *lot) map[int][]int {
	given := map[int][]int{} // bags by line
	taken := map[int]bool{}
	for _, i := range l.lines {
		for _, j := range s.bags {
			if s.load.Bags[j].ID == s.load.Goods[i].In && l.is[j] > 0 && !taken[j] {
				given[i], taken[j] = []int{j}, true
			}
		}
	}
	for _, j := range s.bags {
		if l.is[j] == 0 || taken[j] {
			continue
		}
		line := newLine
		for _, i := range l.lines {
			if len(given[i]) == 0 {
				line = i
				break
			}
		}
		given[line] = append(given[line], j)
	}
	return given
}

// Packed returns the goods of the load, packed: of each good one line a bag. New
// lines get ids that are new in the document, which has the load and keeps the
// lines that were added for that.
func (s *Stowage) Packed(d *document.Document, p packing.Packing) []document.Good {
	lines := make(map[int][]document.Good) // what becomes of a line
	gone := make(map[int]bool)
	load := d.Load(s.load.ID)
	for _, l := range s.lots(p) {
		given := s.share(l)
		last := l.lines[0]
		for _, i := range l.lines {
			gone[i] = len(given[i]) == 0
			for _, j := range given[i] {
				g := s.load.Goods[i]
				g.In, g.Quantity = s.load.Bags[j].ID, l.is[j]
				lines[i] = append(lines[i], g)
				last = i
			}
		}
		for _, j := range given[newLine] {
			g := s.load.Goods[l.lines[0]]
			g.In, g.Quantity = s.load.Bags[j].ID, l.is[j]
			g.ID = d.NewIDs(document.SortGood, 1)[0]
			load.Goods = append(load.Goods, g) // takes the id
			lines[last] = append(lines[last], g)
		}
	}
	goods := make([]document.Good, 0, len(s.load.Goods))
	for i := range s.load.Goods {
		switch {
		case len(lines[i]) > 0:
			goods = append(goods, lines[i]...)
		case !gone[i]:
			goods = append(goods, s.load.Goods[i])
		}
	}
	return goods
}

// Assigned are pieces of a good in a bag.
type Assigned struct {
	Good     string // id; of the first line of its kind where the load needs a new one
	Quantity int
	Bag      string // id
}

// Assignment tells what lies where in a packing.
func (s *Stowage) Assignment(p packing.Packing) []Assigned {
	list := []Assigned{}
	for _, l := range s.lots(p) {
		given := s.share(l)
		for _, i := range append(slices.Clone(l.lines), newLine) {
			good := s.load.Goods[l.lines[0]].ID
			if i != newLine {
				good = s.load.Goods[i].ID
			}
			for _, j := range given[i] {
				list = append(list, Assigned{good, l.is[j], s.load.Bags[j].ID})
			}
		}
	}
	return list
}
