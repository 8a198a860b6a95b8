package static

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"steelyard/internal/scene"
)

var custom = regexp.MustCompile(`(?m)^\s*--([a-z]+): (#[0-9a-f]{6});$`)

// The page is printed with the inks of its picture.
func TestThePageHasTheColoursOfItsPicture(t *testing.T) {
	root, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(root, "web", "colours.css"))
	if err != nil {
		t.Fatal(err)
	}
	light, dark, ok := strings.Cut(string(text), `[data-theme="dark"]`)
	if !ok {
		t.Fatal("colours.css has no colours for a dark page")
	}
	for _, c := range []struct {
		theme, css string
		palette    *scene.Palette
	}{{"light", light, &scene.Light}, {"dark", dark, &scene.Dark}} {
		found := custom.FindAllStringSubmatch(c.css, -1)
		// The picture of a page without its canvas has its colours from here.
		if want := len(scene.InkNames) - 1; len(found) != want {
			t.Errorf("%s: %d colours are found, and the picture has %d inks", c.theme, len(found), want)
		}
		for _, m := range found {
			ink := scene.Ink(max(0, slices.Index(scene.InkNames[:], m[1])))
			if ink == scene.None {
				t.Errorf("%s: the picture has no ink --%s", c.theme, m[1])
				continue
			}
			if want := c.palette.CSS(ink); m[2] != want {
				t.Errorf("%s: --%s is %s, and %s in the picture", c.theme, m[1], m[2], want)
			}
		}
	}
}
