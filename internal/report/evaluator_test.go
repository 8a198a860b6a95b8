package report_test

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/report"
)

// evaluateAlike hands a text to an evaluator and holds its report against that
// of the text alone.
func evaluateAlike(t interface{ Fatalf(string, ...any) }, v *report.Evaluator, text []byte) {
	e := v.Evaluate(string(text))
	got, err := e.Text()
	if err != nil {
		t.Fatalf("%v", err)
	}
	alone := report.Evaluate(text)
	// The referee is the standard library's encoder, which knows no pieces.
	want, err := json.Marshal(alone)
	if err != nil {
		t.Fatalf("%v", err)
	}
	if diff := cmp.Diff(decoded(t, want), decoded(t, []byte(got))); diff != "" {
		t.Fatalf("the evaluator tells something else (-want +got):\n%s", diff)
	}
	if written, err := report.Write(alone); err != nil || string(written) != got {
		t.Fatalf("the report of the text alone is written in another way (%v):\n%s", err, cmp.Diff(string(written), got))
	}
}

func decoded(t interface{ Fatalf(string, ...any) }, text []byte) (v any) {
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatalf("%v in %s", err, text)
	}
	return v
}

// editPart changes something about a part.
func editPart(t *rapid.T, p *document.Part) {
	v := math.Round(rapid.Float64Range(0, 3000).Draw(t, "value"))
	switch rapid.IntRange(0, 9).Draw(t, "field") {
	case 0, 1, 2:
		p.Mass = v
	case 3:
		p.HalfWidth = v
	case 4:
		p.Offset[rapid.IntRange(0, 2).Draw(t, "axis")] = v / 10
	case 5:
		p.Quantity = int(v / 300)
	case 6:
		p.Kind = rapid.SampledFrom(document.Kinds).Draw(t, "kind").ID
	case 7:
		p.Carrier = rapid.SampledFrom(document.Carriers).Draw(t, "carrier")
	case 8:
		p.Mass = -v // refused: left out
	case 9:
		p.Name, p.Within = "Part", v/60
	}
}

// Whatever was evaluated before, the report of a text is that of the text.
func TestEvaluatorTellsOfTheTextAlone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d := documenttest.Demo(t)
		d.Builds = d.Builds[:rapid.IntRange(1, 3).Draw(rt, "builds")]
		drawn := anyParts(rt) // alike in all builds, in lists cut at different places
		for j := range drawn {
			drawn[j].ID = "drawn" + drawn[j].ID
		}
		for i := range d.Builds {
			own := d.Builds[i].Parts[:rapid.IntRange(1, 12).Draw(rt, "own")]
			d.Builds[i].Parts = append(append([]document.Part{}, own...), drawn[:rapid.IntRange(0, len(drawn)).Draw(rt, "shared")]...)
		}
		d.Show.Compare = nil
		for range rapid.IntRange(0, 2).Draw(rt, "compared") {
			d.Show.Compare = append(d.Show.Compare, d.Builds[rapid.IntRange(0, len(d.Builds)-1).Draw(rt, "one")].ID)
		}
		d.Show.State = rapid.SampledFrom([]document.State{document.Bare, document.Ready, document.Loaded, document.Ridden}).Draw(rt, "state")
		if rapid.Bool().Draw(rt, "no loads") {
			d.Show.Loads = nil
		}
		var v report.Evaluator
		for range rapid.IntRange(2, 6).Draw(rt, "edits") {
			text, err := document.WriteCompact(d)
			if err != nil {
				rt.Fatal(err)
			}
			evaluateAlike(rt, &v, text)
			b := &d.Builds[rapid.IntRange(0, len(d.Builds)-1).Draw(rt, "build")]
			switch rapid.IntRange(0, 9).Draw(rt, "what") {
			case 0:
				b.Frame.Stack++
			case 1:
				evaluateAlike(rt, &v, text[:len(text)-1]) // no document
			case 2:
				d.Show.Supplies = rapid.SampledFrom(document.SupplyLevels).Draw(rt, "supplies")
			default:
				editPart(rt, &b.Parts[rapid.IntRange(0, len(b.Parts)-1).Draw(rt, "part")])
			}
		}
	})
}

// What was not edited is not worked out again: that is what an evaluator is for.
func TestEvaluatorTakesOverWhatDidNotChange(t *testing.T) {
	d := documenttest.Demo(t)
	var v report.Evaluator
	evaluate := func() *report.Evaluation {
		text, err := document.WriteCompact(d)
		if err != nil {
			t.Fatal(err)
		}
		return v.Evaluate(string(text))
	}
	before := evaluate()
	d.Builds[0].Parts[4].Mass += 50
	after := evaluate()
	for i := range d.Builds {
		if same := &before.Report.Builds[i].Figures[0] == &after.Report.Builds[i].Figures[0]; same != (i != 0) {
			t.Errorf("build %d was taken over: %v", i, same)
		}
		if before.Builds[i].Bike != after.Builds[i].Bike {
			t.Errorf("build %d was posed again", i)
		}
	}
}

// BenchmarkEdit2x60 is an edit of a part, from text to text, as the page makes
// it.
func BenchmarkEdit2x60(b *testing.B) {
	d := pair(b, 60)
	var texts [2]string
	for i := range texts {
		d.Builds[0].Parts[i].Mass++
		text, err := document.WriteCompact(d)
		if err != nil {
			b.Fatal(err)
		}
		texts[i] = string(text)
	}
	var v report.Evaluator
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		i++
		if _, err := v.Evaluate(texts[i%2]).Text(); err != nil {
			b.Fatal(err)
		}
	}
}
