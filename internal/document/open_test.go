package document_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"steelyard/internal/document"
	"steelyard/internal/document/documenttest"
	"steelyard/internal/words"
)

const documents = "../../testdata/documents"

// wanted is the first error of each fixture that has one: where it is, and
// words of its message.
var wanted = map[string]struct {
	build, part, field string
	says               []string
}{
	"wrong-format.json":              {"", "", "format", []string{`"something-else"`, `"steelyard-document"`}},
	"wrong-newer-version.json":       {"", "", "version", []string{"version 2", "up to 1", "not been changed"}},
	"wrong-version-zero.json":        {"", "", "version", []string{"is 0", "from 1 to 1"}},
	"wrong-no-version.json":          {"", "", "version", []string{`"version"`, "value 1"}},
	"wrong-no-format.json":           {"", "", "format", []string{`"format"`}},
	"wrong-unknown-key-top.json":     {"", "", "colour", []string{`"colour"`, "not known"}},
	"wrong-unknown-key-frame.json":   {"a", "", "frame.stak_mm", []string{"“Gear hub”", `"stak_mm"`, `"stack_mm" meant`}},
	"wrong-unknown-key-part.json":    {"a", "p1", "weight", []string{"“Rear hub” of build “Gear hub”", `"weight"`, "mass_g"}},
	"wrong-key-in-capitals.json":     {"a", "p1", "Mass_g", []string{`"Mass_g"`, `"mass_g" meant`}},
	"wrong-mass-text.json":           {"a", "p1", "mass_g", []string{"Line ", "“Rear hub”", `"NaN", a text`, "number in grams"}},
	"wrong-mass-null.json":           {"a", "p1", "mass_g", []string{"null", "number in grams"}},
	"wrong-mass-negative.json":       {"a", "p1", "mass_g", []string{"-1 g", "0 g or more"}},
	"wrong-mass-absurd.json":         {"a", "p1", "mass_g", []string{"500001 g", "500000 g"}},
	"wrong-half-width-negative.json": {"a", "p1", "half_width_g", []string{"-0.5 g", "0 g or more"}},
	"wrong-quantity-half.json":       {"a", "p1", "quantity", []string{"1.5", "whole number"}},
	"wrong-quantity-huge.json":       {"a", "p1", "quantity", []string{"10001", "0 to 10000"}},
	"wrong-basis.json":               {"a", "p1", "basis", []string{`"measured"`, `"weighed", "stated", "typical" or "guessed"`}},
	"wrong-carrier.json":             {"a", "p1", "carrier", []string{`"frame"`, `"main-frame"`}},
	"wrong-form.json":                {"a", "p1", "shape.form", []string{`"sphere"`, `"disc"`}},
	"wrong-offset-short.json":        {"a", "p1", "offset_mm", []string{"2 values", "3 numbers in millimetres"}},
	"wrong-offset-long.json":         {"a", "p1", "offset_mm", []string{"4 values", "3 numbers"}},
	"wrong-offset-far.json":          {"a", "p1", "offset_mm", []string{"5001 mm", "5000 mm"}},
	"wrong-size-negative.json":       {"a", "p1", "shape.size_mm", []string{"-1 mm", "0 to 5000 mm"}},
	"wrong-builds-object.json":       {"", "", "builds", []string{"an object", "a list"}},
	"wrong-top-list.json":            {"", "", "", []string{"a list", "an object"}},
	"wrong-no-place.json":            {"a", "p1", "station", []string{"station", "at_mm"}},
	"broken-cut-off.json":            {"a", "", "wheels.front", []string{"Line 1", "Gear hub", "ends too early"}},
	"broken-huge-number.json":        {"a", "p1", "mass_g", []string{"1e999", "too large"}},
	"broken-bare-nan.json":           {"a", "p1", "mass_g", []string{"a value", `"NaN"`}},
	"broken-duplicate-key.json":      {"a", "p1", "mass_g", []string{"twice"}},
	"broken-deep.json":               {"", "", "title", []string{"deeper than 32"}},
	"broken-trailing-comma.json":     {"a", "p1", "offset_mm", []string{"comma before ]", "take it out"}},
	"broken-comment.json":            {"", "", "", []string{"no comments"}},
	"broken-empty.json":              {"", "", "", []string{"nothing in this text"}},
	"broken-not-utf8.json":           {"", "", "", []string{"Line 1", "UTF-8"}},
	"broken-utf16.json":              {"", "", "", []string{"UTF-16"}},
}

// wantedLoaded is the same for what bikes carry: the first error, and words of
// its message in the place of the message.
var wantedLoaded = map[string]document.Problem{
	"wrong-rider-tall.json":            {Rider: "me", Field: "stature_mm", Message: words.Plain("“Rider”|17400 mm|800 to 2500 mm")},
	"wrong-rider-light.json":           {Rider: "me", Field: "mass_g", Message: words.Plain("7000 g|10000 to 300000 g")},
	"wrong-rider-table.json":           {Rider: "me", Field: "table", Message: words.Plain(`"child"|"female" or "male"`)},
	"wrong-rider-posture.json":         {Rider: "me", Field: "posture", Message: words.Plain(`"prone"|"standing"`)},
	"wrong-rider-clothing.json":        {Rider: "me", Field: "clothing_g", Message: words.Plain("-1 g|0 to 30000 g")},
	"wrong-rider-unknown-key.json":     {Rider: "me", Field: "weight_g", Message: words.Plain(`Rider “Rider”|"weight_g"|mass_g`)},
	"wrong-bag-no-station.json":        {Load: "tour", Bag: "left", Field: "station", Message: words.Plain("Bag “Pannier, left” of load “Tour”|give a station")},
	"wrong-bag-mass-negative.json":     {Load: "tour", Bag: "left", Field: "mass_g", Message: words.Plain("-900 g")},
	"wrong-bag-carrier.json":           {Load: "tour", Bag: "left", Field: "carrier", Message: words.Plain(`"rack"|"main-frame"`)},
	"wrong-bag-volume.json":            {Load: "tour", Bag: "left", Field: "volume_l", Message: words.Plain("20000 l|0 to 500 l")},
	"wrong-bag-permitted-text.json":    {Load: "tour", Bag: "left", Field: "permitted_g", Message: words.Plain(`“Pannier, left”|"9 kg", a text|number in grams`)},
	"wrong-bag-size-short.json":        {Load: "tour", Bag: "left", Field: "size_mm", Message: words.Plain("2 values|3 numbers in millimetres")},
	"wrong-good-quantity.json":         {Load: "tour", Good: "tent", Field: "quantity", Message: words.Plain("Good “Tent” of load “Tour”|-1|0 to 10000")},
	"wrong-good-mass-absurd.json":      {Load: "tour", Good: "tent", Field: "mass_g", Message: words.Plain("500001 g")},
	"wrong-good-supply.json":           {Load: "tour", Good: "tent", Field: "supply", Message: words.Plain(`"gas"|"water", "food" or "fuel"`)},
	"wrong-good-liquid.json":           {Load: "tour", Good: "tent", Field: "liquid", Message: words.Plain(`"gas"|"stays", "moves" or "no"`)},
	"wrong-bag-liquids.json":           {Load: "tour", Bag: "left", Field: "liquids", Message: words.Plain(`"all"|"only", "upright" or "none"`)},
	"wrong-show-moves.json":            {Field: "show.packing.moves", Message: words.Plain("-1|0 to 10000")},
	"wrong-good-pinned-text.json":      {Load: "tour", Good: "tent", Field: "pinned", Message: words.Plain(`"yes", a text|true or false`)},
	"wrong-good-unknown-key.json":      {Load: "tour", Good: "tent", Field: "weight", Message: words.Plain(`"weight"|mass_g`)},
	"wrong-rating-what.json":           {Build: "a", Field: "ratings.1.what", Message: words.Plain(`"bars"|"rear-tyre"`)},
	"wrong-rating-negative.json":       {Build: "a", Field: "ratings.1.limit_g", Message: words.Plain("“Gear hub”|-5 g|1 to 1000000 g")},
	"wrong-rating-unknown-key.json":    {Build: "a", Field: "ratings.1.limit_kg", Message: words.Plain(`"limit_kg"|"limit_g" meant`)},
	"wrong-weigh-in-state.json":        {WeighIn: "kitchen", Field: "state", Message: words.Plain(`Weigh-in “In the kitchen”|"wet"|"ridden"`)},
	"wrong-reading-wheel.json":         {WeighIn: "kitchen", Field: "readings.1.wheel", Message: words.Plain(`"back"|"rear"`)},
	"wrong-reading-height.json":        {WeighIn: "kitchen", Field: "readings.1.height_mm", Message: words.Plain("0 mm|1 to 5000 mm")},
	"wrong-reading-mass-null.json":     {WeighIn: "kitchen", Field: "readings.1.mass_g", Message: words.Plain("null|number in grams")},
	"wrong-reading-resolution.json":    {WeighIn: "kitchen", Field: "readings.0.resolution_g", Message: words.Plain("0 g|0.1")},
	"wrong-scale-step.json":            {WeighIn: "kitchen", Field: "scales.1.step_g", Message: words.Plain("0 g|0.1")},
	"wrong-scale-calibration.json":     {WeighIn: "kitchen", Field: "scales.0.calibration_share", Message: words.Plain("0.5|0 to 0.2")},
	"wrong-scale-no-id.json":           {WeighIn: "kitchen", Field: "scales.1.id", Message: words.Plain("Scale 2 has no id")},
	"wrong-stand-radius.json":          {WeighIn: "kitchen", Field: "radius_within_mm", Message: words.Plain("-3 mm|0 to 200 mm")},
	"wrong-stand-wheelbase-text.json":  {WeighIn: "kitchen", Field: "wheelbase_within_mm", Message: words.Plain(`"2 mm", a text|number in millimetres`)},
	"wrong-reading-ridden-raised.json": {WeighIn: "kitchen", Field: "readings.1.raised", Message: words.Plain("front wheel is raised with the rider|nobody sits on a bike with a raised wheel")},
	"wrong-reading-no-resolution.json": {WeighIn: "kitchen", Field: "readings.0.resolution_g", Message: words.Plain("0 g|0.1")},
	"wrong-show-grip.json":             {Field: "show.grip", Message: words.Plain("is 3|0.05 to 2")},
	"wrong-show-packing.json":          {Field: "show.packing.front_share", Message: words.Plain("is 45|0 to 1")},
}

func TestFixtures(t *testing.T) {
	files, err := filepath.Glob(documents + "/*.json")
	if err != nil || len(files) < 40 {
		t.Fatalf("%d fixtures, %v", len(files), err)
	}
	seen := 0
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			d, problems := document.Open(text)
			if d != nil {
				problems = append(problems, document.Check(d)...)
			}
			var first *document.Problem
			for i := range problems {
				if problems[i].Severity == document.SeverityError {
					first = &problems[i]
					break
				}
			}
			if want, ok := wantedLoaded[name]; ok {
				seen++
				if first == nil {
					t.Fatal("has no error")
				}
				got := *first
				for _, says := range strings.Split(want.Message.String(), "|") {
					if !strings.Contains(got.Message.String(), says) {
						t.Errorf("%q does not say %q", got.Message.String(), says)
					}
				}
				want.Severity, got.Message, want.Message = document.SeverityError, words.Message{}, words.Message{}
				if diff := cmp.Diff(want, got); diff != "" {
					t.Error(diff)
				}
				return
			}
			want, bad := wanted[name]
			if bad {
				seen++
			}
			switch {
			case !bad && first != nil:
				t.Fatalf("has an error: %+v", *first)
			case !bad && d == nil:
				t.Fatal("was refused without an error")
			case !bad:
				return
			case first == nil:
				t.Fatal("has no error")
			case strings.HasPrefix(name, "broken-") && d != nil:
				t.Error("was not refused")
			}
			if first.Build != want.build || first.Part != want.part || first.Field != want.field {
				t.Errorf("place %q %q %q, want %q %q %q (%s)", first.Build, first.Part, first.Field, want.build, want.part, want.field, first.Message.String())
			}
			for _, s := range want.says {
				if !strings.Contains(first.Message.String(), s) {
					t.Errorf("%q does not say %q", first.Message.String(), s)
				}
			}
		})
	}
	if n := len(wanted) + len(wantedLoaded); seen != n {
		t.Errorf("%d fixtures of the tables are there, want %d", seen, n)
	}
}

func TestOpenGivesDefaults(t *testing.T) {
	d, problems := document.Open([]byte(`{"version": 1, "builds": [{"name": "A", "parts": [
		{"name": "hub", "mass_g": 350, "station": "rear-axle"},
		{"id": "p1", "name": "scale", "mass_g": 80, "basis": "weighed", "shape": {"size_mm": [1, 2, 3]}, "station": "frame"},
		{"name": "none", "mass_g": 10, "quantity": 0, "half_width_g": 0, "within_mm": 0, "basis": "stated", "station": "frame", "carrier": "link", "shape": {"form": "box"}}
	]}], "format": "steelyard-document"}`))
	if d == nil || len(problems) > 0 {
		t.Fatal(problems)
	}
	want := &document.Document{
		Format: document.Format, Version: 1, Show: document.Show{Mass: "kg", Length: "mm"},
		Builds: []document.Build{{ID: "b1", Name: "A", Parts: []document.Part{
			{ID: "p3", Name: "hub", Quantity: 1, Mass: 350, HalfWidth: 70, Basis: document.Guessed, Station: "rear-axle", Within: 20, Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint}},
			{ID: "p1", Name: "scale", Quantity: 1, Mass: 80, HalfWidth: 1, Basis: document.Weighed, Station: "frame", Within: 20, Carrier: document.MainFrame, Shape: document.Shape{Form: document.FormPoint, Size: document.Vec3{1, 2, 3}}},
			{ID: "p4", Name: "none", Mass: 10, Basis: document.Stated, Station: "frame", Carrier: document.Link, Shape: document.Shape{Form: document.FormBox}},
		}}},
	}
	if diff := cmp.Diff(want, d); diff != "" {
		t.Error(diff)
	}
}

func TestOpenSeparatesEqualIDs(t *testing.T) {
	d, problems := document.Open([]byte(`{"format": "steelyard-document", "version": 1, "builds": [
		{"id": "a", "name": "A", "parts": [{"id": "x", "name": "one"}, {"id": "x", "name": "two"}]},
		{"id": "a", "name": "B", "parts": [{"id": "x", "name": "one"}]}]}`))
	if d == nil || len(problems) != 2 {
		t.Fatal(problems)
	}
	for i, p := range problems {
		if p.Severity != document.SeverityWarning || p.Field != "id" {
			t.Errorf("problem %d: %+v", i, p)
		}
	}
	got := fmt.Sprint(d.Builds[0].ID, d.Builds[1].ID, d.Builds[0].Parts[0].ID, d.Builds[1].Parts[0].ID)
	if got != fmt.Sprint("a", "b1", "x", "x") {
		t.Error(got)
	}
	if id := d.Builds[0].Parts[1].ID; id == "x" || id == "" || id != problems[1].Part {
		t.Errorf("the second part is %q, told of is %q", id, problems[1].Part)
	}
	for _, p := range document.Check(d) {
		if p.Field == "id" {
			t.Error(p)
		}
	}
}

// All mistakes of a text are told at once, with names that come after them.
func TestOpenCollects(t *testing.T) {
	_, problems := document.Open([]byte(`{
		"format": "steelyard-document", "version": 1,
		"builds": [{"parts": [
			{"mass_g": true, "shape": {"size_mm": [1, "2", 3], "sise": 0}, "note": 3, "name": "Rim", "id": "r"},
			{"quantity": 99999999999999999999}
		], "name": "First", "id": "one", "frame": []}],
		"show": "kg"
	}`))
	var got []string
	for _, p := range problems {
		got = append(got, fmt.Sprint(p.Build, "/", p.Part, "/", p.Field, " ", strings.Contains(p.Message.String(), "“First”")))
	}
	want := []string{"one/r/mass_g true", "one/r/shape.size_mm true", "one/r/shape.sise true", "one/r/note true", "one//quantity true", "one//frame true", "//show false"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff, problems)
	}
	if m := problems[4].Message.String(); !strings.HasPrefix(m, "Line 5: Part “number 2”") {
		t.Error(m)
	}
}

func TestOpenManyProblems(t *testing.T) {
	text := `{"format":"steelyard-document","version":1,"builds":[{"parts":[` + strings.Repeat(`{"x":1},`, 500) + `{}]}]}`
	d, problems := document.Open([]byte(text))
	if d != nil || len(problems) != document.MaxProblems+1 {
		t.Fatalf("%d problems", len(problems))
	}
	if m := problems[document.MaxProblems].Message.String(); m != "And 450 more problems." {
		t.Error(m)
	}
}

func TestOpenLimits(t *testing.T) {
	head := `{"format":"steelyard-document","version":1,"builds":[`
	builds := func(n int) string { return head + strings.TrimSuffix(strings.Repeat(`{},`, n), ",") + `]}` }
	parts := func(n int) string {
		return head + `{"parts":[` + strings.TrimSuffix(strings.Repeat(`{},`, n/2), ",") + `]},{"parts":[` + strings.TrimSuffix(strings.Repeat(`{},`, n-n/2), ",") + `]}]}`
	}
	notes := func(n int) string {
		s := `{"format":"steelyard-document","version":1,"notes":""}`
		return s[:len(s)-2] + strings.Repeat("x", n-len(s)) + `"}`
	}
	for _, c := range []struct {
		text string
		says string // empty: opens
	}{
		{builds(document.MaxBuilds), ""},
		{builds(document.MaxBuilds + 1), "100 builds"},
		{parts(document.MaxParts), ""},
		{parts(document.MaxParts + 1), "20000 parts"},
		{notes(document.MaxText), ""},
		{notes(document.MaxText + 1), "8 MiB"},
		{strings.Repeat(`[`, 1<<20), "deeper"},
		{strings.Repeat(`{"builds":`, 1<<18), "deeper"},
		{head + `{"frame":{"stack_mm":` + strings.Repeat("9", 1000) + `}}]}`, "too large"},
		{head + `{"frame":{"stack_mm":` + strings.Repeat("9", 400) + `.5}}]}`, "too large"},
		{head + `{"frame":{"stack_mm":1e-999}}]}`, ""},
	} {
		d, problems := document.Open([]byte(c.text))
		what := c.text[:min(len(c.text), 80)]
		if c.says == "" {
			if d == nil {
				t.Errorf("%s: %v", what, problems)
			}
			continue
		}
		if d != nil || len(problems) == 0 || !strings.Contains(problems[0].Message.String(), c.says) {
			t.Errorf("%s: %v, want %q", what, problems, c.says)
		}
	}
}

func TestTenThousandParts(t *testing.T) {
	d := documenttest.TwoBuilds(10000)
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	back, problems := document.Open(text)
	if back == nil || len(problems) > 0 || len(document.Check(back)) > 0 {
		t.Fatal(problems, document.Check(d))
	}
	if len(back.Builds[1].Parts) != 10000 {
		t.Error(len(back.Builds[1].Parts))
	}
}

func TestWriteRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := documenttest.Document().Draw(t, "document")
		for _, write := range []func(*document.Document) ([]byte, error){document.Write, document.WriteCompact} {
			text, err := write(d)
			if err != nil {
				t.Fatal(err)
			}
			back, problems := document.Open(text)
			if len(problems) > 0 {
				t.Fatal(problems)
			}
			if diff := cmp.Diff(d, back, cmpopts.EquateEmpty()); diff != "" {
				t.Fatal(diff)
			}
			for _, p := range document.Check(back) {
				if p.Severity == document.SeverityError {
					t.Fatal(p)
				}
			}
			again, err := write(back)
			if err != nil || !bytes.Equal(text, again) {
				t.Fatalf("not stable: %v\n%s\n%s", err, text, again)
			}
		}
	})
}

// The indented text is the compact one but for space.
func TestIndentOnlyAddsSpace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := documenttest.Document().Draw(t, "document")
		long, err := document.Write(d)
		if err != nil {
			t.Fatal(err)
		}
		short, err := document.WriteCompact(d)
		if err != nil {
			t.Fatal(err)
		}
		var compact bytes.Buffer
		if err := json.Compact(&compact, long); err != nil {
			t.Fatal(err)
		}
		if compact.String() != string(short) {
			t.Fatalf("%s\n%s", compact.String(), short)
		}
	})
}

func TestWriteLooks(t *testing.T) {
	p := document.Part{ID: "p1"}
	p.Name, p.Note, p.Catalogue = `A "b" [c], {d}`, "", ""
	p.Kind, p.Mass, p.HalfWidth, p.Station, p.Within, p.Carrier = "rim", 500, 5, "frame", 20, document.Link
	p.Shape = document.Shape{Form: document.FormBox, Size: document.Vec3{1, 2.5, 3}}
	p.Offset, p.Quantity, p.Basis = document.Vec3{}, 1, document.Typical
	text, err := document.Write(&document.Document{Show: document.Show{Mass: "g", Length: "mm"}, Builds: []document.Build{{ID: "b1", Parts: []document.Part{p}}, {ID: "b2"}}})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"{\n\t\"format\": \"steelyard-document\",\n\t\"version\": 1,\n",
		"\n\t\"show\": {\"mass\": \"g\", \"length\": \"mm\"},\n",
		"\n\t\t\t\"wheels\": {\"front\": {\"bead_seat_mm\": 0, \"tyre_mm\": 0}, \"rear\": {\"bead_seat_mm\": 0, \"tyre_mm\": 0}},\n",
		"\n\t\t\t\t{\"id\": \"p1\", \"name\": \"A \\\"b\\\" [c], {d}\", ", // a part to a line
		", \"shape\": {\"form\": \"box\", \"size_mm\": [1, 2.5, 3]}}\n\t\t\t]\n",
		"\n\t\t\t\"parts\": []\n\t\t}\n\t]\n}\n",
	} {
		if !strings.Contains(string(text), want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

func TestWriteNamesTheFigureThatIsNone(t *testing.T) {
	d := documenttest.TwoBuilds(3)
	d.Builds[1].Name = "Second"
	p := &d.Builds[1].Parts[2]
	nan := d.Builds[0].Frame.Stack / d.Builds[0].Frame.Stack
	p.Shape.Size[1] = nan
	_, err := document.Write(d)
	if err == nil || !strings.Contains(err.Error(), p.Name) || !strings.Contains(err.Error(), "“Second”: shape.size_mm") {
		t.Error(err)
	}
	p.Shape.Size[1] = 0
	d.Builds[0].Wheels.Front.Tyre = 1 / d.Builds[0].Frame.Stack
	_, err = document.Write(d)
	if err == nil || !strings.Contains(err.Error(), "build “One”: wheels.front.tyre_mm") {
		t.Error(err)
	}
}

func TestMigrate(t *testing.T) {
	steps := []document.Migration{
		func(tree map[string]any) error {
			tree["title"] = tree["name"]
			delete(tree, "name")
			return nil
		},
		func(tree map[string]any) error {
			if tree["title"] == nil {
				return errors.New("no title")
			}
			tree["notes"] = "third"
			return nil
		},
	}
	got, err := document.Migrate([]byte(`{"version":1,"name":"x","big":12345678901234567890}`), 1, steps)
	if want := `{"big":12345678901234567890,"notes":"third","title":"x","version":3}`; err != nil || string(got) != want {
		t.Errorf("%s, %v", got, err)
	}
	got, err = document.Migrate([]byte(`{"version":2,"title":"x"}`), 2, steps)
	if want := `{"notes":"third","title":"x","version":3}`; err != nil || string(got) != want {
		t.Errorf("%s, %v", got, err)
	}
	if _, err = document.Migrate([]byte(`{"version":2}`), 2, steps); err == nil || err.Error() != "from version 2: no title" {
		t.Error(err)
	}
	if document.Migrations != document.Version-1 {
		t.Errorf("%d migrations for version %d", document.Migrations, document.Version)
	}
}

// The decoder and the scanner must agree on what is JSON.
func FuzzOpen(f *testing.F) {
	files, err := filepath.Glob(documents + "/*.json")
	if err != nil {
		f.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		if len(text) < 30000 {
			f.Add(text)
		}
	}
	f.Add([]byte(`{"format":"steelyard-document","version":1,"na\u006de":3,"builds":[{"id":"\ud800","parts":[{"\u0069d":"x"}]}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		d, problems := document.Open(text)
		for _, p := range problems {
			if p.Message.String() == "" || p.Severity != document.SeverityError && p.Severity != document.SeverityWarning {
				t.Errorf("%+v", p)
			}
			if strings.Contains(p.Message.String(), "fault in this program") || strings.Contains(p.Message.String(), "could not be read: ") {
				t.Errorf("the scanner let through what the decoder does not take: %s", p.Message.String())
			}
		}
		if d == nil {
			if len(problems) == 0 || problems[0].Severity != document.SeverityError {
				t.Errorf("refused without an error: %v", problems)
			}
			return
		}
		document.Check(d)
		if !json.Valid(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))) {
			t.Error("opened what is not JSON")
		}
		out, err := document.Write(d)
		if err != nil {
			t.Fatal(err)
		}
		back, problems := document.Open(out)
		if back == nil || len(problems) > 0 {
			t.Fatalf("%v\n%s", problems, out)
		}
		if diff := cmp.Diff(d, back, cmpopts.EquateEmpty()); diff != "" {
			t.Fatal(diff)
		}
	})
}

func BenchmarkOpen(b *testing.B) {
	for _, n := range []int{60, 10000} {
		text, err := document.WriteCompact(documenttest.TwoBuilds(n))
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("2x%d", n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				if d, problems := document.Open(text); d == nil {
					b.Fatal(problems)
				}
			}
		})
	}
}

func BenchmarkCheck(b *testing.B) {
	d := documenttest.TwoBuilds(60)
	b.ReportAllocs()
	for b.Loop() {
		document.Check(d)
	}
}
