package stowage

import (
	"slices"
	"strings"

	"steelyard/internal/packing"
)

// rules puts what people pack by into a task. Liquids and fuel stay in the bag
// that they are in, unless they may move; other liquids go upright, bottles take
// nothing else, what is used together lies in one bag, and what is needed at hand
// in a bag that is. What is pinned stays whatever the rules say.
func (s *Stowage) rules(t *packing.Task) {
	groups := []string{""}
	for k, i := range s.goods {
		g, to := &s.load.Goods[i], &t.Goods[k]
		liquid := g.AsLiquid()
		packed := slices.ContainsFunc(t.Start[k], func(pieces int) bool { return pieces > 0 })
		to.Pinned = to.Pinned || packed && (liquid == "stays" || g.Supply == "fuel")
		if name := strings.TrimSpace(g.Together); name != "" {
			if to.Group = slices.Index(groups, name); to.Group < 0 {
				to.Group = len(groups)
				groups = append(groups, name)
			}
		}
		for j := range s.bags {
			b := s.Bag(j)
			takes := b.TakesLiquids()
			dry := liquid == "no" && !(g.Supply == "fuel" && s.startsWithFuel(t, j)) // in a bottle
			wrong := takes == "none" && liquid != "no" || takes == "only" && dry || g.AtHand && !b.InReach()
			if wrong && !to.Pinned {
				t.Forbidden = append(t.Forbidden, packing.Pair{Good: k, Bag: j})
			}
		}
	}
}

// startsWithFuel reports whether there is fuel in a bag of the task at the start.
func (s *Stowage) startsWithFuel(t *packing.Task, j int) bool {
	for k, i := range s.goods {
		if s.load.Goods[i].Supply == "fuel" && t.Start[k][j] > 0 {
			return true
		}
	}
	return false
}
