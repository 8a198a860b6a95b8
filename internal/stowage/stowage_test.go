package stowage_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/packing"
	"steelyard/internal/stowage"
)

// demo is the demo with the bags and goods given in its first load.
func demo(t *testing.T, bags []document.Bag, goods []document.Good) *document.Document {
	t.Helper()
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	d, problems := document.Open(text)
	if d == nil {
		t.Fatal(problems)
	}
	d.Loads[0].Bags, d.Loads[0].Goods = bags, goods
	return d
}

func bag(id, station string, litres float64, size document.Vec3) document.Bag {
	return document.Bag{ID: id, Name: id, Basis: document.Weighed, Station: station, Carrier: document.MainFrame, Volume: litres, Size: size}
}

func good(id, in string, grams, litres float64) document.Good {
	return document.Good{ID: id, Name: id, Quantity: 1, Mass: grams, Basis: document.Weighed, Volume: litres, In: in}
}

// packed packs a load to the end and tells where each good lies: in several bags
// its bags are joined by a plus.
func packed(t *testing.T, d *document.Document, aim document.Packing) (*stowage.Stowage, map[string]string) {
	t.Helper()
	s, problem := stowage.New(d, stowage.Options{Load: &d.Loads[0].ID, Aim: &aim}, nil)
	if problem != nil {
		t.Fatal(problem)
	}
	if s.Short != nil {
		t.Fatal(s.Short)
	}
	st := s.Solver.Status()
	for i := 0; i < 1000 && !st.Done; i++ {
		st = s.Solver.Run(500)
	}
	if st.Err != nil || !st.Done {
		t.Fatalf("%+v", st)
	}
	in := map[string]string{}
	for _, a := range s.Assignment(s.Best()) {
		if in[a.Good] != "" {
			in[a.Good] += "+"
		}
		in[a.Good] += a.Bag
	}
	return s, in
}

var (
	tall  = document.Vec3{200, 150, 300}
	flat  = document.Vec3{400, 200, 200}
	low   = document.Packing{Of: "load", Low: 100}
	bags  = []document.Bag{bag("pannier", "rear-pannier-left", 20, tall), bag("deck", "rear-rack-deck", 20, flat), bag("bar", "handlebar-bag", 9, flat), bag("bottle", "bottle-under", 2, tall)}
	water = func(g document.Good) document.Good { g.Supply = "water"; return g }
)

// The lowest place wins wherever the rules let a good lie; "bottle" hangs lowest
// of all, then "pannier", "deck", "bar".
func TestRules(t *testing.T) {
	with := func(g document.Good, change func(*document.Good)) document.Good {
		change(&g)
		return g
	}
	for name, c := range map[string]struct {
		goods []document.Good
		want  map[string]string
	}{
		"a bottle takes liquids only": {
			[]document.Good{good("jumper", "deck", 400, 1), water(with(good("water", "", 1000, 1), func(g *document.Good) {}))},
			map[string]string{"jumper": "pannier", "water": "bottle"},
		},
		"a liquid stays in its bag": {
			[]document.Good{water(good("water", "deck", 1000, 1))},
			map[string]string{"water": "deck"},
		},
		"a liquid that may move goes where it stands upright": {
			[]document.Good{
				water(with(good("one", "deck", 1000, 2), func(g *document.Good) { g.Liquid = "moves" })),
				water(with(good("two", "deck", 900, 2), func(g *document.Good) { g.Liquid = "moves" })),
			},
			map[string]string{"one": "bottle", "two": "pannier"},
		},
		"milk is a liquid if it says so": {
			[]document.Good{with(good("milk", "", 1000, 1), func(g *document.Good) { g.Liquid = "moves" })},
			map[string]string{"milk": "bottle"},
		},
		"powder for water is none": {
			[]document.Good{water(with(good("powder", "", 100, 1), func(g *document.Good) { g.Liquid = "no" }))},
			map[string]string{"powder": "pannier"},
		},
		"fuel is kept from food, and from a bottle that others drink from": {
			[]document.Good{
				with(good("fuel", "", 440, 1), func(g *document.Good) { g.Supply = "fuel" }),
				with(good("food", "", 800, 2), func(g *document.Good) { g.Supply = "food" }),
				water(good("water", "", 1000, 1)),
			},
			map[string]string{"fuel": "bar", "food": "pannier", "water": "bottle"},
		},
		"water stays out of a bottle of fuel": {
			[]document.Good{with(good("fuel", "bottle", 440, 0.5), func(g *document.Good) { g.Supply = "fuel" }), water(good("water", "", 1000, 1))},
			map[string]string{"fuel": "bottle", "water": "pannier"},
		},
		"what is used together lies together": {
			[]document.Good{
				with(good("stove", "bar", 400, 11), func(g *document.Good) { g.Together = "kitchen" }),
				with(good("pot", "deck", 400, 11), func(g *document.Good) { g.Together = " kitchen" }),
			},
			nil, // 22 l go into no bag
		},
		"what is used together goes with what is pinned": {
			[]document.Good{
				with(good("stove", "bar", 400, 1), func(g *document.Good) { g.Together, g.Pinned = "kitchen", true }),
				with(good("pot", "deck", 400, 1), func(g *document.Good) { g.Together = "kitchen" }),
			},
			map[string]string{"stove": "bar", "pot": "bar"},
		},
		"what is needed at hand lies at hand": {
			[]document.Good{with(good("camera", "pannier", 600, 1), func(g *document.Good) { g.AtHand = true })},
			map[string]string{"camera": "bar"},
		},
		"pieces stay together": {
			[]document.Good{with(good("book", "", 400, 6), func(g *document.Good) { g.Quantity = 3 }), good("stone", "pannier", 5000, 5)},
			map[string]string{"book": "deck", "stone": "pannier"},
		},
		"pieces that may be split are": {
			[]document.Good{with(good("book", "", 400, 6), func(g *document.Good) { g.Quantity, g.Split = 3, true }), good("stone", "pannier", 5000, 5)},
			map[string]string{"book": "pannier+deck", "stone": "pannier"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			d := demo(t, bags, c.goods)
			if c.want == nil {
				s, problem := stowage.New(d, stowage.Options{Load: &d.Loads[0].ID, Aim: &low}, nil)
				if problem != nil || s.Short == nil {
					t.Errorf("%v, %v", problem, s)
				}
				return
			}
			_, in := packed(t, d, low)
			for id, want := range c.want {
				if in[id] != want {
					t.Errorf("%s lies in %q, want %q", id, in[id], want)
				}
			}
		})
	}
}

// What a person says of a bag counts more than its place and size.
func TestBagsSayWhatTheyAre(t *testing.T) {
	no, yes := false, true
	own := slices.Clone(bags)
	own[0].AtHand, own[2].AtHand = &yes, &no // a pannier that can be reached, a roll that cannot
	own[3].Liquids = "none"                  // tools in the place of a bottle
	camera, wrench := good("camera", "", 600, 1), good("wrench", "deck", 300, 1)
	camera.AtHand = true
	if _, in := packed(t, demo(t, own, []document.Good{camera, wrench}), low); in["camera"] != "pannier" || in["wrench"] != "bottle" {
		t.Error(in)
	}
}

// With at most one move the best one is made, with none nothing changes.
func TestAtMostSoManyMoves(t *testing.T) {
	goods := []document.Good{good("light", "bar", 300, 1), good("heavy", "bar", 3000, 1)}
	for most, want := range map[int]map[string]string{0: {"light": "bar", "heavy": "bar"}, 1: {"light": "bar", "heavy": "pannier"}, 2: {"light": "pannier", "heavy": "pannier"}} {
		aim := low
		aim.Moves = &most
		if _, in := packed(t, demo(t, bags, goods), aim); in["light"] != want["light"] || in["heavy"] != want["heavy"] {
			t.Errorf("with at most %d: %v", most, in)
		}
	}
}

// The inertia about the steering axis is that of a point at its distance from the
// line through the ends of the head tube. A weight on it takes goods off the bar.
func TestSteeredMass(t *testing.T) {
	steered := slices.Clone(bags[:3])
	steered[2].Carrier, steered[2].Offset = document.ForkUpper, document.Vec3{40, 30, 20}
	d := demo(t, steered, []document.Good{good("tent", "bar", 2000, 5)})
	s, in := packed(t, d, document.Packing{Of: "load", FrontShare: 1, Front: 1})
	if in["tent"] != "bar" {
		t.Fatal(in)
	}
	bike, problems := geometry.Pose(&d.Builds[0])
	if bike == nil {
		t.Fatal(problems)
	}
	along, to := bike.HeadTop.Sub(bike.HeadBottom), s.Task.Bags[2].Place.Sub(bike.HeadBottom)
	foot := along.Scale(to.Dot(along) / along.Dot(along))
	want := 2 * to.Sub(foot).Dot(to.Sub(foot))
	if got := s.Before().Inertia; math.Abs(got-want) > 1e-9 || want < 0.01 {
		t.Errorf("%v kg m², want %v", got, want)
	}
	if s.Task.Bags[0].Steered != 0 || s.Task.Bags[1].Steered != 0 {
		t.Error("a bag on the frame turns with the bar")
	}
	if s, in := packed(t, d, document.Packing{Of: "load", FrontShare: 1, Front: 0.1, Steered: 1000}); in["tent"] == "bar" || s.After(s.Best()).Inertia != 0 {
		t.Errorf("%v", in)
	}
}

// Moves can be done one after the other: each thing is where it is taken from, and
// what is put into a bag has room there. They lead to the packing.
func TestMovesCanBeDone(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		n := rapid.IntRange(2, 3).Draw(r, "bags")
		var list []document.Bag
		stations := []string{"rear-pannier-left", "rear-rack-deck", "handlebar-bag"}
		for _, station := range stations[:n] {
			list = append(list, bag(station, station, 0, tall))
		}
		var goods []document.Good
		is := packing.Packing{}
		was, will := map[string]float64{}, map[string]float64{}
		for k := range rapid.IntRange(1, 7).Draw(r, "goods") {
			from, to := rapid.IntRange(-1, n-1).Draw(r, "from"), rapid.IntRange(0, n-1).Draw(r, "to")
			g := good(string(rune('a'+k)), "", 100+float64(k), math.Round(rapid.Float64Range(0.1, 5).Draw(r, "litres")*10)/10)
			if from >= 0 {
				g.In = stations[from]
				was[g.In] += g.Volume
			}
			will[stations[to]] += g.Volume
			row := make([]int, n)
			row[to] = 1
			goods, is = append(goods, g), append(is, row)
		}
		room := map[string]float64{}
		for j := range list { // as large as must be, and at times no larger
			list[j].Volume = max(0.1, was[list[j].ID], will[list[j].ID]) + rapid.SampledFrom([]float64{0, 0.3, 2}).Draw(r, "spare")
			room[list[j].ID] = list[j].Volume - was[list[j].ID]
		}
		d := demo(t, list, goods)
		s, problem := stowage.New(d, stowage.Options{Load: &d.Loads[0].ID, Aim: &low}, nil)
		if problem != nil {
			r.Fatal(problem)
		}
		in, volume := map[string]string{}, map[string]float64{}
		for _, g := range goods {
			in[g.ID], volume[g.ID] = g.In, g.Volume
		}
		for _, m := range s.Moves(is) {
			from := m.From
			if m.Aside && m.From == "" {
				from = "aside"
			}
			if in[m.Good] != from || m.From == m.To {
				r.Fatalf("%+v, but it lies in %q", m, in[m.Good])
			}
			if m.From != "" {
				room[m.From] += volume[m.Good]
			}
			if in[m.Good] = m.To; m.To == "" {
				in[m.Good] = "aside"
				continue
			}
			if room[m.To] -= volume[m.Good]; room[m.To] < -1e-6 {
				r.Fatalf("%+v: %v l too little room", m, -room[m.To])
			}
		}
		for k, g := range goods {
			for j, n := range is[k] {
				if n > 0 && in[g.ID] != list[j].ID {
					r.Fatalf("%s is in %q in the end", g.ID, in[g.ID])
				}
			}
		}
	})
}

// Of two full bags that exchange what they hold, one thing waits outside.
func TestAnExchangeSetsOneAside(t *testing.T) {
	list := []document.Bag{bag("rear-pannier-left", "rear-pannier-left", 0, tall), bag("handlebar-bag", "handlebar-bag", 0, tall)}
	goods := []document.Good{good("a", "rear-pannier-left", 100, 2), good("b", "handlebar-bag", 200, 2)}
	for i := range list {
		list[i].Volume = 2
	}
	d := demo(t, list, goods)
	s, problem := stowage.New(d, stowage.Options{Load: &d.Loads[0].ID, Aim: &low}, nil)
	if problem != nil {
		t.Fatal(problem)
	}
	aside := 0
	moves := s.Moves(packing.Packing{{0, 1}, {1, 0}})
	for _, m := range moves {
		if m.Aside && m.To == "" {
			aside++
		}
	}
	if aside != 1 || len(moves) != 3 {
		t.Errorf("%+v", moves)
	}
}
