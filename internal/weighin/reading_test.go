package weighin_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/mass"
	"steelyard/internal/parts"
	"steelyard/internal/weighin"
)

func TestRead(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	w := &parts.WeighIn{Build: "a", Readings: []parts.Reading{
		{Wheel: "front", Mass: 12300, Resolution: 100},
		{Wheel: "rear", Raised: "rear", Height: 250, HeightPlus: 2, Mass: 15000, Resolution: 50},
		{Wheel: "rear", Raised: "front", Height: 30, HeightPlus: 1, Mass: 0, Resolution: 100},
	}}
	got, problems := weighin.Read(w, s)
	want := []weighin.Reading{
		{Line: 0, Front: true, Mass: 12.3, MassU: 0.1 / math.Sqrt(12)},
		{Line: 1, Rise: -0.25, RiseU: 0.002 / math.Sqrt(3), Mass: 15, MassU: 0.05 / math.Sqrt(12)},
		{Line: 2, Rise: 0.03, RiseU: 0.001 / math.Sqrt(3), MassU: 0.1 / math.Sqrt(12)},
	}
	if !slices.Equal(got, want) || len(problems) > 0 {
		t.Errorf("%+v, %v; want %+v", got, problems, want)
	}
}

// goodReading is one to spoil.
var goodReading = parts.Reading{Wheel: "front", Raised: "rear", Height: 200, HeightPlus: 2, Mass: 50000, Resolution: 100}

func TestReadProblems(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	for _, c := range []struct {
		name  string
		spoil func(*parts.Reading)
		field string
		taken bool // only a warning
		says  string
	}{
		{"coarse", func(r *parts.Reading) { r.Mass = 2000; r.Resolution = 500 }, "resolution_g", true, "hardly tells"},
		{"on end", func(r *parts.Reading) { r.Height = 1500 }, "height_mm", false, "45 degrees"},
		{"half on end", func(r *parts.Reading) { r.Height = 800 }, "height_mm", false, "45 degrees"},
		{"steep", func(r *parts.Reading) { r.Height = 600 }, "height_mm", true, "pitched by 33 degrees"},
		{"level with a height", func(r *parts.Reading) { r.Raised = "" }, "height_mm", true, "taken to stand level"},
		{"height within all", func(r *parts.Reading) { r.HeightPlus = 200 }, "height_within_mm", false, "no less than the height"},
		{"exact", func(r *parts.Reading) { r.HeightPlus = 0 }, "height_within_mm", true, "said to be exact"},
	} {
		bad := goodReading
		c.spoil(&bad)
		w := parts.WeighIn{ID: "w1", Name: strings.Repeat("long ", 100), Readings: []parts.Reading{goodReading, bad, goodReading}}
		got, problems := weighin.Read(&w, s)
		if c.taken != (len(got) == 3) || got[len(got)-1].Line != 2 {
			t.Errorf("%s: %+v taken", c.name, got)
		}
		severity := parts.SeverityError
		if c.taken {
			severity = parts.SeverityWarning
		}
		if len(problems) != 1 {
			t.Errorf("%s: problems %v, want one", c.name, problems)
			continue
		}
		p := problems[0]
		if p.Field != "readings.1."+c.field || p.WeighIn != "w1" || p.Severity != severity ||
			!strings.HasPrefix(p.Message, "Weigh-in “long long") || !strings.Contains(p.Message, "”: Reading 2: ") || !strings.Contains(p.Message, c.says) || len(p.Message) > 300 {
			t.Errorf("%s: %+v", c.name, p)
		}
	}
	w := parts.WeighIn{Readings: slices.Repeat([]parts.Reading{goodReading}, weighin.MaxReadings+5)}
	if got, problems := weighin.Read(&w, s); len(got) != weighin.MaxReadings || len(problems) != 1 || problems[0].Field != "readings" {
		t.Errorf("%d readings taken, %v", len(got), problems)
	}
}

// What parts.Check calls an error is left out, without a word; all else that it
// lets pass is taken, or told here.
func TestReadingsAreChecked(t *testing.T) {
	s := weighin.Stand{Wheelbase: 1.1, RearRadius: 0.35, FrontRadius: 0.35}
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 0.05, 0.1, 0.5, 1, 199, 5000, 5001, 1e5, 5e5, 5.1e5}
	var readings []parts.Reading
	for _, v := range odd {
		for _, spoil := range []func(*parts.Reading){
			func(r *parts.Reading) { r.Height = v }, func(r *parts.Reading) { r.HeightPlus = v },
			func(r *parts.Reading) { r.Mass = v }, func(r *parts.Reading) { r.Resolution = v },
			func(r *parts.Reading) { r.Raised, r.Height = "", v },
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
		d := parts.Document{
			Show: parts.Show{Mass: "g", Length: "mm"}, Builds: []parts.Build{{ID: "a", Name: "A"}},
			WeighIns: []parts.WeighIn{{ID: "w", Name: "W", Build: "a", State: parts.Ready, Readings: []parts.Reading{r}}},
		}
		broken := slices.ContainsFunc(parts.Check(&d), func(p parts.Problem) bool { return p.Severity == parts.SeverityError })
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
	var w parts.WeighIn
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
		w.Readings = append(w.Readings, parts.Reading{Wheel: wheel, Raised: wheel, Height: 30, HeightPlus: 0.5, Mass: kg * 1000, Resolution: 10})
	}
	// Two readings cannot tell three figures.
	readings, _ := weighin.Read(&w, b.stand())
	if m, _ := weighin.Solve(b.stand(), readings, 1); m != nil {
		t.Fatalf("%+v", m)
	}
	_, rear := b.onScale(0.3, 0)
	w.Readings = append(w.Readings, parts.Reading{Wheel: "rear", Raised: "front", Height: 300, HeightPlus: 1, Mass: rear * 1000, Resolution: 10})
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
