package bridge_test

import (
	"encoding/csv"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"steelyard/internal/document"
	"steelyard/internal/report"
)

// inSVG returns the attributes of a picture's root, and its texts.
func inSVG(t *testing.T, doc string) (root map[string]string, texts []string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(doc))
	root = map[string]string{}
	for first := true; ; {
		tok, err := d.Token()
		if err == io.EOF {
			return root, texts
		}
		if err != nil {
			t.Fatalf("%v in %.300s", err, doc)
		}
		switch k := tok.(type) {
		case xml.StartElement:
			if first {
				for _, a := range k.Attr {
					root[a.Name.Local] = a.Value
				}
				first = false
			}
		case xml.CharData:
			if s := strings.TrimSpace(string(k)); s != "" {
				texts = append(texts, s)
			}
		}
	}
}

// A picture to publish is as wide as asked for, and its caption says what the
// report says.
func TestPublishedPicture(t *testing.T) {
	demo := call(t, "demo")
	var r report.Report
	read(t, &r, "evaluate", demo)
	a, b := r.Sides[0], r.Sides[1]
	view := func(more string) string {
		return fmt.Sprintf(`{"build":%q,"at":"b","ghost":%q,"ghost_at":"a","side":"side","width":800,"height":500,"pixels":2000,"units":{"mass":"kg"}%s}`, b.Build, a.Build, more)
	}
	root, bare := inSVG(t, call(t, "svg", demo, view("")))
	if root["viewBox"] != "0 0 800 500" || root["width"] != "2000" || root["height"] != "1250" || root["role"] != "img" {
		t.Errorf("%v", root)
	}
	root, texts := inSVG(t, call(t, "svg", demo, view(`,"caption":{"title":"Gears & <gears>","date":"3 May 2026","figures":true,"sources":true,"on":"4 May 2026"}`)))
	high, err := strconv.ParseFloat(root["height"], 64)
	if err != nil || root["width"] != "2000" || high < 1500 {
		t.Errorf("%v, %v", root, err)
	}
	said := strings.Join(texts, "\n")
	for _, want := range []string{"Gears & <gears>", "3 May 2026", "4 May 2026", r.Program, b.Name, "Difference from " + a.Name, "Total mass", "Load on the front wheel", "k = 2", "weighed ("} {
		if !strings.Contains(said, want) {
			t.Errorf("the caption does not say %q", want)
		}
	}
	for _, c := range r.Difference.Figures {
		if want := fmt.Sprintf("%.2f\u00a0kg", math.Abs(c.Delta)/1000); c.Key == "total" && !strings.Contains(said, want) {
			t.Errorf("the caption does not tell the difference of %v g: %s", c.Delta, said)
		}
	}
	if strings.Contains(strings.Join(bare, "\n"), "Difference from") {
		t.Error("a caption nobody asked for")
	}
	// Without the other build there is no difference to tell.
	for _, view := range []string{`{"build":%q,"at":"b","caption":{"figures":true}}`, `{"build":%q,"caption":{"figures":true}}`} {
		_, texts := inSVG(t, call(t, "svg", demo, fmt.Sprintf(view, b.Build)))
		if said := strings.Join(texts, "\n"); strings.Contains(said, "Difference from") || !strings.Contains(said, "Total mass") || !strings.Contains(said, b.Name) {
			t.Errorf("%s: %s", view, said)
		}
	}
	// A document without any figures has a caption without figures.
	if p := problemIn(call(t, "svg", call(t, "blank"), `{"build":"build","caption":{"title":"x","figures":true,"sources":true}}`)); p != nil && p.Field != "view.build" {
		t.Error(p)
	}
}

// Names of a hostile document stay text in every table that leaves the program.
func TestHostileTables(t *testing.T) {
	var o opened
	read(t, &o, "open", call(t, "demo"))
	evil := "=HYPERLINK(\"http://127.0.0.1\";\"x\")|<script>\r\n+1"
	for i := range o.Document.Builds {
		o.Document.Builds[i].Name = evil
		for k := range o.Document.Builds[i].Parts {
			o.Document.Builds[i].Parts[k].Name = evil
		}
	}
	text := encode(t, o.Document)
	build := o.Document.Builds[0].ID
	for _, style := range []string{"", "semicolon"} {
		for name, table := range map[string]string{
			"figures": call(t, "figuresCSV", text, style, "=day"), "difference": call(t, "differenceCSV", text, style, "=day"), "parts": call(t, "partsCSV", text, build, style, "=day"),
		} {
			in := csv.NewReader(strings.NewReader(strings.TrimPrefix(table, "\ufeff")))
			if style != "" {
				in.Comma = ';'
			}
			lines, err := in.ReadAll()
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			evils := 0
			for _, line := range lines {
				for _, cell := range line {
					if strings.Contains(cell, "HYPERLINK") {
						evils++
					}
					if strings.HasPrefix(cell, "=") || strings.HasPrefix(cell, "@") {
						t.Errorf("%s: %q is a formula", name, cell)
					}
				}
			}
			if evils == 0 {
				t.Errorf("%s: the name is not in it", name)
			}
		}
	}
	for name, table := range map[string]string{
		"figures": call(t, "figuresMarkdown", text, "", "<b>"), "difference": call(t, "differenceMarkdown", text, "", "<b>"), "parts": call(t, "partsMarkdown", text, build, "", "<b>"),
	} {
		if strings.Contains(strings.ReplaceAll(table, `\<`, ""), "<") || !strings.Contains(table, `\|\<script\>`) || strings.Contains(table, "\n+1") {
			t.Errorf("%s: %.600s", name, table)
		}
	}
}

func TestProvenance(t *testing.T) {
	var notes []string
	read(t, &notes, "provenance", call(t, "demo"), "3 May 2026")
	if len(notes) != 6 || !strings.Contains(notes[0], "3 May 2026") { // of three builds
		t.Errorf("%q", notes)
	}
	for _, name := range []string{"figuresCSV", "differenceCSV", "figuresMarkdown", "differenceMarkdown"} {
		bare, noted := call(t, name, call(t, "demo")), call(t, name, call(t, "demo"), "", "3 May 2026")
		if strings.Contains(bare, "k = 2") || !strings.Contains(noted, "k = 2") || !strings.Contains(noted, "3 May 2026") {
			t.Errorf("%s: notes where there should be none, or none where there should be", name)
		}
	}
	// The caution goes with every table and with a picture's caption.
	const caution = "qualified mechanic"
	loads := call(t, "demo")
	for _, args := range [][]string{
		{"figuresCSV", loads, "", "today"}, {"figuresMarkdown", loads, "", "today"}, {"differenceCSV", loads, "", "today"}, {"differenceMarkdown", loads, "", "today"},
		{"statesCSV", loads, "", "today"}, {"statesMarkdown", loads, "", "today"}, {"luggageCSV", loads, "tour", "", "today"}, {"luggageMarkdown", loads, "tour", "", "today"},
		{"partsCSV", loads, "gearbox", "", "today"}, {"partsMarkdown", loads, "gearbox", "", "today"}, {"notes", loads, "today"},
		{"svg", loads, `{"build":"gearbox","side":"side","width":800,"height":500,"caption":{"figures":true}}`},
		{"svg", loads, `{"build":"gearbox","side":"side","width":800,"height":500,"labels":true,"caption":{"title":"Mine"}}`},
	} {
		if text := call(t, args[0], args[1:]...); !strings.Contains(text, caution) {
			t.Errorf("%s says nothing of caution: …%.300s", args[0], text[max(0, len(text)-300):])
		}
	}
	for _, args := range [][]string{{"provenance", "{", ""}, {"notes", "{", ""}, {"partsMarkdown", "{", "x"}, {"partsMarkdown", call(t, "demo"), "no such"}} {
		if problemIn(call(t, args[0], args[1:]...)) == nil {
			t.Errorf("no problem with %.40q", args)
		}
	}
}

func encode(t *testing.T, d *document.Document) string {
	t.Helper()
	text, err := document.Write(d)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Builds in a row are drawn with their names, their figures and differences, and
// where the masses of each come from, of those two only that are not compared too.
func TestRow(t *testing.T) {
	demo := call(t, "demo")
	svg := call(t, "svg", demo, `{"row":["derailleur","gearbox","gearhub"],"labels":false,"width":1500,"height":420,"pixels":1500,"units":{"mass":"kg","length":"mm"},
		"caption":{"title":"Three","date":"today","figures":true,"pick":["total","unsprung_rear"],"sources":true,"on":"today"}}`)
	for _, want := range []string{">Single-ring derailleur<", ">Crank gearbox<", ">Rear gear hub<", "Unsprung mass at the rear", "Difference from Single-ring derailleur", "Single-ring derailleur: 55 lines", "Crank gearbox: 56 lines", "Rear gear hub: 55 lines", "qualified mechanic"} {
		if !strings.Contains(strings.Join(strings.Fields(svg), " "), want) {
			t.Errorf("%q is not in the picture", want)
		}
	}
	if strings.Contains(svg, "Load on the front wheel") {
		t.Error("a figure that nobody picked is told")
	}
	two := call(t, "svg", demo, `{"row":["derailleur","gearbox"],"caption":{"title":"","date":"","figures":true,"sources":true,"on":"today"}}`)
	if strings.Contains(two, "Rear gear hub") || !strings.Contains(two, "Load on the front wheel") {
		t.Error("two in a row are not those two with the main figures")
	}
}
