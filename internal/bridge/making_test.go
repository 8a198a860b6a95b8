package bridge_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// Bags and goods of two loads never share an id that they were given anew: they
// would be told as one that changed.
func TestNewIDs(t *testing.T) {
	d := &document.Document{
		Show: document.Show{Mass: "g", Length: "mm"},
		Builds: []document.Build{
			{ID: "b1", Parts: []document.Part{{ID: "p1"}, {ID: "p3"}}},
			{ID: "b2", Parts: []document.Part{{ID: "p4"}}},
		},
		Loads: []document.Load{
			{ID: "l1", Bags: []document.Bag{{ID: "b1"}}, Goods: []document.Good{{ID: "g1"}, {ID: "g2"}}},
			{ID: "l2"},
		},
	}
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	for _, evaluated := range []bool{false, true} {
		if evaluated {
			call(t, "evaluate", string(text))
		}
		for sort, want := range map[string][]string{
			"part": {"p2", "p5", "p6"}, "build": {"b3", "b4", "b5"}, "load": {"l3", "l4", "l5"}, "rider": {"r1", "r2", "r3"},
			"bag": {"b2", "b3", "b4"}, "good": {"g3", "g4", "g5"}, "weigh_in": {"w1", "w2", "w3"}, "scale": {"s1", "s2", "s3"},
		} {
			var got []string
			read(t, &got, "newIDs", string(text), sort, "3")
			if !slices.Equal(got, want) {
				t.Errorf("%s: %q, want %q", sort, got, want)
			}
		}
	}
	for _, args := range [][]string{{}, {string(text)}, {string(text), "part"}, {string(text), "part", "-1"}, {string(text), "part", "1000000000"}, {string(text), "wheel", "1"}, {"{", "part", "1"}} {
		if problemIn(call(t, "newIDs", args...)) == nil {
			t.Errorf("newIDs(%.40q) has no problem", args)
		}
	}
}

func TestMaking(t *testing.T) {
	var half struct{ Value float64 }
	for _, c := range []struct {
		basis, mass string
		want        float64
	}{{"weighed", "500", 1}, {"stated", "500", 25}, {"typical", "500", 50}, {"guessed", "500", 100}, {"guessed", "0", 1}, {"guessed", "1e9", 2e8}} {
		read(t, &half, "halfWidth", c.basis, c.mass)
		if half.Value != c.want {
			t.Errorf("half-width of %s g %s: %v, want %v", c.mass, c.basis, half.Value, c.want)
		}
	}
	var p document.Part
	read(t, &p, "partFromEntry", parts.Catalogue()[3].ID)
	if p != parts.Catalogue()[3].Part("") {
		t.Errorf("part from an entry: %+v", p)
	}
	read(t, &p, "partFromWords", `Saddle, "old"`, "312")
	if p.Kind != "saddle" || p.Name != `Saddle, "old"` || p.Mass != 312 || p.HalfWidth != 62 || p.Basis != document.Guessed || p.Station != "saddle" || p.ID != "" {
		t.Errorf("a saddle from words: %+v", p)
	}
	p = document.Part{}
	read(t, &p, "partFromWords", "qwertz", "0")
	if p.Kind != "other" || p.Quantity != 1 || p.Mass != 0 || p.HalfWidth != 1 || p.Station != "frame" {
		t.Errorf("something from words: %+v", p)
	}
	var b document.Bag
	read(t, &b, "bagFromEntry", parts.Bags()[0].ID)
	if b != parts.Bags()[0].Bag("") {
		t.Errorf("bag from an entry: %+v", b)
	}
	read(t, &b, "bagFromWords", "Sack", "400")
	if b != document.NewBag("Sack", 400) || b.HalfWidth != 80 {
		t.Errorf("bag from words: %+v", b)
	}
	var g document.Good
	read(t, &g, "goodFromEntry", parts.Goods()[0].ID)
	if g.Name != parts.Goods()[0].Name || g.Quantity < 1 {
		t.Errorf("good from an entry: %+v", g)
	}
	read(t, &g, "goodFromWords", "Book", "300")
	if g.HalfWidth != 60 || g.Quantity != 1 || g.In != "" {
		t.Errorf("good from words: %+v", g)
	}
	var r document.Rider
	read(t, &r, "newRider")
	if r != document.NewRider() || r.Mass == 0 {
		t.Errorf("new rider: %+v", r)
	}
	for _, args := range [][]string{
		{"halfWidth", "guessed", "light"}, {"halfWidth"}, {"halfWidth", "guessed", "NaN"},
		{"partFromEntry", "?"}, {"bagFromEntry", "?"}, {"goodFromEntry"}, {"partFromWords", "x", "Inf"}, {"fileText", "{"},
	} {
		if problemIn(call(t, args[0], args[1:]...)) == nil {
			t.Errorf("%q has no problem", args)
		}
	}
}

// A saved file has one part to a line, and reads back as the same document.
func TestFileText(t *testing.T) {
	demo := call(t, "demo")
	var d document.Document
	if err := json.Unmarshal([]byte(demo), &d); err != nil {
		t.Fatal(err)
	}
	text := call(t, "fileText", demo)
	lines := strings.Split(text, "\n")
	for _, b := range d.Builds {
		for _, p := range b.Parts {
			found := slices.ContainsFunc(lines, func(l string) bool {
				l = strings.TrimSpace(l)
				return strings.HasPrefix(l, `{"id": "`+p.ID+`", `) && strings.HasSuffix(strings.TrimSuffix(l, ","), "}")
			})
			if !found {
				t.Fatalf("%s of %s has no line of its own in\n%.2000s", p.ID, b.ID, text)
			}
		}
	}
	var a, b opened
	read(t, &a, "open", demo)
	read(t, &b, "open", text)
	if len(a.Document.Builds) == 0 || call(t, "fileText", text) != text {
		t.Error("the file is not written as it was read")
	}
}
