package report_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// Ten thousand parts a build: nothing is lost, and the answer is sound.
func TestManyParts(t *testing.T) {
	n := 10000
	if testing.Short() {
		n = 2000
	}
	d := pair(t, n)
	r := report.Weigh(d, nil).Report
	if e := errorsOf(r); len(e) > 0 {
		t.Fatal(e[0])
	}
	sum := 0.0
	for i := range d.Builds[0].Parts {
		p := &d.Builds[0].Parts[i]
		sum += p.Mass * float64(p.Quantity)
	}
	near(t, "total", figure(t, &r.Builds[0], "total").Value, sum, 0.01)
	delta := 0.0
	for i := range d.Builds[0].Parts {
		a, b := &d.Builds[0].Parts[i], &d.Builds[1].Parts[i]
		delta += b.Mass*float64(b.Quantity) - a.Mass*float64(a.Quantity)
	}
	near(t, "difference", change(t, r.Difference, "total").Delta, delta, 0.01)
	if len(r.Builds[0].Weigh) == 0 || len(r.Builds[0].Weigh) > 12 {
		t.Errorf("%d lines of advice", len(r.Builds[0].Weigh))
	}
	writable(t, r)
}

// writable checks that a report is JSON that says the same.
func writable(t testing.TB, r *report.Report) []byte {
	t.Helper()
	text, err := report.Write(r)
	if err != nil {
		t.Fatal(err)
	}
	if !json.Valid(text) {
		t.Fatalf("not JSON: %.200s", text)
	}
	return text
}

// Names are carried as they are, markup and all.
func TestNames(t *testing.T) {
	for _, name := range []string{`<script>alert("x")</script> & {build}`, strings.Repeat("ab\n", 4000), "\u2028\x00\u202e", "=1+1", ""} {
		a, b := fitted("a"), other("b")
		a.Name, b.Name = name, name
		for i := range a.Parts {
			a.Parts[i].Name = name
		}
		a.Parts[0].Station, a.Parts[0].At = name+"?", nil
		r := report.Weigh(documentOf(a, b), nil).Report
		var back report.Report
		if err := json.Unmarshal(writable(t, r), &back); err != nil {
			t.Fatal(err)
		}
		if back.Builds[0].Name != name {
			t.Errorf("%q came back as %q", name, back.Builds[0].Name)
		}
		for _, s := range []string{r.Builds[0].Summary, r.Builds[1].Summary, r.Difference.Summary} {
			if len(s) > 2000 {
				t.Errorf("a summary of %d bytes", len(s))
			}
		}
		for _, p := range r.Problems {
			if len(p.Message.String()) > 1000 {
				t.Errorf("a message of %d bytes", len(p.Message.String()))
			}
		}
	}
}

// Numbers that no text can hold, in a document in memory.
func TestNotFinite(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64} {
		for _, set := range []func(b *document.Build, x float64){
			func(b *document.Build, x float64) { b.Parts[0].Mass = x },
			func(b *document.Build, x float64) { b.Parts[0].HalfWidth = x },
			func(b *document.Build, x float64) { b.Parts[0].Within = x },
			func(b *document.Build, x float64) { b.Parts[0].At = &document.Vec3{x, x, x} },
			func(b *document.Build, x float64) {
				b.Parts[0].At, b.Parts[0].Station, b.Parts[0].Offset = nil, "frame", document.Vec3{x}
			},
			func(b *document.Build, x float64) { b.Parts[0].Shape.Size = document.Vec3{x, x, x} },
			func(b *document.Build, x float64) { b.Parts[0].Shape.Pitch = x },
			func(b *document.Build, x float64) { b.Frame.Reach = x },
			func(b *document.Build, x float64) { b.Frame.HeadAngle = x },
			func(b *document.Build, x float64) { b.Wheels.Rear.Tyre = x },
			func(b *document.Build, x float64) { b.Rear.PivotFwd = x },
			func(b *document.Build, x float64) { b.Fork.Sag = x },
			func(b *document.Build, x float64) { b.Saddle.Height = x },
			func(b *document.Build, x float64) { b.Cranks.Length = x },
		} {
			a, b := fitted("a"), other("b")
			set(&a, x)
			writable(t, report.Weigh(documentOf(a, b), nil).Report)
			writable(t, report.Weigh(documentOf(b, a), nil).Report)
		}
	}
}

// FuzzEvaluate: any text gives a report, and the report is JSON.
func FuzzEvaluate(f *testing.F) {
	// Short texts: the fuzzer is slow to change long ones.
	a, b := bike("a"), rigid("b")
	a.Parts = []document.Part{vague("p", 3400, 50, document.Swingarm, 10, 20, 300)}
	b.Parts = []document.Part{vague("p", 3500, 50, document.RearWheel, 10, 20, 300)}
	small, err := document.WriteCompact(documentOf(a, b))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(small)
	d := laden()
	d.Builds[0].Parts, d.Builds[1].Parts = a.Parts, b.Parts
	d.Builds[0].Ratings = []document.Rating{{What: "total", Limit: 120000}, {What: "rear-rack", Limit: 5000}}
	d.Show.State, d.Show.Grip, d.Show.Packing = document.Ridden, 0.5, &document.DefaultPacking
	loaded, err := document.WriteCompact(d)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(loaded)
	f.Add([]byte(strings.ReplaceAll(string(small), "3400", "1e308")))
	f.Add([]byte(strings.ReplaceAll(string(small), "622", "-0")))
	f.Add([]byte(`{"format":"steelyard-document","version":1,"builds":[{"parts":[{}]}]}`))
	f.Add([]byte(`{"format":"steelyard-document","version":2}`))
	f.Add([]byte(`[`))
	f.Fuzz(func(t *testing.T, text []byte) {
		r := report.Evaluate(text)
		out, err := report.Write(r)
		if err != nil || !json.Valid(out) {
			t.Fatalf("%v: %.300s", err, out)
		}
		if len(r.Builds) == 0 && len(r.Problems) == 0 {
			t.Error("neither a build nor a problem")
		}
		for _, b := range r.Builds {
			for _, f := range b.Figures {
				if !(f.Plus >= 0) {
					t.Errorf("%+v", f)
				}
			}
		}
	})
}

// Ten thousand parts at stations that do not exist are told, each, and soon.
func TestManyUnknownStations(t *testing.T) {
	b := bike("a")
	for i := range 10000 {
		p := point(fmt.Sprint(i), 100, document.MainFrame, 0, 0, 0)
		p.At, p.Station = nil, fmt.Sprint("somewhere else, number ", i)
		b.Parts = append(b.Parts, p)
	}
	r := report.Weigh(documentOf(b), nil).Report
	if n := len(errorsOf(r)); n != len(b.Parts) {
		t.Errorf("%d errors", n)
	}
	writable(t, r)
}
