package report_test

import (
	"math"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/report/specimen"
)

// What the tests are made of.
var (
	bike       = specimen.Bike
	rigid      = specimen.Rigid
	point      = specimen.Point
	vague      = specimen.Vague
	documentOf = specimen.DocumentOf
	fitted     = specimen.Fitted
	other      = specimen.Other
	laden      = specimen.Laden
	withState  = specimen.WithState
)

// errorsOf are the problems of a report that are errors.
func errorsOf(r *report.Report) []document.Problem {
	var out []document.Problem
	for _, p := range r.Problems {
		if p.Severity == document.SeverityError {
			out = append(out, p)
		}
	}
	return out
}

// figure finds a figure of a build.
func figure(t testing.TB, b *report.Build, key string) report.Figure {
	t.Helper()
	for _, f := range b.Figures {
		if f.Key == key {
			return f
		}
	}
	t.Fatalf("build %s has no figure %s", b.ID, key)
	return report.Figure{}
}

// change finds a figure of a difference.
func change(t testing.TB, d *report.Difference, key string) report.Change {
	t.Helper()
	if d == nil {
		t.Fatal("no difference")
	}
	for _, c := range d.Figures {
		if c.Key == key {
			return c
		}
	}
	t.Fatalf("the difference has no figure %s", key)
	return report.Change{}
}

// length finds a geometric figure of a build.
func length(t testing.TB, b *report.Build, key string) float64 {
	t.Helper()
	for _, l := range b.Geometry {
		if l.Key == key {
			return l.Value
		}
	}
	t.Fatalf("build %s has no length %s", b.ID, key)
	return 0
}

// near checks a figure to within a tolerance.
func near(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, within)
	}
}
