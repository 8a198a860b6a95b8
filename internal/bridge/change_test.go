package bridge_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

type changeAnswer struct {
	Build       string
	Goes, Stays []struct{ ID, Name string }
	Comes       []struct{ Name, Origin, Build string }
	Remarks     []string
	Total       *report.Change
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

// A change tells what the build weighs before and after, as the report of the
// document after it does, and what it cannot weigh it does not tell.
func TestChangeTellsTheTotal(t *testing.T) {
	demo := call(t, "demo")
	ready := func(text []byte, build string) float64 {
		d, _ := document.Open(text)
		sum := 0.0
		for _, p := range d.Build(build).Parts {
			sum += float64(p.Quantity) * p.Mass
		}
		return sum
	}
	var c changeAnswer
	read(t, &c, "change", demo, `{"build":"derailleur","set":"gear-hub-belt","copy_as":"With a belt"}`)
	after, err := json.Marshal(c.Document)
	if err != nil {
		t.Fatal(err)
	}
	if c.Total == nil {
		t.Fatal("no total")
	}
	a, b := ready([]byte(demo), "derailleur"), ready(after, c.Build)
	if math.Abs(c.Total.A-a) > 0.01 || math.Abs(c.Total.B-b) > 0.01 || math.Abs(c.Total.Delta-(b-a)) > 0.01 {
		t.Errorf("%+v, want %g and %g", c.Total, a, b)
	}
	if c.Total.Plus <= 0 || c.Total.Plus > 0.5*c.Total.A {
		t.Errorf("the difference is known within %g", c.Total.Plus)
	}
	var none changeAnswer
	read(t, &none, "change", call(t, "blank"), `{"build":"b1","set":"gear-hub-belt"}`)
	if none.Total != nil && none.Total.A != 0 {
		t.Errorf("a build without parts weighs %+v", none.Total)
	}
}

// What two loads of the demo have in common is told both ways.
func TestSharedTellsOfLoads(t *testing.T) {
	type thing struct {
		ID   string
		Also []string
	}
	var s struct {
		Loads []struct {
			ID          string
			Bags, Goods []thing
		}
	}
	text := call(t, "copyLoad", call(t, "demo"), "tour", "Lighter")
	var copied struct{ Document json.RawMessage }
	if err := json.Unmarshal([]byte(text), &copied); err != nil {
		t.Fatal(err)
	}
	read(t, &s, "shared", string(copied.Document))
	if len(s.Loads) != 3 {
		t.Fatalf("%d loads", len(s.Loads))
	}
	tour, lighter := s.Loads[0], s.Loads[2]
	if len(tour.Bags) == 0 || len(tour.Goods) == 0 {
		t.Fatalf("the tour shares %v with its copy", tour)
	}
	for _, g := range tour.Goods {
		if !slices.Contains(g.Also, lighter.ID) {
			t.Errorf("%s of the tour is also in %v", g.ID, g.Also)
		}
	}
	if len(lighter.Goods) != len(tour.Goods) {
		t.Errorf("the copy shares %d goods, the tour %d", len(lighter.Goods), len(tour.Goods))
	}
}
