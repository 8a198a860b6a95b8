package ride_test

import (
	"math"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/ride"
)

func TestVerdicts(t *testing.T) {
	// 20 kg that lie within ± 1 kg.
	items := []mass.Item{{Mass: 20, MassU: mass.Rectangular(1)}}
	load := mass.Total(items, nil)
	for _, c := range []struct {
		limit   float64
		verdict ride.Verdict
		sure    bool
		left    float64
	}{
		{25, ride.OK, false, 5}, {21.01, ride.OK, false, 1.01}, {20.99, ride.Near, false, 0.99}, {20, ride.Near, false, 0},
		{19.99, ride.Over, false, -0.01}, {19.01, ride.Over, false, -0.99}, {18.99, ride.Over, true, -1.01},
	} {
		h, ok := ride.Judge("rear-rack", items, load, c.limit)
		if !ok || h.Verdict != c.verdict || h.Sure != c.sure || h.What != "rear-rack" || h.Limit != c.limit {
			t.Errorf("limit %v: %+v, %v; want %s, sure %v", c.limit, h, ok, c.verdict, c.sure)
		}
		near(t, "left", h.Left(), c.left, 1e-12)
		near(t, "used", h.Used, 20/c.limit, 1e-15)
		near(t, "plus", h.Plus, 1, 1e-15)
	}
	for _, limit := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if h, ok := ride.Judge("total", items, load, limit); ok {
			t.Errorf("limit %v is judged: %+v", limit, h)
		}
	}
	if h, ok := ride.Judge("total", items, load, 5e-324); ok {
		t.Errorf("an infinite share of the limit is told: %+v", h)
	}
	if h, ok := ride.Judge("total", items, mass.Figure{Value: math.NaN()}, 1); ok {
		t.Errorf("a load that is no number is judged: %+v", h)
	}
}

func TestJudge(t *testing.T) {
	items := []mass.Item{
		{Mass: 80, Place: mass.Vec{X: 0.4, Z: 1}},
		{Mass: 14, Place: mass.Vec{X: 0, Z: 0.6}, MassU: 0.5, MassSource: 1},
		{Mass: 6, Place: mass.Vec{X: 1, Z: 0.4}, MassU: 0.2, MassSource: 2},
	}
	// By hand: front 80 · 0.4 + 6 = 38 kg, rear 62 kg.
	s := ride.Between(items, 0, 1)
	racks := map[string]mass.Share{"rear-rack": {0, 1, 0}, "front-rack": nil}
	ratings := []document.Rating{
		{What: "rear-tyre", Limit: 60e3}, {What: "rear-rack", Limit: 14.5e3}, {What: "total", Limit: 140e3},
		{What: "front-tyre", Limit: 0}, {What: "front-rim", Limit: 60e3}, {What: "front-rack", Limit: 10e3},
		{What: "fuel", Limit: 1}, {What: "total", Limit: 1}, {What: "rear-rim", Limit: -1}, {What: "rear-rim", Limit: math.NaN()}, {What: "rear-rim", Limit: 5e-324},
	}
	got := s.Judge(items, ratings, racks)
	want := []struct {
		what    string
		load    float64
		verdict ride.Verdict
	}{
		{"total", 100, ride.OK}, {"front-rack", 0, ride.OK}, {"rear-rack", 14, ride.Near},
		{"rear-tyre", 62, ride.Over}, {"front-rim", 38, ride.OK},
	}
	if len(got) != len(want) {
		t.Fatalf("%d judged, want %d: %+v", len(got), len(want), got)
	}
	for i, w := range want {
		if g := got[i]; g.What != w.what || g.Verdict != w.verdict || math.Abs(g.Load-w.load) > 1e-12 {
			t.Errorf("%d: %+v, want %+v", i, g, w)
		}
	}
}

// A rating is judged when document.Check finds nothing wrong with it, and only then.
func TestJudgedAreChecked(t *testing.T) {
	items := []mass.Item{{Mass: 80, Place: mass.Vec{X: 0.4, Z: 1}}}
	s := ride.Between(items, 0, 1)
	for _, what := range append([]string{"fuel", ""}, document.Rateds...) {
		for _, limit := range []float64{math.NaN(), math.Inf(1), -1, 0, 0.5, 1, 80e3, 1e6, 1.1e6} {
			ratings := []document.Rating{{What: what, Limit: limit}}
			d := document.Document{Show: document.Show{Mass: "g", Length: "mm"}, Builds: []document.Build{{ID: "a", Name: "A", Ratings: ratings}}}
			sound := len(document.Check(&d)) == 0 && limit != 0
			if judged := len(s.Judge(items, ratings, nil)) == 1; judged != sound {
				t.Errorf("%s at %v g: judged %v, sound %v", what, limit, judged, sound)
			}
		}
	}
}

// Every station that names a rack's place is told to that rack, and every one
// named here exists.
func TestRackOf(t *testing.T) {
	count := 0
	for _, name := range geometry.StationNames {
		rack := ride.RackOf(name, 0)
		if strings.HasSuffix(rack, "-cage") {
			continue
		}
		if rack != "" {
			count++
			if !strings.HasPrefix(name, strings.TrimSuffix(rack, "rack")) {
				t.Errorf("%s is carried by %s", name, rack)
			}
		}
		// Panniers and decks hang on racks; the rack itself is not its own load.
		if (strings.Contains(name, "pannier") || strings.HasSuffix(name, "-deck")) != (rack != "") {
			t.Errorf("%s is carried by %q", name, rack)
		}
	}
	if count != 8 {
		t.Errorf("%d stations on racks, want 8", count)
	}
	// A bag on a leg hangs on that leg's cage; what sits in the fork's middle, on none.
	for _, c := range []struct {
		station string
		y       float64
		want    string
	}{
		{"fork-lower", 0.145, "fork-cage-left"}, {"fork-lower", -0.145, "fork-cage-right"}, {"fork-lower", 0, ""},
		{"fork-legs", 0.07, "fork-cage-left"}, {"fork-legs", -0.07, "fork-cage-right"}, {"bottle-under", 0, "down-tube-cage"}, {"bottle-seat-tube", 0, ""},
	} {
		if got := ride.RackOf(c.station, c.y); got != c.want {
			t.Errorf("%s, %g m to the left, is carried by %q, want %q", c.station, c.y, got, c.want)
		}
	}
}
