package document_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/goccy/go-json"
	"github.com/google/go-cmp/cmp"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// earlier holds documents and links as this program wrote them when they were
// new, one for each shape that it ever wrote.
const earlier = "../../testdata/documents/earlier"

// earlierText returns what a file of it holds, unpacked if that is a link.
func earlierText(t *testing.T, file string) []byte {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if filepath.Ext(file) == ".link" {
		if text, err = document.DecodeLink(string(text)); err != nil {
			t.Fatal(err)
		}
	}
	return text
}

func earlierFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob(earlier + "/*")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files, %v", len(files), err)
	}
	return files
}

func TestEarlierDocumentsOpen(t *testing.T) {
	for _, file := range earlierFiles(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			text := earlierText(t, file)
			d, problems := document.Open(text)
			if d == nil || len(problems) > 0 {
				t.Fatal(problems)
			}
			for _, p := range document.Check(d) {
				t.Errorf("%s: %s", p.Severity, p.Message.String())
			}

			// Each build weighs what the text says, read without the program.
			var said struct {
				Builds []struct {
					ID    string
					Parts []struct {
						Mass     float64 `json:"mass_g"`
						Quantity float64
					}
				}
			}
			if err := json.Unmarshal(text, &said); err != nil {
				t.Fatal(err)
			}
			d.Show.State = document.Ready
			for i := range d.Show.Loads {
				d.Show.Loads[i] = ""
			}
			r := report.Weigh(d, nil).Report
			for _, p := range r.Problems {
				t.Errorf("%s: %s", p.Severity, p.Message.String())
			}
			if len(r.Builds) != len(said.Builds) || len(r.Builds) < 2 {
				t.Fatalf("%d builds of %d", len(r.Builds), len(said.Builds))
			}
			for i, b := range r.Builds {
				want := 0.0
				for _, p := range said.Builds[i].Parts {
					want += p.Mass * p.Quantity
				}
				got := math.NaN()
				for _, f := range b.Figures {
					if f.Key == "total" {
						got = f.Value
					}
				}
				if !b.Weighed || math.Abs(got-want) > 0.001 || want < 1000 {
					t.Errorf("build %s weighs %v g, want %v g", b.ID, got, want)
				}
			}
		})
	}
}

// Nothing that an earlier document says is lost when it is saved again: every
// value that is there is still there.
func TestEarlierDocumentsKeepAll(t *testing.T) {
	for _, file := range earlierFiles(t) {
		t.Run(filepath.Base(file), func(t *testing.T) {
			text := earlierText(t, file)
			d, problems := document.Open(text)
			if d == nil {
				t.Fatal(problems)
			}
			again, err := document.Write(d)
			if err != nil {
				t.Fatal(err)
			}
			var before, after any
			if err := json.Unmarshal(text, &before); err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(again, &after); err != nil {
				t.Fatal(err)
			}
			// A step between versions may move things; its own test says where to.
			if before.(map[string]any)["version"] == float64(document.Version) {
				missing(t, "", before, after)
			}

			back, problems := document.Open(again)
			if diff := cmp.Diff(d, back); diff != "" || len(problems) > 0 {
				t.Errorf("%v\n%s", problems, diff)
			}
		})
	}
}

// missing tells what is in before and not in after.
func missing(t *testing.T, at string, before, after any) {
	t.Helper()
	switch b := before.(type) {
	case map[string]any:
		a, _ := after.(map[string]any)
		for k, v := range b {
			if w, ok := a[k]; ok {
				missing(t, at+"."+k, v, w)
			} else if v != "" && v != false && v != float64(0) { // left out where nothing else is meant
				t.Errorf("%s.%s is gone", at, k)
			}
		}
	case []any:
		a, _ := after.([]any)
		if len(a) != len(b) {
			t.Errorf("%s has %d values, had %d", at, len(a), len(b))
			return
		}
		for i, v := range b {
			missing(t, fmt.Sprintf("%s.%d", at, i), v, a[i])
		}
	default:
		if before != after {
			t.Errorf("%s is %v, was %v", at, after, before)
		}
	}
}

// Whoever raises the version leaves a document and a link of the one before.
func TestEveryVersionHasItsDocuments(t *testing.T) {
	for v := 1; v <= document.Version; v++ {
		for _, ending := range []string{".json", ".link"} {
			found := 0
			for _, file := range earlierFiles(t) {
				if !strings.HasPrefix(filepath.Base(file), fmt.Sprintf("%d-", v)) || filepath.Ext(file) != ending {
					continue
				}
				found++
				var said struct{ Version int }
				if err := json.Unmarshal(earlierText(t, file), &said); err != nil || said.Version != v {
					t.Errorf("%s is of version %d, %v", file, said.Version, err)
				}
			}
			if found == 0 {
				t.Errorf("there is no document of version %d with the ending %s in testdata/documents/earlier", v, ending)
			}
		}
	}
}

// The newest shape is among them: every key that this program writes is in one
// of the documents. A new key wants a new document.
func TestEveryKeyHasItsDocument(t *testing.T) {
	has := map[string]bool{}
	for _, file := range earlierFiles(t) {
		var v any
		if err := json.Unmarshal(earlierText(t, file), &v); err != nil {
			t.Fatal(err)
		}
		keysOf("", v, has)
	}
	schema, err := os.ReadFile("../../data/schema/document.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	var s map[string]any
	if err := json.Unmarshal(schema, &s); err != nil {
		t.Fatal(err)
	}
	n := 0
	schemaKeys("", s, s, func(key string) {
		n++
		if !has[key] {
			t.Errorf("no document in testdata/documents/earlier has the key %s", key)
		}
	})
	if n < 100 {
		t.Errorf("the schema has %d keys", n)
	}
}

func keysOf(at string, v any, has map[string]bool) {
	switch v := v.(type) {
	case map[string]any:
		for k, w := range v {
			has[at+"."+k] = true
			keysOf(at+"."+k, w, has)
		}
	case []any:
		for _, w := range v {
			keysOf(at, w, has)
		}
	}
}

// schemaKeys walks the keys that a JSON Schema knows.
func schemaKeys(at string, root, s map[string]any, each func(key string)) {
	if ref, ok := s["$ref"].(string); ok {
		to := any(root)
		for _, k := range strings.Split(strings.TrimPrefix(ref, "#/"), "/") {
			to = to.(map[string]any)[k]
		}
		schemaKeys(at, root, to.(map[string]any), each)
	}
	if items, ok := s["items"].(map[string]any); ok {
		schemaKeys(at, root, items, each)
	}
	for _, k := range []string{"oneOf", "anyOf", "allOf"} {
		list, _ := s[k].([]any)
		for _, v := range list {
			schemaKeys(at, root, v.(map[string]any), each)
		}
	}
	properties, _ := s["properties"].(map[string]any)
	for k, v := range properties {
		each(at + "." + k)
		if v, ok := v.(map[string]any); ok {
			schemaKeys(at+"."+k, root, v, each)
		}
	}
}
