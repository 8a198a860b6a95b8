package weighin_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/weighin"
)

// tourer is the first bike of the demo, on rigid ends, with a dozen parts of
// ours at its stations.
func tourer(t testing.TB) (*geometry.Bike, []mass.Item) {
	t.Helper()
	text, err := os.ReadFile("../../data/demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	d, _ := document.Open(text)
	if d == nil || len(d.Builds) == 0 {
		t.Fatal("the demo does not open")
	}
	b := d.Builds[0]
	b.Fork.Travel, b.Fork.Sag, b.Rear.Travel, b.Rear.Sag = 0, 0, 0, 0
	bike, problems := geometry.Pose(&b)
	if bike == nil {
		t.Fatal(problems)
	}
	var items []mass.Item
	for i, p := range []struct {
		station  string
		kg, half float64
	}{
		{"frame", 3.2, 0.15}, {"fork-upper", 2.1, 0.05}, {"front-axle", 2.3, 0.1}, {"rear-axle", 3.4, 0.1}, {"bottom-bracket", 2.8, 0.1},
		{"bar", 0.6, 0.05}, {"saddle", 0.8, 0.05}, {"rear-rack", 0.9, 0.03}, {"rear-pannier-left", 6, 0.3}, {"rear-pannier-right", 5.5, 0.3},
		{"handlebar-bag", 2, 0.1}, {"bottle-down-tube", 1, 0.02},
	} {
		points := bike.Stations[p.station].Points
		if len(points) != 1 {
			t.Fatalf("%s has %d points", p.station, len(points))
		}
		items = append(items, mass.Item{
			Mass: p.kg, Place: points[0], MassU: mass.Rectangular(p.half), MassSource: i,
			PlaceU: mass.Alike(mass.Rectangular(0.01)), PlaceSource: i,
		})
	}
	return bike, items
}

// visit weighs bodies level and, with a height, with the front wheel raised:
// both wheels each time, rounded to the scale's steps.
func visit(bike *geometry.Bike, bodies []mass.Item, stepG, heightMM float64) *document.WeighIn {
	b := scaleOf(bike, bodies)
	w := &document.WeighIn{ID: "w1", Name: "In the yard", Build: "a", State: document.Ready}
	for _, h := range []float64{0, heightMM} {
		if h == 0 && len(w.Readings) > 0 {
			break
		}
		front, rear := b.onScale(h/1000, 0)
		for i, kg := range []float64{front, rear} {
			r := document.Reading{Wheel: []string{"front", "rear"}[i], Mass: math.Round(kg*1000/stepG) * stepG, Resolution: stepG}
			if h != 0 {
				r.Raised, r.Height, r.HeightPlus = "front", h, 2
			}
			w.Readings = append(w.Readings, r)
		}
	}
	return w
}

func scaleOf(b *geometry.Bike, bodies []mass.Item) *bike {
	return &bike{b.Wheelbase, b.RearRadius, b.FrontRadius, bodies}
}

// weighed weighs in without a problem.
func weighed(t *testing.T, w *document.WeighIn, bike *geometry.Bike, items []mass.Item) *weighin.Result {
	t.Helper()
	r, problems := weighin.Weigh(w, bike, items)
	if r == nil || len(problems) > 0 {
		t.Fatalf("problems: %v", problems)
	}
	return r
}

// teller writes in plain grams and millimetres.
var teller = weighin.Teller{
	Show:    document.Show{Mass: "g", Length: "mm"},
	Source:  func(i int) string { return fmt.Sprint("part ", i) },
	Station: func(s string) string { return s },
}

// told is all that is said of a result.
func told(r *weighin.Result) string {
	return teller.Measured(r) + "\n" + teller.Compared(r) + "\n" + teller.Explained(r)
}

// says checks what is said, and that it is said whole.
func says(t *testing.T, r *weighin.Result, want ...string) {
	t.Helper()
	text := told(r)
	for _, w := range want {
		if !strings.Contains(text, w) {
			t.Errorf("does not say %q:\n%s", w, text)
		}
	}
	for _, bad := range []string{"%!", "NaN", "Inf", "..", "  ", " ,", "{", "<nil>"} {
		if strings.Contains(text, bad) {
			t.Errorf("says %q:\n%s", bad, text)
		}
	}
}

func TestAgreement(t *testing.T) {
	bike, items := tourer(t)
	r := weighed(t, visit(bike, items, 100, 250), bike, items)
	if r.Verdict != weighin.Agree || len(r.Figures) != 3 {
		t.Fatalf("%s, %+v", r.Verdict, r.Figures)
	}
	for _, f := range r.Figures {
		if !f.Agrees || math.Abs(f.Score) > 1 {
			t.Errorf("%+v", f)
		}
	}
	says(t, r, "agree among themselves", "agree within both uncertainties", "of 100 weighings")
	if s := teller.Explained(r); s != "" {
		t.Errorf("explains what needs no explanation: %s", s)
	}
	r = weighed(t, visit(bike, items, 100, 0), bike, items)
	if r.Verdict != weighin.Agree || len(r.Figures) != 2 || r.Block == nil || !r.Block.Enough {
		t.Fatalf("%s, %+v, %+v", r.Verdict, r.Figures, r.Block)
	}
	says(t, r, "height is not measured", "With a block of", "nothing checks them")
}

// When parts list and scale are both as good as they say, they are said to
// agree in about 95 of 100 cases, and each figure agrees about as often.
func TestAgreementCoverage(t *testing.T) {
	const draws = 4000
	bike, items := tourer(t)
	rng := rand.New(rand.NewPCG(4, 2))
	noise := func(u float64) float64 { return u * rng.NormFloat64() }
	s := weighin.StandOf(&document.WeighIn{}, bike)
	agree, figures := 0, map[string]int{}
	for range draws {
		real := slices.Clone(items)
		for i := range real {
			real[i].Mass += noise(items[i].MassU)
			real[i].Place.X += noise(items[i].PlaceU.X)
			real[i].Place.Z += noise(items[i].PlaceU.Z)
		}
		b := scaleOf(bike, real)
		b.wheelbase += noise(s.WheelbaseU)
		tilt := noise(s.LevelU)
		// Other tyres lift wheels and bike alike; the paper bike stands on them too.
		lift := noise(s.RadiusU)
		b.rear, b.front = b.rear+lift, b.front+lift
		b.bodies = slices.Clone(b.bodies)
		for i := range b.bodies {
			b.bodies[i].Place.Z += lift
		}
		off := 1 + noise(mass.Rectangular(document.CalibrationShare))
		w := &document.WeighIn{Build: "a"}
		for _, h := range []float64{0, 0.2} {
			at := h
			if h > 0 {
				at += noise(0.002 / math.Sqrt(3))
			}
			front, rear := b.onScale(at, tilt)
			for i, kg := range []float64{front, rear} {
				one := document.Reading{Wheel: []string{"front", "rear"}[i], Mass: (kg*off + noise(mass.Resolution(0.1)) + noise(mass.Rectangular(0.03))) * 1000, Resolution: 100}
				if h > 0 {
					one.Raised, one.Height, one.HeightPlus = "front", h*1000, 2
				}
				w.Readings = append(w.Readings, one)
			}
		}
		r, _ := weighin.Weigh(w, bike, items)
		if r == nil {
			t.Fatal("not weighed")
		}
		if !r.Together.Unlikely() {
			agree++
		}
		for _, f := range r.Figures {
			if f.Agrees {
				figures[f.Key]++
			}
		}
	}
	if p := float64(agree) / draws; p < 0.935 || p > 0.965 {
		t.Errorf("said to agree in %.1f %% of draws, want 95", p*100)
	}
	for key, n := range figures {
		if p := float64(n) / draws; p < 0.94 || p > 0.97 {
			t.Errorf("%s agrees in %.1f %% of draws, want 95.4", key, p*100)
		}
	}
}

func TestMissingMass(t *testing.T) {
	bike, items := tourer(t)
	for _, station := range []string{"rear-rack-deck", "handlebar-bag", "stand"} {
		at := bike.Stations[station].Points[0]
		r := weighed(t, visit(bike, append(slices.Clone(items), mass.Item{Mass: 3, Place: at}), 20, 300), bike, items)
		if r.Verdict != weighin.ByMissing {
			t.Errorf("3 kg at %s: %s\n%s", station, r.Verdict, told(r))
			continue
		}
		m := r.Missing
		if !m.Placed || !m.Possible || m.Near[0].Station != station {
			t.Errorf("3 kg at %s is placed at %+v", station, m.Near[0])
		}
		near(t, "mass at the place that fits best", m.Mass.Value, 3, 0.05)
		near(t, "mass at the station", m.Near[0].Mass.Value, 3, m.Near[0].Mass.Plus())
		near(t, "x", m.X.Value, at.X, 0.02)
		near(t, "z", m.Z.Value, at.Z, 0.02)
		if m.Mass.Plus() < 0.1 || m.Near[0].Mass.U > m.Mass.U || m.X.U < 0.02 {
			t.Errorf("doubts: %+v", m)
		}
		says(t, r, "do not agree", "heavier", "is on the bike and not on the list, most likely here: "+station)
	}
}

func TestSurplusMass(t *testing.T) {
	bike, items := tourer(t)
	bodies := slices.Delete(slices.Clone(items), 10, 11) // the handlebar bag was left at home
	r := weighed(t, visit(bike, bodies, 20, 300), bike, items)
	at := slices.IndexFunc(r.Missing.Near, func(s weighin.Spot) bool { return s.Station == "handlebar-bag" })
	if r.Verdict != weighin.BySurplus || at < 0 {
		t.Fatalf("%s, %+v", r.Verdict, r.Missing)
	}
	near(t, "mass", r.Missing.Near[at].Mass.Value, -2, r.Missing.Near[at].Mass.Plus())
	near(t, "away", r.Missing.Near[at].Away, 0, 0.06)
	says(t, r, "lighter", "of what is on the list is not on the bike, most likely here: ", "handlebar-bag")
}

// Four parts at each end are off by all of their half-widths, up in front and
// down at the rear: no single mass does that.
func offAtBothEnds(t *testing.T) (*geometry.Bike, []mass.Item, []mass.Item) {
	bike, _ := tourer(t)
	paper := []mass.Item{{Mass: 20, Place: bike.Stations["frame"].Points[0]}}
	for i := range 8 {
		at, kg := bike.FrontAxle, 1.0
		if i >= 4 {
			at = bike.RearAxle
		}
		paper = append(paper, mass.Item{Mass: kg, Place: at.Add(mass.Vec{X: 0.02 * float64(i%4), Z: 0.01 * float64(i)}), MassU: mass.Rectangular(0.2), MassSource: i + 1})
	}
	real := slices.Clone(paper)
	for i := range real {
		switch {
		case i > 4:
			real[i].Mass -= 0.195
		case i > 0:
			real[i].Mass += 0.195
		}
	}
	return bike, paper, real
}

func TestOtherWeights(t *testing.T) {
	bike, paper, real := offAtBothEnds(t)
	r := weighed(t, visit(bike, real, 10, 300), bike, paper)
	if r.Verdict != weighin.ByWeights || !r.Weights.Possible || r.Missing.Possible {
		t.Fatalf("%s, %+v\n%s", r.Verdict, r.Weights, told(r))
	}
	if len(r.Weights.Moves) != 8 {
		t.Fatalf("%d parts move, want 8", len(r.Weights.Moves))
	}
	for i, m := range r.Weights.Moves {
		if up := m.Source <= 4; up != (m.By > 0) || math.Abs(m.By) < 0.15 || math.Abs(m.By) > 0.2+1e-9 || m.Then > m.U {
			t.Errorf("%+v", m)
		}
		if i > 0 && math.Abs(m.By) > math.Abs(r.Weights.Moves[i-1].By) {
			t.Errorf("moves are not in order: %+v", r.Weights.Moves)
		}
	}
	says(t, r, "further forward", "Other weights of the parts explain it best", "more", "less", "No single mass")

	// With the adjusted weights the bike on paper is the one on the scale.
	adjusted := r.Weights.Apply(paper)
	p, ok := weighin.PaperOf(adjusted)
	if !ok {
		t.Fatal("no adjusted bike")
	}
	near(t, "total", p.Total.Value, r.Weights.Total, 1e-12)
	near(t, "x", p.X.Value, r.Weights.X, 1e-12)
	near(t, "z", p.Z.Value, r.Weights.Z, 1e-12)
	again := weighed(t, visit(bike, real, 10, 300), bike, adjusted)
	if again.Verdict != weighin.Agree {
		t.Errorf("adjusted: %s\n%s", again.Verdict, told(again))
	}
	b, want := scaleOf(bike, adjusted), scaleOf(bike, real)
	for _, rise := range []float64{0, 0.3} {
		f, k := b.onScale(rise, 0)
		wf, wk := want.onScale(rise, 0)
		near(t, "front reading of the adjusted bike", f, wf, 0.05)
		near(t, "rear reading of the adjusted bike", k, wk, 0.05)
	}
}

// Where the doubts of the parts allow it and the scale is fine, the adjusted
// bike reads just as the scale did.
func TestAdjustedBikeReproducesReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBike(t)
		paper := slices.Clone(b.bodies)
		for i := range paper {
			it := &paper[i]
			it.MassU = mass.Rectangular(0.3 * it.Mass)
			b.bodies[i].Mass *= 1 + 0.02*rapid.Float64Range(-1, 1).Draw(t, "off by")
		}
		s := b.stand()
		var readings []weighin.Reading
		for _, rise := range []float64{0, 0.25} {
			readings = append(readings, b.reading(true, rise, 0.0001), b.reading(false, rise, 0.0001))
		}
		m, problems := weighin.Solve(s, readings, 1)
		p, ok := weighin.PaperOf(paper)
		if m == nil || !ok {
			t.Fatalf("%v", problems)
		}
		w := weighin.ExplainByWeights(m, p)
		if w == nil {
			t.Fatal("not solved")
		}
		adjusted := *b
		adjusted.bodies = w.Apply(paper)
		for _, rise := range []float64{0, 0.25} {
			f, k := adjusted.onScale(rise, 0)
			wf, wk := b.onScale(rise, 0)
			// Few parts cannot meet three figures; then as much is left as is said.
			if slack := 0.0005 + 0.0003*math.Sqrt(w.Residual); math.Abs(f-wf) > slack || math.Abs(k-wk) > slack {
				t.Errorf("reads %v and %v, was %v and %v; said to be left: %v", f, k, wf, wk, w.Residual)
			}
		}
	})
}

// A pannier on the other rack, with weights that are known well, is neither a
// weight nor a missing mass.
func TestUnexplained(t *testing.T) {
	bike, items := tourer(t)
	for i := range items {
		items[i].MassU /= 100
	}
	moved := slices.Clone(items)
	moved[8].Place = bike.Stations["front-pannier-left"].Points[0]
	r := weighed(t, visit(bike, moved, 20, 300), bike, items)
	if r.Verdict != weighin.Unexplained || r.Missing.Possible || r.Weights.Possible {
		t.Errorf("%s, %+v", r.Verdict, r.Missing.Near)
	}
	if r.Missing.Placed {
		t.Errorf("a mass of %v is placed", r.Missing.Mass)
	}
	says(t, r, "further forward", "Neither")
}

// Readings that contradict each other explain a difference that is no larger
// than their contradiction, and do not hide one that is.
func TestContradictingReadings(t *testing.T) {
	bike, items := tourer(t)
	w := visit(bike, items, 20, 250)
	w.Readings = append(w.Readings, w.Readings...)
	w.Readings[2].Mass += 3000
	r := weighed(t, w, bike, items)
	if !r.Measured.Self.Unlikely() || r.Verdict != weighin.Contradict {
		t.Errorf("%s, %+v", r.Verdict, r.Measured.Self)
	}
	says(t, r, "do not agree among themselves", "Reading 3 fits least", "weigh it again", "cannot be said", "Weigh again")

	w = visit(bike, append(slices.Clone(items), mass.Item{Mass: 15, Place: bike.Stations["rear-rack-deck"].Points[0]}), 20, 250)
	w.Readings[2].Mass += 300
	r = weighed(t, w, bike, items)
	if !r.Measured.Self.Unlikely() || r.Verdict != weighin.ByMissing {
		t.Errorf("15 kg more: %s, %+v", r.Verdict, r.Measured.Self)
	}
}

// The parts list's side has the figures and doubts of package mass.
func TestPaperAgainstMass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBike(t)
		n := len(b.bodies)
		for i := range b.bodies {
			it := &b.bodies[i]
			it.MassU = rapid.Float64Range(0, 1).Draw(t, "mass u")
			it.PlaceU = mass.Vec{X: rapid.Float64Range(0, 0.05).Draw(t, "place u"), Z: rapid.Float64Range(0, 0.05).Draw(t, "place u, up")}
			it.MassSource = rapid.IntRange(0, n).Draw(t, "mass source")
			it.PlaceSource = rapid.IntRange(0, n).Draw(t, "place source")
		}
		p, ok := weighin.PaperOf(b.bodies)
		if !ok {
			t.Fatal("no paper")
		}
		for what, c := range map[string]struct {
			got  weighin.Value
			want mass.Figure
		}{
			"total": {got: p.Total, want: mass.Total(b.bodies, nil)},
			"x":     {got: p.X, want: mass.Centre(b.bodies, nil, mass.X)},
			"z":     {got: p.Z, want: mass.Centre(b.bodies, nil, mass.Z)},
		} {
			u, _ := mass.Uncertainty(b.bodies, c.want)
			if math.Abs(c.got.Value-c.want.Value) > 1e-12*(1+c.want.Value) || math.Abs(c.got.U-u) > 1e-7+1e-9*u { // where variances cancel, 1e-16 is left
				t.Errorf("%s = %v, want %v ± %v", what, c.got, c.want.Value, u)
			}
		}
	})
	for what, items := range map[string][]mass.Item{
		"nothing": nil, "no mass": {{}}, "less than nothing": {{Mass: -1}}, "no number": {{Mass: math.NaN()}}, "too much": {{Mass: math.Inf(1)}},
	} {
		if p, ok := weighin.PaperOf(items); ok {
			t.Errorf("%s on paper: %+v", what, p)
		}
	}
}

// The block that is advised does what is promised, and one a centimetre lower
// does not.
func TestBlock(t *testing.T) {
	bike, items := tourer(t)
	r, problems := weighin.Weigh(visit(bike, items, 100, 60), bike, items)
	if r == nil || r.Block == nil || !r.Block.Enough {
		t.Fatalf("%+v, %v", r, problems)
	}
	if len(problems) != 1 || problems[0].Field != "readings.2.height_mm" || problems[0].WeighIn != "w1" || !strings.HasPrefix(problems[0].Message.String(), "Weigh-in “In the yard”: The height") || problems[0].Severity != document.SeverityWarning ||
		!strings.Contains(problems[0].Message.String(), fmt.Sprintf("a block of %.0f mm", r.Block.Height*1000)) {
		t.Errorf("%+v", problems)
	}
	for _, c := range []struct {
		height float64
		enough bool
	}{{r.Block.Height, true}, {r.Block.Height - 0.01, false}} {
		// The advice goes by what was measured with the low block.
		was := r.Measured
		b := scaleOf(bike, []mass.Item{{Mass: was.Total.Value, Place: mass.Vec{X: was.X.Value, Z: was.Z.Value}}})
		readings := []weighin.Reading{b.reading(true, 0, 0.1), b.reading(false, 0, 0.1), b.reading(true, c.height, 0.1), b.reading(false, c.height, 0.1)}
		for i := range readings {
			readings[i].PlacingU, readings[i].ScaleU = mass.Rectangular(0.03), mass.Rectangular(document.CalibrationShare)
			if i >= 2 {
				readings[i].RiseU = mass.Rectangular(0.002)
			}
		}
		m, _ := weighin.Solve(weighin.StandOf(&document.WeighIn{}, bike), readings, 1)
		if got := m.Z.Plus() <= 0.05*r.Measured.Z.Value; got != c.enough {
			t.Errorf("%v m: ± %v of %v", c.height, m.Z.Plus(), r.Measured.Z.Value)
		}
		if c.enough {
			near(t, "promised", r.Block.Plus, m.Z.Plus(), 1e-6*m.Z.Plus())
		}
	}
	r, problems = weighin.Weigh(visit(bike, items, 2000, 60), bike, items)
	if r == nil || r.Block == nil || r.Block.Enough || len(problems) == 0 || !strings.Contains(problems[len(problems)-1].Message.String(), "too coarse") {
		t.Errorf("with a scale of 2 kg: %+v, %v", r, problems)
	}
}

// What springs do is said, and their doubt is larger.
func TestSuspension(t *testing.T) {
	bike, items := tourer(t)
	rigid := weighin.StandOf(&document.WeighIn{}, bike)
	bike.RearSprung, bike.RearSag, bike.RearTravel = true, 0.03, 0.12
	if s := weighin.StandOf(&document.WeighIn{}, bike); s.LevelU <= rigid.LevelU {
		t.Errorf("level ± %v on springs, %v without", s.LevelU, rigid.LevelU)
	}
	w := visit(bike, items, 100, 300)
	_, problems := weighin.Weigh(w, bike, items)
	if len(problems) != 2 || problems[0].Field != "state" || !strings.Contains(problems[0].Message.String(), "30 mm") ||
		problems[1].Field != "readings" || !strings.Contains(problems[1].Message.String(), "Lock it") {
		t.Errorf("%+v", problems)
	}
	// With a rider it sits as it is built to, and no wheel is raised: there is
	// nothing to warn of, no height, and no advice to raise it.
	w.State = document.Ridden
	r, problems := weighin.Weigh(w, bike, items)
	if len(problems) != 0 || r.Measured.HasHeight || r.Block != nil || len(r.Readings) != 2 {
		t.Errorf("with a rider: %+v, %+v", r, problems)
	}
	says(t, r, "nobody sits on a bike with a raised wheel")
}

func TestWithoutPaper(t *testing.T) {
	bike, items := tourer(t)
	r, problems := weighin.Weigh(visit(bike, items, 100, 250), bike, nil)
	if r == nil || r.Verdict != weighin.NoPaper || r.Paper != nil || len(problems) != 1 || problems[0].Field != "build" {
		t.Fatalf("%+v, %v", r, problems)
	}
	near(t, "total", r.Measured.Total.Value, 30.6, 0.1)
	says(t, r, "nothing on paper")
}

// Two explanations that fit about as well are both told.
func TestEither(t *testing.T) {
	bike, _ := tourer(t)
	// Ten parts of one make-up, each known within ± 100 g: 361 g more in all is
	// twice their uncertainty and a little.
	var items []mass.Item
	at := bike.Stations["frame"].Points[0]
	items = append(items, mass.Item{Mass: 10, Place: at})
	for i := range 10 {
		items = append(items, mass.Item{Mass: 1, Place: at, MassU: mass.Rectangular(0.1), MassSource: i + 1})
	}
	r := weighed(t, visit(bike, append(slices.Clone(items), mass.Item{Mass: 0.55, Place: at}), 10, 300), bike, items)
	if r.Verdict != weighin.ByEither || !r.Weights.Possible || !r.Missing.Possible {
		t.Errorf("%s, %+v, %+v", r.Verdict, r.Weights, r.Missing)
	}
	says(t, r, "Two things explain it", "Either", "Or a single mass")
}
