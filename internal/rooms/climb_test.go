package rooms_test

import (
	"math"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/report"
	"steelyard/internal/rooms"
	"steelyard/internal/words"
)

// aDay goes over a pass of n stretches.
func aDay(n int) document.Day {
	d := document.Day{ID: "pass", Name: "The invented pass"}
	for i := range n {
		d.Stretches = append(d.Stretches, document.Stretch{Length: 300 + float64(i%7)*150, Slope: 7 * math.Sin(float64(i)/9), Surface: document.Surfaces[i%3]})
	}
	return d
}

func exactly(v float64) *document.Known { return &document.Known{Value: v, Basis: document.Measured} }

// riding is the demo with a rider, a road and a drive that are known exactly.
func riding(t testing.TB) *document.Document {
	d := documenttest.Demo(t)
	d.Riders[0].Effort = &document.Effort{Power: exactly(150), Cadence: exactly(70), Least: exactly(40), Highest: exactly(110), Walking: exactly(1.2), Top: 12}
	d.Show.Road = &document.Road{
		Slope: exactly(6), Climb: 1000, Surface: "gravel", Wind: exactly(0), Altitude: exactly(0), Temperature: exactly(15), Drag: exactly(0.6), Rolling: exactly(0.015),
	}
	for i := range d.Builds {
		d.Builds[i].RollOut = exactly(2250)
		d.Builds[i].Losses = &document.DriveLosses{Efficiency: exactly(0.9), Power: 150}
	}
	d.Days = []document.Day{aDay(60)}
	return d
}

// The balance of forces, from the figures that are told: with an efficiency of 0.9
// 150 W move m g (sin + c cos) and the air at the speed told. Martin et al. (1998).
func TestClimbBalances(t *testing.T) {
	c := rooms.RidesOf(evaluated(t, riding(t))).Climb()
	for _, s := range c.Sides {
		if !s.OK || s.State != document.Ridden || s.Mode != "pedalling" {
			t.Fatalf("%+v", s)
		}
		v, m := s.Speed, s.Mass/1000
		cos := 1 / math.Sqrt(1+0.06*0.06)
		need := (m*9.81*cos*(0.06+0.015) + 0.5*1.225*0.6*v*v + 0.091 + 0.0087*v) * v
		if math.Abs(need-150*0.9) > 0.15 {
			t.Errorf("%s: %.2f W at %.3f m/s, want 135 W", s.Name, need, v)
		}
		length := 1000 / (0.06 * cos)
		if math.Abs(s.Length-length) > 0.1 || math.Abs(s.Time-length/v) > 1 {
			t.Errorf("%s: %.1f m in %.1f s", s.Name, s.Length, s.Time)
		}
		if s.Lift == nil || s.Slip == nil || s.Steepest == nil || s.Worth == nil {
			t.Errorf("%s: limits and worth are not told: %+v", s.Name, s)
		}
		// Only the masses are not exact.
		if s.TimePlus <= 0 || s.TimePlus > 0.05*s.Time || len(s.First) != 1 || s.First[0].Key != "mass" {
			t.Errorf("%s: ± %v s, %+v", s.Name, s.TimePlus, s.First)
		}
	}
	d := c.Difference
	if math.Abs(d.Mass+d.Loss-d.Time) > 0.11 || d.Points != 0 || math.Abs(c.Sides[1].Time-c.Sides[0].Time-d.Time) > 0.11 {
		t.Errorf("%+v", d)
	}
	// One kilogram more on the first build: its worth, and the difference is less by it.
	more := riding(t)
	for i := range more.Builds[0].Parts {
		if p := &more.Builds[0].Parts[i]; p.ID == "main-frame" {
			p.Mass += 1000
		}
	}
	m := rooms.RidesOf(evaluated(t, more)).Climb()
	if by := m.Sides[0].Time - c.Sides[0].Time; math.Abs(by-c.Sides[0].Worth.Kilogram) > 0.02*by+0.1 {
		t.Errorf("a kilogram costs %v s, told is %v s", by, c.Sides[0].Worth.Kilogram)
	}
	// With the mass at which it turns both take as long.
	for i := range more.Builds[1].Parts {
		if p := &more.Builds[1].Parts[i]; p.ID == "main-frame" {
			p.Mass += *m.Difference.Turn
		}
	}
	if turned := rooms.RidesOf(evaluated(t, more)).Climb(); math.Abs(turned.Difference.Time) > 0.3 {
		t.Errorf("with %v g more the second side still takes %v s longer", *m.Difference.Turn, turned.Difference.Time)
	}
}

// From rest to rest the energies of a day add up, and so does its way.
func TestDayBalances(t *testing.T) {
	d := riding(t)
	c := rooms.RidesOf(evaluated(t, d)).Climb()
	if c.Day == nil || len(c.Day.Sides) != 2 || len(c.Day.Profile) != 61 {
		t.Fatalf("%+v", c.Day)
	}
	length := 0.0
	for _, s := range d.Days[0].Stretches {
		length += s.Length
	}
	if math.Abs(c.Day.Length-length) > 0.1 {
		t.Errorf("%v m, want %v m", c.Day.Length, length)
	}
	for _, s := range c.Day.Sides {
		e := s.Energy
		if sum := e.Drive + e.Air + e.Rolling + e.Bearings + e.Climbing + e.Brakes; math.Abs(sum-e.Pedals) > 0.002*e.Pedals+1 {
			t.Errorf("%.1f kJ at the pedals, %.1f kJ used", e.Pedals, sum)
		}
		times, used := 0.0, 0.0
		for _, m := range s.Modes {
			times += m.Time
		}
		for _, g := range s.Gears {
			used += g.Share
		}
		if math.Abs(times-s.Time) > 1 || math.Abs(used-1) > 0.01 || s.Words == "" {
			t.Errorf("%v s of %v s, shares of gears %v", times, s.Time, used)
		}
	}
	if x := c.Day.Difference; x == nil || math.Abs(x.Mass+x.Loss-x.Time) > 0.11 || x.Words == "" {
		t.Errorf("%+v", x)
	}
	// Where no gear is low enough one walks, at the speed typed.
	d.Days[0].Stretches = append(d.Days[0].Stretches, document.Stretch{Length: 120, Slope: 35})
	w := rooms.RidesOf(evaluated(t, d)).Climb().Day.Sides[0]
	if w.Walked != 120 || math.Abs(w.Time-c.Day.Sides[0].Time-100) > 0.2 || !strings.Contains(w.Words, "On foot") {
		t.Errorf("%v m on foot, %v s longer, %s", w.Walked, w.Time-c.Day.Sides[0].Time, w.Words)
	}
}

// A build and its copy differ by nothing, whatever is typed and what is typical.
func TestCopyRidesTheSame(t *testing.T) {
	for name, d := range map[string]*document.Document{"typical": documenttest.Demo(t), "typed": riding(t)} {
		d.Days = []document.Day{aDay(20)}
		if name == "typed" {
			d.Builds[0].RollOut.HalfWidth, d.Builds[0].Losses.Efficiency.HalfWidth, d.Builds[0].Losses.Power = 10, 0.05, 100
			d.Riders[0].Effort.Power.HalfWidth = 20
		}
		d.CopyBuild("gearbox", "Copy")
		d.Show.Compare = []string{"gearbox", d.Builds[3].ID}
		e := evaluated(t, d)
		for _, c := range append(rooms.RidesOf(e).Gears().Difference, rooms.RidesOf(e).Climb().Difference.Figures...) {
			if c.Verdict != report.Same {
				t.Errorf("%s: of a build and its copy %s differs: %+v", name, c.Key, c)
			}
		}
		c := rooms.RidesOf(e).Climb()
		for _, x := range []*rooms.ClimbDifference{c.Difference, c.Day.Difference} {
			if x.Verdict != report.Same || x.TimePlus != 0 || x.MassPlus != 0 || x.LossPlus != 0 || x.Mass != 0 || x.Loss != 0 {
				t.Errorf("%s: %+v", name, x)
			}
		}
	}
}

// What two builds owe to one figure cancels; what only one has does not.
func TestClimbDoubtCancels(t *testing.T) {
	d := documenttest.Demo(t)
	c := rooms.RidesOf(evaluated(t, d)).Climb()
	if !(c.Difference.TimePlus < c.Sides[0].TimePlus/2) {
		t.Errorf("± %v s of the difference, ± %v s of one side", c.Difference.TimePlus, c.Sides[0].TimePlus)
	}
	for _, m := range c.Difference.First {
		if m.Key == "power" && m.Share > 0.1 {
			t.Errorf("the rider's power is worth measuring first: %+v", c.Difference.First)
		}
	}
	g := rooms.RidesOf(evaluated(t, d)).Gears()
	if len(g.First) == 0 || g.First[0].Then >= g.Difference[len(g.Difference)-1].Plus {
		t.Errorf("%+v", g.First)
	}
	// Losses tell what the power is lost by, and add up to all of it.
	for _, b := range g.Builds {
		sum := 0.0
		for _, l := range b.Losses {
			sum += l.Percent
		}
		if math.Abs(sum-100*(1-b.Efficiency)) > 0.05 {
			t.Errorf("%s loses %.2f %%, its parts %.2f %%", b.Name, 100*(1-b.Efficiency), sum)
		}
	}
}

// fields are where something belongs, which is no text.
var fields = regexp.MustCompile(`"field":"[a-z_0-9.]*"`)

// Both languages say every key, and the words follow the figures.
func TestClimbSpeaksBothLanguages(t *testing.T) {
	german := german(t)
	typed := riding(t)
	typed.Builds[0].Losses = &document.DriveLosses{}
	for _, of := range document.StageLosses {
		typed.Builds[0].Losses.Stages = append(typed.Builds[0].Losses.Stages, document.StageLoss{Of: of, Value: 0.05, HalfWidth: 0.01})
	}
	typed.Builds[0].DriveLimits = &document.DriveLimits{LeastRatio: 5, CrankTorque: 20, HubTorque: 10}
	typed.Show.Road.Wind = exactly(20)
	alone := documenttest.Demo(t)
	alone.Show.Loads, alone.Days = nil, []document.Day{aDay(5)}
	for _, w := range []*words.Words{nil, german} {
		for _, d := range []*document.Document{documenttest.Demo(t), typed, alone} {
			e := report.Weigh(d, w)
			g, c := rooms.RidesOf(e).Gears(), rooms.RidesOf(e).Climb()
			out, err := json.Marshal([]any{g, c})
			if err != nil {
				t.Fatal(err)
			}
			for _, key := range []string{"gears.", "climb.", "{", "effort.", "drive."} {
				if key == "{" {
					if strings.Contains(g.Words+c.Words, key) {
						t.Errorf("%s %s", g.Words, c.Words)
					}
				} else if i := strings.Index(fields.ReplaceAllString(string(out), ""), `"`+key); i >= 0 {
					t.Errorf("a key is told: %.80s", fields.ReplaceAllString(string(out), "")[i:])
				}
			}
			if c.Words == "" || c.Caution == "" || g.Caution == "" || g.Words == "" {
				t.Error("nothing is said")
			}
		}
	}
	// Beyond what makers permit there is a warning at the field, and a headwind that is
	// faster than the bike has one.
	e := evaluated(t, typed)
	fields := map[string]bool{}
	for _, p := range append(rooms.RidesOf(e).Gears().Builds[0].Problems, rooms.RidesOf(e).Climb().Sides[0].Problems...) {
		fields[p.Field] = true
	}
	for _, f := range []string{"drive_limits.least_ratio", "drive_limits.crank_torque_nm", "drive_limits.hub_torque_nm", "show.road.wind_m_s"} {
		if !fields[f] {
			t.Errorf("no warning at %s: %v", f, fields)
		}
	}
	// Nobody rides: somebody typical does, and it is said.
	s := rooms.RidesOf(evaluated(t, alone)).Climb().Sides[0]
	if !s.OK || len(s.Problems) == 0 || s.Mass < 80000 {
		t.Errorf("%+v", s)
	}
}

// What may not be is told of the document, and what is typical taken in its place.
func TestClimbOfBadInput(t *testing.T) {
	bad := riding(t)
	bad.Riders[0].Effort.Power = exactly(0)
	bad.Show.Road.Slope, bad.Show.Road.Wind = exactly(100), exactly(-1e9)
	bad.Builds[0].RollOut, bad.Builds[0].Losses.Efficiency = exactly(0), exactly(7)
	bad.Days[0].Stretches[0].Slope = 1e6
	e := evaluated(t, bad)
	if len(e.Report.Problems) != 6 {
		t.Errorf("%d problems: %v", len(e.Report.Problems), e.Report.Problems)
	}
	c := rooms.RidesOf(e).Climb()
	s := c.Sides[0]
	if !s.OK || !(s.Time > 0) {
		t.Fatalf("%+v", s)
	}
	for _, in := range s.Inputs {
		if typical := in.Key == "power" || in.Key == "power-for" || in.Key == "slope" || in.Key == "wind"; in.Typical != typical {
			t.Errorf("%+v", in)
		}
	}
	if len(c.Day.Profile) != 60 || !c.Day.Sides[0].OK {
		t.Errorf("%d points, %+v", len(c.Day.Profile), c.Day.Sides[0].OK)
	}
}

// A track that goes up and comes back: as far and as high as it is, and as much
// down as up.
func TestTrackUpAndBack(t *testing.T) {
	var track rooms.Track
	for i := range 401 {
		// 0.001 degrees of latitude are 111.2 m.
		track.Places = append(track.Places, [3]float64{46 + 0.001*float64(min(i, 400-i)), 8, 500 + 5*float64(min(i, 400-i)) + 3*math.Sin(float64(7*i))})
	}
	track.Surface = "gravel"
	text, err := json.Marshal(track)
	if err != nil {
		t.Fatal(err)
	}
	s, problem := rooms.StretchesOf(text, nil)
	if problem != nil {
		t.Fatal(problem)
	}
	fall := 0.0
	for _, x := range s.Stretches {
		fall -= min(x.Length*x.Slope/100, 0)
		if x.Surface != "gravel" {
			t.Error(x)
		}
	}
	if math.Abs(s.Length-400*111.19) > 120 || math.Abs(s.Ascent-1000) > 30 || math.Abs(fall-s.Ascent) > 15 || len(s.Stretches) > 200 || s.Points != 401 {
		t.Errorf("%v m, %v m up, %v m down, %d stretches of %d points", s.Length, s.Ascent, fall, len(s.Stretches), s.Points)
	}
	for _, bad := range []string{`{`, `[]`, `{"points": [[0,0]]}`, `{"points": [[0,0],[0,5]]}`, `{"places": [[91,0,0],[92,0,0]]}`, `{"places": "` + strings.Repeat("x", 17<<20) + `"}`} {
		if _, problem := rooms.StretchesOf([]byte(bad), nil); problem == nil || problem.Field != "track" {
			t.Errorf("%.40s is a track", bad)
		}
	}
}

// A speed on foot has a ± like all else, also one that a document says without;
// with one rider on both sides what is walked by both cancels.
func TestWalkingWithin(t *testing.T) {
	d := riding(t)
	d.Days = []document.Day{{ID: "wall", Name: "Wall", Stretches: []document.Stretch{{Length: 600, Slope: 40, Surface: "sand"}}}}
	for _, c := range []struct {
		walking *document.Known
		bare    float64
		within  float64 // m/s
		basis   string
	}{{exactly(1.2), 0, 0, "measured"}, {&document.Known{Value: 1.2, HalfWidth: 0.3, Basis: document.Guessed}, 0, 0.3, "guessed"}, {nil, 0, 0.25, "typical"}, {nil, 1.2, 0.3, "boundless"}} {
		e := d.Riders[0].Effort
		e.Walking, e.Bare = c.walking, c.bare
		answer := rooms.RidesOf(evaluated(t, d)).Climb()
		s := answer.Day.Sides[0]
		v := 1.2
		if c.basis == "typical" {
			v = 1
		}
		// Of a single source the whole half-width, and no more.
		want := s.Time * c.within / v
		if s.Walked != 600 || math.Abs(s.Time-600/v) > 0.1 || math.Abs(s.TimePlus-want) > 0.2 {
			t.Errorf("%+v: %v ± %v s, want ± %v s", c, s.Time, s.TimePlus, want)
		}
		for _, in := range answer.Sides[0].Inputs {
			if in.Key == "walking" && (in.Basis != c.basis || in.Half != c.within || in.Value != v) {
				t.Errorf("%+v: %+v", c, in)
			}
		}
		if c.within > 0 && !slices.ContainsFunc(answer.Sides[0].Inputs, func(in rooms.Input) bool { return in.Key == "walking" && in.Label == "Speed on foot" }) {
			t.Error("the speed on foot is not named")
		}
		if x := answer.Day.Difference; x == nil || x.TimePlus != 0 {
			t.Errorf("both walk: %+v", x)
		}
	}
}

func FuzzStretches(f *testing.F) {
	f.Add(`{"points":[[0,100],[1000,150],[2000,120]],"surface":"gravel"}`)
	f.Add(`{"places":[[47,8,500],[47.01,8,560],[-90,720,1e308]]}`)
	f.Add(`{"points":[[1e308,-1e308],[1e300,1e308]]}`)
	f.Fuzz(func(t *testing.T, text string) {
		s, problem := rooms.StretchesOf([]byte(text), nil)
		if problem != nil {
			return
		}
		day := document.Document{Days: []document.Day{{ID: "d", Name: "D", Stretches: s.Stretches}}, Show: document.Show{Mass: "kg", Length: "mm"}, Builds: []document.Build{{ID: "b", Name: "B"}}}
		for _, p := range document.Check(&day) {
			if p.Day != "" {
				t.Errorf("%s: %s", p.Field, p.Message)
			}
		}
	})
}

func BenchmarkGearsAndClimb(b *testing.B) {
	d := documenttest.Demo(b)
	d.Days = []document.Day{aDay(200)}
	e := evaluated(b, d)
	b.Run("gears", func(b *testing.B) {
		for b.Loop() {
			rooms.RidesOf(e).Gears()
		}
	})
	b.Run("climb", func(b *testing.B) {
		for b.Loop() {
			rooms.RidesOf(e).Climb()
		}
	})
}

// What one chapter has found is there for the other, in whatever order and however
// often they are asked.
func TestRidesAskedAgain(t *testing.T) {
	d := documenttest.Demo(t)
	half := 0.01
	for i := range d.Builds {
		d.Builds[i].Losses = &document.DriveLosses{Stages: []document.StageLoss{
			{Of: "other-share", Value: 0.01, HalfWidth: half, Basis: "guessed"}, {Of: "other-power", Value: 1, HalfWidth: half, Basis: "guessed"},
		}}
	}
	e := evaluated(t, d)
	gears, climb := rooms.RidesOf(e).Gears(), rooms.RidesOf(e).Climb()
	both := rooms.RidesOf(e)
	for _, ask := range []string{"gears", "climb", "climb", "gears"} {
		if ask == "gears" {
			if g := both.Gears(); !reflect.DeepEqual(g, gears) {
				t.Errorf("asked again, the gears are others: %+v, not %+v", g, gears)
			}
		} else if c := both.Climb(); !reflect.DeepEqual(c, climb) {
			t.Errorf("asked again, the climb is another: %+v, not %+v", c, climb)
		}
	}
	if both.Of(evaluated(t, d)) || !both.Of(e) {
		t.Error("they belong to another evaluation")
	}
}
