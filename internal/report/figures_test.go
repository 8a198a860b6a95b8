package report_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/tables"
)

// Meijaard, Papadopoulos, Ruina and Schwab (2007), Proc. R. Soc. A 463, table 1:
// the four bodies of a bicycle with rider, their masses and centres (z up here).
// The bike under them is ours; its frame figures do not enter total and centre.
func TestPublishedBicycle(t *testing.T) {
	b := bike("a")
	b.Parts = []document.Part{
		point("rear wheel", 2000, document.RearWheel, 0, 0, 300),
		point("body", 85000, document.MainFrame, 300, 0, 900),
		point("fork", 4000, document.ForkUpper, 900, 0, 700),
		point("front wheel", 3000, document.FrontWheel, 1020, 0, 350),
	}
	r := report.Weigh(documentOf(b), nil).Report
	if e := errorsOf(r); len(e) > 0 {
		t.Fatal(e)
	}
	got := &r.Builds[0]
	near(t, "total, g", figure(t, got, "total").Value, 94000, 0.01)
	// By hand from the table: 32.16/94 m and 80.95/94 m.
	near(t, "centre x, mm", figure(t, got, "centre_x").Value, 342.128, 0.006)
	near(t, "centre z, mm", figure(t, got, "centre_z").Value, 861.170, 0.006)
	near(t, "centre y, mm", figure(t, got, "centre_y").Value, 0, 0)
	// Loads: moments about the contact points, whatever the wheelbase.
	w := length(t, got, "wheelbase")
	near(t, "front load, g", figure(t, got, "front_load").Value, 94000*342.1277/w, 1)
	near(t, "loads, g", figure(t, got, "front_load").Value+figure(t, got, "rear_load").Value, 94000, 0.02)
	near(t, "front share", figure(t, got, "front_share").Value, 342.1277/w, 2e-4)
	// Pitch inertia of four points about their centre, by hand: Σ m (x² + z²) - M c².
	sum := 2*(0.3*0.3) + 85*(0.09+0.81) + 4*(0.81+0.49) + 3*(1.02*1.02+0.35*0.35)
	pitch := sum - (32.16*32.16+80.95*80.95)/94
	near(t, "pitch inertia, kg m²", figure(t, got, "inertia_pitch").Value, pitch, 1e-5)
	near(t, "pitch gyration, mm", figure(t, got, "gyration_pitch").Value, 1000*math.Sqrt(pitch/94), 0.01)
	for _, f := range got.Figures {
		if f.Plus != 0 {
			t.Errorf("%s is ± %v, but every part is known exactly", f.Key, f.Plus)
		}
	}
}

// Sprung and unsprung, on a bike whose parts are all points.
func TestUnsprung(t *testing.T) {
	axle := weigh(t, bike("a")).Builds[0].Bike.RearAxle
	pivot := weigh(t, bike("a")).Builds[0].Bike.Pivot
	mm := func(v float64) float64 { return 1000 * v }
	at := func(share float64) (x, y, z float64) { // of the way from pivot to axle
		p := pivot.Lerp(axle, share)
		return mm(p.X), mm(p.Y), mm(p.Z)
	}
	part := func(id string, g float64, c document.Carrier, share float64) document.Part {
		x, y, z := at(share)
		return point(id, g, c, x, y, z)
	}
	for _, c := range []struct {
		name             string
		part             document.Part
		tally, effective float64
	}{
		{"wheel", part("p", 1000, document.RearWheel, 1), 1000, 1000},
		{"derailleur at the axle", part("p", 1000, document.Swingarm, 1), 1000, 1000},
		{"half way along the swingarm", part("p", 1000, document.Swingarm, 0.5), 1000, 250},
		{"at the pivot", part("p", 1000, document.Swingarm, 0), 1000, 0},
		{"shock, half way", part("p", 1000, document.Link, 0.5), 500, 125},
		{"frame", part("p", 1000, document.MainFrame, 1), 0, 0},
	} {
		b := bike("a")
		b.Parts = []document.Part{c.part}
		got := &report.Weigh(documentOf(b), nil).Report.Builds[0]
		near(t, c.name+": tally", figure(t, got, "unsprung_rear").Value, c.tally, 0.01)
		near(t, c.name+": effective", figure(t, got, "effective_rear").Value, c.effective, 0.01)
		near(t, c.name+": sprung", figure(t, got, "sprung").Value, 1000-c.tally, 0.01)
		near(t, c.name+": share of the part", got.Parts[0].Unsprung, c.tally/1000, 0)
		if !got.RearSprung || !got.FrontSprung {
			t.Errorf("%s: a bike with travel is told to be rigid", c.name)
		}
	}
}

// Of an end without a spring nothing is told as sprung or unsprung, in figures,
// differences, words or tables; what an end with one has stands as ever.
func TestRigid(t *testing.T) {
	b := rigid("a")
	b.Parts = []document.Part{
		point("frame", 2500, document.MainFrame, 400, 0, 500),
		point("stays", 600, document.Swingarm, 100, 0, 350),
		point("link", 100, document.Link, 200, 0, 400),
		point("rear wheel", 2000, document.RearWheel, 0, 0, 370),
		point("front wheel", 1700, document.FrontWheel, 1150, 0, 370),
		point("legs", 800, document.ForkLower, 1100, 0, 500),
	}
	r := report.Weigh(documentOf(b), nil).Report
	if e := errorsOf(r); len(e) > 0 {
		t.Fatal(e)
	}
	got := &r.Builds[0]
	tells := func(list []report.Figure, end string) bool {
		return slices.ContainsFunc(list, func(f report.Figure) bool {
			return (strings.HasPrefix(f.Key, "unsprung") || strings.HasPrefix(f.Key, "effective") || strings.HasPrefix(f.Key, "ratio") || f.Key == "sprung") && strings.HasSuffix(f.Key, end)
		})
	}
	if tells(got.Figures, "") {
		t.Errorf("a rigid bike has figures of springs: %+v", got.Figures)
	}
	if strings.Contains(strings.ToLower(got.Summary), "unsprung") {
		t.Errorf("the summary tells of what is unsprung: %q", got.Summary)
	}
	d := documentOf(b, bike("b"))
	d.Builds[1].Parts = b.Parts
	d.Show.Compare = []string{"a", "b"}
	mixed := report.Weigh(d, nil).Report
	if mixed.Difference == nil {
		t.Fatal("no difference")
	}
	for _, c := range mixed.Difference.Figures {
		if c.Key == "sprung" || strings.Contains(c.Key, "unsprung") || strings.Contains(c.Key, "effective") || strings.HasPrefix(c.Key, "ratio") {
			t.Errorf("a spring is set against none: %+v", c)
		}
	}
	alone := report.Weigh(documentOf(b), nil).Report
	for _, table := range []string{string(tables.FiguresCSV(alone, tables.Export{})), string(tables.FiguresMarkdown(alone, document.Show{}, tables.Export{}))} {
		if strings.Contains(strings.ToLower(table), "sprung") {
			t.Errorf("a table of a rigid bike has rows of springs:\n%s", table)
		}
	}
	stays := document.Part{ID: "q", Name: "Caliper", Kind: "fork-rigid", Quantity: 1, Mass: 100, Basis: document.Weighed, Station: "swingarm", Carrier: document.Swingarm, Shape: document.Shape{Form: document.FormPoint}}
	one, two := rigid("a"), rigid("b")
	one.Parts, two.Parts = []document.Part{stays}, []document.Part{stays}
	two.Parts[0].Mass = 300
	pair := report.Weigh(documentOf(one, two), nil)
	for _, table := range []string{string(tables.PartsMarkdown(pair, &one, tables.Export{})), string(tables.DifferenceMarkdown(pair.Report, document.Show{}, tables.Export{})), string(tables.DifferenceCSV(pair.Report, tables.Export{}))} {
		if low := strings.ToLower(table); strings.Contains(low, "swingarm") || strings.Contains(low, "shock") {
			t.Errorf("a table of rigid bikes tells of swingarm or shock:\n%s", table)
		}
	}
	hard := rigid("c")
	hard.Fork, hard.Parts = bike("c").Fork, b.Parts
	half := report.Weigh(documentOf(hard), nil).Report.Builds[0]
	if !half.FrontSprung || !tells(half.Figures, "_front") || tells(half.Figures, "_rear") || !tells(half.Figures, "sprung") {
		t.Errorf("a bike sprung in front only has %+v", half.Figures)
	}
	near(t, "unsprung in front", figure(t, &half, "unsprung_front").Value, 2500, 0)
	if !strings.Contains(half.Summary, "Unsprung are 2.5\u00a0kg in front.") {
		t.Errorf("the summary does not tell what is unsprung in front: %q", half.Summary)
	}
	if got.RearSprung || got.FrontSprung {
		t.Error("a rigid bike is told to be sprung")
	}
	if !strings.Contains(got.Summary, "the tyres are the only springs") {
		t.Errorf("the summary does not say so: %q", got.Summary)
	}
}

// A rim, a tyre and a hub: what it takes to spin them up.
func TestRotating(t *testing.T) {
	b := bike("a")
	b.Parts = []document.Part{
		{ID: "rim", Name: "Rim", Kind: "rim", Quantity: 1, Mass: 500, Basis: document.Weighed, Station: "rear-axle",
			Carrier: document.RearWheel, Shape: document.Shape{Form: document.FormRing, Size: document.Vec3{300}}},
		{ID: "hub", Name: "Hub", Kind: "gear-hub", Quantity: 1, Mass: 2400, Basis: document.Weighed, Station: "rear-axle",
			Carrier: document.RearWheel, Shape: document.Shape{Form: document.FormDisc, Size: document.Vec3{60, 140}}},
		{ID: "frame", Name: "Frame", Kind: "frame", Quantity: 1, Mass: 3500, Basis: document.Weighed, Station: "frame",
			Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint}},
	}
	got := &report.Weigh(documentOf(b), nil).Report.Builds[0]
	near(t, "rotating", figure(t, got, "rotating_rear").Value, 2900, 0)
	// m r² of a hoop and m r²/2 of a solid cylinder, over the tyre's radius
	// squared: bead seat 622/2 + 60 = 371 mm (ISO 5775).
	want := (500*300*300 + 2400*60*60/2) / (371. * 371)
	near(t, "at the tyre", figure(t, got, "rim_rear").Value, want, 0.01)
	near(t, "front", figure(t, got, "rim_front").Value, 0, 0)
	for _, f := range got.Figures {
		if f.Key == "ratio_front" {
			t.Errorf("a ratio to no unsprung mass at all: %v", f.Value)
		}
	}
}

// A pair splits the pieces over both points, offset outward.
func TestPairs(t *testing.T) {
	b := bike("a")
	b.Parts = []document.Part{{
		ID: "p", Name: "Panniers", Kind: "pannier", Quantity: 2, Mass: 900, HalfWidth: 30, Basis: document.Typical, Station: "rear-panniers",
		Offset: document.Vec3{10, 40, -20}, Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormBox, Size: document.Vec3{300, 170, 330}},
	}}
	e := weigh(t, b)
	w := e.Builds[0]
	if len(w.Items) != 2 {
		t.Fatalf("%d items, want one on either side", len(w.Items))
	}
	points := w.Bike.Stations["rear-panniers"].Points
	for i, it := range w.Items {
		side := math.Copysign(1, points[i].Y)
		near(t, "x", it.Place.X, points[i].X+0.010, 1e-12)
		near(t, "y", it.Place.Y, points[i].Y+side*0.040, 1e-12)
		near(t, "z", it.Place.Z, points[i].Z-0.020, 1e-12)
		near(t, "mass", it.Mass, 0.9, 1e-12)
	}
	got := &e.Report.Builds[0]
	near(t, "line", got.Parts[0].Mass, 1800, 0)
	// Two pieces of one type share one error, and are off by twice its half-width at most.
	near(t, "± of the line", got.Parts[0].Plus, 2*30, 0.006)
	near(t, "± of the total", figure(t, got, "total").Plus, 2*30, 0.006)
	near(t, "middle", got.Parts[0].Place[1], 0, 0)
	near(t, "centre y", figure(t, got, "centre_y").Value, 0, 0)
}

// weigh evaluates builds and keeps what the report was made from.
func weigh(t testing.TB, builds ...document.Build) *report.Evaluation {
	t.Helper()
	e := report.Weigh(documentOf(builds...), nil)
	if errs := errorsOf(e.Report); len(errs) > 0 {
		t.Fatal(errs)
	}
	return e
}

// Nothing on the bike: a total of 0 and nothing else.
func TestNoMass(t *testing.T) {
	for _, list := range [][]document.Part{nil, {point("p", 0, document.MainFrame, 0, 0, 0)}} {
		b := bike("a")
		b.Parts = list
		got := &report.Weigh(documentOf(b), nil).Report.Builds[0]
		if len(got.Figures) != 1 || got.Figures[0] != (report.Figure{Key: "total", Unit: "g"}) {
			t.Errorf("figures of nothing: %+v", got.Figures)
		}
		if !strings.Contains(got.Summary, "no parts with a mass") {
			t.Errorf("summary of nothing: %q", got.Summary)
		}
	}
}

// The doubts of the lines add up to that of the total, shared sources and all.
func TestDoubt(t *testing.T) {
	b := bike("a")
	b.Parts = []document.Part{
		vague("a", 100, 30, document.MainFrame, 0, 0, 0),
		vague("b", 200, 40, document.MainFrame, 0, 0, 0),
		vague("c", 200, 40, document.Swingarm, 100, 0, 0),
		point("d", 500, document.MainFrame, 0, 0, 0),
	}
	b.Parts[1].Name, b.Parts[2].Name = "Tube", "Tube" // one type, two lines
	got := &report.Weigh(documentOf(b), nil).Report.Builds[0]
	// Variances as 30² : (40+40)², the latter shared evenly.
	for i, want := range []float64{900. / 7300, 3200. / 7300, 3200. / 7300, 0} {
		near(t, "doubt of "+got.Parts[i].ID, got.Parts[i].Doubt, want, 1e-4)
	}
}
