package static

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// asked is how the page's sources ask for a word of the core: word("kind", key),
// and named, which asks for a rigid bike's as well.
var asked = regexp.MustCompile(`\b(?:(word|short)\(\s*"([a-z_]+)"|(named)\(\s*"(station|carrier|group)")`)

// TestLabels: the bundle has every kind of word that the page asks for, and no
// sentence of the core.
func TestLabels(t *testing.T) {
	root, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	web := filepath.Join(root, "web")
	kinds, err := pageKinds(web)
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	err = filepath.WalkDir(web, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.Name() == "node_modules" {
			return fs.SkipDir
		}
		if filepath.Ext(path) != ".ts" {
			return nil
		}
		text, err := os.ReadFile(path)
		for _, m := range asked.FindAllStringSubmatch(string(text), -1) {
			found++
			want := []string{m[2]}
			if m[3] != "" {
				want = []string{m[4], m[4] + "_rigid"}
			}
			for _, kind := range want {
				if !kinds[kind] {
					t.Errorf("%s says words of the kind %q, which text/kinds.json lacks", filepath.Base(path), kind)
				}
			}
		}
		return err
	})
	if err != nil || found < 40 {
		t.Fatalf("%d words are asked for, %v", found, err)
	}
	main, err := bundle(web, "main.ts")
	if err != nil {
		t.Fatal(err)
	}
	var words map[string]string
	if err := readJSON(filepath.Join(root, "data", "words", "en.json"), &words); err != nil {
		t.Fatal(err)
	}
	if s := words["station.saddle"]; s == "" || !strings.Contains(string(main), s) {
		t.Errorf("the bundle lacks %q", s)
	}
	if s := words["list.row.no_mass"]; s == "" || strings.Contains(string(main), s) {
		t.Errorf("the bundle has %q, which the program says", s)
	}
}
