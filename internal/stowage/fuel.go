package stowage

import (
	"slices"

	"steelyard/internal/packing"
)

// keepFuelApart keeps food out of the bag that fuel is in, and drink out of a
// bottle of fuel, but for what is pinned there. Fuel that is in no bag goes to the
// bag that [Stowage.fuelBag] finds for it. Nothing is asked where food would be left
// without a bag.
func (s *Stowage) keepFuelApart(t *packing.Task) {
	holds := make([]bool, len(t.Bags)) // fuel
	var loose []int
	for k, i := range s.goods {
		if g := &s.load.Goods[i]; g.Supply == "fuel" && g.Quantity > 0 {
			in := slices.IndexFunc(t.Start[k], func(pieces int) bool { return pieces > 0 })
			if in < 0 {
				loose = append(loose, k)
				continue
			}
			holds[in] = true
		}
	}
	home := -1
	if len(loose) > 0 {
		if home = s.fuelBag(t, holds, loose); home >= 0 {
			holds[home] = true
		}
	}
	if !slices.Contains(holds, true) || !slices.Contains(holds, false) {
		return
	}
	for k, i := range s.goods {
		g := &s.load.Goods[i]
		for j, fuel := range holds {
			apart := g.Supply == "food" || g.Supply != "fuel" && s.Bag(j).TakesLiquids() == "only"
			if fuel && apart && !t.Goods[k].Pinned || home >= 0 && j != home && slices.Contains(loose, k) {
				t.Forbidden = append(t.Forbidden, packing.Pair{Good: k, Bag: j})
			}
		}
	}
}

// fuelBag returns the bag for fuel that is in none yet: one that holds fuel
// already, or else the smallest that is no bottle and in which no food is pinned; it has room for all
// of it beside what stays there. It is -1 where there is none: the fuel then goes
// anywhere.
func (s *Stowage) fuelBag(t *packing.Task, holds []bool, loose []int) int {
	volume, mass := 0.0, 0.0
	for _, k := range loose {
		n := float64(t.Goods[k].Quantity)
		volume, mass = volume+n*t.Goods[k].Volume, mass+n*t.Goods[k].Mass
	}
	best := -1
	better := func(j int) bool {
		switch {
		case best < 0:
			return true
		case holds[j] != holds[best]:
			return holds[j]
		}
		return t.Bags[j].Volume > 0 && (t.Bags[best].Volume == 0 || t.Bags[j].Volume < t.Bags[best].Volume)
	}
	for j := range t.Bags {
		room, bears, food := t.Bags[j].Volume, t.Bags[j].Permitted, false
		for k, i := range s.goods {
			if g := &t.Goods[k]; g.Pinned && g.In == j {
				room, bears = room-float64(g.Quantity)*g.Volume, bears-float64(g.Quantity)*g.Mass
				food = food || s.load.Goods[i].Supply == "food" && g.Quantity > 0
			}
		}
		fits := (t.Bags[j].Volume == 0 || room >= volume) && (t.Bags[j].Permitted == 0 || bears >= mass)
		if fits && !food && better(j) && (holds[j] || s.Bag(j).TakesLiquids() != "only") {
			best = j
		}
	}
	return best
}
