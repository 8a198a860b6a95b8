package geometry

import (
	"maps"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/mass"
)

func TestEveryStationIsPlaced(t *testing.T) {
	for _, name := range []string{"travel-bike.json", "touring-bike.json"} {
		bike := posed(t, load(t, name))
		got, want := slices.Sorted(maps.Keys(bike.Stations)), slices.Sorted(slices.Values(StationNames))
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s: stations (-named +placed):\n%s", name, d)
		}
		for station, s := range bike.Stations {
			if Pair(station) != (len(s.Points) == 2) {
				t.Errorf("%s: %s has %d points, a pair: %t", name, station, len(s.Points), Pair(station))
			}
		}
	}
}

// Pairs have a left point and its mirror image; left and right stations of
// their own agree with them.
func TestPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-24, 24).Draw(t, "gap"))
		sprung(t, b)
		bike := posed(t, b)
		for _, name := range []string{"fork-legs", "grips", "brake-levers", "rear-panniers", "front-panniers"} {
			p := bike.Stations[name].Points
			if len(p) != 2 || p[0].Y <= 0 || p[1] != mirror(p[0]) {
				t.Errorf("%s is at %v, want left and its mirror image", name, p)
			}
		}
		for _, c := range [][3]string{
			{"rear-panniers", "rear-pannier-left", "rear-pannier-right"},
			{"front-panniers", "front-pannier-left", "front-pannier-right"},
		} {
			p := bike.Stations[c[0]].Points
			if p[0] != bike.Stations[c[1]].Points[0] || p[1] != bike.Stations[c[2]].Points[0] {
				t.Errorf("%s is not %s and %s", c[0], c[1], c[2])
			}
		}
		pedals := bike.Stations["pedals"].Points
		if len(pedals) != 2 || pedals[0] != bike.PedalFront || pedals[1] != bike.PedalRear {
			t.Errorf("pedals are at %v", pedals)
		}
		// About the crank's axle the pedals balance.
		nearPoint(t, "middle of the pedals", pedals[0].Lerp(pedals[1], 0.5), bike.BottomBracket, exact)
	})
}

// Which side of the bike a station is on; everything else is in the middle.
func TestSides(t *testing.T) {
	left := []string{"rear-rotor", "rear-caliper", "crank-left", "stand", "front-rotor", "front-caliper", "rear-pannier-left", "front-pannier-left"}
	right := []string{"cassette", "rear-derailleur", "chain", "chainring", "crank-right", "front-derailleur", "rear-pannier-right", "front-pannier-right"}
	bike := posed(t, load(t, "travel-bike.json"))
	for name, s := range bike.Stations {
		if len(s.Points) == 2 {
			continue
		}
		want := 0
		switch {
		case slices.Contains(left, name):
			want = 1
		case slices.Contains(right, name):
			want = -1
		}
		if got := s.Points[0].Y; (want == 0 && got != 0) || float64(want)*got < 0 || (want != 0 && got == 0) {
			t.Errorf("%s is at y = %v, want sign %d", name, got, want)
		}
	}
}

// Stations where a mechanic would look for them.
func TestStationsMakeSense(t *testing.T) {
	for _, name := range []string{"travel-bike.json", "touring-bike.json"} {
		bike := posed(t, load(t, name))
		at := func(station string) mass.Vec { return bike.Stations[station].Points[0] }
		fromLine := func(p, a, c mass.Vec) float64 { return fromSegment(middle(p), a, c) }

		for station, s := range bike.Stations {
			for _, p := range s.Points {
				if p.Z < 0.15 || p.Z > 1.3 || p.X < -0.5 || p.X > bike.Wheelbase+0.3 || math.Abs(p.Y) > 0.45 {
					t.Errorf("%s: %s is at %v, nowhere near the bike", name, station, p)
				}
			}
		}
		near(t, name+": swingarm from pivot and axle", at("swingarm").Sub(bike.RearAxle).Norm(), 0.225, 0.1)
		near(t, name+": a bottle off the down tube", fromLine(at("bottle-down-tube"), bike.BottomBracket, bike.HeadBottom), 0.057, exact)
		near(t, name+": a bottle off the seat tube", fromLine(at("bottle-seat-tube"), bike.BottomBracket, bike.SeatTop), 0.057, exact)
		near(t, name+": a bottle under the down tube", fromLine(at("bottle-under"), bike.BottomBracket, bike.HeadBottom), 0.057, exact)
		if !(at("bottle-under").Z < at("bottle-down-tube").Z) {
			t.Errorf("%s: the lower bottle is over the upper one", name)
		}
		if !(at("bottle-seat-tube").X > at("seat-tube").X) {
			t.Errorf("%s: the bottle is behind the seat tube", name)
		}
		near(t, name+": front panniers abreast of the axle", middle(at("front-panniers")).Sub(bike.FrontAxle).Norm(), 0, exact)
		if !(at("handlebar-bag").X > bike.BarClamp.X && at("saddle-bag").X < bike.SaddleTop.X) {
			t.Errorf("%s: the bags are inside the bike", name)
		}
		if !(at("brake-levers").X > at("grips").X && at("brake-levers").Y < at("grips").Y) {
			t.Errorf("%s: the levers are behind or outside the grips", name)
		}
		if at("saddle").Z <= at("seatpost").Z || at("seatpost").Z <= at("seat-clamp").Z {
			t.Errorf("%s: saddle, post and clamp are not on top of each other", name)
		}
		near(t, name+": fork-lower from the axle", at("fork-lower").Sub(bike.FrontAxle).Norm(), 0.15, 0.03)
	}
}

// The rear rack belongs to the main frame: however deep the suspension stands,
// it is the same body as the head tube, and the tyre never reaches it.
func TestRearRackIsOnTheMainFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := figuresThat(t, rapid.Float64Range(-24, 24).Draw(t, "gap"))
		sprung(t, b)
		low := posed(t, b)
		b.Fork.Sag, b.Rear.Sag = 0, 0
		full := posed(t, b)
		for _, station := range []string{"rear-rack", "rear-rack-deck", "rear-panniers", "rear-light", "frame-bag", "saddle-bag", "bottle-under"} {
			p, q := low.Stations[station].Points[0], full.Stations[station].Points[0]
			near(t, station+" from the head tube", p.Sub(low.HeadTop).Norm(), q.Sub(full.HeadTop).Norm(), 1e-9)
			near(t, station+" from the bottom bracket", p.Sub(low.BottomBracket).Norm(), q.Sub(full.BottomBracket).Norm(), 1e-9)
		}
		for _, axle := range low.AxlePath(20) {
			if room := low.Stations["rear-rack-deck"].Points[0].Sub(axle).Norm() - low.RearRadius; room < rackRoom-1e-9 {
				t.Errorf("the tyre comes within %v m of the rack's deck", room)
			}
		}
	})
}

// What is on the swingarm, on the wheel or on the fork's lower legs moves with
// the axle and not with the frame.
func TestUnsprungStationsFollowTheWheel(t *testing.T) {
	b := load(t, "travel-bike.json")
	low := posed(t, b)
	b.Fork.Sag, b.Rear.Sag = 0, 0
	full := posed(t, b)
	for _, station := range []string{"rear-rotor", "cassette", "rear-derailleur", "rear-mudguard"} {
		near(t, station, low.Stations[station].Points[0].Sub(low.RearAxle).Norm(), full.Stations[station].Points[0].Sub(full.RearAxle).Norm(), 1e-9)
	}
	for _, station := range []string{"fork-lower", "fork-legs", "front-rotor", "front-caliper", "front-rack", "front-panniers", "front-mudguard"} {
		near(t, station, low.Stations[station].Points[0].Sub(low.FrontAxle).Norm(), full.Stations[station].Points[0].Sub(full.FrontAxle).Norm(), 1e-9)
	}
	nearPoint(t, "shock", low.Stations["shock"].Points[0], low.ShockFrame.Lerp(low.ShockSwing, 0.5), exact)
	nearPoint(t, "swingarm", low.Stations["swingarm"].Points[0], low.Pivot.Lerp(low.RearAxle, 0.5), exact)
	// By hand: the eyes are 210.15 mm apart at full length, sqrt(208² + 30²).
	near(t, "shock's length", full.ShockFrame.Sub(full.ShockSwing).Norm(), 0.2101523, 1e-7)
	if got := low.ShockFrame.Sub(low.ShockSwing).Norm(); got >= 0.205 || got <= 0.180 {
		t.Errorf("with 42 mm of sag the shock is %v m long", got)
	}
}

func TestRigidStations(t *testing.T) {
	bike := posed(t, load(t, "round-bike.json"))
	at := func(s string) mass.Vec { return bike.Stations[s].Points[0] }
	// In mm over the ground: chainstay's middle (225, 309.75), seatstay's (125, 549.75).
	nearPoint(t, "swingarm", at("swingarm"), mm(175, 0, 429.75), exact)
	nearPoint(t, "pivot", at("pivot"), bike.BottomBracket, exact)
	nearPoint(t, "shock", at("shock"), at("seat-tube"), exact)
	if bike.ShockFrame != (mass.Vec{}) || bike.ShockSwing != (mass.Vec{}) {
		t.Error("a rigid rear has a shock")
	}
	nearPoint(t, "deck", at("rear-rack-deck"), mm(0, 0, 351+351+50), exact)
}

func TestArc(t *testing.T) {
	// The centroid of a half circle's line is 2r/pi from its centre (handbook).
	nearPoint(t, "half", arc(0.385, 180), mass.Vec{X: -1, Z: 1}.Scale(0.4*2/math.Pi*math.Sqrt2/2), exact)
	// That of a very short arc is on the arc.
	near(t, "short", arc(0.385, 0.01).Norm(), 0.4, 1e-8)
}

func TestPlace(t *testing.T) {
	bike := posed(t, load(t, "touring-bike.json"))
	off := mass.Vec{X: 0.01, Y: 0.02, Z: 0.03}

	got, ok := bike.Place("rear-panniers", off)
	p := bike.Stations["rear-panniers"].Points
	want := []mass.Vec{p[0].Add(off), p[1].Add(mass.Vec{X: 0.01, Y: -0.02, Z: 0.03})}
	if d := cmp.Diff(want, got); !ok || d != "" {
		t.Errorf("pair (-want +got):\n%s", d)
	}
	if got[1] != mirror(got[0]) {
		t.Errorf("%v is not the mirror image of %v", got[1], got[0])
	}

	got, ok = bike.Place("cassette", off)
	if d := cmp.Diff([]mass.Vec{bike.Stations["cassette"].Points[0].Add(off)}, got); !ok || d != "" {
		t.Errorf("single (-want +got):\n%s", d)
	}
	got[0] = mass.Vec{}
	if again, _ := bike.Place("cassette", mass.Vec{}); again[0] != bike.Stations["cassette"].Points[0] || again[0] == (mass.Vec{}) {
		t.Error("a caller's change to a place moved the station")
	}

	if got, ok := bike.Place("nowhere", off); ok || got != nil {
		t.Errorf("a station that is not there: %v, %v", got, ok)
	}
}
