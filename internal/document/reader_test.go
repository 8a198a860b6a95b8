package document_test

import (
	"bytes"
	"os"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"steelyard/data"
	"steelyard/internal/document"
)

// readAlike hands a text to a reader and holds its answer against Open's.
func readAlike(t testing.TB, r *document.Reader, text []byte) (only int) {
	t.Helper()
	d, problems, edit := r.Open(string(text))
	want, wants := document.Open(text)
	if diff := cmp.Diff(want, d); diff != "" {
		t.Fatalf("the reader reads another document (-want +got):\n%s\n%s", diff, text)
	}
	if diff := cmp.Diff(wants, problems); diff != "" {
		t.Fatalf("the reader tells other problems (-want +got):\n%s\n%s", diff, text)
	}
	if edit == nil {
		return -1
	}
	return edit.Build
}

func demoText(t testing.TB) []byte {
	t.Helper()
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func compact(t testing.TB, d *document.Document) []byte {
	t.Helper()
	text, err := document.WriteCompact(d)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// Edits of single parts, one after the other, are read by themselves; of what
// did not change the document is that of before.
func TestReaderReadsTheEditedPart(t *testing.T) {
	var r document.Reader
	d, _ := document.Open(demoText(t))
	if only := readAlike(t, &r, compact(t, d)); only != -1 {
		t.Errorf("the first text differs in build %d only", only)
	}
	last := len(d.Builds[1].Parts) - 1
	for i, edit := range []func() int{
		func() int { d.Builds[0].Parts[3].Mass = 1234.5; return 0 },
		func() int { d.Builds[0].Parts[3].Mass = 7; return 0 },
		func() int { d.Builds[1].Parts[0].Name = "a \"longer\" name, }] with brackets"; return 1 },
		func() int { d.Builds[1].Parts[last].Note = "the last one"; return 1 },
		func() int { d.Builds[2].Parts[5].At = &document.Vec3{1, 2, 3}; return 2 },
		func() int { d.Builds[2].Parts[5].At[1] = -2; return 2 },
		func() int { d.Builds[2].Parts[5].At = nil; return 2 },
		func() int { return 2 + 0*len(d.Builds) }, // the same again: any build will do
	} {
		before := r.Document()
		want := edit()
		only := readAlike(t, &r, compact(t, d))
		if only < 0 || i < 7 && only != want {
			t.Errorf("edit %d is taken to be of build %d only; want %d", i, only, want)
		}
		for j := range d.Builds {
			if same := &before.Builds[j].Parts[0] == &r.Document().Builds[j].Parts[0]; same != (j != only) {
				t.Errorf("edit %d: the parts of build %d are those of before: %v", i, j, same)
			}
		}
	}
	for name, edit := range map[string]func(){
		"a title":           func() { d.Title += "!" },
		"a figure":          func() { d.Builds[0].Frame.Stack++ },
		"an id":             func() { d.Builds[0].Parts[2].ID = "another" },
		"a part more":       func() { d.Builds[0].Parts = append(d.Builds[0].Parts, document.Part{ID: "more"}) },
		"a part fewer":      func() { d.Builds[0].Parts = d.Builds[0].Parts[1:] },
		"two parts at once": func() { d.Builds[0].Parts[1].Mass++; d.Builds[1].Parts[1].Mass++ },
		"an id used twice":  func() { d.Builds[0].Parts[2].ID = d.Builds[0].Parts[1].ID },
	} {
		edit()
		if only := readAlike(t, &r, compact(t, d)); only != -1 {
			t.Errorf("%s: taken for an edit of a part of build %d", name, only)
		}
	}
}

// Whatever becomes of a text, and in whatever order, the reader reads it as Open
// does.
func TestReaderReadsAsOpen(t *testing.T) {
	small := func() []byte {
		d, _ := document.Open(demoText(t))
		for i := range d.Builds {
			d.Builds[i].Parts = d.Builds[i].Parts[:3]
		}
		return compact(t, d)
	}()
	rapid.Check(t, func(rt *rapid.T) {
		var r document.Reader
		text := small
		for range rapid.IntRange(1, 6).Draw(rt, "edits") {
			start := rapid.IntRange(0, len(text)).Draw(rt, "at")
			end := min(len(text), start+rapid.IntRange(0, 40).Draw(rt, "length"))
			put := rapid.SampledFrom([]string{
				"", "1", "0", "-", ".5", "e9", " ", "\n", `"`, "{", "}", "[", "]", ",", ":", "x", "é", "\xff", `\u00e9`, "null", "true",
				`{"id":"z","name":"z","kind":"bell"}`, `,{"id":"y"}`, `"mass_g":12,`, `"id":"p2",`, "},{",
			}).Draw(rt, "put")
			if rapid.Bool().Draw(rt, "twice as much") {
				put += put
			}
			text = slices.Concat(text[:start], []byte(put), text[end:])
			readAlike(rt2tb{t, rt}, &r, text)
			if rapid.IntRange(0, 3).Draw(rt, "back") == 0 {
				text = small
				readAlike(rt2tb{t, rt}, &r, text)
			}
		}
	})
}

// rt2tb fails a check of rapid where a test is wanted.
type rt2tb struct {
	testing.TB
	rt *rapid.T
}

func (t rt2tb) Fatalf(format string, args ...any) { t.rt.Fatalf(format, args...) }

// Numbers are what is mostly edited: every one of a part, by itself.
func TestReaderReadsNumbers(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var r document.Reader
		d, _ := document.Open(demoText(t))
		for range 3 {
			readAlike(rt2tb{t, rt}, &r, compact(t, d))
			b := &d.Builds[rapid.IntRange(0, len(d.Builds)-1).Draw(rt, "build")]
			p := &b.Parts[rapid.IntRange(0, len(b.Parts)-1).Draw(rt, "part")]
			v := rapid.Float64Range(-10, 1e4).Draw(rt, "value")
			switch rapid.IntRange(0, 4).Draw(rt, "field") {
			case 0:
				p.Mass = v
			case 1:
				p.HalfWidth = v
			case 2:
				p.Offset[rapid.IntRange(0, 2).Draw(rt, "axis")] = v
			case 3:
				p.Quantity = int(v)
			case 4:
				p.Shape.Size[0] = v
			}
		}
	})
}

func TestReaderTakesAByteOrderMark(t *testing.T) {
	var r document.Reader
	d, _ := document.Open(demoText(t))
	mark := []byte("\xef\xbb\xbf")
	readAlike(t, &r, append(mark, compact(t, d)...))
	d.Builds[0].Parts[0].Mass++
	readAlike(t, &r, append(mark, compact(t, d)...))
	d.Builds[0].Parts[0].Mass++
	if only := readAlike(t, &r, compact(t, d)); only == -1 {
		t.Error("an edit after a text with a byte order mark is not found")
	}
}

func FuzzReader(f *testing.F) {
	for _, name := range []string{"ok-sparse.json", "ok-loaded-sparse.json", "ok-duplicate-ids.json"} {
		text, err := os.ReadFile(documents + "/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text, text)
		f.Add(text, bytes.Replace(text, []byte("1"), []byte("12"), 1))
		f.Add(text, bytes.Replace(text, []byte(`"mass_g"`), []byte(`"note":"},{","mass_g"`), 1))
	}
	f.Fuzz(func(t *testing.T, a, b []byte) {
		var r document.Reader
		readAlike(t, &r, a)
		readAlike(t, &r, b)
		readAlike(t, &r, a)
	})
}

func BenchmarkReaderEdit(b *testing.B) {
	d, _ := document.Open(demoText(b))
	var texts [2]string
	for i := range texts {
		d.Builds[0].Parts[20].Mass++
		texts[i] = string(compact(b, d))
	}
	var r document.Reader
	r.Open(texts[0])
	i := 0
	for b.Loop() {
		i++
		if _, _, edit := r.Open(texts[i%2]); edit == nil || *edit != (document.Edit{0, 20}) {
			b.Fatal(edit)
		}
	}
}
