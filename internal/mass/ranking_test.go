package mass_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"steelyard/internal/mass"
)

// approx compares to a relative 1e-12 or an absolute 1e-15: rounding only.
var approx = cmpopts.EquateApprox(1e-12, 1e-15)

func TestResolution(t *testing.T) {
	// JCGM 100:2008, F.2.2.1: u = 0.29 δx.
	if u := mass.Resolution(1); math.Abs(u-0.29) > 0.005 {
		t.Errorf("Resolution(1) = %v, want 0.29", u)
	}
	// A step of 1 is the rectangle ±1/2.
	if a, b := mass.Resolution(1), mass.Rectangular(0.5); math.Abs(a-b) > 1e-15 {
		t.Errorf("Resolution(1) = %v, Rectangular(1/2) = %v", a, b)
	}
}

func TestDoubts(t *testing.T) {
	a := []mass.Item{{MassU: 1, MassSource: 0}, {MassU: 2, MassSource: 2}, {MassU: 2, MassSource: 2}, {MassSource: 5}}
	b := []mass.Item{{MassU: 3, MassSource: 2}, {MassU: 7, MassSource: 3}}
	want := []float64{1, 0, 4, 7} // source 2: two pieces in a outdo one in b
	if d := cmp.Diff(want, mass.Doubts(a, b)); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff(want, mass.Doubts(b, nil, a)); d != "" {
		t.Error("systems the other way round:", d)
	}
	if got := mass.Doubts(); len(got) != 0 {
		t.Errorf("Doubts() = %v", got)
	}
}

func TestRanking(t *testing.T) {
	// Worked by hand: doubts of 3, 4 and 12 g in the total give ±13 g; a
	// fourth part is known to 1 g already and a fifth has no doubt.
	items := []mass.Item{
		{Mass: 1, MassU: 3, MassSource: 0},
		{Mass: 1, MassU: 2, MassSource: 1},
		{Mass: 1, MassU: 2, MassSource: 1},
		{Mass: 1, MassU: 12, MassSource: 2},
		{Mass: 1, MassU: 1, MassSource: 3},
		{Mass: 1, MassSource: 4},
	}
	var b mass.Budget
	b.Charge(items, mass.Total(items, nil), 1)
	got := b.Ranking(mass.Doubts(items), 1)
	want := []mass.Weighing{
		{Source: 2, Share: 144. / 170, Gain: 143, Then: 2 * math.Sqrt(9+16+1+1)},
		{Source: 1, Share: 16. / 170, Gain: 15, Then: 2 * math.Sqrt(9+1+1+1)},
		{Source: 0, Share: 9. / 170, Gain: 8, Then: 2 * math.Sqrt(1+1+1+1)},
	}
	if d := cmp.Diff(want, got, approx); d != "" {
		t.Error(d)
	}
	if got := b.Ranking(nil, 1); got != nil {
		t.Errorf("with no doubts given: %v", got)
	}
	if got := new(mass.Budget).Ranking([]float64{1}, 0); got != nil {
		t.Errorf("empty budget: %v", got)
	}
}

func TestRankingLeavesOutWhatCancels(t *testing.T) {
	wheel := mass.Item{Mass: 2, MassU: 0.2, MassSource: 0}
	a := []mass.Item{wheel, {Mass: 1, MassU: 0.1, MassSource: 1}}
	b := []mass.Item{wheel, {Mass: 3, MassU: 0.3, MassSource: 2}}
	var d mass.Budget
	d.Charge(b, mass.Total(b, nil), 1)
	d.Charge(a, mass.Total(a, nil), -1)
	got := d.Ranking(mass.Doubts(a, b), 0)
	want := []mass.Weighing{
		{Source: 2, Share: 0.9, Gain: 0.09, Then: 0.1 * math.Sqrt(3)},
		{Source: 1, Share: 0.1, Gain: 0.01, Then: 0},
	}
	if diff := cmp.Diff(want, got, approx); diff != "" {
		t.Error(diff)
	}
}

// A claim that a weighing makes is kept: evaluate again with the parts weighed.
func TestRankingAgreesWithWeighing(t *testing.T) {
	items := tourer()
	const scale = 0.0005
	for name, figure := range figures() {
		var b mass.Budget
		b.Charge(items, figure(items), 1)
		doubts := mass.Doubts(items)
		again := append([]mass.Item(nil), items...)
		for k, w := range b.Ranking(doubts, scale) {
			for i := range again {
				if again[i].MassSource == w.Source {
					again[i].MassU *= scale / doubts[w.Source]
				}
			}
			_, now := mass.Uncertainty(again, figure(again))
			if math.Abs(now-w.Then) > 1e-9*b.Standard() {
				t.Errorf("%s: after %d weighings %v, promised %v", name, k+1, now, w.Then)
			}
		}
	}
}
