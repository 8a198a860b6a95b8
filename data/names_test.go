package data_test

import (
	"os"
	"strings"
	"testing"

	"github.com/goccy/go-json"

	"steelyard/internal/document"
	"steelyard/internal/parts"
)

// Whatever is taken from a list has a German name that nothing else of the list
// has, and a German note where it has one; nothing is named that is not there.
func TestEveryEntryHasAGermanName(t *testing.T) {
	german := make(map[string]string)
	text, err := os.ReadFile("words/entries.de.json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &german); err != nil {
		t.Fatal(err)
	}
	known := make(map[string]bool)
	taken := make(map[string]string)
	// The same in both languages, and nobody would say it otherwise.
	same := map[string]bool{"goods.tablet": true}
	name := func(list, id, english string) {
		key := list + "." + id
		known[key], known[key+".search"] = true, true
		g := german[key]
		if strings.TrimSpace(g) == "" || g == english && !same[key] {
			t.Errorf("%s, %q, is %q in German", key, english, g)
		}
		if other := taken[list+g]; other != "" {
			t.Errorf("%s and %s are both %q", key, other, g)
		}
		taken[list+g] = key
	}
	for _, e := range catalogue(t) {
		name("entry", e.ID, e.Name)
		if note := "entry." + e.ID + ".note"; e.Note != "" {
			known[note] = true
			if g := german[note]; g == "" || g == e.Note {
				t.Errorf("%s, %q, is %q in German", note, e.Note, g)
			}
		}
	}
	for _, g := range parts.Goods() {
		name("goods", g.ID, g.Name)
	}
	for _, b := range parts.Bags() {
		name("bags", b.ID, b.Name)
	}
	for _, k := range document.Kinds {
		known["kind."+k.ID+".search"] = true
	}
	for key := range german {
		if strings.HasPrefix(key, "demo.") {
			continue // see the bridge's TestDemoInGerman
		}
		if !known[key] {
			t.Errorf("%s is the German of nothing", key)
		}
	}
	labels := make(map[string]string)
	decode(t, "words/en.json", &labels)
	for key := range labels {
		if _, twice := german[key]; twice {
			t.Errorf("%s has German words in both files", key)
		}
	}
}
