package static

import (
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"
)

// The program itself tells which modules were linked into it; each must be in
// the notices, as must every package that the page's bundles name.
func TestNoticesNameAllThatIsInTheSite(t *testing.T) {
	root, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	if err := Modules(t.Context(), root); err != nil {
		t.Fatal(err)
	}
	data, err := notices(t.Context(), root, scripts)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)

	exe := filepath.Join(t.TempDir(), "steelyard.wasm")
	if _, err := goCommand(t.Context(), root, []string{"GOOS=js", "GOARCH=wasm"}, "build", "-mod=readonly", "-trimpath", "-ldflags=-s -w", "-o", exe, "./wasm"); err != nil {
		t.Fatal(err)
	}
	want := linked(t, exe)
	if len(want) < 4 {
		t.Fatalf("only %q are linked", want)
	}
	want = append(want, "Go standard library and runtime "+runtime.Version(), "Go fonts", "lit ", "lit-html ", "@lit/reactive-element ")
	for _, w := range want {
		if !strings.Contains(text, "    "+w) {
			t.Errorf("%s is not among the notices:\n%.1000s", w, text)
		}
	}
	for _, w := range []string{"The Go Authors", "Bigelow & Holmes", "Google LLC", "Apache License"} {
		if !strings.Contains(text, w) {
			t.Errorf("no notice speaks of %q", w)
		}
	}
	if strings.Contains(text, root) || strings.Contains(text, "typescript") || strings.Contains(text, "chromedp") {
		t.Error("the notices speak of what is not in the site")
	}
	again, err := notices(t.Context(), root, scripts)
	if err != nil || string(again) != text {
		t.Errorf("made again, the notices differ (%v)", err)
	}
}

// linked lists the modules that the linker wrote into a program. Package
// buildinfo does not read WebAssembly, but the text is in there.
func linked(t *testing.T, exe string) []string {
	t.Helper()
	data, err := os.ReadFile(exe)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, m := range regexp.MustCompile(`dep\t(\S+)\t(\S+)`).FindAllStringSubmatch(string(data), -1) {
		if n := m[1] + " " + m[2]; !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}

func TestAWorkWithoutALicenceIsRefused(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"README.md", "license.go", "licensing-howto.txt"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("x"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if text, err := licenses(dir); err == nil {
		t.Errorf("took %q for a licence", text)
	}
	for _, name := range []string{"LICENSE", "NOTICE.txt", "COPYING", "LICENCE.md"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(name+" text\r\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	text, err := licenses(dir)
	if want := "COPYING text\n\nLICENCE.md text\n\nLICENSE text\n\nNOTICE.txt text"; err != nil || text != want {
		t.Errorf("got %q, %v; want %q", text, err, want)
	}
}

func TestPackageOf(t *testing.T) {
	for input, want := range map[string]string{
		"main.ts":                   "",
		"node_modules/lit/index.js": "lit",
		"node_modules/@lit/reactive-element/a.js": "@lit/reactive-element",
		"node_modules/a/node_modules/@b/c/d/e.js": "a/node_modules/@b/c",
	} {
		if got := packageOf(input); got != want {
			t.Errorf("%s belongs to %q, want %q", input, got, want)
		}
	}
}
