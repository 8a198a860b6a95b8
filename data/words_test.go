package data_test

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/data"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/rider"
)

// What is said of a rider's ± is what is reckoned with.
func TestRiderHelpTellsTheDoubt(t *testing.T) {
	for _, lang := range []string{"en", "de"} {
		text, err := os.ReadFile("words/" + lang + ".json")
		if err != nil {
			t.Fatal(err)
		}
		words := make(map[string]string)
		if err := json.Unmarshal(text, &words); err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{
			fmt.Sprintf("± %g %%", 100*rider.ClothesWithin), fmt.Sprintf("± %g %%", 100*rider.ShoesWithin), fmt.Sprintf("± %g mm", 1000*rider.PlaceWithin),
		} {
			if !strings.Contains(words["help.rider"], want) {
				t.Errorf("%s: %q does not say %s", lang, words["help.rider"], want)
			}
		}
	}
}

func TestEveryKeyHasItsWord(t *testing.T) {
	words := make(map[string]string)
	decode(t, "words/en.json", &words)

	want := make(map[string]bool)
	for _, k := range document.Kinds {
		want["kind."+k.ID] = true
	}
	for _, g := range document.Groups {
		want["group."+g] = true
	}
	want["group.rider"] = true // only a report has it
	for _, s := range document.States {
		want["state."+string(s)] = true
	}
	for _, s := range document.SupplyLevels {
		want["supplies."+string(s)] = true
	}
	for _, s := range append([]string{"all"}, document.SupplyKinds...) {
		want["supply."+s] = true
	}
	for _, p := range document.Postures {
		want["posture."+p] = true
	}
	for _, r := range document.Rateds {
		want["rating."+r] = true
	}
	for _, s := range geometry.StationNames {
		want["station."+s] = true
	}
	for _, c := range document.Carriers {
		want["carrier."+string(c)] = true
	}
	for _, b := range append(document.KnownBases, document.Bases...) {
		want["basis."+string(b)] = true
	}
	for _, a := range parts.Areas {
		want["area."+string(a)] = true
	}
	for key := range want {
		if words[key] == "" {
			t.Errorf("%s has no word", key)
		}
	}
	for key := range words {
		switch prefix, _, _ := strings.Cut(key, "."); prefix {
		case "kind", "group", "station", "carrier", "basis", "state", "supplies", "supply", "posture", "rating", "area":
			if !want[key] {
				t.Errorf("%s is the word of nothing", key)
			}
		}
	}
}

// Two things of one sort with the same word cannot be told apart in a menu.
func TestWordsTellThingsApart(t *testing.T) {
	for _, name := range []string{"en", "de"} {
		text, err := os.ReadFile("words/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		words := make(map[string]string)
		if err := json.Unmarshal(text, &words); err != nil {
			t.Fatal(err)
		}
		key := make(map[string]string)
		for k, w := range words {
			prefix, _, _ := strings.Cut(k, ".")
			switch prefix {
			case "kind", "group", "station", "carrier", "basis":
			default:
				continue
			}
			if other := key[prefix+w]; other != "" {
				t.Errorf("%s: %s and %s are both %q", name, k, other, w)
			}
			key[prefix+w] = k
		}
	}
}

// One key a line, in order, none twice: then two people can add words at once.
func TestWordsAreSorted(t *testing.T) {
	for _, name := range []string{"en", "de", "entries.de"} {
		text, err := os.ReadFile("words/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
		if first, last := lines[0], lines[len(lines)-1]; first != "{" || last != "}" {
			t.Fatalf("%s begins with %q and ends with %q; the braces should have lines of their own", name, first, last)
		}
		line := regexp.MustCompile(`^\t"([a-z0-9_.-]+)": ".*",?$`)
		before := ""
		for i, l := range lines[1 : len(lines)-1] {
			m := line.FindStringSubmatch(l)
			if m == nil {
				t.Errorf("%s, line %d is not one key and its word: %s", name, i+2, l)
				continue
			}
			if m[1] <= before {
				t.Errorf("%s, line %d: %s comes after %s", name, i+2, m[1], before)
			}
			before = m[1]
		}
	}
}

// A language says all that English says, and fills in the same.
func TestLanguagesHaveTheSameWords(t *testing.T) {
	english := make(map[string]string)
	decode(t, "words/en.json", &english)
	text, err := os.ReadFile("words/de.json")
	if err != nil {
		t.Fatal(err)
	}
	german := make(map[string]string)
	if err := json.Unmarshal(text, &german); err != nil {
		t.Fatal(err)
	}
	filled := regexp.MustCompile(`\{\w*\}`)
	places := func(s string) []string {
		found := filled.FindAllString(s, -1)
		slices.Sort(found)
		return slices.Compact(found) // one language may say twice what another says once
	}
	for key, e := range english {
		g, ok := german[key]
		switch {
		case !ok:
			t.Errorf("%s has no German word", key)
		case (e == "") != (g == ""):
			t.Errorf("%s is %q in English and %q in German", key, e, g)
		case !slices.Equal(places(e), places(g)):
			t.Errorf("%s fills in %v in English and %v in German", key, places(e), places(g))
		}
	}
	for key := range german {
		if _, ok := english[key]; !ok {
			t.Errorf("%s has a German word and no English one", key)
		}
	}
	for _, name := range []string{"words/de.json", "words/entries.de.json"} {
		if _, err := data.Files.ReadFile(name); err == nil {
			t.Errorf("the program carries %s, which the page has", name)
		}
	}
}
