package report_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// rows of a table by key.
func rowsOf(s *report.SideBySide) map[string]report.Row {
	all := make(map[string]report.Row)
	for _, c := range s.Chapters {
		for _, r := range c.Rows {
			all[r.Key] = r
		}
	}
	return all
}

// The referee is the comparison of two builds: what it says of a figure and of a
// group stands in the table too, whichever of them is the base, and the table
// changes nothing of the evaluation.
func TestSideBySideSaysWhatTheDifferenceSays(t *testing.T) {
	for _, a := range []string{"gearbox", "gearhub", "derailleur"} {
		for _, b := range []string{"gearbox", "gearhub", "derailleur"} {
			if a == b {
				continue
			}
			d := documenttest.Demo(t)
			d.Show.Compare, d.Show.Base = []string{a, b}, a
			e := report.Weigh(d, nil)
			before, err := e.Text()
			if err != nil {
				t.Fatal(err)
			}
			table := e.SideBySide()
			at := slices.IndexFunc(table.Builds, func(c report.Column) bool { return c.ID == b })
			rows := rowsOf(table)
			for _, f := range e.Report.Difference.Figures {
				r, ok := rows[f.Key]
				if !ok {
					t.Errorf("%s is not in the table", f.Key)
					continue
				}
				if c := r.Cells[at]; c == nil || c.Value != f.B || c.Delta != f.Delta || c.DeltaPlus != f.Plus || c.Verdict != f.Verdict {
					t.Errorf("%s against %s: %s is %+v, the difference says %+v", b, a, f.Key, c, f)
				}
			}
			for _, g := range e.Report.Difference.Groups {
				if c := rows["group."+g.Key].Cells[at]; c == nil || c.Value != g.B || c.Delta != g.Delta || c.DeltaPlus != g.Plus {
					t.Errorf("%s against %s: group %s is %+v, the difference says %+v", b, a, g.Key, c, g)
				}
			}
			if after, err := e.Text(); err != nil || after != before {
				t.Error("the table changed the evaluation")
			}
		}
	}
}

// A best is named where it is decided, and where it is not nobody is.
func TestBestIsNamedOnlyWhereItIsDecided(t *testing.T) {
	d := documenttest.Demo(t)
	rows := rowsOf(report.Weigh(d, nil).SideBySide())
	if got := rows["total"].Best; got != "derailleur" {
		t.Errorf("the lightest is %q, want the derailleurs", got)
	}
	if got := rows["unsprung_rear"].Best; got != "gearbox" {
		t.Errorf("the least unsprung mass at the rear has %q, want the gearbox", got)
	}
	if got := rows["centre_x"]; got.Best != "" || got.Wanted != "" {
		t.Errorf("of the centre of mass none is better: %+v", got)
	}
	// A doubt as large as the bike, which the others do not have.
	p := d.Build("derailleur").Part("chain")
	p.HalfWidth = 20000
	if got := rowsOf(report.Weigh(d, nil).SideBySide())["total"].Best; got != "" {
		t.Errorf("the lightest is %q, though nothing is decided", got)
	}
	// Only what is ticked.
	d.Show.Table, d.Show.Base = []string{"gearbox", "gearhub"}, "gearhub"
	if s := report.Weigh(d, nil).SideBySide(); len(s.Builds) != 2 || s.Base != "gearhub" {
		t.Errorf("%+v", s.Builds)
	}
}

// Three copies, one part weighed in one of them and, being the same part, in
// all: no difference arises from it, and the ± of every total shrinks.
func TestWeighedOnceForAllBuilds(t *testing.T) {
	d := documenttest.Demo(t)
	d.Builds = d.Builds[:1]
	d.CopyBuild("gearbox", "B")
	d.CopyBuild("gearbox", "C")
	before := rowsOf(report.Weigh(d, nil).SideBySide())
	weighOnce(d, 0, slices.IndexFunc(d.Builds[0].Parts, func(p document.Part) bool { return p.ID == "gearbox" }), 2312)
	after := rowsOf(report.Weigh(d, nil).SideBySide())
	for key, row := range after {
		for i, c := range row.Cells {
			if c.Verdict != report.Same {
				t.Errorf("%s of build %d differs: %+v", key, i, c)
			}
		}
	}
	for i, c := range after["total"].Cells {
		if old := before["total"].Cells[i]; c.Plus >= old.Plus || c.Value == old.Value {
			t.Errorf("total of build %d: %+v, before %+v", i, c, old)
		}
	}
}

// weighOnce weighs a part: in its build, and in all in which it is the same.
func weighOnce(d *document.Document, build, part int, grams float64) {
	at := parts.Place{Owner: build, Item: part}
	for _, o := range append(parts.ShareOf(d.Builds).Same(at), at) {
		p := &d.Builds[o.Owner].Parts[o.Item]
		p.Mass, p.HalfWidth, p.Basis = grams, 1, document.Weighed
	}
}

// Weighing what is shared never widens the ± of a difference in mass.
func TestWeighingNeverWidensADifference(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for range 60 {
		d := documenttest.Demo(t)
		d.CopyBuild("gearhub", "copy")
		for range rng.IntN(10) {
			b := rng.IntN(len(d.Builds))
			weighOnce(d, b, rng.IntN(len(d.Builds[b].Parts)), 100+rng.Float64()*900)
		}
		before := rowsOf(report.Weigh(d, nil).SideBySide())["total"]
		b := rng.IntN(len(d.Builds))
		i := rng.IntN(len(d.Builds[b].Parts))
		p := d.Builds[b].Parts[i]
		if p.HalfWidth <= 1 {
			continue
		}
		weighOnce(d, b, i, p.Mass)
		after := rowsOf(report.Weigh(d, nil).SideBySide())["total"]
		for k, c := range after.Cells {
			if c.DeltaPlus > before.Cells[k].DeltaPlus+0.011 { // told to a hundredth of a gram
				t.Errorf("weighing %s of %s: the ± of a difference was %g g and is %g g", p.Name, d.Builds[b].Name, before.Cells[k].DeltaPlus, c.DeltaPlus)
			}
		}
	}
}

func BenchmarkSideBySideOfTen(b *testing.B) {
	d := documenttest.Demo(b)
	for len(d.Builds) < 10 {
		d.CopyBuild(d.Builds[len(d.Builds)%3].ID, "copy")
	}
	e := report.Weigh(d, nil)
	for b.Loop() {
		e.SideBySide()
	}
}
