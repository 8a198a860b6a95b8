package rooms_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
)

// row finds a row of a table by its key.
func row(t *testing.T, s *report.SideBySide, key string) *report.Row {
	t.Helper()
	for i := range s.Chapters {
		for k := range s.Chapters[i].Rows {
			if r := &s.Chapters[i].Rows[k]; r.Key == key {
				return r
			}
		}
	}
	t.Fatalf("there is no row %s", key)
	return nil
}

// rounding is by how much a room and the table may differ for rounding before and
// after a change of unit.
var rounding = map[string]float64{"percent": 0.0006, "min": 0.014}

// The table of all builds tells of two builds what the rooms tell of them as the
// sides of a comparison, and of a copy that it differs by nothing, beyond doubt.
func TestTableTellsWhatTheRoomsTell(t *testing.T) {
	d := documenttest.Demo(t)
	d.CopyBuild("gearbox", "Copy")
	d.Show.Compare = []string{"gearbox", "derailleur"}
	d.Show.Loads = []string{d.Loads[0].ID, d.Loads[0].ID}
	d.Show.State = document.Ridden // as the table has them
	e := evaluated(t, d)
	s := rooms.SideBySide(e)
	at := func(id string) int {
		i := slices.IndexFunc(s.Builds, func(c report.Column) bool { return c.ID == id })
		if i < 0 {
			t.Fatalf("no build %s", id)
		}
		return i
	}
	copied := -1
	for i, c := range s.Builds {
		if c.Name == "Copy" {
			copied = i
		}
	}
	compared := map[string]rooms.Change{}
	for _, c := range rooms.RoadOf(e).Difference {
		compared["road."+c.Key] = c.Change
	}
	for _, c := range rooms.SteeringOf(e).Difference {
		compared["steering."+c.Key] = c
	}
	for _, c := range rooms.RidesOf(e).Climb().Difference.Figures {
		compared["climb."+c.Key] = c
	}
	n := 0
	for _, c := range s.Chapters {
		if c.Key != "climb" && c.Key != "road" && c.Key != "steering" {
			continue
		}
		if len(c.Rows) < 4 {
			t.Errorf("%s has only %d rows", c.Key, len(c.Rows))
		}
		for _, r := range c.Rows {
			if r.Label == "" || r.Unit == "" || strings.Contains(r.Label, ".") {
				t.Errorf("%s is called %q, in %q", r.Key, r.Label, r.Unit)
			}
			want, ok := compared[r.Key]
			a, b := r.Cells[at("gearbox")], r.Cells[at("derailleur")]
			if !ok || a == nil || b == nil {
				t.Errorf("%s: the room has no such figure, or the table none", r.Key)
				continue
			}
			n++
			factor, unit := 1.0, want.Unit // a table says shares in per cent, and times in minutes
			switch unit {
			case "share":
				factor, unit = 100, "percent"
			case "s":
				factor, unit = 1./60, "min"
			}
			near := func(a, b float64) bool { return math.Abs(a-factor*b) <= rounding[unit] }
			if r.Unit != unit || !near(a.Value, want.A) || !near(b.Value, want.B) || !near(b.Delta, want.Delta) || !near(b.DeltaPlus, want.Plus) || b.Verdict != want.Verdict {
				t.Errorf("%s: the table says %+v and %+v, the room %+v", r.Key, *a, *b, want)
			}
			if !(a.Plus > 0) && r.Key != "steering.trail" {
				t.Errorf("%s has no ±", r.Key)
			}
			if x := r.Cells[copied]; x.Delta != 0 || x.DeltaPlus != 0 || x.Verdict != report.Same || x.Value != a.Value || x.Plus != a.Plus {
				t.Errorf("of a copy %s differs: %+v from %+v", r.Key, *x, *a)
			}
		}
	}
	if n < 14 {
		t.Errorf("only %d rows were compared", n)
	}
	// Less of it is better, and it is known which has least.
	if r := row(t, s, "climb.time"); r.Best != "derailleur" {
		t.Errorf("the fastest is %q", r.Best)
	}
	if r := row(t, s, "steering.trail"); r.Best != "" {
		t.Errorf("%s has the best trail: nobody can say", r.Best)
	}
}

// A build that cannot be ridden has no figures there, and one alone is set against
// nothing.
func TestTableOfWhatIsNotRidden(t *testing.T) {
	d := documenttest.Demo(t)
	d.Show.Table = []string{"gearhub"}
	s := rooms.SideBySide(evaluated(t, d))
	for _, key := range []string{"climb.time", "road.tyre_load_rms_rear", "steering.weave"} {
		r := row(t, s, key)
		if len(r.Cells) != 1 || r.Cells[0] == nil || !(r.Cells[0].Value > 0) || !(r.Cells[0].Plus > 0) || r.Best != "" {
			t.Errorf("%s: %+v", key, r)
		}
	}
	d = documenttest.Demo(t)
	b := d.Build("gearhub")
	b.Parts = slices.DeleteFunc(b.Parts, func(p document.Part) bool {
		return strings.Contains(p.Kind, "chain") || strings.Contains(p.Kind, "belt")
	})
	s = rooms.SideBySide(evaluated(t, d))
	i := slices.IndexFunc(s.Builds, func(c report.Column) bool { return c.ID == "gearhub" })
	if c := row(t, s, "climb.time").Cells[i]; c != nil {
		t.Errorf("without a chain it climbs in %v", c.Value)
	}
	if c := row(t, s, "road.tyre_load_rms_rear").Cells[i]; c == nil {
		t.Error("without a chain it does not roll")
	}
}
