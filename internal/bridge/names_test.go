package bridge_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/bridge"
	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// inGerman returns the functions of a session that was told all that the page
// tells it: labels and names.
func inGerman(t testing.TB) map[string]bridge.Function {
	t.Helper()
	f := new(bridge.Session).Functions()
	if answer := f["speak"](germanWords(t)); answer != "" {
		t.Fatal(answer)
	}
	return f
}

func germanWords(t testing.TB) string {
	t.Helper()
	all := make(map[string]string)
	for _, name := range []string{"de", "entries.de"} {
		text, err := os.ReadFile("../../data/words/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &all); err != nil {
			t.Fatal(err)
		}
	}
	text, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// With the names of the entries, German words find as English ones do, and
// English words go on finding.
func TestFindByGermanNames(t *testing.T) {
	call(t, "speak", germanWords(t))
	defer call(t, "speak", "")
	for of, queries := range map[string]map[string]string{
		"parts": {
			"Kettenblatt": "chainring-single", "Nabendynamo": "dynamo-hub", "Mantel 50-622": "tyre-front-50-622", "Mantel": "tyre-front-37-622",
			"Reifen hinten 57-622": "tyre-rear-57-622", "Schlauch hinten": "tube-rear-622", "584 Felge hinten": "rim-rear-584-aluminium",
			"Rahmen Stahl": "touring-frame-steel", "Schwinge": "swingarm-steel", "Starrgabel Carbon": "rigid-fork-carbon", "Rücklicht": "rear-light-dynamo",
			"Packtasche vorn": "pannier-front", "Variostütze": "seatpost-dropper", "Rennlenker": "bar-drop-aluminium", "Steckachse hinten": "rear-through-axle",
			"203 mm Bremsscheibe hinten": "rotor-rear-203", "Nabenschaltung": "gear-hub-wide", "stufenlos": "gear-hub-heavy", "Riemenscheibe": "belt-ring-gear-hub",
			"Kassette 12-fach": "cassette-12", "Kassette 11fach": "cassette-11", "Flickzeug": "patch-kit", "Seitenständer": "stand-side", "Bügelschloss": "lock-u",
			"Kettenschloss": "lock-chain", "Drehgriff Getriebenabe": "twist-shifter-gear-hub", "Kettenöl": "lubricant", "Tretlager": "bottom-bracket-threaded",
			"Lowrider": "front-rack-low-aluminium", "Tacho": "computer", "Handy": "phone", "Luftdämpfer": "air-shock", "Gepäckträger für Vollfederung": "rear-rack-full-suspension", "Schaltuage": "derailleur-hanger",
			"Kette": "chain-12", "Rahmen": "touring-frame-steel", "Sattel": "saddle-padded", "Gabel": "fork-100-upper", "Schloss": "lock-folding", "Nabe": "hub-front",
			"chain": "chain-12", "tire": "tyre-front-37-622", "rear rim": "rim-rear-622-aluminium", "fender": "mudguard-rear", "kickstand": "stand-side",
		},
		"goods": {
			"Schlafsack": "sleeping-bag-summer", "Schlafsack Winter": "sleeping-bag-winter", "Zelt": "tent-one", "Isomatte": "sleeping-mat", "Kocher": "stove-gas",
			"Benzinkocher": "stove-liquid", "Handy": "phone", "Stirnlampe": "head-lamp", "Regenjacke": "rain-wear", "Wasser": "water-bottle", "Brennstoff": "fuel",
			"Mantel": "spare-tyre", "Schlafsak": "sleeping-bag-summer", "tent": "tent-one", "stove": "stove-gas",
		},
		"bags": {
			"Packtasche rechts": "pannier-rear-right", "Lenkertasche": "handlebar-bag", "Rahmentasche": "frame-bag-full", "Packsack": "rack-bag",
			"Satteltasche klein": "saddle-bag-small", "Gabel": "fork-bag-left", "pannier": "pannier-rear-left",
		},
	} {
		for typed, want := range queries {
			if f := seek(t, typed, of, nil); first(f) != want {
				t.Errorf("%s: %q is %v, want %s first", of, typed, f.Found[:min(4, len(f.Found))], want)
			}
		}
	}
	call(t, "speak", "")
	for _, typed := range []string{"Nabendynamo", "Mantel", "Schlafsack"} {
		if f := seek(t, typed, "parts", nil); len(f.Found) > 0 {
			t.Errorf("in English, %q finds %v", typed, f.Found)
		}
	}
}

// What is offered and what is taken have the names of the language, and all else
// of the entry.
func TestEntriesAreTakenInGerman(t *testing.T) {
	german := inGerman(t)
	var english []parts.Entry
	read(t, &english, "catalogue")
	list := decoded[[]parts.Entry](t, german["catalogue"]())
	if len(list) != len(english) {
		t.Fatalf("%d entries in German, %d in English", len(list), len(english))
	}
	for i, e := range list {
		if e.ID != english[i].ID || e.Name == english[i].Name || e.Note != "" && e.Note == english[i].Note || e.Mass != english[i].Mass {
			t.Errorf("%s: %q, %q", english[i].ID, e.Name, e.Note)
		}
		p := decoded[document.Part](t, german["partFromEntry"](e.ID))
		if p.Name != e.Name || p.Note != e.Note || p.Catalogue != e.ID || p.Mass != e.Mass {
			t.Errorf("%s is taken as %+v", e.ID, p)
		}
	}
	if p := decoded[document.Part](t, call(t, "partFromEntry", "chain-12")); p.Name != "Chain, 12-speed" {
		t.Errorf("in English, a chain is taken as %q", p.Name)
	}
	var offered struct{ Goods, Bags []struct{ ID, Name string } }
	if err := json.Unmarshal([]byte(german["goods"]()), &offered); err != nil {
		t.Fatal(err)
	}
	if len(offered.Goods) != len(parts.Goods()) || len(offered.Bags) != len(parts.Bags()) {
		t.Fatalf("%d goods and %d bags", len(offered.Goods), len(offered.Bags))
	}
	for i, g := range offered.Goods {
		if taken := decoded[document.Good](t, german["goodFromEntry"](g.ID)); taken.Name != g.Name || g.Name == parts.Goods()[i].Name && g.ID != "tablet" {
			t.Errorf("%s is offered as %q and taken as %q", g.ID, g.Name, taken.Name)
		}
	}
	for i, b := range offered.Bags {
		if taken := decoded[document.Bag](t, german["bagFromEntry"](b.ID)); taken.Name != b.Name || b.Name == parts.Bags()[i].Name {
			t.Errorf("%s is offered as %q and taken as %q", b.ID, b.Name, taken.Name)
		}
	}
}

// englishWord finds words that no German name, note or title has.
var englishWord = regexp.MustCompile(`(?i)\b(the|and|with|of|for|without|front|rear|left|right|one|two|bag|light|hub|chain|frame|water|rider|in the)\b`)

// The demo is opened in the language that is spoken: every text of it is, and
// nothing else has changed. The demo in English stays as it is.
func TestDemoInGerman(t *testing.T) {
	german := inGerman(t)
	textOf := func(d *document.Document) (texts map[string]*string) {
		texts = map[string]*string{"title": &d.Title, "notes": &d.Notes}
		for i := range d.Builds {
			b := &d.Builds[i]
			texts[b.ID], texts[b.ID+" notes"] = &b.Name, &b.Notes
			for j := range b.Parts {
				p := &b.Parts[j]
				texts[b.ID+" "+p.ID], texts[b.ID+" "+p.ID+" note"] = &p.Name, &p.Note
			}
		}
		for i := range d.Riders {
			texts[d.Riders[i].ID] = &d.Riders[i].Name
		}
		for i := range d.Loads {
			l := &d.Loads[i]
			texts[l.ID], texts[l.ID+" notes"] = &l.Name, &l.Notes
			for j := range l.Bags {
				texts[l.ID+" bag "+l.Bags[j].ID] = &l.Bags[j].Name
			}
			for j := range l.Goods {
				texts[l.ID+" good "+l.Goods[j].ID] = &l.Goods[j].Name
			}
		}
		for i := range d.Days {
			texts["day "+d.Days[i].ID] = &d.Days[i].Name
		}
		for i := range d.WeighIns {
			w := &d.WeighIns[i]
			texts[w.ID] = &w.Name
			for j := range w.Scales {
				texts[w.ID+" "+w.Scales[j].ID] = &w.Scales[j].Name
			}
		}
		return texts
	}
	before := call(t, "demo")
	text := german["demo"]()
	en, de := demoDocument(t), decoded[document.Document](t, text)
	one, other := textOf(en), textOf(&de)
	if len(one) != len(other) || len(one) < 300 {
		t.Fatalf("%d texts in English, %d in German", len(one), len(other))
	}
	for at, a := range one {
		b := *other[at]
		if (*a == "") != (b == "") || b != "" && *a == b && b != "Tablet" {
			t.Errorf("%s: %q is %q in German", at, *a, b)
		}
		if m := englishWord.FindString(b); m != "" {
			t.Errorf("%s: %q is English in %q", at, m, b)
		}
		*a, *other[at] = "", ""
	}
	if a, b := written(t, en), written(t, &de); a != b {
		t.Errorf("more than its texts was changed:\n%.300s\n%.300s", a, b)
	}
	if call(t, "demo") != before || !strings.Contains(before, "One travel bike") {
		t.Error("the English demo has changed")
	}
	words := make(map[string]string)
	if err := json.Unmarshal([]byte(germanWords(t)), &words); err != nil {
		t.Fatal(err)
	}
	for key, w := range words {
		if strings.HasPrefix(key, "demo.") && !strings.Contains(text, strings.ReplaceAll(w, `"`, `\"`)) {
			t.Errorf("%s, %q, is not in the demo", key, w)
		}
	}
}

// Parts that a change brings from the catalogue have German names, and a note
// in German is not taken for knowledge of the user's.
func TestChangeInGerman(t *testing.T) {
	german := inGerman(t)
	blank := german["blank"]()
	type change struct {
		Goes     []struct{ Aside bool }
		Comes    []struct{ Name, Origin string }
		Document document.Document
	}
	c := decoded[change](t, german["change"](blank, `{"build":"b1","set":"gear-hub-chain"}`))
	var names []string
	for _, p := range c.Comes {
		names = append(names, p.Name)
	}
	if !slices.Contains(names, "Getriebenabe, großer Umfang") || len(c.Document.Builds[0].Parts) != len(names) {
		t.Errorf("comes %q", names)
	}
	for _, n := range names {
		if m := englishWord.FindString(n); m != "" {
			t.Errorf("%q comes", n)
		}
	}
	back := decoded[change](t, german["change"](written(t, &c.Document), `{"build":"b1","set":"derailleur-one-ring"}`))
	if len(back.Goes) == 0 || len(back.Document.Aside) > 0 {
		t.Errorf("%d parts go; aside %+v", len(back.Goes), back.Document.Aside)
	}
	for _, g := range back.Goes {
		if g.Aside {
			t.Error("a part of the catalogue is kept aside")
		}
	}
}
