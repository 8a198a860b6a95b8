package static

import (
	"bytes"
	"compress/gzip"
	"path/filepath"
	"strings"
	"testing"
)

// What the first screen takes is small, has no chapter or dialog in it, and is asked
// for by the page itself; the rest is a piece of its own.
func TestFirstScreenIsSmall(t *testing.T) {
	root, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	web := filepath.Join(root, "web")
	s := site{}
	if err := s.addScript(web, "main.js", filepath.Join(web, "main.ts")); err != nil {
		t.Fatal(err)
	}
	first := map[string]bool{"main.js": true}
	links := s.preload(`<script type="module" src="main.js?v=1"></script>`)
	for name := range s {
		if strings.Contains(links, `<link rel="modulepreload" href="`+name+`">`) {
			first[name] = true
		}
	}
	for name := range first {
		for _, m := range taken.FindAllSubmatch(s[name], -1) {
			if !first[string(m[1])] {
				t.Errorf("%s takes %s, which the page does not ask for", name, m[1])
			}
		}
	}
	var packed bytes.Buffer
	z := gzip.NewWriter(&packed)
	rest := ""
	for name, code := range s {
		if first[name] {
			z.Write(code) //nolint:errcheck // to memory
		} else {
			rest += string(code)
		}
	}
	z.Close()
	// At 1.6 Mbit/s that takes 0.4 s.
	if n := packed.Len(); n > 80_000 {
		t.Errorf("the first screen takes scripts of %d bytes, packed", n)
	}
	for _, element := range []string{"sy-weighin", "sy-publish", "sy-parts"} {
		define := `customElements.define("` + element + `"`
		if !strings.Contains(rest, define) {
			t.Errorf("%s is in no piece that comes later", element)
		}
	}
}
