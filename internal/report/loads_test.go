package report_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/geometry"
	"steelyard/internal/report"
	"steelyard/internal/rider"
	"steelyard/internal/schematest"
	"steelyard/internal/tables"
	"steelyard/internal/words"
)

// cell finds a figure of a state.
func cell(t testing.TB, s *report.Side, state document.State, left document.Supplies, key string) report.Figure {
	t.Helper()
	for _, c := range s.States {
		if c.State != state || c.Supplies != left {
			continue
		}
		for _, f := range c.Figures {
			if f.Key == key {
				return f
			}
		}
	}
	t.Fatalf("no %s, %s, %s", state, left, key)
	return report.Figure{}
}

// weight adds up a load by hand: bags, and goods that are packed.
func weight(l *document.Load, counts func(*document.Good) bool) float64 {
	sum := 0.0
	for i := range l.Goods {
		if g := &l.Goods[i]; g.In != "" && counts(g) {
			sum += float64(g.Quantity) * g.Mass
		}
	}
	return sum
}

func TestStatesAddUp(t *testing.T) {
	for _, d := range []*document.Document{laden(), documenttest.Demo(t)} {
		r := report.Weigh(d, nil).Report
		if e := errorsOf(r); len(e) > 0 {
			t.Fatal(e)
		}
		if len(r.Sides) != 2 {
			t.Fatalf("%d sides", len(r.Sides))
		}
		for i := range r.Sides {
			s, l := &r.Sides[i], d.Load(d.Show.Loads[i])
			b, who := d.Build(s.Build), d.Rider(l.Rider)
			var bareSum, ready, bags float64
			for _, p := range b.Parts {
				ready += p.Mass * float64(p.Quantity)
				if document.OfBareBike(p.Kind, document.GroupOf(p.Kind)) {
					bareSum += p.Mass * float64(p.Quantity)
				}
			}
			for _, b := range l.Bags {
				bags += b.Mass
			}
			goods := weight(l, func(*document.Good) bool { return true })
			supplies := weight(l, func(g *document.Good) bool { return g.Supply != "" })
			body := who.Mass + who.Clothing + who.Shoes
			if supplies == 0 || goods == supplies {
				t.Fatal("the load shows nothing")
			}
			for n, left := range document.SupplyLevels {
				used := supplies * float64(n) / 2
				for state, want := range map[document.State]float64{
					document.Bare: bareSum, document.Ready: ready, document.Loaded: ready + bags + goods - used, document.Ridden: ready + bags + goods - used + body,
				} {
					near(t, fmt.Sprint(s.Build, " ", state, " ", left), cell(t, s, state, left, "total").Value, want, 0.01)
				}
			}
		}
	}
}

// The table of states is reckoned in one walk from the covariance of the first
// moments; the figures of the state shown are those of package mass. They are
// the same, doubt and all.
func TestStatesAreTheFiguresShown(t *testing.T) {
	for _, state := range document.States {
		for _, left := range document.SupplyLevels {
			d := withState(laden(), state, left)
			r := report.Weigh(d, nil).Report
			s := &r.Sides[0]
			if s.State != state || s.Supplies != left {
				t.Fatalf("%s, %s is told as %s, %s", state, left, s.State, s.Supplies)
			}
			for _, key := range []string{"total", "centre_x", "centre_y", "centre_z", "front_load", "rear_load", "front_share"} {
				got, want := cell(t, s, state, left, key), figure(t, &r.Builds[0], key)
				step := 0.011
				if key == "front_share" {
					step = 0.00011
				}
				near(t, fmt.Sprint(state, " ", left, " ", key), got.Value, want.Value, step)
				near(t, fmt.Sprint(state, " ", left, " ± of ", key), got.Plus, want.Plus, step)
			}
			if diff := cmp.Diff(r.Builds[0].Figures, s.Figures); diff != "" {
				t.Error(diff)
			}
		}
	}
}

// What two builds both carry drops out of their difference, its doubt included.
func TestCommonLoadCancels(t *testing.T) {
	ready := report.Weigh(withState(laden(), document.Ready, document.Full), nil).Report
	want := change(t, ready.Difference, "total")
	for _, state := range []document.State{document.Loaded, document.Ridden} {
		for _, left := range document.SupplyLevels {
			r := report.Weigh(withState(laden(), state, left), nil).Report
			got := change(t, r.Difference, "total")
			near(t, "delta", got.Delta, want.Delta, 0.011)
			near(t, "its ±", got.Plus, want.Plus, 0.011)
			if plus := figure(t, &ready.Builds[0], "total").Plus; left == document.Full && figure(t, &r.Builds[0], "total").Plus < plus+10 {
				t.Error("the load has no doubt that could cancel")
			}
			for _, p := range r.Difference.Parts {
				if strings.Contains(p.A+p.B, ":") && p.What != report.Moved {
					t.Errorf("%s, %s", p.Name, p.What)
				}
			}
		}
	}
}

// Two loads on one build: the difference is that of the loads, and what both
// have drops out, the rider with it.
func TestTwoLoadsOnOneBuild(t *testing.T) {
	d := laden()
	c := d.CopyLoad("l", "Short tour")
	c.Goods[0].Mass = 1500
	c.Goods[1].In = "left"
	c.Goods = c.Goods[:3]
	short := c.ID
	d.Show.Compare, d.Show.Loads = []string{"a", "a"}, []string{"l", short}
	r := report.Weigh(withState(d, document.Ridden, document.Full), nil).Report
	if e := errorsOf(r); len(e) > 0 || len(r.Sides) != 2 {
		t.Fatal(e, len(r.Sides))
	}
	if r.Sides[0].Name != "Tour" || r.Sides[1].Name != "Short tour" || r.Sides[1].Load != short || len(r.Builds) != 2 {
		t.Errorf("%s, %s, %s, %d builds", r.Sides[0].Name, r.Sides[1].Name, r.Sides[1].Load, len(r.Builds))
	}
	x := r.Difference
	if x.A != "a" || x.B != "a" || x.LoadA != "l" || x.LoadB != short || x.StateB != document.Ridden {
		t.Errorf("%+v", x)
	}
	got := change(t, x, "total")
	near(t, "delta", got.Delta, 1500-2400-2*1000-500, 0.01)
	// By hand: two masses of one tent, ± 40 g each; water, two pieces; fuel.
	near(t, "its ±", got.Plus, 2/math.Sqrt(3)*math.Sqrt(40*40+40*40+80*80+40*40), 0.01)
	var told []string
	for _, p := range x.Parts {
		told = append(told, fmt.Sprint(p.What, " ", p.A, p.B))
	}
	slices.Sort(told)
	want := []string{"changed good:tentgood:tent", "moved good:clothesgood:clothes", "removed good:fuel", "removed good:water"}
	if diff := cmp.Diff(want, told); diff != "" {
		t.Error(diff)
	}
	if !strings.Contains(x.Summary, "Short tour") || !strings.Contains(x.Summary, "with Tour") {
		t.Errorf("the loads are not named: %s", x.Summary)
	}
	table := string(tables.DifferenceCSV(r, tables.Export{}))
	if !strings.Contains(table, "Tour,Short tour") || !strings.Contains(table, "g,2400,1500,-900") {
		t.Errorf("the table does not set the loads side by side:\n%s", table)
	}

	// The same load twice is one side, and no difference.
	d.Show.Loads = []string{"l", "l"}
	if r := report.Weigh(d, nil).Report; len(r.Sides) != 1 || r.Difference != nil {
		t.Errorf("%d sides", len(r.Sides))
	}
}

// A state that the document cannot reach is the fullest below it.
func TestStatesFallBack(t *testing.T) {
	for _, c := range []struct {
		spoil       func(*document.Document)
		shown, want document.State
		states      int
	}{
		{func(d *document.Document) {}, document.Ridden, document.Ridden, 12},
		{func(d *document.Document) { d.Loads[0].Rider = "" }, document.Ridden, document.Loaded, 9},
		{func(d *document.Document) { d.Riders[0].Stature = 900 }, document.Ridden, document.Loaded, 9},
		{func(d *document.Document) { d.Riders[0].Mass = -1 }, document.Ridden, document.Loaded, 9},
		{func(d *document.Document) { d.Show.Loads = nil }, document.Ridden, document.Ready, 6},
		{func(d *document.Document) { d.Show.Loads = []string{"x", ""} }, document.Loaded, document.Ready, 6},
		{func(d *document.Document) {}, "wet", document.Ready, 12},
		{func(d *document.Document) {}, "", document.Ready, 12},
		{func(d *document.Document) {}, document.Bare, document.Bare, 12},
	} {
		d := withState(laden(), c.shown, "")
		c.spoil(d)
		r := report.Weigh(d, nil).Report
		if s := &r.Sides[0]; s.State != c.want || r.Builds[0].State != c.want || len(s.States) != c.states {
			t.Errorf("%s is told as %s and %s with %d states, want %s with %d", c.shown, s.State, r.Builds[0].State, len(s.States), c.want, c.states)
		}
	}
}

// A bare bike is without what comes along; those lines are told all the same.
func TestBare(t *testing.T) {
	d := laden()
	b := &d.Builds[0]
	b.Parts = slices.DeleteFunc(b.Parts, func(p document.Part) bool { return !document.OfBareBike(p.Kind, document.GroupOf(p.Kind)) })
	bottle := vague("bottle", 750, 50, document.MainFrame, 600, 0, 500)
	bottle.Kind = "water"
	lock := vague("lock", 900, 50, document.MainFrame, 500, 0, 600)
	lock.Kind = "lock"
	b.Parts = append(b.Parts, bottle, lock)
	full := report.Weigh(withState(d, document.Ready, document.Full), nil).Report
	half := report.Weigh(withState(d, document.Ready, document.Half), nil).Report
	bare := report.Weigh(withState(d, document.Bare, document.Full), nil).Report
	total := func(r *report.Report) float64 { return figure(t, &r.Builds[0], "total").Value }
	near(t, "bare", total(full)-total(bare), 1650, 0.01)
	near(t, "half the water", total(full)-total(half), 375, 0.01)
	n := len(bare.Builds[0].Parts)
	for i, p := range bare.Builds[0].Parts {
		if p.Off != (i >= n-2) || !p.OK || p.Mass == 0 {
			t.Errorf("%+v", p)
		}
	}
	if strings.Contains(bare.Builds[0].Summary, "left out") {
		t.Error(bare.Builds[0].Summary)
	}
}

// As supplies are used up the bike gets lighter, on a straight way from one end
// to the other, and the ends are those of the table of states.
func TestPaths(t *testing.T) {
	r := report.Weigh(withState(laden(), document.Ridden, document.Half), nil).Report
	s := &r.Sides[0]
	var keys []string
	for _, p := range s.Path {
		keys = append(keys, p.Supply)
		for i := 1; i < len(p.Points); i++ {
			if p.Points[i].Total >= p.Points[i-1].Total || p.Points[i].Left >= p.Points[i-1].Left {
				t.Errorf("%s: from %+v to %+v", p.Supply, p.Points[i-1], p.Points[i])
			}
		}
		first, last := p.Points[0], p.Points[len(p.Points)-1]
		for _, q := range p.Points {
			// A point of a line divides its two ends: (q - first) × (last - first) = 0.
			for i := range 3 {
				j := (i + 1) % 3
				cross := (q.Centre[i]-first.Centre[i])*(last.Centre[j]-first.Centre[j]) - (q.Centre[j]-first.Centre[j])*(last.Centre[i]-first.Centre[i])
				near(t, p.Supply+" leaves its line", cross, 0, 1)
			}
		}
		near(t, "full", first.Total, cell(t, s, document.Ridden, document.Full, "total").Value, 0.011)
	}
	if diff := cmp.Diff([]string{"all", "water", "food", "fuel"}, keys); diff != "" {
		t.Fatal(diff)
	}
	all := s.Path[0].Points
	for i, left := range map[int]document.Supplies{0: document.Full, len(all) / 2: document.Half, len(all) - 1: document.Empty} {
		near(t, "total", all[i].Total, cell(t, s, document.Ridden, left, "total").Value, 0.011)
		for k, key := range []string{"centre_x", "centre_y", "centre_z"} {
			near(t, key, all[i].Centre[k], cell(t, s, document.Ridden, left, key).Value, 0.011)
		}
		near(t, "share", all[i].FrontShare, cell(t, s, document.Ridden, left, "front_share").Value, 0.00011)
	}
	if p := report.Weigh(withState(laden(), document.Ready, ""), nil).Report.Sides[0].Path; len(p) != 0 {
		t.Errorf("nothing is used up on a bike without its load: %+v", p)
	}
}

func TestBagsAndGoods(t *testing.T) {
	d := laden()
	d.Loads[0].Bags[0].Permitted, d.Loads[0].Bags[0].Volume = 4000, 7
	d.Loads[0].Bags[2].Permitted, d.Loads[0].Bags[2].Volume = 0, 0
	r := report.Weigh(withState(d, document.Ready, document.Empty), nil).Report // whatever is shown, a load is told in full
	s := &r.Sides[0]
	left, bar := &s.Bags[0], &s.Bags[2]
	near(t, "left", left.Goods, 2400+3*800, 0.01)
	near(t, "its ±", left.GoodsPlus, 2/math.Sqrt(3)*math.Hypot(40, 3*40), 0.01)
	near(t, "empty", left.Mass, 900, 0.01)
	if left.Pieces != 4 || left.Volume != 8 || !left.OK {
		t.Errorf("%+v", left)
	}
	if h := left.Headroom; h == nil || h.Verdict != "over" || !h.Sure || h.Left != -800 || h.Bag != "left" || !strings.Contains(h.Text, "Bag left") || !strings.Contains(h.Text, "0.80 kg") && !strings.Contains(h.Text, "0.8") {
		t.Errorf("%+v", h)
	}
	if h := left.Room; h == nil || h.Verdict != "over" || h.Left != -1 || h.Unit != "l" || !strings.Contains(h.Text, "8\u00a0l") {
		t.Errorf("%+v", h)
	}
	if bar.Headroom != nil || bar.Room != nil {
		t.Error("a bag without limits is judged")
	}
	bike, _ := geometry.Pose(&d.Builds[0])
	at := bike.Stations["rear-pannier-left"].Points[0]
	near(t, "place", s.Goods[0].Place[1], at.Y*1000, 0.01)
	if g := s.Goods[5]; !g.OK || g.Bag != "" || g.Mass != 600 || g.Place != (document.Vec3{}) {
		t.Errorf("a good at home: %+v", g)
	}
	if g := s.Goods[2]; g.Mass != 2400 || g.Volume != 6 {
		t.Errorf("three pieces: %+v", g)
	}
}

// A cargo cage carries what hangs on its leg, bag and goods, and not what hangs
// on the other.
func TestCagesAreRated(t *testing.T) {
	d := laden()
	l := &d.Loads[0]
	for i, y := range []float64{145, -145} {
		l.Bags[i].Station, l.Bags[i].Offset, l.Bags[i].Carrier = "fork-lower", document.Vec3{0, y, 40}, document.ForkLower
	}
	l.Bags[2].Station, l.Bags[2].Carrier = "bottle-under", document.MainFrame
	d.Builds[0].Ratings = []document.Rating{{What: "fork-cage-left", Limit: 3000}, {What: "fork-cage-right", Limit: 3000}, {What: "down-tube-cage", Limit: 3000}}
	s := &report.Weigh(d, nil).Report.Sides[0]
	want := []float64{900 + 2400 + 3*800, 900 + 1400 + 500, 400 + 2*1000}
	for i, h := range s.Ratings.List {
		near(t, h.What, h.Load, want[i], 0.01)
	}
	if len(s.Ratings.List) != 3 || s.Ratings.List[0].Verdict != "over" || s.Ratings.List[2].Verdict != "ok" {
		t.Errorf("%+v", s.Ratings.List)
	}
}

// A rack carries bags, goods and what else hangs on it; a tyre its wheel's load;
// all of it is counted full and ridden, whatever is shown.
func TestRatings(t *testing.T) {
	d := laden()
	top := vague("top", 300, 10, document.MainFrame, 0, 0, 0)
	top.Kind, top.At, top.Station = "bag", nil, "rear-rack-deck"
	d.Builds[0].Parts = append(d.Builds[0].Parts, top)
	d.Builds[0].Ratings = []document.Rating{{What: "rear-rack", Limit: 8000}, {What: "total", Limit: 200000}, {What: "front-tyre", Limit: 30000}, {What: "rear-rim"}}
	r := report.Weigh(withState(d, document.Ready, document.Empty), nil).Report
	s := &r.Sides[0]
	if s.Ratings == nil || s.Ratings.State != document.Ridden || !s.Ratings.Rider || len(s.Ratings.List) != 3 {
		t.Fatalf("%+v", s.Ratings)
	}
	total, rack, tyre := &s.Ratings.List[0], &s.Ratings.List[1], &s.Ratings.List[2]
	near(t, "total", total.Load, cell(t, s, document.Ridden, document.Full, "total").Value, 0.011)
	near(t, "tyre", tyre.Load, cell(t, s, document.Ridden, document.Full, "front_load").Value, 0.011)
	near(t, "rack", rack.Load, 300+900+900+2400+3*800+1400+500, 0.01)
	if total.Verdict != "ok" || rack.Verdict != "over" || !rack.Sure || tyre.Verdict != "over" {
		t.Errorf("%s, %s, %s", total.Verdict, rack.Verdict, tyre.Verdict)
	}
	if !strings.Contains(rack.Text, "Rear rack") || !strings.Contains(rack.Text, "0.80") {
		t.Errorf("the excess is not told: %s", rack.Text)
	}
	d.Loads[0].Rider = ""
	if s := &report.Weigh(d, nil).Report.Sides[0]; s.Ratings.Rider || s.Ratings.State != document.Loaded {
		t.Errorf("%+v", s.Ratings)
	}
}

func TestHandling(t *testing.T) {
	d := withState(laden(), document.Ready, document.Full)
	s := &report.Weigh(d, nil).Report.Sides[0]
	h := s.Handling
	if h == nil || h.State != document.Ridden {
		t.Fatalf("%+v", h)
	}
	near(t, "left", h.Left, 900+2400+3*800, 0.01)
	near(t, "right", h.Right, 900+1400+500, 0.01)
	if h.Lean == nil || h.Lean.Value <= 0 || h.Rebalance == nil || h.Rebalance.From != "left" {
		t.Fatalf("a load on the left: %+v, %+v", h.Lean, h.Rebalance)
	}
	near(t, "lean", math.Tan(h.Lean.Value*math.Pi/180), cell(t, s, document.Ridden, document.Full, "centre_y").Value/cell(t, s, document.Ridden, document.Full, "centre_z").Value, 1e-4)
	// Moved over, it is balanced.
	near(t, "rebalance", h.Rebalance.Mass*h.Rebalance.Apart, cell(t, s, document.Ridden, document.Full, "total").Value*cell(t, s, document.Ridden, document.Full, "centre_y").Value, 1500)
	for i, b := range h.Braking {
		if b.Gradient != 0 {
			continue
		}
		bike, _ := geometry.Pose(&d.Builds[0])
		x, z := cell(t, s, document.Ridden, document.Full, "centre_x").Value, cell(t, s, document.Ridden, document.Full, "centre_z").Value
		near(t, "braking", b.Lift.Value, (bike.FrontContact.X*1000-x)/z, 1e-4)
		if i == 0 || h.Braking[i-1].First.Value >= b.First.Value {
			t.Error("braking downhill is no harder")
		}
	}
	if c := h.Climb; c == nil || c.Grip != document.DefaultGrip || c.Slip == nil || c.First.Value != math.Min(c.Lift.Value, c.Slip.Value) {
		t.Errorf("%+v", c)
	}
	for _, l := range h.Slopes {
		near(t, "loads on a slope", l.Front+l.Rear, cell(t, s, document.Ridden, document.Full, "total").Value*math.Cos(math.Atan(l.Gradient)), 0.03)
	}
	d.Show.Grip, d.Show.State = 0.3, document.Loaded
	h = report.Weigh(d, nil).Report.Sides[0].Handling
	if h.State != document.Loaded || h.Climb.Grip != 0.3 || !h.Climb.Slips {
		t.Errorf("%+v", h.Climb)
	}
	// Both brakes and tyres that hold with 0.3 of their load slow it by 0.3 g,
	// however far off the rear wheel is from lifting (Newton).
	for _, b := range h.Braking {
		if b.Gradient == 0 && (b.First != (report.Value{Value: 0.3}) || !b.Slips || !b.Decided || !(b.Lift.Value > 0.3)) {
			t.Errorf("with a grip of 0.3: %+v", b)
		}
	}
}

func TestRiderIsTold(t *testing.T) {
	r := report.Weigh(withState(laden(), document.Ridden, document.Full), nil).Report
	s := &r.Sides[0]
	if s.Body == nil || s.Rider != "r" || s.Body.Posture != "leaned" || s.Body.Note != rider.NoteSeated {
		t.Fatalf("%+v", s.Body)
	}
	sum := 0.0
	for _, x := range s.Body.Segments {
		sum += x.Mass
	}
	near(t, "segments", sum, 70000+1900+850, 0.1)
	near(t, "body", s.Body.Mass, 70000+1900+850, 0.01)
	// A kilogram of the body, a quarter of the clothes and 15 % of the shoes, each
	// rectangular: twice the root of the sum of their variances (JCGM 100:2008), but
	// no more than all in full. All three are one line's, so nothing lies outside
	// √(1000² + 475² + 127.5²) = 1114.4 g.
	near(t, "its ±", s.Body.Plus, math.Sqrt(1000*1000+475*475+127.5*127.5), 0.01)
	if s.Groups[0].Key != "rider" || s.Groups[0].Mass != s.Body.Mass {
		t.Errorf("%+v", s.Groups[0])
	}
	if s.Weigh[0].Part != "rider:r" {
		t.Errorf("weigh %+v first", s.Weigh[0])
	}
	near(t, "sprung", figure(t, &r.Builds[0], "sprung").Value-figure(t, &report.Weigh(withState(laden(), document.Loaded, ""), nil).Report.Builds[0], "sprung").Value, s.Body.Mass, 0.02)
}

// How well the place of a bag is known follows its size along each axis: a frame
// bag 60 mm wide cannot be filled 58 mm off the middle.
func TestPlaceOfBagFollowsItsSize(t *testing.T) {
	d := withState(laden(), document.Loaded, document.Full)
	l := &d.Loads[0]
	l.Rider, l.Bags = "", l.Bags[:1]
	l.Bags[0].Station, l.Bags[0].Mass, l.Bags[0].HalfWidth, l.Bags[0].Size = "frame-bag", 0, 0, document.Vec3{450, 60, 240}
	l.Goods = []document.Good{{ID: "g", Name: "Water", Quantity: 1, Mass: 4000, Basis: document.Weighed, In: "left"}}
	d.Builds[0].Parts = nil // the load alone
	s := &report.Weigh(d, nil).Report.Sides[0]
	for key, most := range map[string]float64{"centre_x": 450. / 6, "centre_y": 60. / 6, "centre_z": 240. / 6} {
		f := cell(t, s, document.Loaded, document.Full, key)
		near(t, key, f.Plus, most+5, 0.01)
		for _, g := range s.Figures { // the other way in which they are reckoned
			if g.Key == key {
				near(t, key+" of the state shown", g.Plus, f.Plus, 0.01)
			}
		}
	}
	// Of a bag without a size something is still in doubt.
	l.Bags[0].Size = document.Vec3{}
	if f := cell(t, &report.Weigh(d, nil).Report.Sides[0], document.Loaded, document.Full, "centre_y"); f.Plus != 45 {
		t.Errorf("without a size ± %v", f.Plus)
	}
}

// What is wrong with a load is told of the thing, and takes no more with it than
// it must.
func TestProblemsOfLoads(t *testing.T) {
	for _, c := range []struct {
		spoil func(*document.Document)
		want  document.Problem // the first error; Message are words of it
		goods int              // that are still packed on side A
	}{
		{func(d *document.Document) { d.Loads[0].Bags[0].Station = "rear-panniers" }, document.Problem{Build: "a", Load: "l", Bag: "left", Field: "station", Message: words.Plain(`"rear-pannier-left"`)}, 3},
		{func(d *document.Document) { d.Loads[0].Bags[0].Station = "fork-legs" }, document.Problem{Build: "a", Load: "l", Bag: "left", Field: "station", Message: words.Plain("both sides")}, 3},
		{func(d *document.Document) { d.Loads[0].Bags[0].Station = "rear-panier-left" }, document.Problem{Build: "a", Load: "l", Bag: "left", Field: "station", Message: words.Plain(`did you mean "rear-pannier-left"`)}, 3},
		{func(d *document.Document) { d.Loads[0].Bags[0].Mass = -1 }, document.Problem{Load: "l", Bag: "left", Field: "mass_g", Message: words.Plain("-1 g")}, 3},
		{func(d *document.Document) { d.Loads[0].Goods[0].Mass = math.NaN() }, document.Problem{Load: "l", Good: "tent", Field: "mass_g", Message: words.Plain("NaN")}, 4},
		{func(d *document.Document) { d.Loads[0].Goods[0].In = "x" }, document.Problem{Load: "l", Good: "tent", Field: "in", Message: words.Plain(`"x"`)}, 4},
		{func(d *document.Document) { d.Riders[0].Stature = 1200 }, document.Problem{Build: "a", Load: "l", Rider: "r", Field: "saddle.height_mm", Message: words.Plain("on build “Bike a”")}, 5},
		{func(d *document.Document) { d.Riders[0].Table = "" }, document.Problem{Rider: "r", Field: "table", Message: words.Plain(`"female"`)}, 5},
		{func(d *document.Document) { d.Loads[0].Rider = "x" }, document.Problem{Load: "l", Field: "rider", Message: words.Plain(`"x"`)}, 5},
	} {
		d := withState(laden(), document.Ridden, document.Full)
		c.spoil(d)
		r := report.Weigh(d, nil).Report
		list := errorsOf(r)
		if len(list) == 0 {
			t.Errorf("no error: want %+v", c.want)
			continue
		}
		got := list[0]
		if !strings.Contains(got.Message.String(), c.want.Message.String()) {
			t.Errorf("%q does not say %q", got.Message.String(), c.want.Message.String())
		}
		got.Message, got.Severity, c.want.Message = words.Message{}, "", words.Message{}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Error(diff)
		}
		packed := 0
		for _, g := range r.Sides[0].Goods {
			if g.OK && g.Bag != "" {
				packed++
			}
		}
		if packed != c.goods {
			t.Errorf("%s of %s%s%s: %d goods are packed, want %d", c.want.Field, c.want.Bag, c.want.Good, c.want.Rider, packed, c.goods)
		}
		writable(t, r)
	}
}

// Numbers that no text can hold, in what is carried.
func TestNotFiniteLoads(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 0} {
		for i, set := range []func(d *document.Document){
			func(d *document.Document) { d.Riders[0].Stature = x },
			func(d *document.Document) { d.Riders[0].Mass = x },
			func(d *document.Document) { d.Riders[0].HalfWidth, d.Riders[0].Clothing = x, x },
			func(d *document.Document) { d.Riders[0].Crank = x },
			func(d *document.Document) { d.Loads[0].Bags[0].Mass = x },
			func(d *document.Document) { d.Loads[0].Bags[0].Offset = document.Vec3{x, x, x} },
			func(d *document.Document) { d.Loads[0].Bags[0].Size = document.Vec3{x, x, x} },
			func(d *document.Document) { d.Loads[0].Bags[0].Volume, d.Loads[0].Bags[0].Permitted = x, x },
			func(d *document.Document) { d.Loads[0].Goods[0].Mass, d.Loads[0].Goods[0].HalfWidth = x, x },
			func(d *document.Document) { d.Loads[0].Goods[0].Volume = x },
			func(d *document.Document) { d.Show.Grip = x },
			func(d *document.Document) { d.Builds[0].Ratings = []document.Rating{{What: "total", Limit: x}} },
			func(d *document.Document) { d.Builds[0].Saddle.Height = x },
			func(d *document.Document) { d.Builds[0].Parts = nil },
		} {
			d := withState(laden(), document.Ridden, document.Half)
			set(d)
			r := report.Weigh(d, nil).Report
			if _, err := report.Write(r); err != nil {
				t.Errorf("%v, %d: %v", x, i, err)
			}
		}
	}
}

// Whatever is carried: fuller states and fuller supplies are no lighter, and the
// report fits its schema.
func TestLoadsProperty(t *testing.T) {
	s := schematest.Written(t, "report")
	rapid.Check(t, func(rt *rapid.T) {
		d := laden()
		d.Builds[0].Parts, d.Builds[1].Parts = anyParts(rt), anyParts(rt)
		d.Show.State = rapid.SampledFrom(document.States).Draw(rt, "state")
		d.Show.Supplies = rapid.SampledFrom(document.SupplyLevels).Draw(rt, "supplies")
		d.Riders[0].Posture = rapid.SampledFrom(document.Postures).Draw(rt, "posture")
		d.Riders[0].Stature = rapid.Float64Range(1400, 2100).Draw(rt, "stature")
		l := &d.Loads[0]
		for i := range l.Goods {
			g := &l.Goods[i]
			g.Mass = rapid.Float64Range(0, 4000).Draw(rt, "mass")
			g.Quantity = rapid.IntRange(0, 5).Draw(rt, "quantity")
			g.In = rapid.SampledFrom([]string{"", "left", "right", "bar"}).Draw(rt, "in")
		}
		for i := range l.Bags {
			l.Bags[i].Station = rapid.SampledFrom(geometry.StationNames).Draw(rt, "station")
			l.Bags[i].Carrier = rapid.SampledFrom(document.Carriers).Draw(rt, "carrier")
		}
		c := d.CopyLoad("l", "Copy")
		c.Goods[0].Mass++
		d.Show.Loads[1] = c.ID
		if rapid.Bool().Draw(rt, "one build") {
			d.Show.Compare[1] = d.Show.Compare[0]
		}
		r := report.Weigh(d, nil).Report
		text, err := report.Write(r)
		if err != nil {
			rt.Fatal(err)
		}
		if err := schematest.Validate(s, text); err != nil {
			rt.Fatalf("%v\n%s", err, text)
		}
		for i := range r.Sides {
			side := &r.Sides[i]
			total := map[document.Supplies]float64{}
			for n, st := range side.States {
				v := st.Figures[0].Value
				if before, ok := total[st.Supplies]; ok && v < before-0.011 {
					rt.Fatalf("%s weighs %v, less than %v before", st.State, v, before)
				}
				total[st.Supplies] = v
				if n%3 > 0 && v > side.States[n-1].Figures[0].Value {
					rt.Fatalf("%s, %s weighs more than fuller", st.State, st.Supplies)
				}
			}
		}
		if r.Difference != nil {
			a, b := r.Sides[0].Figures[0].Value, r.Sides[1].Figures[0].Value
			if math.Abs(r.Difference.Figures[0].Delta-(b-a)) > 0.021 {
				rt.Fatalf("%v is no difference of %v and %v", r.Difference.Figures[0].Delta, a, b)
			}
		}
	})
}

// The order of bags and goods changes nothing.
func TestOrderOfLoads(t *testing.T) {
	d := withState(laden(), document.Ridden, document.Half)
	want := report.Weigh(d, nil).Report
	slices.Reverse(d.Loads[0].Bags)
	slices.Reverse(d.Loads[0].Goods)
	got := report.Weigh(d, nil).Report
	for i, f := range want.Sides[0].Figures {
		g := got.Sides[0].Figures[i]
		near(t, f.Key, g.Value, f.Value, 0.011)
		near(t, "± of "+f.Key, g.Plus, f.Plus, 0.011)
	}
}

// What a rider may be is the same to the checks and to the seat.
func TestRiderLimits(t *testing.T) {
	bike, _ := geometry.Pose(&laden().Builds[0])
	r := laden().Riders[0]
	for _, set := range []func(*document.Rider){
		func(r *document.Rider) { r.Stature = document.MaxStature + 1 },
		func(r *document.Rider) { r.Mass = document.MaxBody + 1 },
		func(r *document.Rider) { r.Clothing = document.MaxClothing + 1 },
		func(r *document.Rider) { r.Shoes = document.MaxShoes + 1 },
		func(r *document.Rider) { r.Crank = document.MaxCrank + 1 },
	} {
		bad := r
		set(&bad)
		if body, _ := rider.Seat(bike, &bad); body != nil {
			t.Errorf("%+v is seated", bad)
		}
	}
	for _, posture := range document.Postures {
		for _, table := range document.Tables {
			good := r
			good.Posture, good.Table = posture, table
			if body, problems := rider.Seat(bike, &good); body == nil {
				t.Errorf("%s, %s is not seated: %v", posture, table, problems)
			}
		}
	}
	for _, set := range []func(*document.Rider){
		func(r *document.Rider) { r.Mass = document.MaxBody },
		func(r *document.Rider) { r.Mass, r.HalfWidth = document.MinBody, 0 },
		func(r *document.Rider) { r.Clothing, r.Shoes = document.MaxClothing, document.MaxShoes },
	} {
		good := r
		set(&good)
		if body, problems := rider.Seat(bike, &good); body == nil {
			t.Errorf("%+v is not seated: %v", good, problems)
		}
	}
}

func BenchmarkLoaded(b *testing.B) {
	for _, state := range document.States {
		d := documenttest.Demo(b)
		d.Show.State = state
		b.Run(string(state), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				report.Weigh(d, nil)
			}
		})
	}
}
