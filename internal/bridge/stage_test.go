package bridge_test

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/scene"
	"steelyard/internal/scene/svg"
	"steelyard/internal/stage"
)

const (
	width, height = 1000, 640
	gearboxView   = `{"build":"gearbox","ghost":"gearhub","side":"side","units":{"mass":"kg","length":"mm"}}`
)

// intentOf reads what a pointer event means.
func intentOf(t *testing.T, s *bridge.Stage, e stage.Event) stage.Intent {
	t.Helper()
	text, err := json.Marshal(e)
	if err != nil {
		t.Fatal(err)
	}
	out := s.Pointer(string(text))
	if p := problemIn(out); p != nil {
		t.Fatal(p)
	}
	var in stage.Intent
	if err := json.Unmarshal([]byte(out), &in); err != nil {
		t.Fatal(err)
	}
	return in
}

// spotOf finds a part in the picture.
func spotOf(t *testing.T, picture *scene.Scene, part string) scene.Spot {
	t.Helper()
	for _, p := range picture.Spots {
		if p.Part == part {
			return p
		}
	}
	t.Fatalf("%s is not to be seen", part)
	return scene.Spot{}
}

// grabbable finds a part of the main frame that no other lies over.
func grabbable(t *testing.T, picture *scene.Scene, b *document.Build) scene.Spot {
	t.Helper()
	for i, p := range picture.Spots {
		covered := b.Part(p.Part).Carrier != document.MainFrame
		for j, q := range picture.Spots {
			covered = covered || j != i && math.Hypot(p.X-q.X, p.Y-q.Y) < p.R+q.R
		}
		if !covered {
			return p
		}
	}
	t.Fatal("every part is covered by another")
	return scene.Spot{}
}

func TestStage(t *testing.T) {
	frames := 0
	s := &bridge.Stage{Session: session, Redraw: func() { frames++ }}
	if picture, palette := s.Draw(width, height); picture != nil || palette == nil {
		t.Error("a picture of nothing")
	}
	if out := s.Camera("fit"); out != "" {
		t.Error(out)
	}
	demo := call(t, "demo")
	if out := s.Show(demo, gearboxView); out != "" {
		t.Fatal(out)
	}
	if frames != 1 {
		t.Errorf("%d frames asked for", frames)
	}
	picture, palette := s.Draw(width, height)
	if picture == nil || len(picture.Spots) < 20 || palette != &scene.Light {
		t.Fatalf("%+v", picture)
	}

	// Pick a part up and move it.
	d, _ := document.Open([]byte(demo))
	spot := grabbable(t, picture, d.Build("gearbox"))
	intentOf(t, s, stage.Event{Type: "down", X: spot.X, Y: spot.Y, Kind: "mouse"})
	in := intentOf(t, s, stage.Event{Type: "move", X: spot.X + 30, Y: spot.Y - 20, Kind: "mouse"})
	if in.Select == nil || *in.Select != spot.Part || in.Move == nil {
		t.Fatalf("%+v", in)
	}
	by := in.Move.By
	in = intentOf(t, s, stage.Event{Type: "up", X: spot.X + 30, Y: spot.Y - 20, Kind: "mouse"})
	if in.Move == nil || !in.Move.Done {
		t.Fatalf("%+v", in)
	}
	for i := range by {
		by[i] += in.Move.By[i]
	}
	if by[0] <= 0 || by[1] != 0 || by[2] <= 0 {
		t.Errorf("moved by %v, want forward and up", by)
	}

	// The page moves the part and shows again: the spot is where the pointer is.
	p := d.Build("gearbox").Part(spot.Part)
	for i := range by {
		p.Offset[i] += by[i]
	}
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	s.Show(string(text), gearboxView)
	picture, _ = s.Draw(width, height)
	moved := spotOf(t, picture, spot.Part)
	if math.Abs(moved.X-spot.X-30) > 1 || math.Abs(moved.Y-spot.Y+20) > 1 {
		t.Errorf("from %v, %v to %v, %v", spot.X, spot.Y, moved.X, moved.Y)
	}

	frames = 0
	if out := s.Camera("in"); out != "" || frames != 1 {
		t.Errorf("%q, %d frames", out, frames)
	}
	if p := problemIn(s.Camera("sideways")); p == nil || !strings.Contains(p.Message.String(), "fit") {
		t.Errorf("%+v", p)
	}
	if p := problemIn(s.Pointer("{")); p == nil {
		t.Error("no problem with a broken event")
	}
}

// What cannot be shown is told, and leaves the picture as it was.
func TestStageKeepsThePicture(t *testing.T) {
	s := &bridge.Stage{Session: session}
	s.Show(call(t, "demo"), gearboxView)
	before, _ := s.Draw(width, height)
	for _, args := range [][2]string{{"{", gearboxView}, {"", ""}, {call(t, "demo"), "{"}} {
		if problemIn(s.Show(args[0], args[1])) == nil {
			t.Errorf("no problem with %.20q", args)
		}
		if after, _ := s.Draw(width, height); after == nil || len(after.Marks) != len(before.Marks) {
			t.Errorf("%.20q took the picture away", args)
		}
	}
}

// A build without figures is an empty picture, in the colours asked for.
func TestStageEmpty(t *testing.T) {
	d, _ := document.Open([]byte(call(t, "demo")))
	d.Builds[0].Frame.HeadAngle = 700
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	s := &bridge.Stage{Session: session}
	for _, view := range []string{fmt.Sprintf(`{"build":%q,"dark":true}`, d.Builds[0].ID), `{"build":"none such","dark":true}`} {
		if out := s.Show(string(text), view); out != "" {
			t.Errorf("%s: %s", view, out)
		}
		picture, palette := s.Draw(width, height)
		if picture == nil || len(picture.Spots) != 0 || palette != &scene.Dark {
			t.Errorf("%s: %+v", view, picture)
		}
	}
}

// The picture shows what the report says.
func TestSubject(t *testing.T) {
	demo := call(t, "demo")
	e := report.EvaluateText([]byte(demo))
	for i, w := range e.Builds {
		s := &bridge.Stage{Session: session}
		s.Show(demo, fmt.Sprintf(`{"build":%q}`, w.Build.ID))
		picture, _ := s.Draw(width, height)
		seen := map[string]bool{}
		for _, spot := range picture.Spots {
			seen[spot.Part] = true
		}
		if len(seen) != w.Count {
			t.Errorf("%d parts to be seen of %d", len(seen), w.Count)
		}
		sum := 0.0
		for _, it := range w.Items {
			sum += it.Mass
		}
		if total := e.Report.Builds[i].Figures[0].Value; math.Abs(1000*sum-total) > 0.01 {
			t.Errorf("items weigh %v g, the report says %v", 1000*sum, total)
		}
		if !strings.Contains(picture.Title+picture.Desc, w.Build.Name) {
			t.Errorf("not called %q: %q, %q", w.Build.Name, picture.Title, picture.Desc)
		}
	}
}

// The stage's functions stand beside the others under their own names.
func TestStageFunctions(t *testing.T) {
	s := &bridge.Stage{Session: session}
	f := s.Functions()
	for _, name := range []string{"show", "pointer", "camera", "picture"} {
		if f[name] == nil || functions[name] != nil {
			t.Errorf("%s", name)
		}
		for _, args := range [][]string{nil, {""}, {"null", "null"}} {
			new(bridge.Session).Guard(name, f[name])(args...)
		}
	}
}

func FuzzPointer(f *testing.F) {
	f.Add(`{"type":"down","x":500,"y":400,"kind":"mouse"}`, `{"type":"move","x":1e308,"y":0,"kind":"mouse"}`, "in")
	f.Add(`{"type":"wheel","delta":1e9}`, `{"type":"up","id":3}`, "fit")
	f.Fuzz(func(t *testing.T, first, second, command string) {
		s := &bridge.Stage{Session: session}
		s.Show(call(t, "demo"), gearboxView)
		s.Draw(width, height)
		s.Pointer(first)
		s.Camera(command)
		s.Pointer(second)
		picture, _ := s.Draw(width, height)
		for _, spot := range picture.Spots {
			if math.IsNaN(spot.X) || math.IsNaN(spot.Y) {
				t.Fatalf("%+v", spot)
			}
		}
	})
}

func BenchmarkShow(b *testing.B) {
	text := call(b, "demo")
	s := &bridge.Stage{Session: session}
	for b.Loop() {
		s.Show(text, gearboxView)
		s.Draw(width, height)
	}
}

// The picture for a page without a canvas is the one that the canvas would show,
// with the camera where it is.
func TestPicture(t *testing.T) {
	s := &bridge.Stage{Session: session}
	if got := s.Picture(); got != "" {
		t.Errorf("with nothing to show: %.80q", got)
	}
	if problem := s.Show(functions["demo"](), `{"build":"gearbox","side":"side","labels":true,"width":640,"height":400}`); problem != "" {
		t.Fatal(problem)
	}
	fitted := s.Picture()
	picture, palette := s.Draw(640, 400)
	var want bytes.Buffer
	if err := svg.Write(&want, picture, *palette, svg.Options{Named: true}); err != nil {
		t.Fatal(err)
	}
	if fitted != want.String() {
		t.Errorf("it is not what the canvas shows: %.200s", fitted)
	}
	s.Camera("in")
	if s.Picture() == fitted {
		t.Errorf("it does not follow the camera")
	}
	s.Camera("fit")
	if s.Picture() != fitted {
		t.Errorf("it does not come back with the camera")
	}
}
