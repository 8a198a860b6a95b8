package bridge_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/document"
	"steelyard/internal/photograph"
)

// small is a JPEG file of 1 by 1 px, in base64: a grey one.
const small = "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAgGBgcGBQgHBwcJCQgKDBQNDAsLDBkSEw8UHRofHh0aHBwgJC4nICIsIxwcKDcpLDAxNDQ0Hyc5PTgyPC4zNDL/wAALCAABAAEBAREA/8QAFAABAAAAAAAAAAAAAAAAAAAACf/EABQQAQAAAAAAAAAAAAAAAAAAAAD/2gAIAQEAAD8AVN//2Q=="

// photographed is a document whose first build has a photograph, with its text.
func photographed(t *testing.T) (*document.Document, string) {
	t.Helper()
	d := demoDocument(t)
	d.Builds[0].Photograph = "k3v9q0x1"
	return d, written(t, d)
}

// A file carries the photographs that it is given and has them back; a link carries
// none, nor the name of one.
func TestPhotographsGoIntoFilesOnly(t *testing.T) {
	_, text := photographed(t)
	list := `[{"id":"k3v9q0x1","width":1,"height":1,"marks":[],"scale":"wheel","wheelbase_mm":0,"distance_m":4,"within_mm":2,"picture":"` + small + `"}]`
	file := call(t, "fileText", text, list)
	if p := problemIn(file); p != nil {
		t.Fatal(p)
	}
	if plain := call(t, "fileText", text); strings.Contains(plain, small) || !strings.Contains(plain, "k3v9q0x1") {
		t.Error("a file that was asked for without photographs")
	}
	var o struct {
		Document    *document.Document
		Problems    []document.Problem
		Photographs []photograph.Photograph
	}
	read(t, &o, "open", file)
	if o.Document == nil || len(o.Problems) != 0 || len(o.Photographs) != 1 || o.Photographs[0].Picture != small || o.Photographs[0].Distance != 4 {
		t.Fatalf("%d photographs, %v", len(o.Photographs), o.Problems)
	}
	if o.Document.Builds[0].Photograph != "k3v9q0x1" {
		t.Error("the build has lost its photograph")
	}
	// One that is broken is told of, and the document opens.
	o.Photographs, o.Problems = nil, nil
	read(t, &o, "open", strings.Replace(file, small, small[:80], 1))
	if o.Document == nil || len(o.Problems) != 1 || len(o.Photographs) != 0 {
		t.Errorf("%d photographs, %v", len(o.Photographs), o.Problems)
	}

	var linked opened
	read(t, &linked, "decodeLink", call(t, "encodeLink", text))
	if linked.Document == nil || linked.Document.Builds[0].Photograph != "" {
		t.Errorf("a link names a photograph: %+v", linked.Document)
	}
	if call(t, "encodeLink", text) != call(t, "encodeLink", call(t, "demo")) {
		t.Error("a link tells that there is a photograph")
	}
}

// onPaper is how a picture begins that is not to be seen through.
const onPaper = `<rect width="100%" height="100%"`

// What is marked lies on what is drawn, however the picture is moved and zoomed; seen
// from behind there is nothing behind it.
func TestBackdropFollowsThePicture(t *testing.T) {
	d, text := photographed(t)
	s := &bridge.Stage{Session: new(bridge.Session)}
	if s.Backdrop() != "" {
		t.Error("there is something behind nothing")
	}
	view := func(side string) string {
		v, err := json.Marshal(map[string]any{
			"build": d.Builds[0].ID, "side": side, "width": 800, "height": 500, "units": map[string]string{"mass": "kg", "length": "mm"},
			"photograph": map[string]any{
				"id": "k3v9q0x1", "width": 2000, "height": 1000,
				"marks": []map[string]any{{"of": "rear_axle", "x": 1500, "y": 700}, {"of": "front_axle", "x": 400, "y": 640}},
			},
		})
		if err != nil {
			t.Fatal(err)
		}
		return string(v)
	}
	if p := s.Show(text, view("side")); p != "" {
		t.Fatal(p)
	}
	at := func() (rear, front, lift [2]float64) {
		if s.Picture() == "" || strings.Contains(s.Picture(), onPaper) {
			t.Fatal("no picture, or one on paper")
		}
		var m [6]float64
		if n, err := fmt.Sscanf(s.Backdrop(), "matrix(%f, %f, %f, %f, %f, %f)", &m[0], &m[1], &m[2], &m[3], &m[4], &m[5]); n != 6 {
			t.Fatal(err, s.Backdrop())
		}
		to := func(x, y float64) [2]float64 { return [2]float64{m[0]*x + m[2]*y + m[4], m[1]*x + m[3]*y + m[5]} }
		return to(1500, 700), to(400, 640), to(950, 100)
	}
	rear, front, lift := at()
	// The bike looks to the left in the photograph and to the right in the picture; its
	// wheels are of one size, so that the axles are level there.
	if !(front[0] > rear[0]+200) || math.Abs(front[1]-rear[1]) > 0.1 || !(lift[1] < rear[1]-100) {
		t.Errorf("the axles lie at %v and %v, what is above them at %v", rear, front, lift)
	}
	for range 2 {
		s.Camera("in")
		s.Camera("left")
	}
	nearer, _, _ := at()
	s.Camera("fit")
	again, _, _ := at()
	if nearer == rear || again != rear {
		t.Errorf("moved from %v to %v and back to %v", rear, nearer, again)
	}
	if p := s.Show(text, view("rear")); p != "" || !strings.Contains(s.Picture(), onPaper) || s.Backdrop() != "" {
		t.Error("there is a photograph behind the rear view", p)
	}
	// What has too few marks lies nowhere.
	if p := s.Show(text, strings.Replace(view("side"), "front_axle", "saddle", 1)); p != "" || s.Picture() == "" || s.Backdrop() != "" {
		t.Error("a photograph without its axles lies somewhere", p)
	}
}
