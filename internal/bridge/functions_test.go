package bridge_test

import (
	"encoding/csv"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"sync"
	"testing"

	"github.com/goccy/go-json"
	"github.com/google/go-cmp/cmp"

	"steelyard/data"
	"steelyard/internal/bridge"
	"steelyard/internal/document"
	"steelyard/internal/geometry"
	"steelyard/internal/parts"
	"steelyard/internal/partslist"
	"steelyard/internal/report"
)

// session is the one that the tests call, and functions are its.
var (
	session   = new(bridge.Session)
	functions = session.Functions()
)

// call calls a function of the table by name.
func call(t testing.TB, name string, args ...string) string {
	t.Helper()
	f, ok := functions[name]
	if !ok {
		t.Fatalf("there is no function %s", name)
	}
	return new(bridge.Session).Guard(name, f)(args...)
}

// read calls a function and reads its answer, which must not be a problem.
func read(t testing.TB, v any, name string, args ...string) {
	t.Helper()
	text := call(t, name, args...)
	if p := problemIn(text); p != nil {
		t.Fatalf("%s: %+v", name, p)
	}
	if err := json.Unmarshal([]byte(text), v); err != nil {
		t.Fatalf("%s: %v in %.200s", name, err, text)
	}
}

// problemIn returns the problem that an answer is, or nil.
func problemIn(text string) *document.Problem {
	var p struct {
		Problem *document.Problem `json:"problem"`
	}
	if !strings.HasPrefix(text, `{"problem"`) || json.Unmarshal([]byte(text), &p) != nil {
		return nil
	}
	return p.Problem
}

type opened struct {
	Document *document.Document `json:"document"`
	Problems []document.Problem `json:"problems"`
}

func TestEvaluate(t *testing.T) {
	var r report.Report
	read(t, &r, "evaluate", call(t, "demo"))
	if len(r.Builds) < 2 || r.Difference == nil || len(r.Problems) != 0 {
		t.Errorf("%d builds, difference %v, problems %v", len(r.Builds), r.Difference, r.Problems)
	}
	want, err := report.EvaluateText([]byte(call(t, "demo"))).Text()
	if err != nil {
		t.Fatal(err)
	}
	for range 2 { // the second time it is remembered
		if got := call(t, "evaluate", call(t, "demo")); got != want {
			t.Error("not what package report says")
		}
	}
	read(t, &r, "evaluate", "{")
	if len(r.Problems) == 0 {
		t.Error("no problem with a broken text")
	}
}

// The page may ask in any order, and a test from any goroutine.
func TestFunctionsConcurrently(t *testing.T) {
	texts := []string{call(t, "demo"), call(t, "blank"), "{", ""}
	want := map[string]string{}
	for _, text := range texts {
		want[text] = call(t, "evaluate", text)
	}
	var wait sync.WaitGroup
	for i := range 32 {
		wait.Go(func() {
			text := texts[i%len(texts)]
			if got := call(t, "evaluate", text); got != want[text] {
				t.Errorf("another answer to the same text (%.20q)", text)
			}
			call(t, "figuresCSV", text)
			call(t, "svg", text, `{"build":"gearbox","ghost":"gearhub"}`)
		})
	}
	wait.Wait()
}

func TestOpen(t *testing.T) {
	var o opened
	read(t, &o, "open", call(t, "demo"))
	if o.Document == nil || len(o.Document.Builds) == 0 || len(o.Problems) != 0 {
		t.Errorf("%+v", o)
	}
	for _, text := range []string{"", "{", "null", `{"format":"steelyard-document","version":99,"builds":[]}`} {
		var o opened
		read(t, &o, "open", text)
		if o.Document != nil || len(o.Problems) == 0 {
			t.Errorf("%q: %+v", text, o)
		}
		if answer := call(t, "open", text); !strings.HasPrefix(answer, `{"document":null,"problems":[`) {
			t.Errorf("%q: %s", text, answer)
		}
	}
}

// A new document is whole, poses, and says that nothing is on it.
func TestBlank(t *testing.T) {
	var o opened
	read(t, &o, "open", call(t, "blank"))
	if o.Document == nil || len(o.Problems) != 0 || len(o.Document.Builds) != 1 {
		t.Fatalf("%+v", o)
	}
	var r report.Report
	read(t, &r, "evaluate", call(t, "blank"))
	if len(r.Problems) != 0 || !r.Builds[0].Weighed {
		t.Errorf("%+v", r)
	}
}

func TestLists(t *testing.T) {
	var entries []parts.Entry
	read(t, &entries, "catalogue")
	if d := cmp.Diff(parts.Catalogue(), entries); d != "" {
		t.Error(d)
	}
	var stations []struct {
		Name string
		Pair bool
	}
	read(t, &stations, "stations")
	var names []string
	for _, s := range stations {
		names = append(names, s.Name)
		if s.Pair != geometry.Pair(s.Name) {
			t.Errorf("%s: a pair: %t", s.Name, s.Pair)
		}
	}
	if d := cmp.Diff(geometry.StationNames, names); d != "" {
		t.Error(d)
	}
	var kinds []struct{ ID, Group string }
	read(t, &kinds, "kinds")
	for i, k := range kinds {
		if k.ID != document.Kinds[i].ID || k.Group != document.Kinds[i].Group {
			t.Errorf("%+v, want %+v", k, document.Kinds[i])
		}
	}
	if len(kinds) != len(document.Kinds) {
		t.Errorf("%d kinds", len(kinds))
	}
	var words map[string]string
	read(t, &words, "words")
	if words["figure.total"] == "" {
		t.Error("no words for the total")
	}
	if v := call(t, "version"); v == "" {
		t.Error("no version")
	}
}

func TestLink(t *testing.T) {
	link := call(t, "encodeLink", call(t, "demo"))
	if p := problemIn(link); p != nil {
		t.Fatal(p)
	}
	if strings.ContainsAny(link, " \n\"<>%#") {
		t.Errorf("not for an address: %.60s", link)
	}
	var there, back opened
	read(t, &there, "open", call(t, "demo"))
	read(t, &back, "decodeLink", link)
	if d := cmp.Diff(there, back); d != "" {
		t.Error(d)
	}
	for _, broken := range []string{"", "x", link[:len(link)/2], link + "!", "sy9.abc"} {
		var o opened
		read(t, &o, "decodeLink", broken)
		if o.Document != nil || len(o.Problems) == 0 || o.Problems[0].Message.String() == "" {
			t.Errorf("%.20q: %+v", broken, o)
		}
	}
	if problemIn(call(t, "encodeLink", "{")) == nil {
		t.Error("a broken document in a link")
	}
}

func TestPartsCSV(t *testing.T) {
	demo := call(t, "demo")
	list := call(t, "partsCSV", demo, "gearbox")
	var table struct {
		Columns  []string
		Guess    map[string]int
		Rows     int
		Parts    []document.Part
		Bad      []struct{ Line int }
		Problems []document.Problem
	}
	read(t, &table, "readPartsCSV", list, `{"mass_unit":"g"}`)
	var o opened
	read(t, &o, "open", demo)
	want := o.Document.Build("gearbox").Parts
	if len(table.Parts) != len(want) || len(table.Bad) != 0 || table.Rows != len(want) {
		t.Fatalf("%d parts of %d, %d rows, bad: %v", len(table.Parts), len(want), table.Rows, table.Bad)
	}
	for i, p := range table.Parts {
		w := want[i]
		if p.Name != w.Name || p.Mass != w.Mass || p.HalfWidth != w.HalfWidth || p.Station != w.Station || p.Quantity != w.Quantity {
			t.Errorf("%+v, want %+v", p, w)
		}
	}
	if got := call(t, "partsCSV", demo, "gearbox", "semicolon"); !strings.Contains(got, ";") {
		t.Error("no semicolons")
	}
	read(t, &table, "readPartsCSV", "Name;Gewicht (g)\nSattel;310,5\nkaputt;abc\n", "")
	if len(table.Parts) != 1 || table.Parts[0].Mass != 310.5 || len(table.Bad) != 1 || table.Bad[0].Line != 3 {
		t.Errorf("%+v", table)
	}
	read(t, &table, "readPartsCSV", "Kettle,1.2\n", `{"columns":{"name":0,"mass":1},"mass_unit":"kg"}`)
	if len(table.Parts) != 1 || table.Parts[0].Mass != 1200 {
		t.Errorf("%+v", table)
	}
	// Bytes of any encoding, and what the preview sends back, keyed by line.
	var found partslist.CSVResult
	read(t, &found, "readPartsCSV", "St\xfcck;Gewicht;Teil\r2;0,5;Felge\r1;2,4;Rahmen\r1;0,3;Sattel\r1;3,7;Xyz\r", `{"ends":{"2":"rear"},"sums":[5]}`)
	if len(found.Parts) != 4 || found.Parts[0].Station != "rear-axle" || found.Parts[0].Quantity != 2 || found.MassUnit != "kg" || len(found.Sums) != 1 || !found.Sums[0].Taken {
		t.Errorf("%+v", found)
	}
	for _, args := range [][]string{{"readPartsCSV", "a,1", "{"}, {"partsCSV", demo, "no such"}, {"partsCSV", "{", "gearbox"}, {"partsCSV"}} {
		if problemIn(call(t, args[0], args[1:]...)) == nil {
			t.Errorf("no problem with %.40q", args)
		}
	}
}

func TestTables(t *testing.T) {
	demo := call(t, "demo")
	for _, name := range []string{"figuresCSV", "differenceCSV"} {
		lines, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(call(t, name, demo), "\ufeff"))).ReadAll()
		if err != nil || len(lines) < 20 {
			t.Errorf("%s: %d lines, %v", name, len(lines), err)
		}
	}
	for _, name := range []string{"figuresMarkdown", "differenceMarkdown"} {
		if text := call(t, name, demo); !strings.Contains(text, "| --- | ---: |") {
			t.Errorf("%s: %.200s", name, text)
		}
	}
	for _, name := range []string{"figuresCSV", "differenceCSV", "figuresMarkdown", "differenceMarkdown"} {
		if problemIn(call(t, name, "{")) == nil {
			t.Errorf("%s: no problem with a broken document", name)
		}
	}
}

func TestParse(t *testing.T) {
	var v struct{ Value float64 }
	for _, c := range []struct {
		name, text, unit string
		want             float64
	}{
		{"parseMass", "1,2 kg", "g", 1200}, {"parseMass", "350", "g", 350}, {"parseMass", "2 lb 3 oz", "g", 992.2333},
		{"parseLength", "435", "mm", 435}, {"parseLength", `1"`, "mm", 25.4},
	} {
		read(t, &v, c.name, c.text, c.unit)
		if d := v.Value - c.want; d > 1e-4 || d < -1e-4 {
			t.Errorf("%s is %v, want %v", c.text, v.Value, c.want)
		}
	}
	for _, c := range [][2]string{{"parseMass", "heavy"}, {"parseMass", "-3 g"}, {"parseMass", ""}, {"parseLength", "1e999"}} {
		p := problemIn(call(t, c[0], c[1], "g"))
		if p == nil || p.Severity != document.SeverityError || !strings.HasSuffix(p.Message.String(), ".") {
			t.Errorf("%s(%q): %+v", c[0], c[1], p)
		}
	}
}

func TestSVG(t *testing.T) {
	demo := call(t, "demo")
	for _, view := range []string{
		`{"build":"gearbox","ghost":"gearhub","side":"side","labels":true,"dimensions":true,"units":{"mass":"kg","length":"mm"},"width":1000,"height":700}`,
		`{"build":"gearhub","side":"rear","dark":true,"selected":"frame","width":390,"height":300}`,
		`{"build":"gearbox"}`,
		`{"build":"gearbox","ghost":"none such","width":-5,"height":1e300}`,
	} {
		text := call(t, "svg", demo, view)
		if p := problemIn(text); p != nil {
			t.Errorf("%s: %+v", view, p)
			continue
		}
		d := xml.NewDecoder(strings.NewReader(text))
		for n := 0; ; n++ {
			if _, err := d.Token(); err == io.EOF {
				if n < 100 {
					t.Errorf("%s: only %d tokens", view, n)
				}
				break
			} else if err != nil {
				t.Fatalf("%s: %v", view, err)
			}
		}
		if !strings.Contains(text, "<svg") {
			t.Errorf("%s: %.100s", view, text)
		}
	}
	for _, args := range [][]string{{"{", "{}"}, {demo, "{"}, {demo, `{"build":"no such"}`}, {demo, ""}} {
		if problemIn(call(t, "svg", args...)) == nil {
			t.Errorf("no problem with %.40q", args)
		}
	}
}

// A panic becomes a problem, and the function works again afterwards.
func TestGuard(t *testing.T) {
	calls := 0
	f := new(bridge.Session).Guard("weigh", func(args ...string) string {
		if calls++; calls == 1 {
			var none []int
			return fmt.Sprint(none[len(args)]) // out of range
		}
		return "fine"
	})
	p := problemIn(f("x"))
	if p == nil || p.Severity != "error" || !strings.Contains(p.Message.String(), "weigh") || !strings.Contains(p.Message.String(), "index out of range") {
		t.Errorf("%+v", p)
	}
	if got := f("x"); got != "fine" {
		t.Errorf("after the panic: %s", got)
	}
}

// Called with nothing, or with what no page sends, every function answers.
func TestOddCalls(t *testing.T) {
	long := strings.Repeat("[", 100000)
	for name := range functions {
		for _, args := range [][]string{nil, {""}, {"", "", "", ""}, {"null", "null"}, {long, long}, {"\xff\x00", "\xff"}} {
			if p := problemIn(call(t, name, args...)); p != nil && strings.Contains(p.Message.String(), "failed inside") {
				t.Errorf("%s(%.20q): %s", name, args, p.Message.String())
			}
		}
	}
}

func FuzzDocumentFunctions(f *testing.F) {
	text, err := data.Files.ReadFile("demo/travel.json")
	if err != nil {
		f.Fatal(err)
	}
	// One build of the demo with few parts: the fuzzer is slow to change long
	// texts.
	d, _ := document.Open(text)
	d.Builds = d.Builds[:1]
	d.Builds[0].Parts = d.Builds[0].Parts[:2]
	small, err := document.WriteCompact(d)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(small), `{"build":"gearbox","side":"rear"}`)
	d.Builds[0].Parts = nil
	d.Loads, d.WeighIns = d.Loads[1:], d.WeighIns[:1]
	d.Loads[0].Bags, d.Loads[0].Goods = d.Loads[0].Bags[:2], d.Loads[0].Goods[:3]
	d.WeighIns[0].Build = "gearbox"
	d.Show.Loads, d.Show.State = []string{"weekend"}, document.Ridden
	loaded, err := document.WriteCompact(d)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(loaded), `{"load":"weekend","aim":{"low":1}}`)
	f.Add(string(loaded), "cellar")
	f.Add("{", "{")
	f.Fuzz(func(t *testing.T, document, view string) {
		for _, name := range []string{"evaluate", "open", "encodeLink", "svg", "figuresCSV", "differenceMarkdown", "weighIn", "copyLoad", "packStart", "packApply", "packStop"} {
			if p := problemIn(call(t, name, document, view)); p != nil && strings.Contains(p.Message.String(), "failed inside") {
				t.Errorf("%s: %s", name, p.Message.String())
			}
		}
	})
}
