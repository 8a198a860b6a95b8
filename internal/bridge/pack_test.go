package bridge_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"steelyard/internal/document"
	"steelyard/internal/report"
	"steelyard/internal/words"
)

// pack is what a step of packing answers.
type pack struct {
	Build, Load           string
	Running, Done         bool
	Nodes                 int
	Incumbent, Bound, Gap *float64
	Tolerance             float64
	Assignment            []struct {
		Good, Bag string
		Quantity  int
	}
	Moves []struct {
		Good, Name, From, To string
		Quantity             int
		Aside                bool
	}
	Proved   bool
	Moved    int
	Before   packTerms
	After    *packTerms
	Unrated  []string
	Shortage *struct {
		Message     string
		Goods, Bags []string
	}
}

type packTerms struct {
	Aim        float64
	FrontShare float64 `json:"front_share"`
	Height     float64 `json:"height_mm"`
	Aside      float64 `json:"aside_mm"`
	Costs      struct{ Front, Low, Balance, Middle, Steered float64 }
	Keeps      bool
	Breaks     string
	Perhaps    string
}

// finish runs a packing until it is done.
func finish(t testing.TB, p pack) pack {
	t.Helper()
	for range 2000 {
		if p.Done {
			return p
		}
		p = decoded[pack](t, call(t, "packRun", "500"))
		if p.Bound != nil && p.Incumbent != nil && *p.Bound > *p.Incumbent+1e-9 {
			t.Fatalf("a bound of %v over %v", *p.Bound, *p.Incumbent)
		}
	}
	t.Fatal("it does not end")
	return p
}

// A load is packed, applied, and the report then says what the packing promised.
func TestPack(t *testing.T) {
	text := call(t, "demo")
	// Of the weekend's goods, so that it ends soon, and within a tenth of a point.
	p := decoded[pack](t, call(t, "packStart", text, `{"load":"weekend","tolerance":0.1}`))
	if p.Build != "gearbox" || p.Load != "weekend" || !p.Running || p.Nodes != 0 || !p.Before.Keeps {
		t.Fatalf("%+v", p)
	}
	p = finish(t, p)
	if p.After == nil || !p.After.Keeps || p.Shortage != nil || *p.Gap > 0.1 || p.After.Aim > p.Before.Aim {
		t.Fatalf("%+v", p)
	}
	c := p.After.Costs
	if math.Abs(c.Front+c.Low+c.Balance+c.Middle+c.Steered-p.After.Aim) > 1e-3 || math.Abs(*p.Incumbent-p.After.Aim) > 1e-5 {
		t.Errorf("%+v does not add up to %v, %v", c, p.After.Aim, *p.Incumbent)
	}
	v := decoded[openedText](t, call(t, "packApply", text))
	d, _ := document.Open(v.Document)
	before := demoDocument(t)
	load, was := d.Load("weekend"), before.Load("weekend")
	// No good is lost, and none moves that is pinned.
	pieces := func(l *document.Load, name string) (n int) {
		for _, g := range l.Goods {
			if g.Name == name {
				n += g.Quantity
			}
		}
		return n
	}
	for _, g := range was.Goods {
		if n, want := pieces(load, g.Name), pieces(was, g.Name); n != want {
			t.Errorf("%d pieces of %s, want %d", n, g.Name, want)
		}
		if g.Pinned && load.Good(g.ID).In != g.In {
			t.Errorf("%s moved", g.Name)
		}
	}
	in := map[string]int{}
	for _, g := range load.Goods {
		in[g.In] += g.Quantity
	}
	for _, a := range p.Assignment {
		in[a.Bag] -= a.Quantity
	}
	for bag, n := range in {
		if n != 0 {
			t.Errorf("%s has %d pieces more than was assigned", bag, n)
		}
	}
	for _, m := range p.Moves {
		if g := was.Good(m.Good); g == nil || !m.Aside && g.In != m.From || m.From == m.To || g.Name != m.Name || m.Quantity < 1 || m.Quantity > g.Quantity {
			t.Errorf("%+v", m)
		}
	}
	// Bags and goods alone: loaded minus ready to ride.
	d.Show.Compare, d.Show.Loads, d.Show.State = []string{"gearbox"}, []string{"weekend"}, document.Loaded
	r := report.Weigh(d, nil).Report
	for _, b := range r.Sides[0].Bags {
		if b.Headroom.Verdict == "over" || b.Room.Verdict == "over" {
			t.Errorf("%s is over: %s %s", b.ID, b.Headroom.Text, b.Room.Text)
		}
	}
	cell := func(state document.State, key string) float64 {
		for _, s := range r.Sides[0].States {
			if s.State == state && s.Supplies == document.Full {
				for _, f := range s.Figures {
					if f.Key == key {
						return f.Value
					}
				}
			}
		}
		t.Fatalf("no %s of %s", key, state)
		return 0
	}
	mass := cell(document.Loaded, "total") - cell(document.Ready, "total")
	share := (cell(document.Loaded, "front_load") - cell(document.Ready, "front_load")) / mass
	if math.Abs(share-p.After.FrontShare) > 1e-3 {
		t.Errorf("a front share of %v, promised was %v", share, p.After.FrontShare)
	}
	height := (cell(document.Loaded, "total")*cell(document.Loaded, "centre_z") - cell(document.Ready, "total")*cell(document.Ready, "centre_z")) / mass
	if math.Abs(height-p.After.Height) > 0.2 {
		t.Errorf("a height of %v, promised was %v", height, p.After.Height)
	}

	// Packed once more, it is as good as it can be.
	again := finish(t, decoded[pack](t, call(t, "packStart", string(v.Document), `{"load":"weekend","tolerance":0.1}`)))
	if again.After.Aim < p.After.Aim-0.1-1e-6 {
		t.Errorf("%v after %v", again.After.Aim, p.After.Aim)
	}
	// The document has moved on from the session.
	if p := problemIn(call(t, "packApply", text)); p == nil || p.Load != "weekend" {
		t.Errorf("%+v", p)
	}
	if p := decoded[pack](t, call(t, "packStop")); p.Running {
		t.Error("it still runs")
	}
	for _, name := range []string{"packRun", "packStop", "packApply"} {
		if p := problemIn(call(t, name, "")); p == nil || !strings.Contains(p.Message.String(), "start packing") {
			t.Errorf("%s: %+v", name, p)
		}
	}
}

// A good that does not fit into one bag is spread, and its lines tell it.
func TestPackSpreads(t *testing.T) {
	d := demoDocument(t)
	l := d.Load("weekend")
	l.Bags = []document.Bag{*l.Bag("fork-left"), *l.Bag("fork-right")}
	l.Goods = []document.Good{{ID: "bricks", Name: "Brick", Quantity: 4, Mass: 1000, HalfWidth: 1, Basis: document.Weighed, Volume: 1, Split: true}}
	text := written(t, d)
	p := finish(t, decoded[pack](t, call(t, "packStart", text, `{"load":"weekend"}`)))
	if p.Before.Keeps || p.Before.Breaks == "" || len(p.Moves) != 2 || p.Moves[0].From != "" {
		t.Errorf("%+v", p)
	}
	if math.Abs(p.After.Aside) > 0.1 {
		t.Errorf("four bricks on two sides are %v mm aside", p.After.Aside)
	}
	v := decoded[openedText](t, call(t, "packApply", text))
	d, _ = document.Open(v.Document)
	goods := d.Load("weekend").Goods
	if len(goods) != 2 || goods[0].ID != "bricks" || goods[1].ID == "bricks" || goods[0].Quantity != 2 || goods[1].Quantity != 2 || goods[0].In == goods[1].In {
		t.Errorf("%+v", goods)
	}
}

// Lines of one good are one lot: packed again and again they do not grow in
// number, and nothing is said to move that may stay.
func TestPackLots(t *testing.T) {
	d := demoDocument(t)
	l := d.Load("weekend")
	l.Bags = []document.Bag{*l.Bag("fork-left"), *l.Bag("fork-right"), *l.Bag("roll")}
	brick := func(id string, n int, in string) document.Good {
		return document.Good{ID: id, Name: "Brick", Quantity: n, Mass: 1000, HalfWidth: 1, Basis: document.Weighed, Volume: 1, In: in, Split: true}
	}
	l.Goods = []document.Good{brick("a", 1, "fork-right"), brick("b", 2, "fork-left"), brick("c", 1, "fork-left"), brick("none", 0, "roll")}
	text := written(t, d)
	aim := `{"load":"weekend","aim":{"of":"load","low":100,"balance":100}}`
	for range 3 {
		p := finish(t, decoded[pack](t, call(t, "packStart", text, aim)))
		v := decoded[openedText](t, call(t, "packApply", text))
		text = string(v.Document)
		d, _ = document.Open(v.Document)
		pieces := 0
		lines := map[string]int{}
		for _, g := range d.Load("weekend").Goods {
			pieces += g.Quantity
			lines[g.In]++
		}
		if pieces != 4 || lines["fork-left"] != 1 || lines["fork-right"] != 1 || d.Load("weekend").Good("none") == nil {
			t.Fatalf("%+v", d.Load("weekend").Goods)
		}
		if n := len(p.Moves); n > 1 || n == 1 && (p.Moves[0].Quantity != 1 || p.Moves[0].From != "fork-left" || p.Moves[0].To != "fork-right") {
			t.Errorf("%+v", p.Moves)
		}
	}
}

// What stays at home stays there, and racks are kept to.
func TestPackKeepsToLimits(t *testing.T) {
	d := demoDocument(t)
	d.Builds[0].Ratings = []document.Rating{{What: "rear-rack", Limit: 3000}}
	l := d.Load("tour")
	l.Bags = []document.Bag{*l.Bag("pannier-left"), *l.Bag("pannier-right"), *l.Bag("roll")}
	l.Goods = []document.Good{
		{ID: "tent", Name: "Tent", Quantity: 1, Mass: 1400, HalfWidth: 1, Basis: document.Weighed, Volume: 5},
		{ID: "stone", Name: "Stone", Quantity: 1, Mass: 2500, HalfWidth: 1, Basis: document.Weighed, Volume: 2},
		{ID: "home", Name: "Chair", Quantity: 1, Mass: 500, HalfWidth: 1, Basis: document.Weighed, Volume: 2, Pinned: true},
	}
	p := finish(t, decoded[pack](t, call(t, "packStart", written(t, d), `{"load":"tour","aim":{"of":"all","low":100}}`)))
	for _, a := range p.Assignment {
		if a.Good == "home" || a.Good == "stone" && a.Bag != "roll" {
			t.Errorf("%+v", a) // 585 + 583 g of panniers leave 1832 g to the rack
		}
	}
	d.Builds[0].Ratings[0].Limit = 1500
	l.Goods[0].Mass = 3000 // 5500 g in front, where 5000 g are permitted
	text := written(t, d)
	p = decoded[pack](t, call(t, "packStart", text, `{"load":"tour"}`))
	p = finish(t, p)
	if p.Shortage == nil || p.Shortage.Message == "" || p.Assignment != nil || p.After != nil {
		t.Errorf("%+v", p)
	}
	if p := problemIn(call(t, "packApply", text)); p == nil {
		t.Error("nothing was packed, and it was applied")
	}
}

// A limit that is kept only within what is known of the masses is told, before
// and after; one that is kept beyond doubt is not, and bags without a limit are
// named.
func TestPackTellsWhatMayBeOver(t *testing.T) {
	d := demoDocument(t)
	d.Builds[0].Ratings = []document.Rating{{What: "rear-rack", Limit: 5000}}
	l := d.Load("tour")
	l.Bags = []document.Bag{*l.Bag("pannier-left"), *l.Bag("roll")}
	l.Bags[0].Permitted, l.Bags[1].Permitted = 4000, 0
	l.Goods = []document.Good{
		{ID: "tent", Name: "Tent", Quantity: 1, Mass: 3900, HalfWidth: 300, Basis: document.Guessed, Volume: 5, In: "pannier-left", Pinned: true},
		{ID: "mat", Name: "Mat", Quantity: 1, Mass: 400, HalfWidth: 1, Basis: document.Weighed, Volume: 4, In: "roll"},
	}
	start := func() pack {
		return finish(t, decoded[pack](t, call(t, "packStart", written(t, d), `{"load":"tour"}`)))
	}
	p := start()
	for what, x := range map[string]*packTerms{"before": &p.Before, "after": p.After} {
		if x == nil || !x.Keeps || !strings.Contains(x.Perhaps, "Pannier, left") || !strings.Contains(x.Perhaps, "may be over") || strings.Contains(x.Perhaps, "rack") {
			t.Errorf("%s: %+v", what, x)
		}
	}
	if len(p.Unrated) != 1 || p.Unrated[0] != "Handlebar roll" {
		t.Errorf("without a permitted load: %q", p.Unrated)
	}
	l.Goods[0].HalfWidth = 50
	if p := start(); p.Before.Perhaps != "" || p.After.Perhaps != "" {
		t.Errorf("beyond doubt: %q, %q", p.Before.Perhaps, p.After.Perhaps)
	}
	l.Goods[0].Mass, l.Goods[0].HalfWidth, l.Bags[0].Permitted = 4380, 100, 0 // with the pannier's 585 g the rack is at 4965 of 5000 g
	if p := start(); !strings.Contains(p.After.Perhaps, "Rear rack") {
		t.Errorf("a rack: %+v", p.After)
	}
}

// Fuel and food go into different bags: fuel stays where it is, though the demo
// has food beside it before it is packed, and fuel that is in no bag yet gets one
// without food.
func TestPackKeepsFuelFromFood(t *testing.T) {
	for name, change := range map[string]func(g *document.Good){
		"in a bag":  func(*document.Good) {},
		"in no bag": func(g *document.Good) { g.In = "" },
	} {
		d := demoDocument(t)
		change(d.Load("tour").Good("fuel"))
		p := decoded[pack](t, call(t, "packStart", written(t, d), ""))
		for i := 0; i < 100 && p.Assignment == nil; i++ { // any packing keeps to it
			p = decoded[pack](t, call(t, "packRun", "500"))
		}
		supply := map[string]string{}
		for _, g := range d.Load("tour").Goods {
			supply[g.ID] = g.Supply
		}
		in := map[string]string{}
		for _, a := range p.Assignment {
			if supply[a.Good] == "fuel" {
				in[a.Bag] = a.Good
			}
		}
		if len(in) == 0 {
			t.Fatalf("%s: no fuel is packed", name)
		}
		for _, a := range p.Assignment {
			if fuel := in[a.Bag]; fuel != "" && supply[a.Good] == "food" {
				t.Errorf("%s: %s is packed with %s in %s", name, a.Good, fuel, a.Bag)
			}
		}
	}
}

func TestPackProblems(t *testing.T) {
	text := call(t, "demo")
	empty := demoDocument(t)
	empty.Loads[0].Bags = nil
	lost := demoDocument(t)
	for i := range lost.Loads[0].Bags {
		lost.Loads[0].Bags[i].Station = "rear-panniers"
	}
	broken := demoDocument(t)
	broken.Builds[0].Frame.HeadAngle = 700
	for _, c := range []struct {
		text, options string
		want          document.Problem
	}{
		{text, `{"build":"none"}`, document.Problem{Build: "none", Message: words.Plain("no build")}},
		{text, `{"load":"none"}`, document.Problem{Load: "none", Message: words.Plain("no load")}},
		{text, `{"load":""}`, document.Problem{Message: words.Plain("no load")}},
		{text, `{"aim":{"of":"load","low":-1}}`, document.Problem{Field: "show.packing.low", Message: words.Plain("0 to 1000")}},
		{text, `{`, document.Problem{Field: "options", Message: words.Plain("cannot be read")}},
		{written(t, empty), "", document.Problem{Load: "tour", Field: "bags", Message: words.Plain("no bags")}},
		{written(t, lost), "", document.Problem{Load: "tour", Field: "bags", Message: words.Plain("in a place")}},
		{written(t, broken), "", document.Problem{Build: "gearbox", Message: words.Plain("errors in its figures")}},
		{"{", "", document.Problem{Message: words.Plain("Line 1")}},
	} {
		p := problemIn(call(t, "packStart", c.text, c.options))
		if p == nil || !strings.Contains(p.Message.String(), c.want.Message.String()) {
			t.Errorf("%s: %+v, want %q", c.options, p, c.want.Message.String())
			continue
		}
		p.Severity, p.Message, c.want.Message = "", words.Message{}, words.Message{}
		if diff := cmp.Diff(c.want, *p); diff != "" {
			t.Errorf("%s: %s", c.options, diff)
		}
	}
	decoded[pack](t, call(t, "packStart", text, ""))
	for _, nodes := range []string{"0", "-1", "x", "1e3", "99999999999999999999"} {
		if p := problemIn(call(t, "packRun", nodes)); p == nil || p.Field != "nodes" {
			t.Errorf("%s: %+v", nodes, p)
		}
	}
	call(t, "packStop")
}
