package static

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func TestWorkerListsTheSite(t *testing.T) {
	root, err := Root(".")
	if err != nil {
		t.Fatal(err)
	}
	web := filepath.Join(root, "web")
	build := func(change func(site)) string {
		s := small()
		change(s)
		if err := s.addWorker(web); err != nil {
			t.Fatal(err)
		}
		return string(s[WorkerName])
	}
	version := func(worker string) string {
		found := regexp.MustCompile(`"[0-9a-f]{16}"`).FindAllString(worker, -1)
		if len(found) != 1 {
			t.Fatalf("%d versions in %s", len(found), worker)
		}
		return found[0]
	}
	first := build(func(site) {})
	for name, data := range small() {
		sum := sha256.Sum256(data)
		if want := `"` + name + `":"` + hex.EncodeToString(sum[:]) + `"`; !strings.Contains(first, want) {
			t.Errorf("%s is not in %s", want, first)
		}
	}
	if again := build(func(site) {}); again != first {
		t.Error("made again, the worker differs")
	}
	for name, change := range map[string]func(site){
		"another text":  func(s site) { s["page.css"] = append(bytes.Clone(s["page.css"]), ' ') },
		"one file more": func(s site) { s["more.css"] = nil },
		"one file less": func(s site) { delete(s, "page.css") },
		"another name":  func(s site) { s["sheet.css"] = s["page.css"]; delete(s, "page.css") },
	} {
		if version(build(change)) == version(first) {
			t.Errorf("%s: the version stays", name)
		}
	}
}
