package bridge_test

import (
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
)

type changeAnswer struct {
	Build       string
	Goes, Stays []struct{ ID, Name string }
	Comes       []struct{ Name, Origin, Build string }
	Remarks     []string
	Document    *document.Document
}

// A copy of a build with another drivetrain is one call: the build itself stays.
func TestChangeMakesACopy(t *testing.T) {
	demo := call(t, "demo")
	var c changeAnswer
	read(t, &c, "change", demo, `{"build":"derailleur","set":"gear-hub-belt","copy_as":"With a belt"}`)
	var before opened
	read(t, &before, "open", demo)
	if n := len(before.Document.Builds); len(c.Document.Builds) != n+1 || c.Document.Builds[n].Name != "With a belt" || c.Document.Builds[n].ID != c.Build {
		t.Fatalf("%d builds, the new one %+v", len(c.Document.Builds), c.Build)
	}
	if p := c.Document.Build("derailleur").Part("chain"); p == nil {
		t.Error("the build that was copied has changed")
	}
	if p := c.Document.Build(c.Build).Part("chain"); p != nil {
		t.Error("the copy still has its chain")
	}
	if !slices.ContainsFunc(c.Remarks, func(s string) bool { return strings.Contains(s, "belt cannot be opened") }) {
		t.Errorf("remarks %q", c.Remarks)
	}
	// Unticked: the chain stays, and the belt does not come.
	belt := slices.IndexFunc(c.Comes, func(l struct{ Name, Origin, Build string }) bool { return l.Name == "Belt" })
	var d changeAnswer
	read(t, &d, "change", demo, `{"build":"derailleur","set":"gear-hub-belt","keep":["chain"],"skip":[`+string(rune('0'+belt))+`]}`)
	if d.Build != "derailleur" || d.Document.Build("derailleur").Part("chain") == nil {
		t.Error("the chain was to stay")
	}
}

// Every build of the demo is told to be whole or not, and what is the same is so
// both ways.
func TestShared(t *testing.T) {
	demo := call(t, "demo")
	var s struct {
		Builds []struct {
			ID    string
			Parts []struct {
				ID   string
				Also []string
			}
			Missing []struct{ Role, Name string }
		}
	}
	read(t, &s, "shared", demo)
	also := map[string][]string{}
	for _, b := range s.Builds {
		if len(b.Missing) > 0 {
			t.Errorf("%s of the demo lacks %v", b.ID, b.Missing)
		}
		for _, p := range b.Parts {
			for _, o := range p.Also {
				also[b.ID+" "+o] = append(also[b.ID+" "+o], p.ID)
			}
		}
	}
	for key, list := range also {
		a, b, _ := strings.Cut(key, " ")
		back := also[b+" "+a]
		slices.Sort(list)
		slices.Sort(back)
		if !slices.Equal(list, back) {
			t.Errorf("%s: %v, but the other way round %v", key, list, back)
		}
	}
	if !slices.Contains(also["gearbox derailleur"], "saddle") || slices.Contains(also["gearbox derailleur"], "main-frame") {
		t.Errorf("gearbox and derailleur share %v", also["gearbox derailleur"])
	}
}
