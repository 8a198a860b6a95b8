package drive

import (
	"cmp"
	"slices"

	"steelyard/internal/document"
	"steelyard/internal/order"
)

// BoxGear is a gear of a hub or a gearbox.
type BoxGear struct {
	Ratio  float64 // turns out for a turn in
	Meshes int     // pairs of gears that carry the load; -1 when nobody knows
	Chains []Link  // runs of chain inside, one after the other
}

// Link is a chain from one sprocket to another, by their teeth. Speed is how
// fast the driving one turns for a turn of what goes into the box.
type Link struct {
	Driving, Driven int
	Speed           float64
}

// BoxGears returns the gears of ratios or stages, the lowest first. A gearing
// of teeth, or one that [document.Gearing.Check] has anything to say about, has
// none.
func BoxGears(g *document.Gearing) []BoxGear {
	if g == nil || len(g.Teeth) > 0 || len(g.Check()) > 0 {
		return nil
	}
	var gears []BoxGear
	for i, r := range g.Ratios {
		b := BoxGear{Ratio: r, Meshes: -1}
		if len(g.Meshes) > 0 {
			b.Meshes = g.Meshes[i]
		}
		gears = append(gears, b)
	}
	for i := range g.Stages {
		gears = through(gears, &g.Stages[i], i == 0)
	}
	order.Stable(gears, func(a, b BoxGear) int { return cmp.Compare(a.Ratio, b.Ratio) })
	return gears
}

// through returns each of the gears followed by each pair of a stage.
func through(gears []BoxGear, s *document.Stage, first bool) []BoxGear {
	if first {
		gears = []BoxGear{{Ratio: 1}}
	}
	var all []BoxGear
	for _, g := range gears {
		for _, p := range pairs(s) {
			next := BoxGear{Ratio: g.Ratio * float64(p[0]) / float64(p[1]), Meshes: g.Meshes, Chains: slices.Clone(g.Chains)}
			if s.By == document.ByChain {
				next.Chains = append(next.Chains, Link{p[0], p[1], g.Ratio})
			} else {
				next.Meshes++
			}
			all = append(all, next)
		}
	}
	return all
}

// pairs returns which driving and driven teeth of a stage go together.
func pairs(s *document.Stage) [][2]int {
	var all [][2]int
	switch s.Combine {
	case document.ListedPairs:
		for i := range s.Driving {
			all = append(all, [2]int{s.Driving[i], s.Driven[i]})
		}
	case document.InTurn:
		driving, driven := slices.Sorted(slices.Values(s.Driving)), slices.Sorted(slices.Values(s.Driven))
		slices.Reverse(driven)
		i, j := 0, 0
		all = append(all, [2]int{driving[0], driven[0]})
		for turn := true; i < len(driving)-1 || j < len(driven)-1; turn = !turn {
			if i < len(driving)-1 && (turn || j == len(driven)-1) {
				i++
			} else {
				j++
			}
			all = append(all, [2]int{driving[i], driven[j]})
		}
	default:
		for _, a := range s.Driving {
			for _, b := range s.Driven {
				all = append(all, [2]int{a, b})
			}
		}
	}
	return all
}
