package data_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
)

// What fits one maker's product alone, said in the trade's own words, and why.
// Could a text be three makers' products? These could not.
var narrow = []struct {
	said *regexp.Regexp
	why  string
}{
	{regexp.MustCompile(`\b(9|10)-\d\d\b|\b11-5\d\b`), "the end cogs of the widest cassettes tell their makers apart; say how wide the range is"},
	{regexp.MustCompile(`\b(axle|torque) plates?\b`), "one hub's way to hold against its torque; say torque support"},
	{regexp.MustCompile(`\bcvt\b|continuously[ -]variable|variator`), "one hub's name for its mechanism; stepless is plain"},
	{regexp.MustCompile(`vul[ck]ani[sz]`), "one saddle's material; say firm or unpadded"},
	{regexp.MustCompile(`\bpods?\b|\bcontrollers?\b`), "names for one maker's buttons; say shift buttons"},
	{regexp.MustCompile(`\bboost\b`), "a name for axles that are told by their size: 148 x 12, 110 x 15"},
	{regexp.MustCompile(`\bgrip[ -]?shift`), "a product's name that became a word; say twist shifter"},
	{regexp.MustCompile(`\block-on\b|\block on grip`), "a product's name that became a word; say clamped"},
	{regexp.MustCompile(`front[ -]loop|loop[ -]bar`), "one bar's shape; say what it offers the hands"},
	{regexp.MustCompile(`[®™©]`), "the sign of somebody's name"},
}

var (
	count   = `(\d+|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|twenty|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|elf|zwölf|vierzehn|achtzehn)`
	gears   = regexp.MustCompile(`\b` + count + `(-? or -?` + count + `)?[ -](speeds?|gears?|gang|gängen?)\b`)
	geared  = regexp.MustCompile(`gear[ -]?box|gear hub|geared hub|\bigh\b|hub|cranks|getriebe|nabe`)
	counted = "the count of gears of a hub or gearbox names its maker; say how wide the range is"
)

// fault says why a text is not generic, "" when it is.
func fault(s string) string {
	s = strings.ToLower(s)
	for _, n := range narrow {
		if n.said.MatchString(s) {
			return n.why
		}
	}
	if gears.MatchString(s) && geared.MatchString(s) {
		return counted
	}
	return ""
}

// texts calls f with every text in a value read from JSON, and with what of the
// value leads to it.
func texts(v any, at string, f func(at, s string)) {
	switch v := v.(type) {
	case string:
		f(at, v)
	case []any:
		for _, x := range v {
			texts(x, at, f)
		}
	case map[string]any:
		if id, ok := v["id"].(string); ok {
			at += " " + id
		}
		for k, x := range v {
			texts(x, at+" "+k, f)
		}
	}
}

// Nothing that the program comes with, and no document that a test opens, is one
// maker's product.
func TestEveryTextCouldBeThreeMakers(t *testing.T) {
	seen := 0
	look := func(name string, text []byte) {
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		texts(v, name, func(at, s string) {
			seen++
			if why := fault(s); why != "" {
				t.Errorf("%s: %q: %s", at, s, why)
			}
		})
	}
	err := fs.WalkDir(data.Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(data.Files, name)
		look(name, text)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"words/de.json", "words/entries.de.json"} {
		german, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		look(name, german)
	}
	earlier, err := filepath.Glob("../testdata/documents/earlier/*")
	if err != nil || len(earlier) < 5 {
		t.Fatalf("%d earlier documents, %v", len(earlier), err)
	}
	for _, name := range earlier {
		text, err := os.ReadFile(name)
		if err == nil && filepath.Ext(name) == ".link" {
			text, err = document.DecodeLink(string(text))
		}
		if err != nil {
			t.Fatal(err)
		}
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatal(err)
		}
		look(filepath.Base(name), text)
	}
	if seen < 3000 {
		t.Errorf("only %d texts were looked at", seen)
	}
	// The words around a count may stand in another text of the entry.
	names := make(map[string]string)
	if text, err := os.ReadFile("words/entries.de.json"); err != nil || json.Unmarshal(text, &names) != nil {
		t.Fatal("words/entries.de.json", err)
	}
	for _, e := range catalogue(t) {
		about := strings.ToLower(e.Name + " " + e.Kind + " " + e.ID)
		if !regexp.MustCompile(`gear[ -]?box|gear[ -]hub`).MatchString(about) {
			continue
		}
		for _, s := range append([]string{e.Name, e.Note, names["entry."+e.ID], names["entry."+e.ID+".note"], names["entry."+e.ID+".search"]}, e.Search...) {
			if gears.MatchString(strings.ToLower(s)) {
				t.Errorf("%s: %q: %s", e.ID, s, counted)
			}
		}
		if (e.Kind == "gear-hub" || e.Kind == "crank-gearbox") && regexp.MustCompile(`\d`).MatchString(e.ID) {
			t.Errorf("%s: %s", e.ID, counted)
		}
	}
}

// The patterns find what they are there for, and let plain words pass.
func TestNarrowTextsAreSeen(t *testing.T) {
	for _, s := range []string{
		"Gear hub, 14-speed", "Gearbox, 12- or 18-speed class", "Fourteen gears in the rear hub", "Twelve gears at the cranks", "igh 8 speed",
		"Getriebenabe, 14 Gänge", "10-51", "cassette 11-50", "axle plate", "CVT", "continuously variable", "vulcanised", "pod", "Boost", "grip shifter",
		"Tretlagergetriebe mit zwölf Gängen", "Nabe, acht Gänge", "lock-on", "Lock on grips", "Bar with front loop",
	} {
		if fault(s) == "" {
			t.Errorf("%q passes", s)
		}
	}
	for _, s := range []string{
		"Gear hub, wide range", "Cassette, 12-speed, very wide range", "Chain, 8-speed", "11-36", "Rear through axle, 148 x 12", "Clamped grip",
		"Ring lock on the frame", "Tripod", "Two gear cables",
	} {
		if why := fault(s); why != "" {
			t.Errorf("%q: %s", s, why)
		}
	}
}
