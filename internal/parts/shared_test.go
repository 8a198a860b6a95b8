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
