package conversion

import (
	"reflect"
	"slices"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/parts"
)

func plan(t *testing.T, d *document.Document, build, set string) *Plan {
	t.Helper()
	s := parts.SetByID(set)
	if s == nil {
		t.Fatalf("there is no set %s", set)
	}
	p, err := New(d, build, s, nil)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func entries(list []document.Part) []string {
	ids := make([]string, len(list))
	for i := range list {
		ids[i] = list[i].Catalogue
	}
	slices.Sort(ids)
	return ids
}

func comes(p *Plan) []string {
	var list []document.Part
	for _, c := range p.Comes {
		list = append(list, c.Part)
	}
	return entries(list)
}

// Worked by hand, on a bike with rear suspension and one-ring derailleurs that
// has the other two drives beside it.
func TestDerailleursMakeRoomForABelt(t *testing.T) {
	p := plan(t, documenttest.Demo(t), "derailleur", "gear-hub-belt")
	if got, want := entries(p.Goes), []string{
		"cable-rear", "cassette-12", "chain-12", "chainring-single", "derailleur-12", "derailleur-hanger",
		"hub-rear-cassette", "shifter-right", "spare-hanger", "spokes-rear-622",
	}; !slices.Equal(got, want) {
		t.Errorf("goes %v\nwant %v", got, want)
	}
	if got, want := comes(p), []string{
		"belt", "belt-cog-gear-hub", "belt-ring-gear-hub", "belt-tensioner", "cable-gear-hub",
		"gear-hub-wide", "spokes-gear-hub-622", "torque-support", "twist-shifter-gear-hub",
	}; !slices.Equal(got, want) {
		t.Errorf("comes %v\nwant %v", got, want)
	}
	if got, want := entries(p.Stays), []string{"bottom-bracket-threaded", "cranks-aluminium"}; !slices.Equal(got, want) {
		t.Errorf("stays %v\nwant %v", got, want)
	}
	for _, c := range p.Comes {
		if want := c.Part.Catalogue[0:4] != "belt"; want != (c.Origin == FromBuild && c.Build == "gearhub") {
			t.Errorf("%s comes from %s %s", c.Part.Name, c.Origin, c.Build)
		}
	}
}

// What is common to the gearbox's frame and its plain sister is the frame; the
// cradle is in the one and not in the other, and is never counted twice.
func TestFrameOfAGearboxIsThoughtOf(t *testing.T) {
	d := documenttest.Demo(t)
	away := plan(t, d, "gearbox", "derailleur-one-ring")
	if got := entries(away.Goes); !slices.Contains(got, "full-suspension-main-frame-aluminium-gearbox") {
		t.Errorf("goes %v", got)
	}
	if got := comes(away); !slices.Contains(got, "full-suspension-main-frame-aluminium") {
		t.Errorf("comes %v", got)
	}
	other := plan(t, d, "gearbox", "gearbox-medium-chain")
	if got := comes(other); !slices.Equal(got, []string{"gearbox-medium"}) {
		t.Errorf("of another gearbox only the gearbox should come, not %v", got)
	}
	if got := comes(plan(t, d, "derailleur", "gearbox-chain")); !slices.Contains(got, "gearbox-cradle") {
		t.Errorf("comes %v; a plain frame wants a cradle", got)
	}
}

// weighed gives every part of a build a mass and a name of its own, known to a gram.
func weighed(d *document.Document, build string) {
	b := d.Build(build)
	for i := range b.Parts {
		p := &b.Parts[i]
		p.Mass += float64(i%7) - 3.5
		p.HalfWidth, p.Basis = 1, document.Weighed
	}
}

// sorted returns the parts of a build by id.
func sorted(b *document.Build) []document.Part {
	list := slices.Clone(b.Parts)
	slices.SortFunc(list, func(a, b document.Part) int {
		if a.ID < b.ID {
			return -1
		}
		return 1
	})
	return list
}

// A drive that was weighed comes back as it was, with its ids, when the set that
// it is made of comes back; also parts that are in no catalogue.
func TestWeighedPartsComeBack(t *testing.T) {
	for _, there := range []string{"gear-hub-chain", "gear-hub-belt", "gearbox-belt", "derailleur-two-rings"} {
		d := documenttest.Demo(t)
		weighed(d, "derailleur")
		if there != "derailleur-two-rings" {
			d.Build("derailleur").Part("cassette").Catalogue = "" // made by hand
		}
		before := sorted(d.Build("derailleur"))
		gone := plan(t, d, "derailleur", there).Apply(Except{})
		if len(gone.Aside) == 0 {
			t.Fatalf("%s: nothing was put aside", there)
		}
		back := plan(t, gone, "derailleur", "derailleur-one-ring").Apply(Except{})
		// The spare hanger is no part of the set; it waits.
		missing := 0
		after := sorted(back.Build("derailleur"))
		for i := range before {
			if j := slices.IndexFunc(after, func(p document.Part) bool { return p.ID == before[i].ID }); j < 0 {
				missing++
				if before[i].Kind != "spare" {
					t.Errorf("%s: %s has not come back", there, before[i].Name)
				}
			} else if !reflect.DeepEqual(after[j], before[i]) {
				t.Errorf("%s: %+v came back as %+v", there, before[i], after[j])
			}
		}
		if len(after)+missing != len(before) {
			t.Errorf("%s: %d parts, %d before", there, len(after), len(before))
		}
	}
}

// Whatever set is put on whatever build: the document is sound, nothing that was
// weighed is lost, what is not of the area is untouched, the set is then all
// there, and doing it again changes nothing.
func TestEveryChangeOfEveryBuild(t *testing.T) {
	count := func(d *document.Document) (weighed map[string]int) {
		weighed = make(map[string]int)
		for i := range d.Builds {
			for _, p := range d.Builds[i].Parts {
				if p.Basis == document.Weighed {
					weighed[p.Name]++
				}
			}
		}
		for _, a := range d.Aside {
			weighed[a.Part.Name]++
		}
		return weighed
	}
	for _, build := range []string{"gearbox", "gearhub", "derailleur"} {
		d := documenttest.Demo(t)
		weighed(d, build)
		had := count(d)
		before := *d
		for _, s := range parts.Sets() {
			p := plan(t, d, build, s.ID)
			after := p.Apply(Except{})
			if !reflect.DeepEqual(*d, before) {
				t.Fatalf("%s on %s changed the document that it was planned for", s.ID, build)
			}
			for _, x := range document.Check(after) {
				if x.Severity == document.SeverityError {
					t.Errorf("%s on %s: %s", s.ID, build, x.Message)
				}
			}
			for name, n := range had {
				if count(after)[name] < n {
					t.Errorf("%s on %s: %s is lost", s.ID, build, name)
				}
			}
			going := make(map[string]bool)
			for _, g := range p.Goes {
				going[g.ID] = true
			}
			b := after.Build(build)
			for _, q := range d.Build(build).Parts {
				if r := b.Part(q.ID); !going[q.ID] && (r == nil || !reflect.DeepEqual(*r, q)) {
					t.Errorf("%s on %s: %s is no longer what it was", s.ID, build, q.Name)
				}
			}
			if again := plan(t, after, build, s.ID); len(again.Goes)+len(again.Comes) > 0 {
				t.Errorf("%s on %s once more: %v goes, %v comes", s.ID, build, entries(again.Goes), comes(again))
			}
		}
	}
}

// What is unticked is left as it is.
func TestExceptions(t *testing.T) {
	d := documenttest.Demo(t)
	p := plan(t, d, "derailleur", "gear-hub-chain")
	skip := slices.IndexFunc(p.Comes, func(c Coming) bool { return c.Part.Kind == "chain" })
	after := p.Apply(Except{Keep: []string{"chain"}, Skip: []int{skip}}).Build("derailleur")
	chains := 0
	for _, q := range after.Parts {
		if q.Kind == "chain" {
			chains++
		}
	}
	if q := after.Part("chain"); chains != 1 || q == nil || q.Catalogue != "chain-12" {
		t.Errorf("%d chains, %+v", chains, q)
	}

	// What would stay can go, and is kept aside if it was weighed.
	d = documenttest.Demo(t)
	cranks := d.Build("derailleur").Part(p.Stays[1].ID)
	if cranks == nil || cranks.Kind != "crank" {
		t.Fatalf("%+v", cranks)
	}
	cranks.Mass, cranks.Basis, cranks.HalfWidth = 612, document.Weighed, 1
	p = plan(t, d, "derailleur", "gear-hub-chain")
	dropped := p.Apply(Except{Drop: []string{cranks.ID, "main-frame", "no such"}})
	if q := dropped.Build("derailleur").Part(cranks.ID); q != nil {
		t.Errorf("%+v has stayed", q)
	}
	if len(dropped.Aside) == 0 || !slices.ContainsFunc(dropped.Aside, func(a document.Aside) bool { return a.Part.ID == cranks.ID && a.Part.Mass == 612 }) {
		t.Errorf("it is not among what is kept aside: %+v", dropped.Aside)
	}
	if dropped.Build("derailleur").Part("main-frame") == nil {
		t.Error("a part that the plan does not name has gone")
	}
}

// A wheel of another size brings the tyre that is nearest in width, no tube where
// there was none, and the size to the build.
func TestWheelOfAnotherSize(t *testing.T) {
	d := documenttest.Demo(t)
	p := plan(t, d, "derailleur", "wheel-front-disc-559")
	if got, want := comes(p), []string{"rim-front-559-aluminium", "spokes-front-559", "tyre-front-50-559", "hub-front"}; !slices.Equal(got, sortedStrings(want)) {
		t.Errorf("comes %v, want %v", got, want)
	}
	if after := p.Apply(Except{}).Build("derailleur"); after.Wheels.Front.BeadSeat != 559 || after.Wheels.Rear.BeadSeat != 622 {
		t.Errorf("%+v", after.Wheels)
	}
}

func sortedStrings(s []string) []string {
	s = slices.Clone(s)
	slices.Sort(s)
	return s
}

func TestUnknownBuild(t *testing.T) {
	if _, err := New(documenttest.Demo(t), "nobody", &parts.Sets()[0], nil); err == nil {
		t.Error("a build that there is not was changed")
	}
}

// A wheel on a build that has none yet brings tyre and tube as well; where a tyre
// lies on the rim the set leaves it alone.
func TestWheelOfABuildWithoutOne(t *testing.T) {
	d := documenttest.Demo(t)
	b := d.Build("derailleur")
	b.Parts = nil
	d.Aside = nil
	d.Builds = []document.Build{*b}
	p := plan(t, d, "derailleur", "wheel-front-disc-622")
	if got, want := comes(p), []string{"rim-front-622-aluminium", "spokes-front-622", "rim-tape-front", "tyre-front-60-622", "tube-front-622", "hub-front"}; !slices.Equal(got, sortedStrings(want)) {
		t.Errorf("comes %v, want %v", got, want)
	}
	again := p.Apply(Except{})
	if q := plan(t, again, "derailleur", "wheel-front-dynamo-622"); len(comes(q)) != 1 || comes(q)[0] != "dynamo-hub" {
		t.Errorf("to the same wheel with another hub come %v", comes(q))
	}
}
