package rooms_test

import (
	"math"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/geometry"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
	"steelyard/internal/words"
)

func value(v float64) *float64 { return &v }

// twoMasses is a bike whose ends do not know of each other, as somebody would
// enter it: a body over wheels, all on the level of the axles, with the square of
// its radius of gyration the product of the axles' distances from its centre, the
// steepest steering axis that a document may have, and all that a rough road asks
// for typed.
func twoMasses(t *testing.T) (d *document.Document, body, wheel, spring, damper, tyre float64) {
	t.Helper()
	body, wheel, spring, damper, tyre = 40, 4, 9000, 350, 90000 // of either end
	b := document.Build{ID: "b1", Name: "Two masses"}
	b.Frame = document.Frame{Stack: 700, Reach: 500, HeadTube: 120, HeadAngle: 85, SeatTube: 500, SeatAngle: 73, Chainstay: 440, BBDrop: 30}
	b.Fork = document.Fork{Length: 550, Offset: 45, Travel: 200, Sag: 40}
	b.Rear = document.Rear{Travel: 200, Sag: 40, PivotFwd: 0, PivotUp: 70, ShockFrom: document.Point2{100, 300}, ShockTo: document.Point2{0, 250}}
	b.Wheels.Rear, b.Wheels.Front = document.Wheel{BeadSeat: 622, Tyre: 50}, document.Wheel{BeadSeat: 622, Tyre: 50}
	b.Cockpit = document.Cockpit{Spacers: 20, Stem: 80, BarWidth: 600}
	b.Saddle = document.Saddle{Height: 700}
	b.Cranks = document.Cranks{Length: 170, Width: 150}
	pose := func() *geometry.Bike {
		bike, problems := geometry.Pose(&b)
		if bike == nil {
			t.Fatal(problems)
		}
		return bike
	}
	// The fork is as long, and the pivot as high, as leaves the frame level and the
	// swingarm too.
	for range 60 {
		const h = 1e-3
		at := pose()
		b.Fork.Length += h
		slope := (pose().Pitch - at.Pitch) / h
		b.Fork.Length -= h + at.Pitch/slope
		at = pose()
		b.Rear.PivotUp += 1000 * (at.RearAxle.Z - at.Pivot.Z)
	}
	bike := pose()
	if math.Abs(bike.Pitch) > 1e-12 || math.Abs(bike.Pivot.Z-bike.RearAxle.Z) > 1e-12 || math.Abs(bike.HeadAngle-85*math.Pi/180) > 1e-12 {
		t.Fatalf("pitch %g, pivot %g over the axle, head angle %g", bike.Pitch, bike.Pivot.Z-bike.RearAxle.Z, bike.HeadAngle)
	}
	long, high := 1000*bike.Wheelbase, 1000*bike.RearAxle.Z
	part := func(id string, carrier document.Carrier, kg, x float64, shape document.Shape) document.Part {
		return document.Part{ID: id, Name: id, Kind: "other", Quantity: 1, Mass: 1000 * kg, HalfWidth: 10, Basis: document.Stated, At: &document.Vec3{x, 0, high}, Within: 5, Carrier: carrier, Shape: shape}
	}
	b.Parts = []document.Part{
		part("body", document.MainFrame, 2*body, long/2, document.Shape{Form: document.FormPair, Size: document.Vec3{0, 0, 0}}),
		part("front", document.FrontWheel, wheel, long, document.Shape{Form: document.FormRing, Size: document.Vec3{300}}),
		part("rear", document.RearWheel, wheel, 0, document.Shape{Form: document.FormRing, Size: document.Vec3{300}}),
	}
	// A rod of the length l has l²/12 of inertia a kilogram; the product wants l²/4 of
	// the wheelbase.
	b.Parts[0].Shape = document.Shape{Form: document.FormBox, Size: document.Vec3{long * math.Sqrt(3), 0, 0}}
	end := func() *document.EndSetup {
		return &document.EndSetup{
			Drop:   &document.TyreDrop{Load: 9 * 1000, Drop: 9 * 9.80665 / tyre * 1000},
			Spring: value(spring / 1000), Damper: value(damper),
		}
	}
	b.Setup = &document.Setup{Front: end(), Rear: end()}
	// q is 2 π² n0² Gd(n0) v; on it the published check is done.
	const q, speed = 0.001, 18.0
	roughness := q / (2 * math.Pi * math.Pi * 0.01 * speed / 3.6) * 1e6
	return &document.Document{
		Format: document.Format, Version: document.Version, Title: "Two masses",
		Show:   document.Show{Mass: "kg", Length: "mm", Compare: []string{"b1"}, Rough: &document.Rough{Roughness: value(roughness), Speed: value(speed), Contact: "point"}},
		Builds: []document.Build{b},
	}, body, wheel, spring, damper, tyre
}

// The closed forms of two masses on a white road (Crandall and Mark 1963; the
// values are those of the reference), from a document, through its text.
func TestTwoMassesAsADocument(t *testing.T) {
	d, m, u, k, c, kt := twoMasses(t)
	s := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if !s.OK {
		t.Fatal(s.Why, s.Problems)
	}
	const q, published = 0.001, 247.630744687
	all := m + u
	travel := 1000 * math.Sqrt(q*all/(2*c))
	load := kt * math.Sqrt(q*(c*c*kt*all*all+k*k*all*all*all-2*k*kt*m*u*all+kt*kt*m*m*u)/(2*c*kt*kt*m*m))
	near := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within*want {
			t.Errorf("%s is %.12g, want %.12g", what, got, want)
		}
	}
	near("published load", load, published, 1e-11)
	near("published travel", travel, 7.928249672, 1e-9)
	near("travel behind", *s.TravelRear, travel, 1e-9)
	// In front the axis leans by 5 degrees, so that the wheel goes a little fore and
	// aft.
	near("travel in front", *s.TravelFront, travel, 0.02)
	near("load in front", *s.LoadFront, load/(all*9.80665), 0.02)
	near("load behind", *s.LoadRear, load/(all*9.80665), 1e-9)
	if *s.LoadRearPlus <= 0 || len(s.Modes) != 4 {
		t.Errorf("± %g, %d modes", *s.LoadRearPlus, len(s.Modes))
	}
}

func ridden(t testing.TB) *document.Document {
	d := documenttest.Demo(t)
	d.Show.State = document.Ridden
	return d
}

func roadChange(t *testing.T, r *rooms.Road, key string) rooms.RoadChange {
	t.Helper()
	for _, c := range r.Difference {
		if c.Key == key {
			return c
		}
	}
	t.Fatalf("no difference of %s among %d", key, len(r.Difference))
	return rooms.RoadChange{}
}

// The demo: with its gears in the hub the load of the rear tyre varies more than
// with the gears at the cranks, beyond doubt, and the hub is why.
func TestRoughRoadOfTheDemo(t *testing.T) {
	d := ridden(t)
	r := rooms.RoadOf(evaluated(t, d))
	if len(r.Sides) != 2 || r.Words == "" || r.Caution == "" || !r.Road.Typical {
		t.Fatalf("%+v", r)
	}
	for _, s := range r.Sides {
		if !s.OK || len(s.Modes) != 4 || s.LoadFront == nil || s.TravelRear == nil || s.Words == "" || len(s.Curves.Speeds) < 4 || len(s.Curves.Figures) != 6 || s.SetState != document.Ridden {
			t.Errorf("%s: %s %+v", s.Name, s.Why, s)
		}
		typical := 0
		for _, set := range s.Settings {
			if set.Typical {
				typical++
			}
		}
		if typical < 6 {
			t.Errorf("of the settings %d are marked typical: %+v", typical, s.Settings)
		}
		for _, f := range s.Figures {
			if math.IsNaN(f.Value) || f.Plus < 0 || strings.HasPrefix(f.Label, "road.") {
				t.Errorf("%+v", f)
			}
		}
		t.Log(s.Words)
	}
	t.Log(r.Words)
	c := roadChange(t, r, "tyre_load_rms_rear")
	if c.Verdict != report.More || len(c.Causes) == 0 || c.Causes[0].Key != "part" || !strings.Contains(strings.ToLower(c.Causes[0].Label), "hub") {
		t.Errorf("%+v", c)
	}
	if c := roadChange(t, r, "saddle_wk_m_s2"); c.Felt == "" {
		t.Errorf("%+v", c)
	}
	// The parts of a difference make it up, as far as they are told.
	sum := 0.0
	for _, cause := range c.Causes {
		sum += cause.Delta
	}
	if math.Abs(sum-c.Delta) > 0.2*math.Abs(c.Delta) {
		t.Errorf("the causes make %g of %g", sum, c.Delta)
	}

	d.Show.Compare = []string{"gearhub", "gearbox"}
	if c := roadChange(t, rooms.RoadOf(evaluated(t, d)), "tyre_load_rms_rear"); c.Verdict != report.Less {
		t.Errorf("the other way round: %+v", c)
	}
	d.Show.Compare = []string{"gearbox", "derailleur"}
	if r := rooms.RoadOf(evaluated(t, d)); !r.Sides[1].OK {
		t.Error(r.Sides[1].Why)
	}
}

// A build and its copy differ by nothing, in whatever state; nor does a part that
// is entered as two halves change anything.
func TestRoughRoadOfACopy(t *testing.T) {
	for _, state := range document.States {
		d := documenttest.Demo(t)
		d.Show.State, d.Show.Supplies = state, document.Half
		c := d.CopyBuild("gearbox", "Copy")
		c.Parts[3].Name += " by another name"
		d.Show.Compare = []string{"gearbox", c.ID}
		r := rooms.RoadOf(evaluated(t, d))
		if len(r.Difference) < 15 {
			t.Errorf("%s: %d differences", state, len(r.Difference))
		}
		for _, c := range r.Difference {
			if c.Verdict != report.Same || len(c.Causes) > 0 || c.Felt != "" && c.Felt != "no" {
				t.Errorf("%s: %+v", state, c)
			}
		}
	}

	d := ridden(t)
	whole := rooms.RoadOf(evaluated(t, d)).Sides[0]
	b := d.Build("gearbox")
	for i := range b.Parts {
		if p := &b.Parts[i]; p.Carrier == document.RearWheel && p.Quantity == 1 {
			half := *p
			half.ID, half.Mass, p.Mass = p.ID+"-half", p.Mass/2, p.Mass/2
			half.HalfWidth, p.HalfWidth = p.HalfWidth/2, p.HalfWidth/2
			b.Parts = append(b.Parts, half)
			break
		}
	}
	split := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if math.Abs(*split.LoadRear-*whole.LoadRear) > 1e-12 || math.Abs(*split.Saddle-*whole.Saddle) > 1e-12 {
		t.Errorf("split: %g, whole: %g", *split.LoadRear, *whole.LoadRear)
	}
}

// What is typed of tyres and suspension goes where it should: a softer tyre varies
// less, and is no longer marked typical.
func TestRoughRoadTakesTheSetup(t *testing.T) {
	d := ridden(t)
	before := rooms.RoadOf(evaluated(t, d)).Sides[0]
	b := d.Build("gearbox")
	b.Setup = &document.Setup{Rear: &document.EndSetup{Pressure: value(1.4), Damping: value(0.3), SagPlus: value(1)}}
	after := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if *after.LoadRear >= *before.LoadRear {
		t.Errorf("with a softer tyre %g, before %g", *after.LoadRear, *before.LoadRear)
	}
	for _, s := range after.Settings {
		switch s.Key {
		case "pressure_rear", "damping_rear", "set_sag_rear":
			if s.Typical {
				t.Errorf("%+v", s)
			}
		case "pressure_front", "damping_front":
			if !s.Typical {
				t.Errorf("%+v", s)
			}
		}
	}
	find := func(s rooms.RoadSide, key string) float64 {
		for _, f := range s.Figures {
			if f.Key == key {
				return f.Value
			}
		}
		t.Fatalf("no %s", key)
		return 0
	}
	// Nobody goes over it without a rider: the state that is shown is of no account.
	d.Show.State = document.Bare
	if s := rooms.RoadOf(evaluated(t, d)).Sides[0]; s.State != document.Ridden || *s.LoadRear != *after.LoadRear || strings.Contains(s.Words, "no rider") {
		t.Errorf("shown bare, it is %s and varies by %g, ridden by %g: %s", s.State, *s.LoadRear, *after.LoadRear, s.Words)
	}
	// With its supplies used up the spring that was set when they were full sinks
	// less, unless it is set anew.
	d.Show.Supplies = document.Empty
	kept := rooms.RoadOf(evaluated(t, d)).Sides[0]
	b.Setup.Springs = "anew"
	anew := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if sag := find(kept, "sag_rear_mm"); sag >= b.Rear.Sag-0.2 || kept.SetState != document.Ridden {
		t.Errorf("the sag of the kept spring is %g, set in the state %s", sag, kept.SetState)
	}
	if sag := find(anew, "sag_rear_mm"); math.Abs(sag-b.Rear.Sag) > 1e-6 || anew.SetState != document.Ridden {
		t.Errorf("the sag of the spring set anew is %g, set in the state %s", sag, anew.SetState)
	}
	d.Show.Supplies = ""
	// A load without a rider leaves the bike alone, and that is said first.
	d.Loads[0].Rider = ""
	d.Show.Loads = []string{d.Loads[0].ID, d.Loads[0].ID}
	if s := rooms.RoadOf(evaluated(t, d)).Sides[0]; s.State == document.Ridden || !strings.HasPrefix(s.Words, "There is no rider here") {
		t.Errorf("without a rider it is %s: %s", s.State, s.Words)
	}
	d = ridden(t)

	// Standing takes mass off the saddle: a further mode.
	d.Show.State = document.Ridden
	d.Show.Rough = &document.Rough{Rider: "standing", Class: "D"}
	standing := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if !standing.OK || !standing.Standing || len(standing.Modes) != 5 {
		t.Errorf("standing: %s, %d modes", standing.Why, len(standing.Modes))
	}

	// What is said of the body stands with its rider, and moves the figures.
	if in := standing.Inputs; len(in) != 2 || !in[0].Typical || in[0].Rider != d.Riders[0].ID || in[0].Value != 3 || in[0].Half != 1 {
		t.Fatalf("%+v", in)
	}
	of := standing.Inputs[0]
	d = with(t, d, "", of.Rider, of.Field, map[string]any{"value": 4, "half_width": 0.1, "basis": "measured"})
	stiff := rooms.RoadOf(evaluated(t, d)).Sides[0]
	if in := stiff.Inputs[0]; in.Typical || in.Value != 4 || in.Half != 0.1 || in.Basis != "measured" {
		t.Errorf("%+v", in)
	}
	if *stiff.Saddle == *standing.Saddle || stiff.Modes[0].Key == "" || find(stiff, "frequency_body") <= find(standing, "frequency_body") {
		t.Errorf("a stiffer body: %v at %v", *stiff.Saddle, find(stiff, "frequency_body"))
	}
	// The sketch is of the pose: the axles stand as high as the wheels are.
	if s := stiff.Sketch; s == nil || s.Rider == nil || math.Abs(s.Wheels[0][1]-s.Wheels[0][2]) > 30 || s.Wheels[1][0] < 900 || len(s.Lines) < 8 {
		t.Errorf("%+v", s)
	}

	// One build with two loads has one spring: the one set with the first load.
	d = ridden(t)
	d.Show.Compare, d.Show.Loads = []string{"gearbox", "gearbox"}, []string{d.Loads[0].ID, d.Loads[1].ID}
	r := rooms.RoadOf(evaluated(t, d))
	if len(r.Sides) != 2 || !r.Sides[1].OK {
		t.Fatalf("%+v", r.Sides)
	}
	if a, b := find(r.Sides[0], "sag_rear_mm"), find(r.Sides[1], "sag_rear_mm"); math.Abs(a-d.Builds[0].Rear.Sag) > 1e-6 || math.Abs(b-a) < 0.1 {
		t.Errorf("sag %g with the first load and %g with the second", a, b)
	}
}

// What makes no sense is told at its field, and no figure is made of it.
func TestRoughRoadSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		field string
		spoil func(d *document.Document, b *document.Build)
	}{
		{"setup.rear.pressure_bar", func(_ *document.Document, b *document.Build) {
			b.Setup = &document.Setup{Rear: &document.EndSetup{Pressure: value(0)}}
		}},
		{"setup.front.pressure_bar", func(_ *document.Document, b *document.Build) {
			b.Setup = &document.Setup{Front: &document.EndSetup{Pressure: value(40)}}
		}},
		{"setup.front.damping_share", func(_ *document.Document, b *document.Build) {
			b.Setup = &document.Setup{Front: &document.EndSetup{Damping: value(11)}}
		}},
		{"rear.sag_mm", func(_ *document.Document, b *document.Build) { b.Rear.Sag = 0 }},
		{"fork.sag_mm", func(_ *document.Document, b *document.Build) { b.Fork.Sag = 0 }},
		{"show.rough.speed_km_h", func(d *document.Document, _ *document.Build) { d.Show.Rough = &document.Rough{Speed: value(0)} }},
		{"show.rough.class", func(d *document.Document, _ *document.Build) { d.Show.Rough = &document.Rough{Class: "AB"} }},
		{"show.rough.roughness_cm3", func(d *document.Document, _ *document.Build) { d.Show.Rough = &document.Rough{Roughness: value(0)} }},
		{"setup.rear.drop.drop_mm", func(_ *document.Document, b *document.Build) { // its rim would be on the ground
			b.Setup = &document.Setup{Rear: &document.EndSetup{Drop: &document.TyreDrop{Load: 1000, Drop: 10}}}
		}},
	} {
		d := ridden(t)
		c.spoil(d, &d.Builds[0])
		e := evaluated(t, d)
		s := rooms.RoadOf(e).Sides[0]
		if s.OK || s.Why == "" || len(s.Problems) == 0 || s.Problems[0].Field != c.field {
			t.Errorf("%s: %v %q %+v", c.field, s.OK, s.Why, s.Problems)
		}
		if curves := rooms.RoadCurvesOf(e); curves.Sides[0].OK || curves.Sides[0].Why == "" {
			t.Errorf("%s: curves all the same", c.field)
		}
	}
	for _, c := range []struct {
		mark  string
		spoil func(d *document.Document, b *document.Build)
	}{
		{"speed-high", func(d *document.Document, _ *document.Build) { d.Show.Rough = &document.Rough{Speed: value(200)} }},
		{"over-damped", func(_ *document.Document, b *document.Build) {
			b.Setup = &document.Setup{Rear: &document.EndSetup{Damping: value(1.6)}}
		}},
		{"undamped", func(_ *document.Document, b *document.Build) {
			b.Setup = &document.Setup{Rear: &document.EndSetup{Damping: value(0)}}
		}},
		{"tyre-flat", func(_ *document.Document, b *document.Build) {
			b.Setup = &document.Setup{Rear: &document.EndSetup{Pressure: value(0.3)}}
		}},
		{"tyre-lifts", func(d *document.Document, _ *document.Build) { d.Show.Rough = &document.Rough{Class: "D"} }},
	} {
		d := ridden(t)
		c.spoil(d, &d.Builds[0])
		s := rooms.RoadOf(evaluated(t, d)).Sides[0]
		found := false
		for _, m := range s.Marks {
			found = found || m.Key == c.mark && m.Words != ""
		}
		if !s.OK || !found {
			t.Errorf("%s is not among %+v: %s", c.mark, s.Marks, s.Why)
		}
	}
	d := ridden(t)
	for _, o := range []document.Obstacle{{Form: "edge", Height: 900}, {Form: "step", Height: 0, Length: 10}, {Form: "hole", Height: 50, Length: 0}, {Form: "ramp", Height: 50}} {
		d.Show.Rough = &document.Rough{Obstacle: &o}
		e := evaluated(t, d)
		over := rooms.RoadCurvesOf(e).Sides[0].Over
		if over == nil || over.OK || len(over.Problems) == 0 || !strings.HasPrefix(over.Problems[0].Field, "show.rough.obstacle.") {
			t.Errorf("%+v: %+v", o, over)
		}
		if !rooms.RoadOf(e).Sides[0].OK {
			t.Errorf("%+v: no figures of the road beside it", o)
		}
	}
}

func TestRoadCurvesOfTheDemo(t *testing.T) {
	d := ridden(t)
	d.Show.Rough = &document.Rough{Class: "D", Obstacle: &document.Obstacle{Form: "step", Height: 40, Length: 60}}
	e := evaluated(t, d)
	c, r := rooms.RoadCurvesOf(e), rooms.RoadOf(e)
	if len(c.Sides) != 2 || len(c.Difference) != 6 || len(c.Over) < 8 || len(c.Gains) == 0 {
		t.Fatalf("%d sides, %d differences, %d at the obstacle, %d gains", len(c.Sides), len(c.Difference), len(c.Over), len(c.Gains))
	}
	for i, s := range c.Sides {
		if !s.OK || len(s.Curves.Speeds) != 17 || len(s.Response.Figures) != 6 || len(s.Spectra.Figures) != 6 || s.Over == nil || !s.Over.OK {
			t.Fatalf("%s: %s", s.Name, s.Why)
		}
		if n := len(s.Over.Times); n < 100 || len(s.Over.LoadRear) != n || len(s.Over.PathFront) != n {
			t.Errorf("%d times, %d loads", n, len(s.Over.LoadRear))
		}
		// At the speed of the road the curve is the figure.
		for k, f := range s.Curves.Figures {
			for n, v := range s.Curves.Speeds {
				if math.Abs(v-r.Road.Speed) < 1e-9 && f.Key == "tyre_load_rms_rear" && math.Abs(f.Values[n]-*r.Sides[i].LoadRear) > 1e-5 {
					t.Errorf("%d: %g, want %g", k, f.Values[n], *r.Sides[i].LoadRear)
				}
			}
		}
	}
	for _, g := range c.Gains {
		if g.Build != "gearhub" || g.Words == "" || g.Amount == 0 {
			t.Errorf("%+v", g)
		}
		t.Log(g.Words)
	}
}

// Both languages say every key that the figures have.
func TestRoughRoadSpeaksBothLanguages(t *testing.T) {
	german := german(t)
	d := ridden(t)
	d.Show.Rough = &document.Rough{Class: "E", Rider: "standing", Obstacle: &document.Obstacle{Form: "hole", Height: 80, Length: 300}}
	d.Builds[0].Setup = &document.Setup{
		Front: &document.EndSetup{Spring: value(8), Damper: value(500), Drop: &document.TyreDrop{Load: 30000, LoadPlus: 1000, Drop: 4, DropPlus: 0.5}},
		Rear:  &document.EndSetup{Pressure: value(1.5), Damping: value(0)},
	}
	var seen [2]string
	for i, w := range []*words.Words{nil, german} {
		e := report.Weigh(d, w)
		r := rooms.RoadOf(e)
		for _, v := range []any{r, rooms.RoadCurvesOf(e)} {
			out, err := json.Marshal(v)
			if err != nil {
				t.Fatal(err)
			}
			for _, key := range []string{"\"road.", " road.", "{", "}"} {
				text := string(out)
				if key == "{" || key == "}" {
					text = r.Words + r.Sides[0].Words
				}
				if at := strings.Index(text, key); at >= 0 {
					t.Errorf("%q is told: %.80s", key, text[at:])
				}
			}
		}
		seen[i] = r.Sides[0].Words
	}
	if seen[0] == seen[1] || seen[0] == "" {
		t.Errorf("the same in both languages: %q", seen[0])
	}
	t.Log(seen[1])
}

func BenchmarkRoad(b *testing.B) {
	e := evaluated(b, ridden(b))
	for b.Loop() {
		rooms.RoadOf(e)
	}
}

func BenchmarkRoadCurves(b *testing.B) {
	e := evaluated(b, ridden(b))
	for b.Loop() {
		rooms.RoadCurvesOf(e)
	}
}
