package newbike_test

import (
	"fmt"
	"math"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/newbike"
	"steelyard/internal/parts"
	"steelyard/internal/report"
)

// What bikes of such a sort measure: common practice, no source. A touring bike's
// trail is short and its wheelbase too; a bike with suspension is longer, slacker
// and, with its suspension at full length, higher.
var usual = map[string]struct{ wheelbase, trail, bottomBracket [2]float64 }{
	"rigid": {[2]float64{1.03, 1.11}, [2]float64{0.055, 0.080}, [2]float64{0.270, 0.300}},
	"front": {[2]float64{1.10, 1.22}, [2]float64{0.085, 0.120}, [2]float64{0.285, 0.330}},
	"full":  {[2]float64{1.14, 1.26}, [2]float64{0.095, 0.130}, [2]float64{0.290, 0.350}},
}

func within(t *testing.T, what string, v float64, r [2]float64) {
	t.Helper()
	if v < r[0] || v > r[1] {
		t.Errorf("%s is %.3f m, such bikes have %v", what, v, r)
	}
}

// Every frame in every size poses without a remark, and has a wheelbase, a trail and
// a height within what such bikes have; a larger size is larger.
func TestFramesAreSound(t *testing.T) {
	if n := len(newbike.Frames()); n != 3 {
		t.Fatalf("%d sorts of frames", n)
	}
	for _, f := range newbike.Frames() {
		names := map[string]bool{}
		smaller := map[int]document.Build{} // by wheel
		usualWheel := map[string]*geometry.Bike{}
		for _, size := range f.Sizes {
			name := fmt.Sprint(f.ID, " ", size.ID, " ", size.Wheel)
			bike := newbike.Make(newbike.Choice{Frame: f.ID, Size: size.ID, Wheel: size.Wheel}, nil)
			if bike.Frame.ID != f.ID || bike.Size.ID != size.ID || bike.Size.Wheel != size.Wheel {
				t.Fatalf("%s became %s %s %d", name, bike.Frame.ID, bike.Size.ID, bike.Size.Wheel)
			}
			names[size.ID] = true
			b := &bike.Document.Builds[0]
			if mm := float64(size.Wheel); b.Wheels.Front.BeadSeat != mm || b.Wheels.Rear.BeadSeat != mm {
				t.Errorf("%s has the wheels %+v", name, b.Wheels)
			}
			full := *b
			full.Fork.Sag, full.Rear.Sag = 0, 0
			for _, build := range []*document.Build{b, &full} {
				posed, problems := geometry.Pose(build)
				if len(problems) > 0 {
					t.Fatalf("%s: %v", name, problems)
				}
				within(t, name+": wheelbase", posed.Wheelbase, usual[f.ID].wheelbase)
				within(t, name+": trail", posed.Trail, usual[f.ID].trail)
				if build == b {
					continue
				}
				within(t, name+": bottom bracket", posed.BBHeight, usual[f.ID].bottomBracket)
				// Fork and head tube put the front tyre on the ground: no pitch is left.
				if d := posed.Pitch * posed.Wheelbase; d > 0.002 || d < -0.002 {
					t.Errorf("%s: the front wheel is %.1f mm off the ground", name, 1e3*d)
				}
				// Smaller wheels do not make another bike of it: the cranks are as high over
				// the ground, and it steers alike.
				like := usualWheel[size.ID]
				if like == nil {
					usualWheel[size.ID] = posed
					continue
				}
				if math.Abs(posed.BBHeight-like.BBHeight) > 0.001 || math.Abs(posed.Trail-like.Trail) > 0.003 || math.Abs(posed.Wheelbase-like.Wheelbase) > 0.015 {
					t.Errorf("%s: cranks %.1f mm high, trail %.1f mm, wheelbase %.0f mm, with the usual wheels %.1f, %.1f and %.0f mm", name,
						1e3*posed.BBHeight, 1e3*posed.Trail, 1e3*posed.Wheelbase, 1e3*like.BBHeight, 1e3*like.Trail, 1e3*like.Wheelbase)
				}
				if posed.RearRadius >= like.RearRadius {
					t.Errorf("%s: the wheels are no smaller", name)
				}
			}
			if b.Rear.Travel > 0 != (f.ID == "full") || b.Fork.Travel > 0 != (f.ID != "rigid") {
				t.Errorf("%s: travel %v, %v", name, b.Fork.Travel, b.Rear.Travel)
			}
			if was := smaller[size.Wheel]; !(b.Frame.Stack > was.Frame.Stack && b.Frame.Reach > was.Frame.Reach && b.Frame.SeatTube > was.Frame.SeatTube && b.Saddle.Height > was.Saddle.Height) {
				t.Errorf("%s is not larger than the size before", name)
			}
			smaller[size.Wheel] = *b
		}
		if len(names) != 3 || f.Sizes[0].Wheel != 622 {
			t.Errorf("%s comes in the sizes %v, first for %d", f.ID, names, f.Sizes[0].Wheel)
		}
	}
}

// everyWheel is a choice for each diameter of wheels that each frame comes for.
func everyWheel() (list []newbike.Choice) {
	for _, f := range newbike.Frames() {
		last := ""
		for _, s := range f.Sizes {
			if last == "" || s.ID == last {
				list = append(list, newbike.Choice{Frame: f.ID, Size: s.ID, Wheel: s.Wheel})
				last = s.ID
			}
		}
	}
	return list
}

// Wheels that a size does not come for are left for the usual ones, an unknown size
// for the medium one.
func TestWheelsGoWithTheSize(t *testing.T) {
	for _, c := range []struct {
		choice newbike.Choice
		size   string
		wheel  int
	}{
		{newbike.Choice{}, "medium", 622},
		{newbike.Choice{Wheel: 584}, "medium", 584},
		{newbike.Choice{Size: "large", Wheel: 584}, "large", 622},
		{newbike.Choice{Size: "small", Wheel: 559}, "small", 559},
		{newbike.Choice{Frame: "full", Size: "small", Wheel: 559}, "small", 622},
		{newbike.Choice{Size: "huge", Wheel: 1}, "medium", 622},
	} {
		if s := newbike.Make(c.choice, nil).Size; s.ID != c.size || s.Wheel != c.wheel {
			t.Errorf("%+v became %s for %d", c.choice, s.ID, s.Wheel)
		}
	}
}

// Whatever is offered makes a whole bike: each set of each area on each frame, and
// nothing is missing, wrong, or there twice.
func TestEveryBikeIsWhole(t *testing.T) {
	for _, c := range everyWheel() {
		f := struct{ ID string }{fmt.Sprint(c.Frame, " ", c.Wheel)}
		for _, o := range newbike.Make(c, nil).Offers {
			if len(o.Sets) == 0 {
				t.Errorf("%s: nothing is offered for %s", f.ID, o.Area)
			}
			if o.Optional != (o.Chosen == "") {
				t.Errorf("%s: %s is chosen for %s", f.ID, o.Chosen, o.Area)
			}
			for _, set := range o.Sets {
				c.Sets = map[parts.Area]string{o.Area: set.ID}
				bike := newbike.Make(c, nil)
				b := &bike.Document.Builds[0]
				if missing := parts.Missing(b); len(missing) > 0 {
					t.Errorf("%s with %s: no %v", f.ID, set.ID, missing)
				}
				e := report.Weigh(bike.Document, nil)
				if len(e.Report.Problems) > 0 {
					t.Errorf("%s with %s: %v", f.ID, set.ID, e.Report.Problems)
				}
				// A bike of such parts: common practice, no source.
				if m := e.Report.Builds[0].Figures[0]; m.Key != "total" || m.Value < 10000 || m.Value > 22000 || m.Plus > 0.1*m.Value {
					t.Errorf("%s with %s weighs %+v", f.ID, set.ID, m)
				}
				seen := map[string]bool{}
				for _, p := range b.Parts {
					if seen[p.Catalogue] {
						t.Errorf("%s with %s: two lines of %s", f.ID, set.ID, p.Catalogue)
					}
					seen[p.Catalogue] = true
				}
			}
		}
	}
}

// What does not go with what was chosen before is not offered: rim brakes on a bike
// with suspension, a wheel for a cassette with a gear hub; and the frame of a gearbox
// is one for a gearbox.
func TestWhatGoesTogether(t *testing.T) {
	chosen := func(c newbike.Choice, area parts.Area) (id string, offered []string) {
		for _, o := range newbike.Make(c, nil).Offers {
			if o.Area == area {
				for _, s := range o.Sets {
					offered = append(offered, s.ID)
				}
				return o.Chosen, offered
			}
		}
		t.Fatalf("no area %s", area)
		return "", nil
	}
	has := func(list []string, id string) bool {
		for _, s := range list {
			if s == id {
				return true
			}
		}
		return false
	}
	rim := map[parts.Area]string{parts.Brakes: "brakes-rim"}
	if id, _ := chosen(newbike.Choice{Frame: "full", Sets: rim}, parts.Brakes); id == "brakes-rim" {
		t.Error("rim brakes on a bike with suspension")
	}
	if id, offered := chosen(newbike.Choice{Frame: "rigid", Sets: rim}, parts.FrontWheel); id != "wheel-front-rim-brake-622" || has(offered, "wheel-front-disc-622") {
		t.Errorf("rim brakes have the front wheel %s of %v", id, offered)
	}
	for drive, wheel := range map[string]string{"gear-hub-belt": "wheel-rear-gear-hub-622", "gearbox-chain": "wheel-rear-single-622", "derailleur-two-rings": "wheel-rear-disc-622"} {
		c := newbike.Choice{Frame: "front", Sets: map[parts.Area]string{parts.Drivetrain: drive, parts.RearWheel: "wheel-rear-carbon-622"}}
		id, _ := chosen(c, parts.RearWheel)
		if want := wheel; id != want && drive != "derailleur-two-rings" || drive == "derailleur-two-rings" && id != "wheel-rear-carbon-622" {
			t.Errorf("with %s the rear wheel is %s", drive, id)
		}
	}
	b := newbike.Make(newbike.Choice{Sets: map[parts.Area]string{parts.Drivetrain: "gearbox-belt"}}, nil).Document.Builds[0]
	if b.Parts[0].Catalogue != "touring-frame-steel-gearbox" || b.Part("gearbox-cradle") != nil {
		t.Errorf("a gearbox is held by %s", b.Parts[0].Catalogue)
	}
	if bar := newbike.Make(newbike.Choice{Sets: map[parts.Area]string{parts.Cockpit: "cockpit-drop"}}, nil).Document.Builds[0].Cockpit; bar.BarWidth > 500 || bar.Spacers != 25 {
		t.Errorf("the drop bar is %+v", bar)
	}
}
