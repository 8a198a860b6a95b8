package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"steelyard/internal/geometry"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
	"steelyard/internal/scene/svg"
)

// TestLook draws pictures of every sort, and keeps them in the folder that
// STEELYARD_LOOK names, for people to look at: the golden files say that a
// picture is the same, not that it is good.
func TestLook(t *testing.T) {
	dir := os.Getenv("STEELYARD_LOOK")
	if dir == "" {
		dir = t.TempDir()
	}
	keep := func(name string, s *scene.Scene, palette scene.Palette) {
		t.Helper()
		var text bytes.Buffer
		if err := svg.Write(&text, s, palette, svg.Options{}); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name+".svg"), text.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		mustBeWellFormed(t, name, text.Bytes())
	}
	travel, tour := specimen.Travel(), specimen.Tour()
	ridden := specimen.Ridden("leaned")
	low, upright, standing := specimen.RiddenTravel("low"), specimen.Ridden("upright"), specimen.RiddenTravel("standing")
	alone := travel
	alone.Ghost = nil
	side := scene.View{Words: specimen.Words, Labels: true, Units: scene.Units{Mass: "kg"}}
	rear := scene.View{Words: specimen.Words, Aspect: scene.Rear, Labels: true, Units: scene.Units{Mass: "kg"}}
	dims := scene.View{Words: specimen.Words, Dimensions: true, Labels: false}
	keyed := side
	keyed.Key = true
	picked := side
	picked.Selected, picked.Hovered = "panniers", "fork-lower"
	type look struct {
		name    string
		subject scene.Subject
		view    scene.View
		w, h    float64
		zoom    float64
		palette scene.Palette
	}
	looks := []look{
		{"side-light", travel, side, 760, 440, 1, scene.Light},
		{"side-dark", travel, picked, 760, 440, 1, scene.Dark},
		{"side-bare", alone, scene.View{Words: specimen.Words}, 1200, 720, 1, scene.Light},
		{"side-zoom", travel, side, 760, 440, 3, scene.Light},
		{"side-phone", travel, side, 390, 300, 1, scene.Light},
		{"phone-dark", travel, picked, 390, 300, 1, scene.Dark},
		{"rear-light", travel, rear, 760, 440, 1, scene.Light},
		{"rear-dark", travel, rear, 390, 300, 1, scene.Dark},
		{"dims-light", travel, dims, 760, 440, 1, scene.Light},
		{"dims-phone", alone, dims, 390, 300, 1, scene.Dark},
		{"dims-rear", travel, scene.View{Words: specimen.Words, Aspect: scene.Rear, Dimensions: true}, 760, 440, 1, scene.Light},
		{"tour-light", tour, side, 760, 440, 1, scene.Light},
		{"ridden-light", ridden, keyed, 760, 480, 1, scene.Light},
		{"ridden-dark", ridden, keyed, 760, 480, 1, scene.Dark},
		{"ridden-phone", ridden, side, 390, 300, 1, scene.Light},
		{"ridden-phone-dark", ridden, side, 390, 300, 1, scene.Dark},
		{"ridden-rear", ridden, rear, 760, 480, 1, scene.Light},
		{"ridden-rear-dark", ridden, rear, 390, 300, 1, scene.Dark},
		{"ridden-dims", ridden, dims, 760, 480, 1, scene.Light},
		{"ridden-large", ridden, keyed, 1400, 1000, 1, scene.Light},
		{"low-light", low, side, 760, 480, 1, scene.Light},
		{"upright-light", upright, scene.View{Words: specimen.Words}, 760, 480, 1, scene.Light},
		{"standing-light", standing, side, 760, 480, 1, scene.Light},
		{"standing-rear", standing, rear, 760, 480, 1, scene.Dark},
	}
	for i, set := range specimen.Drives {
		k := specimen.Against(specimen.Driven(set), specimen.Driven(specimen.Drives[(i+2)%len(specimen.Drives)]))
		bare := specimen.Driven(set)
		bare.Markers = nil
		looks = append(looks,
			look{"drive-" + set, k, side, 760, 440, 1, scene.Light},
			look{"drive-dark-" + set, k, side, 760, 440, 1, scene.Dark},
			look{"drive-phone-" + set, k, side, 390, 300, 1, scene.Light},
			look{"drive-zoom-" + set, bare, scene.View{Words: specimen.Words}, 760, 440, 2, scene.Light},
			look{"drive-rear-" + set, k, rear, 390, 400, 1, scene.Light})
	}
	equipped := specimen.Equipped("gear-hub-belt")
	looks = append(looks, look{"equipped", equipped, side, 1180, 640, 1, scene.Light}, look{"equipped-rear", equipped, rear, 760, 440, 1, scene.Light})
	equipped.Markers = nil
	looks = append(looks, look{"equipped-bare", equipped, scene.View{Words: specimen.Words}, 1180, 640, 1, scene.Dark})
	for _, c := range looks {
		cam := scene.Fit(&c.subject, c.view, c.w, c.h)
		cam.Zoom(c.zoom, c.w*0.3, c.h*0.6)
		s := scene.Draw(c.subject, c.view, cam)
		keep(c.name, s, c.palette)
	}
	for _, c := range []struct {
		name    string
		w       scene.Weighing
		bike    *geometry.Bike
		x, y    float64
		palette scene.Palette
	}{
		{"weigh-light", scene.Weighing{Raised: "front", Height: 0.3}, travel.Bike, 760, 480, scene.Light},
		{"weigh-dark", scene.Weighing{Raised: "rear", Height: 0.25}, tour.Bike, 760, 480, scene.Dark},
		{"weigh-phone", scene.Weighing{Raised: "front", Height: 0.3}, tour.Bike, 390, 300, scene.Light},
		{"weigh-tall", scene.Weighing{Raised: "front", Height: 0.3}, travel.Bike, 390, 640, scene.Dark},
		{"weigh-level", scene.Weighing{}, travel.Bike, 760, 480, scene.Light},
		{"weigh-large", scene.Weighing{Raised: "front", Height: 0.08, Units: scene.Units{Length: "in"}}, travel.Bike, 1200, 640, scene.Light},
	} {
		c.w.Words = specimen.Words
		keep(c.name, scene.WeighIn(c.bike, c.w, c.x, c.y), c.palette)
	}
}

// mustBeWellFormed reads a picture, and wants more in it than its frame.
func mustBeWellFormed(t *testing.T, name string, text []byte) {
	t.Helper()
	elements := 0
	for d := xml.NewDecoder(bytes.NewReader(text)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s is no SVG: %v", name, err)
		}
		if _, is := token.(xml.StartElement); is {
			elements++
		}
	}
	if elements < 20 {
		t.Errorf("%s has only %d elements", name, elements)
	}
}
