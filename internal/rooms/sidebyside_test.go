package rooms_test

import (
	"math"
	"reflect"
	"slices"
	"steelyard/internal/document/documenttest"
	"testing"

	"steelyard/internal/report"
	"steelyard/internal/rooms"
)

// The table of all builds has the gears that the room tells, with differences in
// which what two builds share cancels.
func TestTableHasGears(t *testing.T) {
	d := documenttest.Demo(t)
	d.Days = nil
	d.CopyBuild("gearbox", "Copy")
	ridden := documenttest.Demo(t) // a day changes nothing of the table
	ridden.CopyBuild("gearbox", "Copy")
	if a, b := rooms.SideBySide(evaluated(t, ridden)), rooms.SideBySide(evaluated(t, d)); !reflect.DeepEqual(a, b) {
		t.Error("the table depends on the day that is ridden")
	}
	e := evaluated(t, d)
	s, g := rooms.SideBySide(e), rooms.RidesOf(e).Gears()
	c := s.Chapters[slices.IndexFunc(s.Chapters, func(c report.Chapter) bool { return c.Key == "gears" })]
	if c.Key != "gears" || len(c.Rows) != 6 {
		t.Fatalf("%+v", c)
	}
	for _, row := range c.Rows {
		for i, cell := range row.Cells {
			if cell == nil {
				t.Fatalf("%s: build %d has no figure", row.Key, i)
			}
		}
		if x := row.Cells[3]; x.Verdict != report.Same || x.Delta != 0 || x.DeltaPlus != 0 {
			t.Errorf("of a copy %s differs: %+v", row.Key, x)
		}
		if row.Key == "gears.efficiency" {
			if math.Abs(row.Cells[2].Value-100*g.Builds[2].Efficiency) > 0.006 || row.Cells[2].Verdict != report.More || row.Best != "derailleur" || row.Cells[1].Verdict != report.Undecided {
				t.Errorf("%+v %+v best is %s", row.Cells[1], row.Cells[2], row.Best)
			}
		}
	}
}
