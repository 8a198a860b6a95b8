package onscale

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/parts"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// total is the total of a build as the report has it, g.
func total(t *testing.T, e *report.Evaluation, i int) (value, plus float64) {
	t.Helper()
	value, plus, ok := e.Builds[i].Figure("total")
	if !ok {
		t.Fatalf("build %d has no total", i)
	}
	return 1000 * value, 1000 * plus
}

// weighed returns the document with a line of a build weighed to a step, its mass as
// it was.
func weighed(d *document.Document, build, line int, step float64) *document.Document {
	c := *d
	c.Builds = slices.Clone(d.Builds)
	b := &c.Builds[build]
	b.Parts = slices.Clone(b.Parts)
	p := &b.Parts[line]
	p.Basis, p.HalfWidth = document.Weighed, step/float64(p.Quantity)
	return &c
}

// doubtful is the demo, ready and without a load, with nothing weighed, so that
// there is an order to find; with twins it has several lines of one part type.
func doubtful(t *testing.T, seed uint64, twins bool) *document.Document {
	t.Helper()
	d := documenttest.Demo(t)
	d.Show.State, d.Show.Loads = document.Ready, nil
	random := rand.New(rand.NewPCG(seed, 1))
	for i := range d.Builds {
		b := &d.Builds[i]
		for j := range b.Parts {
			p := &b.Parts[j]
			p.Basis = []document.Basis{document.Stated, document.Typical, document.Guessed}[random.IntN(3)]
			p.HalfWidth = math.Round(p.Mass*random.Float64()*0.3*10) / 10
		}
		if twins {
			for k := range 3 {
				p := b.Parts[random.IntN(len(b.Parts))]
				for n := range 2 + k {
					p.ID = "twin" + string(rune('a'+k)) + string(rune('0'+n))
					b.Parts = append(b.Parts, p)
				}
			}
		}
	}
	return d
}

// Each part is weighed in turn, and the report says what is left of the total's ±:
// that is what was told, and nothing narrows it more than what stands first.
func TestTheFirstNarrowsMost(t *testing.T) {
	for seed := range uint64(4) {
		step := []float64{1, 0.1, 5, 20}[seed]
		d := doubtful(t, seed, seed > 0)
		e := report.Weigh(d, nil)
		for i := range d.Builds {
			p := New(e, i, step)
			value, plus := total(t, e, i)
			if math.Abs(p.Total-value) > 1e-6*value || math.Abs(p.Plus-plus) > 1e-6*plus {
				t.Errorf("the total is told as %g ±%g, the report has %g ±%g", p.Total, p.Plus, value, plus)
			}
			if len(p.Left) != len(d.Builds[i].Parts) || len(p.First) != len(p.Left) {
				t.Fatalf("%d and %d lines of %d", len(p.Left), len(p.First), len(d.Builds[i].Parts))
			}
			best := math.Inf(1)
			then := map[string]float64{}
			for j, l := range p.Left {
				if l.ID != d.Builds[i].Parts[j].ID {
					t.Fatalf("line %d is %s, in the list %s", j, l.ID, d.Builds[i].Parts[j].ID)
				}
				_, after := total(t, report.Weigh(weighed(d, i, j, step), nil), i)
				if math.Abs(after-l.Then) > 1e-6*plus {
					t.Errorf("seed %d: with %s weighed ± is %g, told as %g", seed, l.ID, after, l.Then)
				}
				best, then[l.ID] = min(best, after), after
			}
			if first := then[p.First[0]]; first > best+1e-6*plus {
				t.Errorf("seed %d: %s is first and leaves ±%g, another leaves ±%g", seed, p.First[0], first, best)
			}
			for k := 1; k < len(p.First); k++ {
				if then[p.First[k]] < then[p.First[k-1]]-1e-6*plus {
					t.Errorf("seed %d: %s leaves less than %s before it", seed, p.First[k], p.First[k-1])
				}
			}
		}
	}
}

// The build is weighed to its end in the order that is told: the shares come to all
// and nothing, and ± to what was promised.
func TestProgress(t *testing.T) {
	d := doubtful(t, 7, false)
	const step = 2
	start := New(report.Weigh(d, nil), 0, step)
	if start.Weighed != 0 || start.Share != 0 || math.Abs(start.Doubt-1) > 1e-9 {
		t.Errorf("before anything is weighed: %+v", start)
	}
	last, n := start, len(start.Left)
	for range n {
		line := slices.IndexFunc(d.Builds[0].Parts, func(p document.Part) bool { return p.ID == last.First[0] })
		at := slices.IndexFunc(last.Left, func(l Left) bool { return l.ID == last.First[0] })
		d = weighed(d, 0, line, step)
		next := New(report.Weigh(d, nil), 0, step)
		if len(next.Left) != len(last.Left)-1 || slices.Contains(next.First, last.First[0]) {
			t.Fatalf("%s is still to be weighed", last.First[0])
		}
		if grown := next.Weighed - last.Weighed; math.Abs(grown-last.Left[at].Mass) > 1e-6 {
			t.Errorf("with %s %g g more are weighed, of %g g", last.First[0], grown, last.Left[at].Mass)
		}
		if math.Abs(next.Plus-last.Left[at].Then) > 1e-6*start.Plus {
			t.Errorf("after %s ± is %g, told as %g", last.First[0], next.Plus, last.Left[at].Then)
		}
		if next.Doubt > last.Doubt+1e-9 {
			t.Errorf("what is not weighed has %g of the doubt, before %g", next.Doubt, last.Doubt)
		}
		last = next
	}
	if math.Abs(last.Share-1) > 1e-9 || last.Doubt != 0 || math.Abs(last.Plus-start.Least) > 1e-6*start.Plus {
		t.Errorf("at the end %+v; ± was to become %g", last, start.Least)
	}
}

// A bike whose figures have an error has no total in the report; its parts can be
// weighed all the same.
func TestPlanWithoutAPose(t *testing.T) {
	d := doubtful(t, 1, false)
	d.Builds[0].Frame.HeadAngle = 5
	e := report.Weigh(d, nil)
	if e.Builds[0] != nil {
		t.Fatal("the bike has a pose")
	}
	if p := New(e, 0, 1); p.Total <= 0 || len(p.First) != len(d.Builds[0].Parts) || p.Left[0].Then >= p.Plus {
		t.Errorf("%+v", p)
	}
}

func TestTake(t *testing.T) {
	one := document.Part{ID: "a", Kind: "saddle", Quantity: 1, Mass: 400, HalfWidth: 40, Basis: document.Typical}
	four := document.Part{ID: "b", Kind: "other", Quantity: 4, Mass: 10, HalfWidth: 1, Basis: document.Guessed}
	for _, c := range []struct {
		part    *document.Part
		reading Reading
		want    Taken
	}{
		{&one, Reading{Typed: "512", Unit: "g", Step: 1}, Taken{Shares: []Share{{Mass: 512, HalfWidth: 1}}, Net: 512, Plus: 1, Was: 400, WasPlus: 40, Outside: true}},
		{&one, Reading{Typed: "0,43 kg", Unit: "g", Step: 5}, Taken{Shares: []Share{{Mass: 430, HalfWidth: 5}}, Net: 430, Plus: 5, Was: 400, WasPlus: 40}},
		// Two readings, of which each is off by itself: 2² = 1.41² + 1.41².
		{&one, Reading{Typed: "530", Unit: "g", Step: 1, Tare: 120}, Taken{Shares: []Share{{Mass: 410, HalfWidth: 1.4}}, Net: 410, Plus: 1.4, Was: 400, WasPlus: 40}},
		{&four, Reading{Typed: "42", Unit: "g", Step: 1}, Taken{Shares: []Share{{Mass: 10.5, HalfWidth: 0.25}}, Net: 42, Plus: 1, Was: 40, WasPlus: 4}},
		{&four, Reading{Typed: "11", Unit: "g", Step: 1, One: true}, Taken{Shares: []Share{{Mass: 11, HalfWidth: 1}}, Net: 11, Plus: 1, Was: 10, WasPlus: 1}},
		{&one, Reading{Typed: "5.12", Unit: "g", Step: 0.1}, Taken{Shares: []Share{{Mass: 5.12, HalfWidth: 0.1}}, Net: 5.12, Plus: 0.1, Was: 400, WasPlus: 40, Outside: true, Unusual: parts.Light}},
	} {
		got, field, err := Take([]*document.Part{c.part}, &c.reading, "")
		if err != nil {
			t.Errorf("%+v: %s: %v", c.reading, field, err)
			continue
		}
		if c.want.Unusual != "" && got.Usual <= 0 {
			t.Errorf("%+v is unusual, and nothing is usual", c.reading)
		}
		c.want.Basis, c.want.Usual, c.want.Shares[0].Part = document.Weighed, got.Usual, c.part.ID
		if !reflect.DeepEqual(*got, c.want) {
			t.Errorf("%+v gives %+v, want %+v", c.reading, *got, c.want)
		}
	}
	for _, c := range []struct {
		reading Reading
		field   string
	}{
		{Reading{Typed: "", Unit: "g", Step: 1}, "typed"},
		{Reading{Typed: "heavy", Unit: "g", Step: 1}, "typed"},
		{Reading{Typed: "0", Unit: "g", Step: 1}, "typed"},
		{Reading{Typed: "100", Unit: "g", Step: 1, Tare: 100}, "typed"},
		{Reading{Typed: "100", Unit: "g", Step: 0}, "step_g"},
		{Reading{Typed: "100", Unit: "g", Step: math.NaN()}, "step_g"},
		{Reading{Typed: "100", Unit: "g", Step: 1, Tare: -1}, "tare_g"},
		{Reading{Typed: "100", Unit: "g", Step: 1, Tare: math.Inf(1)}, "tare_g"},
	} {
		got, field, err := Take([]*document.Part{&one}, &c.reading, "")
		if err == nil || field != c.field {
			t.Errorf("%+v gives %+v and %q, a problem of %q; want one of %q", c.reading, got, err, field, c.field)
		}
		var m words.Message
		if errors.As(err, &m) && m.In(nil) == "" {
			t.Errorf("%+v: nothing is said", c.reading)
		}
	}
}

// Several parts on the scale at once share its reading by what they were taken to
// weigh, and their error stays one: their sum is as well known as the scale reads,
// whatever the parts, and in the report as here.
func TestTakeTogether(t *testing.T) {
	d := doubtful(t, 11, false)
	b := &d.Builds[0]
	var on []*document.Part
	for i := range b.Parts {
		if p := &b.Parts[i]; p.Mass > 0 && p.Mass < 150 && len(on) < 5 {
			on = append(on, p)
		}
	}
	if len(on) < 4 {
		t.Fatalf("the demo has %d small parts", len(on))
	}
	was := 0.0
	for _, p := range on {
		was += float64(p.Quantity) * p.Mass
	}
	got, _, err := Take(on, &Reading{Typed: words.Number(math.Round(1.1*was)).String() + " g", Step: 2}, "together-1")
	if err != nil {
		t.Fatal(err)
	}
	rest := *b
	rest.Parts = slices.DeleteFunc(slices.Clone(b.Parts), func(p document.Part) bool {
		return slices.ContainsFunc(on, func(q *document.Part) bool { return q.ID == p.ID })
	})
	for i, s := range got.Shares {
		if want := on[i].Mass * got.Net / was; math.Abs(s.Mass-want) > 1e-4 || s.Part != on[i].ID || s.Joint == nil || s.Joint.Mass != s.Mass {
			t.Errorf("share %d is %+v, want %g g of %s", i, s, want, on[i].ID)
		}
		on[i].Mass, on[i].HalfWidth, on[i].Basis, on[i].Joint = s.Mass, s.HalfWidth, document.Weighed, s.Joint
	}
	whole, plus := total(t, report.Weigh(d, nil), 0)
	if p := New(report.Weigh(d, nil), 0, 1); math.Abs(p.Total-whole) > 1e-6*whole || math.Abs(p.Plus-plus) > 1e-6*plus {
		t.Errorf("the total is told as %g ±%g, the report has %g ±%g", p.Total, p.Plus, whole, plus)
	}
	// Nothing else on the bike: ± the step, and not less for there being several.
	alone := *d
	alone.Builds = slices.Clone(d.Builds)
	for i := range rest.Parts {
		rest.Parts[i].HalfWidth = 0
	}
	alone.Builds[0].Parts = rest.Parts
	for _, p := range on {
		alone.Builds[0].Parts = append(alone.Builds[0].Parts, *p)
	}
	if _, plus := total(t, report.Weigh(&alone, nil), 0); math.Abs(plus-2) > 1e-3 {
		t.Errorf("the parts of one reading of ±2 g are known within ±%g g", plus)
	}
	// One of them weighed anew leaves the reading; the others stay in it.
	last := &alone.Builds[0].Parts[len(alone.Builds[0].Parts)-1]
	share := float64(last.Quantity) * last.HalfWidth
	last.Mass, last.HalfWidth = last.Mass+1, 0
	if _, plus := total(t, report.Weigh(&alone, nil), 0); math.Abs(plus-(2-share)) > 1e-3 {
		t.Errorf("without the last of ±%g g the others are known within ±%g g", share, plus)
	}
}

// A reading of parts that two builds have in common is no difference between them.
func TestTogetherCancels(t *testing.T) {
	d := doubtful(t, 3, false)
	d.Builds = append(d.Builds[:1], d.Builds[0])
	d.Builds[1].ID = "copy"
	d.Builds[1].Parts = slices.Clone(d.Builds[0].Parts)
	for i := range 2 {
		for j := range 6 {
			p := &d.Builds[i].Parts[j]
			p.Basis, p.HalfWidth, p.Joint = document.Weighed, float64(j), &document.Joint{ID: "together-1", Mass: p.Mass}
		}
	}
	d.Show.Compare = []string{d.Builds[0].ID, "copy"}
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	e := report.Evaluate(text)
	if e.Difference == nil {
		t.Fatal("no difference")
	}
	for _, f := range e.Difference.Figures {
		if f.Plus > 1e-9 {
			t.Errorf("%s differs by ±%g", f.Key, f.Plus)
		}
	}
}

func TestTakeTogetherRefuses(t *testing.T) {
	a, b := document.Part{ID: "a", Name: "A", Mass: 10, Quantity: 1}, document.Part{ID: "b", Name: "B", Quantity: 1}
	for name, on := range map[string][]*document.Part{"no mass": {&a, &b}, "twice": {&a, &a}} {
		if got, field, err := Take(on, &Reading{Typed: "20 g", Step: 1, With: []string{"b"}}, "j"); err == nil || field != "with" {
			t.Errorf("%s: %+v, a problem of %q: %v", name, got, field, err)
		}
	}
}
