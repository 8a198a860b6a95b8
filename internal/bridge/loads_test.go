package bridge_test

import (
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"github.com/google/go-cmp/cmp"

	"steelyard/internal/document"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// decoded reads an answer, which must be no problem.
func decoded[T any](t testing.TB, text string) T {
	t.Helper()
	if p := problemIn(text); p != nil {
		t.Fatalf("%+v", p)
	}
	var v T
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatalf("%v: %.300s", err, text)
	}
	return v
}

type openedText struct {
	Document json.RawMessage
	Problems []document.Problem
}

func demoDocument(t testing.TB) *document.Document {
	t.Helper()
	d, problems := document.Open([]byte(call(t, "demo")))
	if d == nil {
		t.Fatal(problems)
	}
	return d
}

func written(t testing.TB, d *document.Document) string {
	t.Helper()
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestGoods(t *testing.T) {
	v := decoded[struct {
		Goods []parts.GoodEntry
		Bags  []parts.BagEntry
	}](t, call(t, "goods"))
	if diff := cmp.Diff(parts.Goods(), v.Goods); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(parts.Bags(), v.Bags); diff != "" {
		t.Error(diff)
	}
}

func TestCopyLoad(t *testing.T) {
	text := call(t, "demo")
	v := decoded[openedText](t, call(t, "copyLoad", text, "tour", "Lighter"))
	d, _ := document.Open(v.Document)
	if d == nil || len(d.Loads) != 3 || d.Loads[2].Name != "Lighter" || d.Loads[2].Bags[0].ID != d.Loads[0].Bags[0].ID {
		t.Fatalf("%+v", v.Problems)
	}
	if p := problemIn(call(t, "copyLoad", text, "none", "x")); p == nil || p.Load != "none" {
		t.Errorf("%+v", p)
	}
}

type weighInAnswer struct {
	Problems []document.Problem
	Scales   []struct {
		ID          string
		Step        float64 `json:"step_g"`
		Calibration float64 `json:"calibration_share"`
		Readings    []int
	}
	Stand struct {
		Wheelbase float64 `json:"wheelbase_within_mm"`
		Radius    float64 `json:"radius_within_mm"`
	}
	Measured *struct {
		Figures []report.Figure
		Limits  []struct {
			Key, Doubt        string
			Share, Plus, Else float64
		}
		HasHeight bool `json:"has_height"`
		Text      string
	}
	Paper     *struct{ Figures []report.Figure }
	Agreement *struct {
		Agrees  bool
		Verdict string
		Text    string
		Figures []struct {
			Key, Verdict                 string
			Paper, Measured, Delta, Plus float64
		}
	}
	Explanations []struct {
		What, Part, Station, Name string
		By                        float64 `json:"by_g"`
	}
	Explained string
	Adjusted  []struct {
		List, Owner, ID string
		Mass            float64 `json:"mass_g"`
		HalfWidth       float64 `json:"half_width_g"`
		Was             float64 `json:"was_g"`
	}
}

// The demo's scale tells of something behind that is not on the list; with that
// put on it, the two agree.
func TestWeighIn(t *testing.T) {
	d := demoDocument(t)
	v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
	for _, p := range v.Problems {
		if p.Severity == document.SeverityError || p.WeighIn != "cellar" {
			t.Errorf("%+v", p)
		}
	}
	if v.Measured == nil || !v.Measured.HasHeight || v.Measured.Figures[0].Value != 16150 || v.Measured.Text == "" {
		t.Fatalf("%+v", v.Measured)
	}
	if v.Agreement == nil || v.Agreement.Agrees || v.Agreement.Verdict != "missing" || v.Agreement.Figures[0].Verdict != "more" || v.Explained == "" {
		t.Fatalf("%+v", v.Agreement)
	}
	e := v.Explanations[0]
	if e.What != "missing" || e.By < 250 || e.By > 450 || e.Name == "" {
		t.Errorf("%+v", e)
	}
	if len(v.Adjusted) == 0 {
		t.Fatal("no masses would meet it better")
	}
	for _, a := range v.Adjusted {
		p := d.Build("derailleur").Part(a.ID)
		if a.List != "parts" || a.Owner != "derailleur" || p == nil || p.Mass != a.Was || math.Abs(a.Mass-a.Was) > p.HalfWidth+0.11 {
			t.Errorf("%+v", a)
		}
	}
	b := d.Build("derailleur")
	b.Parts = append(b.Parts, document.Part{
		ID: "stand", Name: "Stand", Kind: "stand", Quantity: 1, Mass: e.By, HalfWidth: 5, Basis: document.Stated,
		Station: e.Station, Within: 20, Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint},
	})
	if v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar")); !v.Agreement.Agrees {
		t.Errorf("%+v", v.Agreement)
	}
}

// The answer tells what is taken for granted of scales and stand, and which doubt
// makes most of each figure's ±; a scale that is known better is no longer it.
func TestWeighInLimits(t *testing.T) {
	d := demoDocument(t)
	w := &d.WeighIns[0]
	w.Readings = append(w.Readings, document.Reading{Wheel: "front", Mass: 7600, Resolution: 100})
	v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
	if len(v.Scales) != 2 || v.Scales[0].ID != "s1" || v.Scales[0].Step != 50 || v.Scales[1].ID != "" || v.Scales[1].Step != 100 ||
		!cmp.Equal(v.Scales[0].Readings, []int{0, 1, 2}) || !cmp.Equal(v.Scales[1].Readings, []int{3}) || v.Scales[1].Calibration != document.CalibrationShare {
		t.Errorf("%+v", v.Scales)
	}
	if v.Stand.Wheelbase != document.WheelbaseWithin || v.Stand.Radius != document.RadiusWithin {
		t.Errorf("%+v", v.Stand)
	}
	w.Readings = w.Readings[:3]
	v = decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
	if len(v.Measured.Limits) != 3 {
		t.Fatalf("%+v", v.Measured.Limits)
	}
	for i, l := range v.Measured.Limits {
		if f := v.Measured.Figures[i]; l.Key != f.Key || l.Plus != f.Plus || !(l.Else < l.Plus) || !(l.Share > 0) || l.Share > 1 || l.Doubt == "" {
			t.Errorf("%+v of %+v", l, f)
		}
	}
	if l := v.Measured.Limits[0]; l.Doubt != "calibration" {
		t.Errorf("%+v", l)
	}
	none := 0.0
	w.Scales[0].Calibration = &none
	v = decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
	if l := v.Measured.Limits[0]; l.Doubt != "steps" {
		t.Errorf("%+v", l)
	}
}

// Where nothing explains the readings, or they contradict each other, there are
// no weights to accept.
func TestWeighInOffersNothingUnexplained(t *testing.T) {
	for verdict, spoil := range map[string]func(w *document.WeighIn){
		// 3 kg from the front wheel to the rear, and no more of it in all: neither a
		// mass nor the weights of the list do that.
		"unexplained": func(w *document.WeighIn) {
			w.Readings[0].Mass -= 3000
			w.Readings[1].Mass += 2750
			w.Readings[2].Mass += 2750
		},
		"contradict": func(w *document.WeighIn) {
			w.Readings = append(w.Readings, w.Readings[0], w.Readings[1])
			w.Readings[3].Mass += 1500
		},
	} {
		d := demoDocument(t)
		spoil(&d.WeighIns[0])
		v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
		if v.Agreement == nil || v.Agreement.Verdict != verdict || len(v.Adjusted) != 0 {
			t.Errorf("%s: %+v, %d weights are offered", verdict, v.Agreement, len(v.Adjusted))
		}
	}
}

// With a rider no wheel is raised: such a reading is refused, with the reason, and
// the level ones still tell what they tell.
func TestWeighInRiddenAndRaised(t *testing.T) {
	d := demoDocument(t)
	w := &d.WeighIns[0]
	w.Build, w.State, w.Load = "gearbox", document.Ridden, "tour"
	v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
	told := false
	for _, p := range v.Problems {
		told = told || p.Severity == document.SeverityError && p.Field == "readings.2.raised" && strings.Contains(p.Message.String(), "nobody sits on a bike with a raised wheel")
	}
	if !told || v.Measured == nil || v.Measured.HasHeight || v.Measured.Figures[0].Value != 16150 {
		t.Errorf("told %v: %+v", told, v.Measured)
	}
	drawing := call(t, "weighInDrawing", written(t, d), "cellar", `{"width":1000,"height":560}`)
	if strings.Contains(drawing, "Put a block on the board") || !strings.Contains(drawing, "both wheels stand level") {
		t.Errorf("the drawing raises a wheel with the rider on the bike")
	}
}

// A loaded bike with its rider is weighed with both; masses to put right are
// those of bags, goods and riders too.
func TestWeighInRidden(t *testing.T) {
	d := demoDocument(t)
	d.Show.Compare, d.Show.Loads, d.Show.State = []string{"gearbox"}, []string{"tour"}, document.Ridden
	r := report.Weigh(d, nil).Report
	load := func(key string) float64 {
		for _, f := range r.Sides[0].Figures {
			if f.Key == key {
				return f.Value
			}
		}
		t.Fatal(key)
		return 0
	}
	w := &d.WeighIns[0]
	w.Build, w.State, w.Load = "gearbox", document.Ridden, "tour"
	w.Readings = []document.Reading{
		{Wheel: "front", Mass: math.Round((load("front_load")+300)/100) * 100, Resolution: 100},
		{Wheel: "rear", Mass: math.Round((load("rear_load")+1100)/100) * 100, Resolution: 100},
	}
	v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
	if v.Agreement == nil || v.Measured.HasHeight || len(v.Measured.Figures) != 2 {
		t.Fatalf("%+v", v)
	}
	if f := v.Agreement.Figures[0]; math.Abs(f.Delta-1400) > 100 || math.Abs(f.Paper-load("total")) > 0.02 {
		t.Errorf("%+v", f)
	}
	lists := map[string]bool{}
	for _, a := range v.Adjusted {
		lists[a.List+a.Owner] = true
		if a.List == "riders" && (a.ID != "rider" || a.Was != 70000 || a.Mass <= 70000 || a.HalfWidth > 1000) {
			t.Errorf("%+v", a)
		}
		if a.List == "goods" && (d.Load("tour").Good(a.ID) == nil || d.Load("tour").Good(a.ID).Mass != a.Was) {
			t.Errorf("%+v", a)
		}
	}
	if !lists["riders"] || !lists["goodstour"] {
		t.Errorf("%v", lists)
	}
}

func TestWeighInProblems(t *testing.T) {
	for _, c := range []struct {
		spoil func(*document.Document)
		field string
	}{
		{func(d *document.Document) { d.WeighIns[0].Build = "none" }, "build"},
		{func(d *document.Document) { d.WeighIns[0].State = "wet" }, "state"},
		{func(d *document.Document) { d.WeighIns[0].State = document.Loaded }, "load"},
		{func(d *document.Document) {
			d.WeighIns[0].State, d.WeighIns[0].Load, d.Loads[0].Rider = document.Ridden, "tour", ""
		}, "state"},
		{func(d *document.Document) { d.Build("derailleur").Frame.HeadAngle = 700 }, "build"},
		{func(d *document.Document) { d.WeighIns[0].Readings[0].Wheel = "third" }, "readings.0.wheel"},
		{func(d *document.Document) { d.WeighIns[0].Readings = nil }, "readings"},
		{func(d *document.Document) { d.WeighIns[0].Readings = d.WeighIns[0].Readings[:1] }, "readings"},
	} {
		d := demoDocument(t)
		c.spoil(d)
		v := decoded[weighInAnswer](t, call(t, "weighIn", written(t, d), "cellar"))
		found := false
		for _, p := range v.Problems {
			found = found || p.Field == c.field && p.Message.String() != ""
		}
		if !found || v.Agreement != nil {
			t.Errorf("no problem at %s: %+v", c.field, v)
		}
	}
	if p := problemIn(call(t, "weighIn", call(t, "demo"), "none")); p == nil || p.WeighIn != "none" {
		t.Errorf("%+v", p)
	}
}

// A side is drawn with what it carries.
func TestPictureOfALoad(t *testing.T) {
	d := demoDocument(t)
	d.Show.Compare, d.Show.Loads, d.Show.State = []string{"gearbox", "gearbox"}, []string{"tour", "weekend"}, document.Ridden
	text := written(t, d)
	a := call(t, "svg", text, `{"at":"a","ghost_at":"b"}`)
	b := call(t, "svg", text, `{"at":"b"}`)
	if p := problemIn(a); p != nil || a == b {
		t.Fatalf("%+v", p)
	}
	if !strings.Contains(a, "Crank gearbox") {
		t.Error("it does not say what it is")
	}
	if p := problemIn(call(t, "svg", call(t, "blank"), `{"at":"b"}`)); p == nil {
		t.Error("there is no second side")
	}
}
