package report_test

import (
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// A part with an error is left out and named; the rest is weighed.
func TestLeftOut(t *testing.T) {
	good := point("good", 1000, document.MainFrame, 300, 0, 500)
	for _, c := range []struct {
		name, field, says string
		spoil             func(*document.Part)
	}{
		{"unknown station", "station", `"rear-axle"`, func(p *document.Part) { p.At, p.Station = nil, "rear-axel" }},
		{"no station", "station", "", func(p *document.Part) { p.At = nil }},
		{"negative mass", "mass_g", "", func(p *document.Part) { p.Mass = -1 }},
		{"absurd mass", "mass_g", "", func(p *document.Part) { p.Mass = 1e300 }},
		{"absurd doubt", "half_width_g", "", func(p *document.Part) { p.HalfWidth = 1e300 }},
		{"absurd place", "at_mm", "", func(p *document.Part) { p.At = &document.Vec3{1e300, 0, 0} }},
		{"negative size", "shape.size_mm", "", func(p *document.Part) { p.Shape.Size[0] = -3 }},
		{"unknown form", "shape.form", "", func(p *document.Part) { p.Shape.Form = "blob" }},
		{"unknown carrier", "carrier", "", func(p *document.Part) { p.Carrier = "trailer" }},
		{"negative quantity", "quantity", "", func(p *document.Part) { p.Quantity = -2 }},
	} {
		bad := point("bad", 700, document.MainFrame, 0, 0, 300)
		c.spoil(&bad)
		b := bike("a")
		b.Parts = []document.Part{bad, good}
		r := report.Weigh(documentOf(b), nil).Report
		e := errorsOf(r)
		if len(e) == 0 || e[0].Build != "a" || e[0].Part != "bad" || e[0].Field != c.field || !strings.Contains(e[0].Message.String(), c.says) {
			t.Errorf("%s: %+v", c.name, e)
		}
		got := &r.Builds[0]
		near(t, c.name+": total of the rest", figure(t, got, "total").Value, 1000, 0)
		near(t, c.name+": centre of the rest", figure(t, got, "centre_x").Value, 300, 0)
		if got.Parts[0].OK || !got.Parts[1].OK {
			t.Errorf("%s: the wrong line is left out", c.name)
		}
		if !strings.Contains(got.Summary, "left out") {
			t.Errorf("%s: the summary does not tell: %q", c.name, got.Summary)
		}
	}
}

// Of two parts with one id the first is kept.
func TestSameID(t *testing.T) {
	b := bike("a")
	b.Parts = []document.Part{point("p", 1000, document.MainFrame, 0, 0, 0), point("p", 300, document.MainFrame, 0, 0, 0)}
	r := report.Weigh(documentOf(b), nil).Report
	if len(errorsOf(r)) != 1 {
		t.Error(r.Problems)
	}
	near(t, "total", figure(t, &r.Builds[0], "total").Value, 1000, 0)
}

// A build with an error in its figures has none of its own, and takes neither
// the other build nor its parts list with it.
func TestUnweighed(t *testing.T) {
	a, b := bike("a"), bike("b")
	a.Parts = []document.Part{point("p", 1000, document.MainFrame, 0, 0, 0)}
	b.Parts = a.Parts
	b.Frame.HeadAngle = 700
	r := report.Weigh(documentOf(a, b), nil).Report
	if len(errorsOf(r)) == 0 {
		t.Fatal("no error told")
	}
	if !r.Builds[0].Weighed || r.Builds[1].Weighed || r.Difference != nil {
		t.Errorf("weighed: %v, %v; difference: %v", r.Builds[0].Weighed, r.Builds[1].Weighed, r.Difference)
	}
	if len(r.Builds[1].Parts) != 1 || r.Builds[1].Parts[0].OK || len(r.Builds[1].Figures) != 0 {
		t.Errorf("build with an error: %+v", r.Builds[1])
	}
	if !strings.Contains(r.Builds[1].Summary, "cannot be weighed") {
		t.Errorf("summary: %q", r.Builds[1].Summary)
	}
}

func TestRefusedText(t *testing.T) {
	for _, text := range []string{"", "{", "null", "[]", "\x00\xff", `{"format":"other"}`} {
		r := report.Evaluate([]byte(text))
		if len(errorsOf(r)) == 0 || len(r.Builds) != 0 {
			t.Errorf("%q: %+v", text, r)
		}
	}
}
