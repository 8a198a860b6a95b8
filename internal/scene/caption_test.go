package scene_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// compared is a caption of the usual size.
func compared() *scene.Caption {
	return &scene.Caption{
		Title: "Two gears for the long way",
		Date:  "3 May 2026",
		Head:  []string{"Loaded, with rider", "Gear hub", "Difference from Derailleur"},
		Rows: [][]string{
			{"Total mass", "117.3 kg ± 1.1 kg", "+0.42 kg ± 0.05 kg"},
			{"Centre of mass, ahead of the rear axle", "412 mm ± 9 mm", "−12 mm ± 2 mm"},
			{"Load on the front wheel", "45.1 kg ± 0.6 kg", "0"},
		},
		Notes: []string{"Worked out by a program on a day.", "± is the expanded uncertainty with coverage factor 2: about 19 times in 20 the true figure lies within. What both builds share drops out of their difference."},
	}
}

func published(s scene.Subject, v scene.View, c *scene.Caption, w, h float64) *scene.Scene {
	return scene.Publish(s, v, c, w, h)
}

// textSpan is what a label takes up from left to right.
func textSpan(l scene.Label) (x0, x1 float64) {
	switch {
	case l.Align < 0:
		return l.X, l.X + l.Width
	case l.Align > 0:
		return l.X - l.Width, l.X
	}
	return l.X - l.Width/2, l.X + l.Width/2
}

// The picture above a caption is the picture without one.
func TestCaptionLeavesThePictureAlone(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Labels: true}
	bare := scene.Draw(s, v, scene.Fit(&s, v, 800, 500))
	with := published(s, v, compared(), 800, 500)
	if with.Width != 800 || with.Height <= 560 {
		t.Errorf("%v × %v", with.Width, with.Height)
	}
	for i, m := range bare.Marks {
		if fmt.Sprint(m) != fmt.Sprint(with.Marks[i]) {
			t.Fatalf("mark %d is another", i)
		}
	}
	for i, l := range bare.Labels {
		if l != with.Labels[i] {
			t.Fatalf("label %d is %+v, want %+v", i, with.Labels[i], l)
		}
	}
	for _, l := range with.Labels[len(bare.Labels):] {
		if l.Y <= 500 {
			t.Errorf("%q stands in the picture", l.Text)
		}
	}
	none := published(s, v, &scene.Caption{}, 800, 500)
	if none.Height != 500 || len(none.Marks) != len(bare.Marks) || none.Desc != bare.Desc {
		t.Error("an empty caption is not nothing")
	}
}

func TestCaptionSaysItAll(t *testing.T) {
	s := specimen.Ridden("leaned")
	c := compared()
	out := published(s, scene.View{Words: specimen.Words}, c, 760, 480)
	var text []string
	at := map[string]scene.Label{}
	for _, l := range out.Labels {
		text = append(text, l.Text)
		at[l.Text] = l
	}
	said := strings.Join(text, " ")
	for _, want := range append([]string{c.Title, c.Date, "Gear hub", "Difference from Derailleur", "Total mass", "117.3 kg ± 1.1 kg", "+0.42 kg ± 0.05 kg"}, strings.Fields(c.Notes[1])...) {
		if !strings.Contains(said, want) {
			t.Errorf("the caption does not say %q", want)
		}
	}
	for _, want := range []string{c.Title, c.Date, "Load on the front wheel, Gear hub: 45.1 kg ± 0.6 kg.", c.Notes[0]} {
		if !strings.Contains(out.Desc, want) {
			t.Errorf("the description does not say %q: %s", want, out.Desc)
		}
	}
	// The figures of a column end, and their doubts begin, at one line.
	if a, b := at["117.3 kg"], at["412 mm"]; a.X != b.X || a.Align != 1 || b.Align != 1 {
		t.Errorf("%+v and %+v do not line up", a, b)
	}
	if a, b := at["± 1.1 kg"], at["± 9 mm"]; a.X != b.X || a.X <= at["117.3 kg"].X {
		t.Errorf("%+v and %+v do not line up", a, b)
	}
}

// Whatever a caption holds, it stays on the paper and its lines off each other.
func TestCaptionStaysOnThePaper(t *testing.T) {
	s := specimen.Travel()
	texts := rapid.OneOf(rapid.StringN(0, 60, 200), rapid.SampledFrom([]string{"", "Gear hub", "12.3 kg ± 0.4 kg", "±", " ± ", strings.Repeat("M", 300), strings.Repeat("lorem ipsum ", 40), "自転車"}))
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 3).Draw(t, "columns")
		c := &scene.Caption{Title: texts.Draw(t, "title"), Date: rapid.SampledFrom([]string{"", "3 May 2026", "Mittwoch, 3. Mai 2026"}).Draw(t, "date"), Notes: rapid.SliceOfN(texts, 0, 3).Draw(t, "notes")}
		c.Head = rapid.SliceOfN(texts, n, n).Draw(t, "head")
		for range rapid.IntRange(0, 4).Draw(t, "rows") {
			row := []string{texts.Draw(t, "name")}
			for range rapid.IntRange(0, n).Draw(t, "cells") {
				row = append(row, fmt.Sprintf("%.2f kg ± %.2f kg", rapid.Float64Range(-1e3, 1e3).Draw(t, "v"), rapid.Float64Range(0, 1e3).Draw(t, "p")))
			}
			c.Rows = append(c.Rows, row)
		}
		w := rapid.Float64Range(480, 1400).Draw(t, "width")
		const h = 300
		out := published(s, scene.View{Words: specimen.Words}, c, w, h)
		type line struct{ x0, x1, y, size float64 }
		var set []line
		for _, l := range out.Labels {
			if l.Y <= h {
				continue
			}
			x0, x1 := textSpan(l)
			if x0 < 0 || x1 > w+0.01 || l.Y > out.Height || math.IsNaN(l.X+l.Y+l.Width) {
				t.Fatalf("%+v is off the paper, %v × %v", l, w, out.Height)
			}
			for _, o := range set {
				if math.Abs(o.y-l.Y) < 0.6*min(o.size, l.Size) && o.x0 < x1-0.5 && x0 < o.x1-0.5 {
					t.Fatalf("%q is written over", l.Text)
				}
			}
			set = append(set, line{x0, x1, l.Y, l.Size})
		}
	})
}

// A detail in a loupe stands beside the bike, never over it: where a small
// picture has no room for it, the distance is told in a note.
func TestLoupeLeavesTheBikeAlone(t *testing.T) {
	travel := specimen.Travel()
	ridden, other := specimen.Ridden("leaned"), specimen.RiddenTravel("low")
	ridden.Ghost = &other
	loupes, told := 0, 0
	for name, s := range map[string]scene.Subject{"travel": travel, "ridden": ridden} {
		for _, v := range []scene.View{{Labels: true}, {}, {Labels: true, Dimensions: true}, {Labels: true, Aspect: scene.Rear}} {
			v.Words = specimen.Words
			for _, size := range [][2]float64{{320, 224}, {360, 252}, {390, 273}, {390, 300}, {390, 640}, {760, 480}, {1200, 500}} {
				out := scene.Draw(s, v, scene.Fit(&s, v, size[0], size[1]))
				for _, l := range out.Labels {
					if strings.HasPrefix(l.Text, "moves ") {
						told++
					}
				}
				for i, m := range out.Marks {
					if m.Fill != scene.Paper || m.Stroke != scene.Quiet || m.Path[0].Op != scene.Circle {
						continue
					}
					loupes++
					c := m.Path[0]
					for _, under := range out.Marks[:i] {
						switch under.Stroke {
						case scene.Outline, scene.Tyre, scene.Tube, scene.Metal:
						default:
							continue
						}
						for _, g := range under.Path {
							if g.Op != scene.Circle && math.Hypot(g.X-c.X, g.Y-c.Y) < c.R {
								t.Errorf("%s, %v, %+v: a loupe at (%.0f, %.0f) covers the bike at (%.0f, %.0f)", name, size, v.Aspect, c.X, c.Y, g.X, g.Y)
							}
						}
					}
				}
			}
		}
	}
	if loupes < 15 || told < loupes {
		t.Errorf("only %d loupes, told %d times", loupes, told)
	}
}
