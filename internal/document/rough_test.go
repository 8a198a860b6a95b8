package document_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"steelyard/internal/document"
)

func figure(v float64) *float64 { return &v }

// rough is a document of one build that is all set up.
func rough() *document.Document {
	end := func() *document.EndSetup {
		return &document.EndSetup{
			Pressure: figure(2), PressurePlus: figure(0.1), TyreLeast: figure(1.5), TyreMost: figure(3), RimMost: figure(2.5),
			Drop:   &document.TyreDrop{Load: 30000, LoadPlus: 500, Drop: 4, DropPlus: 0.5},
			Spring: figure(12), SpringPlus: figure(1), SagPlus: figure(2), Damping: figure(0.3), DampingPlus: figure(0.1), Damper: figure(600), DamperPlus: figure(60),
		}
	}
	return &document.Document{
		Format: document.Format, Version: document.Version,
		Show: document.Show{Mass: "kg", Length: "mm", Rough: &document.Rough{
			Class: "D", Roughness: figure(300), Speed: figure(18), Obstacle: &document.Obstacle{Form: "hole", Height: 60, Length: 400}, Rider: "standing", Contact: "length",
		}},
		Builds: []document.Build{{ID: "b", Name: "B", Parts: []document.Part{}, Setup: &document.Setup{Front: end(), Rear: end(), Springs: "anew"}}},
	}
}

func TestRoughRoadIsChecked(t *testing.T) {
	if problems := document.Check(rough()); len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, c := range []struct {
		field, said string
		warning     bool
		spoil       func(*document.Rough, *document.EndSetup)
	}{
		{"show.rough.class", `"F"`, false, func(r *document.Rough, _ *document.EndSetup) { r.Class = "F" }},
		{"show.rough.rider", `"lying"`, false, func(r *document.Rough, _ *document.EndSetup) { r.Rider = "lying" }},
		{"show.rough.contact", `"line"`, false, func(r *document.Rough, _ *document.EndSetup) { r.Contact = "line" }},
		{"show.rough.speed_km_h", "is 0 km/h", false, func(r *document.Rough, _ *document.EndSetup) { *r.Speed = 0 }},
		{"show.rough.speed_km_h", "NaN", false, func(r *document.Rough, _ *document.EndSetup) { *r.Speed = math.NaN() }},
		{"show.rough.roughness_cm3", "is -1", false, func(r *document.Rough, _ *document.EndSetup) { *r.Roughness = -1 }},
		{"show.rough.obstacle.form", `"ramp"`, false, func(r *document.Rough, _ *document.EndSetup) { r.Obstacle.Form = "ramp" }},
		{"show.rough.obstacle.height_mm", "is 0", false, func(r *document.Rough, _ *document.EndSetup) { r.Obstacle.Height = 0 }},
		{"show.rough.obstacle.length_mm", "is 0", false, func(r *document.Rough, _ *document.EndSetup) { r.Obstacle.Length = 0 }},
		{"setup.rear.pressure_bar", "is 0 bar", false, func(_ *document.Rough, e *document.EndSetup) { *e.Pressure = 0 }},
		{"setup.rear.pressure_bar", "is 40 bar", false, func(_ *document.Rough, e *document.EndSetup) { *e.Pressure, *e.TyreMost, *e.RimMost = 40, 15, 15 }},
		{"setup.rear.pressure_bar", "the tyre's maker permits", true, func(_ *document.Rough, e *document.EndSetup) { *e.Pressure, *e.RimMost = 3.5, 4 }},
		{"setup.rear.pressure_bar", "the rim's maker permits", true, func(_ *document.Rough, e *document.EndSetup) { *e.Pressure = 2.8 }},
		{"setup.rear.pressure_bar", "asks for", true, func(_ *document.Rough, e *document.EndSetup) { *e.Pressure = 1 }},
		{"setup.rear.drop.drop_mm", "is 0", false, func(_ *document.Rough, e *document.EndSetup) { e.Drop.Drop = 0 }},
		{"setup.rear.drop.load_g", "is -1", false, func(_ *document.Rough, e *document.EndSetup) { e.Drop.Load = -1 }},
		{"setup.rear.spring_n_mm", "is 0", false, func(_ *document.Rough, e *document.EndSetup) { *e.Spring = 0 }},
		{"setup.rear.sag_within_mm", "is -1", false, func(_ *document.Rough, e *document.EndSetup) { *e.SagPlus = -1 }},
		{"setup.rear.damping_share", "is 0", true, func(_ *document.Rough, e *document.EndSetup) { *e.Damping = 0 }},
		{"setup.rear.damping_share", "is 2 times", true, func(_ *document.Rough, e *document.EndSetup) { *e.Damping = 2 }},
		{"setup.rear.damping_share", "is 11", false, func(_ *document.Rough, e *document.EndSetup) { *e.Damping = 11 }},
		{"setup.rear.damper_n_s_m", "is -5", false, func(_ *document.Rough, e *document.EndSetup) { *e.Damper = -5 }},
	} {
		d := rough()
		c.spoil(d.Show.Rough, d.Builds[0].Setup.Rear)
		problems := document.Check(d)
		if len(problems) == 0 {
			t.Errorf("%s: nothing is said", c.field)
			continue
		}
		p := problems[0]
		if p.Field != c.field || !strings.Contains(p.Message.String(), c.said) || (p.Severity == document.SeverityWarning) != c.warning {
			t.Errorf("%s %s: %s; want %q of %s", p.Severity, p.Field, p.Message, c.said, c.field)
		}
		if strings.HasPrefix(c.field, "setup") != (p.Build == "b") {
			t.Errorf("%s is told of the build %q", c.field, p.Build)
		}
	}
	d := rough()
	d.Builds[0].Setup.Springs = "soft"
	if p := document.Check(d); len(p) != 1 || p[0].Field != "setup.springs" {
		t.Error(p)
	}
}

func TestRoughRoadIsWrittenAndCopied(t *testing.T) {
	d := rough()
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	back, problems := document.Open(text)
	if len(problems) > 0 || !reflect.DeepEqual(back, d) {
		t.Errorf("%v\n%s", problems, text)
	}
	c := d.CopyBuild("b", "C").Setup
	if !reflect.DeepEqual(c, d.Builds[0].Setup) {
		t.Errorf("the copy is set up as %+v", c)
	}
	*c.Front.Pressure, c.Rear.Drop.Drop = 9, 9
	if s := d.Builds[0].Setup; *s.Front.Pressure == 9 || s.Rear.Drop.Drop == 9 {
		t.Error("the copy shares its figures")
	}
	for _, wrong := range []string{`{"front": {"pressure": 2}}`, `{"rear": {"drop": {"load_g": "30"}}}`, `{"springs": true}`, `[]`} {
		text := `{"format": "steelyard-document", "version": 1, "builds": [{"id": "b", "setup": ` + wrong + `}]}`
		if d, problems := document.Open([]byte(text)); d != nil || len(problems) == 0 || !strings.HasPrefix(problems[0].Field, "setup") {
			t.Errorf("%s: %v", wrong, problems)
		}
	}
}
