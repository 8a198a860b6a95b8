package data_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// isKey tells a text that looks like the key of a word, or like the beginning of
// one: "carrier.fork-lower", "carrier.".
var isKey = regexp.MustCompile(`^[a-z_]+(\.[a-z0-9_-]+)*\.?$`)

// messages are the first parts of the keys that only messages have: a text in the
// program that begins so is a key, and nothing else.
var messages = regexp.MustCompile(`^(document|link|units|pose|seat|weighin|list|packing|assembly|bridge|blank)\.`)

// pageTexts are the files of the page's own texts, with the language of those that
// are not in English.
var pageTexts = regexp.MustCompile(`/web/(?:rooms/\w+/text(?:\.([a-z]{2}))?|text/([a-z]{2}))\.ts$`)

// literals returns the texts in the program's Go files and in the page's, that look
// like keys or their beginnings, with a place where they stand.
func literals(t *testing.T) map[string]string {
	t.Helper()
	found := make(map[string]string)
	files := token.NewFileSet()
	walk := func(dir string, take func(path string)) {
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err == nil && d.IsDir() && d.Name() == "node_modules" {
				return filepath.SkipDir
			}
			if err == nil && !d.IsDir() {
				take(path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	inGo := func(path string) {
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return
		}
		file, err := parser.ParseFile(files, path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.BasicLit:
				if s, err := strconv.Unquote(n.Value); n.Kind == token.STRING && err == nil && isKey.MatchString(s) {
					found[s] = files.Position(n.Pos()).String()
				}
			}
			return true
		})
	}
	walk("../internal", inGo)
	walk("../wasm", inGo)
	quoted := regexp.MustCompile("[\"`]([a-z_]+(?:\\.[a-z0-9_.-]*)?)")
	walk("../web", func(path string) {
		if !strings.HasSuffix(path, ".ts") || pageTexts.MatchString(filepath.ToSlash(path)) {
			return
		}
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range quoted.FindAllStringSubmatch(string(text), -1) {
			found[m[1]] = path
		}
	})
	return found
}

// Every word is used, and every key of a message has its word.
func TestKeysAreUsedAndHaveWords(t *testing.T) {
	words := make(map[string]string)
	decode(t, "words/en.json", &words)
	begins := func(s string) bool {
		for key := range words {
			if key == s || strings.HasPrefix(key, strings.TrimSuffix(s, ".")+".") {
				return true
			}
		}
		return false
	}
	used := literals(t)
	for s, place := range used {
		if messages.MatchString(s) && strings.Contains(place, ".go:") && !begins(s) {
			t.Errorf("%s: %q has no word", place, s)
		}
	}
	for key := range words {
		first, _, _ := strings.Cut(key, ".")
		// Labels are looked up by their sort and an id, and where nothing springs by
		// another sort. An area is told with the sets of parts.
		found := used[key] != "" || first == "area" || !messages.MatchString(key) && used[strings.TrimSuffix(first, "_rigid")] != ""
		for i := range key {
			// A key may be put together of its beginning, up to a dot, and the rest.
			if key[i] == '.' && (used[key[:i]] != "" || used[key[:i+1]] != "") {
				found = true
			}
		}
		if !found {
			t.Errorf("nothing uses the word of %s", key)
		}
	}
}

// Every text of the page is used by something on it.
func TestTextsOfThePageAreUsed(t *testing.T) {
	used := literals(t)
	files, err := filepath.Glob("../web/rooms/*/text.ts")
	if err != nil {
		t.Fatal(err)
	}
	entry := regexp.MustCompile(`(?m)^  "?([A-Za-z0-9_.-]+)"?:(?: |$)`)
	keys := 0
	for _, name := range append(files, "../web/text/en.ts") {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range entry.FindAllStringSubmatch(string(text), -1) {
			keys++
			key := m[1]
			// Some are shorter labels of what the core has a label for; those of the
			// frame's figures begin with their section.
			first, _, _ := strings.Cut(key, ".")
			found := used[key] != "" || first == "figure" || first == "rating" || strings.Contains(key, ".f.")
			for i := range key {
				if key[i] == '.' && used[key[:i+1]] != "" {
					found = true
				}
			}
			if !found {
				t.Errorf("%s: nothing on the page uses %s", name, key)
			}
		}
	}
	if keys < 1000 {
		t.Errorf("only %d texts were found", keys)
	}
}
