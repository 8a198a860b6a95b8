package rooms_test

import (
	"math"
	"math/cmplx"
	"os"
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

// evaluated evaluates a document by way of its text, as the page does.
func evaluated(t testing.TB, d *document.Document) *report.Evaluation {
	t.Helper()
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	e := report.EvaluateText(text)
	if e.Document == nil {
		t.Fatal(e.Report.Problems)
	}
	return e
}

// benchmark is the bicycle of Meijaard et al. (2007), table 1, as somebody would
// enter it: frame figures of a rigid bike that come to its wheelbase, trail, tilt
// and radii, and four parts.
func benchmark(t *testing.T) *document.Document {
	t.Helper()
	const wheelbase, trail, rear, front = 1.02, 0.08, 0.3, 0.35
	tilt := math.Pi / 10
	s, c := math.Sincos(math.Pi/2 - tilt)
	b := document.Build{ID: "b1", Name: "Benchmark"}
	b.Frame = document.Frame{Stack: 600, Reach: 400, HeadTube: 120, HeadAngle: 90 - tilt*180/math.Pi, SeatTube: 500, SeatAngle: 73, Chainstay: 440, BBDrop: 30}
	b.Fork = document.Fork{Length: 400, Offset: 1000 * (front*c - trail*s)}
	b.Wheels.Rear, b.Wheels.Front = document.Wheel{BeadSeat: 500, Tyre: 50}, document.Wheel{BeadSeat: 600, Tyre: 50}
	b.Cockpit = document.Cockpit{Spacers: 20, Stem: 80, BarWidth: 600}
	b.Saddle = document.Saddle{Height: 700}
	b.Cranks = document.Cranks{Length: 170, Width: 150}
	// The fork is as long as leaves the frame level, the reach as long as the wheelbase wants.
	pose := func() *geometry.Bike {
		bike, problems := geometry.Pose(&b)
		if bike == nil {
			t.Fatal(problems)
		}
		return bike
	}
	for range 60 {
		const h = 1e-3
		at := pose()
		b.Fork.Length += h
		slope := (pose().Pitch - at.Pitch) / h
		b.Fork.Length -= h + at.Pitch/slope
		b.Frame.Reach += 1000 * (wheelbase - pose().Wheelbase)
	}
	if bike := pose(); math.Abs(bike.Wheelbase-wheelbase) > 1e-13 || math.Abs(bike.Trail-trail) > 1e-13 || math.Abs(bike.HeadAngle-(math.Pi/2-tilt)) > 1e-13 {
		t.Fatalf("wheelbase %.15g, trail %.15g, head angle %.15g", bike.Wheelbase, bike.Trail, bike.HeadAngle)
	}

	text, err := os.ReadFile("../../testdata/mass/meijaard2007.json")
	if err != nil {
		t.Fatal(err)
	}
	var table struct {
		Bodies []struct {
			Name string
			Mass float64 `json:"mass_kg"`
			X    float64 `json:"x_m"`
			Z    float64 `json:"z_m"`
			XX   float64 `json:"xx_kgm2"`
			YY   float64 `json:"yy_kgm2"`
			ZZ   float64 `json:"zz_kgm2"`
			XZ   float64 `json:"xz_kgm2"`
		}
	}
	if err := json.Unmarshal(text, &table); err != nil {
		t.Fatal(err)
	}
	carriers := []document.Carrier{document.RearWheel, document.MainFrame, document.ForkUpper, document.FrontWheel}
	for i, p := range table.Bodies {
		// The second moment of the shape, our axes: K = (trace/2 - I)/m, turned to
		// its principal directions; a box of sides sqrt(12 K).
		half := (p.XX + p.YY + p.ZZ) / 2
		xx, yy, zz, xz := (half-p.XX)/p.Mass, (half-p.YY)/p.Mass, (half-p.ZZ)/p.Mass, p.XZ/p.Mass
		angle := math.Atan2(2*xz, xx-zz) / 2
		sin, cos := math.Sincos(angle)
		long, short := xx*cos*cos+2*xz*sin*cos+zz*sin*sin, xx*sin*sin-2*xz*sin*cos+zz*cos*cos
		side := func(k float64) float64 { return 1000 * math.Sqrt(12*math.Max(0, k)) }
		b.Parts = append(b.Parts, document.Part{
			ID: p.Name, Name: p.Name, Kind: "other", Quantity: 1, Mass: 1000 * p.Mass, HalfWidth: 1, Basis: document.Weighed,
			At: &document.Vec3{1000 * p.X, 0, -1000 * p.Z}, Within: 1, Carrier: carriers[i],
			Shape: document.Shape{Form: document.FormBox, Size: document.Vec3{side(long), side(yy), side(short)}, Pitch: angle * 180 / math.Pi},
		})
	}
	return &document.Document{
		Format: document.Format, Version: document.Version, Title: "Benchmark",
		Show: document.Show{Mass: "kg", Length: "mm", Compare: []string{"b1"}}, Builds: []document.Build{b},
	}
}

// Meijaard et al. (2007), the benchmark as a document, through its text: the
// matrices and eigenvalues as printed, to 1e-9.
func TestBenchmarkAsADocument(t *testing.T) {
	s := rooms.SteeringOf(evaluated(t, benchmark(t))).Sides[0]
	if !s.OK {
		t.Fatal(s.Why)
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
			t.Errorf("%s is %.15g, want %.15g", what, got, want)
		}
	}
	want := map[string][2][2]float64{
		"M": {{80.81722, 2.31941332208709}, {2.31941332208709, 0.29784188199686}}, "K0": {{-80.95, -2.59951685249872}, {-2.59951685249872, -0.80329488458618}},
		"K2": {{0, 76.59734589573222}, {0, 2.65431523794604}}, "C1": {{0, 33.86641391492494}, {-0.85035641456978, 1.68540397397560}},
	}
	for i := range 2 {
		for j := range 2 {
			near("M", s.Matrices.M[i][j], want["M"][i][j])
			near("K0", s.Matrices.K0[i][j], want["K0"][i][j])
			near("K2", s.Matrices.K2[i][j], want["K2"][i][j])
			near("C1", s.Matrices.C1[i][j], want["C1"][i][j])
		}
	}
	near("weave", *s.Weave, 4.29238253634111)
	near("capsize", *s.Capsize, 6.02426201538837)
	found := 0
	for _, v := range s.Speeds {
		if v.Speed != 5 {
			continue
		}
		for _, w := range []complex128{-0.77534188219585 + 4.46486771378823i, -0.32286642900409, -14.07838969279822} {
			for _, e := range v.Eigenvalues {
				if cmplx.Abs(complex(e[0], e[1])-w) < 1e-9*(1+cmplx.Abs(w)) {
					found++
				}
			}
		}
	}
	if found != 3 {
		t.Errorf("of the eigenvalues at 5 m/s %d of 3 are there", found)
	}
}

// The demo: a figure of every sort, finite; what the copies of a build share
// cancels; a load on the fork makes the bar heavier.
func TestSteeringOfTheDemo(t *testing.T) {
	d := documenttest.Demo(t)
	d.Show.State = document.Ridden
	s := rooms.SteeringOf(evaluated(t, d))
	if len(s.Sides) != 2 || len(s.Difference) < 10 || s.Words == "" || s.Caution == "" {
		t.Fatalf("%d sides, %d differences, %q", len(s.Sides), len(s.Difference), s.Words)
	}
	for _, side := range s.Sides {
		if !side.OK || len(side.Touring) != 4 || len(side.Speeds) != 51 || len(side.Plain) != 10 || len(side.Hand) != 6 || side.Words == "" {
			t.Errorf("%s: %d touring speeds, %d speeds, %d plain figures, %d in the hand, %q", side.Name, len(side.Touring), len(side.Speeds), len(side.Plain), len(side.Hand), side.Words)
		}
		t.Log(side.Words)
	}
	t.Log(s.Words)

	twins := documenttest.Demo(t)
	twins.CopyBuild("gearbox", "Copy")
	twins.Show.Compare = []string{"gearbox", twins.Builds[3].ID}
	for _, c := range rooms.SteeringOf(evaluated(t, twins)).Difference {
		if c.Verdict != report.Same {
			t.Errorf("of a build and its copy %s differs: %+v", c.Key, c)
		}
	}

	loaded := documenttest.Demo(t)
	loaded.CopyBuild("gearbox", "Loaded")
	b := &loaded.Builds[3]
	b.Parts = append(b.Parts, document.Part{
		ID: "fork-bags", Name: "Fork bags", Kind: "bag", Quantity: 2, Mass: 3000, HalfWidth: 100, Basis: document.Weighed,
		Station: "fork-legs", Within: 20, Carrier: document.ForkLower, Shape: document.Shape{Form: document.FormPoint},
	})
	loaded.Show.Compare, loaded.Show.Loads = []string{"gearbox", b.ID}, []string{"", ""}
	words := ""
	for _, c := range rooms.SteeringOf(evaluated(t, loaded)).Difference {
		switch c.Key {
		case "steering_inertia", "steered_mass", "lift_front":
			if c.Verdict != report.More {
				t.Errorf("with bags on the fork %s is %+v", c.Key, c)
			}
			words += c.Label
		case "trail":
			if c.Verdict != report.Same {
				t.Errorf("%+v", c)
			}
		}
	}
	if words == "" {
		t.Error("no difference")
	}
}

// Both languages say every key that the figures have.
func TestSteeringSpeaksBothLanguages(t *testing.T) {
	german := german(t)
	d := documenttest.Demo(t)
	b := &d.Builds[0]
	b.Stand = &document.Stand{Forward: 400, Out: 170, Lean: 9}
	for _, w := range []*words.Words{nil, german} {
		s := rooms.SteeringOf(report.Weigh(d, w))
		out, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		if i := strings.Index(string(out), "steering."); i >= 0 {
			t.Errorf("a key is told: %.80s", out[i:])
		}
		if s.Sides[0].Stand == nil || s.Sides[0].Stand.Typical || len(s.Sides[0].Stand.Figures) != 3 {
			t.Errorf("the stand: %+v", s.Sides[0].Stand)
		}
	}
}

func BenchmarkSteering(b *testing.B) {
	e := evaluated(b, documenttest.Demo(b))
	for b.Loop() {
		rooms.SteeringOf(e)
	}
}

// A bag hung elsewhere: where it hangs, nothing changes but for rounding of what a
// pair shares; on the bar the steered inertia is larger than in the frame, by
// what the bag's own parallel axis is.
func TestPlacements(t *testing.T) {
	d := documenttest.Demo(t)
	d.Show.State = document.Loaded
	p := rooms.PlacementsOf(evaluated(t, d))
	if len(p.Sides) != 2 || len(p.Sides[0].Bags) < 4 {
		t.Fatalf("%+v", p.Sides)
	}
	for i, b := range p.Sides[0].Bags {
		if i > 0 && b.Share > p.Sides[0].Bags[i-1].Share {
			t.Errorf("%s weighs more on the steering than the one before", b.Name)
		}
	}
	shares := 0.0
	for _, b := range p.Sides[0].Bags {
		if len(b.Places) != 5 || b.Mass <= 0 || b.Share < 0 || b.Share > 1 {
			t.Errorf("%+v", b)
		}
		shares += b.Share
		inertia := map[string]rooms.Change{}
		for _, place := range b.Places {
			inertia[place.Key] = place.Figures[0]
		}
		if bar, frame := inertia["bar"], inertia["frame"]; !(bar.B > frame.B) || bar.A != frame.A {
			t.Errorf("%s: on the bar %+v, in the frame %+v", b.Name, bar, frame)
		}
		// In the frame the bag adds nothing: what is left is what the share leaves.
		if f := inertia["frame"]; math.Abs(f.B-f.A*(1-b.Share)) > 0.002*f.A+1e-4 {
			t.Errorf("%s makes %.1f %% of %g; in the frame %g is left", b.Name, 100*b.Share, f.A, f.B)
		}
	}
	if shares <= 0 {
		t.Error("no bag of the tour hangs on the steering")
	}
	d.Show.State = document.Bare
	if p := rooms.PlacementsOf(evaluated(t, d)); len(p.Sides[0].Bags) != 0 {
		t.Error("the bare bike has bags")
	}
}

// What is done with the bike in the hand can be said: half the step needs less, and
// is called by its height.
func TestHandAsSaid(t *testing.T) {
	d := documenttest.Demo(t)
	usual := rooms.SteeringOf(evaluated(t, d))
	d.Show.Hand = &document.Hand{Step: 400, Lean: 20, Slope: 5}
	said := rooms.SteeringOf(evaluated(t, d))
	for i, in := range said.Inputs {
		if was := usual.Inputs[i]; in.Typical || !was.Typical || in.Value == was.Value || in.Field != was.Field || in.Label == "" {
			t.Errorf("%+v, was %+v", in, was)
		}
	}
	of := func(s *rooms.Steering, key string) rooms.Figure {
		for _, f := range s.Sides[0].Hand {
			if f.Key == key {
				return f
			}
		}
		t.Fatalf("no %s", key)
		return rooms.Figure{}
	}
	// The force upright goes with the tangent of the lean, that of pushing with the
	// sine of the slope and the rolling of 1 %.
	ratio := func(key string) float64 { return of(said, key).Value / of(usual, key).Value }
	push := func(s float64) float64 { return math.Sin(math.Atan(s)) + 0.01*math.Cos(math.Atan(s)) }
	if r, want := ratio("upright"), math.Tan(math.Pi/9)/math.Tan(math.Pi/18); math.Abs(r-want) > 0.05*want {
		t.Errorf("upright %v, want %v", r, want)
	}
	if r, want := ratio("push"), push(0.05)/push(0.1); math.Abs(r-want) > 0.05*want {
		t.Errorf("push %v, want %v", r, want)
	}
	if ratio("step_rear") == 1 || !strings.Contains(of(said, "step_rear").Label, "400 mm") || !strings.Contains(of(usual, "step_rear").Label, "200 mm") {
		t.Errorf("%+v", of(said, "step_rear"))
	}
}
