package rooms_test

import (
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
)

// The demo contradicts itself in no build and under no load: nothing takes up the
// place of something else, and nothing may touch by what is told in the middle.
func TestDemoHasRoomForAllOfIt(t *testing.T) {
	d := documenttest.Demo(t)
	for _, state := range []document.State{document.Ready, document.Ridden} {
		d.Show.State = state
		for i := range d.Builds {
			for k := range d.Loads {
				d.Show.Compare[0], d.Show.Loads[0] = d.Builds[i].ID, d.Loads[k].ID
				for _, g := range rooms.ClearancesOf(evaluated(t, d)).Sides[0].Gaps {
					if g.Least < 0 || g.Pose < 0 || g.Text != "" {
						t.Errorf("%s, %s, %s: %+v", d.Builds[i].ID, d.Loads[k].ID, state, g)
					}
				}
			}
		}
	}
}

// The demo has room under its gearbox, less when the suspension is compressed; a
// gearbox that hangs 300 mm lower touches the ground, and the warning names both;
// a bag as wide as the rider between the knees is in their way.
func TestClearances(t *testing.T) {
	d := documenttest.Demo(t)
	d.Show.State = document.Ridden
	gap := func(d *document.Document, key, name string) *rooms.Gap {
		for _, g := range rooms.ClearancesOf(evaluated(t, d)).Sides[0].Gaps {
			if g.Key == key && strings.Contains(g.Name, name) {
				return &g
			}
		}
		return nil
	}
	ground := gap(d, "ground", "")
	if ground == nil || ground.Verdict != report.More || ground.Least >= ground.Pose || ground.Pose < 150 || ground.Pose > 350 || ground.Text != "" {
		t.Fatalf("the demo: %+v", ground)
	}
	d.Build("gearbox").Part("gearbox").Offset[2] -= 300
	if g := gap(d, "ground", "gearbox"); g == nil || g.Verdict != report.Less || !strings.Contains(g.Text, "touches the ground") || !strings.Contains(g.Text, g.Name) {
		t.Errorf("a gearbox in the ground: %+v", g)
	}
	b := d.Build("gearbox")
	b.Parts = append(b.Parts, document.Part{
		ID: "wide", Name: "Wide frame bag", Kind: "bag", Quantity: 1, Mass: 300, HalfWidth: 10, Basis: document.Weighed,
		Station: "top-tube", Within: 10, Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormBox, Size: document.Vec3{500, 500, 300}},
	})
	if g := gap(d, "knees", "Wide"); g == nil || g.Verdict != report.Less || !strings.Contains(g.Text, "knees") {
		t.Errorf("a bag as wide as the rider: %+v", g)
	}
	d.Show.State = document.Ready
	if g := gap(d, "knees", "Wide"); g != nil {
		t.Errorf("nobody rides, and yet knees are in the way: %+v", g)
	}
}
