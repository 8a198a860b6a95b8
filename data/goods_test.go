package data_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"github.com/google/go-cmp/cmp"

	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/rider"
)

// posed is a bike to hang bags on.
func posed(t *testing.T, name string) *geometry.Bike {
	t.Helper()
	text, err := os.ReadFile("../testdata/geometry/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var b document.Build
	if err := json.Unmarshal(text, &b); err != nil {
		t.Fatal(err)
	}
	bike, problems := geometry.Pose(&b)
	if bike == nil {
		t.Fatal(problems)
	}
	return bike
}

// Whatever is wrong with a bag or a good of a user's is wrong with an entry.
func TestEveryGoodAndBagIsOneThatTheProgramTakes(t *testing.T) {
	var goods []parts.GoodEntry
	var bags []parts.BagEntry
	decode(t, "goods/goods.json", &goods)
	decode(t, "goods/bags.json", &bags)
	if len(goods) < 60 || len(bags) < 20 {
		t.Errorf("%d goods and %d bags; want 60 and 20 or more", len(goods), len(bags))
	}
	if diff := cmp.Diff(parts.Goods(), goods); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(parts.Bags(), bags); diff != "" {
		t.Error(diff)
	}
	d := document.Document{Format: document.Format, Version: document.Version, Show: document.Show{Mass: "g", Length: "mm"}, Builds: []document.Build{{ID: "b", Name: "B"}}}
	load := document.Load{ID: "l", Name: "L"}
	for i := range bags {
		load.Bags = append(load.Bags, bags[i].Bag(bags[i].ID))
	}
	for i := range goods {
		load.Goods = append(load.Goods, goods[i].Good(goods[i].ID))
	}
	d.Loads = []document.Load{load}
	for _, p := range document.Check(&d) {
		t.Errorf("%s%s: %s: %s", p.Bag, p.Good, p.Field, p.Message.String())
	}

	id := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	names := map[string]bool{}
	entry := func(what, name string, mass, half float64, basis document.Basis, search []string) {
		if !id.MatchString(what) {
			t.Errorf("%s: the id should be lower-case words with hyphens", what)
		}
		if names[name] {
			t.Errorf("%s: %q is there twice", what, name)
		}
		names[name] = true
		if share := half / mass; share < 0.02 || share > 0.6 {
			t.Errorf("%s: the half-width is %.1f %% of the mass", what, 100*share)
		}
		if basis != document.Typical {
			t.Errorf("%s: the basis is %q; nobody has weighed a generic thing", what, basis)
		}
		for i, w := range strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == ',' }) {
			if i > 0 && w != strings.ToLower(w) && w != "Ah" {
				t.Errorf("%s: a capital in %q would be a product's", what, name)
			}
		}
		for _, s := range search {
			if s == "" || s != strings.ToLower(s) {
				t.Errorf("%s: search word %q", what, s)
			}
		}
	}
	supplies := map[string]int{}
	for _, g := range goods {
		entry(g.ID, g.Name, g.Mass, g.HalfWidth, g.Basis, g.Search)
		supplies[g.Supply]++
		// Nothing to take along is heavier than stone or lighter than foam.
		if density := g.Mass / 1000 / g.Volume; density < 0.03 || density > 1.6 {
			t.Errorf("%s: %.2f kg in a litre", g.ID, density)
		}
	}
	for _, s := range document.SupplyKinds {
		if supplies[s] == 0 {
			t.Errorf("no good is %s", s)
		}
	}
	for _, name := range []string{"travel-bike", "touring-bike"} {
		bike := posed(t, name)
		for _, b := range bags {
			if n := len(bike.Stations[b.Station].Points); n != 1 {
				t.Errorf("%s: the station %q has %d places on %s; want one", b.ID, b.Station, n, name)
			}
			if made := b.Bag("b"); made.Permitted != 0 {
				t.Errorf("%s: %g g are permitted, which is for its maker to say", b.ID, made.Permitted)
			}
			box := b.Size[0] * b.Size[1] * b.Size[2] / 1e6
			if b.Volume > 1.1*box || b.Volume < 0.5*box {
				t.Errorf("%s: %g l in a box of %.1f l", b.ID, b.Volume, box)
			}
		}
	}
	for i := range bags {
		entry(bags[i].ID, bags[i].Name, bags[i].Mass, bags[i].HalfWidth, bags[i].Basis, bags[i].Search)
	}
}

func TestDemoLoads(t *testing.T) {
	d := demo(t)
	if diff := cmp.Diff([]string{"tour", "tour"}, d.Show.Loads); diff != "" || d.Show.State != document.Ready {
		t.Errorf("it opens with %v, %s", d.Show.Loads, d.Show.State)
	}
	if len(d.Loads) != 2 || len(d.Riders) != 1 || len(d.WeighIns) != 1 {
		t.Fatalf("%d loads, %d riders, %d weigh-ins", len(d.Loads), len(d.Riders), len(d.WeighIns))
	}
	tour, weekend := &d.Loads[0], &d.Loads[1]
	if n := len(tour.Goods); n < 25 || n > 40 {
		t.Errorf("%d goods on the tour; want 25 to 40", n)
	}
	mass := map[string]float64{}
	supplies := map[string]bool{}
	for _, l := range []*document.Load{tour, weekend} {
		for _, b := range l.Bags {
			grams, litres := 0.0, 0.0
			for _, g := range l.Goods {
				if g.In == b.ID {
					grams += float64(g.Quantity) * g.Mass
					litres += float64(g.Quantity) * g.Volume
				}
			}
			if grams > b.Permitted || litres > b.Volume+1e-9 || grams == 0 {
				t.Errorf("%s, %s: %.0f of %.0f g, %.2f of %.2f l", l.Name, b.Name, grams, b.Permitted, litres, b.Volume)
			}
			mass[l.ID] += b.Mass + grams
		}
		for _, g := range l.Goods {
			supplies[g.Supply] = true
		}
	}
	t.Logf("loads weigh %v g", mass)
	// Common practice, no source: a month with tent and stove, and a weekend.
	if mass["tour"] < 20e3 || mass["tour"] > 26e3 || mass["weekend"] < 8e3 || mass["weekend"] > 13e3 {
		t.Errorf("loads weigh %v g", mass)
	}
	for _, s := range document.SupplyKinds {
		if !supplies[s] {
			t.Errorf("nobody takes %s along", s)
		}
	}
	// What both loads have is the same thing in both, and cancels.
	common := 0
	for _, g := range weekend.Goods {
		o := tour.Good(g.ID)
		if o == nil {
			continue
		}
		common++
		g.In = o.In
		if diff := cmp.Diff(*o, g); diff != "" {
			t.Errorf("%s differs (-tour +weekend):\n%s", g.ID, diff)
		}
	}
	if common < 8 {
		t.Errorf("the loads have %d goods in common", common)
	}

	for i := range d.Builds {
		bike, _ := geometry.Pose(&d.Builds[i])
		body, problems := rider.Seat(bike, &d.Riders[0])
		if body == nil || len(problems) > 0 {
			t.Errorf("%s: %v", d.Builds[i].ID, problems)
		}
		for _, b := range tour.Bags {
			if len(bike.Stations[b.Station].Points) != 1 {
				t.Errorf("%s: the station %q is no single place", b.ID, b.Station)
			}
		}
		var of []string
		for _, r := range d.Builds[i].Ratings {
			of = append(of, r.What)
		}
		for _, what := range []string{"total", "rear-rack", "front-tyre", "rear-tyre", "front-rim", "rear-rim"} {
			if !slices.Contains(of, what) {
				t.Errorf("%s has no rating of %s", d.Builds[i].ID, what)
			}
		}
	}
}
