package drive_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/drive"
	"steelyard/internal/parts"
)

func near(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %v, want %v ± %v", what, got, want, within)
	}
}

// fit returns parts of the catalogue.
func fit(ids ...string) []document.Part {
	var list []document.Part
	for _, id := range ids {
		list = append(list, parts.EntryByID(id).Part(id))
	}
	return list
}

func geared(kind, name string, g document.Gearing) document.Part {
	return document.Part{ID: name, Name: name, Kind: kind, Quantity: 1, Gearing: &g}
}

func read(t testing.TB, list []document.Part) *drive.Drive {
	t.Helper()
	d, problems := drive.Read(list)
	if d == nil || len(problems) > 0 {
		t.Fatal(problems)
	}
	return d
}

func ratios(gears []drive.Gear) []float64 {
	var r []float64
	for _, g := range gears {
		r = append(r, math.Round(g.Ratio*1000)/1000)
	}
	return r
}

// Even steps by hand: 400 % over 11 gears is 4^(1/10) - 1 = 14.9 %, 500 % over 13
// is 5^(1/12) - 1 = 14.4 %.
func TestEvenSteps(t *testing.T) {
	for _, c := range []struct {
		of   float64
		n    int
		want float64
	}{{4, 11, 0.149}, {5, 13, 0.144}} {
		var even []float64
		for i := range c.n {
			even = append(even, math.Pow(c.of, float64(i)/float64(c.n-1)))
		}
		d := read(t, append(fit("cranks-aluminium", "chainring-gear-hub", "cog-gear-hub", "chain-8"), geared("gear-hub", "hub", document.Gearing{Ratios: even})))
		s := drive.SpanOf(d.Gears(0))
		near(t, "mean step", s.Mean, c.want, 0.0005)
		near(t, "range", s.Range, c.of, 1e-12)
		near(t, "least step", s.Least, s.Mean, 1e-12)
		near(t, "largest step", s.Most, s.Mean, 1e-12)
		near(t, "unevenness", s.Uneven, 0, 1e-9)
		if s.Distinct != c.n || s.Doubles != 0 {
			t.Errorf("%+v", s)
		}
	}
}

// Common practice, no source: two stages of seven cogs from 19 to 41 teeth, in
// turn, give thirteen gears over about 470 %. By hand (41/19)² = 4.6565.
func TestInTurn(t *testing.T) {
	up := []int{19, 22, 25, 28, 32, 36, 41}
	box := geared("crank-gearbox", "own", document.Gearing{Stages: []document.Stage{{Driving: up, Driven: up, Combine: document.InTurn, By: document.ByChain}}})
	d := read(t, append(fit("cranks-gearbox", "chainring-gearbox", "cog-single", "chain-8"), box))
	s := drive.SpanOf(d.Gears(0))
	if s.Distinct != 13 {
		t.Errorf("%d gears", s.Distinct)
	}
	near(t, "range", s.Range, 41.0*41/19/19, 1e-9)
	near(t, "range", s.Range, 4.70, 0.05)
	// Lowest 19/41, then the driving side moves: 22/41, then the driven: 22/36.
	for i, want := range []float64{19. / 41, 22. / 41, 22. / 36, 25. / 36} {
		near(t, "ratio", d.Front[i].Ratio, want, 1e-12)
	}
	// Sides of different length: the longer one goes on alone.
	odd := drive.BoxGears(&document.Gearing{Stages: []document.Stage{{Driving: []int{20, 30}, Driven: []int{10, 20, 30, 40}, Combine: document.InTurn}}})
	var got []float64
	for _, g := range odd {
		got = append(got, g.Ratio)
	}
	if want := []float64{0.5, 0.75, 1, 1.5, 3}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Worked by hand, each of the four kinds.
func TestGearsByHand(t *testing.T) {
	// Two rings of 24 and 36 on cogs of 12, 18 and 24: 24/24 = 1, 24/18 = 1.333,
	// 36/24 = 1.5, 24/12 = 36/18 = 2, 36/12 = 3.
	d := read(t, append(fit("cranks-aluminium-double", "derailleur-9", "front-derailleur", "chain-9"),
		geared("chainring", "rings", document.Gearing{Teeth: []int{36, 24}}), geared("cassette", "cassette", document.Gearing{Teeth: []int{12, 18, 24}})))
	if got := ratios(d.Gears(0)); !slices.Equal(got, []float64{1, 1.333, 1.5, 2, 2, 3}) {
		t.Error(got)
	}
	s := drive.SpanOf(d.Gears(0))
	if s.Distinct != 5 || s.Positions != 6 || len(s.Overlaps) != 1 || s.Overlaps[0].Gears != 3 {
		t.Errorf("%+v", s)
	}
	near(t, "mean step", s.Mean, math.Pow(3, 0.25)-1, 1e-12)
	near(t, "least", s.Least, 0.125, 1e-12) // 1.5 / 1.3333
	near(t, "most", s.Most, 0.5, 1e-12)
	near(t, "overlap", s.Overlaps[0].Ratio, 2/1.5, 1e-12)
	// From 24/18 to 36/24 both levers move; 2 is best reached on the ring that is
	// on already.
	order := drive.Order(d.Gears(0))
	var doubles []bool
	for _, o := range order {
		doubles = append(doubles, o.Double)
	}
	if !slices.Equal(doubles, []bool{false, true, false, false, false}) || order[3].Ring != 36 {
		t.Errorf("%+v", order)
	}
	// The rule takes the largest cog off the large ring, the smallest off the small.
	if got := ratios(drive.Used(d.Gears(1))); !slices.Equal(got, []float64{1, 1.333, 2, 3}) {
		t.Error(got)
	}
	if got := drive.Used(d.Gears(9)); len(got) != 2 {
		t.Errorf("a ring is left without a cog: %+v", got)
	}

	// A hub of three ratios behind 40/20: twice each.
	d = read(t, append(fit("cranks-aluminium", "belt"), geared("chainring", "ring", document.Gearing{Teeth: []int{40}}), geared("cog", "cog", document.Gearing{Teeth: []int{20}}),
		geared("gear-hub", "hub", document.Gearing{Ratios: []float64{1.333, 0.75, 1}})))
	if got := ratios(d.Gears(2)); !slices.Equal(got, []float64{1.5, 2, 2.666}) || !d.Belt {
		t.Error(got)
	}
	// A gearbox of two stages in listed pairs: (20/40, 30/30) x (20/25, 30/15) is
	// 0.4, 0.8, 1, 2; behind it 36/18.
	d = read(t, append(fit("cranks-gearbox", "chain-8"), geared("chainring", "ring", document.Gearing{Teeth: []int{36}}), geared("cog", "cog", document.Gearing{Teeth: []int{18}}),
		geared("crank-gearbox", "box", document.Gearing{Stages: []document.Stage{
			{Driving: []int{20, 30}, Driven: []int{40, 30}, Combine: document.ListedPairs}, {Driving: []int{20, 30}, Driven: []int{25, 15}, Combine: document.ListedPairs}}})))
	if got := ratios(d.Gears(2)); !slices.Equal(got, []float64{0.8, 1.6, 2, 4}) || d.Front[0].Meshes != 2 {
		t.Error(got)
	}

	g := drive.Gear{Ratio: 2}
	near(t, "development", g.Development(2.2), 4.4, 1e-12)
	near(t, "inches", g.Inches(math.Pi*0.0254*28), 56, 1e-9)
	near(t, "speed", g.Speed(2.2, 60), 4.4, 1e-12)
}

func TestDemoDrivesAreRead(t *testing.T) {
	for name, c := range map[string]struct {
		n   int
		ids []string
	}{
		"derailleur": {12, []string{"cranks-aluminium", "chainring-single", "cassette-12", "chain-12", "derailleur-12"}},
		"hub":        {13, []string{"cranks-aluminium", "chainring-gear-hub", "cog-gear-hub", "chain-8", "gear-hub-wide", "chain-tensioner"}},
		"gearbox":    {13, []string{"cranks-gearbox", "gearbox-wide", "chainring-gearbox", "cog-single", "cog-spacers", "chain-8", "chain-tensioner"}},
	} {
		list := fit(c.ids...)
		d := read(t, list)
		if s := drive.SpanOf(d.Gears(2)); s.Distinct != c.n || s.Range < 4 || s.Range > 6 {
			t.Errorf("%s: %+v", name, s)
		}
		if len(d.Typical) > 0 {
			t.Errorf("%s: parts with gears of their own are called typical: %v", name, d.Typical)
		}
		// A document of before, without any gearing, has the gears of its entries.
		for i := range list {
			list[i].Gearing = nil
		}
		if old := read(t, list); !slices.Equal(ratios(old.Gears(2)), ratios(d.Gears(2))) || len(old.Typical) == 0 {
			t.Errorf("%s: %+v", name, old)
		}
	}
}

func TestDriveTellsWhatIsMissingOrDoubled(t *testing.T) {
	whole := func() []document.Part {
		return fit("cranks-aluminium", "chainring-single", "cassette-12", "chain-12", "derailleur-12")
	}
	for said, change := range map[string]func(list []document.Part) []document.Part{
		"a chainring or front belt pulley is missing": func(l []document.Part) []document.Part { return slices.Delete(l, 1, 2) },
		"a cassette or a cog is missing":              func(l []document.Part) []document.Part { l[2].Quantity = 0; return l },
		`"Cassette, 12-speed, very wide range" and "Cog for a gear hub"`: func(l []document.Part) []document.Part {
			return append(l, fit("cog-gear-hub")...)
		},
		`"Chain, 12-speed" and "Belt"`:  func(l []document.Part) []document.Part { return append(l, fit("belt")...) },
		`2 pieces of "Chain, 12-speed"`: func(l []document.Part) []document.Part { l[3].Quantity = 2; return l },
		`"Gear hub, wide range" and "Gear hub, medium range"`: func(l []document.Part) []document.Part {
			return append(l, fit("gear-hub-wide", "gear-hub-medium")...)
		},
		`"Chainring, single, aluminium" and "Chainring, single, steel"`: func(l []document.Part) []document.Part {
			return append(l, fit("chainring-single-steel")...)
		},
		`teeth of "Mine" is not known`: func(l []document.Part) []document.Part {
			l[2].Name, l[2].Catalogue, l[2].Gearing = "Mine", "", nil
			return l
		},
		`ratios of "Mine" are not known`: func(l []document.Part) []document.Part {
			return append(l, document.Part{ID: "m", Name: "Mine", Kind: "gear-hub", Quantity: 1})
		},
		`The number of teeth is 0`: func(l []document.Part) []document.Part { l[2].Gearing = &document.Gearing{Teeth: []int{0}}; return l },
		"leads nowhere": func(l []document.Part) []document.Part {
			return append(l, geared("gear-hub", "hub", document.Gearing{Stages: []document.Stage{{Driving: []int{20}}}}))
		},
		"32768 gears": func(l []document.Part) []document.Part {
			many := make([]int, 32)
			for i := range many {
				many[i] = 20 + i
			}
			l[1].Gearing, l[2].Gearing = &document.Gearing{Teeth: many}, &document.Gearing{Teeth: many}
			return append(l, geared("gear-hub", "hub", document.Gearing{Ratios: slices.Repeat([]float64{1}, 32)}))
		},
	} {
		d, problems := drive.Read(change(whole()))
		if d != nil || !slices.ContainsFunc(problems, func(p document.Problem) bool {
			return p.Severity == document.SeverityError && strings.Contains(p.Message.String(), said)
		}) {
			t.Errorf("nothing says %q: %v", said, problems)
		}
	}
	d, problems := drive.Read(fit("chainring-single", "cassette-12", "chainring-inner"))
	if d == nil || len(problems) != 4 {
		t.Errorf("%v", problems)
	}
}

// Whatever is fitted, gears come out in order, and the steps make up the range.
func TestGearsAreInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		teeth := func(least, most int, label string) []int {
			return rapid.SliceOfN(rapid.IntRange(document.MinTeeth, document.MaxTeeth), least, most).Draw(t, label)
		}
		list := []document.Part{geared("chainring", "r", document.Gearing{Teeth: teeth(1, 3, "rings")}), geared("cassette", "c", document.Gearing{Teeth: teeth(1, 12, "cogs")})}
		if rapid.Bool().Draw(t, "hub") {
			list = append(list, geared("gear-hub", "h", document.Gearing{Ratios: rapid.SliceOfN(rapid.Float64Range(document.MinRatio, document.MaxRatio), 1, 8).Draw(t, "ratios")}))
		}
		d, problems := drive.Read(list)
		if d == nil {
			t.Fatal(problems)
		}
		gears := d.Gears(drive.Crossing(rapid.IntRange(-1, 5).Draw(t, "rule")))
		used := drive.Used(gears)
		if len(used) == 0 || !slices.IsSortedFunc(gears, func(a, b drive.Gear) int { return int(math.Copysign(1, a.Ratio-b.Ratio)) * btoi(a.Ratio != b.Ratio) }) {
			t.Fatalf("%+v", gears)
		}
		s, product := drive.SpanOf(used), 1.0
		order := drive.Order(used)
		for _, o := range order {
			product *= 1 + o.Step
		}
		if first, last := order[0].Ratio, order[len(order)-1].Ratio; math.Abs(product*first-last) > 1e-9*last || s.Range < product/1.03 {
			t.Fatalf("steps make up %v, range %v", product, s.Range)
		}
		if s.Mean > 0 && (s.Least > s.Mean+1e-9 || s.Most < s.Mean-1e-9) {
			t.Fatalf("%+v", s)
		}
	})
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}
