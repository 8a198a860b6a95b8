package ride_test

import (
	"math"
	"os"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/mass"
	"steelyard/internal/ride"
)

// worked is a case of testdata/ride/statics.json, worked by hand there.
type worked struct {
	Name   string  `json:"name"`
	Rear   float64 `json:"rear_m"`
	Front  float64 `json:"front_m"`
	Bodies []struct {
		Mass float64 `json:"mass_kg"`
		X    float64 `json:"x_m"`
		Y    float64 `json:"y_m"`
		Z    float64 `json:"z_m"`
	} `json:"bodies"`
	Loads []struct {
		Gradient     float64 `json:"gradient"`
		Deceleration float64 `json:"deceleration"`
		Front        float64 `json:"front_kg"`
		Rear         float64 `json:"rear_kg"`
	} `json:"loads"`
	Braking []struct {
		Gradient float64 `json:"gradient"`
		Limit    float64 `json:"limit"`
	} `json:"braking"`
	Climbing []struct {
		Grip  float64  `json:"grip"`
		Lift  float64  `json:"lift"`
		Slip  *float64 `json:"slip"`
		First string   `json:"first"`
	} `json:"climbing"`
}

func (w *worked) items() []mass.Item {
	var items []mass.Item
	for _, b := range w.Bodies {
		items = append(items, mass.Item{Mass: b.Mass, Place: mass.Vec{X: b.X, Y: b.Y, Z: b.Z}})
	}
	return items
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.15g, want %.15g ± %g", what, got, want, tolerance)
	}
}

func TestWorkedByHand(t *testing.T) {
	text, err := os.ReadFile("../../testdata/ride/statics.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []worked
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) != 4 {
		t.Fatalf("%d cases, want 4", len(cases))
	}
	for _, c := range cases {
		t.Run(c.Name, func(t *testing.T) {
			items := c.items()
			s := ride.Between(items, c.Rear, c.Front)
			for _, l := range c.Loads {
				got := s.Loads(l.Gradient, l.Deceleration)
				near(t, "front load", got.Front.Value, l.Front, 1e-12)
				near(t, "rear load", got.Rear.Value, l.Rear, 1e-12)
			}
			for _, b := range c.Braking {
				near(t, "braking", s.Braking(nil, b.Gradient, 1).Lift.Value, b.Limit, 1e-13)
			}
			for _, k := range c.Climbing {
				got := s.Climbing(items, k.Grip)
				near(t, "lift", got.Lift.Value, k.Lift, 1e-13)
				if k.Slip == nil {
					if !math.IsInf(got.Slip.Value, 1) {
						t.Errorf("slips at %v, want never", got.Slip.Value)
					}
				} else {
					near(t, "slip", got.Slip.Value, *k.Slip, 1e-13)
				}
				if got.Slips != (k.First == "slip") {
					t.Errorf("at a grip of %v slips first: %v, want %s", k.Grip, got.Slips, k.First)
				}
				near(t, "first", got.First.Value, min(got.Lift.Value, got.Slip.Value), 0)
			}
		})
	}
}

// A drop of 10 % takes 0.1 g off a limit of 0.7 g: the example of Riel (2005),
// who rounds the cosine to 1 and the sine to the tangent for slopes within
// ±20 %. What that leaves out is told by the series: v s²/2 and s³/2.
func TestRielOnSlopes(t *testing.T) {
	for _, level := range []float64{0.63, 0.7, 0.83} {
		s := ride.Between([]mass.Item{{Mass: 85, Place: mass.Vec{X: 1 - level, Z: 1}}}, 0, 1)
		for g := -0.2; g <= 0.2001; g += 0.05 {
			got := s.Braking(nil, g, 1).Lift.Value
			near(t, "limit on a slope", got, level+g, level*g*g/2+math.Abs(g*g*g)/2+1e-12)
		}
		near(t, "on the level", s.Braking(nil, 0, 1).Lift.Value, level, 1e-15)
	}
	s := ride.Between([]mass.Item{{Mass: 85, Place: mass.Vec{X: 0.3, Z: 1}}}, 0, 1)
	near(t, "Riel's example", s.Braking(nil, -0.1, 1).Lift.Value, 0.6, 0.0035)
}

// Riel's two limits are a ratio of lever arms and nothing else: with his
// wheelbase, whatever the height, the place that gives the limit on the level
// puts the rear wheel's load at 0 there and above 0 below it.
func TestRielLimits(t *testing.T) {
	for _, limit := range []float64{0.63, 0.83} {
		for h := 0.9; h < 1.25; h += 0.05 {
			s := ride.Between([]mass.Item{{Mass: 90, Place: mass.Vec{X: 1 - limit*h, Z: h}}}, 0, 1)
			near(t, "limit", s.Braking(nil, 0, 1).Lift.Value, limit, 1e-14)
			near(t, "rear load at the limit", s.Loads(0, limit).Rear.Value, 0, 1e-12)
			if r := s.Loads(0, limit-0.01).Rear.Value; !(r > 0) {
				t.Errorf("rear load just within the limit is %v kg", r)
			}
		}
	}
}

func TestLean(t *testing.T) {
	// 5 kg, 0.2 m out on the left of 95 kg in the middle, all 1 m up:
	// y = 1/100 m, and atan(0.01) = 0.573 degrees.
	items := []mass.Item{{Mass: 95, Place: mass.Vec{Z: 1}}, {Mass: 5, Place: mass.Vec{Y: 0.2, Z: 1}}}
	s := ride.Between(items, 0, 1)
	near(t, "lean", s.Lean().Value, math.Atan(0.01), 1e-15)
	near(t, "lean in degrees", s.Lean().Value*180/math.Pi, 0.573, 0.0005)
	// Moving half of the 5 kg 0.4 m across leaves 2.5 kg on either side.
	near(t, "to move across", s.Rebalance(0.4).Value, 2.5, 1e-13)
}
