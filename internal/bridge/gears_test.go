package bridge

import (
	"math"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
)

// drivenBy is a document whose builds have a drive of these parts each, and a
// roll-out of 2200 mm.
func drivenBy(t *testing.T, drives ...[]document.Part) string {
	t.Helper()
	d, problems := document.Open([]byte(new(Session).demo()))
	if d == nil {
		t.Fatal(problems)
	}
	none := 0
	d.Show.CrossedCogs, d.Show.Compare = &none, nil
	base := d.Builds[0]
	d.Builds = nil
	for i, parts := range drives {
		b := base
		b.ID, b.RollOut = string(rune('a'+i)), &document.Known{Value: 2200, HalfWidth: 5, Basis: document.Measured}
		b.Parts = nil
		for _, p := range base.Parts {
			switch p.Kind {
			case "crank", "chainring", "cassette", "cog", "chain", "belt", "crank-gearbox", "gear-hub", "derailleur", "front-derailleur", "tensioner":
			default:
				b.Parts = append(b.Parts, p)
			}
		}
		for _, p := range parts {
			p.ID, p.Quantity, p.Mass, p.Basis, p.Station, p.Carrier, p.Shape.Form = p.Name, 1, 300, document.Weighed, "bottom-bracket", document.MainFrame, document.FormPoint
			b.Parts = append(b.Parts, p)
		}
		d.Builds = append(d.Builds, b)
	}
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func mounted(kind string, g *document.Gearing) document.Part {
	return document.Part{Name: kind, Kind: kind, Gearing: g}
}

func teeth(n ...int) *document.Gearing { return &document.Gearing{Teeth: n} }

// A table worked by hand for each of the four kinds, by the keys of the answer.
func TestGearsByHand(t *testing.T) {
	seven := []int{19, 22, 25, 28, 32, 36, 41}
	down := []int{41, 36, 32, 28, 25, 22, 19}
	text := drivenBy(t,
		[]document.Part{mounted("crank", teeth(26, 38)), mounted("cassette", teeth(12, 17, 24, 34)), mounted("chain", nil), mounted("derailleur", nil), mounted("front-derailleur", nil)},
		[]document.Part{mounted("crank", nil), mounted("chainring", teeth(38)), mounted("cog", teeth(16)), mounted("chain", nil), mounted("gear-hub", &document.Gearing{Ratios: []float64{0.5, 1, 2}})},
		[]document.Part{mounted("crank", nil), mounted("chainring", teeth(32)), mounted("cog", teeth(16)), mounted("belt", nil), mounted("crank-gearbox", &document.Gearing{Ratios: []float64{0.4, 0.6, 0.9}, Meshes: []int{2, 2, 2}})},
		[]document.Part{mounted("crank", nil), mounted("chainring", teeth(30)), mounted("cog", teeth(30)), mounted("chain", nil), mounted("crank-gearbox", &document.Gearing{Stages: []document.Stage{{Driving: seven, Driven: down, Combine: document.InTurn, By: document.ByChain}}})},
	)
	var got struct {
		Builds []struct {
			OK       bool
			Problems []document.Problem
			Range    float64 `json:"range_percent"`
			Mean     float64 `json:"mean_step_percent"`
			Doubles  int     `json:"double_shifts"`
			Distinct int
			Overlaps []struct{ Percent float64 }
			Gears    []struct {
				Ratio       float64
				Development float64  `json:"development_mm"`
				Step        *float64 `json:"step_percent"`
				Efficiency  float64
				Plus        float64 `json:"efficiency_plus"`
			}
		}
	}
	answer := new(Session).Functions()["gears"](text)
	if err := json.Unmarshal([]byte(answer), &got); err != nil || len(got.Builds) != 4 {
		t.Fatal(err, len(got.Builds))
	}
	for i, want := range []struct {
		developments []float64 // mm, 2200 times ring over cog, or over that times the ratio
		steps        []float64 // per cent
		span, mean   float64
	}{
		// 26/34, 26/24, 38/34, 26/17, 38/24, 26/12, 38/17, 38/12: 26/24 and 38/34 are
		// 3.2 % apart, 26/17 and 38/24 3.5 %, 26/12 and 38/17 3.2 %.
		{[]float64{1682.4, 2383.3, 2458.8, 3364.7, 3483.3, 4766.7, 4917.6, 6966.7}, []float64{41.67, 3.17, 36.84, 3.53, 36.84, 3.17, 41.67}, 414.1, 22.51},
		{[]float64{2612.5, 5225, 10450}, []float64{100, 100}, 400, 100},
		{[]float64{1760, 2640, 3960}, []float64{50, 50}, 225, 50},
		// (41/19)² is 465.6 %; its twelfth root less 1 is 13.7 %.
		{[]float64{1019.5, 1180.5}, []float64{15.79}, 465.65, 13.68},
	} {
		b := got.Builds[i]
		if !b.OK || len(b.Problems) > 0 {
			t.Errorf("%d: %v", i, b.Problems)
			continue
		}
		near := func(what string, got, want, within float64) {
			if math.Abs(got-want) > within {
				t.Errorf("%d: %s is %v, want %v", i, what, got, want)
			}
		}
		near("range", b.Range, want.span, 0.06)
		near("mean step", b.Mean, want.mean, 0.01)
		for k, d := range want.developments {
			near("development", b.Gears[k].Development, d, 0.06)
		}
		for k, s := range want.steps {
			near("step", *b.Gears[k].Step, s, 0.006)
		}
		if last := b.Gears[len(b.Gears)-1]; last.Step != nil {
			t.Errorf("%d: a step beyond the highest gear: %v", i, *last.Step)
		}
		for _, g := range b.Gears {
			if !(g.Efficiency > 0.7 && g.Efficiency < 0.99 && g.Plus > 0.001 && g.Plus < 0.15) {
				t.Errorf("%d: efficiency %v ± %v", i, g.Efficiency, g.Plus)
			}
		}
		if n := len(want.developments); i < 3 && (len(b.Gears) != n || b.Distinct != n) || i == 3 && (len(b.Gears) != 13 || b.Distinct != 13) {
			t.Errorf("%d: %d gears, %d of them distinct", i, len(b.Gears), b.Distinct)
		}
	}
	// From 26/12 to 38/34: 93.9 % over; every shift between rings moves two levers but
	// 26 to 38 on the same cog, which the order of size never is here.
	if o := got.Builds[0].Overlaps; len(o) != 1 || math.Abs(o[0].Percent-93.86) > 0.01 || got.Builds[0].Doubles == 0 {
		t.Errorf("overlaps %v, %d double shifts", o, got.Builds[0].Doubles)
	}
}

// What is missing, doubled or wrong is told by name and at its field, for the
// build that has it; the others have their gears.
func TestGearsOfWrongParts(t *testing.T) {
	sound := []document.Part{mounted("crank", nil), mounted("chainring", teeth(38)), mounted("cog", teeth(16)), mounted("chain", nil)}
	text := drivenBy(t, sound,
		sound[:2],
		append(append([]document.Part{}, sound...), document.Part{Name: "second", Kind: "cog", Gearing: teeth(18)}),
		[]document.Part{sound[0], sound[1], mounted("cog", teeth(0)), sound[3]},
		append([]document.Part{mounted("gear-hub", &document.Gearing{Stages: []document.Stage{{Driving: []int{20}}}})}, sound...),
	)
	var got struct {
		Builds []struct {
			Build    string
			OK       bool
			Problems []document.Problem
			Gears    []struct{ Ratio float64 }
		}
	}
	if err := json.Unmarshal([]byte(new(Session).Functions()["gears"](text)), &got); err != nil {
		t.Fatal(err)
	}
	for i, field := range []string{"", "", "", "gearing.teeth.0", "gearing.stages.0.driven"} {
		b := got.Builds[i]
		if i == 0 {
			if !b.OK || len(b.Gears) != 1 || len(b.Problems) > 0 {
				t.Errorf("%+v", b)
			}
			continue
		}
		found := false
		for _, p := range b.Problems {
			found = found || p.Severity == document.SeverityError && p.Field == field && p.Build == b.Build && p.Message.String() != ""
		}
		if b.OK || len(b.Gears) > 0 || !found {
			t.Errorf("%d: %+v", i, b)
		}
	}
}
