package document_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/words"
)

// fixture opens a document of testdata.
func fixture(t *testing.T, name string) *document.Document {
	t.Helper()
	text, err := os.ReadFile(documents + "/" + name)
	if err != nil {
		t.Fatal(err)
	}
	d, problems := document.Open(text)
	if d == nil || len(problems) > 0 {
		t.Fatal(problems)
	}
	return d
}

func TestOpenGivesDefaultsToLoads(t *testing.T) {
	d := fixture(t, "ok-loaded-sparse.json")
	packing := document.DefaultPacking
	packing.Low = 5
	want := &document.Document{
		Format: document.Format, Version: 1, Show: document.Show{Mass: "kg", Length: "mm", Packing: &packing},
		Builds: []document.Build{{ID: "a", Name: "A"}},
		Riders: []document.Rider{{ID: "r1", Name: "Rider", Stature: 1800, Mass: 80000, HalfWidth: 1000, Table: "male", Posture: "leaned"}},
		Loads: []document.Load{
			{
				ID: "l1", Name: "L",
				Bags: []document.Bag{
					{ID: "b1", Name: "Bag", Basis: document.Guessed, Station: "saddle-bag", Carrier: document.MainFrame},
					{ID: "b2", Name: "Roll", Mass: 400, HalfWidth: 1, Basis: document.Weighed, Station: "handlebar-bag", Carrier: document.MainFrame},
				},
				Goods: []document.Good{{ID: "g1", Name: "Thing", Quantity: 1, Mass: 100, HalfWidth: 20, Basis: document.Guessed}},
			},
			{ID: "l2", Name: "Nothing"},
		},
		WeighIns: []document.WeighIn{{ID: "w1", Name: "W", Build: "a", State: document.Bare}},
	}
	if diff := cmp.Diff(want, d, cmpopts.EquateEmpty()); diff != "" {
		t.Error(diff)
	}
	for _, p := range document.Check(d) {
		if p.Severity == document.SeverityError {
			t.Error(p)
		}
	}
}

// A document without riders and loads is written as it was before there were
// any.
func TestLoadsAreWrittenOnlyWhenThere(t *testing.T) {
	text, err := document.WriteCompact(documenttest.TwoBuilds(2))
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"riders", "loads", "weigh_ins", "ratings", "state", "supplies", "grip", "packing"} {
		if strings.Contains(string(text), `"`+key+`"`) {
			t.Errorf("%s is written:\n%s", key, text)
		}
	}
	text, err = document.WriteCompact(&document.Document{Loads: []document.Load{{}}, WeighIns: []document.WeighIn{{}}})
	if err != nil || strings.Contains(string(text), "null") {
		t.Errorf("%s, %v", text, err)
	}
}

// What only the whole document shows: names of what is not there, and ids that
// are used twice.
func TestCheckFollowsReferences(t *testing.T) {
	problem := func(severity, field, says string) document.Problem {
		return document.Problem{Severity: severity, Field: field, Message: words.Plain(says)}
	}
	fail := func(field, says string) document.Problem { return problem(document.SeverityError, field, says) }
	warn := func(field, says string) document.Problem { return problem(document.SeverityWarning, field, says) }
	in := func(p document.Problem, load, bag, good string) document.Problem {
		p.Load, p.Bag, p.Good = load, bag, good
		return p
	}
	kitchen := func(p document.Problem) document.Problem { p.WeighIn = "kitchen"; return p }
	for _, c := range []struct {
		spoil func(*document.Document)
		want  document.Problem
	}{
		{func(d *document.Document) { d.Show.Loads[0] = "none" }, warn("show.loads", `"none"`)},
		{func(d *document.Document) { d.Show.Loads = []string{"", "", ""} }, warn("show.loads", "3 loads")},
		{func(d *document.Document) { d.Show.State = "wet" }, warn("show.state", "ready to ride")},
		{func(d *document.Document) { d.Show.Supplies = "gone" }, warn("show.supplies", "as full")},
		{func(d *document.Document) { d.Show.Grip = math.NaN() }, fail("show.grip", "NaN")},
		{func(d *document.Document) { d.Show.Packing.Of = "bike" }, fail("show.packing.of", `"load" or "all"`)},
		{func(d *document.Document) { d.Show.Packing.Low = -1 }, fail("show.packing.low", "0 to 1000")},
		{func(d *document.Document) { d.Loads[0].Rider = "you" }, in(fail("rider", `"you"`), "tour", "", "")},
		{func(d *document.Document) { d.Loads[0].Goods[1].In = "boot" }, in(fail("in", `"boot"`), "tour", "", "water")},
		{func(d *document.Document) { d.Loads[0].Goods[0].HalfWidth = math.Inf(1) }, in(fail("half_width_g", "+Inf"), "tour", "", "tent")},
		{func(d *document.Document) { d.Loads[0].Goods[0].Mass = 0 }, in(warn("mass_g", "This good has no mass"), "tour", "", "tent")},
		{func(d *document.Document) { d.Loads[0].Goods[0].ID = "" }, in(fail("id", "no id"), "tour", "", "")},
		{func(d *document.Document) { d.Loads[0].Bags[1].ID = "left" }, in(fail("id", "Two bags"), "tour", "left", "")},
		{func(d *document.Document) { d.Loads[0].Bags[1].Offset[2] = 6000 }, in(fail("offset_mm", "6000 mm"), "tour", "bar", "")},
		{func(d *document.Document) { d.Riders[0].HalfWidth = 71000 }, document.Problem{Severity: document.SeverityError, Rider: "me", Field: "half_width_g", Message: words.Plain("larger than the mass")}},
		{func(d *document.Document) { d.Riders[0].Crank = 400 }, document.Problem{Severity: document.SeverityError, Rider: "me", Field: "crank_deg", Message: words.Plain("400°")}},
		{func(d *document.Document) { d.WeighIns[0].Build = "b" }, kitchen(fail("build", `"b"`))},
		{func(d *document.Document) { d.WeighIns[0].Load = "b" }, kitchen(fail("load", `"b"`))},
		{func(d *document.Document) { d.WeighIns[0].Load = "" }, kitchen(fail("load", "with which load"))},
		{func(d *document.Document) { d.WeighIns[0].Readings[1].Scale = "s3" }, kitchen(fail("readings.1.scale", `"s3"`))},
		{func(d *document.Document) { d.WeighIns[0].Readings[1].Resolution = 50 }, kitchen(warn("readings.1.resolution_g", "step of that counts"))},
		{func(d *document.Document) { d.WeighIns[0].Scales[1].ID = "s1" }, kitchen(fail("scales.1.id", "Two scales"))},
		{func(d *document.Document) { d.WeighIns[0].Scales[1].Step = math.NaN() }, kitchen(fail("scales.1.step_g", "NaN"))},
		{func(d *document.Document) { d.WeighIns[0].Readings = nil }, kitchen(warn("readings", "no reading"))},
		{func(d *document.Document) { d.Builds[0].Ratings[2].What = "total" }, document.Problem{Severity: document.SeverityError, Build: "a", Field: "ratings.2.what", Message: words.Plain("two ratings")}},
	} {
		d := fixture(t, "ok-loaded.json")
		if list := document.Check(d); len(list) > 0 {
			t.Fatal(list)
		}
		c.spoil(d)
		list := document.Check(d)
		if len(list) == 0 {
			t.Errorf("nothing is wrong: want %+v", c.want)
			continue
		}
		got := list[0]
		if !strings.Contains(got.Message.String(), c.want.Message.String()) {
			t.Errorf("%q does not say %q", got.Message.String(), c.want.Message.String())
		}
		got.Message, c.want.Message = words.Message{}, words.Message{}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s", diff)
		}
	}
}

func TestOpenSeparatesEqualIDsOfLoads(t *testing.T) {
	d, problems := document.Open([]byte(`{"format": "steelyard-document", "version": 1,
		"riders": [{"name": "A"}, {"id": "r1", "name": "B"}, {"id": "r1", "name": "C"}],
		"loads": [
			{"id": "x", "name": "One", "bags": [{"id": "b"}, {"id": "b", "name": "Second"}], "goods": [{"id": "g"}, {}, {"id": "g", "name": "Third"}]},
			{"id": "x", "name": "Two", "bags": [{"id": "b"}], "goods": [{"id": "g"}]}],
		"weigh_ins": [{"id": "w"}, {"id": "w"}]}`))
	if d == nil || len(problems) != 5 {
		t.Fatal(problems)
	}
	var at []string
	for _, p := range problems {
		at = append(at, fmt.Sprint(p.Severity, p.Rider, "/", p.Load, "/", p.Bag, p.Good, "/", p.WeighIn))
	}
	want := []string{"warningr3///", "warning/l1//", "warning/x/b2/", "warning/x/g3/", "warning///w1"}
	if diff := cmp.Diff(want, at); diff != "" {
		t.Error(diff, problems)
	}
	if got := d.Riders[0].ID + d.Loads[1].ID + d.Loads[1].Bags[0].ID + d.Loads[1].Goods[0].ID; got != "r2l1bg" {
		t.Error(got)
	}
	if m := problems[2].Message.String(); !strings.HasPrefix(m, "Bag “Second” of load “One”: ") {
		t.Error(m)
	}
	for _, p := range document.Check(d) {
		if p.Field == "id" {
			t.Error(p)
		}
	}
}

func TestOpenLimitsOfLoads(t *testing.T) {
	text := func(list string, n int, close string) string {
		return `{"format":"steelyard-document","version":1,` + list + strings.TrimSuffix(strings.Repeat("{},", n), ",") + close + `}`
	}
	for _, c := range []struct {
		list, close string
		most        int
		says        string
	}{
		{`"riders":[`, `]`, document.MaxRiders, "100 riders"},
		{`"loads":[`, `]`, document.MaxLoads, "100 loads"},
		{`"weigh_ins":[`, `]`, document.MaxWeighIns, "100 weigh-ins"},
		{`"loads":[{"bags":[{}]},{"bags":[`, `]}]`, document.MaxBags - 1, "1000 bags"},
		{`"loads":[{"goods":[`, `]}]`, document.MaxGoods, "10000 goods"},
		{`"weigh_ins":[{"readings":[`, `]}]`, document.MaxReadings, "2000 readings"},
		{`"weigh_ins":[{"scales":[`, `]}]`, document.MaxScales, "1000 scales"},
		{`"builds":[{"ratings":[`, `]}]`, document.MaxRatings, "2000 ratings"},
	} {
		if d, problems := document.Open([]byte(text(c.list, c.most, c.close))); d == nil {
			t.Errorf("%s: %v", c.list, problems)
		}
		if d, problems := document.Open([]byte(text(c.list, c.most+1, c.close))); d != nil || !strings.Contains(problems[0].Message.String(), c.says) {
			t.Errorf("%s: %v, want %q", c.list, problems, c.says)
		}
	}
}

func TestNewIDsOfLoads(t *testing.T) {
	d := fixture(t, "ok-loaded-sparse.json")
	d.CopyLoad("l1", "Copy")
	got := []string{d.NewIDs(document.SortRider, 1)[0], d.NewIDs(document.SortLoad, 1)[0], d.NewIDs(document.SortBag, 1)[0], d.NewIDs(document.SortGood, 1)[0], d.NewIDs(document.SortWeighIn, 1)[0]}
	if diff := cmp.Diff([]string{"r2", "l4", "b3", "g2", "w2"}, got); diff != "" {
		t.Error(diff)
	}
	if d.Rider("r1") != &d.Riders[0] || d.Load("l2") != &d.Loads[1] || d.WeighIn("w1") != &d.WeighIns[0] ||
		d.Loads[0].Bag("b2") != &d.Loads[0].Bags[1] || d.Loads[0].Good("g1") != &d.Loads[0].Goods[0] {
		t.Error("found another one")
	}
	if d.Rider("x") != nil || d.Load("x") != nil || d.WeighIn("x") != nil || d.Loads[0].Bag("x") != nil || d.Loads[0].Good("x") != nil {
		t.Error("found what is not there")
	}
}

// A copy is the same load, and changing it leaves the first as it was.
func TestCopyLoad(t *testing.T) {
	d := fixture(t, "ok-loaded.json")
	c := d.CopyLoad("tour", "Short tour")
	if c == nil || c.ID == "tour" || c.Name != "Short tour" {
		t.Fatalf("%+v", c)
	}
	if diff := cmp.Diff(d.Loads[0], *c, cmpopts.IgnoreFields(document.Load{}, "ID", "Name")); diff != "" {
		t.Error(diff)
	}
	c.Bags[0].Mass, c.Goods[0].In = 1, ""
	if d.Loads[0].Bags[0].Mass != 900 || d.Loads[0].Goods[0].In != "left" {
		t.Error("the first changed with its copy")
	}
	if d.CopyLoad("none", "x") != nil {
		t.Error("copied what is not there")
	}
	b := d.CopyBuild("a", "B")
	b.Ratings[0].Limit = 1
	if d.Builds[0].Ratings[0].Limit != 140000 {
		t.Error("the ratings of a build changed with its copy")
	}
}

func TestWriteNamesTheFigureOfALoadThatIsNone(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		spoil func(*document.Document)
		says  string
	}{
		{func(d *document.Document) { d.Riders[0].Mass = nan }, "rider “Rider”: mass_g"},
		{func(d *document.Document) { d.Loads[0].Bags[1].Offset[1] = nan }, "bag “Bar bag” of load “Tour”: offset_mm"},
		{func(d *document.Document) { d.Loads[0].Goods[1].Volume = nan }, "good “Water” of load “Tour”: volume_l"},
		{func(d *document.Document) { d.WeighIns[0].Readings[1].Height = nan }, "weigh-in “In the kitchen”: readings.1.height_mm"},
		{func(d *document.Document) { d.WeighIns[0].Scales[1].Step = nan }, "weigh-in “In the kitchen”: scales.1.step_g"},
		{func(d *document.Document) { d.WeighIns[0].RadiusPlus = &nan }, "weigh-in “In the kitchen”: radius_within_mm"},
		{func(d *document.Document) { d.Builds[0].Ratings[2].Limit = nan }, "build “Gear hub”: ratings.2.limit_g"},
		{func(d *document.Document) { d.Show.Packing.Low = nan }, "show.packing.low"},
	} {
		d := fixture(t, "ok-loaded.json")
		c.spoil(d)
		if _, err := document.Write(d); err == nil || !strings.Contains(err.Error(), c.says+" is not a finite number") {
			t.Errorf("%v, want %s", err, c.says)
		}
	}
}

func TestOfBareBike(t *testing.T) {
	for kind, want := range map[string]bool{
		"frame": true, "rack": true, "cage": true, "mudguard": true, "light": true, "stand": true, "other": true, "unheard-of": true,
		"lock": false, "pannier": false, "bag": false, "bottle": false, "water": false, "tool": false, "pump": false, "spare": false, "load": false,
	} {
		if document.OfBareBike(kind, document.GroupOf(kind)) != want {
			t.Errorf("%s: %v", kind, !want)
		}
	}
}
