package data_test

import (
	"io/fs"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/mass"
	"steelyard/internal/parts"
)

// decode reads an embedded file, and refuses keys that nobody knows.
func decode(t *testing.T, name string, into any) {
	t.Helper()
	f, err := data.Files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d := json.NewDecoder(f)
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
}

// catalogue returns all entries, in the order of the files and in theirs.
func catalogue(t *testing.T) []parts.Entry {
	t.Helper()
	names, err := fs.Glob(data.Files, "catalogue/*.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []parts.Entry
	for _, name := range names {
		var some []parts.Entry
		decode(t, name, &some)
		all = append(all, some...)
	}
	return all
}

func TestCatalogueIsLargeAndCoversEveryKind(t *testing.T) {
	all := catalogue(t)
	if len(all) < 130 {
		t.Errorf("%d entries; want 130 or more", len(all))
	}
	ids := make(map[string]bool)
	names := make(map[string]bool)
	kinds := make(map[string]bool)
	for _, e := range all {
		if ids[e.ID] {
			t.Errorf("two entries have the id %q", e.ID)
		}
		if names[e.Name] {
			t.Errorf("two entries are called %q", e.Name)
		}
		ids[e.ID], names[e.Name], kinds[e.Kind] = true, true, true
	}
	for _, k := range document.Kinds {
		if !kinds[k.ID] {
			t.Errorf("no entry is of the kind %q", k.ID)
		}
		delete(kinds, k.ID)
	}
	for k := range kinds {
		t.Errorf("the kind %q is not one of parts.Kinds", k)
	}
}

func TestEveryEntryIsAPartThatTheProgramTakes(t *testing.T) {
	for _, e := range catalogue(t) {
		bad := func(format string, args ...any) {
			t.Helper()
			t.Errorf("%s: "+format, append([]any{e.ID}, args...)...)
		}
		// Whatever is wrong with a part of a user's is wrong with an entry.
		d := document.Document{
			Format: document.Format, Version: document.Version, Show: document.Show{Mass: "g", Length: "mm"},
			Builds: []document.Build{{ID: "b1", Name: "B", Parts: []document.Part{e.Part("p1")}}},
		}
		for _, p := range document.Check(&d) {
			bad("%s: %s", p.Field, p.Message.String())
		}

		if !regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`).MatchString(e.ID) {
			bad("the id should be lower-case words with hyphens")
		}
		if share := e.HalfWidth / e.Mass; share < 0.01 || share > 0.6 {
			bad("the half-width is %.1f %% of the mass; an honest one is 1 to 60 %%", 100*share)
		}
		if e.Mass < 5 || e.Mass > 6000 {
			bad("a mass of %g g is none of a bike part's", e.Mass)
		}
		if e.Basis != document.Typical {
			bad("the basis is %q; nobody has weighed a generic part", e.Basis)
		}
		if !slices.Contains(geometry.StationNames, e.Station) {
			bad("the station %q is not known", e.Station)
		}
		if e.Within < 5 || e.Within > 50 {
			bad("the place lies within ± %g mm; want 5 to 50", e.Within)
		}
		if e.Quantity != 1 && e.Quantity != 2 {
			bad("a bike usually takes 1 or 2 of anything, not %d", e.Quantity)
		}
		for _, o := range e.Offset {
			if o < -500 || o > 800 {
				bad("an offset of %g mm leads off the bike", o)
			}
		}
	}
}

func TestShapesHaveTheSizesOfTheirForm(t *testing.T) {
	// How many sizes a form has, from document.Shape; the rest must be 0.
	sizes := map[document.Form]int{
		document.FormPoint: 0, document.FormRod: 1, document.FormRing: 1, document.FormDisc: 2, document.FormBox: 3, document.FormPair: 1,
	}
	for _, e := range catalogue(t) {
		n, ok := sizes[e.Shape.Form]
		if !ok {
			t.Errorf("%s: the form %q is not known", e.ID, e.Shape.Form)
			continue
		}
		for i, s := range e.Shape.Size {
			switch {
			case i < n && (s < 2 || s > 1600):
				t.Errorf("%s: size %d of a %s is %g mm; want 2 to 1600", e.ID, i, e.Shape.Form, s)
			case i >= n && s != 0:
				t.Errorf("%s: a %s has no size %d, but there is %g", e.ID, e.Shape.Form, i, s)
			}
		}
		if e.Shape.Form == document.FormPoint && e.Mass > 700 {
			t.Errorf("%s: %g g are too much for a point", e.ID, e.Mass)
		}
	}
}

// A wheel's parts turn with it and everything else does not; what is at an axle
// and turns is round about that axle.
func TestWheelPartsTurnWithTheWheel(t *testing.T) {
	turns := []string{"rim", "hub", "spokes", "tyre", "tube", "sealant", "rim-tape", "wheel", "rotor", "cassette", "cog", "gear-hub"}
	for _, e := range catalogue(t) {
		wheel := e.Carrier == document.RearWheel || e.Carrier == document.FrontWheel
		want := slices.Contains(turns, e.Kind) || e.ID == "speed-sensor" ||
			e.Kind == "dynamo" && e.ID != "tyre-dynamo"
		if wheel != want {
			t.Errorf("%s is a %s, but its carrier is %s", e.ID, e.Kind, e.Carrier)
		}
		if !wheel {
			continue
		}
		if f := e.Shape.Form; f != document.FormRing && f != document.FormDisc && e.ID != "speed-sensor" {
			t.Errorf("%s turns, but is a %s", e.ID, f)
		}
		if rear := e.Carrier == document.RearWheel; rear != (strings.HasPrefix(e.Station, "rear-") || e.Station == "cassette") {
			t.Errorf("%s: the station %s is not at the wheel that carries it, %s", e.ID, e.Station, e.Carrier)
		}
	}
}

// Inside to outside: spokes, rim, bead seat, tube, tyre. Bead seat diameters are
// those of ISO 5775 (memory), and stand in the ids.
func TestRingsOfAWheelLieInOneAnother(t *testing.T) {
	ring := make(map[string]float64)
	for _, e := range catalogue(t) {
		if e.Shape.Form == document.FormRing {
			ring[e.ID] = e.Shape.Size[0]
		}
	}
	for _, seat := range []struct {
		name string
		r    float64
		tyre string
	}{{"622", 311, "50"}, {"584", 292, "50"}, {"559", 279.5, "50"}, {"406", 203, "47"}} {
		for _, side := range []string{"front", "rear"} {
			order := []float64{
				ring["spokes-"+side+"-"+seat.name], ring["rim-"+side+"-"+seat.name+"-aluminium"], seat.r,
				ring["tube-"+side+"-"+seat.name], ring["tyre-"+side+"-"+seat.tyre+"-"+seat.name] + 25,
			}
			for i := 1; i < len(order); i++ {
				if !(order[i-1] > 0 && order[i-1] < order[i]) {
					t.Errorf("%s %s: radii %v are not in order", side, seat.name, order)
				}
			}
		}
	}
}

// Names are plain words. A capital inside a name would be a product's.
func TestNamesArePlainWords(t *testing.T) {
	short := []string{"GPS", "USB", "Ah", "U-lock"}
	name := regexp.MustCompile(`^[A-Z][a-z-]+$`)
	plain := regexp.MustCompile(`^[a-z0-9]([a-z0-9 ./%-]*[a-z0-9%])?$`)
	for _, e := range catalogue(t) {
		for i, w := range strings.FieldsFunc(e.Name, func(r rune) bool { return r == ' ' || r == ',' }) {
			if slices.Contains(short, w) {
				continue
			}
			if i == 0 && !name.MatchString(w) || i > 0 && w != strings.ToLower(w) {
				t.Errorf("%s: %q in the name %q", e.ID, w, e.Name)
			}
		}
		for _, s := range e.Search {
			if !plain.MatchString(s) {
				t.Errorf("%s: search words %q should be lower case", e.ID, s)
			}
		}
		if n := e.Note; n != "" && (n[:1] != strings.ToUpper(n[:1]) || !strings.HasSuffix(n, ".")) {
			t.Errorf("%s: the note should be a sentence: %q", e.ID, n)
		}
	}
}

// On a posed bike every entry lies where a bike is: over the ground, between
// the ends of its bags, and no wider than a handlebar with a mirror on it. The
// whole of it does, not only its middle, but for bars, racks and the like that
// are wide on purpose.
func TestEntriesLieOnTheBike(t *testing.T) {
	for _, name := range []string{"travel-bike", "touring-bike"} {
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
			t.Fatalf("%s: %v", name, problems)
		}
		for _, e := range catalogue(t) {
			const mm = 1e-3
			o := mass.Vec{X: e.Offset[0] * mm, Y: e.Offset[1] * mm, Z: e.Offset[2] * mm}
			places, ok := bike.Place(e.Station, o)
			if !ok {
				t.Errorf("%s: the station %q is not on %s", e.ID, e.Station, name)
			}
			for _, p := range places {
				low, high := p.Z, p.Z
				switch s := e.Shape; s.Form {
				case document.FormRing:
					low, high = low-s.Size[0]*mm, high+s.Size[0]*mm
				case document.FormBox:
					low, high = low-s.Size[2]*mm/2, high+s.Size[2]*mm/2
				}
				if low < -0.001 || high > 1.3 && e.ID != "flag" {
					t.Errorf("%s on %s reaches from %.0f to %.0f mm over the ground", e.ID, name, low/mm, high/mm)
				}
				if p.X < -0.4 || p.X > bike.Wheelbase+0.1 {
					t.Errorf("%s on %s is %.0f mm ahead of the rear axle", e.ID, name, p.X/mm)
				}
				if math.Abs(p.Y) > 0.42 {
					t.Errorf("%s on %s is %.0f mm left of the middle", e.ID, name, p.Y/mm)
				}
			}
		}
	}
}
