package rooms_test

import (
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/rooms"
)

// written is a copy of a document in which fields of a build have other values;
// nil takes one out. It goes through text, as the page does it.
func written(t *testing.T, d *document.Document, build string, fields map[string]*float64) *document.Document {
	t.Helper()
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	for _, b := range tree["builds"].([]any) {
		if b := b.(map[string]any); b["id"] == build {
			for field, v := range fields {
				at, keys := b, strings.Split(field, ".")
				for _, k := range keys[:len(keys)-1] {
					next, ok := at[k].(map[string]any)
					if !ok {
						next = map[string]any{}
						at[k] = next
					}
					at = next
				}
				if last := keys[len(keys)-1]; v == nil {
					delete(at, last)
				} else {
					at[last] = *v
				}
			}
		}
	}
	text, err = json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	out, problems := document.Open(text)
	if out == nil {
		t.Fatal(problems)
	}
	return out
}

// What is written into the field of a setting is what the setting is then, in its
// unit; taken out again, it is what it was.
func TestSettingsAreWhereTheySay(t *testing.T) {
	d := ridden(t)
	for _, way := range []string{"", "drop", "rate", "measured"} {
		d := d
		for _, w := range rooms.RoadOf(evaluated(t, d)).Sides[0].Ways {
			for _, x := range w.Ways {
				if x.Key == way {
					for _, f := range x.Write {
						d = written(t, d, "gearbox", map[string]*float64{f.Field: f.Value})
					}
				}
			}
		}
		before := rooms.RoadOf(evaluated(t, d)).Sides[0]
		found := 0
		for i, s := range before.Settings {
			if s.Field == "" {
				continue
			}
			found++
			then, plus := 1.1*s.Value, 0.5*s.Plus
			changed := written(t, d, "gearbox", map[string]*float64{s.Field: &then, s.PlusField: &plus})
			after := rooms.RoadOf(evaluated(t, changed)).Sides[0]
			got := after.Settings[i]
			if math.Abs(got.Value-then) > 1e-9*then || math.Abs(got.Plus-plus) > 1e-9*plus || got.Typical || *after.LoadRear == *before.LoadRear && *after.LoadFront == *before.LoadFront {
				t.Errorf("%s %s: %g ± %g, written %g ± %g", way, s.Key, got.Value, got.Plus, then, plus)
			}
			if !s.Typical {
				continue
			}
			back := map[string]*float64{}
			for _, f := range got.Forget {
				back[f] = nil
			}
			if got := rooms.RoadOf(evaluated(t, written(t, changed, "gearbox", back))).Sides[0].Settings[i]; !got.Typical || got.Value != s.Value || got.Plus != s.Plus {
				t.Errorf("%s %s forgotten: %+v, was %+v", way, s.Key, got, s)
			}
		}
		if found < 6 {
			t.Errorf("%s: %d settings have a field", way, found)
		}
	}
}

// Another way of saying a thing leaves the motion about as it is, and the way back
// is exact.
func TestWaysLeaveTheMotion(t *testing.T) {
	d := ridden(t)
	before := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if len(before.Ways) != 6 {
		t.Fatalf("%d ways", len(before.Ways))
	}
	for i, w := range before.Ways {
		there, back := map[string]*float64{}, map[string]*float64{}
		for _, f := range w.Ways[1].Write {
			there[f.Field] = f.Value
		}
		for _, f := range w.Ways[0].Write {
			back[f.Field] = f.Value
		}
		other := written(t, d, "gearbox", there)
		after := rooms.RoadOf(evaluated(t, other)).Sides[0]
		if after.Ways[i].Way != w.Ways[1].Key {
			t.Errorf("%s is %s", w.Key, after.Ways[i].Way)
		}
		for _, v := range [][2]float64{{*before.LoadFront, *after.LoadFront}, {*before.LoadRear, *after.LoadRear}, {*before.Saddle, *after.Saddle}} {
			if math.Abs(v[1]-v[0]) > 2e-3*v[0] {
				t.Errorf("%s %s: %g, before %g", w.Key, after.Ways[i].Way, v[1], v[0])
			}
		}
		if again := rooms.RoadOf(evaluated(t, written(t, other, "gearbox", back))).Sides[0]; *again.LoadRear != *before.LoadRear || again.Ways[i].Way != w.Way {
			t.Errorf("%s: %g on the way back, was %g", w.Key, *again.LoadRear, *before.LoadRear)
		}
	}
}

// A typical pressure is what the makers permit.
func TestTypicalPressureKeepsToRatings(t *testing.T) {
	for field, want := range map[string]float64{"setup.rear.tyre_most_bar": 1.2, "setup.rear.rim_most_bar": 1.1, "setup.rear.tyre_least_bar": 6} {
		s := rooms.RoadOf(evaluated(t, written(t, ridden(t), "gearbox", map[string]*float64{field: &want}))).Sides[0]
		for _, x := range s.Settings {
			if x.Key == "pressure_rear" && (math.Abs(x.Value-want) > 1e-9 || !x.Typical) {
				t.Errorf("%s: %+v", field, x)
			}
		}
		found := false
		for _, r := range s.Ratings {
			found = found || r.Field == field && r.Value != nil && *r.Value == want
		}
		if !found {
			t.Errorf("%s is not among %+v", field, s.Ratings)
		}
	}
}

// What makes no sense keeps its place in the settings, so that it can be set right.
func TestWrongSettingsAreToldAllTheSame(t *testing.T) {
	for field, wrong := range map[string]float64{
		"setup.rear.pressure_bar": 0, "setup.front.pressure_bar": 40, "setup.front.damping_share": 11, "rear.sag_mm": 0, "fork.sag_mm": 0,
	} {
		s := rooms.RoadOf(evaluated(t, written(t, ridden(t), "gearbox", map[string]*float64{field: &wrong}))).Sides[0]
		found := false
		for _, x := range s.Settings {
			found = found || x.Field == field && x.Value == wrong
		}
		if s.OK || !found || len(s.Problems) == 0 || s.Problems[0].Field != field {
			t.Errorf("%s: %v, %+v, %+v", field, s.OK, s.Problems, s.Settings)
		}
		if before := rooms.RoadOf(evaluated(t, ridden(t))).Sides[0]; len(s.Ways) != len(before.Ways) || len(s.Ratings) != len(before.Ratings) {
			t.Errorf("%s: %d ways, %d ratings", field, len(s.Ways), len(s.Ratings))
		}
		if _, err := json.Marshal(s); err != nil {
			t.Errorf("%s: %v", field, err)
		}
	}
}

// A sag over the travel leaves a build without a pose, and its settings in place.
func TestSettingsWithoutAPose(t *testing.T) {
	wrong := 300.0
	s := rooms.RoadOf(evaluated(t, written(t, ridden(t), "gearbox", map[string]*float64{"rear.sag_mm": &wrong}))).Sides[0]
	found := 0
	for _, x := range s.Settings {
		if x.Field != "" {
			found++
		}
		if x.Field == "rear.sag_mm" && x.Value != wrong {
			t.Errorf("%+v", x)
		}
	}
	if s.OK || found != 6 || len(s.Ways) != 6 {
		t.Errorf("%d settings, %d ways", found, len(s.Ways))
	}
	if _, err := json.Marshal(s); err != nil {
		t.Error(err)
	}
}

// What it would take to gain the same does so in a document that is evaluated anew.
func TestGainsHold(t *testing.T) {
	d := ridden(t)
	e := evaluated(t, d)
	road, c := rooms.RoadOf(e), rooms.RoadCurvesOf(e)
	find := func(s *rooms.RoadSide, key string) float64 {
		for _, f := range s.Figures {
			if f.Key == key {
				return f.Value
			}
		}
		t.Fatalf("no %s", key)
		return 0
	}
	tried := map[string]bool{}
	for _, g := range c.Gains {
		side, other := 0, 1
		if road.Sides[1].Build == g.Build {
			side, other = 1, 0
		}
		fields := map[string]*float64{}
		for _, s := range road.Sides[side].Settings {
			v := s.Value
			switch {
			case strings.HasPrefix(s.Key, "pressure_") && (g.Lever == "pressure-both" || g.Lever == strings.Replace(s.Key, "_", "-", 1)):
				v *= 1 + g.Amount/100
			case s.Key == "set_"+strings.Replace(g.Lever, "-", "_", 1):
				v += g.Amount
			default:
				continue
			}
			fields[s.Field] = &v
		}
		if len(fields) == 0 {
			continue // load on the fork legs: see package road
		}
		// A sag that is set otherwise stands the frame otherwise; the motion takes the
		// pose as it is.
		within := 2e-3
		if strings.HasPrefix(g.Lever, "sag") {
			within = 2e-2
		}
		tried[g.Lever] = true
		got, want := find(&rooms.RoadOf(evaluated(t, written(t, d, g.Build, fields))).Sides[side], g.Key), find(&road.Sides[other], g.Key)
		if math.Abs(got-want) > within*want {
			t.Errorf("%s %s by %g %s: %g, want %g", g.Key, g.Lever, g.Amount, g.Unit, got, want)
		}
	}
	if !tried["pressure-rear"] {
		t.Errorf("tried %v of %+v", tried, c.Gains)
	}

	// Makers' limits go before.
	least := 100.0
	for _, s := range road.Sides[1].Settings {
		if s.Key == "pressure_rear" {
			least = s.Value
		}
	}
	bound := written(t, d, "gearhub", map[string]*float64{"setup.rear.tyre_least_bar": &least})
	for _, g := range rooms.RoadCurvesOf(evaluated(t, bound)).Gains {
		if g.Lever == "pressure-rear" && g.Amount < 0 {
			t.Errorf("below the least that the maker asks for: %+v", g)
		}
	}
}
