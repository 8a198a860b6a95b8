package report_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// catalogue is every entry of the catalogue, in the order of the files.
func catalogue(t testing.TB) []parts.Entry {
	t.Helper()
	files, err := data.Files.ReadDir("catalogue")
	if err != nil {
		t.Fatal(err)
	}
	var all []parts.Entry
	for _, f := range files {
		text, err := data.Files.ReadFile("catalogue/" + f.Name())
		if err != nil {
			t.Fatal(err)
		}
		var entries []parts.Entry
		if err := json.Unmarshal(text, &entries); err != nil {
			t.Fatal(err)
		}
		all = append(all, entries...)
	}
	return all
}

// pair is a document of two builds of n parts each, drawn from the catalogue;
// every tenth part of the second is heavier and every fifteenth moved.
func pair(t testing.TB, n int) *document.Document {
	t.Helper()
	entries := catalogue(t)
	d := documenttest.Demo(t)
	d.Riders, d.Loads, d.WeighIns, d.Show.Loads = nil, nil, nil, nil
	a := d.Builds[0]
	a.Parts, a.Ratings = nil, nil
	for i := range n {
		e := &entries[i%len(entries)]
		a.Parts = append(a.Parts, document.Part{
			ID: fmt.Sprintf("p%d", i+1), Name: e.Name + strings.Repeat("'", i/len(entries)%7), Kind: e.Kind, Catalogue: e.ID,
			Quantity: max(e.Quantity, 1), Mass: e.Mass, HalfWidth: e.HalfWidth, Basis: e.Basis,
			Station: e.Station, Offset: e.Offset, Within: e.Within, Carrier: e.Carrier, Shape: e.Shape,
		})
	}
	b := a
	a.ID, a.Name, b.ID, b.Name = "a", "First", "b", "Second"
	b.Parts = append([]document.Part(nil), a.Parts...)
	for i := range b.Parts {
		p := &b.Parts[i]
		if i%10 == 0 {
			p.Mass += 25
		}
		if i%15 == 0 {
			p.Offset[0] += 30
		}
	}
	d.Builds = []document.Build{a, b}
	d.Show.Compare = []string{"a", "b"}
	return d
}

// benchmarkEvaluate measures from text to text, as the page calls it.
func benchmarkEvaluate(b *testing.B, n int) {
	text, err := document.WriteCompact(pair(b, n))
	if err != nil {
		b.Fatal(err)
	}
	out := 0
	b.ReportAllocs()
	for b.Loop() {
		answer, err := report.Write(report.Evaluate(text))
		if err != nil {
			b.Fatal(err)
		}
		out = len(answer)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(2*n), "ns/part")
	b.ReportMetric(float64(len(text)), "in-B")
	b.ReportMetric(float64(out), "out-B")
}

func BenchmarkEvaluate2x60(b *testing.B)    { benchmarkEvaluate(b, 60) }
func BenchmarkEvaluate2x1000(b *testing.B)  { benchmarkEvaluate(b, 1000) }
func BenchmarkEvaluate2x10000(b *testing.B) { benchmarkEvaluate(b, 10000) }

// The stages of an evaluation, to see where the time goes.
func BenchmarkOpen2x60(b *testing.B) {
	text, err := document.WriteCompact(pair(b, 60))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		document.Open(text)
	}
}

func BenchmarkWeigh2x60(b *testing.B) {
	d := pair(b, 60)
	for b.Loop() {
		report.Weigh(d, nil)
	}
}

func BenchmarkWrite2x60(b *testing.B) {
	r := report.Weigh(pair(b, 60), nil).Report
	for b.Loop() {
		if _, err := report.Write(r); err != nil {
			b.Fatal(err)
		}
	}
}
