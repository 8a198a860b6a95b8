package parts

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"steelyard/internal/document"
	"steelyard/internal/spelling"
)

func TestCatalogueIsSound(t *testing.T) {
	for _, p := range CheckCatalogue(Catalogue()) {
		t.Errorf("%s %s: %s", p.Part, p.Field, p.Message.String())
	}
}

func TestCheckCatalogueFindsMistakes(t *testing.T) {
	good := Catalogue()[0]
	for _, c := range []struct {
		field  string
		change func(e *Entry)
	}{
		{"id", func(e *Entry) { e.ID = "Rim 622" }},
		{"id", func(e *Entry) { e.ID = "rim--622" }},
		{"name", func(e *Entry) { e.Name = " " }},
		{"kind", func(e *Entry) { e.Kind = "warp-drive" }},
		{"mass_g", func(e *Entry) { e.Mass = 0 }},
		{"half_width_g", func(e *Entry) { e.HalfWidth = 0 }},
		{"half_width_g", func(e *Entry) { e.HalfWidth = 2 * e.Mass }},
		{"basis", func(e *Entry) { e.Basis = document.Weighed }},
		{"station", func(e *Entry) { e.Station = "" }},
		{"carrier", func(e *Entry) { e.Carrier = "wheel" }},
		{"quantity", func(e *Entry) { e.Quantity = 0 }},
		{"shape.form", func(e *Entry) { e.Shape.Form = "ball" }},
		{"shape.size_mm", func(e *Entry) { e.Shape = document.Shape{Form: document.FormBox, Size: document.Vec3{10, 10, 0}} }},
		{"search", func(e *Entry) { e.Search = []string{"Tire"} }},
	} {
		e := good
		c.change(&e)
		if !slices.ContainsFunc(CheckCatalogue([]Entry{e}), func(p document.Problem) bool { return p.Field == c.field && p.Part == e.ID }) {
			t.Errorf("nothing is said about %s of %+v", c.field, e)
		}
	}
	for _, p := range CheckCatalogue([]Entry{good, good}) {
		if p.Field == "id" {
			return
		}
	}
	t.Error("an id that is there twice is not noticed")
}

func TestReadCatalogueNamesTheFile(t *testing.T) {
	_, err := readCatalogue(fstest.MapFS{"catalogue/a.json": {Data: []byte(`[]`)}, "catalogue/b.json": {Data: []byte(`[{"mass_g":"x"}]`)}})
	if err == nil || !strings.HasPrefix(err.Error(), "b.json: ") {
		t.Error(err)
	}
}

func TestEntryPart(t *testing.T) {
	e := EntryByID("pedal-flat-plastic")
	if e == nil {
		t.Fatal("no such entry")
	}
	p := e.Part("p9")
	want := document.Part{ID: "p9", Name: e.Name, Kind: "pedal", Catalogue: e.ID, Quantity: 2, Mass: e.Mass, HalfWidth: e.HalfWidth, Basis: document.Typical,
		Station: "pedals", Offset: e.Offset, Within: e.Within, Carrier: document.MainFrame, Shape: e.Shape, Note: e.Note}
	if p != want {
		t.Errorf("%+v, want %+v", p, want)
	}
	if EntryByID("none") != nil {
		t.Error("an entry that is not there")
	}
}

func TestFind(t *testing.T) {
	for _, c := range []struct{ query, first string }{
		{"rim", "Rim, "},
		{"rear rim 622", "Rim, rear, "},
		{"gear hub", "Gear hub"},
		{"gearbox", "Crank gearbox"},
		{"Chain", "Chain, "},
		{"tire", "Tyre"},
		{"tires 29", "Tyre, "},
		{"29 x 2.25", "Tyre, "},
		{"29 x 2,25", "Tyre, "}, // decimal comma
		{"ulock", "U-lock"},
		{"u-lock", "U-lock"},
		{"thru axle rear", "Rear through axle"},
		{"rack for front", "Front rack"},
		{"pann", "Pannier"}, // still being typed
		{"derailer", "Rear derailleur"},
		{"chian", "Chain, "},
		{"mudgard", "Mudguard"},
		{"PÉDAL", "Pedal"},
	} {
		found := Find(c.query, 3)
		if len(found) == 0 || !strings.HasPrefix(found[0].Name, c.first) {
			t.Errorf("%q finds %+v first, want %s", c.query, found, c.first)
		}
	}
	if n := len(Find("", 0)); n != len(Catalogue()) {
		t.Errorf("an empty query finds %d", n)
	}
	if n := len(Find("rim", 4)); n != 4 {
		t.Errorf("%d found, want the limit", n)
	}
	for _, q := range []string{"rim zzzzz", "qqqqqq", "x9y8z7"} {
		if found := Find(q, 0); len(found) != 0 {
			t.Errorf("%q finds %s", q, found[0].Name)
		}
	}
}

// Every entry is found by its own name, and by each of its search words.
func TestFindFindsEverything(t *testing.T) {
	for _, e := range Catalogue() {
		has := func(q string) bool {
			return slices.ContainsFunc(Find(q, 0), func(f Entry) bool { return f.ID == e.ID })
		}
		if !has(e.Name) || !has(strings.ToUpper(e.Name)) {
			t.Errorf("%q does not find itself", e.Name)
		}
		for _, s := range e.Search {
			if !has(s) {
				t.Errorf("%q does not find %q", s, e.Name)
			}
		}
	}
}

func TestEditDistance(t *testing.T) {
	for _, c := range []struct {
		a, b        string
		limit, want int
	}{
		{"", "", 2, 0}, {"a", "", 2, 1}, {"", "abc", 2, 3}, {"chain", "chain", 2, 0}, {"chian", "chain", 2, 1}, {"chan", "chain", 2, 1},
		{"chaiin", "chain", 2, 1}, {"chein", "chain", 2, 1}, {"derailer", "derailleur", 2, 2}, {"rim", "hub", 2, 3}, {"kitten", "sitting", 9, 3},
		{strings.Repeat("a", 50), strings.Repeat("a", 49) + "b", 2, 1},
	} {
		if got := spelling.Distance(c.a, c.b, c.limit); got != c.want {
			t.Errorf("%q to %q is %d, want %d", c.a, c.b, got, c.want)
		}
		if got := spelling.Distance(c.b, c.a, c.limit); got != c.want {
			t.Errorf("%q to %q is %d, want %d", c.b, c.a, got, c.want)
		}
	}
}

func FuzzFind(f *testing.F) {
	for _, q := range []string{"rim", "rear hub 148", "tire 29 x 2,25", "ulock", "\x00\xff", "é’“ ß ＡＢＣ", strings.Repeat("a ", 300), "1.2.3,4"} {
		f.Add(q, 5)
	}
	f.Fuzz(func(t *testing.T, query string, limit int) {
		found := Find(query, limit)
		if limit > 0 && len(found) > limit {
			t.Errorf("%d found, limit %d", len(found), limit)
		}
		seen := make(map[string]bool)
		for _, e := range found {
			if seen[e.ID] {
				t.Errorf("%s is found twice", e.ID)
			}
			seen[e.ID] = true
		}
		if kind := GuessKind(query); kind != "" && !document.KnownKind(kind) {
			t.Errorf("%q is guessed to be a %q", query, kind)
		}
	})
}

func BenchmarkFind(b *testing.B) {
	for name, q := range map[string]string{"word": "rim", "words": "rear rim 622", "misspelt": "derailer reer"} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				Find(q, 8)
			}
		})
	}
}
