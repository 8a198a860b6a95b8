package stage

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/mass"
	"steelyard/internal/scene"
	"steelyard/internal/scene/specimen"
)

// set is a stage with a picture of two parts on it: "big" under "small", and a
// pair "bag" left and right of the bike.
func set(t interface{ Fatalf(string, ...any) }, v scene.View) *Stage {
	s := specimen.Travel()
	s.Ghost = nil
	s.Markers = []scene.Marker{
		{Part: "big", Mass: 5, Place: mass.Vec{X: 0.5, Z: 0.7}},
		{Part: "small", Mass: 0.1, Place: mass.Vec{X: 0.51, Z: 0.7}},
		{Part: "bag", Mass: 1, Place: mass.Vec{X: 0, Y: 0.3, Z: 0.4}},
		{Part: "bag", Mass: 1, Place: mass.Vec{X: 0, Y: -0.3, Z: 0.4}, Mirror: true},
	}
	st := &Stage{}
	if out := st.Draw(s, v, 760, 440); len(out.Spots) < 3 {
		t.Fatalf("%d spots", len(out.Spots))
	}
	return st
}

// spot returns where a part's spot is; nth counts those of a pair.
func spot(st *Stage, part string, nth int) scene.Spot {
	for _, p := range st.spots {
		if p.Part == part {
			if nth == 0 {
				return p
			}
			nth--
		}
	}
	return scene.Spot{}
}

func mouse(kind string, x, y float64) Event {
	return Event{Type: kind, ID: 1, Kind: "mouse", X: x, Y: y}
}

func touch(kind string, id int, x, y float64) Event {
	return Event{Type: kind, ID: id, Kind: "touch", X: x, Y: y}
}

func TestHitTopmost(t *testing.T) {
	st := set(t, scene.View{})
	small, big := spot(st, "small", 0), spot(st, "big", 0)
	if p, ok := st.Hit(small.X, small.Y, 0); !ok || p.Part != "small" {
		t.Errorf("on the small one lies %q", p.Part)
	}
	if p, ok := st.Hit(big.X-big.R+1, big.Y, 0); !ok || p.Part != "big" {
		t.Errorf("at the big one's edge lies %q", p.Part)
	}
	// Beside it, a finger still has it, and a mouse has not.
	if _, ok := st.Hit(big.X-big.R-8, big.Y, (&Event{Kind: "mouse"}).reach()); ok {
		t.Error("a mouse hits what is 8 px away")
	}
	if p, ok := st.Hit(big.X-big.R-8, big.Y, (&Event{Kind: "touch"}).reach()); !ok || p.Part != "big" {
		t.Error("a finger misses what is 8 px away")
	}
	if _, ok := st.Hit(5, 5, 14); ok {
		t.Error("empty paper is hit")
	}
}

func TestHover(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "big", 0)
	in := st.Pointer(mouse("move", p.X-p.R+2, p.Y))
	if in.Hover == nil || *in.Hover != "big" || in.Cursor != "grab" || !in.Redraw {
		t.Fatalf("coming on: %+v", in)
	}
	if in := st.Pointer(mouse("move", p.X-p.R+3, p.Y)); in.Hover != nil || in.Redraw {
		t.Errorf("staying on: %+v", in)
	}
	if in := st.Pointer(mouse("move", 5, 5)); in.Hover == nil || *in.Hover != "" || in.Cursor != "default" {
		t.Errorf("going off: %+v", in)
	}
	st.Pointer(mouse("move", p.X, p.Y))
	if in := st.Pointer(Event{Type: "leave"}); in.Hover == nil || *in.Hover != "" {
		t.Errorf("leaving: %+v", in)
	}
}

func TestTap(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "bag", 0)
	if in := st.Pointer(mouse("down", p.X, p.Y)); in.Cursor != "grabbing" || in.Select != nil {
		t.Errorf("pressing: %+v", in)
	}
	st.Pointer(mouse("move", p.X+2, p.Y+1)) // a hand is not that steady
	if in := st.Pointer(mouse("up", p.X+2, p.Y+1)); in.Select == nil || *in.Select != "bag" || in.Move != nil {
		t.Errorf("lifting: %+v", in)
	}
	st.Pointer(mouse("down", 5, 5))
	if in := st.Pointer(mouse("up", 5, 5)); in.Select == nil || *in.Select != "" {
		t.Errorf("a tap on paper: %+v", in)
	}
	e := mouse("down", p.X, p.Y)
	e.Button = 2
	st.Pointer(e)
	e.Type = "up"
	if in := st.Pointer(e); in.Select != nil {
		t.Errorf("the secondary button selects: %+v", in)
	}
}

// drag takes hold at (x, y) and goes by (dx, dy) in steps; it returns the sum
// of the moves.
func drag(t *testing.T, st *Stage, x, y, dx, dy float64) (sum [3]float64, part string, done bool) {
	t.Helper()
	take := func(in Intent) {
		if in.Move != nil {
			part, done = in.Move.Part, in.Move.Done
			for i := range sum {
				sum[i] += in.Move.By[i]
			}
		}
	}
	take(st.Pointer(mouse("down", x, y)))
	const steps = 37
	for i := 1; i <= steps; i++ {
		f := float64(i) / steps
		take(st.Pointer(mouse("move", x+dx*f, y+dy*f)))
	}
	if done {
		t.Error("done before it was")
	}
	take(st.Pointer(mouse("up", x+dx, y+dy)))
	return sum, part, done
}

func TestDragInSideView(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "big", 0)
	by, part, done := drag(t, st, p.X-p.R+3, p.Y, 60, -30)
	k := 1000 / st.Camera().Scale
	if part != "big" || !done || math.Abs(by[0]-60*k) > 0.06 || by[1] != 0 || math.Abs(by[2]-30*k) > 0.06 {
		t.Errorf("%q moved by %v, done %v; want big by [%.1f 0 %.1f]", part, by, done, 60*k, 30*k)
	}
}

// From behind, to the left is +y; for the right one of a pair the offset
// outward is towards -y.
func TestDragFromBehind(t *testing.T) {
	st := set(t, scene.View{Aspect: scene.Rear})
	k := 1000 / st.Camera().Scale
	for nth := range 2 {
		p := spot(st, "bag", nth)
		outward := 40.0 // px
		if !p.Mirror {
			outward = -40
		}
		by, part, _ := drag(t, st, p.X, p.Y, outward, 10)
		if part != "bag" || by[0] != 0 || math.Abs(by[1]-40*k) > 0.06 || math.Abs(by[2]+10*k) > 0.06 {
			t.Errorf("mirror %v: %q moved by %v, want 40 px outward and 10 down", p.Mirror, part, by)
		}
	}
}

func TestDragSelects(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "bag", 0)
	st.Pointer(mouse("down", p.X, p.Y))
	if in := st.Pointer(mouse("move", p.X+5, p.Y)); in.Select == nil || *in.Select != "bag" || in.Move == nil {
		t.Errorf("a drag begins: %+v", in)
	}
}

func TestSlackIsLargerForFingers(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "bag", 0)
	st.Pointer(touch("down", 7, p.X, p.Y))
	if in := st.Pointer(touch("move", 7, p.X+6, p.Y)); in.Move != nil {
		t.Error("6 px of a finger is a drag")
	}
	if in := st.Pointer(touch("move", 7, p.X+9, p.Y)); in.Move == nil {
		t.Error("9 px of a finger is no drag")
	}
}

func TestCancelRestores(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "big", 0)
	var sum [3]float64
	add := func(in Intent) (done bool) {
		if in.Move != nil {
			for i := range sum {
				sum[i] += in.Move.By[i]
			}
			return in.Move.Done
		}
		return false
	}
	st.Pointer(mouse("down", p.X, p.Y))
	for i := range 30 {
		add(st.Pointer(mouse("move", p.X+3.3*float64(i), p.Y+float64(i))))
	}
	if sum == ([3]float64{}) {
		t.Fatal("nothing moved")
	}
	if !add(st.Pointer(mouse("cancel", 0, 0))) {
		t.Error("the drag is not done")
	}
	for _, v := range sum {
		if math.Abs(v) > 1e-6 {
			t.Errorf("cancelled, and still moved by %v", sum)
		}
	}
	if st.mode != idle || len(st.fingers) != 0 {
		t.Errorf("not idle: %v %v", st.mode, st.fingers)
	}
}

func TestPan(t *testing.T) {
	st := set(t, scene.View{})
	u, v := st.views[0].cam.UV(700, 30)
	st.Pointer(mouse("down", 700, 30))
	st.Pointer(mouse("move", 650, 50))
	in := st.Pointer(mouse("move", 640, 60))
	if !in.Redraw || in.Move != nil {
		t.Errorf("panning: %+v", in)
	}
	st.Pointer(mouse("up", 640, 60))
	if u2, v2 := st.views[0].cam.UV(640, 60); math.Abs(u-u2)+math.Abs(v-v2) > 1e-9 {
		t.Errorf("the paper did not follow: (%v, %v), want (%v, %v)", u2, v2, u, v)
	}
}

// A finger on a picture that shows all scrolls the page; closer up it pans.
func TestOneFingerOnPaper(t *testing.T) {
	st := set(t, scene.View{})
	before := st.Camera()
	if in := st.Pointer(touch("down", 1, 700, 30)); in.Cursor == "grabbing" {
		t.Error("the finger is held")
	}
	st.Pointer(touch("move", 1, 600, 90))
	st.Pointer(touch("up", 1, 600, 90))
	if st.Camera() != before {
		t.Error("it panned")
	}
	st.Command("in")
	before = st.Camera()
	if in := st.Pointer(touch("down", 1, 700, 30)); in.Cursor != "grabbing" {
		t.Error("closer up, the finger is not held")
	}
	st.Pointer(touch("move", 1, 680, 50))
	st.Pointer(touch("up", 1, 680, 50))
	if st.Camera() == before {
		t.Error("closer up, it did not pan")
	}
}

func TestWheel(t *testing.T) {
	st := set(t, scene.View{})
	u, v := st.views[0].cam.UV(300, 200)
	before := st.Camera().Scale
	in := st.Pointer(Event{Type: "wheel", X: 300, Y: 200, Delta: -120, Kind: "mouse"})
	if !in.Redraw || !(st.Camera().Scale > before*1.1) {
		t.Errorf("wheel up: %+v, scale %v of %v", in, st.Camera().Scale, before)
	}
	if u2, v2 := st.views[0].cam.UV(300, 200); math.Abs(u-u2)+math.Abs(v-v2) > 1e-9 {
		t.Error("it did not zoom about the pointer")
	}
	before = st.Camera().Scale
	st.Pointer(Event{Type: "wheel", X: 300, Y: 200, Pinch: 1.5, Delta: 40, Kind: "mouse"})
	if got := st.Camera().Scale / before; math.Abs(got-1.5) > 1e-9 {
		t.Errorf("a pinch of 1.5 on a touch pad zoomed by %v", got)
	}
}

// Two fingers keep what is under them under them.
func TestPinch(t *testing.T) {
	st := set(t, scene.View{})
	cam := func() *scene.Camera { return &st.views[0].cam }
	st.Pointer(touch("down", 1, 300, 200))
	st.Pointer(touch("down", 2, 400, 200))
	u1, v1 := cam().UV(300, 200)
	u2, v2 := cam().UV(400, 200)
	st.Pointer(touch("move", 1, 280, 205))
	st.Pointer(touch("move", 2, 480, 195))
	st.Pointer(touch("move", 1, 285, 195))
	st.Pointer(touch("move", 2, 485, 195))
	if x, y := cam().XY(u1, v1); math.Hypot(x-285, y-195) > 0.5 {
		t.Errorf("under the first finger is what was at (%v, %v)", x, y)
	}
	if x, y := cam().XY(u2, v2); math.Hypot(x-485, y-195) > 0.5 {
		t.Errorf("under the second finger is what was at (%v, %v)", x, y)
	}
	// The finger that stays pans on, without a jump.
	st.Pointer(touch("up", 2, 485, 195))
	before := st.Camera()
	st.Pointer(touch("move", 1, 290, 195))
	if got := (before.U - st.Camera().U) * before.Scale; math.Abs(got-5) > 1e-6 {
		t.Errorf("the finger that stays panned by %v px, want 5", got)
	}
	st.Pointer(touch("up", 1, 290, 195))
	if st.mode != idle {
		t.Errorf("mode %v", st.mode)
	}
}

// A second finger calls a drag off.
func TestSecondFingerCallsDragOff(t *testing.T) {
	st := set(t, scene.View{})
	p := spot(st, "bag", 0)
	st.Pointer(touch("down", 1, p.X, p.Y))
	in := st.Pointer(touch("move", 1, p.X+50, p.Y))
	if in.Move == nil {
		t.Fatal("no drag")
	}
	went := in.Move.By
	in = st.Pointer(touch("down", 2, 300, 300))
	if in.Move == nil || !in.Move.Done || in.Move.By[0] != -went[0] {
		t.Errorf("second finger: %+v after %v", in.Move, went)
	}
}

func TestCommands(t *testing.T) {
	var none Stage
	if none.Command("in") {
		t.Error("a camera moved before there was one")
	}
	st := set(t, scene.View{})
	fit := st.Camera()
	for _, name := range Commands {
		if !st.Command(name) {
			t.Errorf("%q is not known", name)
		}
		if name != "fit" && st.Camera() == fit {
			t.Errorf("%q does nothing", name)
		}
		st.Command("fit")
		if st.Camera() != fit {
			t.Errorf("fit after %q gives %+v, want %+v", name, st.Camera(), fit)
		}
	}
	if st.Command("sideways") {
		t.Error("an unknown command is known")
	}
}

// Until the user moves it, the camera follows the size of the picture; after
// that it keeps what it shows. Each aspect has its own.
func TestCameraFollows(t *testing.T) {
	s := specimen.Travel()
	var st Stage
	st.Draw(s, scene.View{}, 760, 440)
	st.Draw(s, scene.View{}, 390, 300)
	if want := scene.Fit(&s, scene.View{}, 390, 300); st.Camera() != want {
		t.Errorf("got %+v, want %+v", st.Camera(), want)
	}
	st.Command("in")
	scale := st.Camera().Scale
	st.Draw(s, scene.View{Aspect: scene.Rear}, 390, 300)
	if want := scene.Fit(&s, scene.View{Aspect: scene.Rear}, 390, 300); st.Camera() != want {
		t.Errorf("from behind: got %+v, want %+v", st.Camera(), want)
	}
	st.Draw(s, scene.View{}, 500, 320)
	if c := st.Camera(); c.Scale != scale || c.Width != 500 {
		t.Errorf("back to the side: %+v, want scale %v", c, scale)
	}
}

// Under a finger the picture stands still, even where the part that it drags
// makes the subject larger.
func TestCameraStandsStillInADrag(t *testing.T) {
	s := specimen.Travel()
	var st Stage
	st.Draw(s, scene.View{}, 760, 440)
	p := spot(&st, "rack", 0)
	st.Pointer(mouse("down", p.X, p.Y))
	st.Pointer(mouse("move", 30, 60))
	before := st.Camera()
	for i := range s.Markers {
		if s.Markers[i].Part == "rack" {
			s.Markers[i].Place.X = -1.5
		}
	}
	st.Draw(s, scene.View{}, 760, 440)
	if c := st.Camera(); c.Scale != before.Scale || c.U != before.U || c.V != before.V {
		t.Errorf("the camera moved from %+v to %+v", before, c)
	}
	st.Pointer(mouse("up", 30, 60))
	st.Draw(s, scene.View{}, 760, 440)
	if c := st.Camera(); c.Scale == before.Scale {
		t.Error("after the drag the part is out of the picture")
	}
}

// The picture may be turned by a key while a part is being dragged: the drag
// ends there.
func TestTurnEndsDrag(t *testing.T) {
	s := specimen.Travel()
	var st Stage
	st.Draw(s, scene.View{}, 760, 440)
	p := spot(&st, "rack", 0)
	st.Pointer(mouse("down", p.X, p.Y))
	if in := st.Pointer(mouse("move", p.X+40, p.Y)); in.Move == nil || in.Move.Done {
		t.Fatalf("dragging: %+v", in)
	}
	st.Draw(s, scene.View{Aspect: scene.Rear}, 760, 440)
	in := st.Pointer(mouse("move", p.X+60, p.Y))
	if m := in.Move; m == nil || m.Part != "rack" || !m.Done || m.By != ([3]float64{}) {
		t.Fatalf("after the turn: %+v", in)
	}
	if in := st.Pointer(mouse("up", p.X+60, p.Y)); in.Move != nil {
		t.Errorf("ended twice: %+v", in.Move)
	}
}

func drawEvent(t *rapid.T) Event {
	number := rapid.OneOf(rapid.Float64Range(-50, 810), rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1)}))
	return Event{
		Type:   rapid.SampledFrom([]string{"down", "move", "move", "move", "up", "cancel", "leave", "wheel", "", "twirl", "turn"}).Draw(t, "type"),
		ID:     rapid.IntRange(0, 3).Draw(t, "id"),
		X:      number.Draw(t, "x"),
		Y:      number.Draw(t, "y"),
		Button: rapid.IntRange(-1, 2).Draw(t, "button"),
		Delta:  number.Draw(t, "delta"),
		Pinch:  rapid.SampledFrom([]float64{0, 0, 1.1, -1, 1e9, math.NaN()}).Draw(t, "pinch"),
		Kind:   rapid.SampledFrom([]string{"mouse", "touch", "pen", ""}).Draw(t, "kind"),
	}
}

// play sends events and checks what must hold after each: moves are finite and
// whole tenths; every drag is brought to an end, and one called off adds up to
// nothing. The event "turn" shows the other aspect: a drag then ends with the
// next event, where it was.
func play(t interface{ Fatalf(string, ...any) }, st *Stage, events []Event) {
	open, total, turned := "", [3]float64{}, false
	check := func(e Event, in Intent) {
		if m := in.Move; m != nil {
			if open != "" && open != m.Part {
				t.Fatalf("%+v moves %q while %q is dragged", e, m.Part, open)
			}
			open = m.Part
			for i, v := range m.By {
				if math.IsNaN(v) || math.Abs(v) > 1e7 || math.Abs(v*10-math.Round(v*10)) > 1e-6*math.Max(1, math.Abs(v)) {
					t.Fatalf("%+v moves by %v", e, m.By)
				}
				total[i] += v
			}
			if m.Done {
				if turned && m.By != ([3]float64{}) {
					t.Fatalf("%+v moves by %v after the picture turned", e, m.By)
				}
				if !turned && (e.Type == "cancel" || e.Type == "down") {
					for _, v := range total {
						if math.Abs(v) > 1e-3 {
							t.Fatalf("called off, and still moved by %v", total)
						}
					}
				}
				open, total = "", [3]float64{}
			}
		}
		if turned && open != "" {
			t.Fatalf("%+v leaves the drag of %q open after the picture turned", e, open)
		}
		turned = false
		c := st.Camera()
		for _, v := range []float64{c.U, c.V, c.Scale} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v sends the camera to %+v", e, c)
			}
		}
	}
	for _, e := range events {
		if e.Type == "turn" {
			sub := specimen.Travel()
			st.Draw(sub, scene.View{Aspect: scene.Rear - st.aspect}, 760, 440)
			turned = true
			continue
		}
		check(e, st.Pointer(e))
	}
	for id := range 4 { // whatever is still down is called off
		e := Event{Type: "cancel", ID: id}
		check(e, st.Pointer(e))
	}
	if open != "" {
		t.Fatalf("the drag of %q never ended", open)
	}
	if st.mode != idle || len(st.fingers) != 0 {
		t.Fatalf("ends in mode %v with fingers %v", st.mode, st.fingers)
	}
}

func TestAnyEvents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		st := set(t, scene.View{Aspect: scene.Aspect(rapid.IntRange(0, 1).Draw(t, "aspect"))})
		n := rapid.IntRange(0, 60).Draw(t, "events")
		events := make([]Event, n)
		for i := range events {
			events[i] = drawEvent(t)
		}
		play(t, st, events)
	})
}

func TestNoPictureNoMeaning(t *testing.T) {
	var st Stage
	for _, kind := range []string{"down", "move", "up", "wheel", "leave", "cancel"} {
		if in := st.Pointer(mouse(kind, 10, 10)); in != (Intent{}) {
			t.Errorf("%s: %+v", kind, in)
		}
	}
}

// FuzzEvents reads an event from each five bytes.
func FuzzEvents(f *testing.F) {
	f.Add([]byte{0, 0, 100, 100, 0, 1, 0, 120, 100, 0, 2, 0, 120, 100, 0})
	f.Add([]byte{0, 1, 100, 100, 1, 0, 2, 90, 100, 1, 1, 1, 50, 60, 1, 3, 1, 0, 0, 1})
	types := []string{"down", "move", "up", "cancel", "leave", "wheel"}
	kinds := []string{"mouse", "touch", "pen"}
	f.Fuzz(func(t *testing.T, data []byte) {
		st := set(t, scene.View{})
		var events []Event
		for ; len(data) >= 5 && len(events) < 500; data = data[5:] {
			events = append(events, Event{
				Type: types[int(data[0])%len(types)], ID: int(data[1]) % 4, X: 3 * float64(data[2]), Y: 2 * float64(data[3]),
				Kind: kinds[int(data[4])%3], Button: int(data[4]) / 3 % 3, Delta: 10 * (float64(data[2]) - 128),
			})
		}
		play(t, st, events)
	})
}

func BenchmarkPointerMove(b *testing.B) {
	s := specimen.Travel()
	for len(s.Markers) < 10000 {
		s.Markers = append(s.Markers, s.Markers[:len(s.Markers):len(s.Markers)]...)
	}
	var st Stage
	st.Draw(s, scene.View{}, 760, 440)
	e := mouse("move", 5, 5)
	for b.Loop() {
		st.Pointer(e)
	}
}
