package report_test

import (
	"math"
	"testing"

	"steelyard/internal/report"
)

// The sums that the page shows beside lists are the core's: of a group of the
// build's own parts, of a bag with what is in it, of all the luggage.
func TestSumsOfLists(t *testing.T) {
	r := report.Weigh(laden(), nil).Report
	s := &r.Sides[0]
	if len(s.Bags) < 2 || s.Luggage == 0 {
		t.Fatalf("%d bags, %v g", len(s.Bags), s.Luggage)
	}
	sum := 0.0
	for _, b := range s.Bags {
		near(t, "bag "+b.ID, b.Whole, b.Mass+b.Goods, 0.011)
		// Bag and goods do not share an error here: less than both, more than either.
		if b.WholePlus > b.Plus+b.GoodsPlus+0.011 || b.WholePlus < max(b.Plus, b.GoodsPlus)-0.011 {
			t.Errorf("bag %s: ± %v of ± %v and ± %v", b.ID, b.WholePlus, b.Plus, b.GoodsPlus)
		}
		sum += b.Whole
	}
	near(t, "luggage", s.Luggage, sum, 0.02)

	b := &r.Builds[0]
	masses := map[string]float64{}
	for _, p := range b.Parts {
		masses[p.Group] += p.Mass
	}
	if len(b.Own) != len(masses) {
		t.Errorf("%d groups of own parts, want %d", len(b.Own), len(masses))
	}
	for i, g := range b.Own {
		near(t, "own "+g.Key, g.Mass, masses[g.Key], 0.02)
		if i > 0 && g.Mass > b.Own[i-1].Mass {
			t.Errorf("%s is not in order", g.Key)
		}
		if math.IsNaN(g.Plus) || g.Plus <= 0 {
			t.Errorf("%s: ± %v", g.Key, g.Plus)
		}
	}
}
