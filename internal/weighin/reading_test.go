package weighin_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/mass"
	"steelyard/internal/weighin"
)

func TestRead(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	w := &document.WeighIn{Build: "a", Readings: []document.Reading{
		{Wheel: "front", Mass: 12300, Resolution: 100},
		{Wheel: "rear", Raised: "rear", Height: 250, HeightPlus: 2, Mass: 15000, Resolution: 50},
		{Wheel: "rear", Raised: "front", Height: 30, HeightPlus: 1, Mass: 0, Resolution: 100},
	}}
	got, problems := weighin.Read(w, s)
	want := []weighin.Reading{
		{Line: 0, Front: true, Mass: 12.3, MassU: 0.1 / math.Sqrt(12), Scale: 0},
		{Line: 1, Rise: -0.25, RiseU: 0.002 / math.Sqrt(3), Mass: 15, MassU: 0.05 / math.Sqrt(12), Scale: 1},
		{Line: 2, Rise: 0.03, RiseU: 0.001 / math.Sqrt(3), MassU: 0.1 / math.Sqrt(12), Scale: 0},
	}
	for i := range want { // placed within 0.3 steps, and half a per cent of the load
		want[i].PlacingU, want[i].ScaleU = 0.3*want[i].MassU*math.Sqrt(12)/math.Sqrt(3), 0.005/math.Sqrt(3)
	}
	same := func(a, b weighin.Reading) bool {
		ok := math.Abs(a.PlacingU-b.PlacingU) < 1e-15 && math.Abs(a.ScaleU-b.ScaleU) < 1e-15
		a.PlacingU, a.ScaleU, b.PlacingU, b.ScaleU = 0, 0, 0, 0
		return ok && a == b
	}
	if !slices.EqualFunc(got, want, same) || len(problems) > 0 {
		t.Errorf("%+v, %v; want %+v", got, problems, want)
	}
}

// Readings that name their scale have its step and calibration; those that name
// none go by their resolution, beside it. One that names a scale which is not
// there is left out.
func TestReadScales(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	share := 0.001
	w := &document.WeighIn{Scales: []document.Scale{{ID: "hanging", Step: 5, Calibration: &share}, {ID: "floor", Step: 100}}, Readings: []document.Reading{
		{Wheel: "front", Mass: 12300, Scale: "floor"},
		{Wheel: "rear", Mass: 15015, Scale: "hanging", Resolution: 100},
		{Wheel: "rear", Mass: 15000, Resolution: 100},
		{Wheel: "rear", Mass: 15000, Scale: "kitchen", Resolution: 100},
		{Wheel: "front", Mass: 12300, Resolution: 50},
		{Wheel: "front", Mass: 12300, Resolution: 100},
	}}
	got, _ := weighin.Read(w, s)
	var scales []int
	for _, r := range got {
		scales = append(scales, r.Scale)
	}
	if !slices.Equal(scales, []int{1, 0, 2, 3, 2}) {
		t.Fatalf("scales %v of %+v", scales, got)
	}
	near(t, "step of the hanging scale", got[1].MassU, 0.005/math.Sqrt(12), 1e-12)
	near(t, "its calibration", got[1].ScaleU, 0.001/math.Sqrt(3), 1e-12)
	near(t, "step of the floor scale", got[0].MassU, 0.1/math.Sqrt(12), 1e-12)
	near(t, "its calibration", got[0].ScaleU, 0.005/math.Sqrt(3), 1e-12)
}

// Nobody sits on a bike with a raised wheel: such readings are not taken,
// whatever else they say, and document.Check tells why.
func TestRiddenIsNotRaised(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	for _, state := range document.States {
		w := document.WeighIn{ID: "w", Name: "W", Build: "a", State: state, Readings: []document.Reading{goodReading, {Wheel: "front", Mass: 50000, Resolution: 100}}}
		got, _ := weighin.Read(&w, s)
		d := document.Document{Show: document.Show{Mass: "g", Length: "mm"}, Builds: []document.Build{{ID: "a", Name: "A"}}, WeighIns: []document.WeighIn{w}}
		told := slices.ContainsFunc(document.Check(&d), func(p document.Problem) bool {
			return p.Severity == document.SeverityError && p.Field == "readings.0.raised" && strings.Contains(p.Message.String(), "nobody sits on a bike with a raised wheel")
		})
		if ridden := state == document.Ridden; told != ridden || (len(got) == 1) != ridden {
			t.Errorf("%s: told %v, taken %+v", state, told, got)
		}
	}
}

// goodReading is one to spoil.
var goodReading = document.Reading{Wheel: "front", Raised: "rear", Height: 200, HeightPlus: 2, Mass: 50000, Resolution: 100}

func TestReadProblems(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	for _, c := range []struct {
		name  string
		spoil func(*document.Reading)
		field string
		taken bool // only a warning
		says  string
	}{
		{"coarse", func(r *document.Reading) { r.Mass = 2000; r.Resolution = 500 }, "resolution_g", true, "hardly tells"},
		{"on end", func(r *document.Reading) { r.Height = 1500 }, "height_mm", false, "45 degrees"},
		{"half on end", func(r *document.Reading) { r.Height = 800 }, "height_mm", false, "45 degrees"},
		{"steep", func(r *document.Reading) { r.Height = 600 }, "height_mm", true, "pitched by 33 degrees"},
		{"level with a height", func(r *document.Reading) { r.Raised = "" }, "height_mm", true, "taken to stand level"},
		{"height within all", func(r *document.Reading) { r.HeightPlus = 200 }, "height_within_mm", false, "no less than the height"},
		{"exact", func(r *document.Reading) { r.HeightPlus = 0 }, "height_within_mm", true, "said to be exact"},
	} {
		bad := goodReading
		c.spoil(&bad)
		w := document.WeighIn{ID: "w1", Name: strings.Repeat("long ", 100), Readings: []document.Reading{goodReading, bad, goodReading}}
		got, problems := weighin.Read(&w, s)
		if c.taken != (len(got) == 3) || got[len(got)-1].Line != 2 {
			t.Errorf("%s: %+v taken", c.name, got)
		}
		severity := document.SeverityError
		if c.taken {
			severity = document.SeverityWarning
		}
		if len(problems) != 1 {
			t.Errorf("%s: problems %v, want one", c.name, problems)
			continue
		}
		p := problems[0]
		if p.Field != "readings.1."+c.field || p.WeighIn != "w1" || p.Severity != severity ||
			!strings.HasPrefix(p.Message.String(), "Weigh-in “long long") || !strings.Contains(p.Message.String(), "”: Reading 2: ") || !strings.Contains(p.Message.String(), c.says) || len(p.Message.String()) > 300 {
			t.Errorf("%s: %+v", c.name, p)
		}
	}
	w := document.WeighIn{Readings: slices.Repeat([]document.Reading{goodReading}, weighin.MaxReadings+5)}
	if got, problems := weighin.Read(&w, s); len(got) != weighin.MaxReadings || len(problems) != 1 || problems[0].Field != "readings" {
		t.Errorf("%d readings taken, %v", len(got), problems)
	}
}

// What document.Check calls an error is left out, without a word; all else that it
// lets pass is taken, or told here.
func TestReadingsAreChecked(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 0.05, 0.1, 0.5, 1, 199, 5000, 5001, 1e5, 5e5, 5.1e5}
	var readings []document.Reading
	for _, v := range odd {
		for _, spoil := range []func(*document.Reading){
			func(r *document.Reading) { r.Height = v }, func(r *document.Reading) { r.HeightPlus = v },
			func(r *document.Reading) { r.Mass = v }, func(r *document.Reading) { r.Resolution = v },
			func(r *document.Reading) { r.Raised, r.Height = "", v },
		} {
			r := goodReading
			spoil(&r)
			readings = append(readings, r)
		}
	}
	for _, word := range []string{"", "front", "rear", "both", "FRONT"} {
		a, b := goodReading, goodReading
		a.Wheel, b.Raised = word, word
		readings = append(readings, a, b)
	}
	for _, r := range readings {
		d := document.Document{
			Show: document.Show{Mass: "g", Length: "mm"}, Builds: []document.Build{{ID: "a", Name: "A"}},
			WeighIns: []document.WeighIn{{ID: "w", Name: "W", Build: "a", State: document.Ready, Readings: []document.Reading{r}}},
		}
		broken := slices.ContainsFunc(document.Check(&d), func(p document.Problem) bool { return p.Severity == document.SeverityError })
		got, problems := weighin.Read(&d.WeighIns[0], s)
		switch {
		case broken && (len(got) > 0 || len(problems) > 0):
			t.Errorf("%+v: taken %v, told %v", r, got, problems)
		case !broken && len(got) == 0 && len(problems) == 0:
			t.Errorf("%+v: left out without a word", r)
		}
	}
}

// A scale under a wheel lifts it: then the bike is level only when the other
// wheel is as high, and otherwise its height is the block's.
func TestScaleLiftsItsWheel(t *testing.T) {
	b := benchmark(t)
	var w document.WeighIn
	for _, wheel := range []string{"front", "rear"} {
		rise := 0.03
		if wheel == "rear" {
			rise = -rise
		}
		front, rear := b.onScale(rise, 0)
		kg := rear
		if wheel == "front" {
			kg = front
		}
		w.Readings = append(w.Readings, document.Reading{Wheel: wheel, Raised: wheel, Height: 30, HeightPlus: 0.5, Mass: kg * 1000, Resolution: 10})
	}
	// Two readings cannot tell three figures.
	readings, _ := weighin.Read(&w, b.stand())
	if m, _ := weighin.Solve(b.stand(), readings, 1); m != nil {
		t.Fatalf("%+v", m)
	}
	_, rear := b.onScale(0.3, 0)
	w.Readings = append(w.Readings, document.Reading{Wheel: "rear", Raised: "front", Height: 300, HeightPlus: 1, Mass: rear * 1000, Resolution: 10})
	readings, problems := weighin.Read(&w, b.stand())
	m, more := weighin.Solve(b.stand(), readings, 1)
	if m == nil || len(problems)+len(more) > 0 {
		t.Fatalf("%v, %v", problems, more)
	}
	c := mass.Sum(b.bodies, nil).Centre()
	near(t, "total", m.Total.Value, 94, 1e-8)
	near(t, "x", m.X.Value, c.X, 1e-9)
	near(t, "z", m.Z.Value, c.Z, 1e-8)
}
