package report_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// Two builds that are the same say so, in every figure.
func TestSame(t *testing.T) {
	b := fitted("b")
	b.Name = "Another name"
	r := report.Weigh(documentOf(fitted("a"), b), nil).Report
	for _, c := range r.Difference.Figures {
		if c.Verdict != report.Same || c.Delta != 0 || c.Plus != 0 {
			t.Errorf("%+v", c)
		}
	}
	if d := r.Difference; len(d.Figures) != 25 || len(d.Parts) != 0 || len(d.Moved) != 0 || len(d.Weigh) != 0 {
		t.Errorf("%d figures; parts %v, moved %v, weigh %v", len(d.Figures), d.Parts, d.Moved, d.Weigh)
	}
	if !strings.Contains(r.Difference.Summary, "weigh the same") {
		t.Errorf("summary: %q", r.Difference.Summary)
	}
}

// Common parts cancel, however little is known about them.
func TestCommonPartsCancel(t *testing.T) {
	a, b := fitted("a"), fitted("b")
	b.Parts = append(b.Parts, vague("bell", 60, 6, document.ForkUpper, 900, 0, 1050))
	r := report.Weigh(documentOf(a, b), nil).Report
	c := change(t, r.Difference, "total")
	if want := (report.Change{Key: "total", Unit: "g", A: c.A, B: c.A + 60, Delta: 60, Plus: 6, Verdict: report.More}); c != want {
		t.Errorf("%+v, want %+v", c, want) // all that the bell can be off by
	}
	near(t, "± of a total", figure(t, &r.Builds[0], "total").Plus, 2/math.Sqrt(3)*math.Sqrt(250*250+80*80+30*30+120*120+100*100+70*70+60*60+90*90+900*900), 0.01)
	// The place of a changed part cancels as well when it stays where it was.
	b = fitted("b")
	b.Parts[0].Mass, b.Parts[0].HalfWidth, b.Parts[0].Basis, b.Parts[0].Name = 3400, 0, document.Weighed, "Weighed frame"
	a.Parts[0] = b.Parts[0]
	a.Parts[0].Name = "Weighed frame of the same mass" // another source, the same figures
	if c := change(t, report.Weigh(documentOf(a, b), nil).Report.Difference, "centre_x"); c.Plus != 0 {
		t.Errorf("changed part at the same place: %+v", c)
	}
}

// A part that keeps its id and mass and is renamed in one build is one piece
// still: nothing is added to the difference, and nothing is listed. That is so
// for one of several of a type as well, and what a build is by itself stays.
func TestRenamedPartCancels(t *testing.T) {
	pieces := func(id string) document.Build {
		b := fitted(id)
		for _, place := range []float64{0, 1190} {
			p := vague("tyre", 800, 60, document.RearWheel, place, 0, 371)
			p.ID, p.Kind = p.ID+p.Station, "tyre"
			if place > 0 {
				p.ID, p.Carrier = "front "+p.ID, document.FrontWheel
			}
			b.Parts = append(b.Parts, p)
		}
		return b
	}
	alone := report.Weigh(documentOf(pieces("b")), nil).Report
	for name, rename := range map[string]func(b *document.Build){
		"one of its kind": func(b *document.Build) { b.Parts[0].Name, b.Parts[8].Name = "Frame, blue", "Bag, my own" },
		"one of two":      func(b *document.Build) { b.Parts[9].Name = "Tyre, rear" },
		"two apart":       func(b *document.Build) { b.Parts[9].Name, b.Parts[10].Name = "Tyre, rear", "Tyre, front" },
		"two together":    func(b *document.Build) { b.Parts[9].Name, b.Parts[10].Name = "Tyre, new", "Tyre, new" },
	} {
		a, b := pieces("a"), pieces("b")
		rename(&b)
		for _, d := range []*document.Document{documentOf(a, b), documentOf(b, a)} {
			r := report.Weigh(d, nil).Report
			for _, c := range r.Difference.Figures {
				if c.Delta != 0 || c.Plus != 0 {
					t.Errorf("%s: %+v", name, c)
				}
			}
			if n := len(r.Difference.Parts) + len(r.Difference.Moved) + len(r.Difference.Weigh); n != 0 {
				t.Errorf("%s: listed: %+v %+v %+v", name, r.Difference.Parts, r.Difference.Moved, r.Difference.Weigh)
			}
			for _, g := range r.Difference.Groups {
				if g.Plus != 0 {
					t.Errorf("%s: %+v", name, g)
				}
			}
		}
		want := report.Weigh(documentOf(b), nil).Report.Builds[0]
		if d := cmp.Diff(want.Figures, report.Weigh(documentOf(a, b), nil).Report.Builds[1].Figures); d != "" {
			t.Errorf("%s: beside another build it is another: %s", name, d)
		}
		if d := cmp.Diff(alone.Builds[0].Figures, want.Figures); (d != "") != strings.HasPrefix(name, "one of two") && (d != "") != strings.HasPrefix(name, "two apart") {
			t.Errorf("%s: by itself: %s", name, d)
		}
	}
	// What is renamed and weighed is another figure, and listed.
	b := pieces("b")
	b.Parts[0].Name, b.Parts[0].HalfWidth, b.Parts[0].Basis = "Frame, blue", 1, document.Weighed
	if c := change(t, report.Weigh(documentOf(pieces("a"), b), nil).Report.Difference, "total"); c.Plus < 250 {
		t.Errorf("weighed besides: %+v", c)
	}
}

// How well a place is known is told as a change, also when nothing else is one.
func TestPlaceKnownBetterIsListed(t *testing.T) {
	a, b := fitted("a"), fitted("b")
	b.Parts[8].Within = 15
	d := report.Weigh(documentOf(a, b), nil).Report.Difference
	if len(d.Parts) != 1 || d.Parts[0].What != report.Changed || d.Parts[0].A != "bag" || d.Parts[0].Delta != 0 || d.Parts[0].Plus != 0 ||
		d.Parts[0].WithinA != 40 || d.Parts[0].WithinB != 15 {
		t.Errorf("%+v", d.Parts)
	}
	b.Parts[8].At[0] += 300
	d = report.Weigh(documentOf(a, b), nil).Report.Difference
	if len(d.Parts) != 1 || d.Parts[0].What != report.Moved || d.Parts[0].WithinB != 15 {
		t.Errorf("moved besides: %+v", d.Parts)
	}
}

// What is said about doubt is what happens when masses and places are drawn at
// random within their half-widths: Monte Carlo through Evaluate's own figures
// (JCGM 101:2008). Drawn parts of one source get one draw, in both builds.
func TestDifferenceAgainstDraws(t *testing.T) {
	draws := 3000
	if testing.Short() {
		draws = 500
	}
	a, b := fitted("a"), other("b")
	first := report.Weigh(documentOf(a, b), nil).Report
	rng := rand.New(rand.NewPCG(1, 2))
	n := len(first.Difference.Figures)
	sum, square := make([]float64, n), make([]float64, n)
	totals := make([]float64, 0, draws)
	for range draws {
		type source struct {
			name       string
			mass, half float64
		}
		drawn := map[source]float64{}
		moved := map[string]document.Vec3{}
		draw := func(build document.Build) document.Build {
			out := build
			out.Parts = append([]document.Part(nil), build.Parts...)
			for i := range out.Parts {
				p := &out.Parts[i]
				s := source{p.Name, p.Mass, p.HalfWidth}
				if _, ok := drawn[s]; !ok {
					drawn[s] = p.HalfWidth * (2*rng.Float64() - 1)
				}
				if _, ok := moved[p.ID]; !ok {
					var by document.Vec3
					for k := range by {
						by[k] = p.Within * (2*rng.Float64() - 1)
					}
					moved[p.ID] = by
				}
				at := *p.At
				for k := range at {
					at[k] += moved[p.ID][k]
				}
				p.Mass, p.HalfWidth, p.At, p.Within = p.Mass+drawn[s], 0, &at, 0
			}
			return out
		}
		r := report.Weigh(documentOf(draw(a), draw(b)), nil).Report
		for i, c := range r.Difference.Figures {
			d := c.Delta - first.Difference.Figures[i].Delta
			sum[i] += d
			square[i] += d * d
			if c.Key == "total" {
				totals = append(totals, d)
			}
		}
	}
	for i, c := range first.Difference.Figures {
		mean := sum[i] / float64(draws)
		standard := math.Sqrt(square[i]/float64(draws) - mean*mean)
		if c.Plus == 0 && standard == 0 {
			continue
		}
		// A standard deviation of n draws is itself known to 1/√(2n); the
		// figures are not linear, which the law of propagation neglects.
		within := 0.05 + 4/math.Sqrt(2*float64(draws))
		if c.Plus < 0.05 { // rounding of the report shows
			within += 0.1
		}
		if r := 2 * standard / c.Plus; math.Abs(r-1) > within {
			t.Errorf("%s: ± %v told, %v drawn", c.Key, c.Plus, 2*standard)
		}
	}
	inside := 0
	for _, d := range totals {
		if math.Abs(d) <= change(t, first.Difference, "total").Plus {
			inside++
		}
	}
	if share := float64(inside) / float64(draws); share < 0.93 {
		t.Errorf("only %v of the draws within ±", share)
	}
}

// The movement of the centre of mass is shared out without a rest.
func TestMovers(t *testing.T) {
	a, b := fitted("a"), other("b")
	b.Frame.Chainstay, b.Frame.HeadAngle = 440, 65
	b.Parts[8].At = &document.Vec3{900, 0, 900}
	d := report.Weigh(documentOf(a, b), nil).Report.Difference
	var sum document.Vec3
	for i, m := range d.Moved {
		for k := range sum {
			sum[k] += m.By[k]
		}
		if i > 0 && norm(m.By) > norm(d.Moved[i-1].By)+0.02 {
			t.Errorf("%s before %s, which moved it more", d.Moved[i-1].Name, m.Name)
		}
	}
	for k, key := range []string{"centre_x", "centre_y", "centre_z"} {
		near(t, key, sum[k], change(t, d, key).Delta, 0.005*float64(len(d.Moved)+1))
	}
	if d.Moved[0].Name != "Part bag" || d.Moved[0].A != "bag" || d.Moved[0].B != "bag" {
		t.Errorf("moved most: %+v", d.Moved[0])
	}
}

func norm(v document.Vec3) float64 { return math.Sqrt(v[0]*v[0] + v[1]*v[1] + v[2]*v[2]) }

func TestPartChanges(t *testing.T) {
	a, b := fitted("a"), other("b")
	b.Parts[8].At = &document.Vec3{900, 180, 600} // the bag goes to the front
	b.Parts[1].Carrier = document.MainFrame       // and the swingarm is said to be frame
	b.Parts[4].Quantity = 2                       // two front wheels
	b.Parts[2].At, b.Parts[2].Station = nil, ""   // an error: left out, in b only
	d := report.Weigh(documentOf(a, b), nil).Report.Difference
	type line struct{ What, A, B string }
	got := map[line]report.PartChange{}
	for i, c := range d.Parts {
		got[line{c.What, c.A, c.B}] = c
		if i > 0 && math.Abs(c.Delta) > math.Abs(d.Parts[i-1].Delta) {
			t.Errorf("%s after a smaller change", c.Name)
		}
	}
	want := map[line]report.PartChange{
		{report.Added, "", "gearbox"}:                  {Delta: 2900, Plus: 110},
		{report.Added, "", "plain hub"}:                {Delta: 350, Plus: 25},
		{report.Removed, "hub", ""}:                    {Delta: -2500, Plus: 90},
		{report.Removed, "shock", ""}:                  {Delta: -450, Plus: 30},
		{report.Changed, "frame", "frame"}:             {Delta: 500, Plus: 433.44},
		{report.Changed, "front wheel", "front wheel"}: {Delta: 1700, Plus: 100},
		{report.Moved, "bag", "bag"}:                   {Moved: document.Vec3{960, 0, 0}, Far: 960},
		{report.Moved, "swingarm", "swingarm"}:         {CarrierA: "swingarm", CarrierB: "main-frame"},
	}
	if diff := cmp.Diff(want, got, cmpopts.IgnoreFields(report.PartChange{}, "What", "A", "B", "Name", "Group")); diff != "" {
		t.Error(diff)
	}
}

// A part that stays at its station moves with the frame, and is told so.
func TestMovedWithFrame(t *testing.T) {
	a := bike("a")
	a.Parts = []document.Part{{
		ID: "bell", Name: "Bell", Kind: "bell", Quantity: 1, Mass: 50, Basis: document.Weighed, Station: "bar",
		Carrier: document.ForkUpper, Shape: document.Shape{Form: document.FormPoint},
	}, point("frame", 3000, document.MainFrame, 400, 0, 500)}
	b := a
	b.ID, b.Frame.Reach = "b", 480
	d := report.Weigh(documentOf(a, b), nil).Report.Difference
	if len(d.Parts) != 1 || d.Parts[0].What != report.Moved || !d.Parts[0].WithFrame || d.Parts[0].Moved[0] < 20 {
		t.Errorf("%+v", d.Parts)
	}
}

// Groups add up to the whole.
func TestGroups(t *testing.T) {
	d := pair(t, 60)
	d.Builds[1].Parts = d.Builds[1].Parts[5:]
	r := report.Weigh(d, nil).Report
	sum := 0.0
	for i, g := range r.Difference.Groups {
		sum += g.Delta
		near(t, g.Key, g.Delta, g.B-g.A, 0.02)
		if i > 0 && math.Abs(g.Delta) > math.Abs(r.Difference.Groups[i-1].Delta) {
			t.Errorf("%s after a smaller change", g.Key)
		}
	}
	near(t, "all groups", sum, change(t, r.Difference, "total").Delta, 0.1)
	for _, b := range r.Builds {
		for _, subsets := range [][]report.Subset{b.Groups, b.Carriers} {
			sum, lines := 0.0, 0
			for _, s := range subsets {
				sum += s.Mass
				lines += s.Count
			}
			near(t, "all subsets of "+b.ID, sum, figure(t, &b, "total").Value, 0.1)
			if lines != len(b.Parts) {
				t.Errorf("%d lines, want %d", lines, len(b.Parts))
			}
		}
	}
}

// A promise is kept: weigh what the advice says, and ± is what it said.
func TestAdvice(t *testing.T) {
	weighAll := func(b *document.Build, id string) {
		for i := range b.Parts {
			if b.Parts[i].ID == id {
				b.Parts[i].Basis, b.Parts[i].HalfWidth = document.Weighed, 1
			}
		}
	}
	d := documentOf(fitted("a"), other("b"))
	advice := report.Weigh(d, nil).Report.Builds[0].Weigh
	if len(advice) < 3 || advice[0].Part != "bag" {
		t.Fatalf("advice on a total: %+v", advice)
	}
	for _, line := range advice {
		before := figure(t, &report.Weigh(d, nil).Report.Builds[0], "total").Plus
		near(t, "now, before "+line.Part, line.Now, before, 0.011)
		weighAll(&d.Builds[0], line.Part)
		after := figure(t, &report.Weigh(d, nil).Report.Builds[0], "total").Plus
		near(t, "then, after "+line.Part, line.Then, after, 0.011)
	}

	// Two builds that are too close to tell, until the frames are weighed.
	a, b := fitted("a"), fitted("b")
	b.Parts[0] = vague("frame", 3600, 250, document.MainFrame, 480, 0, 550)
	b.Parts[7] = vague("hub", 2560, 60, document.RearWheel, 0, 0, 371)
	d = documentOf(a, b)
	r := report.Weigh(d, nil).Report
	c := change(t, r.Difference, "total")
	if c.Verdict != report.Undecided {
		t.Fatalf("%+v is decided", c)
	}
	settled := false
	for _, line := range r.Difference.Weigh {
		if settled = settled || line.Settles; settled != line.Settles {
			t.Errorf("settled, and then not: %+v", line)
		}
		weighAll(d.Build(line.Build), line.Part)
		c := change(t, report.Weigh(d, nil).Report.Difference, "total")
		near(t, "then, after "+line.Part, line.Then, c.Plus, 0.011)
		if (c.Verdict == report.More) != line.Settles {
			t.Errorf("after %s: %+v, promised settled: %v", line.Part, c, line.Settles)
		}
	}
	if !settled {
		t.Errorf("nothing settles it: %+v", r.Difference.Weigh)
	}
	if !strings.Contains(r.Difference.Summary, "undecided") || !strings.Contains(r.Difference.Summary, "would settle") {
		t.Errorf("summary: %q", r.Difference.Summary)
	}
}

// A verdict is what the numbers beside it say.
func TestVerdicts(t *testing.T) {
	a := bike("a")
	a.Parts = []document.Part{vague("p", 1000, 10, document.MainFrame, 0, 0, 0)}
	for _, c := range []struct {
		mass, half float64
		want       string
	}{
		{1000, 10, report.Same}, {1000, 11, report.Undecided}, {1005, 10, report.Undecided},
		{1100, 10, report.More}, {900, 10, report.Less},
	} {
		b := bike("b")
		b.Parts = []document.Part{vague("p", c.mass, c.half, document.MainFrame, 0, 0, 0)}
		r := report.Weigh(documentOf(a, b), nil).Report
		if got := change(t, r.Difference, "total"); got.Verdict != c.want {
			t.Errorf("%v ± %v: %+v, want %s", c.mass, c.half, got, c.want)
		}
		word := map[string]string{report.Same: "the same", report.Undecided: "undecided", report.More: "heavier than", report.Less: "lighter than"}[c.want]
		if !strings.Contains(r.Difference.Summary, word) {
			t.Errorf("%s: summary %q", c.want, r.Difference.Summary)
		}
	}
}

// What a build is set against does not change its own figures, and the
// difference turns round with the builds.
func TestDifferenceTurnsRound(t *testing.T) {
	ab := report.Weigh(documentOf(fitted("a"), other("b")), nil).Report
	ba := report.Weigh(documentOf(other("b"), fitted("a")), nil).Report
	if d := cmp.Diff(ab.Builds[0], ba.Builds[1]); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff(ab.Builds[1], ba.Builds[0]); d != "" {
		t.Error(d)
	}
	for i, c := range ab.Difference.Figures {
		o := ba.Difference.Figures[i]
		if c.Delta != -o.Delta && c.Delta != 0 || c.Plus != o.Plus || c.A != o.B {
			t.Errorf("%+v and %+v", c, o)
		}
	}
	if len(ab.Difference.Moved) != len(ba.Difference.Moved) {
		t.Error("not the same parts moved it")
	}
}
