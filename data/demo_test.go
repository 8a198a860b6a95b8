package data_test

import (
	"io/fs"
	"testing"

	"github.com/google/go-cmp/cmp"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

func demoText(t *testing.T) []byte {
	t.Helper()
	text, err := fs.ReadFile(data.Files, "demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func demo(t *testing.T) *document.Document {
	t.Helper()
	d, problems := document.Open(demoText(t))
	for _, p := range problems {
		t.Errorf("%s: %s", p.Severity, p.Message.String())
	}
	if d == nil {
		t.Fatal("the demo does not open")
	}
	return d
}

func TestDemoHasNoProblem(t *testing.T) {
	d := demo(t)
	for _, p := range document.Check(d) {
		t.Errorf("%s: %s", p.Severity, p.Message.String())
	}
	for i := range d.Builds {
		_, problems := geometry.Pose(&d.Builds[i])
		for _, p := range problems {
			t.Errorf("%s: %s: %s", d.Builds[i].ID, p.Severity, p.Message.String())
		}
	}
	for _, p := range report.Weigh(d, nil).Report.Problems {
		t.Errorf("evaluated: %s: %s", p.Severity, p.Message.String())
	}
}

func TestDemoIsThreeBuildsOfOneBike(t *testing.T) {
	d := demo(t)
	if diff := cmp.Diff([]string{"gearbox", "gearhub"}, d.Show.Compare); diff != "" {
		t.Errorf("show.compare (-want +got):\n%s", diff)
	}
	var ids []string
	for i := range d.Builds {
		ids = append(ids, d.Builds[i].ID)
	}
	if diff := cmp.Diff([]string{"gearbox", "gearhub", "derailleur"}, ids); diff != "" {
		t.Fatalf("builds (-want +got):\n%s", diff)
	}
	bases := make(map[document.Basis]int)
	for i := range d.Builds {
		b := &d.Builds[i]
		if n := len(b.Parts); n < 55 || n > 70 {
			t.Errorf("%s has %d lines; want 55 to 70", b.ID, n)
		}
		for _, p := range b.Parts {
			bases[p.Basis]++
			e := parts.EntryByID(p.Catalogue)
			switch {
			case e == nil:
				t.Errorf("%s, %s: there is no entry %q", b.ID, p.ID, p.Catalogue)
			case e.Kind != p.Kind:
				t.Errorf("%s, %s: is a %s, its entry a %s", b.ID, p.ID, p.Kind, e.Kind)
			case p.Kind != "load" && p.Kind != "fork" && (p.Mass < e.Mass-1.5*e.HalfWidth || p.Mass > e.Mass+1.5*e.HalfWidth):
				t.Errorf("%s, %s: %g g is far from the entry's %g ± %g g", b.ID, p.ID, p.Mass, e.Mass, e.HalfWidth)
			}
			if p.Basis == document.Weighed && p.HalfWidth > 5 {
				t.Errorf("%s, %s: no scale for this reads to ± %g g", b.ID, p.ID, p.HalfWidth)
			}
		}
	}
	for _, b := range document.Bases {
		if bases[b] == 0 {
			t.Errorf("no part of the demo is %s", b)
		}
	}
}

// Only the drivetrain and what goes with it differ; all else is the same part,
// word for word, and cancels in a difference.
func TestDemoBuildsShareTheRest(t *testing.T) {
	d := demo(t)
	first := &d.Builds[0]
	differs := map[string]bool{
		"main-frame": true, "gearbox-bolts": true, "spokes-rear": true, "rear-hub": true, "gear-hub": true, "torque-support": true,
		"service-kit": true, "spare-hanger": true, "hanger": true,
	}
	for i := range d.Builds[1:] {
		other := &d.Builds[i+1]
		// The figures of the bike are those of the first build.
		bare, same := *first, *other
		for _, b := range []*document.Build{&bare, &same} {
			b.ID, b.Name, b.Notes, b.Parts = "", "", "", nil
		}
		if diff := cmp.Diff(bare, same); diff != "" {
			t.Errorf("%s is another bike than %s (-first +other):\n%s", other.ID, first.ID, diff)
		}
		shared := 0
		for _, pair := range parts.Match(first, other) {
			p := pair.A
			if p == nil {
				p = pair.B
			}
			if pair.A != nil && pair.B != nil && cmp.Equal(*pair.A, *pair.B) {
				shared++
				continue
			}
			if document.GroupOf(p.Kind) != "drivetrain" && !differs[p.ID] {
				t.Errorf("%s of %s is not the same in %s, but no part of the gears", p.ID, first.ID, other.ID)
			}
		}
		if shared < 40 {
			t.Errorf("%s and %s share %d lines; want 40 or more", first.ID, other.ID, shared)
		}
	}
}

// What the demo is there to show, checked on the masses alone.
func TestDemoShowsWhereTheMassRides(t *testing.T) {
	d := demo(t)
	bike, unsprung := make(map[string]float64), make(map[string]float64)
	for i := range d.Builds {
		b := &d.Builds[i]
		for _, p := range b.Parts {
			m := p.Mass * float64(p.Quantity)
			switch document.GroupOf(p.Kind) {
			case "bags", "carried":
			default:
				bike[b.ID] += m
			}
			switch p.Carrier {
			case document.RearWheel, document.Swingarm:
				unsprung[b.ID] += m
			case document.Link:
				unsprung[b.ID] += m / 2
			}
		}
		// Common practice, no source: such a bike ready to ride, without luggage.
		if m := bike[b.ID]; m < 15500 || m > 17500 {
			t.Errorf("%s weighs %.0f g without luggage; want 15.5 to 17.5 kg", b.ID, m)
		}
	}
	t.Logf("without luggage %v g, unsprung behind %v g", bike, unsprung)
	if !(bike["derailleur"]+1000 < bike["gearbox"]) {
		t.Errorf("the gearbox build weighs %.0f g, the derailleur build %.0f g; want over a kilogram more", bike["gearbox"], bike["derailleur"])
	}
	if !(unsprung["gearbox"]+1000 < unsprung["gearhub"]) {
		t.Errorf("unsprung behind: gearbox %.0f g, gear hub %.0f g; want over a kilogram less", unsprung["gearbox"], unsprung["gearhub"])
	}

	// And the report says the same, beyond its own doubt.
	r := report.Weigh(d, nil).Report
	if r.Difference == nil {
		t.Fatal("the demo opens without a difference")
	}
	for _, c := range r.Difference.Figures {
		switch c.Key {
		case "unsprung_rear":
			if c.Verdict == "undecided" || c.Verdict == "same" {
				t.Errorf("unsprung behind: %+.0f ± %.0f g is %s", c.Delta, c.Plus, c.Verdict)
			}
			t.Logf("unsprung behind: %.0f, %.0f, %+.0f ± %.0f g: %s", c.A, c.B, c.Delta, c.Plus, c.Verdict)
		case "total":
			t.Logf("total: %.0f, %.0f, %+.0f ± %.0f g: %s", c.A, c.B, c.Delta, c.Plus, c.Verdict)
		}
	}
}
