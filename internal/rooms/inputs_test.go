package rooms_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/rooms"
)

// put sets what stands at a field of an object, as the page does.
func put(t *testing.T, in any, field string, v any) any {
	if field == "" {
		return v
	}
	head, rest, _ := strings.Cut(field, ".")
	if i, err := strconv.Atoi(head); err == nil {
		list, _ := in.([]any)
		if i > len(list) {
			t.Fatalf("%d of %d", i, len(list))
		}
		if i == len(list) {
			list = append(list, nil)
		}
		list[i] = put(t, list[i], rest, v)
		return list
	}
	o, _ := in.(map[string]any)
	if o == nil {
		o = map[string]any{}
	}
	o[head] = put(t, o[head], rest, v)
	return o
}

// with is a document with something at a field of a build, of a rider or its own.
func with(t *testing.T, d *document.Document, build, rider, field string, v any) *document.Document {
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	var o map[string]any
	if err := json.Unmarshal(text, &o); err != nil {
		t.Fatal(err)
	}
	list, id := "", ""
	if build != "" {
		list, id = "builds", build
	} else if rider != "" {
		list, id = "riders", rider
	}
	if list == "" {
		put(t, o, field, v)
	} else {
		for _, x := range o[list].([]any) {
			if x.(map[string]any)["id"] == id {
				put(t, x, field, v)
			}
		}
	}
	if text, err = json.Marshal(o); err != nil {
		t.Fatal(err)
	}
	out, problems := document.Open(text)
	if len(problems) > 0 {
		t.Fatalf("%s: %+v", field, problems)
	}
	return out
}

// What is said at the field that an input names is what is reckoned with from then
// on, and nobody calls it typical.
func TestInputsBelongWhereTheySay(t *testing.T) {
	d := documenttest.Demo(t)
	n := 0
	said := func(in rooms.Input) any {
		switch {
		case in.Options != nil:
			return in.Options[len(in.Options)-1].Value
		case in.Bare && in.Value > 0:
			return in.Value * 0.9
		case in.Bare:
			return 2.0
		}
		return map[string]any{"value": in.Value*0.9 + 0.01, "half_width": in.Half / 2, "basis": in.Said}
	}
	check := func(was rooms.Input, now []rooms.Input) {
		n++
		for _, in := range now {
			if in.Key != was.Key {
				continue
			}
			changed := in.Value != was.Value || in.Text != was.Text
			if in.Typical || !changed || in.Field != was.Field || in.Label == "" {
				t.Errorf("%s: %+v", was.Field, in)
			}
			return
		}
		t.Errorf("%s is gone", was.Key)
	}
	side := rooms.RidesOf(evaluated(t, d)).Climb().Sides[0]
	for _, in := range side.Inputs {
		if in.Field == "" {
			t.Errorf("%s cannot be said", in.Key)
			continue
		}
		check(in, rooms.RidesOf(evaluated(t, with(t, d, in.Build, in.Rider, in.Field, said(in)))).Climb().Sides[0].Inputs)
	}
	b := rooms.RidesOf(evaluated(t, d)).Gears().Builds[0]
	for _, in := range b.Inputs {
		if !in.Typical {
			t.Errorf("nobody said %+v", in)
		}
		check(in, rooms.RidesOf(evaluated(t, with(t, d, in.Build, in.Rider, in.Field, said(in)))).Gears().Builds[0].Inputs)
	}
	for _, l := range b.Losses {
		n++
		v := map[string]any{"of": l.Key, "value": l.Value / 2, "half_width": l.Half / 2, "basis": l.Said, "note": "on the bench"}
		now := rooms.RidesOf(evaluated(t, with(t, d, b.Build, "", l.Field, v))).Gears().Builds[0]
		found := false
		for _, x := range now.Losses {
			if x.Key == l.Key {
				found = true
				if x.Typical || x.Value != l.Value/2 || x.Note == "" || x.Field != l.Field || x.Unit != l.Unit {
					t.Errorf("%+v", x)
				}
			}
		}
		if !found || now.Efficiency <= b.Efficiency {
			t.Errorf("half of %s leaves an efficiency of %v, was %v", l.Key, now.Efficiency, b.Efficiency)
		}
	}
	if n < 20 {
		t.Errorf("only %d inputs", n)
	}
}

// A loss that somebody set to nothing, or that may not be, can still be seen where
// it stands, and a rider who is not there can say nothing.
func TestInputsThatCostNothing(t *testing.T) {
	d := documenttest.Demo(t)
	d.Builds[0].Losses = &document.DriveLosses{Stages: []document.StageLoss{{Of: "crank-torque"}, {Of: "other-power", Value: 3}, {Of: "hub-mesh", Value: 9}}}
	b := rooms.RidesOf(evaluated(t, d)).Gears().Builds[0]
	fields := map[string]string{}
	for _, l := range b.Losses {
		fields[l.Key] = l.Field
	}
	if fields["crank-torque"] != "losses.stages.0" || fields["other-power"] != "losses.stages.1" || fields["hub-mesh"] != "losses.stages.2" {
		t.Errorf("%v", fields)
	}
	d.Riders, d.Show.Loads = nil, nil
	for _, in := range rooms.RidesOf(evaluated(t, d)).Climb().Sides[0].Inputs {
		if strings.HasPrefix(in.Field, "effort.") || in.Rider != "" {
			t.Errorf("%+v", in)
		}
	}
}

// Lines as people write them in either language.
func TestStretchesWritten(t *testing.T) {
	german := german(t)
	of := func(lines, surface string) (*rooms.Stretches, *document.Problem) {
		text, err := json.Marshal(rooms.Track{Lines: lines, Surface: surface})
		if err != nil {
			t.Fatal(err)
		}
		return rooms.StretchesOf(text, german)
	}
	for _, lines := range []string{
		"3.5; 6; gravel\n\n2;-4 %;sand", "3,5\t6\tSchotter\r\n2\t\u22124,0\tSand\n", "3,5, 6,0, gravel\n2, -4, sand", "3,5 6 gravel\n2 -4 SAND", "3.5,6,gravel\n2,-4,sand", "3.5;6\n2;-4;sand",
	} {
		s, problem := of(lines, "gravel")
		if problem != nil {
			t.Errorf("%q: %s", lines, problem.Message.In(german))
			continue
		}
		want := []document.Stretch{{Length: 3500, Slope: 6, Surface: "gravel"}, {Length: 2000, Slope: -4, Surface: "sand"}}
		if len(s.Stretches) != 2 || s.Stretches[0] != want[0] || s.Stretches[1] != want[1] {
			t.Errorf("%q: %+v", lines, s.Stretches)
		}
		if math.Abs(s.Length-5500) > 0.1 || math.Abs(s.Ascent-3500*math.Sin(math.Atan(0.06))) > 0.2 {
			t.Errorf("%q: %v m, %v m up", lines, s.Length, s.Ascent)
		}
	}
	if s, problem := of("1 2 rauer Asphalt", ""); problem != nil || s.Stretches[0].Surface != "rough-asphalt" {
		t.Errorf("%+v %+v", s, problem)
	}
	for lines, says := range map[string]string{
		"   \n": "keine Zeile", "1;2\nx;3": "Zeile 2", "1;2;ice": "Untergrund", "1": "Zeile 1", "1;NaN": "Zeile 1", "1e9;3": "Zeile 1", "0;3": "Abschnitt", "2;80": "Steigung", "1;2;sand;4": "Zeile 1",
		strings.Repeat("1;2\n", document.MaxStretches+1): "2000",
	} {
		if _, problem := of(lines, ""); problem == nil || !strings.Contains(problem.Said(german).Message.In(german), says) {
			t.Errorf("%.20q is taken, or not told of: %+v", lines, problem)
		}
	}
}
