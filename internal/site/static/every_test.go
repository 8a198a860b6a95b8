package static

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// A pattern stands for all files that it names, in their order, wherever the
// importing file lies.
func TestEveryFileOfAPattern(t *testing.T) {
	web := t.TempDir()
	for name, text := range map[string]string{
		"page.css":        `@import "every:rooms/*/*.css";`,
		"de.ts":           `import "every:rooms/*/text.de.ts"`,
		"none.ts":         `import "every:rooms/*/text.fr.ts"`,
		"rooms/b/b.css":   `.b { color: red }`,
		"rooms/a/a.css":   `.a { color: red }`,
		"rooms/b/text.ts": `console.log("english")`, "rooms/b/text.de.ts": `console.log("b, deutsch")`,
		"rooms/a/text.de.ts": `import "./more.ts"; console.log("a, deutsch")`, "rooms/a/more.ts": `console.log("mehr")`,
	} {
		path := filepath.Join(web, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for name, want := range map[string]string{"page.css": `(?s)^\.a\{.*\.b\{`, "de.ts": `(?s)mehr.*a, deutsch.*b, deutsch`} {
		got, err := bundle(web, filepath.Join(web, name))
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if !regexp.MustCompile(want).Match(got) || strings.Contains(string(got), "english") {
			t.Errorf("%s became %s", name, got)
		}
	}
	if _, err := bundle(web, filepath.Join(web, "none.ts")); err == nil || !strings.Contains(err.Error(), "text.fr.ts") {
		t.Errorf("a pattern that names no file: %v", err)
	}
}
