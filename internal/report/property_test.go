package report_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"pgregory.net/rapid"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/geometry"
	"steelyard/internal/report"
)

// anyPart draws a sound part.
func anyPart(t *rapid.T, i int) document.Part {
	length := func(most float64, name string) float64 {
		return math.Round(rapid.Float64Range(-most, most).Draw(t, name))
	}
	p := document.Part{
		ID: fmt.Sprintf("p%d", i), Name: fmt.Sprintf("Part %d", i),
		Kind:      document.Kinds[rapid.IntRange(0, len(document.Kinds)-1).Draw(t, "kind")].ID,
		Quantity:  rapid.IntRange(1, 4).Draw(t, "quantity"),
		Mass:      math.Round(rapid.Float64Range(1, 5000).Draw(t, "mass")),
		Basis:     document.Typical,
		Within:    rapid.Float64Range(0, 50).Draw(t, "within"),
		Carrier:   rapid.SampledFrom(document.Carriers).Draw(t, "carrier"),
		HalfWidth: rapid.Float64Range(0, 300).Draw(t, "half"),
		Shape: document.Shape{
			Form:  rapid.SampledFrom(document.Forms).Draw(t, "form"),
			Size:  document.Vec3{100, 50, 80},
			Pitch: length(90, "pitch"),
		},
	}
	if rapid.Bool().Draw(t, "at") {
		p.At = &document.Vec3{length(1500, "x"), length(300, "y"), length(1200, "z")}
	} else {
		p.Station = rapid.SampledFrom(geometry.StationNames).Draw(t, "station")
		p.Offset = document.Vec3{length(100, "dx"), length(50, "dy"), length(100, "dz")}
	}
	return p
}

func anyParts(t *rapid.T) []document.Part {
	list := make([]document.Part, rapid.IntRange(1, 12).Draw(t, "parts"))
	for i := range list {
		list[i] = anyPart(t, i)
	}
	return list
}

// alike checks that two builds have the same figures, but for rounding.
func alike(t *rapid.T, a, b *report.Build) {
	if len(a.Figures) != len(b.Figures) {
		t.Fatalf("%d figures and %d", len(a.Figures), len(b.Figures))
	}
	for i, f := range a.Figures {
		g := b.Figures[i]
		if f.Key != g.Key || !close(f.Value, g.Value) || !close(f.Plus, g.Plus) {
			t.Errorf("%+v and %+v", f, g)
		}
	}
}

func close(a, b float64) bool { return math.Abs(a-b) <= 0.0101+1e-9*(math.Abs(a)+math.Abs(b)) }

func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := bike("a"), bike("b")
		a.Parts = anyParts(t)
		b.Parts = rapid.Permutation(a.Parts).Draw(t, "order")
		r := report.Weigh(documentOf(a, b), nil).Report
		alike(t, &r.Builds[0], &r.Builds[1])
		for _, c := range r.Difference.Figures {
			if c.Verdict != report.Same {
				t.Errorf("%+v", c)
			}
		}
		if len(r.Difference.Parts)+len(r.Difference.Moved) != 0 {
			t.Errorf("changed: %+v, moved: %+v", r.Difference.Parts, r.Difference.Moved)
		}
	})
}

// Two lines of one type at one place are as good as one line of both pieces.
func TestSplitting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := bike("a"), bike("b")
		a.Parts = anyParts(t)
		i := rapid.IntRange(0, len(a.Parts)-1).Draw(t, "which")
		a.Parts[i].Quantity = 2 * rapid.IntRange(1, 3).Draw(t, "halves")
		b.Parts = append([]document.Part(nil), a.Parts...)
		b.Parts[i].Quantity /= 2
		half := b.Parts[i]
		half.ID = "other half"
		b.Parts = append(b.Parts, half)
		r := report.Weigh(documentOf(a, b), nil).Report
		alike(t, &r.Builds[0], &r.Builds[1])
		for _, c := range r.Difference.Figures {
			if c.Verdict != report.Same {
				t.Errorf("%+v", c)
			}
		}
	})
}

// A bike in the mirror weighs as much, and leans to the other side.
func TestMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := bike("a"), bike("b")
		for i, p := range anyParts(t) {
			p.Station, p.Offset = "", document.Vec3{}
			if p.At == nil {
				p.At = &document.Vec3{float64(i), 30, 400}
			}
			a.Parts = append(a.Parts, p)
			p.At = &document.Vec3{p.At[0], -p.At[1], p.At[2]}
			b.Parts = append(b.Parts, p)
		}
		r := report.Weigh(documentOf(a, b), nil).Report
		for i, f := range r.Builds[0].Figures {
			g := r.Builds[1].Figures[i]
			if f.Key == "centre_y" {
				g.Value = -g.Value
			}
			if !close(f.Value, g.Value) || !close(f.Plus, g.Plus) {
				t.Errorf("%+v and %+v", f, g)
			}
		}
	})
}

// Sums that hold for every build.
func TestSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := bike("a")
		if rapid.Bool().Draw(t, "rigid") {
			b = rigid("a")
		}
		b.Parts = anyParts(t)
		r := report.Weigh(documentOf(b), nil).Report
		got := map[string]float64{}
		for _, f := range r.Builds[0].Figures {
			got[f.Key] = f.Value
			if !(f.Plus >= 0) {
				t.Errorf("%+v", f)
			}
		}
		sums := [][]string{{"total", "front_load", "rear_load"}}
		if r.Builds[0].RearSprung {
			sums = append(sums, []string{"total", "sprung", "unsprung_front", "unsprung_rear"})
		}
		for _, sum := range sums {
			s := 0.0
			for _, key := range sum[1:] {
				s += got[key]
			}
			if math.Abs(s-got[sum[0]]) > 0.021 {
				t.Errorf("%v add up to %v, %s is %v", sum[1:], s, sum[0], got[sum[0]])
			}
		}
		// A tensor's sides: none longer than the two others together.
		x, y, z := got["inertia_roll"], got["inertia_pitch"], got["inertia_yaw"]
		if x > y+z+1e-4 || y > x+z+1e-4 || z > x+y+1e-4 {
			t.Errorf("inertia %v, %v, %v", x, y, z)
		}
		doubt := 0.0
		for _, p := range r.Builds[0].Parts {
			doubt += p.Doubt
		}
		if doubt != 0 && math.Abs(doubt-1) > 1e-3 {
			t.Errorf("doubts add up to %v", doubt)
		}
	})
}

// The builds of the demo are sound, and their point is visible: a gearbox at
// the cranks leaves less unsprung mass at the rear axle than a gear hub.
func TestDemo(t *testing.T) {
	r := report.Weigh(documenttest.Demo(t), nil).Report
	if len(r.Problems) > 0 {
		t.Error(r.Problems)
	}
	if r.Difference == nil || r.Difference.A != "gearbox" || r.Difference.B != "gearhub" {
		t.Fatalf("the demo opens on %+v", r.Difference)
	}
	for _, key := range []string{"unsprung_rear", "effective_rear"} {
		if c := change(t, r.Difference, key); c.Verdict != report.More {
			t.Errorf("from gearbox to gear hub: %+v", c)
		}
	}
	for i := range r.Builds {
		b := &r.Builds[i]
		if !b.Weighed || len(b.Figures) != 25 || len(b.Geometry) != 10 || len(b.Weigh) == 0 {
			t.Errorf("%s: weighed %v, %d figures, %d lengths, %d lines of advice", b.ID, b.Weighed, len(b.Figures), len(b.Geometry), len(b.Weigh))
		}
	}
}

// Every key of a report has its words, every figure its explanation, and no
// summary a hole.
func TestWords(t *testing.T) {
	text, err := data.Files.ReadFile("words/en.json")
	if err != nil {
		t.Fatal(err)
	}
	words := map[string]string{}
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	has := func(key string) {
		if words[key] == "" && key != "unit.ratio" {
			t.Errorf("no words for %s", key)
		}
	}
	r := report.Weigh(documenttest.Demo(t), nil).Report
	for _, b := range r.Builds {
		for _, f := range b.Figures {
			has("figure." + f.Key)
			has("help." + f.Key)
			has("unit." + f.Unit)
		}
		for _, l := range b.Geometry {
			has("geometry." + l.Key)
			has("unit." + l.Unit)
		}
		for _, s := range b.Groups {
			has("group." + s.Key)
		}
		for _, s := range b.Carriers {
			has("carrier." + s.Key)
		}
	}
	for _, v := range []string{report.More, report.Less, report.Undecided, report.Same} {
		has("verdict." + v)
		has("verdict.total." + v)
	}
	for _, s := range summaries(t) {
		if strings.ContainsAny(s, "{}") || strings.Contains(s, "summary.") || strings.TrimSpace(s) == "" {
			t.Errorf("summary %q", s)
		}
	}
}

// summaries are those of pairs of builds that differ in every way.
func summaries(t testing.TB) []string {
	t.Helper()
	light, front, behind := fitted("b"), fitted("b"), rigid("b")
	light.Parts[0].Mass, light.Parts[3].Mass = 1000, 1000
	front.Parts[6].Mass, front.Parts[8].At = 2000, &document.Vec3{1400, -180, 900}
	behind.Parts = []document.Part{point("p", 1000, document.MainFrame, -100, 0, 100)}
	rear := rigid("b")
	rear.Fork, rear.Parts = fitted("b").Fork, fitted("b").Parts
	fork := fitted("b")
	fork.Fork.Travel, fork.Fork.Sag = 0, 0
	wrong := fitted("b")
	wrong.Frame.HeadAngle = -1
	spoilt, worse := fitted("b"), fitted("b")
	spoilt.Parts[0].Mass = -1
	worse.Parts[0].Mass, worse.Parts[1].Mass = -1, -1
	vagueFrame := fitted("b")
	vagueFrame.Parts[0].HalfWidth = 400
	var out []string
	for _, b := range []document.Build{fitted("b"), other("b"), light, front, behind, rear, fork, wrong, spoilt, worse, vagueFrame, bike("b")} {
		for _, d := range []*document.Document{documentOf(fitted("a"), b), documentOf(b, fitted("a"))} {
			r := report.Weigh(d, nil).Report
			for _, b := range r.Builds {
				out = append(out, b.Summary)
			}
			if r.Difference != nil && len(r.Difference.Figures) > 0 {
				out = append(out, r.Difference.Summary)
			}
		}
	}
	return out
}
