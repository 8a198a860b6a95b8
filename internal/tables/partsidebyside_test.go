package tables_test

import (
	"math"
	"testing"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

// Every part of every build is in the list once, in its column; what is the same
// is on one line; and groups weigh what the report says.
func TestPartsSideBySide(t *testing.T) {
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	e := report.EvaluateText(text)
	s := tables.PartsSideBySideOf(e)
	if len(s.Builds) != len(e.Document.Builds) {
		t.Fatalf("%d columns for %d builds", len(s.Builds), len(e.Document.Builds))
	}
	same, apart := 0, 0
	for n := range s.Builds {
		count, mass := 0, 0.0
		for _, g := range s.Groups {
			sum := 0.0
			for _, l := range g.Lines {
				if c := l.Cells[n]; c != nil {
					count++
					sum += c.Mass
				}
			}
			if got := g.Masses[n]; got == nil || math.Abs(*got-sum) > 0.01 {
				t.Errorf("%s of %s: %v, the lines make %g g", g.Key, s.Builds[n].Name, got, sum)
			}
			mass += sum
		}
		b := &e.Document.Builds[n]
		want := 0.0
		for _, p := range b.Parts {
			want += p.Mass * float64(p.Quantity)
		}
		if count != len(b.Parts) || math.Abs(mass-want) > 0.01 {
			t.Errorf("%s: %d parts of %g g in the list, %d of %g g in the build", b.Name, count, mass, len(b.Parts), want)
		}
	}
	for _, g := range s.Groups {
		for _, l := range g.Lines {
			if l.Same {
				same++
				for _, c := range l.Cells {
					if c == nil || *c != *l.Cells[0] {
						t.Errorf("%s is told to be the same: %+v", l.Name, l.Cells)
					}
				}
			} else {
				apart++
			}
		}
	}
	if same < 10 || apart < 5 {
		t.Errorf("%d lines are the same, %d are not", same, apart)
	}
}

// What builds say differently of a part is told by each, and a copy that changed
// nothing is the same all through.
func TestPartsSideBySideTellsWhatDiffers(t *testing.T) {
	a, b := fitted("a"), fitted("b")
	s := tables.PartsSideBySideOf(report.Weigh(documentOf(a, b), nil))
	for _, g := range s.Groups {
		for _, l := range g.Lines {
			if !l.Same || l.Moved {
				t.Errorf("%+v of a copy", l)
			}
		}
	}
	b.Parts[0].Mass++
	b.Parts[1].Name += " x"
	b.Parts[2].Offset[0] += 5
	d := documentOf(a, b)
	s = tables.PartsSideBySideOf(report.Weigh(d, nil))
	heavier, renamed, moved := 0, 0, 0
	for _, g := range s.Groups {
		for _, l := range g.Lines {
			switch {
			case l.Moved:
				moved++
				if !l.Same || l.Where != "" {
					t.Errorf("%+v was moved only", l)
				}
			case !l.Same && l.Name == "":
				renamed++
				if l.Cells[1].Name != b.Parts[1].Name {
					t.Errorf("%+v", l.Cells[1])
				}
			case !l.Same:
				heavier++
			}
		}
	}
	if heavier != 1 || renamed != 1 || moved != 1 {
		t.Errorf("%d heavier, %d renamed, %d moved", heavier, renamed, moved)
	}
	// Only what the table names is listed; builds that are gone are not missed.
	d.Show.Table = []string{"b", "gone"}
	if s := tables.PartsSideBySideOf(report.Weigh(d, nil)); len(s.Builds) != 1 || s.Builds[0].ID != "b" {
		t.Errorf("%+v", s.Builds)
	}
	d.Show.Table = []string{"gone"}
	if s := tables.PartsSideBySideOf(report.Weigh(d, nil)); len(s.Builds) != 2 {
		t.Errorf("%+v", s.Builds)
	}
	if s := tables.PartsSideBySideOf(report.Weigh(&document.Document{}, nil)); len(s.Builds) != 0 || s.Groups == nil {
		t.Errorf("%+v", s)
	}
}
