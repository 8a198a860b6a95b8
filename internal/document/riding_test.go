package document_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
)

// ridden is a document that says something of a rider, a road, a drive and a day.
func ridden() *document.Document {
	crossed := 1
	return &document.Document{
		Show: document.Show{Mass: "kg", Length: "mm", CrossedCogs: &crossed, Gears: "inches", Day: "d", Road: &document.Road{Slope: &document.Known{Value: 6}, Surface: "gravel"}},
		Builds: []document.Build{{
			ID: "b", Name: "B", Parts: []document.Part{}, RollOut: &document.Known{Value: 2200, HalfWidth: 5, Basis: document.Measured},
			Losses:      &document.DriveLosses{Efficiency: &document.Known{Value: 0.9, HalfWidth: 0.02}, Power: 100, Stages: []document.StageLoss{{Of: "chain-friction", Value: 0.2, HalfWidth: 0.1, Note: "Waxed."}}},
			DriveLimits: &document.DriveLimits{LeastRatio: 1.3, CrankTorque: 250},
		}},
		Riders: []document.Rider{{
			ID: "r", Name: "R", Stature: 1700, Mass: 70000, Table: "female", Posture: "leaned",
			Effort: &document.Effort{Power: &document.Known{Value: 110, HalfWidth: 10}, For: "hour", Cadence: &document.Known{Value: 70}, Least: &document.Known{Value: 40}, Highest: &document.Known{Value: 110}},
		}},
		Days: []document.Day{{ID: "d", Name: "D", Stretches: []document.Stretch{{Length: 1000, Slope: 5, Surface: "track"}, {Length: 500}}}},
	}
}

func TestRidingIsJudged(t *testing.T) {
	if p := document.Check(ridden()); len(p) > 0 {
		t.Fatal(p)
	}
	for _, c := range []struct {
		field, said string
		change      func(*document.Document)
	}{
		{"effort.power_w.value", "is 0 W;", func(d *document.Document) { d.Riders[0].Effort.Power.Value = 0 }},
		{"effort.power_w.half_width", "is -1 W;", func(d *document.Document) { d.Riders[0].Effort.Power.HalfWidth = -1 }},
		{"effort.power_w.basis", `"weighed"`, func(d *document.Document) { d.Riders[0].Effort.Power.Basis = document.Weighed }},
		{"effort.power_for", `"year"`, func(d *document.Document) { d.Riders[0].Effort.For = "year" }},
		{"effort.cadence_rpm.value", "is NaN/min;", func(d *document.Document) { d.Riders[0].Effort.Cadence.Value = math.NaN() }},
		{"effort.least_cadence_rpm", "below the one liked", func(d *document.Document) { d.Riders[0].Effort.Least.Value = 80 }},
		{"effort.highest_cadence_rpm", "below the highest", func(d *document.Document) { d.Riders[0].Effort.Highest.Value = 60 }},
		{"effort.on_foot_m_s.value", "is 20 m/s;", func(d *document.Document) { d.Riders[0].Effort.Walking = &document.Known{Value: 20} }},
		{"show.hand.step_mm", "is 5 mm;", func(d *document.Document) { d.Show.Hand = &document.Hand{Step: 5} }},
		{"show.hand.lean_deg", "is 90°;", func(d *document.Document) { d.Show.Hand = &document.Hand{Lean: 90} }},
		{"show.hand.slope_percent", "is 80 %;", func(d *document.Document) { d.Show.Hand = &document.Hand{Slope: 80} }},
		{"standing.frequency_hz.value", "is 90 Hz;", func(d *document.Document) {
			d.Riders[0].Standing = &document.Spring{Frequency: &document.Known{Value: 90}}
		}},
		{"standing.damping_share.value", "is 9;", func(d *document.Document) {
			d.Riders[0].Standing = &document.Spring{Damping: &document.Known{Value: 9}}
		}},
		{"effort.walking_m_s", "is 20 m/s;", func(d *document.Document) { d.Riders[0].Effort.Bare = 20 }},
		{"show.road.slope_percent.value", "is 100 %;", func(d *document.Document) { d.Show.Road.Slope.Value = 100 }},
		{"show.road.wind_m_s.value", "is 60 m/s;", func(d *document.Document) { d.Show.Road.Wind = &document.Known{Value: 60} }},
		{"show.road.surface", `"ice"`, func(d *document.Document) { d.Show.Road.Surface = "ice" }},
		{"show.gears", `"feet"`, func(d *document.Document) { d.Show.Gears = "feet" }},
		{"show.crossed_cogs", "is -1;", func(d *document.Document) { *d.Show.CrossedCogs = -1 }},
		{"show.day", `"x"`, func(d *document.Document) { d.Show.Day = "x" }},
		{"roll_out_mm.value", "is 0 mm;", func(d *document.Document) { d.Builds[0].RollOut.Value = 0 }},
		{"losses.efficiency.value", "is 0;", func(d *document.Document) { d.Builds[0].Losses.Efficiency.Value = 0 }},
		{"losses.stages.0.of", `"wind"`, func(d *document.Document) { d.Builds[0].Losses.Stages[0].Of = "wind" }},
		{"losses.stages.0.value", "is 2;", func(d *document.Document) { d.Builds[0].Losses.Stages[0].Value = 2 }},
		{"losses.stages", "41 losses", func(d *document.Document) { d.Builds[0].Losses.Stages = make([]document.StageLoss, 41) }},
		{"drive_limits.least_ratio", "is -1;", func(d *document.Document) { d.Builds[0].DriveLimits.LeastRatio = -1 }},
		{"stretches.0.slope_percent", "is 100 %;", func(d *document.Document) { d.Days[0].Stretches[0].Slope = 100 }},
		{"stretches.1.length_m", "is 0 m;", func(d *document.Document) { d.Days[0].Stretches[1].Length = 0 }},
		{"stretches.0.surface", `"ice"`, func(d *document.Document) { d.Days[0].Stretches[0].Surface = "ice" }},
		{"stretches", "2001 stretches", func(d *document.Document) {
			d.Days[0].Stretches = slices.Repeat([]document.Stretch{{Length: 1}}, 2001)
		}},
		{"name", "empty", func(d *document.Document) { d.Days[0].Name = "" }},
	} {
		d := ridden()
		c.change(d)
		p := document.Check(d)
		if len(p) != 1 || p[0].Field != c.field || !strings.Contains(p[0].Message.String(), c.said) {
			t.Errorf("%s: %v", c.field, p)
			continue
		}
		// Who rides still weighs what they weigh, and so does the bike.
		if p[0].Severity != document.SeverityWarning {
			t.Errorf("%s is an %s", c.field, p[0].Severity)
		}
		if strings.HasPrefix(c.field, "stretches") && p[0].Day != "d" {
			t.Errorf("%s is of the day %q", c.field, p[0].Day)
		}
	}
}

func TestRidingIsWrittenAndCopied(t *testing.T) {
	d := ridden()
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range []string{
		"\n\t\t\t\t{\"length_m\": 1000, \"slope_percent\": 5, \"surface\": \"track\"},\n",
		"\n\t\t\t\"losses\": {\"efficiency\": {\"value\": 0.9, \"half_width\": 0.02}, \"power_w\": 100, \"stages\": [{\"of\": \"chain-friction\"",
	} {
		if !strings.Contains(string(text), line) {
			t.Errorf("there is no line %s in\n%s", line, text)
		}
	}
	back, problems := document.Open(text)
	if len(problems) > 0 || !reflect.DeepEqual(back.Builds, d.Builds) || !reflect.DeepEqual(back.Days, d.Days) || !reflect.DeepEqual(back.Riders, d.Riders) || !reflect.DeepEqual(back.Show, d.Show) {
		t.Errorf("%v\n%+v", problems, back)
	}
	c := d.CopyBuild("b", "C")
	c.RollOut.Value, c.Losses.Efficiency.Value, c.Losses.Stages[0].Value, c.DriveLimits.LeastRatio = 1, 1, 1, 1
	if !reflect.DeepEqual(d.Builds[0], ridden().Builds[0]) {
		t.Error("the copy shares what is known of its drive")
	}
	d.Days[0].Stretches[0].Length = math.Inf(1)
	if _, err := document.Write(d); err == nil || !strings.Contains(err.Error(), "stretches.0.length_m") {
		t.Error(err)
	}
	d = ridden()
	d.Days = append(d.Days, d.Days[0], document.Day{})
	text, err = document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	back, problems = document.Open(text)
	if len(problems) != 1 || problems[0].Day != "d1" || back.Days[2].ID != "d2" || back.NewIDs(document.SortDay, 1)[0] != "d3" {
		t.Errorf("%v %+v", problems, back.Days)
	}
}

func TestRidingIsReadStrictly(t *testing.T) {
	for field, text := range map[string]string{
		"effort.power_w.watts":    `"riders": [{"id": "r", "effort": {"power_w": {"watts": 1}}}]`,
		"stretches.0.steep":       `"days": [{"id": "d", "stretches": [{"length_m": 1, "steep": 1}]}]`,
		"stretches.1":             `"days": [{"id": "d", "stretches": [{"length_m": 1}, 5]}]`,
		"show.road.rolling.value": `"show": {"road": {"rolling": {"value": "1"}}}`,
		"losses.stages.value":     `"builds": [{"id": "b", "losses": {"stages": [{"of": "crank-torque", "value": null}]}}]`,
	} {
		d, problems := document.Open([]byte(`{"format": "steelyard-document", "version": 1, ` + text + `}`))
		if d != nil || len(problems) != 1 || problems[0].Field != field {
			t.Errorf("%s: %v", field, problems)
		}
	}
	if d, problems := document.Open([]byte(`{"format": "steelyard-document", "version": 1, "days": [` + strings.Repeat(`{},`, 100) + `{}]}`)); d != nil || len(problems) == 0 {
		t.Errorf("101 days: %v", problems)
	}
}
