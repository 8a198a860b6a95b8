package report_test

import (
	"math"
	"testing"

	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// bike is a full-suspension bike without parts.
func bike(id string) parts.Build {
	return parts.Build{
		ID: id, Name: "Bike " + id,
		Frame: parts.Frame{Stack: 630, Reach: 450, HeadTube: 120, HeadAngle: 66, SeatTube: 450, SeatAngle: 75, Chainstay: 445, BBDrop: 30},
		Fork:  parts.Fork{Length: 531, Offset: 44, Travel: 120, Sag: 24},
		Rear: parts.Rear{Travel: 120, Sag: 30, PivotFwd: 10, PivotUp: 60,
			ShockFrom: parts.Point2{190, 260}, ShockTo: parts.Point2{0, 190}},
		Wheels:  parts.Wheels{Front: parts.Wheel{BeadSeat: 622, Tyre: 60}, Rear: parts.Wheel{BeadSeat: 622, Tyre: 60}},
		Cockpit: parts.Cockpit{Spacers: 20, Stem: 50, StemAngle: 6, BarWidth: 760, BarRise: 20, BarBack: 40},
		Saddle:  parts.Saddle{Height: 740},
		Cranks:  parts.Cranks{Length: 170, Width: 155},
	}
}

// rigid is the same bike without suspension.
func rigid(id string) parts.Build {
	b := bike(id)
	b.Fork.Travel, b.Fork.Sag = 0, 0
	b.Rear = parts.Rear{}
	return b
}

// point is a part that is a point at an absolute place, exactly known.
func point(id string, grams float64, carrier parts.Carrier, x, y, z float64) parts.Part {
	return parts.Part{
		ID: id, Name: "Part " + id, Kind: "other", Quantity: 1, Mass: grams, Basis: parts.Weighed,
		At: &parts.Vec3{x, y, z}, Carrier: carrier, Shape: parts.Shape{Form: parts.FormPoint},
	}
}

// vague is a point whose mass lies within ± half.
func vague(id string, grams, half float64, carrier parts.Carrier, x, y, z float64) parts.Part {
	p := point(id, grams, carrier, x, y, z)
	p.HalfWidth, p.Basis = half, parts.Typical
	return p
}

// documentOf makes a document that compares its first two builds.
func documentOf(builds ...parts.Build) *parts.Document {
	d := &parts.Document{Format: parts.Format, Version: parts.Version, Show: parts.Show{Mass: "kg", Length: "mm"}, Builds: builds}
	for i := range builds[:min(2, len(builds))] {
		d.Show.Compare = append(d.Show.Compare, builds[i].ID)
	}
	return d
}

// errorsOf are the problems of a report that are errors.
func errorsOf(r *report.Report) []parts.Problem {
	var out []parts.Problem
	for _, p := range r.Problems {
		if p.Severity == parts.SeverityError {
			out = append(out, p)
		}
	}
	return out
}

// figure finds a figure of a build.
func figure(t testing.TB, b *report.Build, key string) report.Figure {
	t.Helper()
	for _, f := range b.Figures {
		if f.Key == key {
			return f
		}
	}
	t.Fatalf("build %s has no figure %s", b.ID, key)
	return report.Figure{}
}

// change finds a figure of a difference.
func change(t testing.TB, d *report.Difference, key string) report.Change {
	t.Helper()
	if d == nil {
		t.Fatal("no difference")
	}
	for _, c := range d.Figures {
		if c.Key == key {
			return c
		}
	}
	t.Fatalf("the difference has no figure %s", key)
	return report.Change{}
}

// length finds a geometric figure of a build.
func length(t testing.TB, b *report.Build, key string) float64 {
	t.Helper()
	for _, l := range b.Geometry {
		if l.Key == key {
			return l.Value
		}
	}
	t.Fatalf("build %s has no length %s", b.ID, key)
	return 0
}

// near checks a figure to within a tolerance.
func near(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, within)
	}
}
