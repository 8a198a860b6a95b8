package parts

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
)

// pairNames writes pairs as "a:b", with the ids and a dash for none.
func pairNames(pairs []Pair) []string {
	var names []string
	for _, p := range pairs {
		a, b := "-", "-"
		if p.A != nil {
			a = p.A.ID
		}
		if p.B != nil {
			b = p.B.ID
		}
		names = append(names, a+":"+b)
	}
	return names
}

func TestMatch(t *testing.T) {
	rim := document.Part{Kind: "rim", Catalogue: "rim-x", Name: "Rim", Mass: 500, Basis: document.Typical}
	part := func(id string, p document.Part, change func(*document.Part)) document.Part {
		p.ID = id
		if change != nil {
			change(&p)
		}
		return p
	}
	front := func(p *document.Part) { p.Station = "front-axle" }
	rear := func(p *document.Part) { p.Station = "rear-axle" }
	for _, c := range []struct {
		name string
		a, b []document.Part
		want []string
	}{
		{"nothing", nil, nil, nil},
		{"only one has parts", []document.Part{part("p1", rim, nil)}, nil, []string{"p1:-"}},
		{"the other has", nil, []document.Part{part("p1", rim, nil)}, []string{"-:p1"}},
		{"same id and kind, all else changed",
			[]document.Part{part("p1", rim, front)},
			[]document.Part{part("p1", rim, func(p *document.Part) { p.Name, p.Mass, p.Catalogue = "Light rim", 400, "rim-y" })},
			[]string{"p1:p1"}},
		{"same id, another kind",
			[]document.Part{part("p1", rim, front)},
			[]document.Part{part("p1", document.Part{Kind: "hub", Name: "Hub"}, nil)},
			[]string{"p1:-", "-:p1"}},
		{"built separately: the place decides between two of a type",
			[]document.Part{part("p1", rim, front), part("p2", rim, rear)},
			[]document.Part{part("x1", rim, rear), part("x2", rim, front)},
			[]string{"p1:x2", "p2:x1"}},
		{"moved and in another order: first with first",
			[]document.Part{part("p1", rim, front), part("p2", rim, front)},
			[]document.Part{part("x1", rim, rear), part("x2", rim, rear)},
			[]string{"p1:x1", "p2:x2"}},
		{"weighed in one: the entry at the same station",
			[]document.Part{part("p1", rim, front), part("p2", rim, rear)},
			[]document.Part{part("x1", rim, func(p *document.Part) { rear(p); p.Mass = 512 }), part("x2", rim, func(p *document.Part) { front(p); p.Mass = 508 })},
			[]string{"p1:x2", "p2:x1"}},
		{"the entry somewhere else",
			[]document.Part{part("p1", rim, front)},
			[]document.Part{part("x1", rim, func(p *document.Part) { rear(p); p.Mass = 512 })},
			[]string{"p1:x1"}},
		{"kind and name, when there is no entry",
			[]document.Part{part("p1", document.Part{Kind: "bag", Name: "Roll", Mass: 300}, nil)},
			[]document.Part{part("x1", document.Part{Kind: "tool", Name: "Roll", Mass: 300}, nil), part("x2", document.Part{Kind: "bag", Name: "Roll", Mass: 350}, nil)},
			[]string{"p1:x2", "-:x1"}},
		{"each is used once",
			[]document.Part{part("p1", rim, front), part("p2", rim, front), part("p3", rim, front)},
			[]document.Part{part("p2", rim, front), part("x1", rim, front)},
			[]string{"p1:x1", "p2:p2", "p3:-"}},
		{"the id goes before everything",
			[]document.Part{part("p1", rim, front), part("p2", rim, rear)},
			[]document.Part{part("p1", rim, rear), part("p2", rim, front)},
			[]string{"p1:p1", "p2:p2"}},
	} {
		got := pairNames(Match(&document.Build{Parts: c.a}, &document.Build{Parts: c.b}))
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

func TestMatchUsesEveryPartOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		build := func(name string) *document.Build {
			b := &document.Build{}
			for range rapid.IntRange(0, 12).Draw(t, name) {
				b.Parts = append(b.Parts, document.Part{
					ID: fmt.Sprint("p", rapid.IntRange(0, 8).Draw(t, "id")), Kind: rapid.SampledFrom([]string{"rim", "hub"}).Draw(t, "kind"),
					Catalogue: rapid.SampledFrom([]string{"", "x", "y"}).Draw(t, "entry"), Name: rapid.SampledFrom([]string{"", "m", "n"}).Draw(t, "name"),
					Mass: float64(rapid.IntRange(0, 2).Draw(t, "mass")), Station: rapid.SampledFrom([]string{"front-axle", "rear-axle"}).Draw(t, "station"),
				})
			}
			return b
		}
		a, b := build("a"), build("b")
		seenA, seenB := map[*document.Part]int{}, map[*document.Part]int{}
		for _, p := range Match(a, b) {
			if p.A == nil && p.B == nil {
				t.Fatal("a pair of nothing")
			}
			if p.A != nil && p.B != nil && p.A.Kind != p.B.Kind {
				t.Fatal("a pair of two kinds")
			}
			seenA[p.A]++
			seenB[p.B]++
		}
		for i := range a.Parts {
			if seenA[&a.Parts[i]] != 1 {
				t.Fatalf("part %d of a is in %d pairs", i, seenA[&a.Parts[i]])
			}
		}
		for i := range b.Parts {
			if seenB[&b.Parts[i]] != 1 {
				t.Fatalf("part %d of b is in %d pairs", i, seenB[&b.Parts[i]])
			}
		}
		for i, p := range Match(a, a) {
			if p.A != p.B && !sameLine(a, p) {
				t.Fatalf("pair %d of a build with itself: %v", i, p)
			}
		}
	})
}

// sameLine says whether a pair of a build with itself is of two lines with the
// same id and kind, which the drawn builds have.
func sameLine(b *document.Build, p Pair) bool {
	return p.A != nil && p.B != nil && p.A.ID == p.B.ID && p.A.Kind == p.B.Kind
}

func TestSourceKey(t *testing.T) {
	p := document.Part{ID: "p1", Name: "Rim", Kind: "rim", Catalogue: "rim-x", Mass: 500, HalfWidth: 20, Basis: document.Typical, Station: "front-axle", Quantity: 1}
	q := p
	q.ID, q.Station, q.Quantity, q.Offset, q.Note, q.Carrier = "p2", "rear-axle", 3, document.Vec3{1, 2, 3}, "n", document.RearWheel
	if SourceKey(&p) != SourceKey(&q) {
		t.Error("place, number and id make a difference")
	}
	for i, change := range []func(*document.Part){
		func(p *document.Part) { p.Name = "Rim 2" }, func(p *document.Part) { p.Kind = "hub" }, func(p *document.Part) { p.Catalogue = "" },
		func(p *document.Part) { p.Mass++ }, func(p *document.Part) { p.HalfWidth++ }, func(p *document.Part) { p.Basis = document.Weighed },
	} {
		q := p
		change(&q)
		if SourceKey(&p) == SourceKey(&q) {
			t.Errorf("change %d makes no difference", i)
		}
	}
}

func TestCopyBuild(t *testing.T) {
	d := documenttest.TwoBuilds(3)
	d.Builds[0].Parts[1].At = &document.Vec3{1, 2, 3}
	if d.CopyBuild("none", "x") != nil {
		t.Error("copied a build that is not there")
	}
	c := d.CopyBuild("b1", "Copy")
	if c.ID != "b3" || c.Name != "Copy" || len(d.Builds) != 3 {
		t.Fatal(c.ID, c.Name, len(d.Builds))
	}
	from := d.Build("b1")
	for i, p := range Match(from, c) {
		if p.A != &from.Parts[i] || p.B != &c.Parts[i] {
			t.Errorf("part %d of the copy is not matched", i)
		}
	}
	c.Parts[0].Mass, c.Parts[1].At[0] = 1, 100
	if from.Parts[0].Mass == 1 || from.Parts[1].At[0] == 100 {
		t.Error("the copy shares its parts with the original")
	}
}

func TestNewIDs(t *testing.T) {
	d := documenttest.TwoBuilds(3)
	if id := d.NewIDs(document.SortPart, 1)[0]; id != "p4" {
		t.Error(id)
	}
	d.Builds[1].Parts[1].ID = "p4"
	if id := d.NewIDs(document.SortPart, 1)[0]; id != "p5" {
		t.Errorf("%s: an id of another build was given away", id)
	}
	if id := d.NewIDs(document.SortBuild, 1)[0]; id != "b3" {
		t.Error(id)
	}
	if d.Builds[1].Part("p4") != &d.Builds[1].Parts[1] || d.Builds[0].Part("p4") != nil {
		t.Error("Part finds something else")
	}
}

func BenchmarkMatch(b *testing.B) {
	for _, n := range []int{60, 600, 10000} {
		d := documenttest.TwoBuilds(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Match(&d.Builds[0], &d.Builds[1])
			}
		})
	}
}
