package svg_test

import (
	"bytes"
	"encoding/xml"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
	"steelyard/internal/scene/svg"
)

var update = flag.Bool("update", false, "write the golden files anew; look at them before you commit them")

const golden = "../../../testdata/scene"

func write(t interface{ Fatal(...any) }, s *scene.Scene, p scene.Palette, o svg.Options) string {
	var b bytes.Buffer
	if err := svg.Write(&b, s, p, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// elements parses a document and returns its elements and the text within each.
func elements(t interface{ Fatalf(string, ...any) }, doc string) (els []xml.StartElement, texts map[string][]string) {
	d := xml.NewDecoder(strings.NewReader(doc))
	texts = make(map[string][]string)
	var open []string
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%.2000s", err, doc)
		}
		switch k := tok.(type) {
		case xml.StartElement:
			els = append(els, k.Copy())
			open = append(open, k.Name.Local)
			texts[k.Name.Local] = append(texts[k.Name.Local], "")
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 {
				in := texts[open[len(open)-1]]
				in[len(in)-1] += string(k)
			}
		case xml.ProcInst, xml.Directive, xml.Comment:
			t.Fatalf("unexpected %T", tok)
		}
	}
	return els, texts
}

func TestGolden(t *testing.T) {
	travel, ridden := specimen.Travel(), specimen.Ridden("leaned")
	for _, c := range []struct {
		name    string
		subject *scene.Subject
		view    scene.View
		palette scene.Palette
	}{
		{"side-light", &travel, scene.View{Words: specimen.Words, Labels: true, Key: true, Units: scene.Units{Mass: "kg"}}, scene.Light},
		{"side-dark", &travel, scene.View{Words: specimen.Words, Labels: true, Key: true, Units: scene.Units{Mass: "kg"}}, scene.Dark},
		{"dimensions-light", &travel, scene.View{Words: specimen.Words, Dimensions: true}, scene.Light},
		{"steering-light", &travel, scene.View{Words: specimen.Words, Steering: true, Units: scene.Units{Mass: "kg"}}, scene.Light},
		{"steering-dark", &ridden, scene.View{Words: specimen.Words, Steering: true, Labels: true, Dimensions: true}, scene.Dark},
		{"rear-light", &travel, scene.View{Words: specimen.Words, Aspect: scene.Rear, Labels: true, Selected: "panniers"}, scene.Light},
		{"ridden-light", &ridden, scene.View{Words: specimen.Words, Labels: true, Key: true, Units: scene.Units{Mass: "kg"}}, scene.Light},
		{"ridden-rear-dark", &ridden, scene.View{Words: specimen.Words, Aspect: scene.Rear, Labels: true}, scene.Dark},
	} {
		t.Run(c.name, func(t *testing.T) {
			same(t, c.name, write(t, scene.Draw(*c.subject, c.view, scene.Fit(c.subject, c.view, 760, 440)), c.palette, svg.Options{}))
		})
	}
	side := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
	for i, set := range specimen.Drives {
		s := specimen.Against(specimen.Driven(set), specimen.Driven(specimen.Drives[(i+2)%len(specimen.Drives)]))
		p, shade := scene.Light, "light"
		if i%2 == 1 {
			p, shade = scene.Dark, "dark"
		}
		t.Run(set, func(t *testing.T) {
			same(t, "drive-"+set+"-"+shade, write(t, scene.Draw(s, side, scene.Fit(&s, side, 760, 440)), p, svg.Options{}))
			same(t, "drive-"+set+"-phone-"+shade, write(t, scene.Draw(s, side, scene.Fit(&s, side, 390, 300)), p, svg.Options{}))
		})
	}
	t.Run("equipped", func(t *testing.T) {
		s := specimen.Equipped("gear-hub-belt")
		same(t, "equipped-light", write(t, scene.Draw(s, side, scene.Fit(&s, side, 1180, 640)), scene.Light, svg.Options{}))
		v := side
		v.Aspect = scene.Rear
		same(t, "equipped-rear-dark", write(t, scene.Draw(s, v, scene.Fit(&s, v, 760, 440)), scene.Dark, svg.Options{}))
	})
	for _, c := range []struct {
		name    string
		subject *scene.Subject
		view    scene.View
		width   float64
		palette scene.Palette
	}{
		{"published-light", &ridden, scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}, 760, scene.Light},
		{"published-narrow-dark", &travel, scene.View{Words: specimen.Words, Aspect: scene.Rear}, 480, scene.Dark},
	} {
		t.Run(c.name, func(t *testing.T) {
			same(t, c.name, write(t, scene.Publish(*c.subject, c.view, caption(), c.width, 460), c.palette, svg.Options{Pixels: 1600}))
		})
	}
	for _, c := range []struct {
		name    string
		raised  string
		palette scene.Palette
	}{{"weigh-front-light", "front", scene.Light}, {"weigh-rear-dark", "rear", scene.Dark}} {
		t.Run(c.name, func(t *testing.T) {
			w := scene.Weighing{Raised: c.raised, Height: 0.3, Words: specimen.Words}
			same(t, c.name, write(t, scene.WeighIn(travel.Bike, w, 760, 480), c.palette, svg.Options{}))
		})
	}
}

// caption is one of the usual size.
func caption() *scene.Caption {
	return &scene.Caption{
		Title: "Two gears for the long way",
		Date:  "3 May 2026",
		Head:  []string{"Loaded, with rider", "Gear hub", "Difference from Derailleur"},
		Rows: [][]string{
			{"Total mass", "117.3 kg ± 1.1 kg", "+0.42 kg ± 0.05 kg"},
			{"Centre of mass, ahead of the rear axle", "412 mm ± 9 mm", "−12 mm ± 2 mm"},
			{"Centre of mass, above the ground", "948 mm ± 12 mm", "0"},
			{"Load on the rear wheel", "72.2 kg ± 0.8 kg", "+0.8 kg ± 0.3 kg"},
			{"Load on the front wheel", "45.1 kg ± 0.6 kg", "−0.4 kg ± 0.3 kg"},
		},
		Notes: []string{
			"Worked out on 3 May 2026.",
			"± is the expanded uncertainty, coverage factor k = 2: about 19 times in 20 the true figure lies within. What two builds share drops out of their difference.",
		},
	}
}

// A document says how wide it is to be shown, and is the same drawing.
func TestPixels(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words}
	out := scene.Publish(s, v, caption(), 800, 500)
	plain, wide := write(t, out, scene.Light, svg.Options{}), write(t, out, scene.Light, svg.Options{Pixels: 2400})
	els, _ := elements(t, wide)
	got := map[string]string{}
	for _, a := range els[0].Attr {
		got[a.Name.Local] = a.Value
	}
	if want := strconv.FormatFloat(math.Round(300*out.Height)/100, 'f', -1, 64); got["width"] != "2400" || got["height"] != want || !strings.HasPrefix(got["viewBox"], "0 0 800 ") {
		t.Errorf("%v, want a height of %s", got, want)
	}
	_, a, _ := strings.Cut(plain, "<title>")
	_, b, _ := strings.Cut(wide, "<title>")
	if a != b {
		t.Error("another drawing")
	}
}

// same fails where a picture is not its golden file.
func same(t *testing.T, name, got string) {
	file := filepath.Join(golden, name+".svg")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("the picture changed (-want +got); if it should have, run with -update and look at it:\n%.3000s", d)
	}
}

// The two painters of a light and a dark picture differ in colours only.
func TestDarkIsTheSamePicture(t *testing.T) {
	s := specimen.Tour()
	v := scene.View{Words: specimen.Words, Labels: true}
	out := scene.Draw(s, v, scene.Fit(&s, v, 760, 440))
	strip := func(doc string, p scene.Palette) string {
		for k := scene.Paper; k <= scene.Select; k++ {
			doc = strings.ReplaceAll(doc, p.CSS(k), "#")
		}
		return doc
	}
	light, dark := write(t, out, scene.Light, svg.Options{}), write(t, out, scene.Dark, svg.Options{})
	if light == dark {
		t.Error("light and dark are the same file")
	}
	if strip(light, scene.Light) != strip(dark, scene.Dark) {
		t.Error("light and dark differ by more than colours")
	}
}

// Names of people's parts arrive as text, whatever is in them.
func TestHostileNames(t *testing.T) {
	hostile := `</text><script>alert(1)</script>`
	s := specimen.Travel()
	s.Name = `"><image href=x onerror='x'>`
	for i := range s.Markers {
		if s.Markers[i].Part == "panniers" {
			s.Markers[i].Name = hostile
		}
	}
	v := scene.View{Words: specimen.Words, Selected: "panniers", Labels: true}
	doc := write(t, scene.Draw(s, v, scene.Fit(&s, v, 760, 440)), scene.Light, svg.Options{})
	els, texts := elements(t, doc)
	allowed := map[string]bool{"svg": true, "title": true, "desc": true, "g": true, "rect": true, "path": true, "circle": true, "text": true}
	for _, e := range els {
		if !allowed[e.Name.Local] {
			t.Errorf("there is a <%s>", e.Name.Local)
		}
		for _, a := range e.Attr {
			if strings.HasPrefix(strings.ToLower(a.Name.Local), "on") || a.Name.Local == "href" {
				t.Errorf("<%s> has %s=%q", e.Name.Local, a.Name.Local, a.Value)
			}
		}
	}
	found := false
	for _, x := range texts["text"] {
		found = found || strings.HasPrefix(x, hostile[:20])
	}
	if !found {
		t.Errorf("the hostile name is not among the texts: %q", texts["text"])
	}
	if got := texts["title"]; len(got) != 1 || !strings.HasPrefix(got[0], `"><image href=x`) {
		t.Errorf("title %q", got)
	}
}

// Any scene at all makes a document that can be read.
func TestAnySceneIsWellFormed(t *testing.T) {
	number := func(t *rapid.T) float64 {
		return rapid.OneOf(rapid.Float64(), rapid.Float64Range(-1000, 1000), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1)})).Draw(t, "n")
	}
	text := func(t *rapid.T) string {
		return rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOfN(rapid.Byte(), 0, 20), func(b []byte) string { return string(b) })).Draw(t, "text")
	}
	rapid.Check(t, func(t *rapid.T) {
		s := &scene.Scene{Width: number(t), Height: number(t), Title: text(t), Desc: text(t)}
		for range rapid.IntRange(0, 4).Draw(t, "marks") {
			m := scene.Mark{Fill: scene.Ink(rapid.Byte().Draw(t, "fill")), Stroke: scene.Ink(rapid.Byte().Draw(t, "stroke")), Width: number(t), Butt: true}
			for range rapid.IntRange(0, 3).Draw(t, "dashes") {
				m.Dash = append(m.Dash, number(t))
			}
			for range rapid.IntRange(0, 5).Draw(t, "steps") {
				m.Path = append(m.Path, scene.Seg{Op: scene.Op(rapid.IntRange(0, 6).Draw(t, "op")), X: number(t), Y: number(t), R: number(t), X1: number(t)})
			}
			s.Marks = append(s.Marks, m)
		}
		for range rapid.IntRange(0, 3).Draw(t, "labels") {
			s.Labels = append(s.Labels, scene.Label{X: number(t), Text: text(t), Size: number(t), Angle: number(t), Width: number(t), Halo: true, Ink: scene.Text, Align: rapid.IntRange(-1, 1).Draw(t, "align")})
		}
		doc := write(t, s, scene.Dark, svg.Options{Clear: rapid.Bool().Draw(t, "clear")})
		elements(t, doc)
		for _, bad := range []string{"NaN", "Inf", "e+"} {
			for _, line := range strings.Split(doc, "\n") {
				if strings.HasPrefix(line, "<path") || strings.HasPrefix(line, "<circle") {
					if strings.Contains(line, bad) {
						t.Fatalf("%s in %s", bad, line)
					}
				}
			}
		}
	})
}

// Every label of the scene is a text with its width held.
func TestTextsHoldTheirWidth(t *testing.T) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Labels: true, Dimensions: true}
	out := scene.Draw(s, v, scene.Fit(&s, v, 760, 440))
	els, texts := elements(t, write(t, out, scene.Light, svg.Options{}))
	if len(texts["text"]) != len(out.Labels) {
		t.Errorf("%d texts for %d labels", len(texts["text"]), len(out.Labels))
	}
	for _, e := range els {
		if e.Name.Local != "text" {
			continue
		}
		held := false
		for _, a := range e.Attr {
			held = held || a.Name.Local == "textLength" && a.Value != "0"
		}
		if !held {
			t.Errorf("%v does not hold its width", e)
		}
	}
}

// full is a writer on a full disc.
type full struct{ left int }

func (f *full) Write(b []byte) (int, error) {
	if len(b) > f.left {
		return f.left, io.ErrShortWrite
	}
	f.left -= len(b)
	return len(b), nil
}

func TestWriteTellsOfAFailure(t *testing.T) {
	s := specimen.Travel()
	out := scene.Draw(s, scene.View{Words: specimen.Words}, scene.Fit(&s, scene.View{}, 760, 440))
	if err := svg.Write(&full{left: 5000}, out, scene.Light, svg.Options{}); err == nil {
		t.Error("no error from a full disc")
	}
}

func BenchmarkWrite(b *testing.B) {
	s := specimen.Travel()
	v := scene.View{Words: specimen.Words, Labels: true}
	out := scene.Draw(s, v, scene.Fit(&s, v, 760, 440))
	for b.Loop() {
		if err := svg.Write(io.Discard, out, scene.Light, svg.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
