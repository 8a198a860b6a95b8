package parts_test

import (
	"slices"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

func TestSameAndBetterKnown(t *testing.T) {
	d := &document.Document{Builds: []document.Build{*fit(whole...)}}
	for _, name := range []string{"B", "C"} {
		d.CopyBuild(d.Builds[0].ID, name)
	}
	chain := slices.IndexFunc(d.Builds[0].Parts, func(p document.Part) bool { return p.Kind == "chain" })
	a, b, c := parts.Place{0, chain}, parts.Place{1, chain}, parts.Place{2, chain}

	s := parts.ShareOf(d.Builds)
	if got := s.Same(a); !slices.Equal(got, []parts.Place{b, c}) {
		t.Errorf("three copies: the chain of A is also %v", got)
	}
	if _, ok := s.Better(a); ok {
		t.Error("of three that are alike none is better known")
	}

	p := &d.Builds[1].Parts[chain]
	p.Mass, p.HalfWidth, p.Basis = 268, 1, document.Weighed
	s = parts.ShareOf(d.Builds)
	if got := s.Same(a); !slices.Equal(got, []parts.Place{c}) {
		t.Errorf("B's was weighed: the chain of A is also %v", got)
	}
	if at, ok := s.Better(a); !ok || at != b {
		t.Errorf("the chain of A is known better at %v %v, want %v", at, ok, b)
	}
	if at, ok := s.Better(b); ok {
		t.Errorf("the weighed chain is known better at %v", at)
	}

	// Another entry under the same id is another thing: frames that differ on purpose.
	p.Catalogue = "chain-11"
	if at, ok := parts.ShareOf(d.Builds).Better(a); ok {
		t.Errorf("another chain is taken for a better known one, at %v", at)
	}
}

// Bags and goods are one thing in the loads that have them under the same id, as
// far as the same is known of them: how many there are and where they hang or are
// packed is each load's own.
func TestLoadsShareBagsAndGoods(t *testing.T) {
	d := &document.Document{Loads: []document.Load{{
		ID:   "tour",
		Bags: []document.Bag{{ID: "left", Name: "Left pannier", Mass: 900, HalfWidth: 90, Basis: document.Typical}},
		Goods: []document.Good{
			{ID: "tent", Name: "Tent", Quantity: 1, Mass: 2000, HalfWidth: 200, Basis: document.Typical, In: "left"},
			{ID: "stove", Name: "Stove", Quantity: 1, Mass: 300, HalfWidth: 30, Basis: document.Typical},
		},
	}}}
	d.CopyLoad("tour", "Weekend")
	d.Loads[1].Goods[0].In, d.Loads[1].Goods[0].Quantity = "", 2
	here, there := parts.Place{0, 0}, parts.Place{1, 0}
	for name, s := range map[string]*parts.Sharing{"bag": parts.ShareOfBags(d.Loads), "tent": parts.ShareOfGoods(d.Loads)} {
		if got := s.Same(here); !slices.Equal(got, []parts.Place{there}) {
			t.Errorf("the %s is also %v, want %v", name, got, there)
		}
	}
	g := &d.Loads[1].Goods[0]
	g.Mass, g.HalfWidth, g.Basis = 2130, 2, document.Weighed
	s := parts.ShareOfGoods(d.Loads)
	if got := s.Same(here); got != nil {
		t.Errorf("the tent was weighed in one load, and is the same in %v", got)
	}
	if at, ok := s.Better(here); !ok || at != there || s.Known(at).Mass != 2130 {
		t.Errorf("the tent is known better at %v %v, want %v", at, ok, there)
	}
	if got := s.Same(parts.Place{0, 1}); !slices.Equal(got, []parts.Place{{1, 1}}) {
		t.Errorf("the stove is also %v", got)
	}
}
