package report_test

import (
	"math"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// bike is a full-suspension bike without parts.
func bike(id string) document.Build {
	return document.Build{
		ID: id, Name: "Bike " + id,
		Frame: document.Frame{Stack: 630, Reach: 450, HeadTube: 120, HeadAngle: 66, SeatTube: 450, SeatAngle: 75, Chainstay: 445, BBDrop: 30},
		Fork:  document.Fork{Length: 531, Offset: 44, Travel: 120, Sag: 24},
		Rear: document.Rear{Travel: 120, Sag: 30, PivotFwd: 10, PivotUp: 60,
			ShockFrom: document.Point2{190, 260}, ShockTo: document.Point2{0, 190}},
		Wheels:  document.Wheels{Front: document.Wheel{BeadSeat: 622, Tyre: 60}, Rear: document.Wheel{BeadSeat: 622, Tyre: 60}},
		Cockpit: document.Cockpit{Spacers: 20, Stem: 50, StemAngle: 6, BarWidth: 760, BarRise: 20, BarBack: 40},
		Saddle:  document.Saddle{Height: 740},
		Cranks:  document.Cranks{Length: 170, Width: 155},
	}
}

// rigid is the same bike without suspension.
func rigid(id string) document.Build {
	b := bike(id)
	b.Fork.Travel, b.Fork.Sag = 0, 0
	b.Rear = document.Rear{}
	return b
}

// point is a part that is a point at an absolute place, exactly known.
func point(id string, grams float64, carrier document.Carrier, x, y, z float64) document.Part {
	return document.Part{
		ID: id, Name: "Part " + id, Kind: "other", Quantity: 1, Mass: grams, Basis: document.Weighed,
		At: &document.Vec3{x, y, z}, Carrier: carrier, Shape: document.Shape{Form: document.FormPoint},
	}
}

// vague is a point whose mass lies within ± half.
func vague(id string, grams, half float64, carrier document.Carrier, x, y, z float64) document.Part {
	p := point(id, grams, carrier, x, y, z)
	p.HalfWidth, p.Basis = half, document.Typical
	return p
}

// documentOf makes a document that compares its first two builds.
func documentOf(builds ...document.Build) *document.Document {
	d := &document.Document{Format: document.Format, Version: document.Version, Show: document.Show{Mass: "kg", Length: "mm"}, Builds: builds}
	for i := range builds[:min(2, len(builds))] {
		d.Show.Compare = append(d.Show.Compare, builds[i].ID)
	}
	return d
}

// errorsOf are the problems of a report that are errors.
func errorsOf(r *report.Report) []document.Problem {
	var out []document.Problem
	for _, p := range r.Problems {
		if p.Severity == document.SeverityError {
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
